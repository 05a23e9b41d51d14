"""A person's plans for a pattern, the make they are worked out for, and the plan that was decided on."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sizekeeper.core.allowance import allowances
from sizekeeper.core.comparison import Comparison
from sizekeeper.core.ease import SAME
from sizekeeper.core.found import Found
from sizekeeper.core.make import Decision, Make, Place, place_at, position_of
from sizekeeper.core.notation import CENTIMETRES, INCHES, parse_length, show
from sizekeeper.core.piece import Pieces
from sizekeeper.core.plan import PER_CHANGE_CM, Plan, PlanDoubt, Plans
from sizekeeper.core.planning import Planner
from sizekeeper.core.result import Fit
from sizekeeper.core.toile import toile_states

if TYPE_CHECKING:
    import datetime as dt
    from fractions import Fraction

    from sizekeeper.core.notation import Notation
    from sizekeeper.core.toile import ToileState


@dataclass(frozen=True)
class Planned:
    """A person's plans for a pattern, and the make they are worked out for.

    `chosen` is the plan decided on, None while there is no decision or its size is no longer listed.
    """

    found: Found
    fit: Fit
    comparison: Comparison
    make: Make
    planner: Planner
    plans: Plans
    chosen: Plan | None

    @property
    def shown(self) -> Plan:
        """The plan that amounts are worked out for: the chosen one, else the best."""
        return self.chosen or self.plans.best

    @property
    def pieces(self) -> Pieces:
        """The pattern's pieces, none while none are listed."""
        return self.found.pieces or Pieces("", self.found.pattern.id)

    @property
    def seam_allowance(self) -> Fraction | None:
        """The pattern's seam allowance, exact cm."""
        own = self.found.pattern.seam_allowance
        return own.exact_cm if own is not None else None

    @property
    def lost(self) -> bool:
        """Whether the size decided on is no longer listed."""
        return self.make.decision is not None and self.chosen is None

    def toile(self) -> tuple[ToileState, ...]:
        """What the toiles showed, place by place; what was changed before a round is in its printed ease."""
        eases = {m: at.ease_cm for m, at in self.shown.regions.items() if at.ease_cm is not None}
        edges = {region.measure: region.edges[0] for region in self.fit.regions}
        return toile_states(self.make.rounds, eases, edges)


def tried(planned: Planned) -> frozenset[str]:
    """The places of the plan decided on that a toile spoke of: of them nothing is warned of from a printed figure."""
    if planned.chosen is None:
        return frozenset()
    return frozenset(state.at for state in planned.toile())


_FROM_PRINT = ("short", "past_allowance", "tight", "not_wearable")
"""Doubts that rest on the printed figure; a toile at that place replaces them by what was found."""


def doubts_left(plan: Plan, planned: Planned) -> tuple[PlanDoubt, ...]:
    """The doubts about a plan; of the one that was tried on, none from a printed figure where the toile spoke."""
    known = tried(planned)
    if planned.chosen is None or plan.key != planned.chosen.key or not known:
        return plan.doubts
    return tuple(d for d in plan.doubts if d.code not in _FROM_PRINT or (d.measure and d.measure not in known))


def girths(planned: Planned) -> dict[str, tuple[float, float]]:
    """Body and finished girth of the plan that is shown, by measure, cm; without what a toile was tried on at."""
    body, known = planned.found.body, tried(planned)
    return {
        measure: (body[measure].cm, at.finished_cm)
        for measure, at in planned.shown.regions.items()
        if at.finished_cm is not None and measure in body and measure != "across_back" and measure not in known
    }


def planner_of(found: Found, make: Make | None = None, per_change_cm: float = PER_CHANGE_CM) -> Planner | None:
    """What makes the plans of what was found; None while nothing can be compared."""
    if found.fit is None or found.comparison is None:
        return None
    drafted = found.pattern.drafted_difference
    return Planner(
        found.comparison,
        found.fit,
        found.body,
        found.pieces if found.pieces is not None and found.pieces.pieces else None,
        allowances(found.pattern, make.seam_allowance if make is not None else None),
        drafted.cm if drafted is not None else None,
        per_change_cm,
    )


def plan_ahead(found: Found, make: Make, per_change_cm: float = PER_CHANGE_CM) -> Planned | None:
    """The plans for what was found; None while nothing can be compared."""
    planner = planner_of(found, make, per_change_cm)
    if planner is None or found.fit is None or found.comparison is None:
        return None
    plans = planner.plans()
    return Planned(found, found.fit, found.comparison, make, planner, plans, chosen_plan(make.decision, planner, plans))


def chosen_plan(decision: Decision | None, planner: Planner, plans: Plans) -> Plan | None:
    """The plan of a decision as the charts give it now; None without one, or where its size is no longer listed."""
    if decision is None:
        return None
    position = position_of(decision.place, plans.labels)
    levels = {level: position_of(place, plans.labels) for level, place in decision.levels.items()}
    if position is None or any(at is None for at in levels.values()):
        return None
    known = {level: at for level, at in levels.items() if at is not None}
    same = [p for p in plans.plans if _is_at(p, position, known) and (p.bust is not None) == (decision.kind == "bust")]
    if same:
        return next((p for p in same if p.kind == decision.kind), same[0])
    return planner.blended_at(known) if known else planner.at(position)


def _is_at(plan: Plan, position: float, levels: dict[str, float]) -> bool:
    if levels or plan.levels:
        return dict(plan.levels) == levels
    return abs(plan.position - position) < SAME


def decision_on(plan: Plan, planned: Planned, reason: str, advised: str, on: dt.date) -> Decision:
    """The decision for a plan, with what was advised when it was made."""
    labels, notation = planned.plans.labels, _notation(planned.found)
    add = None
    if plan.bust is not None:
        add = parse_length(show(plan.bust.amount_cm, notation).replace("−", "-"))
    levels: dict[str, Place] = {level: place_at(at, labels) for level, at in plan.levels.items()}
    return Decision(plan.kind, place_at(plan.position, labels), levels, add, reason, advised, on)


def _notation(found: Found) -> Notation:
    return INCHES if found.person.unit == "in" else CENTIMETRES
