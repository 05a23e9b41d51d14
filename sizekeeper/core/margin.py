"""How sure a size is: how far one body measure may shift before another listed size is best.

While one body figure shifts and all else stays, the squared misfit of a size is a parabola between a few stops: where
the difference changes sign, enters a range, or the garment no longer closes. So the shift at which one size overtakes
another is the root of a quadratic, found exactly, stop by stop. All regions are followed at once, each one way down and
one way up: a *walk*. Arrays have shape (walks, sizes) or (walks, sizes, stretches).
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING, NamedTuple

import numpy as np
from numpy.typing import NDArray

from sizekeeper.core.ease import SAME
from sizekeeper.core.misfit import difference, loss
from sizekeeper.core.ranking import first_of_each

if TYPE_CHECKING:
    from sizekeeper.core.problem import Problem

FARTHEST_CM = 15.0
_FLAT = 1e-12


class Overtaken(NamedTuple):
    """A listed size becomes first when the body is shifted so far."""

    shift_cm: float
    size: int


class Margins(NamedTuple):
    """The overtakings of one region, as the body gets smaller and as it gets larger."""

    down: list[Overtaken]
    up: list[Overtaken]


@dataclass(frozen=True)
class _Side:
    """Sizes in walks, shaped to be weighed against each other at shifts of shape (walks, sizes, stretches).

    `rest` is the loss of the other regions; `reach` the largest body the garment goes round in the walk's region,
    infinite where it need not, negative infinite where it does not close elsewhere.
    """

    low: NDArray[np.float64]
    high: NDArray[np.float64]
    rest: NDArray[np.float64]
    weights: NDArray[np.float64]
    reach: NDArray[np.float64]

    def pick(self, size: NDArray[np.int64]) -> _Side:
        """One size of each walk."""
        rows = np.arange(len(size))
        low = self.low[rows, size][:, None]
        high = low if self.high is self.low else self.high[rows, size][:, None]
        return _Side(low, high, *(part[rows, size][:, None] for part in (self.rest, self.weights, self.reach)))


@dataclass(frozen=True)
class _Walks:
    """Every walk: the region whose body shifts, and which way.

    `region` has shape (walks,); `sign` and the region's own `body`, `grown` (1 + share), `asked`, `weight` and
    `adjustable` have (walks, 1, 1), `sizes` (walks, sizes, 1) throughout.
    """

    region: NDArray[np.int64]
    sign: NDArray[np.float64]
    body: NDArray[np.float64]
    grown: NDArray[np.float64]
    asked: NDArray[np.float64]
    weight: NDArray[np.float64]
    adjustable: NDArray[np.bool_]
    sizes: _Side
    complete: NDArray[np.bool_]

    def squared(self, side: _Side, shift: NDArray[np.float64]) -> NDArray[np.float64]:
        """The squared misfit of sizes at shifts."""
        wanted = (self.body + self.sign * shift) * self.grown + self.asked
        diff = difference(side.low, side.high, wanted)
        diff[np.isnan(diff)] = 0.0
        return np.asarray((side.rest + loss(diff, self.weight, self.adjustable)) / side.weights)

    def wearable(self, side: _Side, shift: NDArray[np.float64]) -> NDArray[np.bool_]:
        """Whether sizes can be worn at shifts."""
        return np.asarray(side.reach >= self.body + self.sign * shift - SAME)

    def stops(self, side: _Side) -> NDArray[np.float64]:
        """The shifts at which a size's parabola or its gate changes, shape (walks, sizes, 3); infinite where none."""
        wanted, rate = self.body * self.grown + self.asked, self.sign * self.grown
        low = (side.low - wanted) / rate
        high = low if side.high is side.low else (side.high - wanted) / rate
        gate = self.sign * (side.reach + SAME - self.body)
        return np.concatenate((low, high, gate), axis=2)

    @cached_property
    def own_stops(self) -> NDArray[np.float64]:
        """The stops of every size."""
        return self.stops(self.sizes)

    def first(self, shift: NDArray[np.float64]) -> NDArray[np.int64]:
        """The best listed size of each walk at its shift."""
        at = _column(shift)
        misfits = np.sqrt(self.squared(self.sizes, at))[:, :, 0]
        return first_of_each(misfits, self.complete, self.wearable(self.sizes, at)[:, :, 0])


def _column(values: NDArray[np.float64]) -> NDArray[np.float64]:
    """One value for each walk, shaped to go with (walks, sizes, stretches)."""
    return np.asarray(values[:, None, None])


