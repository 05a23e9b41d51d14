"""What a heading says stands below it, and which column holds the names where none says so."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sizekeeper import assets
from sizekeeper.core.chart import TIMES
from sizekeeper.core.people_headings import HEADINGS
from sizekeeper.importing.figures import figure_in
from sizekeeper.importing.labels import label_of
from sizekeeper.importing.people_draft import IGNORED, Column
from sizekeeper.importing.people_words import either_of, field_of, is_corner, of_reading

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from sizekeeper.importing.grid import GridCell, Row
    from sizekeeper.importing.labels import Label

NAMES = ("name", "given", "family")
SEVERAL = ("groups", "notes")
"""What more than one column may hold."""

_LIKELY = 0.7
"""How sure a measure's name must be to be taken with a question; see `measure_names`."""


def column_of(place: int, at: str, cell: GridCell | None) -> Column:
    """The column below a heading."""
    label = " ".join(cell.text.split()) if cell is not None else ""
    blank = Column(place, at, label)
    if not label:
        return blank
    if field := field_of(label):
        return replace(blank, role=field)
    if choices := either_of(label):
        return replace(blank, choices=choices)
    name, part = of_reading(label)
    if part and (measures := body_measures(label_of(name))):
        return replace(blank, role=f"{measures[0]}:{part}")
    return _of_measure(blank, label_of(label))


def _of_measure(blank: Column, label: Label) -> Column:
    measures = body_measures(label)
    if not measures or label.names.sure < _LIKELY:
        return blank
    unit = label.units[0] if len(label.units) == 1 else ""
    if len(measures) > 1:
        return replace(blank, unit=unit, choices=measures)
    girth = assets.measures()[measures[0]].dimension == "girth"
    times = TIMES[label.written_as] if girth else 1
    return replace(blank, role=measures[0], unit=unit, sure=label.names.sure, times=times)


def body_measures(label: Label) -> tuple[str, ...]:
    """The measures of a body that a heading can mean."""
    measures = assets.measures()
    fitting = [m for m in label.names.ids if measures[m].use != "finished"]
    return tuple(fitting)


def is_measure(role: str) -> bool:
    """Whether a column holds figures."""
    return role in assets.measures()


def role_words(role: str) -> str:
    """A column's role in words: `Bust`, `Measured by`, `Bust: measured on`."""
    if role in HEADINGS:
        return HEADINGS[role]
    measure, colon, part = role.partition(":")
    name = assets.measures().name(measure)
    return f"{name}: {part}" if colon else name


def names_inferred(
    columns: Sequence[Column], rows: Sequence[tuple[int, Row]], set_by_hand: Iterable[str]
) -> int | None:
    """The column that seems to hold the names though no heading says so: texts, not figures; None where none does.

    A heading that says nothing goes before one that is not known, and the left before the right.
    """
    by_hand = set(set_by_hand)
    found: list[tuple[bool, int]] = []
    for column in columns:
        if column.role != IGNORED or column.choices or column.at in by_hand:
            continue
        texts = [cell.text for _, row in rows if (cell := row[column.place]) is not None]
        figures = sum(figure_in(text) is not None for text in texts)
        if texts and figures * 2 < len(texts):
            found.append((bool(column.label) and not is_corner(column.label), column.place))
    return min(found)[1] if found else None
