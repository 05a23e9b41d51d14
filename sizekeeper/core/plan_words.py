"""What plans say in words: what to cut, what it gives, what can be mended, what it takes, and why in this order."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sizekeeper.core.ease import SAME
from sizekeeper.core.places import inline_words, join
from sizekeeper.core.sentences import levels_words

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sizekeeper.core.piece import Pieces
    from sizekeeper.core.plan import BustAdjustment, Plan, PlanDoubt, PlanRegion, Plans
    from sizekeeper.core.wording import Wording


def headline(plans: Plans, words: Wording) -> str:
    """The verdict: what the best plan says to cut, in one sentence."""
    return f"{title(plans.best, plans.labels, words)}."


def title(plan: Plan, labels: Sequence[str], words: Wording) -> str:
    """What a plan says to cut: `Cut 40 straight`, `Cut 38, add 5 cm at the bust`."""
    if plan.levels:
        return f"Grade between sizes: {levels_words(plan.levels, labels, words)}"
    place = inline_words(plan.position, labels)
    if plan.bust is not None:
        return f"Cut {place}, add {words.length(plan.bust.amount_cm)} at the bust"
    if plan.changes:
        return f"Trace {place}"
    beside = {"size_below": ", the size below", "size_above": ", the size above"}.get(plan.kind, " straight")
    return f"Cut {place}{beside}"


def lines_words(plan: Plan, words: Wording) -> str:
    """Where the traced line runs: `5 mm outside the smaller line at the bust, 6 mm at the waist`; empty on a line."""
    found = [(m, at.line_mm) for m, at in plan.regions.items() if at.line_mm is not None]
    said = [f"{words.drawn(abs(mm) / 10)} at {words.the(m)}" for m, mm in found if plan.changes]
    return f"The line runs outside the smaller printed one, at each edge: {join(said)}." if said else ""


def ease_words(at: PlanRegion, words: Wording) -> str:
    """Ease and band of a region: `5.4 cm of ease, close`."""
    if at.ease_cm is None:
        return "ease unknown"
    return f"{words.length(at.ease_cm)} of ease, {at.band}"


def mending_words(at: PlanRegion, words: Wording) -> str:
    """What can still be done afterwards: `can be taken in by 2.9 cm, let out by 1.2 cm`; empty where nothing is known.

    Too small cannot be mended beyond the seam allowances.
    """
    said = []
    if at.take_in_cm is not None and at.take_in_cm > SAME:
        said.append(f"can be taken in by {words.room(at.take_in_cm)}")
    if at.let_out_cm is not None and at.role != "free":
        out = at.let_out_cm > SAME
        said.append(f"let out by {words.room(at.let_out_cm)}" if out else "cannot be let out")
    text = ", ".join(said)
    return f"can be {text}" if text.startswith("let out") else text


def work_words(plan: Plan, pieces: Pieces | None = None) -> str:
    """The work of a plan: `2 changes, on 3 pieces: Front, Back, Lining`; `only tracing`."""
    if not plan.changes:
        return "only tracing"
    count = len(plan.changes)
    said = "1 change" if count == 1 else f"{count} changes"
    if plan.touched is None:
        return f"{said}; list the pieces to see on how many"
    on = "1 piece" if len(plan.touched) == 1 else f"{len(plan.touched)} pieces"
    names = [p.name for p in pieces.pieces if p.id in plan.touched] if pieces is not None else []
    return f"{said}, on {on}{': ' if names else ''}{', '.join(names)}"


def doubt_words(plan: Plan, words: Wording) -> tuple[str, ...]:
    """The doubts about a plan, each one sentence, the gravest first."""
    return tuple(_doubt(doubt, plan, words) for doubt in plan.doubts)


def _doubt(doubt: PlanDoubt, plan: Plan, words: Wording) -> str:
    where = words.the(doubt.measure) if doubt.measure else ""
    said = {
        "not_wearable": "It cannot be worn as it is.",
        "short": f"It will not close at {where}: let out {words.sewn(doubt.cm)}.",
        "past_allowance": f"It lacks {words.sewn(doubt.cm)} at {where}, more than the seam allowances give: "
        "too small cannot be mended.",
        "past_range": f"A place past {doubt.label}, where the chart ends, would come closer; make a toile first.",
        "extrapolated": f"Past size {doubt.label} everything is extrapolated; make a toile first.",
        "missing": f"The chart gives it no figure at {where}, so that is not judged.",
        "by_drafted_difference": "The chart has no high bust, so the size is reckoned from the difference the pattern "
        "was drafted for.",
        "no_dart": "The front has no bust dart: the adjustment makes one, or goes into ease or gathers.",
        "steep": "More than two sizes between neighbouring levels: alter the pattern there instead of grading.",
        "tight": f"It is tight at {where}, by {words.sewn(doubt.cm)}.",
        "ease_unknown": "Judged by the body chart alone, so nothing is known of the ease.",
        "interpolated": f"The figure at {where} was filled in between two printed ones.",
    }
    return said.get(doubt.code) or _tie(doubt, plan, words)


def _tie(doubt: PlanDoubt, plan: Plan, words: Wording) -> str:
    when = f"{words.the(doubt.measure)} is really {words.shift(doubt.cm)}"
    return f"Only right if {when}." if doubt.label == plan.label else f"{doubt.label} instead if {when}."


def past_words(bust: BustAdjustment) -> str:
    """Why a high bust past the chart makes no plan, and what to do instead: one sentence."""
    end = "largest" if bust.position > bust.size else "smallest"
    return (
        f"By the high bust the size lies more than half a size past {bust.label}, the {end} of the chart, so no bust "
        "adjustment is worked out from it: make a toile of the best size first."
    )


def order_words(plans: Plans, words: Wording) -> str:
    """Why the plans stand in this order: how far each is off, and what its changes add."""
    each = words.drawn(plans.per_change_cm)
    said = [f"{_name(plan, plans.labels, words)} {_cost(plan, words)}" for plan in plans.plans]
    return f"Ordered by how far off they are, and {each} more for each change: {'; '.join(said)}."


def _name(plan: Plan, labels: Sequence[str], words: Wording) -> str:
    text = title(plan, labels, words)
    return text[:1].lower() + text[1:]


def _cost(plan: Plan, words: Wording) -> str:
    off = "cannot be judged" if plan.misfit_cm is None else f"is off by {words.drawn(plan.misfit_cm)}"
    count = len(plan.changes)
    work = "" if not count else ", 1 change" if count == 1 else f", {count} changes"
    gate = ", and cannot be worn as it is" if not plan.wearable else ""
    return f"({off}{work}{gate})"
