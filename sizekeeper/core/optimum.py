"""The best position of all on the size run, listed, drawable or not."""

from __future__ import annotations

import itertools
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
    tried = _points(problem)
    tried = np.unique(np.concatenate((tried, np.arange(problem.sizes, dtype=float))))
    misfits = problem.misfit(tried)
    complete = problem.complete(tried)
    usable = complete & ~np.isnan(misfits)
    if not usable.any():
        usable = ~np.isnan(misfits)
    if not usable.any():
        return None
    least = misfits[usable].min()
    return float(tried[usable & (misfits <= least + _SAME_MISFIT)].max())


def _points(problem: Problem) -> NDArray[np.float64]:
    """Every position at which the least misfit can lie: ends and sign changes of each stretch, and lowest points."""
    out: list[float] = []
    for start in range(-1, problem.sizes):
        ends = np.array([float(start), float(start + 1)])
        low, high = problem.offered(ends)
        known = np.asarray(~np.isnan(low).any(axis=1))
        if not known.any():
            continue
        spans = (low - problem.wanted[:, None], high - problem.wanted[:, None])
        inner = [x for side in spans for x in _crossings(side[known])]
        stops = np.unique(np.clip(np.array([0.0, *inner, 1.0]), 0.0, 1.0))
        lowest = [_lowest(problem, spans, known, a, b) for a, b in itertools.pairwise(stops)]
        out.extend(start + x for x in (*stops, *lowest))
    return np.array(out, dtype=float)


def _crossings(side: NDArray[np.float64]) -> NDArray[np.float64]:
    """Where lines from `side[:, 0]` to `side[:, 1]` cross zero, as parts of the way."""
    step = side[:, 1] - side[:, 0]
    moving = step != 0
    return np.asarray(-side[moving, 0] / step[moving])


def _lowest(
    problem: Problem,
    spans: tuple[NDArray[np.float64], NDArray[np.float64]],
    known: NDArray[np.bool_],
    a: float,
    b: float,
) -> float:
    """The lowest point of the parabola on one stretch [a, b] of parts of the way."""
    middle = (a + b) / 2
    low, high = (side[:, 0] + middle * (side[:, 1] - side[:, 0]) for side in spans)
    short, over = high < 0, (low > 0) & ~problem.adjustable
    side = np.where(short[:, None], spans[1], spans[0])
    factor = np.where(known & (short | over), problem.weight * np.where(short, SHORT_TIMES**2, 1.0), 0.0)
    start = np.where(known, side[:, 0], 0.0)
    step = np.where(known, side[:, 1] - side[:, 0], 0.0)
    curve = float((factor * step * step).sum())
    if curve <= 0:
        return b
    return float(np.clip(-float((factor * step * start).sum()) / curve, a, b))
