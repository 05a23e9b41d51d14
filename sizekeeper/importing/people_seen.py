"""Tells a table of people from a chart of sizes, so that nobody's measurements are taken for a size by mistake."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from sizekeeper.errors import ReadError
from sizekeeper.importing import sizes
from sizekeeper.importing.limits import Progress, no_progress
from sizekeeper.importing.opened import Opened
from sizekeeper.importing.people_columns import NAMES, is_measure, names_inferred
from sizekeeper.importing.people_draft import NOTHING_SAID
from sizekeeper.importing.people_table import find_table, table_at

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from sizekeeper.importing.grid import Sheet
    from sizekeeper.importing.people_draft import Table

_SEVERAL = 2
"""So many body measures make a table of people; one alone may stand in any list (coined)."""
_LIKE_A_SIZE = 0.5
"""From this likeness on a text may be a size (coined)."""


@dataclass(frozen=True)
class Seen:
    """What was read as a chart and looks like a table of people.

    `opened` is None where it cannot be a chart; `source` is the file, or what was pasted as HTML and as text.
    """

    opened: Opened | None
    name: str
    source: Path | tuple[str, str]


def chart_or_people(
    read: Callable[[], Opened], look: Callable[[], tuple[str, Sequence[Sheet]]], source: Path | tuple[str, str]
) -> Opened | Seen:
    """What a source holds that was taken for a chart, with a doubt where it looks like a table of people.

    Args:
        read: reads it as a chart.
        look: opens it as a table of people; used where it is no chart.
        source: what is read.

    Raises:
        ReadError: it is neither a chart nor a table of people; the sentence is that of the chart.
    """
    try:
        opened = read()
    except ReadError as error:
        try:
            name, sheets = look()
        except ReadError:
            raise error from None
        if holds_people(sheets):
            return Seen(None, name, source)
        raise
    return Seen(opened, opened.name, source) if holds_people(opened.sheets) else opened


def holds_people(sheets: Sequence[Sheet], progress: Progress = no_progress) -> bool:
    """Whether a source looks like a table of people: a row each, or a column, with a name and several body measures."""
    found = find_table(sheets, NOTHING_SAID, progress)
    if found is None:
        return False
    table = table_at(found[0], NOTHING_SAID, found[1], found[2])
    measures = {column.role for column in table.columns if is_measure(column.role)}
    return len(measures) >= _SEVERAL and _has_names(table)


def _has_names(table: Table) -> bool:
    """Whether there is a column of names, by its heading or by what stands in it, and they are no sizes."""
    place = next((column.place for column in table.columns if column.role in NAMES), None)
    if place is None and not table.turned:
        place = names_inferred(table.columns, table.rows, ())
    if place is None:
        return False
    cells = [row[place] for _, row in table.rows if place < len(row)]
    names = [cell.text for cell in cells if cell is not None]
    return 0 < len(names) == len(set(names)) and not any(sizes.likeness(name) >= _LIKE_A_SIZE for name in names)
