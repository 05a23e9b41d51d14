"""Makes the plans of a person and a pattern, and puts them in order by misfit and work together."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cached_property
from typing import TYPE_CHECKING

import numpy as np

from sizekeeper.core.allowance import Allowances
from sizekeeper.core.bust import bust_adjustment
from sizekeeper.core.candidates import EDGES_AROUND, label_of
from sizekeeper.core.comparison import Comparison
from sizekeeper.core.ease import SAME, band_of
from sizekeeper.core.measure import LEVELS
from sizekeeper.core.misfit import difference, loss
from sizekeeper.core.piece import Pieces
from sizekeeper.core.places import beyond, offered_cm, place_words
from sizekeeper.core.plan import PER_CHANGE_CM, Plan, PlanChange, PlanRegion, Plans
from sizekeeper.core.plan_doubts import doubts
from sizekeeper.core.result import BodyFigure, Fit
from sizekeeper.core.touched import place_of, touched

if TYPE_CHECKING:
    from sizekeeper.core.make import PlanKind
    from sizekeeper.core.plan import BustAdjustment
    from sizekeeper.core.regions import Region
    from sizekeeper.core.result import Candidate, RegionAt

DEFENSIBLE_CM = 1.0
"""A neighbouring size is defensible when its misfit is at most this much above the best listed one's (coined)."""


@dataclass(frozen=True)
class Planner:
    """What plans are made from. Without `allowances` or `pieces` less is known of the mending and the work."""

    comparison: Comparison
    fit: Fit
    body: Mapping[str, BodyFigure]
    pieces: Pieces | None = None
    allowances: Allowances | None = None
    drafted_difference_cm: float | None = None
    per_change_cm: float = PER_CHANGE_CM

    def plans(self) -> Plans:
        """Every plan, the best first: complete before lacking a figure, wearable, then misfit and work together."""
        best = next(c for c in self.fit.candidates if c.between is None)
        made = [self.at(best.position, "straight"), *self._neighbours(best)]
        if (between := next((c for c in self.fit.candidates if c.between is not None), None)) is not None:
            made.append(self.at(between.position, "between"))
        if self.fit.blend is not None and self.fit.blend.offered:
            made.append(self._blended(self.fit.blend.positions))
        if (bust := self.bust()) is not None and bust.suggested and not bust.past:
            made.append(self._adjusted(bust))
        return Plans(tuple(sorted(made, key=_order)), self.fit.labels, self.per_change_cm)

    def bust(self) -> BustAdjustment | None:
        """The bust adjustment, suggested or not; None where it cannot be told."""
        return self._bust

    @cached_property
    def _bust(self) -> BustAdjustment | None:
        return bust_adjustment(self.comparison, self.body, self.drafted_difference_cm)

    def at(self, position: float, kind: PlanKind = "own") -> Plan:
        """The plan of one position all over, from -1 to the number of sizes; past the ends it is extrapolated."""
        labels = self.fit.labels
        past = beyond(position, len(labels))
        changes = () if position == math.floor(position) and not past else (PlanChange("line", ""),)
        label = place_words(position, labels) if past else label_of(position, labels)
        return self._plan(kind, position, label, changes=changes)

    def blended_at(self, levels: Mapping[str, float]) -> Plan:
        """A plan of her own with another position per level."""
        return replace(self._blended(levels), kind="own")

    def _neighbours(self, best: Candidate) -> list[Plan]:
        """The listed sizes beside the best one that are defensible."""
        kinds: tuple[tuple[PlanKind, float], ...] = (("size_below", -1.0), ("size_above", 1.0))
        found = {c.position: c for c in self.fit.candidates if c.between is None}
        places = [(kind, found.get(best.position + step)) for kind, step in kinds]
        return [self.at(c.position, kind) for kind, c in places if c is not None and _defensible(c, best)]

    def _blended(self, levels: Mapping[str, float]) -> Plan:
        lead = self.comparison.regions.lead
        position = levels[lead] if lead is not None and lead in levels else next(iter(levels.values()))
        labels = dict.fromkeys(label_of(at, self.fit.labels) for at in levels.values())
        changes = blend_changes(levels)
        return self._plan("blended", position, " / ".join(labels), levels=dict(levels), changes=changes)

    def _adjusted(self, bust: BustAdjustment) -> Plan:
        changes = (PlanChange("bust", "bust"),)
        return self._plan("bust", float(bust.size), bust.label, changes=changes, bust=bust)

    def _plan(
        self,
        kind: PlanKind,
        position: float,
        label: str,
        *,
        changes: tuple[PlanChange, ...],
        levels: Mapping[str, float] | None = None,
        bust: BustAdjustment | None = None,
    ) -> Plan:
        at = self._at(levels or {}, position)
        regions = {
            region.measure: self._region(row, region, *at[region.measure], bust)
            for row, region in enumerate(self.comparison.regions.found)
        }
        weights = {region.measure: region.weight for region in self.comparison.regions.found}
        misfit = _misfit(regions, weights)
        plan = Plan(
            kind=kind,
            position=position,
            label=label,
            regions=regions,
            misfit_cm=misfit,
            cost_cm=None if misfit is None else misfit + self.per_change_cm * len(changes),
            wearable=self._wearable(regions),
            changes=changes,
            levels=levels or {},
            missing=tuple(m for m, at in regions.items() if weights[m] and at.diff_cm is None),
            bust=bust,
        )
        plan = replace(plan, touched=None if self.pieces is None else touched(plan, self.pieces))
        return replace(plan, doubts=doubts(plan, self.fit, self.pieces))

    def _at(self, levels: Mapping[str, float], position: float) -> dict[str, tuple[float, RegionAt]]:
        """Where each region is cut, and what it gives there: from the candidates, else worked out once a place."""
        measures = [region.measure for region in self.comparison.regions.found]
        places = {measure: place_of(measure, levels) if levels else position for measure in measures}
        known = {c.position: c.regions for c in self.fit.candidates}
        found = {place: known.get(place) or self.comparison.at(place) for place in set(places.values())}
        return {m: (place, found[place][m]) for m, place in places.items()}

    def _region(
        self, row: int, region: Region, position: float, at: RegionAt, bust: BustAdjustment | None
    ) -> PlanRegion:
        added = bust.amount_cm if bust is not None and region.measure == "bust" else 0.0
        diff, lost = self._judged(row, region, position, added) if added else (at.diff_cm, at.loss)
        ease = None if at.ease_cm is None else at.ease_cm + added
        edges = region.rule.edges_at(region.body.cm)
        spare = None if self.allowances is None else self.allowances.at(region.measure)
        return PlanRegion(
            measure=region.measure,
            role=region.role,
            position=position,
            finished_cm=None if at.finished_cm is None else at.finished_cm + added,
            ease_cm=ease,
            asked_cm=at.asked_cm,
            diff_cm=diff,
            loss=lost,
            band=None if ease is None else band_of(ease, edges),
            short_cm=_short(at, region, added, self.comparison.stretch),
            added_cm=added,
            take_in_cm=None if ease is None or region.role == "free" else max(0.0, ease - edges[0]),
            let_out_cm=None if spare is None else float(spare),
            line_mm=self._line_mm(region.measure, position, at),
        )

    def _judged(
        self, row: int, region: Region, position: float, added: float
    ) -> tuple[float, float] | tuple[None, None]:
        """How far a region is off and what that weighs when so much is added to what the pattern offers."""
        low, high = (side[row] + added for side in self.comparison.problem.offered(np.array([position])))
        diff = difference(low, high, self.comparison.problem.wanted[row])
        lost = loss(diff, np.array(float(region.weight)), np.array(region.role == "adjustable"))
        return (None, None) if np.isnan(diff[0]) else (float(diff[0]), float(lost[0]))

    def _line_mm(self, measure: str, position: float, at: RegionAt) -> float | None:
        """How far the traced line runs outside the smaller size's, mm at each side-seam edge; None on or past lines."""
        labels = self.fit.labels
        if position == math.floor(position) or measure not in LEVELS or beyond(position, len(labels)):
            return None
        here, there = offered_cm(self.fit.listed[labels[math.floor(position)]][measure]), offered_cm(at)
        return None if here is None or there is None else (there - here) / EDGES_AROUND * 10

    def _wearable(self, regions: Mapping[str, PlanRegion]) -> bool:
        """Whether the garment closes at the lead, without one at every region that counts; always in body mode."""
        problem = self.comparison.problem
        gated = [r for r, on in zip(self.comparison.regions.found, problem.gated, strict=True) if on]
        return problem.gate is None or all(_closes(regions[r.measure]) for r in gated)


