"""A comparison as the plain values that `sizekeeper rank --json` prints, unrounded."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from sizekeeper.core.result import Blend, Candidate, Fit, RegionAt, RegionFit


def as_json(fit: Fit) -> dict[str, Any]:
    """Everything the comparison says, in the shape of the ranking's contract; lengths in cm."""
    return {
        "mode": fit.mode,
        "verdict": {"kind": fit.verdict.kind, "label": fit.verdict.label, "position": fit.verdict.position},
        "chart_says": dict(fit.chart_says),
        "regions": [_region(region, fit) for region in fit.regions],
        "candidates": [_candidate(candidate) for candidate in fit.candidates],
        "best_position": fit.best_position,
        "blend": _blend(fit.blend),
        "left_out": [{"measure": left.measure, "reason": left.reason} for left in fit.left_out],
        "flags": list(fit.flags),
    }


def _region(region: RegionFit, fit: Fit) -> dict[str, Any]:
    return {
        "measure": region.measure,
        "body_cm": region.body_cm,
        "asked_cm": region.asked_cm,
        "weight": region.weight,
        "role": region.role,
        "bands_cm": None if fit.mode == "body" else list(region.edges),
        "tolerance_cm": region.tolerance_cm,
        "safe_down_cm": region.safe_down_cm,
        "safe_up_cm": region.safe_up_cm,
    }


def _candidate(candidate: Candidate) -> dict[str, Any]:
    between = candidate.between
    return {
        "rank": candidate.rank,
        "label": candidate.label,
        "position": candidate.position,
        "between": None
        if between is None
        else {
            "lower": between.lower,
            "upper": between.upper,
            "fraction": between.fraction,
            "mm_from_lower": between.mm_from_lower,
        },
        "misfit_cm": candidate.misfit_cm,
        "wearable": candidate.wearable,
        "tied": candidate.tied,
        "missing": list(candidate.missing),
        "flags": list(candidate.flags),
        "regions": {measure: _at(at) for measure, at in candidate.regions.items()},
    }


def _at(at: RegionAt) -> dict[str, Any]:
    return {
        "finished_cm": at.finished_cm,
        "chart_cm": at.chart_cm,
        "ease_cm": at.ease_cm,
        "asked_cm": at.asked_cm,
        "diff_cm": at.diff_cm,
        "loss": at.loss,
        "band": at.band,
        "short_cm": at.short_cm,
    }


def _blend(blend: Blend | None) -> dict[str, Any] | None:
    if blend is None:
        return None
    return {
        "positions": dict(blend.positions),
        "misfit_cm": blend.misfit_cm,
        "offered": blend.offered,
        "flags": list(blend.flags),
    }
