"""The positions worth tracing: the listed sizes, and lines between two where the printed lines are far enough apart."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from sizekeeper.core.ease import SAME
from sizekeeper.core.result import Between

if TYPE_CHECKING:
    from collections.abc import Sequence


EDGES_AROUND = 4
"""Side seams of front and back: the edges a change around the body is spread over."""
QUARTERS_FROM_CM = 1.0
HALVES_FROM_CM = 0.6
_QUARTERS = (0.25, 0.5, 0.75)


@dataclass(frozen=True, slots=True)
class Positions:
    """Where to look on the run: `at` in rising order, `gap_cm` between the printed lines of each neighbouring pair."""

    at: NDArray[np.float64]
    gap_cm: tuple[float | None, ...]

    @property
    def listed(self) -> NDArray[np.bool_]:
        """Which positions are listed sizes."""
        return np.asarray(self.at == np.floor(self.at))

    def halves(self) -> NDArray[np.bool_]:
        """Which positions are listed sizes or halfway between two."""
        return np.asarray(self.at * 2 == np.floor(self.at * 2))


def gaps(offered: NDArray[np.float64]) -> tuple[float | None, ...]:
    """The distance at an edge between the lines of neighbouring sizes, cm.

    Args:
        offered: shape (girths, sizes): the torso girths that count and are not adjustable, cm.

    Returns:
        The smallest step over the girths, spread over four edges; None for a pair where no girth has both figures.
    """
    out: list[float | None] = []
    for pair in range(offered.shape[1] - 1):
        steps = np.abs(offered[:, pair + 1] - offered[:, pair])
        steps = steps[~np.isnan(steps)]
        out.append(float(steps.min()) / EDGES_AROUND if steps.size else None)
    return tuple(out)


def positions(sizes: int, gap_cm: tuple[float | None, ...]) -> Positions:
    """The listed sizes and the drawable positions between them."""
    at: list[float] = []
    for size in range(sizes):
        at.append(float(size))
        gap = gap_cm[size] if size < len(gap_cm) else None
        if gap is None or gap < HALVES_FROM_CM - SAME:
            continue
        at.extend(size + part for part in (_QUARTERS if gap >= QUARTERS_FROM_CM - SAME else (0.5,)))
    return Positions(np.array(at), gap_cm)


def label_of(position: float, labels: Sequence[str]) -> str:
    """The name of a position: `16`, or `16 + 1/4` for a quarter of the way to the next."""
    lower = int(np.floor(position))
    part = {0.25: "1/4", 0.5: "1/2", 0.75: "3/4"}.get(position - lower, f"{position - lower:.2f}")
    return labels[lower] if position == lower else f"{labels[lower]} + {part}"


def between(position: float, labels: Sequence[str], gap_cm: tuple[float | None, ...]) -> Between | None:
    """Where a line between two listed sizes runs; None at a listed size."""
    lower = int(np.floor(position))
    if position == lower:
        return None
    fraction = position - lower
    gap = gap_cm[lower]
    return Between(labels[lower], labels[lower + 1], fraction, fraction * (gap or 0.0) * 10)
