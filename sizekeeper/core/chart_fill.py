"""Filling a chart's row to the right by a constant step, as graded charts go on."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sizekeeper.core.cells import write_figure
from sizekeeper.core.chart_edit import with_block
from sizekeeper.core.length import CM_PER, Length, Unit
from sizekeeper.errors import ChartError

if TYPE_CHECKING:
    from sizekeeper.core.chart import Cell, Chart


def step_before(chart: Chart, row: int, column: int) -> Length | None:
    """The step that leads to a figure from the one on its left, in the figure's unit; None where either is missing."""
    if column < 1:
        return None
    left, here = chart.rows[row].cells[column - 1], chart.rows[row].cells[column]
    if left.low is None or here.low is None:
        return None
    unit = here.low.unit
    return Length((here.low.exact_cm - left.low.exact_cm) / CM_PER[unit], unit)


def fill_start(chart: Chart, row: int, column: int) -> int | None:
    """Where a fill begins: the last column with a figure, from the given one leftwards; None where there is none."""
    return next((at for at in range(column, -1, -1) if chart.rows[row].cells[at].low is not None), None)


def filled_right(chart: Chart, row: int, column: int, step: Length, last: int | None = None) -> Chart:
    """The chart with a row filled to the right of a figure by a constant step.

    Args:
        chart: the chart.
        row: the row to fill.
        column: the column of the figure to start from.
        step: what each further size adds; it may be negative.
        last: the last column to fill, the last size unless given.

    Raises:
        ChartError: there is no figure to start from, or a figure would not be above zero.
    """
    start = chart.rows[row].cells[column]
    end = len(chart.sizes) - 1 if last is None else last
    if start.low is None:
        raise ChartError("There is no figure to start from.")
    if start.low.exact_cm + step.exact_cm * (end - column) <= 0:
        raise ChartError("The figures would fall below zero: the step is too large.")
    texts = [_stepped(start, step, times, chart.unit) for times in range(1, end - column + 1)]
    return with_block(chart, row, column + 1, [texts])


def _stepped(start: Cell, step: Length, times: int, chart_unit: Unit) -> str:
    """A figure or range some steps on from another, written like it."""
    ends = [end for end in (start.low, start.high) if end is not None]
    written = [_written(end, step, times, start.text, chart_unit) for end in ends]
    return "-".join(dict.fromkeys(written)) if start.low != start.high else written[0]


def _written(end: Length, step: Length, times: int, like: str, chart_unit: Unit) -> str:
    value = end.value + step.exact_cm * times / CM_PER[end.unit]
    figure = write_figure(value, end.unit, like)
    return figure if end.unit == chart_unit else f"{figure} {end.unit}"
