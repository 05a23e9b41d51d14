"""What the words of a line of figures say: the measure's own name, and kind, unit, view and variant beside it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sizekeeper.importing.bands import label
from sizekeeper.importing.headers import attribute, heads_attribute
from sizekeeper.importing.raw import RawRow
from sizekeeper.importing.vocabulary import bound_in

if TYPE_CHECKING:
    from collections.abc import Mapping

    from sizekeeper.importing.context import Context
    from sizekeeper.importing.grid import GridCell
    from sizekeeper.importing.headers import Column, Header
    from sizekeeper.importing.labels import Label
    from sizekeeper.importing.lines import Line

_CODE = 2


def own_name(words: Mapping[int, Label], line: Line, header: Header | None) -> tuple[Label, str] | None:
    """A name we do not know, with its cell: the chart's own measure, unless it only qualifies the measure above."""
    headed = header.corner if header else {}
    names = [
        (word, line.labels[place].at)
        for place, word in words.items()
        if bound_in(word.text) == ""
        and place in line.labels
        and not word.says_only_how
        and not (place in headed and heads_attribute(headed[place]))
    ]
    spelt = [name for name in names if len(name[0].text) > _CODE]  # a letter beside a name is only its code
    return next(iter(spelt or names), None)


def said_of(
    line: Line, words: Mapping[int, Label], cells: Mapping[int, GridCell], header: Header, at: str
) -> tuple[dict[str, str], list[str]]:
    """What the words of a line say beside the measure at `at`, and the cells that say it.

    The words nearest to the figures count last. `cells` holds the cell of each word.
    """
    said: dict[str, str] = {}
    used = []
    for place, word in words.items():
        cell = cells.get(place)
        if cell is None or (word.prose and cell.at != at):
            continue
        said |= attribute(header.corner.get(place), cell)
        if not word.is_measure and word.written_as != "full":
            said["written"] = word.written_as
        used.append(cell.at)
        if cell.at != at and bound_in(cell.text):
            said["bound"] = cell.text
    for cell in line.tail:
        word = label(cell)
        if word.unit_only:
            said.setdefault("unit", word.units[0])
    return said, used


def new_row(name: Label, at: str, said: Mapping[str, str], column: Column, context: Context) -> RawRow:
    """A row without figures yet: what its line says counts before what its column and the headings say."""
    kind = said.get("kind") or column.kind
    return RawRow(
        name,
        at,
        kind="body" if kind == "body" else "finished" if kind else context.kind,
        kind_from_row="kind" in said,
        units=(said["unit"],) if "unit" in said and not name.units else name.units,
        context_units=context.units,
        view=said.get("view") or column.view or context.view,
        variant=said.get("variant") or column.variant or context.variant,
        written="half" if said.get("written") == "half" else "quarter" if "written" in said else context.written,
        bound=bound_in(said.get("bound") or column.bound or name.text),
        section=context.section,
    )
