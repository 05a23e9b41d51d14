"""What the plans add to the verdict on the Fit page: the best plan by name, and what was decided."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sizekeeper.core import plan_words, sentences
from sizekeeper.core.ease import SAME
from sizekeeper.core.planned import tried

if TYPE_CHECKING:
    from sizekeeper.core.plan import Plan
    from sizekeeper.core.planned import Planned
    from sizekeeper.core.result import Fit
    from sizekeeper.core.wording import Wording


def plan_headline(planned: Planned, words: Wording) -> str:
    """The verdict in one sentence: `Cut 38, add 5 cm at the bust` where that is the best plan."""
    if _sized_by_high_bust(planned):
        return plan_words.headline(planned.plans, words)
    return sentences.headline(planned.fit, words)


def plan_warnings(planned: Planned, words: Wording) -> str:
    """The warnings under the verdict; none from a printed figure where a toile was tried on."""
    known = tried(planned)
    if not known:
        return "\n".join(sentences.warnings(planned.fit, words))
    candidates = [
        replace(c, regions={m: replace(at, short_cm=0.0) if m in known else at for m, at in c.regions.items()})
        for c in planned.fit.candidates
    ]
    return "\n".join(sentences.warnings(replace(planned.fit, candidates=tuple(candidates)), words))


def plan_line(planned: Planned, words: Wording) -> str:
    """What was decided, or which plan is the best where the verdict does not name it already; else empty."""
    labels = planned.plans.labels
    if planned.chosen is not None:
        return f"Decided: {plan_words.title(planned.chosen, labels, words)}."
    best, bust = planned.plans.best, planned.plans.of("bust")
    said = []
    if best.wearable and not _sized_by_high_bust(planned) and not is_verdict(best, planned.fit):
        title = _small(plan_words.title(best, labels, words))
        said.append(f"Fit and work together, the best plan is: {title}.")
    if bust is not None and best.bust is None:
        said.append(f"By the high bust it would be: {_small(plan_words.title(bust, labels, words))}.")
    elif bust is None and (high := planned.planner.bust()) is not None and high.past and high.suggested:
        said.append(plan_words.past_words(high))
    return " ".join(said)


def _sized_by_high_bust(planned: Planned) -> bool:
    """Whether the best plan is one with a bust adjustment."""
    best = planned.plans.best
    return best.bust is not None and best.wearable


def is_verdict(plan: Plan, fit: Fit) -> bool:
    """Whether a plan is what the verdict names."""
    if plan.bust is not None:
        return False
    if plan.levels or fit.verdict.kind == "blend":
        return bool(plan.levels) and fit.verdict.kind == "blend"
    return abs(plan.position - fit.verdict.position) < SAME


def _small(text: str) -> str:
    return text[:1].lower() + text[1:]
