"""The sleeve: its ease at the upper arm, where it ends, and what its cap must still meet."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

CAP_EASE_LEAST = Fraction(0)
"""A cap must not be shorter than the armhole it is set into (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class ArmChange:
    """How much wider a sleeve must be at the upper arm; exact cm. `ease` is what it has, `asked` what it should have.

    `change` is 0 where the ease is enough. Opened along its length from cap to hem, the cap seam grows by about
    `cap_grows`: the armhole must grow by as much, half at front and half at back of the side seam, or the cap be eased.
    """

    ease: Fraction
    asked: Fraction

    @property
    def change(self) -> Fraction:
        """How much wider, all round the arm."""
        return max(Fraction(0), self.asked - self.ease)

    @property
    def cap_grows(self) -> Fraction:
        """How much longer the cap seam becomes when the sleeve is widened at the underarm seam."""
        return self.change

    @property
    def armhole_edge(self) -> Fraction:
        """What the front and the back each get at the top of the side seam, so that the armhole still meets the cap."""
        return self.change / 2


def arm_change(finished: Fraction, arm: Fraction, asked: Fraction) -> ArmChange:
    """The change at the upper arm.

    Args:
        finished: the sleeve's girth at the upper arm, exact cm.
        arm: her upper arm.
        asked: the ease she asks for there; 1/2 to 2 in at least (New Mexico State University Extension C-228).
    """
    return ArmChange(finished - arm, asked)


@dataclass(frozen=True, slots=True)
class CapCheck:
    """A sleeve cap against its armhole, both along the seam line; exact cm.

    `ease` is what is to be eased in, negative where the cap is short.
    """

    cap: Fraction
    armhole: Fraction

    def widened(self, change: ArmChange) -> CapCheck:
        """The same where the sleeve alone is widened, along its length, and the armhole stays."""
        return CapCheck(self.cap + change.cap_grows, self.armhole)

    @property
    def ease(self) -> Fraction:
        """The cap's ease."""
        return self.cap - self.armhole

    @property
    def meets(self) -> bool:
        """Whether the cap reaches round the armhole."""
        return self.ease >= CAP_EASE_LEAST


def end_to_be_level_with_waist(shoulder_to_waist: Fraction, cap_drop: Fraction = Fraction(0)) -> Fraction:
    """The sleeve length that ends level with the waist when the arm hangs, exact cm.

    Args:
        shoulder_to_waist: from the shoulder's end straight down to the waist level.
        cap_drop: how far the sleeve's top lies below the shoulder's end, for a dropped or raised shoulder.
    """
    return shoulder_to_waist - cap_drop


def ends_below_waist(sleeve: Fraction, shoulder_to_waist: Fraction, cap_drop: Fraction = Fraction(0)) -> Fraction:
    """How far below the waist level a sleeve ends on the hanging arm; negative above it. Exact cm."""
    return sleeve - end_to_be_level_with_waist(shoulder_to_waist, cap_drop)
