"""How sure a size is: how far one body measure may shift before another listed size is best.

While one body figure shifts and all else stays, the squared misfit of a size is a parabola between a few stops: where
the difference changes sign, enters a range, or the garment no longer closes. So the shift at which one size overtakes
another is the root of a quadratic, found exactly, stop by stop.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from sizekeeper.core.ease import SAME
from sizekeeper.core.misfit import difference, loss
from sizekeeper.core.problem import Problem
from sizekeeper.core.ranking import order

FARTHEST_CM = 15.0
_FLAT = 1e-12


class Overtaken(NamedTuple):
    """A listed size becomes first when the body is shifted so far."""

    shift_cm: float
    size: int


@dataclass(frozen=True)
class _Shift:
    """One region's body shifting one way: what it takes to know each listed size's squared misfit at any shift."""

    problem: Problem
    region: int
    sign: float
    rest: NDArray[np.float64]
    weights: NDArray[np.float64]
    complete: NDArray[np.bool_]
    others_close: NDArray[np.bool_]

    def wanted(self, shift: NDArray[np.float64]) -> NDArray[np.float64]:
        """Body and ease asked for at shifts, cm."""
        p, r = self.problem, self.region
        body = p.body[r] + self.sign * shift
        return np.asarray(body + p.asked[r] + p.share[r] * body)

    def squared(self, size: NDArray[np.int64], shift: NDArray[np.float64]) -> NDArray[np.float64]:
        """The squared misfit of sizes at shifts; the two broadcast."""
        p, r = self.problem, self.region
        diff = difference(p.low[r][size], p.high[r][size], self.wanted(shift))
        part = loss(np.where(np.isnan(diff), 0.0, diff), p.weight[r], p.adjustable[r])
        return np.asarray((self.rest[size] + part) / self.weights[size])

    def wearable(self, size: NDArray[np.int64], shift: NDArray[np.float64]) -> NDArray[np.bool_]:
        """Whether sizes can be worn at shifts; the two broadcast."""
        p, r = self.problem, self.region
        if p.gate is None or not p.gated[r]:
            return np.broadcast_to(self.others_close[size], np.broadcast_shapes(size.shape, shift.shape))
        body = p.body[r] + self.sign * shift
        with np.errstate(invalid="ignore"):
            return np.asarray(self.others_close[size] & (p.gate[r][size] * (1 + p.stretch) >= body - SAME))

    def stops(self) -> NDArray[np.float64]:
        """The shifts at which each size's parabola or its gate changes, shape (sizes, 2 or 3)."""
        p, r = self.problem, self.region
        wanted = float(self.wanted(np.zeros(1))[0])
        rate = self.sign * (1 + p.share[r])
        edges = [(edge[r] - wanted) / rate for edge in (p.low, p.high)]
        if p.gate is not None and p.gated[r]:
            edges.append(self.sign * (p.gate[r] * (1 + p.stretch) + SAME - p.body[r]))
        return np.stack(edges, axis=1)

    def first(self, shift: float) -> int:
        """The best listed size at a shift."""
        sizes = np.arange(self.problem.sizes)
        shifts = np.full(len(sizes), shift)
        misfits = np.sqrt(self.squared(sizes, shifts))
        return int(order(misfits, self.complete, self.wearable(sizes, shifts), sizes.astype(float))[0])


def _shift(problem: Problem, region: int, sign: float) -> _Shift:
    listed = np.arange(problem.sizes, dtype=float)
    known = ~np.isnan(problem.low)
    diff = difference(problem.low, problem.high, problem.wanted[:, None])
    losses = loss(np.where(known, diff, 0.0), problem.weight[:, None], problem.adjustable[:, None])
    losses[region] = 0.0
    weights = (problem.weight[:, None] * known).sum(axis=0)
    gated = problem.gated.copy()
    gated[region] = False
    close = np.asarray(problem.closes(listed)[gated].all(axis=0))
    weights = np.where(weights > 0, weights, np.nan)
    return _Shift(problem, region, sign, losses.sum(axis=0), weights, problem.complete(listed), close)


