"""Another size at another level: the best position for each level, neighbours kept near each other."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from sizekeeper.core.ease import SAME

if TYPE_CHECKING:
    from numpy.typing import NDArray

NEIGHBOUR_COST = 1.5
"""Loss per squared size between neighbouring levels: a steep change of line costs fit (coined)."""
FARTHEST_SIZES = 3.0
ALTER_INSTEAD_SIZES = 2.0
"""More sizes than this between neighbouring levels: alter instead (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class Path:
    """One position for each level, as indices into the positions, and the loss without the neighbour cost."""

    steps: tuple[int, ...]
    loss: float


def best_path(losses: NDArray[np.float64], at: NDArray[np.float64]) -> Path | None:
    """The positions, level by level, with the least loss and neighbour cost together, by dynamic programming.

    Args:
        losses: shape (levels, positions); infinite where a position is not allowed.
        at: shape (positions,), the positions in rising order.

    Returns:
        The best path, the larger positions where several are equal; None where none is allowed.
    """
    apart = np.abs(at[:, None] - at[None, :])
    cost = np.where(apart <= FARTHEST_SIZES + SAME, NEIGHBOUR_COST * apart**2, np.inf)
    total = losses[0]
    came_from: list[NDArray[np.int64]] = []
    for level in losses[1:]:
        reach = total[:, None] + cost
        came_from.append(_last_least(reach))
        total = reach.min(axis=0) + level
    end = int(_last_least(total[:, None])[0])
    if not np.isfinite(total[end]):
        return None
    steps = [end]
    for back in reversed(came_from):
        steps.append(int(back[steps[-1]]))
    steps.reverse()
    return Path(tuple(steps), float(sum(losses[level, step] for level, step in enumerate(steps))))


def _last_least(table: NDArray[np.float64]) -> NDArray[np.int64]:
    """The last row at which each column is least."""
    return np.asarray(len(table) - 1 - np.argmin(table[::-1], axis=0))
