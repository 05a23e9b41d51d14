"""Beyond the range: how far outside the last printed line a size past the chart would run."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from sizekeeper.core.allowance import EDGES_AT
from sizekeeper.core.ease import SAME
from sizekeeper.core.run import along

if TYPE_CHECKING:
    from sizekeeper.core.comparison import Comparison


@dataclass(frozen=True, slots=True)
class Beyond:
    """A place past the listed sizes: the last size there, and per region how far outside its line, cm at each edge.

    Negative amounts run inside the smallest line. `steps` is how many steps of size it lies past it. Everything here
    goes on with the last printed step, an extrapolation: make a toile first.
    """

    label: str
    steps: float
    edge_cm: Mapping[str, float]


def beyond_range(comparison: Comparison, position: float) -> Beyond | None:
    """How far past the last line a position lies, per edge; None within the listed sizes."""
    last = len(comparison.run.sizes) - 1
    if -SAME <= position <= last + SAME:
        return None
    end = 0 if position < 0 else last
    found: dict[str, float] = {}
    for region in comparison.regions.found:
        figures = region.chart if comparison.mode == "body" else region.finished
        edges = EDGES_AT.get(region.measure, 0)
        if figures is None or not edges:
            continue
        here, there = along(figures.middle[None, :], np.array([float(end), position]))[0].tolist()
        if not math.isnan(there - here):
            found[region.measure] = (there - here) / edges
    return Beyond(comparison.run.labels[end], abs(position - end), found)
