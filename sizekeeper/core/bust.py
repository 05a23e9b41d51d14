"""The bust adjustment: the size by the high bust, and what the front needs more at the bust.

Choosing by the high bust when the full bust is 2 in or more larger is the advice of Texas A&M AgriLife Extension,
bulletin E-372 (2006); the amount is the body's bust less the one the size is drafted for, half of it in each half.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import numpy as np

from sizekeeper.core.ease import SAME
from sizekeeper.core.plan import BustAdjustment
from sizekeeper.core.run import along

if TYPE_CHECKING:
    from collections.abc import Mapping

    from numpy.typing import NDArray

    from sizekeeper.core.comparison import Comparison
    from sizekeeper.core.result import BodyFigure

DRAFTED_DIFFERENCE_CM = 5.0
"""Bust minus high bust a pattern is drafted for where it does not say; the trade's B cup (common practice)."""
SUGGESTED_FROM_CM = 2.0
FARTHEST_PAST_SIZES = 0.5
"""How many sizes past the listed ones a high bust may lie for the end size still to be hers (coined)."""


def bust_adjustment(
    comparison: Comparison, body: Mapping[str, BodyFigure], drafted_difference_cm: float | None = None
) -> BustAdjustment | None:
    """The bust adjustment of a body and a pattern; None where high bust, bust or the drafted bust is not known.

    Args:
        comparison: the body against the pattern's charts.
        body: her figures by measure, cm; `high_bust` and `bust` are needed.
        drafted_difference_cm: bust minus high bust the pattern is drafted for, None for the usual 5 cm.
    """
    drafted = comparison.run.body.get("bust")
    if "high_bust" not in body or "bust" not in body or drafted is None or drafted.doubtful:
        return None
    high = comparison.run.body.get("high_bust")
    own_row = high is not None and not high.doubtful
    less = DRAFTED_DIFFERENCE_CM if drafted_difference_cm is None else drafted_difference_cm
    chart = high.middle if high is not None and own_row else drafted.middle - less
    position = position_where(chart, body["high_bust"].cm)
    if position is None:
        return None
    size = nearest_listed(position, len(chart))
    amount = body["bust"].cm - float(drafted.middle[size])
    if math.isnan(amount):
        return None
    reached = _reaches(comparison, size)
    return BustAdjustment(
        position=position,
        size=size,
        label=comparison.run.labels[size],
        amount_cm=amount,
        half_cm=amount / 2,
        suggested=amount >= SUGGESTED_FROM_CM - SAME and not reached,
        reached=reached,
        from_high_bust_row=own_row,
        length_cm=_front_length(comparison, body, size),
        past=abs(position - min(max(position, 0.0), len(chart) - 1.0)) > FARTHEST_PAST_SIZES + SAME,
    )


def position_where(figures: NDArray[np.float64], wanted: float) -> float | None:
    """The position at which figures along the run reach a value, going on with the last step beyond the ends.

    Args:
        figures: shape (sizes,), cm, NaN where not given.
        wanted: the value, cm.

    Returns:
        The first such position; None where the figures do not say, as when they stand still.
    """
    found = []
    last = len(figures) - 2
    for lower in range(last + 1):
        here, there = float(figures[lower]), float(figures[lower + 1])
        if math.isnan(here) or math.isnan(there) or abs(there - here) < SAME:
            continue
        part = (wanted - here) / (there - here)
        low = -math.inf if lower == 0 else -SAME
        high = math.inf if lower == last else 1 + SAME
        if low <= part <= high:
            found.append(lower + part)
    within = [p for p in found if -SAME <= p <= last + 1 + SAME]
    return min(within or found, default=None)


def nearest_listed(position: float, sizes: int) -> int:
    """The listed size nearest to a position, halfway down; the end size beyond the ends."""
    lower = math.floor(position + SAME)
    nearest = lower if position - lower <= 0.5 + SAME else lower + 1
    return min(max(nearest, 0), sizes - 1)


def _reaches(comparison: Comparison, size: int) -> bool:
    """Whether the finished bust of a size already has the ease asked for; False where ease is unknown."""
    at = comparison.at(float(size)).get("bust")
    return at is not None and at.ease_cm is not None and at.asked_cm is not None and at.ease_cm >= at.asked_cm - SAME


def _front_length(comparison: Comparison, body: Mapping[str, BodyFigure], size: int) -> float | None:
    """Her front length less the one the size is drafted for, cm."""
    row = comparison.run.body.get("front_waist_length")
    if row is None or "front_waist_length" not in body:
        return None
    drafted = float(along(row.middle[None, :], np.array([float(size)]))[0, 0])
    return None if math.isnan(drafted) else body["front_waist_length"].cm - drafted
