"""A block of text laid into a chart, as it comes from a spreadsheet."""

from __future__ import annotations

import csv
import io
from dataclasses import dataclass
from typing import TYPE_CHECKING

from sizekeeper.core.cells import parse_cell
from sizekeeper.core.chart import Chart
from sizekeeper.core.chart_edit import (
    next_size,
    size_named,
    with_block,
    with_row_added,
    with_size_added,
    with_size_renamed,
)
from sizekeeper.core.measure_search import find_measure, own_measure, plain_name
from sizekeeper.errors import ChartError

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sizekeeper.core.measure import Measures

SIZES = -1
"""The row number of the sizes themselves, above the first measure."""
MOST_SIZES = 200
MOST_MEASURES = 500
"""Charts larger than these are not for typing into; the reader of chart files takes them (coined)."""


@dataclass(frozen=True, slots=True)
class Paste:
    """What a paste would do: the chart after it, and the names of the sizes and measures that it adds."""

    chart: Chart
    sizes: tuple[str, ...] = ()
    measures: tuple[str, ...] = ()
    figures: int = 0


def block_from_text(text: str) -> list[list[str]]:
    """The cells of tab separated text; quoted cells may hold tabs and line ends, as spreadsheets write them.

    Raises:
        ChartError: the text is no table.
    """
    try:
        lines = list(csv.reader(io.StringIO(text.rstrip("\r\n")), delimiter="\t"))
    except csv.Error as error:
        raise ChartError("The clipboard holds something that is no table.") from error
    lines = [[" ".join(cell.split()) for cell in line] or [""] for line in lines]
    width = max((len(line) for line in lines), default=0)
    return [line + [""] * (width - len(line)) for line in lines]


def block_to_text(block: Sequence[Sequence[str]]) -> str:
    """Cells as tab separated text that spreadsheets take."""
    return "\n".join("\t".join(line) for line in block)


def paste(chart: Chart, row: int, column: int, block: Sequence[Sequence[str]], measures: Measures) -> Paste:
    """Lay a block into a chart, adding sizes and measures where it goes beyond the edge.

    A whole table, with sizes across its top and measures down its left side, finds its own places: measures and
    sizes that the chart has already are filled, others are added.

    Args:
        chart: the chart.
        row: the measure the block's top lands on, `SIZES` for the sizes above them.
        column: the size the block's left side lands on.
        block: lines of equal length.
        measures: the known measures, for names down the block's side.

    Raises:
        ChartError: the block is empty or too large, or two of its sizes have one name.
    """
    if not block or not any(any(line) for line in block):
        raise ChartError("There is nothing to paste: the clipboard holds no text.")
    if len(block[0]) + column > MOST_SIZES or len(block) + row > MOST_MEASURES:
        raise ChartError(f"The clipboard holds {len(block)} lines of {len(block[0])} cells: too many for a chart.")
    if row == SIZES and is_table(block, chart):
        return _paste_table(chart, block, measures)
    return _paste_block(chart, row, column, block)


def is_table(block: Sequence[Sequence[str]], chart: Chart) -> bool:
    """Whether a block has names down its left side: nothing there is a figure, and figures stand beside them."""
    names = [line[0] for line in block[1:]]
    beside = [cell for line in block[1:] for cell in line[1:]]
    return (
        bool(names)
        and all(name and parse_cell(name, chart.unit).low is None for name in names)
        and any(parse_cell(cell, chart.unit).low is not None for cell in beside)
    )


def fitting(chart: Chart, row: int, column: int, block: Sequence[Sequence[str]]) -> list[list[str]]:
    """The part of a block that lies within the chart's sizes and measures."""
    return [list(line[: len(chart.sizes) - column]) for line in block[: len(chart.rows) - row]]


def _paste_block(chart: Chart, row: int, column: int, block: Sequence[Sequence[str]]) -> Paste:
    labels = block[0] if row == SIZES else [""] * len(block[0])
    figures = block[1:] if row == SIZES else block
    top = max(row, 0)
    after, sizes = _with_sizes(chart, column, labels)
    after, added = _with_rows(after, top + len(figures) - len(chart.rows))
    after = with_block(after, top, column, figures) if figures else after
    return Paste(after, sizes, added, sum(bool(cell) for line in figures for cell in line))


def _with_sizes(chart: Chart, column: int, labels: Sequence[str]) -> tuple[Chart, tuple[str, ...]]:
    """The chart with labels over its sizes from a column on; new sizes are named by what is pasted, or in step."""
    after = chart
    added = []
    for at, label in enumerate(labels, start=column):
        if at < len(chart.sizes):
            # Held under a name nobody types until all are renamed, so that labels may change places.
            after = with_size_renamed(after, at, f"\0{at}") if label else after
        else:
            while len(after.sizes) < at:
                after = with_size_added(after, next_size(after))
            after = with_size_added(after, label or next_size(after))
            added.append(after.sizes[-1].label)
    for at, label in enumerate(labels, start=column):
        if at < len(chart.sizes) and label:
            after = with_size_renamed(after, at, label)
    return after, tuple(added)


def _with_rows(chart: Chart, lacking: int) -> tuple[Chart, tuple[str, ...]]:
    """The chart with more measures below, named by their place until she names them."""
    after = chart
    added: list[str] = []
    place = len(chart.rows)
    while len(added) < lacking:
        place += 1
        label = f"Measure {place}"
        if after.row(own_measure(label)) is None:
            after = with_row_added(after, own_measure(label), label)
            added.append(label)
    return after, tuple(added)


def _paste_table(chart: Chart, block: Sequence[Sequence[str]], measures: Measures) -> Paste:
    after = chart
    sizes: list[str] = []
    for label in block[0][1:]:
        if label and size_named(after, label) is None:
            after = with_size_added(after, label)
            sizes.append(label)
    added: list[str] = []
    figures = 0
    for line in block[1:]:
        after, index, new = _row_for(after, line[0], measures)
        added += [line[0]] if new else []
        for label, text in zip(block[0][1:], line[1:], strict=True):
            at = size_named(after, label) if label else None
            if at is not None and text:
                after = with_block(after, index, at, [[text]])
                figures += 1
    return Paste(after, tuple(sizes), tuple(added), figures)


def _row_for(chart: Chart, name: str, measures: Measures) -> tuple[Chart, int, bool]:
    """The row a printed name means, added where the chart has none; whether it was added."""
    known = find_measure(measures, name, chart.kind)
    measure = known.id if known else own_measure(name)
    for index, row in enumerate(chart.rows):
        if row.measure == measure or plain_name(row.label) == plain_name(name):
            return chart, index, False
    return with_row_added(chart, measure, name), len(chart.rows), True
