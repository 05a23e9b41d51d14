"""The whole comparison of a person and a pattern: candidates in order, verdict, margins, ties, blend."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from sizekeeper.core.candidates import between, label_of
from sizekeeper.core.comparison import Comparison, compare
from sizekeeper.core.ease import SAME
from sizekeeper.core.margin import Margins, margins
from sizekeeper.core.optimum import best_position
from sizekeeper.core.ranking import order
from sizekeeper.core.result import Candidate, Fit, RegionAt, RegionFit
from sizekeeper.core.verdict import blend, chart_says, decide, no_size_fits

if TYPE_CHECKING:
    from collections.abc import Mapping

    from sizekeeper.core.chart import Chart
    from sizekeeper.core.ease import EaseDefaults
    from sizekeeper.core.question import Question
    from sizekeeper.core.regions import Region
    from sizekeeper.core.result import BodyFigure


def fit(
    body: Mapping[str, BodyFigure],
    body_chart: Chart | None,
    finished_chart: Chart | None,
    question: Question,
    defaults: EaseDefaults,
) -> Fit:
    """Compare a body with a pattern's charts.

    Args:
        body: her figures by measure, cm.
        body_chart: the pattern's body chart, if it has one.
        finished_chart: its finished measurements, if it has them.
        question: how to compare.
        defaults: the band edges nobody has changed.

    Raises:
        FitError: they cannot be compared; the message says what is missing.
    """
    comparison = compare(body, body_chart, finished_chart, question, defaults)
    return fit_of(comparison, chart_says(body, body_chart, comparison.run.sizes))


def fit_of(comparison: Comparison, said: Mapping[str, str]) -> Fit:
    """Everything a comparison says; `said` is what the body chart alone would say."""
    regions = comparison.regions.found
    shifts = margins(comparison.problem, np.array([region.body.tolerance_cm for region in regions]))
    ties = _ties(comparison, shifts)
    candidates = _candidates(comparison, {label for _, _, label in ties})
    listed = {c.label: c.regions for c in sorted(candidates, key=lambda c: c.position) if c.between is None}
    blended = blend(comparison)
    best = best_position(comparison.problem)
    return Fit(
        mode=comparison.mode,
        labels=comparison.run.labels,
        verdict=decide(candidates, blended, comparison.regions.lead),
        chart_says=said,
        regions=tuple(_region_fit(comparison, region, found) for region, found in zip(regions, shifts, strict=True)),
        candidates=candidates,
        best_position=best,
        blend=blended,
        left_out=comparison.regions.left_out,
        flags=_flags(comparison, best, list(listed.values())),
        ties=ties,
        stretch=comparison.stretch,
        listed=listed,
    )


def _ties(comparison: Comparison, shifts: list[Margins]) -> tuple[tuple[str, float, str], ...]:
    """The listed sizes that become first within the tolerance of one region: measure, shift in cm, label."""
    labels = comparison.run.labels
    out: list[tuple[str, float, str]] = []
    for region, found in zip(comparison.regions.found, shifts, strict=True):
        for sign, overtaken in zip((-1.0, 1.0), found, strict=True):
            near = [o for o in overtaken if o.shift_cm <= region.body.tolerance_cm + SAME]
            out.extend((region.measure, sign * o.shift_cm, labels[o.size]) for o in near)
    return tuple(out)


def _candidates(comparison: Comparison, tied: set[str]) -> tuple[Candidate, ...]:
    """The listed sizes and drawable positions, best first."""
    problem, positions, labels = comparison.problem, comparison.positions, comparison.run.labels
    at = positions.at
    (misfits, complete), wearable = problem.judged(at), problem.wearable(at)
    ranked = order(misfits, complete, wearable, at)
    regions = comparison.at_all(at)
    listed = positions.listed.tolist()
    best_listed = next(int(i) for i in ranked if listed[i])
    out = []
    for rank, i in enumerate(ranked.tolist(), start=1):
        label = label_of(float(at[i]), labels)
        out.append(
            Candidate(
                rank=rank,
                label=label,
                position=float(at[i]),
                between=between(float(at[i]), labels, positions.gap_cm),
                misfit_cm=None if np.isnan(misfits[i]) else float(misfits[i]),
                wearable=bool(wearable[i]),
                tied=listed[i] and bool(tied) and (i == best_listed or label in tied),
                missing=_missing(comparison, regions[i]),
                flags=tuple(f"interpolated:{m}" for m, figures in regions[i].items() if figures.interpolated),
                regions=regions[i],
            )
        )
    return tuple(out)


def _missing(comparison: Comparison, at: Mapping[str, RegionAt]) -> tuple[str, ...]:
    """The regions that count and have no figure at a position."""
    return tuple(r.measure for r in comparison.regions.found if r.weight > 0 and at[r.measure].diff_cm is None)


def _region_fit(comparison: Comparison, region: Region, shifts: Margins) -> RegionFit:
    return RegionFit(
        measure=region.measure,
        body_cm=region.body.cm,
        asked_cm=region.rule.asked_at(region.body.cm) if comparison.mode == "my" else None,
        weight=region.weight,
        role=region.role,
        edges=region.rule.edges_at(region.body.cm),
        tolerance_cm=region.body.tolerance_cm,
        safe_down_cm=shifts.down[0].shift_cm if shifts.down else None,
        safe_up_cm=shifts.up[0].shift_cm if shifts.up else None,
        hangs_clear_cm=region.hangs_clear_cm,
        role_given=region.role_given,
        own=region.rule.own,
    )


def _flags(comparison: Comparison, best: float | None, listed: list[Mapping[str, RegionAt]]) -> tuple[str, ...]:
    """What must be said of the whole comparison.

    lead_absent, ease_unknown, no_single_size, and beyond_smallest or beyond_largest where the best position of all
    lies past the listed sizes.
    """
    flags = []
    if comparison.regions.lead is None:
        flags.append("lead_absent")
    if comparison.mode == "body":
        flags.append("ease_unknown")
    elif no_size_fits(comparison.regions.found, listed, designer=comparison.mode == "designer"):
        flags.append("no_single_size")
    if best is not None and best < -SAME:
        flags.append("beyond_smallest")
    if best is not None and best > len(comparison.run.sizes) - 1 + SAME:
        flags.append("beyond_largest")
    return tuple(flags)
