"""One person against one chart, as the arrays the searches work on."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from sizekeeper.core.ease import SAME
from sizekeeper.core.misfit import misfit
from sizekeeper.core.run import along

Rows = slice | list[int] | NDArray[np.bool_]
"""Some of the regions of a problem."""
_ALL = slice(None)


@dataclass(frozen=True)
class Problem:
    """The regions of one comparison over the listed sizes; cm.

    `low`, `high` (regions, sizes) are what is offered, `gate` (regions, sizes) the finished figures that must go round
    the body, None in body mode. What is wanted of a region is `body + asked + share * body`; `gated` are the regions
    whose gate decides whether a size can be worn. `weight`, `adjustable`, `gated` have shape (regions,).
    """

    body: NDArray[np.float64]
    asked: NDArray[np.float64]
    share: NDArray[np.float64]
    low: NDArray[np.float64]
    high: NDArray[np.float64]
    gate: NDArray[np.float64] | None
    stretch: float
    weight: NDArray[np.float64]
    adjustable: NDArray[np.bool_]
    gated: NDArray[np.bool_]

    @property
    def sizes(self) -> int:
        """How many sizes are listed."""
        return int(self.low.shape[1])

    @cached_property
    def wanted(self) -> NDArray[np.float64]:
        """Body and the ease asked for, shape (regions,)."""
        return self.body + self.asked + self.share * self.body

    def offered(self, at: NDArray[np.float64], rows: Rows = _ALL) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
        """What is offered at positions, lower and upper end, shape (regions, positions); in all regions or some."""
        low = along(self.low[rows], at)
        return low, low if self.high is self.low else along(self.high[rows], at)

    def judged(self, at: NDArray[np.float64]) -> tuple[NDArray[np.float64], NDArray[np.bool_]]:
        """The misfit at positions, NaN where no region that counts has a figure, and where each of them has one."""
        low, high = self.offered(at)
        misfits = misfit(low, high, self.wanted, self.weight, self.adjustable)
        return misfits, np.asarray(~np.isnan(low[self.weight > 0]).any(axis=0))

    def complete(self, at: NDArray[np.float64]) -> NDArray[np.bool_]:
        """Where every region that counts has a figure, shape (positions,)."""
        return np.asarray(~np.isnan(along(self.low, at)[self.weight > 0]).any(axis=0))

    def closes(self, at: NDArray[np.float64], rows: Rows = _ALL) -> NDArray[np.bool_]:
        """Where the stretched garment goes round the body, shape (regions, positions); all true in body mode."""
        body = self.body[rows]
        if self.gate is None:
            return np.ones((len(body), len(at)), dtype=bool)
        with np.errstate(invalid="ignore"):
            return np.asarray(along(self.gate[rows], at) * (1 + self.stretch) >= body[:, None] - SAME)

    def wearable(self, at: NDArray[np.float64]) -> NDArray[np.bool_]:
        """Where the garment can be worn: it closes at the gated regions, shape (positions,)."""
        return np.asarray(self.closes(at, self.gated).all(axis=0))
