"""Knits: the stretch test, the stretch each region needs, and how much smaller than the body a garment may be.

Stretch is (stretched - rest) / rest, as the trade counts it: 4 in to 5 in is 25 %, 10 in to 14 in 40 %.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sizekeeper.core.ease import SAME
from sizekeeper.errors import PlanError

if TYPE_CHECKING:
    from collections.abc import Mapping
    from fractions import Fraction

    from sizekeeper.core.make import StretchTest


def stretch_of(test: StretchTest) -> Fraction:
    """The stretch that a test shows, an exact share.

    Raises:
        PlanError: the length at rest is nothing, or longer than the stretched one.
    """
    rest, stretched = test.rest.exact_cm, test.stretched.exact_cm
    if not 0 < rest <= stretched:
        raise PlanError("A stretch test starts from the length at rest and ends at a longer one, like 10 to 14.")
    return (stretched - rest) / rest


def reach(finished_cm: float, stretch: float) -> float:
    """How far a finished girth stretches, cm."""
    return finished_cm * (1 + stretch)


def needed_stretch(body_cm: float, finished_cm: float) -> float:
    """The share a finished girth must stretch to go round the body; 0 where it is no smaller."""
    return max(0.0, body_cm / finished_cm - 1)


def most_negative_ease(stretch: float) -> float:
    """How much smaller than the body a garment can be at most, as a share of the body: 1 - 1/(1 + s).

    A ceiling, not a comfortable fit: the fabric is then stretched as far as it goes. A garment that reaches 1 1/2
    times its girth can be a third smaller than the body (as several sewing tutorials give it).
    """
    return 1 - 1 / (1 + stretch)


@dataclass(frozen=True, slots=True)
class KnitRegion:
    """One region of a knit: the share it must stretch, how far it reaches, whether the fabric has that much."""

    measure: str
    needed: float
    reach_cm: float
    enough: bool


@dataclass(frozen=True, slots=True)
class KnitCheck:
    """A fabric against what a pattern asks. `short_of_pattern`: it stretches less than the pattern was made for."""

    stretch: float
    pattern_stretch: float
    most_negative: float
    short_of_pattern: bool
    regions: tuple[KnitRegion, ...]


def knit_check(stretch: float, pattern_stretch: float, regions: Mapping[str, tuple[float, float]]) -> KnitCheck:
    """Try a fabric for a pattern and a body.

    Args:
        stretch: the fabric's share, from the test.
        pattern_stretch: the share the pattern asks for, 0 where it says nothing.
        regions: body and finished girth by measure, cm.
    """
    found = [
        KnitRegion(m, needed_stretch(body, made), reach(made, stretch), reach(made, stretch) >= body - SAME)
        for m, (body, made) in regions.items()
    ]
    return KnitCheck(
        stretch, pattern_stretch, most_negative_ease(stretch), stretch < pattern_stretch - SAME, tuple(found)
    )
