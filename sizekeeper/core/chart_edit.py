"""Edits of a chart, each a pure function from a chart to a new one.

Rows count down the measures and columns along the sizes, both from 0. Figures are parsed in the chart's unit.
"""

from __future__ import annotations

import itertools
import re
from dataclasses import replace
from typing import TYPE_CHECKING, TypeVar

from sizekeeper.core.cells import parse_cell
from sizekeeper.core.chart import Cell, Chart, ChartRow, Size, WrittenAs
from sizekeeper.core.measure_search import plain_name
from sizekeeper.errors import ChartError

if TYPE_CHECKING:
    from collections.abc import Collection, Iterable, Sequence
    from typing import Literal

_Item = TypeVar("_Item")
_ALIAS_MARK = re.compile(r"(?:^|\s+)/(?:\s+|$)|\|")


def size_from_text(text: str) -> Size:
    """A size as typed: `38`, or `38 / M` for a size that also goes by M.

    Raises:
        ChartError: nothing is typed.
    """
    names = [" ".join(name.split()) for name in _ALIAS_MARK.split(text.strip())]
    names = list(dict.fromkeys(name for name in names if name))
    if not names:
        raise ChartError("A size needs a name, like 38 or 38 / M.")
    return Size(names[0], tuple(names[1:]))


def size_text(size: Size) -> str:
    """A size as it is typed: its label and its other names."""
    return " / ".join(size.names)


def size_named(chart: Chart, name: str) -> int | None:
    """The column of the size that goes by a name, None where none does."""
    wanted = name.casefold()
    return next((i for i, s in enumerate(chart.sizes) if wanted in {n.casefold() for n in s.names}), None)


def with_cell(chart: Chart, row: int, column: int, text: str) -> Chart:
    """The chart with one figure typed anew."""
    return with_block(chart, row, column, [[text]])


def with_block(chart: Chart, row: int, column: int, texts: Sequence[Sequence[str]]) -> Chart:
    """The chart with a block of figures typed anew, its first at the given row and column.

    Raises:
        ChartError: the block goes beyond the chart's edge.
    """
    widest = max((len(line) for line in texts), default=0)
    if row < 0 or column < 0 or row + len(texts) > len(chart.rows) or column + widest > len(chart.sizes):
        raise ChartError("The block is larger than the chart from here on.")
    rows = list(chart.rows)
    for down, line in enumerate(texts):
        cells = list(rows[row + down].cells)
        cells[column : column + len(line)] = [parse_cell(text, chart.unit) for text in line]
        rows[row + down] = replace(rows[row + down], cells=tuple(cells))
    return replace(chart, rows=tuple(rows))


def cleared(chart: Chart, places: Iterable[tuple[int, int]]) -> Chart:
    """The chart with the figures at some rows and columns taken out."""
    rows = [list(row.cells) for row in chart.rows]
    for row, column in places:
        rows[row][column] = Cell()
    return replace(chart, rows=tuple(replace(r, cells=tuple(c)) for r, c in zip(chart.rows, rows, strict=True)))


def with_size_added(chart: Chart, text: str, at: int | None = None) -> Chart:
    """The chart with one more size, behind the last or before a column; its figures are empty.

    Raises:
        ChartError: the size has no name, or a name that another has already.
    """
    column = len(chart.sizes) if at is None else at
    size = _new_size(chart, text)
    sizes = (*chart.sizes[:column], size, *chart.sizes[column:])
    return _with_columns(chart, sizes, [*range(column), None, *range(column, len(chart.sizes))])


def with_size_renamed(chart: Chart, column: int, text: str) -> Chart:
    """The chart with other names for a size.

    Raises:
        ChartError: no name is left, or one that another size has already.
    """
    size = _new_size(chart, text, besides=column)
    return replace(chart, sizes=(*chart.sizes[:column], size, *chart.sizes[column + 1 :]))


def without_sizes(chart: Chart, columns: Collection[int]) -> Chart:
    """The chart without some sizes and their figures."""
    return _with_order(chart, [i for i in range(len(chart.sizes)) if i not in columns])


def with_size_moved(chart: Chart, column: int, to: int) -> Chart:
    """The chart with a size at another place on the size run."""
    order = list(range(len(chart.sizes)))
    return _with_order(chart, _moved(order, column, to))


def with_sizes_turned(chart: Chart) -> Chart:
    """The chart with its sizes in the opposite order, for a table printed from large to small."""
    return _with_order(chart, list(reversed(range(len(chart.sizes)))))


