"""The print scale: whether a pattern came out of the printer at its true size.

k = test square as measured / as it should be. It multiplies figures printed in the pattern's text (the finished chart,
listed piece lengths), never what was measured on the printed paper, which has the scale in it already.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction
from typing import TYPE_CHECKING

from sizekeeper.core.length import Length
from sizekeeper.errors import PlanError

if TYPE_CHECKING:
    from sizekeeper.core.chart import Cell, Chart
    from sizekeeper.core.piece import PrintedSquare

WARNED_FROM = Fraction(1, 100)
"""More than this off the true size is warned of (coined)."""


@dataclass(frozen=True, slots=True)
class PrintScale:
    """The factor a printed pattern is off by, exact; 1 is true."""

    factor: Fraction = Fraction(1)

    @property
    def off(self) -> bool:
        """Whether it is so far off that the pattern is better printed again."""
        return abs(self.factor - 1) > WARNED_FROM

    def applied(self, printed: Fraction) -> Fraction:
        """A figure from the pattern's text, as it came out on the paper; exact cm."""
        return printed * self.factor


def print_scale(square: PrintedSquare | None) -> PrintScale:
    """The scale that a test square shows; true where there is none.

    Raises:
        PlanError: a side of the square is nothing.
    """
    if square is None:
        return PrintScale()
    if square.nominal.value <= 0 or square.measured.value <= 0:
        raise PlanError("The test square needs the side as measured and the side as it should be.")
    return PrintScale(square.measured.exact_cm / square.nominal.exact_cm)


def scaled_chart(chart: Chart, scale: PrintScale) -> Chart:
    """A finished chart as the printed paper has it: printed figures times the factor, measured rows as they are."""
    if scale.factor == 1:
        return chart
    rows = [
        row if row.measured else replace(row, cells=tuple(_scaled(cell, scale) for cell in row.cells))
        for row in chart.rows
    ]
    return replace(chart, rows=tuple(rows))


def _scaled(cell: Cell, scale: PrintScale) -> Cell:
    low, high = (None if end is None else _times(end, scale) for end in (cell.low, cell.high))
    return replace(cell, low=low, high=high)


def _times(length: Length, scale: PrintScale) -> Length:
    return Length(length.value * scale.factor, length.unit, length.text)
