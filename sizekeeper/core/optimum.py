"""The best position of all on the size run, listed, drawable or not."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from sizekeeper.core.misfit import SHORT_TIMES

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from sizekeeper.core.problem import Problem

_SAME_MISFIT = 1e-12


def best_position(problem: Problem) -> float | None:
    """The position with the least misfit over [-1, n], the larger where several are equal.

    Between neighbouring listed sizes every difference is linear until it changes sign or enters a range, so the
    squared misfit is a parabola on each stretch between such points: its lowest point is found exactly. Positions where
    a region that counts has no figure are looked at only when there are no others.

    Returns:
        The position, None when no region that counts has a figure anywhere.
    """
    listed = np.arange(problem.sizes, dtype=float)
    tried = np.concatenate((listed, _points(problem)))
    misfits, complete = problem.judged(tried)
    usable = complete & ~np.isnan(misfits)
    if not usable.any():
        usable = ~np.isnan(misfits)
    if not usable.any():
        return None
    least = misfits[usable].min()
    return float(tried[usable & (misfits <= least + _SAME_MISFIT)].max())


def _points(problem: Problem) -> NDArray[np.float64]:
    """Every position at which the least misfit can lie: ends and sign changes of each stretch, and lowest points.

    Arrays have shape (regions, pairs, stretches): pairs of neighbouring whole positions from -1 to n.
    """
    ends = np.arange(-1.0, problem.sizes + 1)
    sides = [figures - problem.wanted[:, None] for figures in problem.offered(ends)]
    starts = [_known(side[:, :-1])[:, :, None] for side in sides]
    steps = [_known(side[:, 1:] - side[:, :-1])[:, :, None] for side in sides]
    cuts = np.sort(np.concatenate([_crossings(*line) for line in zip(starts, steps, strict=True)], axis=1), axis=1)
    stops = np.concatenate((np.zeros((len(cuts), 1)), cuts, np.ones((len(cuts), 1))), axis=1)
    lowest = _lowest(problem, starts, steps, stops)
    return np.asarray((ends[:-1, None] + np.concatenate((stops, lowest), axis=1)).ravel())


def _known(values: NDArray[np.float64]) -> NDArray[np.float64]:
    """The figures, 0 where there is none."""
    return np.where(np.isnan(values), 0.0, values)


def _crossings(start: NDArray[np.float64], step: NDArray[np.float64]) -> NDArray[np.float64]:
    """Where each line crosses zero, as parts of the way from 0 to 1, shape (pairs, regions); 1 where it does not."""
    with np.errstate(divide="ignore", invalid="ignore"):
        at = -start[:, :, 0].T / step[:, :, 0].T
    return np.where((at > 0) & (at < 1), at, 1.0)


def _lowest(
    problem: Problem,
    starts: list[NDArray[np.float64]],
    steps: list[NDArray[np.float64]],
    stops: NDArray[np.float64],
) -> NDArray[np.float64]:
    """The lowest point of the parabola on each stretch between neighbouring stops, shape (pairs, stretches)."""
    middle = (stops[:, :-1] + stops[:, 1:]) / 2
    low, high = (start + middle[None] * step for start, step in zip(starts, steps, strict=True))
    short, over = high < 0, (low > 0) & ~problem.adjustable[:, None, None]
    factor = problem.weight[:, None, None] * (SHORT_TIMES**2 * short + over)
    start, step = (np.where(short, of[1], of[0]) for of in (starts, steps))
    curve, slope = (factor * step * step).sum(axis=0), (factor * step * start).sum(axis=0)
    with np.errstate(divide="ignore", invalid="ignore"):
        at = np.where(curve > 0, -slope / curve, stops[:, 1:])
    return np.minimum(np.maximum(at, stops[:, :-1]), stops[:, 1:])