def firsts(problem: Problem, region: int, sign: float, until: float) -> list[Overtaken]:
    """The listed sizes that become first one after the other as one body figure shifts.

    Args:
        problem: the comparison.
        region: index of the region whose body figure shifts.
        sign: +1 for a larger body, -1 for a smaller one.
        until: every overtaking up to this shift is wanted, cm; beyond it only the first, if there was none before.

    Returns:
        Each overtaking with its shift (cm, not negative), in rising order, up to 15 cm; a body cannot shift below
        nothing.
    """
    limit = min(FARTHEST_CM, float(problem.body[region])) if sign < 0 else FARTHEST_CM
    if problem.sizes == 1 or not (problem.weight[region] > 0 or problem.gated[region]):
        return []
    shift = _shift(problem, region, sign)
    current, at = shift.first(0.0), 0.0
    out: list[Overtaken] = []
    while len(out) < 2 * problem.sizes and at <= until + SAME:
        found = _next(shift, current, at, limit)
        if found is None:
            break
        at = found.shift_cm
        best = shift.first(at + 2 * SAME)
        current = best if best != current else found.size
        out.append(Overtaken(at, current))
    return out


def _next(shift: _Shift, current: int, start: float, limit: float) -> Overtaken | None:
    """The first overtaking of the current size after a shift; None up to the limit."""
    sizes = np.arange(shift.problem.sizes)
    a, b = _stretches(shift.stops(), current, start, limit)
    rival, holder = sizes[:, None], np.full((len(sizes), 1), current)
    middle = (a + b) / 2
    gained = [shift.squared(rival, x) - shift.squared(holder, x) for x in (a, middle, b)]
    part = _goes_below(gained[0], gained[1], gained[2], tie_wins=rival > current)
    better = shift.wearable(rival, middle).astype(int) - shift.wearable(holder, middle).astype(int)
    part = np.where(better > 0, 0.0, np.where(better < 0, np.inf, part))
    fuller = shift.complete.astype(int) - int(shift.complete[current])
    part = np.where((fuller > 0)[:, None], 0.0, np.where((fuller < 0)[:, None], np.inf, part))
    part[np.isnan(part) | (b - a <= _FLAT)] = np.inf
    part[current] = np.inf
    with np.errstate(invalid="ignore"):
        at = np.where(np.isinf(part), np.inf, a + part * (b - a)).min(axis=1)
    first = int(len(at) - 1 - np.argmin(at[::-1]))
    return Overtaken(float(at[first]), first) if np.isfinite(at[first]) else None


def _stretches(
    stops: NDArray[np.float64], current: int, start: float, limit: float
) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """From where to where each pair of a rival and the current size keeps its parabola, shape (sizes, stretches)."""
    own = np.broadcast_to(stops[current], stops.shape)
    ends = np.broadcast_to(np.array([start, limit]), (len(stops), 2))
    cuts = np.nan_to_num(np.concatenate((stops, own, ends), axis=1), nan=limit)
    cuts = np.sort(np.clip(cuts, start, limit), axis=1)
    return cuts[:, :-1], cuts[:, 1:]


def _goes_below(
    at_a: NDArray[np.float64], at_m: NDArray[np.float64], at_b: NDArray[np.float64], *, tie_wins: NDArray[np.bool_]
) -> NDArray[np.float64]:
    """Where on [0, 1) parabolas given at 0, 1/2 and 1 go below zero, as the part of the way; infinite where not.

    A parabola that is zero all the way counts as below from its start where `tie_wins`.
    """
    curve = 2 * (at_a - 2 * at_m + at_b)
    slope = at_b - at_a - curve
    largest = np.maximum(np.maximum(np.abs(at_a), np.abs(at_b)), np.abs(at_m))
    scale = _FLAT * np.maximum(1.0, largest)
    starts_flat = np.abs(at_a) <= scale
    sinks = (slope < -scale) | ((np.abs(slope) <= scale) & (curve < -scale))
    crossing = _crossing(curve, slope, np.where(starts_flat, 0.0, at_a))
    part = np.where((at_a < -scale) | (starts_flat & sinks), 0.0, crossing)
    return np.where(largest <= scale, np.where(tie_wins, 0.0, np.inf), part)


def _crossing(
    curve: NDArray[np.float64], slope: NDArray[np.float64], start: NDArray[np.float64]
) -> NDArray[np.float64]:
    """The x in (0, 1) at which curve x^2 + slope x + start falls through zero; infinite where there is none."""
    with np.errstate(invalid="ignore", divide="ignore"):
        root = np.sqrt(slope**2 - 4 * curve * start)
        # Two forms of the same root, each where it does not cancel.
        x = np.where(slope > 0, (slope + root) / (-2 * curve), 2 * start / (root - slope))
        return np.where((x > 0) & (x < 1) & (root > 0), x, np.inf)