def _walks(problem: Problem) -> _Walks:
    listed = np.arange(problem.sizes, dtype=float)
    known = ~np.isnan(problem.low)
    diff = difference(problem.low, problem.high, problem.wanted[:, None])
    losses = loss(np.where(known, diff, 0.0), problem.weight[:, None], problem.adjustable[:, None])
    weights = (problem.weight[:, None] * known).sum(axis=0)
    region = np.repeat(np.flatnonzero((problem.weight > 0) | problem.gated), 2)
    sign = np.tile([-1.0, 1.0], len(region) // 2)
    closes = problem.closes(listed) | ~problem.gated[:, None]
    reach = np.full(problem.low.shape, np.inf)
    if problem.gate is not None:
        worn = problem.gate * (1 + problem.stretch)
        reach = np.where(problem.gated[:, None], np.where(np.isnan(worn), -np.inf, worn), np.inf)
    open_at = ~closes
    others = (open_at.sum(axis=0) - open_at[region]) == 0
    low = problem.low[region][:, :, None]
    rest = (
        losses.sum(axis=0) - losses[region],
        np.broadcast_to(np.where(weights > 0, weights, np.nan), (len(region), problem.sizes)),
        np.where(others, reach[region], -np.inf),
    )
    high = low if problem.high is problem.low else problem.high[region][:, :, None]
    sizes = _Side(low, high, *(part[:, :, None] for part in rest))
    p, r = problem, region
    return _Walks(
        region=region,
        sign=_column(sign),
        body=_column(p.body[r]),
        grown=_column(1 + p.share[r]),
        asked=_column(p.asked[r]),
        weight=_column(p.weight[r]),
        adjustable=p.adjustable[r][:, None, None],
        sizes=sizes,
        complete=p.complete(listed),
    )


def margins(problem: Problem, until: NDArray[np.float64]) -> list[Margins]:
    """The listed sizes that become first one after the other as one body figure shifts, for every region.

    Args:
        problem: the comparison.
        until: for each region the shift up to which every overtaking is wanted, cm; beyond it only the first, if there
            was none before.

    Returns:
        For each region the overtakings down and up, each with its shift (cm, not negative), in rising order, up to
        15 cm; a body cannot shift below nothing.
    """
    walks = _walks(problem)
    found: list[list[Overtaken]] = [[] for _ in walks.region]
    limit = np.where(walks.sign < 0, np.minimum(FARTHEST_CM, walks.body), FARTHEST_CM)[:, 0, 0]
    at, current = np.zeros(len(found)), walks.first(np.zeros(len(found)))
    going = np.ones(len(found), dtype=bool)
    for _ in range(2 * problem.sizes):
        shift, rival = _next(walks, current, at, limit)
        going &= np.isfinite(shift) & (at <= until[walks.region] + SAME)
        if not going.any():
            break
        at = np.where(going, shift, at)
        best = walks.first(at + 2 * SAME)
        current = np.where(going, np.where(best != current, best, rival), current)
        for walk in np.flatnonzero(going):
            found[walk].append(Overtaken(float(at[walk]), int(current[walk])))
    by_region = {int(r): Margins(found[i], found[i + 1]) for i, r in enumerate(walks.region) if i % 2 == 0}
    return [by_region.get(region, Margins([], [])) for region in range(len(problem.body))]


def _next(
    walks: _Walks, current: NDArray[np.int64], start: NDArray[np.float64], limit: NDArray[np.float64]
) -> tuple[NDArray[np.float64], NDArray[np.int64]]:
    """The first overtaking of each walk's current size after a shift, infinite where none; and who overtakes."""
    holder = walks.sizes.pick(current)
    a, b = _stretches(walks.own_stops, walks.stops(holder), start, limit)
    middle = (a + b) / 2
    everywhere = np.concatenate((a, middle, b), axis=2)
    gained = np.split(walks.squared(walks.sizes, everywhere) - walks.squared(holder, everywhere), 3, axis=2)
    sizes = np.arange(len(walks.complete))
    part = _goes_below(gained[0], gained[1], gained[2], tie_wins=sizes[None, :, None] > current[:, None, None])
    better = walks.wearable(walks.sizes, middle).astype(int) - walks.wearable(holder, middle).astype(int)
    part = np.where(better > 0, 0.0, np.where(better < 0, np.inf, part))
    fuller = (walks.complete.astype(int)[None, :] - walks.complete.astype(int)[current][:, None])[:, :, None]
    part = np.where(fuller > 0, 0.0, np.where(fuller < 0, np.inf, part))
    ruled_out = np.isnan(part) | np.isinf(part) | (b - a <= _FLAT) | (sizes[None, :, None] == current[:, None, None])
    at = np.where(ruled_out, np.inf, a + np.where(ruled_out, 0.0, part) * (b - a)).min(axis=2)
    rival = at.shape[1] - 1 - np.argmin(at[:, ::-1], axis=1)
    return at.min(axis=1), rival


def _stretches(
    stops: NDArray[np.float64], own: NDArray[np.float64], start: NDArray[np.float64], limit: NDArray[np.float64]
) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """From where to where each pair of a rival and the current size keeps its parabola."""
    shape = stops.shape[:2]
    least, most = (np.broadcast_to(_column(x), (*shape, 1)) for x in (start, limit))
    cuts = np.concatenate((stops, np.broadcast_to(own, (*shape, own.shape[2])), least, most), axis=2)
    cuts = np.where(np.isnan(cuts), most, np.minimum(np.maximum(cuts, least), most))
    cuts.sort(axis=2)
    return cuts[:, :, :-1], cuts[:, :, 1:]


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
