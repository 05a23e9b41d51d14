"""Why a size is where it is in the ranking: every number of it, in words and figures."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from sizekeeper.core.ease import SAME
from sizekeeper.core.notation import show
from sizekeeper.core.places import join
from sizekeeper.core.preference import Band
from sizekeeper.core.sentences import chosen_candidate
from sizekeeper.core.verdict import WORTH_CM

if TYPE_CHECKING:
    from collections.abc import Mapping

    from sizekeeper.core.result import Candidate, Fit, RegionAt, RegionFit
    from sizekeeper.core.wording import Wording


@dataclass(frozen=True, slots=True)
class Reason:
    """One region of one candidate as texts: what it gives, what is asked, how far off, how it counts, what it adds.

    `mark` is how it counts in the shortest form: ` ×2` for the region to choose size by, ` ×0` where it hangs free.
    """

    measure: str
    name: str
    given: str
    asked: str
    off: str
    counts: str
    adds: str
    mark: str
    band: Band | None


_COUNTS = {"lead": "twice", "counted": "once", "free": "not", "adjustable": "if short"}


def reasons(fit: Fit, regions: Mapping[str, RegionAt], words: Wording) -> list[Reason]:
    """The reasons for a position, region by region, in body order."""
    return [_reason(fit, region, regions[region.measure], words) for region in fit.regions if region.measure in regions]


def _reason(fit: Fit, region: RegionFit, at: RegionAt, words: Wording) -> Reason:
    body = fit.mode == "body"
    given = at.chart_cm if body else at.ease_cm
    asked = region.body_cm if body else at.asked_cm
    return Reason(
        measure=region.measure,
        name=words.name(region.measure),
        given=_figure(given, words),
        asked=_figure(asked, words),
        off=_off(at.diff_cm, words),
        counts=_COUNTS[region.role],
        adds="–" if at.loss is None else f"{at.loss:.2f}",
        mark={"lead": " ×2", "free": " ×0"}.get(region.role, ""),
        band=at.band,
    )


def _figure(cm: float | None, words: Wording) -> str:
    return "–" if cm is None else show(cm, words.notation, unit=False)


def _off(cm: float | None, words: Wording) -> str:
    if cm is None:
        return "–"
    text = show(abs(cm), words.notation, unit=False)
    return "none" if text == "0" else f"{text} {'short' if cm < 0 else 'over'}"


def misfit_of(fit: Fit, regions: Mapping[str, RegionAt]) -> float | None:
    """How far a position is off, cm: the root of the weighted mean loss of the regions that have a figure there."""
    known = [(r.weight, at.loss) for r in fit.regions if (at := regions.get(r.measure)) and at.loss is not None]
    weights = sum(weight for weight, _ in known)
    return math.sqrt(sum(loss for _, loss in known) / weights) if weights else None


def sum_words(fit: Fit, candidate: Candidate, words: Wording) -> str:
    """How the regions add up to a candidate's misfit."""
    if candidate.misfit_cm is None:
        return "No region that counts has a figure here."
    known = [r for r in fit.regions if candidate.regions[r.measure].loss is not None]
    total = sum(candidate.regions[r.measure].loss or 0.0 for r in known)
    weights = sum(r.weight for r in known)
    return (
        f"Off by {words.length(candidate.misfit_cm)}: the square root of {total:.2f} (all that is added, in cm²) "
        f"divided by {weights} (how often regions count). A shortage counts like twice as much over."
    )


def standing(fit: Fit, candidate: Candidate, words: Wording) -> str:
    """What else is to be known of a candidate, in a few words; empty when nothing is."""
    said = []
    if candidate.missing:
        said.append(f"no figure at {join([words.the(m) for m in candidate.missing])}")
    if not candidate.wearable:
        said.append("cannot be put on")
    if short := [words.the(m) for m, at in candidate.regions.items() if at.short_cm and at.short_cm > SAME]:
        said.append(f"too small at {join(short)}")
    if candidate.tied and candidate is not chosen_candidate(fit):
        said.append("tied within the tape’s error")
    return ", ".join(said)


def passed_over(fit: Fit, candidate: Candidate, words: Wording) -> str:
    """Why a candidate that ranks before the verdict's is not the verdict; empty where that asks for no reason."""
    if fit.verdict.kind == "blend":
        return "Grading between sizes fits better still." if candidate.rank == 1 else ""
    chosen = chosen_candidate(fit)
    if chosen is None or candidate.rank >= chosen.rank or candidate.between is None:
        return ""
    return f"Less than {words.length(WORTH_CM)} better than {chosen.label}: not worth tracing a line between."
