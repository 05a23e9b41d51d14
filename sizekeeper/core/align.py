"""The figures of a pattern's two charts laid along one size run."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from sizekeeper.core.chart import Chart, ChartRow, Size
from sizekeeper.core.identity_cache import once_for_these
from sizekeeper.core.run import fill_gaps

CHARTS_KEPT = 700
"""How many laid-out patterns are kept: more than a large collection has (coined)."""


@dataclass(frozen=True)
class Figures:
    """One measure along the run, cm, inner gaps filled; `filled` tells where. `doubtful`: half width suspected."""

    low: NDArray[np.float64]
    high: NDArray[np.float64]
    filled: NDArray[np.bool_]
    doubtful: bool = False

    @cached_property
    def middle(self) -> NDArray[np.float64]:
        """The middle of each range; the figure itself where there is none."""
        return self.low if self.high is self.low else _fixed((self.low + self.high) / 2)

    @cached_property
    def any_filled(self) -> bool:
        """Whether any figure was filled in."""
        return bool(self.filled.any())


@dataclass(frozen=True)
class Run:
    """The listed sizes and the figures of both charts along them, by measure."""

    sizes: tuple[Size, ...]
    body: Mapping[str, Figures]
    finished: Mapping[str, Figures]

    @property
    def labels(self) -> tuple[str, ...]:
        """The labels of the listed sizes."""
        return tuple(size.label for size in self.sizes)


def _key(name: str) -> str:
    return " ".join(name.split()).casefold()


def match_sizes(run: Sequence[Size], other: Sequence[Size]) -> list[int | None]:
    """For each size of the run the index of the same size among others: by label, else by any name in common."""
    labels = {_key(size.label): index for index, size in reversed(list(enumerate(other)))}
    names = {_key(name): index for index, size in reversed(list(enumerate(other))) for name in size.names}
    out: list[int | None] = []
    for size in run:
        found = labels.get(_key(size.label))
        if found is None:
            found = next((names[_key(name)] for name in size.names if _key(name) in names), None)
        out.append(found)
    return out


def _along(row: ChartRow, places: Sequence[int | None]) -> Figures | None:
    """A row laid along the run; None when it has no figure there."""
    lows, highs = row.lows(), row.highs()
    picked = [[_at(figures, place) for place in places] for figures in (lows, highs)]
    both, filled = fill_gaps(np.array(picked, dtype=float))
    if np.isnan(both[0]).all():
        return None
    low = _fixed(both[0])
    high = low if lows == highs else _fixed(both[1])
    return Figures(low, high, filled[0], doubtful=bool(row.doubt))


def _fixed(figures: NDArray[np.float64]) -> NDArray[np.float64]:
    """Figures that nobody can change any more: comparisons of many people rest on the same ones."""
    figures.flags.writeable = False
    return figures


def _at(figures: Sequence[float | None], place: int | None) -> float:
    value = figures[place] if place is not None and place < len(figures) else None
    return float("nan") if value is None else value


def _figures(chart: Chart | None, run: Sequence[Size]) -> dict[str, Figures]:
    if chart is None:
        return {}
    places = match_sizes(run, chart.sizes)
    found: dict[str, Figures] = {}
    for row in chart.rows:
        laid = _along(row, places)
        if laid is not None:
            found.setdefault(row.measure, laid)
    return found


@once_for_these(CHARTS_KEPT)
def lay_out(body_chart: Chart | None, finished_chart: Chart | None, *, by_body: bool) -> Run:
    """Both charts along the finished chart's sizes, or along the body chart's when `by_body`."""
    chart = body_chart if by_body else finished_chart
    sizes = chart.sizes if chart else ()
    return Run(sizes, _figures(body_chart, sizes), _figures(finished_chart, sizes))
