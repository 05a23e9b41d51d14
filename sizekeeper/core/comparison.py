"""One person against one pattern: every figure at any position on the size run."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

import numpy as np

from sizekeeper.core.align import Figures, Run, lay_out
from sizekeeper.core.candidates import Positions, gaps, positions
from sizekeeper.core.ease import EaseDefaults, band_of
from sizekeeper.core.measure import TORSO_GIRTHS
from sizekeeper.core.misfit import difference, loss
from sizekeeper.core.problem import Problem
from sizekeeper.core.regions import Regions, choose_regions
from sizekeeper.core.result import BodyFigure, Mode, RegionAt
from sizekeeper.core.run import along
from sizekeeper.errors import FitError

if TYPE_CHECKING:
    from collections.abc import Mapping

    from numpy.typing import NDArray

    from sizekeeper.core.chart import Chart
    from sizekeeper.core.question import Question


@dataclass(frozen=True)
class Comparison:
    """A person's body and a pattern's charts, laid side by side and ready to be asked about any position."""

    mode: Mode
    run: Run
    regions: Regions
    problem: Problem
    stretch: float

    @cached_property
    def positions(self) -> Positions:
        """The listed sizes and the drawable positions between them."""
        torso = [
            (region.chart if self.mode == "body" else region.finished)
            for region in self.regions.found
            if region.measure in TORSO_GIRTHS and region.role in ("lead", "counted")
        ]
        rows = [figures.middle for figures in torso if figures is not None]
        gap_cm = gaps(np.array(rows)) if rows else (None,) * (len(self.run.sizes) - 1)
        return positions(len(self.run.sizes), gap_cm)

    def at(self, position: float) -> dict[str, RegionAt]:
        """Every region at one position, by measure. Positions run from -1 to the number of sizes."""
        return self.at_all(np.array([position]))[0]

    def at_all(self, at: NDArray[np.float64]) -> list[dict[str, RegionAt]]:
        """Every region at many positions, by measure, in body order."""
        found, p = self.regions.found, self.problem
        low, high = p.offered(at)
        diffs = difference(low, high, p.wanted[:, None])
        losses = loss(diffs, p.weight[:, None], p.adjustable[:, None])
        finished, chart = self._laid(at)
        ease = finished - p.body[:, None]
        must_close = np.array([region.role in ("lead", "counted") for region in found])[:, None]
        short = np.where(must_close, np.maximum(p.body[:, None] - finished * (1 + self.stretch), 0.0), 0.0)
        short[np.isnan(finished)] = np.nan
        amounts = _none_where_unknown(np.stack((finished, chart, ease, ease - diffs, diffs, losses, short)))
        out: list[dict[str, RegionAt]] = [{} for _ in at]
        for row, region in enumerate(found):
            edges = region.rule.edges_at(region.body.cm)
            filled = _filled(region.chart if self.mode == "body" else region.finished, at)
            columns = zip(*(amount[row] for amount in amounts), filled, strict=True)
            for place, (f, c, e, asked, diff, lost, short_cm, inner) in zip(out, columns, strict=True):
                band = None if e is None else band_of(e, edges)
                place[region.measure] = RegionAt(f, c, e, asked, diff, lost, band, short_cm, inner)
        return out

    def _laid(self, at: NDArray[np.float64]) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
        """The finished and the body chart's figures at positions, each (regions, positions); NaN where not given."""
        regions, unknown = self.regions.found, np.full(len(self.run.sizes), np.nan)
        finished = [None if self.mode == "body" else region.finished for region in regions]
        both = [*finished, *(region.chart for region in regions)]
        laid = along(np.array([unknown if figures is None else figures.middle for figures in both]), at)
        return laid[: len(regions)], laid[len(regions) :]


def _none_where_unknown(amounts: NDArray[np.float64]) -> list[list[list[float | None]]]:
    """Amounts as plain numbers, None for NaN."""
    plain = amounts.astype(object)
    plain[np.isnan(amounts)] = None
    return list(plain.tolist())


def _filled(figures: Figures | None, at: NDArray[np.float64]) -> list[bool]:
    """Where a figure at a position rests on one that was filled in."""
    if figures is None or not figures.any_filled:
        return [False] * len(at)
    last = len(figures.filled) - 1
    lower = np.clip(np.floor(at).astype(int), 0, last)
    upper = np.clip(np.ceil(at).astype(int), 0, last)
    return list((figures.filled[lower] | figures.filled[upper]).tolist())


def choose_mode(wanted: Mode | None, body_chart: Chart | None, finished_chart: Chart | None) -> Mode:
    """The mode asked for, or the default: my ease with a finished chart, else the body chart's own sizes.

    Raises:
        FitError: the pattern has no chart, or not the charts that the mode needs.
    """
    has_body, has_finished = (chart is not None and bool(chart.sizes) for chart in (body_chart, finished_chart))
    if not (has_body or has_finished):
        raise FitError("The pattern has no chart yet: type its body chart or its finished measurements first.")
    mode: Mode = wanted or ("my" if has_finished else "body")
    if mode != "body" and not has_finished:
        raise FitError("There are no finished measurements, so ease is unknown; only the body chart can be compared.")
    if mode != "my" and not has_body:
        raise FitError("There is no body chart, so only your own ease can be compared with the finished measurements.")
    return mode


def compare(
    body: Mapping[str, BodyFigure],
    body_chart: Chart | None,
    finished_chart: Chart | None,
    question: Question,
    defaults: EaseDefaults,
) -> Comparison:
    """Lay a body and a pattern's charts side by side.

    Args:
        body: her figures by measure, cm.
        body_chart: the pattern's body chart, if it has one.
        finished_chart: its finished measurements, if it has them.
        question: how to compare.
        defaults: the band edges nobody has changed.

    Raises:
        FitError: they cannot be compared; the message says what is missing.
    """
    mode = choose_mode(question.mode, body_chart, finished_chart)
    run = lay_out(body_chart, finished_chart, by_body=mode == "body")
    regions = choose_regions(body, run, mode, question, defaults)
    return Comparison(mode, run, regions, _problem(mode, regions, question.stretch), question.stretch)


def _problem(mode: Mode, regions: Regions, stretch: float) -> Problem:
    found = regions.found
    offered = [region.finished if mode == "my" else region.chart for region in found]
    low = np.array([o.middle if mode == "my" else o.low for o in offered if o is not None])
    ranged = mode != "my" and any(o is not None and o.high is not o.low for o in offered)
    high = np.array([o.high for o in offered if o is not None]) if ranged else low
    asks = mode == "my"
    lead = np.array([region.role == "lead" for region in found])
    counted = np.array([region.role == "counted" for region in found])
    return Problem(
        body=np.array([region.body.cm for region in found]),
        asked=np.array([region.rule.asked if asks else 0.0 for region in found]),
        share=np.array([region.rule.asked_share if asks else 0.0 for region in found]),
        low=low,
        high=high,
        gate=None if mode == "body" else np.array([r.finished.middle for r in found if r.finished is not None]),
        stretch=stretch,
        weight=np.array([float(region.weight) for region in found]),
        adjustable=np.array([region.role == "adjustable" for region in found]),
        gated=lead if lead.any() else counted,
    )
