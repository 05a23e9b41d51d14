"""Questions about a figure that no human body has: most often the other unit was meant."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING

from sizekeeper.core.length import CM_PER
from sizekeeper.core.notation import Notation, parse_length, show
from sizekeeper.errors import LengthError

if TYPE_CHECKING:
    from sizekeeper.core.length import Length
    from sizekeeper.core.measure import Measure

_UNIT_BEHIND = re.compile(r"[^\d\u00bc-\u00be\u2150-\u215e]+$")
_FINE = {"cm": Notation("cm", Fraction(1, 10)), "in": Notation("in", Fraction(1, 8))}


@dataclass(frozen=True, slots=True)
class Question:
    """A doubt about a figure, in one sentence; `answer` is the text that was probably meant, "" if none is likely."""

    sentence: str
    answer: str = ""


_GROWN = Fraction(14, 10)
"""A grown body measures at least this many times the span's least, which is a small child's; heads are left out.

Common practice, no source.
"""


def question(measure: Measure, length: Length, *, child: bool) -> Question | None:
    """What to ask about a figure that is human only in another unit, or not at all.

    Args:
        measure: what was measured; without a known human span nothing is asked.
        length: the figure.
        child: whether the person still grows; a grown body's least figures lie higher.

    Returns:
        The question, or None when the figure may well be right.
    """
    if measure.human_cm is None:
        return None
    human, grown = _human(measure, length.exact_cm), child or _grown(measure, length.exact_cm)
    if human and grown:
        return None
    units = [text for unit in ("in", "cm", "mm") if (text := _meant(measure, length, unit, child=child))]
    if units:
        name = _UNIT_NAMES[units[0].split()[-1]]
        return Question(f"{_as_typed(length)}? That looks like a figure in {name}.", units[0])
    if human:
        return None
    span = " to ".join(show(limit, _FINE["in" if length.unit == "in" else "cm"]) for limit in measure.human_cm)
    return Question(f"{_as_typed(length)}? People measure {span} here.")


_UNIT_NAMES = {"in": "inches", "cm": "centimetres", "mm": "millimetres"}


def _human(measure: Measure, exact_cm: Fraction) -> bool:
    assert measure.human_cm is not None  # noqa: S101 - asked only of measures with a span
    low, high = measure.human_cm
    return low <= float(exact_cm) <= high


def _grown(measure: Measure, exact_cm: Fraction) -> bool:
    assert measure.human_cm is not None  # noqa: S101 - asked only of measures with a span
    return measure.id == "head" or float(exact_cm) >= measure.human_cm[0] * float(_GROWN)


def _as_typed(length: Length) -> str:
    return length.text if _UNIT_BEHIND.search(length.text) else f"{length.text} {length.unit}"


def _meant(measure: Measure, length: Length, unit: str, *, child: bool) -> str:
    """The typed number with another unit behind it, where that is such a person's figure."""
    exact_cm = length.value * CM_PER[unit]
    if unit == length.unit or not (_human(measure, exact_cm) and (child or _grown(measure, exact_cm))):
        return ""
    text = f"{_UNIT_BEHIND.sub('', length.text)} {unit}"
    try:
        again = parse_length(text)
    except LengthError:
        return ""
    return text if again.value == length.value else ""
