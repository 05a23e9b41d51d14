"""Places on the size range in words: a person never reads 2.5, she reads "between 38 and 40, halfway"."""

from __future__ import annotations

import math
from fractions import Fraction
from typing import TYPE_CHECKING

from sizekeeper.core.candidates import EDGES_AROUND
from sizekeeper.core.ease import SAME
from sizekeeper.core.measure import TORSO_GIRTHS

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sizekeeper.core.result import Fit, RegionAt

_PARTS = {
    Fraction(1, 4): "a quarter of the way",
    Fraction(1, 2): "halfway",
    Fraction(3, 4): "three quarters of the way",
}
_SHORT_PARTS = {Fraction(1, 4): "¼ way", Fraction(1, 2): "halfway", Fraction(3, 4): "¾ way"}


def split(position: float, sizes: int) -> tuple[int, Fraction]:
    """A position as the listed size at or below it and the part of the way to the next, in hundredths.

    Beyond the ends the listed size is the end itself, and the part is how many steps the place lies past it: negative
    before the first size, positive behind the last.
    """
    exact = Fraction(round(position * 100), 100)
    lower = min(max(math.floor(exact), 0), sizes - 1)
    return lower, exact - lower


def place_words(position: float, labels: Sequence[str]) -> str:
    """A position in words: `40`, `between 38 and 40, halfway`, `past 46 by half a step`."""
    lower, part = split(position, len(labels))
    if part == 0:
        return labels[lower]
    if part < 0:
        return f"before {labels[0]} by {_steps(-part)}"
    if lower == len(labels) - 1:
        return f"past {labels[-1]} by {_steps(part)}"
    return f"between {labels[lower]} and {labels[lower + 1]}, {part_words(part)}"


def inline_words(position: float, labels: Sequence[str]) -> str:
    """A position inside a sentence: `40`, `halfway between 38 and 40`, `a quarter of the way from 38 to 40`."""
    lower, part = split(position, len(labels))
    if part <= 0 or lower == len(labels) - 1:
        return place_words(position, labels)
    joined = "between {} and {}" if part == Fraction(1, 2) else "from {} to {}"
    return f"{part_words(part)} {joined.format(labels[lower], labels[lower + 1])}"


def part_words(part: Fraction) -> str:
    """A part of the way from one size to the next."""
    return _PARTS.get(part, f"{round(part * 100)} % of the way")


def short_place(position: float, labels: Sequence[str]) -> tuple[str, str]:
    """A position as the two short lines of a column's heading: `40` and nothing, or `38–40` and `halfway`.

    What stands in brackets behind a size, `XL (22-24)`, goes to the second line; between sizes it is left out.
    """
    lower, part = split(position, len(labels))
    size, bracket = _without_brackets(labels[lower])
    if part == 0:
        return size, bracket
    return f"{size}–{_without_brackets(labels[lower + 1])[0]}", _SHORT_PARTS.get(part, part_words(part))


def _without_brackets(label: str) -> tuple[str, str]:
    size, opening, rest = label.partition(" (")
    return (size, f"({rest}") if opening and size and rest.endswith(")") else (label, "")


def line_gap_cm(fit: Fit, lower: int) -> float | None:
    """How far apart the printed lines of a listed size and the next lie at an edge, cm; None where no girth says.

    The smallest step over the torso girths that count, spread over the four edges of the side seams.
    """
    counted = [r.measure for r in fit.regions if r.role in ("lead", "counted") and r.measure in TORSO_GIRTHS]
    here, there = (fit.listed[label] for label in fit.labels[lower : lower + 2])
    steps = [abs(b - a) for m in counted if (a := offered_cm(here[m])) is not None and (b := offered_cm(there[m]))]
    return min(steps) / EDGES_AROUND if steps else None


def offered_cm(at: RegionAt) -> float | None:
    """The printed figure a region is judged by: the finished one, in body mode the body chart's."""
    return at.finished_cm if at.finished_cm is not None else at.chart_cm


def _steps(part: Fraction) -> str:
    if part == 1:
        return "one step"
    return "half a step" if part == Fraction(1, 2) else f"{round(part * 100)} % of a step"


def beyond(position: float, sizes: int) -> bool:
    """Whether a position lies past either end of the listed sizes."""
    return position < -SAME or position > sizes - 1 + SAME


def join(parts: Sequence[str], last: str = "and") -> str:
    """Words in a row as people write them: `a`, `a and b`, `a, b and c`."""
    if len(parts) < 2:  # noqa: PLR2004 - one thing needs no joining word
        return "".join(parts)
    return f"{', '.join(parts[:-1])} {last} {parts[-1]}"
