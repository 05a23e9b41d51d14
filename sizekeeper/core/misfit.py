"""How far a garment is off the ease asked for, over all regions: one formula for one person or a thousand.

What a size offers in a region is a span `low..high` in cm (a point for a finished figure, a span for a body chart's
range); what is wanted is one figure. The difference is 0 inside the span, else the distance to its nearer end,
negative where too little is offered.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from numpy.typing import NDArray

SHORT_TIMES = 2.0
"""A centimetre too little counts like two too much."""


def difference(
    low: NDArray[np.float64],
    high: NDArray[np.float64],
    wanted: NDArray[np.float64],
) -> NDArray[np.float64]:
    """What is offered minus what is wanted, cm.

    Args:
        low: what is offered at least; broadcasts with `wanted`.
        high: what is offered at most.
        wanted: body and ease asked for, cm.
    """
    if high is low:
        return low - wanted
    return np.maximum(low - wanted, 0.0) + np.minimum(high - wanted, 0.0)


def loss(
    diff: NDArray[np.float64],
    weight: NDArray[np.float64],
    adjustable: NDArray[np.bool_],
) -> NDArray[np.float64]:
    """The loss of each difference: w (2 d)^2 where short, w d^2 where over, 0 where over and adjustable.

    Args:
        diff: cm, any shape.
        weight: broadcasts with it.
        adjustable: broadcasts with it.
    """
    short = np.minimum(diff, 0.0)
    over = np.maximum(diff, 0.0)
    if adjustable.any():
        over = np.where(adjustable, 0.0, over)
    return np.asarray(weight * ((SHORT_TIMES * short) ** 2 + over**2))


def misfit(
    low: NDArray[np.float64],
    high: NDArray[np.float64],
    wanted: NDArray[np.float64],
    weight: NDArray[np.float64],
    adjustable: NDArray[np.bool_],
) -> NDArray[np.float64]:
    """The misfit at every position, cm: the root of the weighted mean loss over the regions with a figure there.

    Args:
        low: shape (regions, positions), cm, NaN where nothing is known.
        high: the same shape; the same array where no ranges are given.
        wanted: shape (..., regions), cm; leading axes are people.
        weight: shape (..., regions) or (regions,).
        adjustable: shape (..., regions) or (regions,).

    Returns:
        Shape (..., positions); NaN where no region that counts has a figure.
    """
    people = wanted.shape[:-1]
    total = np.zeros((*people, low.shape[-1]))
    weights = np.zeros((*weight.shape[:-1], low.shape[-1]))
    for region in range(low.shape[0]):
        known = ~np.isnan(low[region])
        w = weight[..., region, None] * known
        least = np.where(known, low[region], 0.0)
        most = least if high is low else np.where(known, high[region], 0.0)
        _add_loss(total, difference(least, most, wanted[..., region, None]), w, adjustable[..., region, None])
        weights += w
    with np.errstate(invalid="ignore", divide="ignore"):
        total /= weights
    return np.asarray(np.sqrt(total, out=total))


def _add_loss(
    total: NDArray[np.float64],
    diff: NDArray[np.float64],
    weight: NDArray[np.float64],
    adjustable: NDArray[np.bool_],
) -> None:
    """Add one region's loss to the running total, in place: this is the inner loop over people and positions."""
    if adjustable.any():
        total += loss(diff, weight, adjustable)
        return
    short = np.minimum(diff, 0.0)
    short *= short
    short *= SHORT_TIMES**2 - 1
    diff *= diff
    diff += short
    diff *= weight
    total += diff
