"""The regions of a comparison: where fit can be judged, how each counts, and what is asked there."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from sizekeeper.core.align import Figures, Run
from sizekeeper.core.ease import EaseDefaults, EaseRule, ease_rule
from sizekeeper.core.measure import REGION_ORDER
from sizekeeper.core.question import LEAD_OF, WORN_AT, Question
from sizekeeper.core.result import BodyFigure, FitRole, LeftOut, Mode
from sizekeeper.errors import FitError

if TYPE_CHECKING:
    from collections.abc import Mapping

    from sizekeeper.core.preference import Role

HANGS_CLEAR = 1.25
"""A girth this many times the body at every size hangs clear of it (coined)."""
WIDTHS = frozenset({"across_back"})
_WEIGHTS: dict[FitRole, int] = {"lead": 2, "counted": 1, "adjustable": 1, "free": 0}


@dataclass(frozen=True)
class Region:
    """One region of a comparison before any size is looked at."""

    measure: str
    body: BodyFigure
    role: FitRole
    weight: int
    rule: EaseRule
    finished: Figures | None
    chart: Figures | None
    hangs_clear_cm: float | None
    role_given: bool


@dataclass(frozen=True)
class Regions:
    """The regions in body order, what was left out and why, and whether there is a measure to choose size by."""

    found: tuple[Region, ...]
    left_out: tuple[LeftOut, ...]
    lead: str | None


def _reason(mode: Mode, body: bool, finished: Figures | None, chart: Figures | None) -> str | None:  # noqa: FBT001 - three facts, one row of a truth table
    """Why a measure is no region, None when it is one."""
    needs_finished, needs_chart = mode != "body", mode != "my"
    if not body:
        return "no_measurement" if finished or chart else ""
    if needs_finished and finished is None:
        return "no_finished"
    if needs_chart and chart is None:
        return "no_chart"
    needed = [f for f, wanted in ((finished, needs_finished), (chart, needs_chart)) if wanted and f is not None]
    return "half_width_suspected" if any(f.doubtful for f in needed) else None


def choose_regions(
    body: Mapping[str, BodyFigure], run: Run, mode: Mode, question: Question, defaults: EaseDefaults
) -> Regions:
    """The regions of a comparison and their roles.

    Raises:
        FitError: there is no region, none counts, or the measure to choose size by was also given another role.
    """
    measures, left_out = [], []
    for measure in REGION_ORDER:
        reason = _reason(mode, measure in body, run.finished.get(measure), run.body.get(measure))
        if reason is None:
            measures.append(measure)
        elif reason:
            left_out.append(LeftOut(measure, reason, _expected(measure, run, mode, question)))  # type: ignore[arg-type]
    if not measures:
        raise FitError("There is no measure that both the person and the chart have, so no size can be compared.")
    given = _given_roles(question)
    lead = _lead(question, given, measures)
    found = tuple(_region(m, body[m], run, given.get(m), lead, question, defaults) for m in measures)
    if not any(region.weight for region in found):
        raise FitError("Every region is set to hang free, so nothing decides the size; let at least one count.")
    return Regions(found, tuple(left_out), lead)


def _expected(measure: str, run: Run, mode: Mode, question: Question) -> bool:
    """Whether one would look for fit at a measure: the garment is worn there, or the size is to be chosen by it."""
    chosen_by = question.lead or question.preferences.lead
    asked_by_chart = measure in run.finished or (mode == "body" and measure in run.body)
    return measure in WORN_AT[question.garment] or measure == chosen_by or asked_by_chart


def _given_roles(question: Question) -> dict[str, Role]:
    """The roles that somebody set, those of the question before those of the person's preferences."""
    kept = {measure: chosen.role for measure, chosen in question.preferences.regions.items() if chosen.role}
    return {**kept, **question.roles}


def _lead(question: Question, given: Mapping[str, Role], measures: list[str]) -> str | None:
    """The measure to choose size by, None when it is no region of this comparison or was given another role."""
    if question.lead is not None and question.roles.get(question.lead, "counted") != "counted":
        raise FitError(
            f"The measure to choose size by ({question.lead}) cannot also be {question.roles[question.lead]}."
        )
    lead = question.lead or question.preferences.lead or LEAD_OF[question.garment]
    if lead not in measures:
        return None
    return lead if lead == question.lead or given.get(lead, "counted") == "counted" else None


def _region(
    measure: str,
    body: BodyFigure,
    run: Run,
    given: Role | None,
    lead: str | None,
    question: Question,
    defaults: EaseDefaults,
) -> Region:
    finished, chart = run.finished.get(measure), run.body.get(measure)
    clear = None
    role: FitRole = "lead" if measure == lead else given or "counted"
    if given is None and measure != lead and measure not in WIDTHS:
        clear = _hangs_clear(body.cm, finished, chart)
        role = "free" if clear is not None else role
    rule = ease_rule(
        measure,
        body.cm,
        garment=question.garment,
        stretch=question.stretch,
        preference=question.preferences,
        defaults=defaults,
    )
    return Region(measure, body, role, _WEIGHTS[role], rule, finished, chart, clear, given is not None)


def _hangs_clear(body_cm: float, finished: Figures | None, chart: Figures | None) -> float | None:
    """The least ease of a girth that hangs clear of the body at every listed size, None when it does not."""
    if finished is None or finished.doubtful:
        return None
    girth = finished.middle
    known = ~np.isnan(girth)
    around = np.full(len(girth), body_cm)
    if chart is not None:
        around = np.fmax(around, chart.middle)
    clear = girth[known] > HANGS_CLEAR * around[known] + 1e-6
    return float((girth[known] - body_cm).min()) if clear.all() else None
