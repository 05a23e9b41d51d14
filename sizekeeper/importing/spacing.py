"""Sheets whose lines are set apart by blank ones: the blank ones part nothing there, so they are taken out."""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING

from sizekeeper.importing.grid import Sheet

if TYPE_CHECKING:
    from sizekeeper.importing.grid import Row

_LEAST, _NEARLY_ALL = 4, 0.8


def without_spacing(sheet: Sheet) -> Sheet:
    """The sheet without its blank rows or columns where nearly every filled one stands alone; cells keep addresses."""
    rows = _without_blanks(sheet.rows)
    columns = _without_blanks(tuple(zip(*rows, strict=True)))
    if len(rows) == len(sheet.rows) and len(columns) == sheet.width:
        return sheet
    return Sheet(sheet.name, tuple(zip(*columns, strict=True)), sheet.single_column)


def _without_blanks(lines: tuple[Row, ...]) -> tuple[Row, ...]:
    runs = [len(list(run)) for filled, run in groupby(lines, key=any) if filled]
    alone = sum(length == 1 for length in runs)
    if len(runs) < _LEAST or alone < _NEARLY_ALL * len(runs):
        return lines
    return tuple(line for line in lines if any(line))
