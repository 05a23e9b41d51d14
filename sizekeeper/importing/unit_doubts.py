"""Doubts about a unit that is printed: figures that no person has in it, and that people do have in another."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sizekeeper import assets
from sizekeeper.core.length import CM_PER
from sizekeeper.importing.amounts import UNITS
from sizekeeper.importing.draft import Flag

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sizekeeper.importing.draft import ChartUnit, DraftRow, DraftTable

CODE = "unit_doubtful"
_FLAT = 2.5
"""A girth printed flat is half of it, and a very small child still has more than that part (coined)."""
_LARGEST_EASE = 1.6
"""A garment's girth beyond this many times the largest body's is in another unit (coined)."""


def unit_doubts(table: DraftTable) -> Iterator[Flag]:
    """One flag at the first figure where most rows are so, else one at the label of each such row."""
    judged = {row.label_at: likelier_unit(row, table) for row in table.rows if _is_judged(row, table)}
    doubtful = {at: unit for at, unit in judged.items() if unit}
    if len(doubtful) * 2 > len(judged):
        unit = next(iter(doubtful.values()))
        start = table.key.partition("!")[2]
        yield Flag(CODE, start, f"the figures are headed {table.unit} but look like {unit}", table.sheet)
        return
    for row in table.rows:
        likelier = doubtful.get(row.label_at)
        if likelier:
            yield Flag(
                CODE, row.label_at, f"{row.label}: read in {row.unit_in_file} but looks like {likelier}", table.sheet
            )


def is_of_people(table: DraftTable) -> bool:
    """Whether any figure of a measure we know can be a person's or a garment's, where there are such measures."""
    rows = [row for row in table.rows if row.measure in assets.measures() and any(cm is not None for cm in row.cm)]
    spans = [(assets.measures()[row.measure].human_cm, row) for row in rows]
    judged = [(span, row) for span, row in spans if span is not None]
    return not judged or any(cm is not None and span[0] / _FLAT <= cm for span, row in judged for cm in row.cm)


def _is_judged(row: DraftRow, table: DraftTable) -> bool:
    measures = assets.measures()
    known = row.measure in measures and any(cell.low is not None for cell in row.cells)
    if table.kind == "body":
        return known
    return known and not row.doubt and row.dimension == "girth"


def likelier_unit(row: DraftRow, table: DraftTable) -> ChartUnit | None:
    """The unit in which all figures are human, where in their own none is; None for rows that say nothing of it."""
    if not _is_judged(row, table):
        return None
    span = assets.measures()[row.measure].human_cm
    if span is None:
        return None
    low, high = span
    high *= _LARGEST_EASE if table.kind == "finished" else 1
    figures = [cm for cm in row.cm if cm is not None]
    if any(low <= cm <= high for cm in figures):
        return None
    own = float(CM_PER[row.unit_in_file])
    for unit in UNITS:
        times = float(CM_PER[unit]) / own
        if unit != row.unit_in_file and all(low <= cm * times <= high for cm in figures):
            return unit
    return None
