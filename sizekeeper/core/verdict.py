"""What to cut, and what the body chart alone would have said."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import numpy as np

from sizekeeper.core.align import CHARTS_KEPT, match_sizes
from sizekeeper.core.blending import ALTER_INSTEAD_SIZES, best_path
from sizekeeper.core.candidates import label_of
from sizekeeper.core.ease import SAME, band_of
from sizekeeper.core.identity_cache import once_for_these
from sizekeeper.core.measure import LEVELS, REGION_ORDER
from sizekeeper.core.misfit import difference, loss
from sizekeeper.core.preference import BANDS
from sizekeeper.core.result import Blend, Candidate, Verdict

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from numpy.typing import NDArray

    from sizekeeper.core.chart import Chart, Size
    from sizekeeper.core.comparison import Comparison
    from sizekeeper.core.regions import Region
    from sizekeeper.core.result import BodyFigure, RegionAt

WORTH_CM = 1.0
"""Misfit that a line between two sizes, or a blend, must save to be worth its work (coined)."""
_TWO_LEVELS = 2


def chart_says(body: Mapping[str, BodyFigure], body_chart: Chart | None, run: Sequence[Size]) -> dict[str, str]:
    """The size that the body chart alone gives for each measure: the nearest figure, a tie to the larger size.

    Labels are those of the run where a size of the chart is on it, else the chart's own.
    """
    if body_chart is None:
        return {}
    out = {}
    for measure, sizes in _printed(body_chart, run).items():
        if measure not in body:
            continue
        best, least, cm = None, math.inf, body[measure].cm
        for label, low, high in sizes:
            off = max(low - cm, 0.0) + max(cm - high, 0.0)
            if off <= least + SAME:
                best, least = label, min(off, least)
        if best is not None:
            out[measure] = best
    return out


@once_for_these(CHARTS_KEPT)
def _printed(body_chart: Chart, run: Sequence[Size]) -> dict[str, list[tuple[str, float, float]]]:
    """Each region's figures of a body chart, cm, with the label of their size; those in doubt left out."""
    names = {place: size.label for size, place in zip(run, match_sizes(run, body_chart.sizes), strict=True)}
    labels = [names.get(place, size.label) for place, size in enumerate(body_chart.sizes)]
    rows = ((measure, body_chart.row(measure)) for measure in REGION_ORDER)
    return {
        measure: [
            (label, low, high)
            for label, low, high in zip(labels, row.lows(), row.highs(), strict=True)
            if low is not None and high is not None
        ]
        for measure, row in rows
        if row is not None and not row.doubt
    }


def blend(comparison: Comparison) -> Blend | None:
    """Another size at another level, with its misfit; None where fewer than two levels count."""
    regions = comparison.regions.found
    listed = np.arange(len(comparison.run.sizes), dtype=float)
    complete = np.asarray(~np.isnan(comparison.problem.offered(listed)[0]).any(axis=1))
    by_measure = {region.measure: row for row, region in enumerate(regions)}
    rows = [by_measure[m] for m in LEVELS if m in by_measure]
    rows = [row for row in rows if regions[row].weight > 0 and complete[row]]
    if len(rows) < _TWO_LEVELS:
        return None
    return _blend_over(comparison, rows)


def _blend_over(comparison: Comparison, rows: list[int]) -> Blend | None:
    problem, positions = comparison.problem, comparison.positions
    at = positions.at[positions.halves()]
    path = best_path(_allowed(comparison, rows, _losses(comparison, rows, at), at), at)
    single = positions.at[problem.wearable(positions.at)]
    if path is None or not single.size:
        return None
    weights = float(problem.weight[rows].sum())
    single_misfit = float(np.sqrt(_losses(comparison, rows, single).sum(axis=0).min() / weights))
    misfit = math.sqrt(path.loss / weights)
    chosen = {
        comparison.regions.found[row].measure: float(at[step]) for row, step in zip(rows, path.steps, strict=True)
    }
    steep = max(abs(a - b) for a, b in zip(list(chosen.values())[1:], chosen.values(), strict=False))
    return Blend(
        positions=chosen,
        labels={measure: label_of(position, comparison.run.labels) for measure, position in chosen.items()},
        misfit_cm=misfit,
        single_misfit_cm=single_misfit,
        offered=misfit <= single_misfit - WORTH_CM + SAME,
        flags=("alter_instead",) if steep > ALTER_INSTEAD_SIZES + SAME else (),
    )


def _losses(comparison: Comparison, rows: list[int], at: NDArray[np.float64]) -> NDArray[np.float64]:
    """The loss of chosen regions at positions, shape (rows, positions)."""
    p = comparison.problem
    low, high = p.offered(at, rows)
    diffs = difference(low, high, p.wanted[rows, None])
    return loss(diffs, p.weight[rows, None], p.adjustable[rows, None])


def _allowed(
    comparison: Comparison, rows: list[int], losses: NDArray[np.float64], at: NDArray[np.float64]
) -> NDArray[np.float64]:
    """The losses with positions ruled out where the garment would not close at the gated levels."""
    problem = comparison.problem
    gated = [place for place, row in enumerate(rows) if problem.gated[row]]
    allowed = losses.copy()
    allowed[gated] = np.where(problem.closes(at, [rows[place] for place in gated]), losses[gated], np.inf)
    return allowed


def decide(candidates: Sequence[Candidate], blended: Blend | None, lead: str | None) -> Verdict:
    """The best listed size, unless a line between two sizes, or a blend, is better by a centimetre or more.

    Args:
        candidates: best first.
        blended: the blend, if there is one.
        lead: the measure to choose size by.
    """
    listed = next(c for c in candidates if c.between is None)
    chosen = listed
    other = next((c for c in candidates if c.between is not None), None)
    if other is not None and other.rank < listed.rank and _betters(other.misfit_cm, listed.misfit_cm):
        chosen = other
    if blended is not None and blended.offered:
        level = lead if lead is not None and lead in blended.positions else next(iter(blended.positions))
        words = ", ".join(f"{label} at the {m.replace('_', ' ')}" for m, label in blended.labels.items())
        return Verdict("blend", words, blended.positions[level])
    return Verdict("straight" if chosen is listed else "between", chosen.label, chosen.position)


def _betters(misfit: float | None, than: float | None) -> bool:
    return misfit is not None and than is not None and misfit <= than - WORTH_CM + SAME


def no_size_fits(regions: Sequence[Region], listed: Sequence[Mapping[str, RegionAt]], *, designer: bool) -> bool:
    """Whether no listed size has every region that counts in the band asked for or the next one.

    A region that gathers may be any looser band. Figures that are missing do not speak against a size.
    """
    return not any(all(_near(region, at[region.measure], designer=designer) for region in regions) for at in listed)


def _near(region: Region, at: RegionAt, *, designer: bool) -> bool:
    if region.role == "free" or at.band is None:
        return True
    asked = region.rule.band
    if designer and at.asked_cm is not None:
        asked = band_of(at.asked_cm, region.rule.edges_at(region.body.cm))
    apart = BANDS.index(at.band) - BANDS.index(asked)
    return apart >= -1 and (apart <= 1 or region.role == "adjustable")
