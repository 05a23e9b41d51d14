"""A published multi-size pattern: what the envelope says besides its charts."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from sizekeeper.core.length import Length
from sizekeeper.core.preference import Garment

KNIT_FROM = 0.15
"""The stretch from which a fabric counts as a knit (design of the ease bands; coined)."""


@dataclass(frozen=True, slots=True)
class Pattern:
    """A pattern as bought. `stretch` is (stretched - rest) / rest to comfortable resistance, 0 for a woven.

    `drafted_difference` is bust minus high bust that the pattern was drafted for. `views` are the names of views that
    have finished figures of their own; the finished chart of no view serves all others. `child` marks a pattern for
    children's wear, which shows the cautions for it.
    """

    id: str
    title: str
    publisher: str = ""
    garment: Garment = "dress"
    fabric: Literal["woven", "knit"] = "woven"
    stretch: float = 0.0
    seam_allowance: Length | None = None
    drafted_difference: Length | None = None
    drafted_height: Length | None = None
    views: tuple[str, ...] = ()
    unit: Literal["cm", "in"] = "cm"
    child: bool = False
    notes: str = ""
    hidden: bool = False

    @property
    def knit(self) -> bool:
        """Whether the knit's rules of ease apply: a fabric that stretches by 15 % or more."""
        return self.stretch >= KNIT_FROM