def blend_changes(levels: Mapping[str, float]) -> tuple[PlanChange, ...]:
    """The changes of a blended plan: a line to draw where a level lies between sizes, a join where the size changes."""
    changes: list[PlanChange] = []
    before: tuple[str, float] | None = None
    for level in (m for m in LEVELS if m in levels):
        at = levels[level]
        if before is not None and before[1] != at:
            changes.append(PlanChange("join", before[0], level))
        if at != math.floor(at) and (before is None or before[1] != at):
            changes.append(PlanChange("line", level))
        before = (level, at)
    return tuple(changes)


def _closes(at: PlanRegion) -> bool:
    return at.short_cm is not None and at.short_cm <= SAME


def _short(at: RegionAt, region: Region, added: float, stretch: float) -> float | None:
    if at.finished_cm is None or region.role not in ("lead", "counted"):
        return None if at.finished_cm is None else 0.0
    short = region.body.cm - (at.finished_cm + added) * (1 + stretch)
    return short if short > SAME else 0.0


def _misfit(regions: Mapping[str, PlanRegion], weights: Mapping[str, int]) -> float | None:
    """The root of the weighted mean loss over the regions with a figure, cm."""
    known = [(at.loss, weights[m]) for m, at in regions.items() if at.loss is not None]
    total = sum(weight for _, weight in known)
    return math.sqrt(sum(lost for lost, _ in known) / total) if total else None


def _defensible(size: Candidate, best: Candidate) -> bool:
    if not size.wearable or size.misfit_cm is None or best.misfit_cm is None:
        return False
    return size.tied or size.misfit_cm <= best.misfit_cm + DEFENSIBLE_CM + SAME


def _order(plan: Plan) -> tuple[bool, bool, float, int, float]:
    """Complete first, wearable, least misfit and work, then least work, then the larger size."""
    cost = math.inf if plan.cost_cm is None else round(plan.cost_cm, 6)
    return (bool(plan.missing), not plan.wearable, cost, len(plan.changes), -plan.position)
