"""What looks wrong in a table that was read: each doubt is a flag with its cell; the figures stay as printed."""

from __future__ import annotations

import statistics
from itertools import pairwise
from typing import TYPE_CHECKING

from sizekeeper.core.measure import TORSO_GIRTHS
from sizekeeper.importing.draft import DraftCell, DraftRow, DraftTable, Flag
from sizekeeper.importing.halves import bodies_for, matched_figures
from sizekeeper.importing.sizes import gaps

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

OFF = 0.5
"""A step over this share off the row's median step is uneven (design of the chart contract)."""

_EQUAL_CM = 1e-6
_LEAST = 3


def doubts_of(table: DraftTable) -> Iterator[Flag]:
    """The doubts within one table."""
    falls = _direction(table)
    for row in table.rows:
        yield from _row_doubts(row, table, falls)
    for i in gaps(list(table.labels)):
        before, after = table.labels[i - 1], table.labels[i]
        yield Flag("size_gap", table.sizes[i].at, f"no size between {before} and {after}", table.sheet)


def _direction(table: DraftTable) -> int:
    """1 where most rows rise with the sizes, -1 where most fall because the sizes are listed from the largest down."""
    given = [[cell.low for cell in row.cells if cell.low is not None] for row in table.rows]
    ends = [figures[-1] - figures[0] for figures in given if len(figures) > 1]
    return -1 if sum(e < 0 for e in ends) > sum(e > 0 for e in ends) else 1


def _row_doubts(row: DraftRow, table: DraftTable, direction: int) -> Iterator[Flag]:
    """A step over a size that has no figure counts as that many equal ones."""
    if row.same_for_all_sizes:
        return
    figures = [(i, cell, v) for i, (cell, v) in enumerate(zip(row.cells, row.cm, strict=True)) if v is not None]
    steps = [(b - a) * direction / (j - i) for (i, _, a), (j, _, b) in pairwise(figures)]
    if len(steps) < _LEAST - 1:
        return
    if any(step < -_EQUAL_CM for step in steps) and any(step > _EQUAL_CM for step in steps):
        yield _flag("non_monotonic", figures[_odd_one(steps)][1], row, table, "out of step with the sizes beside it")
    elif all(step <= _EQUAL_CM for step in steps) and any(step < -_EQUAL_CM for step in steps):
        yield _flag("non_monotonic", figures[1][1], row, table, "falls from size to size")
    yield from _uneven(steps, [cell for _, cell, _ in figures], row, table)


def _uneven(steps: Sequence[float], cells: Sequence[DraftCell], row: DraftRow, table: DraftTable) -> Iterator[Flag]:
    median = statistics.median(steps)
    if abs(median) <= _EQUAL_CM:
        return
    off = [i for i, step in enumerate(steps) if abs(step - median) > OFF * abs(median) + _EQUAL_CM]
    told: set[int] = set()
    for i in off:
        if i in told:
            continue
        pair = i + 1 in off and (steps[i] - median) * (steps[i + 1] - median) < 0
        told |= {i, i + 1} if pair else {i}
        yield _flag("uneven_step", cells[i + 1], row, table, "the step differs by more than half from the usual one")


def _odd_one(steps: Sequence[float]) -> int:
    """The place of the figure without which the row is most even: the likely misprint."""
    sums = [0.0]
    for step in steps:
        sums.append(sums[-1] + step)
    return min(range(len(sums)), key=lambda i: (_falls(sums, i), _spread(sums, i), -i))


def _without(values: Sequence[float], i: int) -> list[float]:
    """The steps of a row without one figure, a step over its place shared between both sides."""
    places = [k for k in range(len(values)) if k != i]
    return [(values[b] - values[a]) / (b - a) for a, b in pairwise(places)]


def _falls(values: Sequence[float], i: int) -> int:
    return sum(step < -_EQUAL_CM for step in _without(values, i))


def _spread(values: Sequence[float], i: int) -> float:
    steps = _without(values, i)
    middle = statistics.median(steps)
    return sum((step - middle) ** 2 for step in steps)


def _flag(code: str, cell: DraftCell, row: DraftRow, table: DraftTable, note: str) -> Flag:
    return Flag(code, cell.at, f"{row.label}: {note}", table.sheet)


def doubts_between(tables: Sequence[DraftTable]) -> Iterator[Flag]:
    """The doubts that show when the finished tables are held against the body tables."""
    for table in tables:
        bodies = bodies_for(table, tables) if table.kind == "finished" else []
        yield from _negative_ease(table, bodies)
        body = next((b for b in bodies if set(b.labels) & set(table.labels)), None)
        if body is not None:
            yield from _lacking(table, body)


def _negative_ease(table: DraftTable, bodies: Sequence[DraftTable]) -> Iterator[Flag]:
    for row in table.rows:
        if row.dimension != "girth" or row.doubt:
            continue
        for body in bodies:
            other = next((o for o in body.rows if o.measure == row.measure), None)
            found = matched_figures(row, table, other, body) if other else {}
            less = [label for label, (ours, theirs) in found.items() if ours < theirs - _EQUAL_CM]
            if less:
                cell = row.cells[table.labels.index(less[0])]
                yield _flag(
                    "negative_ease", cell, row, table, f"finished is less than the body in size {', '.join(less)}"
                )
                break


def _lacking(table: DraftTable, body: DraftTable) -> Iterator[Flag]:
    """Torso girths that the body chart gives and the finished one does not: fit cannot be judged there."""
    ours, theirs = {row.measure for row in table.rows}, {row.measure for row in body.rows}
    if not ours & set(TORSO_GIRTHS):
        return
    for row in body.rows:
        if row.measure in TORSO_GIRTHS and row.measure in theirs - ours:
            yield Flag("missing_row", "", f"{row.label}: the finished measurements do not give it", table.sheet)
