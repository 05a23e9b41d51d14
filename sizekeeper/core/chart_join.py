"""One chart laid into another of the same kind: sizes and measures found by name, figures replaced or added."""

from __future__ import annotations

import functools
import re
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from sizekeeper.core.cells import parse_cell, write_figure
from sizekeeper.core.chart import TIMES, Cell, Chart, ChartRow, Size
from sizekeeper.core.chart_edit import is_blank, size_named, with_sizes_turned
from sizekeeper.core.measure_search import plain_name

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sizekeeper.core.chart import WrittenAs
    from sizekeeper.core.length import Unit


@dataclass(frozen=True, slots=True)
class FigureChange:
    """A figure that stood there and is another one now, each as written."""

    row: ChartRow
    size: str
    old: str
    new: str


@dataclass(frozen=True, slots=True)
class Joined:
    """The chart with another laid into it, and what that changed: new sizes, new rows, figures new and different."""

    chart: Chart
    sizes: tuple[str, ...] = ()
    rows: tuple[ChartRow, ...] = ()
    changed: tuple[FigureChange, ...] = ()
    added: int = 0


def joined(chart: Chart, new: Chart) -> Joined:
    """A chart with the sizes, measures and figures of another laid into it.

    A size is the same where one of its names is, a measure where its id or its label is. Figures that the other chart
    does not give stay. An empty chart takes the other's unit; else figures in another unit carry it behind them.
    """
    if is_blank(chart):
        chart = replace(chart, unit=new.unit)
    columns = [i for size in new.sizes if (i := _column(chart, size)) is not None]
    if columns == sorted(columns, reverse=True) and len(columns) > 1:
        new = with_sizes_turned(new)
    wider, sizes = _with_sizes(chart, new)
    rows, added_rows, changed, added = list(wider.rows), [], [], 0
    at = [_column(wider, size) for size in new.sizes]
    places = [i for i in at if i is not None]
    for row in new.rows:
        index = _row(rows, row)
        if index is None:
            rows.append(_fresh(row, places, wider))
            added_rows.append(rows[-1])
            continue
        rows[index], differing, filled = _laid(rows[index], row, places, wider)
        changed += differing
        added += filled
    return Joined(replace(wider, rows=tuple(rows)), sizes, tuple(added_rows), tuple(changed), added)


def clear_text(cell: Cell, chart: Chart) -> Cell:
    """The cell with a text that means its figures by itself in a chart; the text stays where it does already."""
    if cell.low is None or cell.high is None:
        return cell
    unit = cell.low.unit
    exact = (cell.low.exact_cm, cell.high.exact_cm)
    ends = list(dict.fromkeys(write_figure(end.value, unit, cell.text) for end in (cell.low, cell.high)))
    written = "-".join(ends) if unit not in ("in", "ft") else " to ".join(ends)
    for text in (cell.text, f"{cell.text} {unit}", written, f"{written} {unit}"):
        found = _parsed(text, chart.unit)
        if found.low and found.high and (found.low.exact_cm, found.high.exact_cm) == exact:
            return found
    return cell


@functools.lru_cache(4096)
def _plain(label: str) -> str:
    return plain_name(label)


@functools.lru_cache(4096)  # the same few figures stand in every chart
def _parsed(text: str, unit: Unit) -> Cell:
    return parse_cell(text, unit)


def made_clear(chart: Chart) -> Chart:
    """The chart with every figure's text meaning the figure by itself, so that it can be typed over and read again."""
    rows = tuple(replace(row, cells=tuple(clear_text(cell, chart) for cell in row.cells)) for row in chart.rows)
    return replace(chart, rows=rows)


def merged(charts: Sequence[Chart]) -> list[Chart]:
    """Charts of which no two are of one kind and view: those that are, are laid together.

    Where two give one measure for the same size, the second keeps its figures in a row of its own, named after its
    chart.
    """
    whole: dict[tuple[str, str], Chart] = {}
    for chart in map(made_clear, charts):
        place = (chart.kind, chart.view)
        whole[place] = joined(whole[place], _set_apart(whole[place], chart)).chart if place in whole else chart
    return list(whole.values())


def _set_apart(chart: Chart, new: Chart) -> Chart:
    rows: list[ChartRow] = []
    for row in new.rows:
        index = _row(chart.rows, row)
        if index is None or not _clash(chart, chart.rows[index], new, row):
            rows.append(row)
            continue
        taken = {r.measure for r in (*chart.rows, *rows)}
        number = next(n for n in range(2, len(taken) + 3) if f"{row.measure}_{n}" not in taken)
        label = row.label or row.measure.replace("_", " ").capitalize()
        rows.append(replace(row, measure=f"{row.measure}_{number}", label=f"{label}, {new.name or number}"))
    return replace(new, rows=tuple(rows))


