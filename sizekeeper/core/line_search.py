"""The choice of k lines that serves everybody with the least loss: exact, by depth-first search under a sharp bound.

The costs have shape (people, lines), the lines from small to large. Somebody's cost nearly always falls up to her own
best line and rises behind it. For costs that do, only the chosen lines on either side of her best come into question,
so the total is a sum over neighbouring chosen lines, and a table of sums along the run (`_completions`) gives the best
set. For costs that do not, the largest costs below them that do bound the total from below; the search follows that
bound and weighs every set it ends at by the true costs, so what it finds is the least of all.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

if TYPE_CHECKING:
    from collections.abc import Iterator

Costs = NDArray[np.float64]
SAME_LOSS = 1e-9
"""Sums of squared misfits nearer than this, in cm², are the same (coined)."""


def best_lines(costs: Costs, *, listed: NDArray[np.bool_]) -> Iterator[list[int]]:
    """The best one line, the best two, ... : the columns of each set in rising order.

    Numbers of lines with which not everybody has a line are skipped. Of sets as good as each other the one found first
    counts: printed lines before lines between, larger before smaller.

    Args:
        costs: shape (people, lines), never negative; infinite where a line does not serve somebody.
        listed: shape (lines,), which lines are printed.
    """
    search = _Search(costs, _order(listed), *_steps(_one_valley(costs)))
    for count in range(1, costs.shape[1] + 1):
        found = search.least(count)
        if found:
            yield found


def _order(listed: NDArray[np.bool_]) -> NDArray[np.int64]:
    """The lines in the order in which they are tried: printed ones first, the larger first."""
    return np.lexsort((-np.arange(len(listed)), ~listed))


def _one_valley(costs: Costs) -> tuple[Costs, NDArray[np.int64]]:
    """The largest costs not above these that fall to each one's best line and rise behind it; and where that is."""
    best = costs.argmin(axis=1)
    falling = np.minimum.accumulate(costs, axis=1)
    rising = np.minimum.accumulate(costs[:, ::-1], axis=1)[:, ::-1]
    before = np.arange(costs.shape[1])[None, :] <= best[:, None]
    return np.where(before, falling, rising), best


def _steps(valley: tuple[Costs, NDArray[np.int64]]) -> tuple[Costs, Costs, Costs]:
    """What people pay between two chosen neighbours, before the first chosen line, and from the last one on.

    Those whose best line lies from one chosen line up to, not on, the next take the cheaper of the two.
    """
    costs, best = valley
    lines = costs.shape[1]
    at = np.arange(lines)
    first = np.where(best[:, None] < at[None, :], costs, 0.0).sum(axis=0)
    last = np.where(best[:, None] >= at[None, :], costs, 0.0).sum(axis=0)
    step = np.full((lines, lines), np.inf)
    for line in range(lines):
        inside = (best[:, None] >= line) & (best[:, None] < at[None, :])
        paid = np.where(inside, np.minimum(costs[:, line, None], costs), 0.0).sum(axis=0)
        step[line, line + 1 :] = paid[line + 1 :]
    return first, step, last


@dataclass
class _Search:
    """The search for one table of costs; `_completions[m][i]` is the least that m further lines behind line i leave."""

    costs: Costs
    order: NDArray[np.int64]
    first: Costs
    step: Costs
    last: Costs
    _completions: list[Costs] = field(default_factory=list)
    _least: float = np.inf
    _found: list[int] = field(default_factory=list)

    def least(self, count: int) -> list[int]:
        """The best set of so many lines, empty where none serves everybody."""
        while len(self._completions) < count:
            before = self._completions[-1] if self._completions else None
            self._completions.append(self.last if before is None else (self.step + before[None, :]).min(axis=1))
        self._least, self._found = np.inf, []
        self._follow([], 0.0, count)
        return self._found

    def _follow(self, chosen: list[int], paid: float, left: int) -> None:
        """Try the lines that may come next, the most promising first, while they can better what was found."""
        if not left:
            total = float(self.costs[:, chosen].min(axis=1).sum())
            if total < self._least - SAME_LOSS or (not self._found and total < np.inf):
                self._least, self._found = total, chosen
            return
        reach = paid + (self.step[chosen[-1]] if chosen else self.first)
        bound = (reach + self._completions[left - 1])[self.order]
        for i in np.argsort(np.round(bound, 9), kind="stable"):
            if not bound[i] < self._least - SAME_LOSS:
                return
            line = int(self.order[i])
            self._follow([*chosen, line], float(reach[line]), left - 1)
