"""The size run: figures along the listed sizes, between them, and past the ends.

Figures are arrays whose last axis runs along the listed sizes; NaN stands for "not given". A position is a real
number: 2.5 lies halfway from the third listed size to the fourth.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from numpy.typing import NDArray


def fill_gaps(values: NDArray[np.float64]) -> tuple[NDArray[np.float64], NDArray[np.bool_]]:
    """Fill figures missing between two given ones on the straight line between those.

    Args:
        values: shape (regions, sizes), cm, NaN where not given.

    Returns:
        The figures with inner gaps filled, and where they were filled; gaps at the ends stay NaN.
    """
    filled = values.copy()
    where = np.arange(values.shape[-1], dtype=float)
    for row in filled:
        known = ~np.isnan(row)
        if known.sum() > 1:
            row[:] = np.interp(where, where[known], row[known], left=np.nan, right=np.nan)
    return filled, np.isnan(values) & ~np.isnan(filled)


def along(values: NDArray[np.float64], positions: NDArray[np.float64]) -> NDArray[np.float64]:
    """Figures at any positions: linear between neighbours, going on with the last step beyond the ends.

    Args:
        values: shape (regions, sizes) with inner gaps filled, cm.
        positions: shape (positions,).

    Returns:
        Shape (regions, positions); NaN where an end is not given, or beyond the ends of a run of one size. The values
        themselves where the positions are the listed sizes.
    """
    sizes = values.shape[-1]
    if sizes == 1:
        return np.where(np.abs(positions) < 1e-9, values, np.nan)  # noqa: PLR2004 - a single listed size has no steps
    if len(positions) == sizes and (positions == np.arange(sizes)).all():
        return values
    lower = np.minimum(np.maximum(np.floor(positions), 0), sizes - 2).astype(int)
    part = positions - lower
    below, above = values[:, lower], values[:, lower + 1]
    with np.errstate(invalid="ignore"):
        between = below + part * (above - below)
    # A listed size is known even where its neighbour is not.
    return np.where(part == 0, below, np.where(part == 1, above, between))