def with_sizes_of(chart: Chart, other: Chart) -> Chart:
    """The chart with the sizes of another behind its own, those it has already left out."""
    added = tuple(s for s in other.sizes if all(size_named(chart, name) is None for name in s.names))
    return _with_columns(chart, chart.sizes + added, [*range(len(chart.sizes)), *(None for _ in added)])


def with_row_added(chart: Chart, measure: str, label: str = "", at: int | None = None) -> Chart:
    """The chart with one more measure, below the last or above a row; its figures are empty.

    Raises:
        ChartError: the chart has this measure already, or none is named.
    """
    row = len(chart.rows) if at is None else at
    _check_measure(chart, measure, label)
    new = ChartRow(measure, tuple(Cell() for _ in chart.sizes), label)
    return replace(chart, rows=(*chart.rows[:row], new, *chart.rows[row:]))


def with_row_renamed(chart: Chart, row: int, measure: str, label: str = "") -> Chart:
    """The chart with a row that stands for another measure; its figures stay.

    Raises:
        ChartError: another row has this measure already, or none is named.
    """
    _check_measure(chart, measure, label, besides=row)
    return _with_row(chart, row, replace(chart.rows[row], measure=measure, label=label))


def without_rows(chart: Chart, rows: Collection[int]) -> Chart:
    """The chart without some measures and their figures."""
    return replace(chart, rows=tuple(r for i, r in enumerate(chart.rows) if i not in rows))


def with_row_moved(chart: Chart, row: int, to: int) -> Chart:
    """The chart with a measure higher up or further down."""
    return replace(chart, rows=tuple(_moved(list(chart.rows), row, to)))


def with_written_as(chart: Chart, row: int, written_as: WrittenAs) -> Chart:
    """The chart with a row whose figures are full, half or quarter girths. Having said so, there is no doubt left."""
    return _with_row(chart, row, replace(chart.rows[row], written_as=written_as, doubt=""))


def with_unit(chart: Chart, unit: Literal["cm", "in", "mm"]) -> Chart:
    """The chart with its bare numbers read in another unit; every text stays as typed."""
    rows = tuple(replace(r, cells=tuple(parse_cell(c.text, unit) for c in r.cells)) for r in chart.rows)
    return replace(chart, unit=unit, rows=rows)


def next_size(chart: Chart) -> str:
    """A name for the size behind the last: the last step of the labels goes on, else its place on the run."""
    numbers = [int(s.label) for s in chart.sizes[-2:] if s.label.isdecimal()]
    step = numbers[1] - numbers[0] if len(numbers) == 2 else 0  # noqa: PLR2004 - a step is between two sizes
    by_place = (f"Size {place}" for place in itertools.count(len(chart.sizes) + 1))
    proposed = itertools.chain([str(numbers[1] + step)] if step > 0 else [], by_place)
    return next(name for name in proposed if size_named(chart, name) is None)


def is_blank(chart: Chart) -> bool:
    """Whether no figure is written anywhere in the chart."""
    return not any(cell.text for row in chart.rows for cell in row.cells)


def _new_size(chart: Chart, text: str, besides: int | None = None) -> Size:
    size = size_from_text(text)
    for name in size.names:
        at = size_named(chart, name)
        if at is not None and at != besides:
            raise ChartError(f"The chart has a size {name} already.")
    return size


def _check_measure(chart: Chart, measure: str, label: str, besides: int | None = None) -> None:
    if not plain_name(measure):
        raise ChartError("A measure needs a name, like bust or cuff.")
    if any(r.measure == measure and i != besides for i, r in enumerate(chart.rows)):
        raise ChartError(f"The chart has a row for {label or measure.replace('_', ' ')} already.")


def _with_row(chart: Chart, row: int, new: ChartRow) -> Chart:
    return replace(chart, rows=(*chart.rows[:row], new, *chart.rows[row + 1 :]))


def _with_order(chart: Chart, order: list[int]) -> Chart:
    return _with_columns(chart, tuple(chart.sizes[i] for i in order), list(order))


def _with_columns(chart: Chart, sizes: tuple[Size, ...], sources: Sequence[int | None]) -> Chart:
    """The chart with other sizes; `sources` says which old column each takes its figures from, None for empty ones."""
    rows = tuple(replace(r, cells=tuple(Cell() if i is None else r.cells[i] for i in sources)) for r in chart.rows)
    return replace(chart, sizes=sizes, rows=rows)


def _moved(items: list[_Item], start: int, to: int) -> list[_Item]:
    items.insert(max(0, min(to, len(items) - 1)), items.pop(start))
    return items
