"""What a chart is for a moment while rows or columns of its table come or go."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sizekeeper.core.chart import Cell, Chart, ChartRow, Size

if TYPE_CHECKING:
    from collections.abc import Sequence


def first_difference(old: Sequence[str], new: Sequence[str]) -> int:
    """The first place where two lists differ."""
    pairs = zip(old, new, strict=False)
    return next((i for i, (a, b) in enumerate(pairs) if a != b), min(len(old), len(new)))


def columns_spliced(chart: Chart, at: int, more: int) -> Chart:
    """The chart with nameless, empty sizes before a column."""
    blank = tuple(Cell() for _ in range(more))
    rows = tuple(replace(r, cells=(*r.cells[:at], *blank, *r.cells[at:])) for r in chart.rows)
    sizes = (*chart.sizes[:at], *(Size("") for _ in range(more)), *chart.sizes[at:])
    return replace(chart, sizes=sizes, rows=rows)


def rows_spliced(chart: Chart, at: int, more: int) -> Chart:
    """The chart with nameless, empty measures before a row."""
    blank = ChartRow("", tuple(Cell() for _ in chart.sizes))
    return replace(chart, rows=(*chart.rows[:at], *[blank] * more, *chart.rows[at:]))
