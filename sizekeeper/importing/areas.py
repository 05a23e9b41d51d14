"""The parts of a sheet that hold tables, set by hand: marked cells, or the tables as found with another way to lie."""

from __future__ import annotations

from dataclasses import replace
from itertools import combinations
from typing import TYPE_CHECKING

from sizekeeper.importing.grid import address

if TYPE_CHECKING:
    from collections.abc import Iterable

    from sizekeeper.importing.draft import Corrections, DraftTable
    from sizekeeper.importing.grid import Sheet
    from sizekeeper.importing.opened import Opened
    from sizekeeper.importing.raw import Orientation

Box = tuple[int, int, int, int]
"""First row, first column, last row and last column, from 0, all included."""


def area_words(box: Box) -> str:
    """A box as `B2:F9`."""
    return f"{address(box[0], box[1])}:{address(box[2], box[3])}"


def with_area(corrections: Corrections, sheet: str, box: Box, *, beside_others: bool = False) -> Corrections:
    """The corrections with an area of a sheet that holds a table: the only one, or beside those set before."""
    before = corrections.areas.get(sheet, ()) if beside_others else ()
    area = (area_words(box), None)
    kept = tuple(one for one in before if one[0] != area[0])
    return replace(corrections, areas={**corrections.areas, sheet: (*kept, area)})


def without_areas(corrections: Corrections, sheet: str) -> Corrections:
    """The corrections with the tables of a sheet looked for everywhere again."""
    return replace(corrections, areas={name: areas for name, areas in corrections.areas.items() if name != sheet})


def with_orientation(opened: Opened, table: DraftTable, orientation: Orientation) -> Corrections:
    """The corrections with a table read another way; tables that lie over each other are turned together."""
    corrections = opened.answers.corrections
    sheet = next(sheet for sheet in opened.sheets if sheet.name == table.sheet)
    tables = [t for t in opened.draft.tables if t.sheet == table.sheet]
    set_by_hand = corrections.areas.get(sheet.name, ())
    if len(set_by_hand) == 1 or (not set_by_hand and len(tables) == 1):
        area = set_by_hand[0][0] if set_by_hand else area_words(_whole(sheet))
        return _set(corrections, sheet.name, [(area, orientation)])
    boxes = [box_of(sheet, t) for t in tables]
    if any(_meet(one, other) for one, other in combinations(boxes, 2)):
        return _set(corrections, sheet.name, [(area_words(_whole(sheet)), orientation)])
    boxes = [_with_words_above(box, boxes) for box in boxes]
    ways = [orientation if t is table else t.orientation for t in tables]
    return _set(corrections, sheet.name, [(area_words(box), way) for box, way in zip(boxes, ways, strict=True)])


def _set(corrections: Corrections, sheet: str, areas: Iterable[tuple[str, Orientation]]) -> Corrections:
    return replace(corrections, areas={**corrections.areas, sheet: tuple(areas)})


def _whole(sheet: Sheet) -> Box:
    return 0, 0, max(len(sheet.rows) - 1, 0), max(sheet.width - 1, 0)


def box_of(sheet: Sheet, table: DraftTable) -> Box:
    """The smallest box around a table's sizes, labels and figures."""
    cells = {size.at for size in table.sizes} | {row.label_at for row in table.rows}
    cells |= {cell.at for row in table.rows for cell in row.cells}
    places = [
        (r, c)
        for r, row in enumerate(sheet.rows)
        for c, cell in enumerate(row)
        if cell is not None and cell.at in cells
    ]
    if not places:
        return _whole(sheet)
    rows, columns = [r for r, _ in places], [c for _, c in places]
    return min(rows), min(columns), max(rows), max(columns)


def _meet(one: Box, other: Box) -> bool:
    return one[0] <= other[2] and other[0] <= one[2] and one[1] <= other[3] and other[1] <= one[3]


def _with_words_above(box: Box, boxes: Iterable[Box]) -> Box:
    """The box up to the next table above it, since a title there may name the unit or the kind."""
    above = [b[2] + 1 for b in boxes if b[2] < box[0] and b[1] <= box[3] and box[1] <= b[3]]
    return max(above, default=0), box[1], box[2], box[3]
