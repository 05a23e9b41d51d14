"""Trousers: crotch depth, then crotch length, then thigh, in that order, because each changes the next.

Deepening the crotch by x lengthens the crotch seam by x in front and x at the back; only what then is still missing is
added at the inseam points, split between front and back. What is added there widens the thigh by as much, so only the
rest is left for the thigh. Ease: crotch depth 1/2 to 3/4 in, crotch length 1/2 to 3/4 in in front and again at the
back, thigh 1 in (New Mexico State University Extension C-227). All figures are exact cm.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from sizekeeper.core.length import CM_PER, Length, Unit
from sizekeeper.core.make import WidthChoice

CROTCH_DEPTH_EASE = Fraction(1, 2) * CM_PER["in"]
CROTCH_LENGTH_EASE = CM_PER["in"]
"""1/2 in in front and again at the back, the least that C-227 gives."""
THIGH_EASE = CM_PER["in"]


@dataclass(frozen=True, slots=True)
class Seat:
    """What a body has and what the trousers have as drawn, seam line to seam line; None where it is not known.

    `front_rise` and `back_rise` are the body's two parts of the crotch length, if she knows them.
    """

    body_depth: Fraction | None = None
    made_depth: Fraction | None = None
    body_length: Fraction | None = None
    made_length: Fraction | None = None
    body_thigh: Fraction | None = None
    made_thigh: Fraction | None = None
    front_rise: Fraction | None = None
    made_front_rise: Fraction | None = None


@dataclass(frozen=True, slots=True)
class SeatChanges:
    """The changes in order; None where a figure is lacking.

    `depth` goes in across front and back at the hip line. `front` and `back` lengthen the crotch seam at the inseam
    points. `thigh` is what is still to be added round one leg.
    """

    depth: Fraction | None
    front: Fraction | None
    back: Fraction | None
    thigh: Fraction | None


def seat_changes(
    seat: Seat,
    *,
    depth_ease: Fraction = CROTCH_DEPTH_EASE,
    length_ease: Fraction = CROTCH_LENGTH_EASE,
    thigh_ease: Fraction = THIGH_EASE,
) -> SeatChanges:
    """The changes of a trouser's seat, each with the ones before it already made.

    Args:
        seat: the figures.
        depth_ease: ease at the crotch depth.
        length_ease: ease of the whole crotch seam, front and back together.
        thigh_ease: ease round one thigh.
    """
    depth = _less(seat.body_depth, depth_ease, seat.made_depth)
    front, back = _split(seat, depth or Fraction(0), length_ease)
    thigh = _less(seat.body_thigh, thigh_ease, seat.made_thigh)
    if thigh is not None:
        thigh -= (front or Fraction(0)) + (back or Fraction(0))
    return SeatChanges(depth, front, back, thigh)


SEAT = "seat"
"""The reason of the change of width at the thigh that a seat asks for; its amount follows the seat."""


def thigh_choice(changes: SeatChanges, unit: Unit) -> WidthChoice | None:
    """What is still to be added round one leg, as a change of width at the thigh; None where it is wide enough.

    Args:
        changes: the changes of the seat.
        unit: the unit the amount is kept in.
    """
    if changes.thigh is None or changes.thigh <= 0:
        return None
    return WidthChoice("thigh", Length(changes.thigh / CM_PER[unit], unit), reason=SEAT)


def _less(body: Fraction | None, ease: Fraction, made: Fraction | None) -> Fraction | None:
    return None if body is None or made is None else body + ease - made


def _split(seat: Seat, depth: Fraction, ease: Fraction) -> tuple[Fraction | None, Fraction | None]:
    """What the crotch seam still lacks in front and at the back: by her front rise where known, else half each."""
    lacks = _less(seat.body_length, ease, seat.made_length)
    if lacks is None:
        return None, None
    rest = lacks - 2 * depth
    if seat.front_rise is None or seat.made_front_rise is None:
        return rest / 2, rest / 2
    front = seat.front_rise + ease / 2 - seat.made_front_rise - depth
    return front, rest - front
