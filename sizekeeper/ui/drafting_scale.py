"""The axes of a plot: round figures along them, and where a value lies."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, QRectF

from sizekeeper.core.length import CM_PER
from sizekeeper.core.notation import show

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sizekeeper.core.drafting import Drafting, Panel
    from sizekeeper.core.notation import Notation

_FINE = {"cm": (0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100), "in": (0.125, 0.25, 0.5, 1, 2, 5, 10, 20, 50)}
"""The distances between figures on an axis, in its unit: such as a rule is divided by."""


@dataclass(frozen=True, slots=True)
class Tick:
    """A place on an axis: its value, in cm or as a place in the order of sizes, and what stands there."""

    value: float
    words: str


def round_ticks(low_cm: float, high_cm: float, most: int, notation: Notation) -> list[Tick]:
    """Round figures from just below the least to just above the greatest, no more than `most` steps."""
    per = float(CM_PER[notation.unit])
    low, high = low_cm / per, high_cm / per
    span = max(high - low, _FINE[notation.unit][0])
    step = next((s for s in _FINE[notation.unit] if span / s <= most - 1), _FINE[notation.unit][-1])
    first, last = math.floor(low / step + 1e-9), math.ceil(high / step - 1e-9)
    if first == last:
        first, last = first - 1, last + 1
    return [Tick(i * step * per, show(i * step * per, notation, unit=False)) for i in range(first, last + 1)]


@dataclass(frozen=True)
class Scale:
    """What a plot's rectangle stands for."""

    area: QRectF
    across: tuple[float, float]
    up: tuple[float, float]

    def at(self, x: float, cm: float) -> QPointF:
        """Where a point lies."""
        return QPointF(self.x(x), self.y(cm))

    def x(self, x: float) -> float:
        """Where a place across lies."""
        return self.area.left() + _share(x, self.across) * self.area.width()

    def y(self, cm: float) -> float:
        """Where a height lies."""
        return self.area.bottom() - _share(cm, self.up) * self.area.height()


def _share(value: float, ends: tuple[float, float]) -> float:
    low, high = ends
    return 0.5 if high == low else (value - low) / (high - low)


_AIR = 0.04
"""The part of the width that stays free beside the first and the last point."""


def span_across(compared: Drafting, topic_panels: Sequence[Panel]) -> tuple[float, float]:
    """From the first place across to the last one over several plots, with a little air."""
    places = [p.x for panel in topic_panels for curve in (panel.left, panel.right) for p in curve]
    if not places:
        return (0.0, 1.0)
    low, high = min(places), max(places)
    air = (high - low) * _AIR or (0.5 if not compared.axis else 1.0)
    return (low - air, high + air)


def span_up(panel: Panel) -> tuple[float, float]:
    """From the least figure of a plot to the greatest, over all patterns of a house."""
    points = [*panel.left, *panel.right]
    return (min(p.low for p in points), max(p.high for p in points))
