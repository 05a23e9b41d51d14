"""The side seam drawn: where the printed lines run at each level, and the traced line between them.

All offsets are cm at one edge, outward from the smallest printed line in view at that level: a quarter of the girth's
difference, since a change of girth is spread over four edges.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

from sizekeeper.core.candidates import EDGES_AROUND
from sizekeeper.core.measure import LEVELS
from sizekeeper.core.places import offered_cm

if TYPE_CHECKING:
    from sizekeeper.core.plan import Plan
    from sizekeeper.core.result import Fit


@dataclass(frozen=True, slots=True)
class SeamPoint:
    """One level of the side seam: the printed lines by size label, the traced line, and which two it runs between.

    `lower` and `upper` are the same label on a printed line. `from_lower` is the distance from the smaller one's line.
    """

    level: str
    printed: Mapping[str, float]
    traced: float
    lower: str
    upper: str
    from_lower: float


def side_seam(plan: Plan, fit: Fit, *, beside: int = 1) -> tuple[SeamPoint, ...]:
    """The side seam of a plan, level by level from the top; levels without figures are left out.

    Args:
        plan: a plan of listed sizes and places between them.
        fit: the comparison it was made from.
        beside: how many printed lines are shown outside those that the traced line touches.
    """
    levels = [m for m in LEVELS if m in plan.regions]
    places = {m: min(max(plan.regions[m].position, 0.0), len(fit.labels) - 1.0) for m in levels}
    if not levels:
        return ()
    first = max(0, min(math.floor(p) for p in places.values()) - beside)
    last = min(len(fit.labels) - 1, max(math.ceil(p) for p in places.values()) + beside)
    points = [_point(m, places[m], fit, fit.labels[first : last + 1]) for m in levels]
    return tuple(point for point in points if point is not None)


def _point(measure: str, position: float, fit: Fit, shown: tuple[str, ...]) -> SeamPoint | None:
    girths = {label: offered_cm(fit.listed[label][measure]) for label in shown}
    known = {label: girth for label, girth in girths.items() if girth is not None}
    lower, upper = fit.labels[math.floor(position)], fit.labels[math.ceil(position)]
    if lower not in known or upper not in known:
        return None
    least = min(known.values())
    printed = {label: (girth - least) / EDGES_AROUND for label, girth in known.items()}
    outward = (printed[upper] - printed[lower]) * (position - math.floor(position))
    return SeamPoint(measure, printed, printed[lower] + outward, lower, upper, outward)
