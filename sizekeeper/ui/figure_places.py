"""Where the tape goes for each measure of the body, in the units of the drawn figure."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from sizekeeper.ui.figure_outline import Point

Side = Literal["front", "back"]


@dataclass(frozen=True, slots=True)
class Around:
    """A girth: the tape as an ellipse around the body, seen from both sides; `tilt` in degrees, clockwise."""

    middle: Point
    half_width: float
    half_height: float
    tilt: float = 0

    @property
    def sides(self) -> tuple[Side, ...]:
        """The tape is seen from the front and from the back."""
        return ("front", "back")


@dataclass(frozen=True, slots=True)
class Along:
    """A length: an arrowed line, on one side or going on over the other.

    `guides` are thin lines from the body to a line that is measured beside it.
    """

    line: tuple[Point, ...]
    sides: tuple[Side, ...] = ("front",)
    guides: tuple[tuple[Point, Point], ...] = ()
    arrows: Literal["both", "first"] = "both"


@dataclass(frozen=True, slots=True)
class Across:
    """A width: a bar between two points, on one side."""

    start: Point
    end: Point
    sides: tuple[Side, ...] = ("front",)


TapePlace = Around | Along | Across

_WAIST, _CROTCH, _ARM_TILT = 305, 416, -12

PLACES: dict[str, TapePlace] = {
    "height": Along(((-160, 0), (-160, 800)), guides=(((-166, 0), (-6, 0)), ((-166, 800), (-40, 800)))),
    "head": Around((0, 36), 39, 9),
    "neck": Around((0, 126), 24, 7),
    "shoulder": Along(((24, 132), (48, 144), (80, 160))),
    "across_front": Across((-66, 194), (66, 194)),
    "across_back": Across((-68, 194), (68, 194), sides=("back",)),
    "high_bust": Around((0, 205), 66, 10),
    "bust": Around((0, 228), 66, 12),
    "bust_point_width": Across((-28, 228), (28, 228)),
    "bust_point_depth": Along(((24, 132), (27, 180), (28, 228))),
    "underbust": Around((0, 256), 61, 10),
    "waist": Around((0, _WAIST), 53, 9),
    "high_hip": Around((0, 356), 65, 11),
    "hip": Around((0, 402), 75, 13),
    "thigh": Around((38, 444), 37, 8),
    "knee": Around((34, 580), 20, 5),
    "calf": Around((32.5, 648), 22, 6),
    "ankle": Around((27, 742), 13, 4),
    "heel": Around((29, 776), 16, 8, 24),
    "upper_arm": Around((89, 234), 18, 5, _ARM_TILT),
    "elbow": Around((101, 296), 14, 4, _ARM_TILT),
    "wrist": Around((129, 405), 11, 3.5, _ARM_TILT),
    "hand": Around((135, 440), 16, 5, _ARM_TILT),
    "back_waist_length": Along(((0, 130), (0, _WAIST)), sides=("back",)),
    "front_waist_length": Along(((0, 138), (0, _WAIST))),
    "sleeve_length": Along(((84, 160), (98, 190), (110, 236), (118, 284), (127, 322), (136, 366), (142, 402))),
    "waist_to_hip": Along(((54, _WAIST), (61, 336), (70, 366), (76, 402))),
    "crotch_depth": Along(
        ((83, _WAIST), (83, _CROTCH)), guides=(((50, _WAIST), (88, _WAIST)), ((2, _CROTCH), (88, _CROTCH)))
    ),
    "crotch_length": Along(((0, _WAIST), (0, _CROTCH)), sides=("front", "back"), arrows="first"),
    "front_rise": Along(((0, _WAIST), (0, _CROTCH))),
    "back_rise": Along(((0, _WAIST), (0, _CROTCH)), sides=("back",)),
    "inseam": Along(((3, 420), (11, 540), (12, 652), (14, 798))),
    "outseam": Along(
        ((55, _WAIST), (61, 336), (70, 366), (77, 402), (78, 440), (73, 492), (62, 548), (56, 612), (56, 660),
         (48, 720), (46, 798))
    ),
}  # fmt: skip
"""The place of every body measure; a girth of the leg or arm is shown on one of the two."""


def in_words(place: TapePlace) -> str:
    """The place in a few words, for a screen reader."""
    match place:
        case Around():
            return "around the body, seen from the front and the back"
        case Along():
            return f"a line {_seen(place.sides)}"
        case Across():
            return f"a bar across the {place.sides[0]}"


def _seen(sides: tuple[Side, ...]) -> str:
    return "down the front, between the legs and up the back" if len(sides) > 1 else f"seen from the {sides[0]}"
