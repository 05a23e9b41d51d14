"""The order of candidates: which of two positions comes first, and why."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from sizekeeper.core.ease import SAME

if TYPE_CHECKING:
    from numpy.typing import NDArray


def tie_groups(misfits: NDArray[np.float64]) -> NDArray[np.int64]:
    """Number misfits so that those nearer than a millionth of a centimetre to their neighbour get the same number.

    Args:
        misfits: shape (positions,), cm; NaN comes last.
    """
    order = np.argsort(misfits, kind="stable")
    sorted_ = misfits[order]
    with np.errstate(invalid="ignore"):
        new = np.concatenate(([False], ~(np.diff(sorted_) <= SAME)))
    new |= np.isnan(sorted_)
    groups = np.empty(len(misfits), dtype=np.int64)
    groups[order] = np.cumsum(new)
    return groups


def order(
    misfits: NDArray[np.float64],
    complete: NDArray[np.bool_],
    wearable: NDArray[np.bool_],
    at: NDArray[np.float64],
) -> NDArray[np.int64]:
    """The candidates from best to worst.

    Complete before lacking a figure in a region that counts; wearable first; the smaller misfit; listed before between;
    the larger position.

    Returns:
        Indices into the candidates, shape (positions,).
    """
    is_between = at != np.floor(at)
    keys = (-at, is_between, tie_groups(misfits), ~wearable, ~complete)
    return np.lexsort(keys)


def first_of_each(
    misfits: NDArray[np.float64], complete: NDArray[np.bool_], wearable: NDArray[np.bool_]
) -> NDArray[np.int64]:
    """The best listed size of each row, by the same order.

    Args:
        misfits: shape (rows, sizes), cm.
        complete: shape (sizes,).
        wearable: shape (rows, sizes).

    Returns:
        The index of the size, shape (rows,).
    """
    grade = 2 * complete.astype(int)[None, :] + wearable
    misfits = np.where(np.isnan(misfits), np.inf, misfits)
    misfits = np.where(grade == grade.max(axis=1, keepdims=True), misfits, np.nan)
    least = np.nanmin(misfits, axis=1, keepdims=True)
    with np.errstate(invalid="ignore"):
        near = (misfits <= least + SAME) | ((misfits == least) & np.isinf(least))
    return np.asarray(misfits.shape[1] - 1 - np.argmax(near[:, ::-1], axis=1))
