"""What is doubtful about a plan, the gravest first."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sizekeeper.core.ease import SAME
from sizekeeper.core.places import beyond
from sizekeeper.core.plan import PlanDoubt

if TYPE_CHECKING:
    from sizekeeper.core.piece import Pieces
    from sizekeeper.core.plan import Plan
    from sizekeeper.core.result import Fit


def doubts(plan: Plan, fit: Fit, pieces: Pieces | None) -> tuple[PlanDoubt, ...]:
    """Every doubt about a plan, from the comparison it was made from and the pieces, if they are listed."""
    found = [] if plan.wearable else [PlanDoubt("not_wearable")]
    found += _short(plan)
    found += _past_range(plan, fit)
    found += [PlanDoubt("missing", m) for m in plan.missing]
    found += _bust(plan, pieces)
    if plan.kind == "blended" and fit.blend is not None and "alter_instead" in fit.blend.flags:
        found.append(PlanDoubt("steep"))
    found += _tight(plan, fit)
    found += _ties(plan, fit)
    if fit.mode == "body":
        found.append(PlanDoubt("ease_unknown"))
    return (*found, *_interpolated(plan, fit))


def _short(plan: Plan) -> list[PlanDoubt]:
    """Where it will not close: what the seam allowances give, or do not. Too small cannot be mended."""
    found = []
    for measure, at in plan.regions.items():
        if at.short_cm is not None and at.short_cm > SAME:
            mended = at.let_out_cm is None or at.let_out_cm >= at.short_cm - SAME
            found.append(PlanDoubt("short" if mended else "past_allowance", measure, at.short_cm))
    return found


def _past_range(plan: Plan, fit: Fit) -> list[PlanDoubt]:
    if beyond(plan.position, len(fit.labels)):
        return [PlanDoubt("extrapolated", label=fit.labels[0 if plan.position < 0 else -1])]
    if "beyond_largest" in fit.flags:
        return [PlanDoubt("past_range", label=fit.labels[-1])]
    return [PlanDoubt("past_range", label=fit.labels[0])] if "beyond_smallest" in fit.flags else []


def _bust(plan: Plan, pieces: Pieces | None) -> list[PlanDoubt]:
    if plan.bust is None:
        return []
    found = [] if plan.bust.from_high_bust_row else [PlanDoubt("by_drafted_difference", "high_bust")]
    fronts = [p for p in pieces.pieces if p.role == "front" and p.layer == "self"] if pieces is not None else []
    return [*found, PlanDoubt("no_dart", "bust")] if fronts and not any(p.dart for p in fronts) else found


def _tight(plan: Plan, fit: Fit) -> list[PlanDoubt]:
    """The regions that count and are tighter than close, unless tight is what is asked for there."""
    edges = {region.measure: region.edges[0] for region in fit.regions}
    found = []
    for measure, at in plan.regions.items():
        if at.band != "tight" or at.role == "free" or at.short_cm is None or at.short_cm > SAME:
            continue
        if at.ease_cm is not None and (at.asked_cm is None or at.asked_cm > at.ease_cm + SAME):
            found.append(PlanDoubt("tight", measure, edges[measure] - at.ease_cm))
    return found


def _ties(plan: Plan, fit: Fit) -> list[PlanDoubt]:
    """The other listed sizes that are best within the error of the tape; for such a size, when it is."""
    if plan.kind == "straight":
        return [PlanDoubt("tied", measure, shift, label) for measure, shift, label in fit.ties]
    if plan.kind in ("size_below", "size_above"):
        return [PlanDoubt("tied", measure, shift, label) for measure, shift, label in fit.ties if label == plan.label]
    return []


def _interpolated(plan: Plan, fit: Fit) -> list[PlanDoubt]:
    """The figures that were filled in between two printed ones."""
    found = next((c for c in fit.candidates if abs(c.position - plan.position) < SAME), None)
    flags = found.flags if found is not None else ()
    return [PlanDoubt("interpolated", flag.removeprefix("interpolated:")) for flag in flags]
