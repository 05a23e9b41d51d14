"""How figures and measures are said inside sentences."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from sizekeeper.core.ease import SAME
from sizekeeper.core.notation import Notation, show

_Way = Literal["up", "down", "near"]
_SMALL_MM = 20
"""What comes to fewer millimetres than this is said in millimetres where it is drawn or sewn, in centimetres."""


@dataclass(frozen=True, slots=True)
class Wording:
    """How figures and measures are said: the notation, and the trade name of a measure by id.

    `printed` is the notation of the pattern's own figures, where it is not the same: they are said as the envelope has
    them, so that they can be checked against it.
    """

    notation: Notation
    name: Callable[[str], str]
    printed: Notation | None = None

    @property
    def envelope(self) -> Notation:
        """The notation of the pattern's own figures."""
        return self.printed or self.notation

    def the(self, measure: str) -> str:
        """A measure inside a sentence: `the upper arm`."""
        return f"the {self.name(measure).lower()}"

    def length(self, cm: float) -> str:
        """A length with its unit."""
        return show(cm, self.notation)

    def sewn(self, cm: float) -> str:
        """What is to be let out: `8 mm`, `3/8 in`; never less than what is needed."""
        return self._small(cm, "up")

    def drawn(self, cm: float) -> str:
        """A small distance on the pattern, to the nearest millimetre or sixteenth of an inch."""
        return self._small(cm, "near")

    def spare(self, cm: float) -> str:
        """What can be let out: to the millimetre or sixteenth of an inch, never more than there is."""
        return self._small(cm, "down")

    def _small(self, cm: float, way: _Way) -> str:
        if self.notation.unit == "cm" and (millimetres := _steps(cm, Fraction(1, 10), way)) < _SMALL_MM:
            return f"{millimetres} mm"
        step = Fraction(1, 16) if self.notation.unit == "in" else Fraction(1, 10)
        per = _cm_per(self.notation)
        return show(_steps(cm, step * per, way) * step * per, _stepped(self.notation, step))

    def room(self, cm: float) -> str:
        """A safe margin, rounded down so that it never promises more than is true."""
        step = Fraction(1, 8) if self.notation.unit == "in" else Fraction(1, 10)
        whole = int((Fraction(cm) + Fraction(SAME)) / _cm_per(self.notation) / step)
        return show(whole * step * _cm_per(self.notation), _stepped(self.notation, step))

    def shift(self, cm: float) -> str:
        """A change of a body measure: `1 in more`, `0.4 cm less`; the least bit where it rounds to nothing."""
        way = "less" if cm < 0 else "more"
        text = show(abs(cm), self.notation)
        return f"the least bit {way}" if text.startswith("0 ") else f"{text} {way}"


def _cm_per(notation: Notation) -> Fraction:
    return Fraction(254, 100) if notation.unit == "in" else Fraction(1)


def _stepped(notation: Notation, step: Fraction) -> Notation:
    return type(notation)(notation.unit, step)


def _steps(cm: float, step_cm: Fraction, way: _Way) -> int:
    """How many steps a distance is: rounded up, at least one, or down, or to the nearest."""
    steps = Fraction(cm) / step_cm
    if way == "up":
        return max(1, -int(-(steps - Fraction(SAME)) // 1))
    return int(steps + (Fraction(1, 2) if way == "near" else 0) + Fraction(SAME))
