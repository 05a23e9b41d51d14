"""Seam allowances: the pattern's against hers, and what can be let out of them afterwards."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING

from sizekeeper.core.length import Length

if TYPE_CHECKING:
    from sizekeeper.core.pattern import Pattern

KEPT = Length(Fraction(1, 4), "in")
"""What must stay of a seam allowance to hold the seam, 1/4 in (common practice, no source)."""

EDGES_AT = {
    "bust": 4, "waist": 4, "high_hip": 4, "hip": 4, "thigh": 4, "calf": 4, "upper_arm": 2, "wrist": 2, "across_back": 0,
}  # fmt: skip
"""The seam edges round a region: side seams of front and back, in and out seam of a leg, one seam of a sleeve. Four at
the torso and the leg: New Mexico State University Extension C-227; the sleeve: common practice, no source."""


@dataclass(frozen=True, slots=True)
class Allowances:
    """The allowance the pattern prints and the one she sews with; exact cm, None where the pattern says nothing."""

    printed: Fraction | None
    sewn: Fraction | None

    @property
    def to_draw(self) -> Fraction:
        """How far outside the printed cutting line she cuts, at each edge; negative inside. 0 where unknown."""
        if self.printed is None or self.sewn is None:
            return Fraction(0)
        return self.sewn - self.printed

    def per_edge(self, kept: Length = KEPT) -> Fraction | None:
        """What can be let out of one edge, exact cm; None where no allowance is known."""
        return None if self.sewn is None else max(Fraction(0), self.sewn - kept.exact_cm)

    def per_seam(self, kept: Length = KEPT) -> Fraction | None:
        """What can be let out of one seam: of both its edges."""
        edge = self.per_edge(kept)
        return None if edge is None else 2 * edge

    def at(self, measure: str, kept: Length = KEPT) -> Fraction | None:
        """What can be let out all round in a region; None where no allowance is known."""
        edge = self.per_edge(kept)
        return None if edge is None else EDGES_AT.get(measure, 0) * edge


def allowances(pattern: Pattern, hers: Length | None = None) -> Allowances:
    """The allowances of a pattern and of the one who sews; hers None is the pattern's.

    A pattern printed without allowances has one of 0.
    """
    printed = pattern.seam_allowance.exact_cm if pattern.seam_allowance is not None else None
    return Allowances(printed, hers.exact_cm if hers is not None else printed)
