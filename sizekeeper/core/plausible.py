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


def question(measure: Measure, length: Length) -> Question | None:
    """What to ask about a figure outside the human span of its measure; None when it is inside or no span is known."""
    if measure.human_cm is None or _human(measure, length.exact_cm):
        return None
    answer = next((text for unit in ("in", "cm", "mm") if (text := _meant(measure, length, unit))), "")
    if answer:
        return Question(f"{_as_typed(length)}? That looks like a figure in {_UNIT_NAMES[answer.split()[-1]]}.", answer)
    span = " to ".join(show(limit, _FINE["in" if length.unit == "in" else "cm"]) for limit in measure.human_cm)
    return Question(f"{_as_typed(length)}? People measure {span} here.")


_UNIT_NAMES = {"in": "inches", "cm": "centimetres", "mm": "millimetres"}


def _human(measure: Measure, exact_cm: Fraction) -> bool:
    assert measure.human_cm is not None  # noqa: S101 - asked only of measures with a span
    low, high = measure.human_cm
    return low <= float(exact_cm) <= high


def _as_typed(length: Length) -> str:
    return length.text if _UNIT_BEHIND.search(length.text) else f"{length.text} {length.unit}"


def _meant(measure: Measure, length: Length, unit: str) -> str:
    """The typed number with another unit behind it, where that is a human figure."""
    if unit == length.unit or not _human(measure, length.value * CM_PER[unit]):
        return ""
    text = f"{_UNIT_BEHIND.sub('', length.text)} {unit}"
    try:
        again = parse_length(text)
    except LengthError:
        return ""
    return text if again.value == length.value else ""