def _clash(chart: Chart, row: ChartRow, new: Chart, other: ChartRow) -> bool:
    """Whether two rows give different figures for one size."""
    for i, size in enumerate(new.sizes):
        at = _column(chart, size)
        if at is None:
            continue
        ours, theirs = row.lows()[at], other.lows()[i]
        if ours is not None and theirs is not None and (ours, row.highs()[at]) != (theirs, other.highs()[i]):
            return True
    return False


def _column(chart: Chart, size: Size) -> int | None:
    return next((i for name in size.names if (i := size_named(chart, name)) is not None), None)


def _row(rows: Sequence[ChartRow], wanted: ChartRow) -> int | None:
    same = next((i for i, row in enumerate(rows) if row.measure == wanted.measure), None)
    if same is not None or not wanted.label:
        return same
    name = _plain(wanted.label)
    return next((i for i, row in enumerate(rows) if _plain(row.label) == name), None)


def _with_sizes(chart: Chart, new: Chart) -> tuple[Chart, tuple[str, ...]]:
    """The chart with the other's sizes, each new one beside the size it stands beside there."""
    order: list[tuple[Size, int | None]] = [(size, i) for i, size in enumerate(chart.sizes)]
    added = []
    at = _start(chart, new)
    for size in new.sizes:
        column = _column(chart, size)
        if column is not None:
            at = next(i for i, (_, old) in enumerate(order) if old == column) + 1
            continue
        order.insert(at, (size, None))
        added.append(size.label)
        at += 1
    rows = tuple(replace(r, cells=tuple(Cell() if i is None else r.cells[i] for _, i in order)) for r in chart.rows)
    return replace(chart, sizes=tuple(size for size, _ in order), rows=rows), tuple(added)


def _start(chart: Chart, new: Chart) -> int:
    """Where a new size goes that nothing stands before: ahead of the first size both have, or by its number."""
    first = next((i for size in new.sizes if (i := _column(chart, size)) is not None), None)
    if first is not None:
        return first
    ours, theirs = _number(chart.sizes[:1]), _number(new.sizes[-1:])
    return 0 if ours is not None and theirs is not None and theirs < ours else len(chart.sizes)


def _number(sizes: Sequence[Size]) -> float | None:
    match = re.match(r"\d+(?:\.\d+)?", sizes[0].label) if sizes else None
    return float(match[0]) if match else None


def _fresh(row: ChartRow, places: Sequence[int], chart: Chart) -> ChartRow:
    cells = [Cell() for _ in chart.sizes]
    for i, cell in zip(places, row.cells, strict=True):
        cells[i] = clear_text(cell, chart)
    return replace(row, cells=tuple(cells))


def _laid(
    before: ChartRow, new: ChartRow, places: Sequence[int], chart: Chart
) -> tuple[ChartRow, list[FigureChange], int]:
    """A row with another's figures laid over its own; how many places were empty before."""
    given = {i: cell for i, cell in zip(places, new.cells, strict=True) if cell.low is not None}
    whole = all(i in given for i, cell in enumerate(before.cells) if cell.low is not None)
    row = replace(before, written_as=new.written_as, doubt=new.doubt) if given and whole else before
    cells, changed, added = list(before.cells), [], 0
    for i, cell in given.items():
        old, fresh = cells[i], clear_text(_rewritten(cell, new.written_as, row.written_as), chart)
        same = _ends(old, TIMES[before.written_as]) == _ends(cell, TIMES[new.written_as])
        if same and before.written_as == row.written_as:
            continue
        cells[i] = fresh
        added += not old.text
        if old.text and not same:
            changed.append(FigureChange(row, chart.sizes[i].label, old.text, fresh.text))
    return replace(row, cells=tuple(cells)), changed, added


def _ends(cell: Cell, times: int) -> tuple[object, object] | None:
    if cell.low is None or cell.high is None:
        return None
    return cell.low.exact_cm * times, cell.high.exact_cm * times


def _rewritten(cell: Cell, written_as: WrittenAs, wanted: WrittenAs) -> Cell:
    """A figure written as half, quarter or full girth, written another way."""
    if written_as == wanted or cell.low is None or cell.high is None:
        return cell
    times = TIMES[written_as]
    low, high = (replace(end, value=end.value * times / TIMES[wanted], text="") for end in (cell.low, cell.high))
    texts = list(dict.fromkeys(write_figure(end.value, end.unit, cell.text) for end in (low, high)))
    return Cell(" to ".join(texts), low, high)
