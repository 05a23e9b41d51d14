"""A length: an exact number with its unit, and the text that was typed for it."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

Unit = Literal["cm", "mm", "m", "in", "ft", "yd"]

CM_PER: dict[str, Fraction] = {
    "cm": Fraction(1),
    "mm": Fraction(1, 10),
    "m": Fraction(100),
    "in": Fraction(254, 100),  # the international inch of 1959, exact
    "ft": Fraction(12 * 254, 100),
    "yd": Fraction(36 * 254, 100),
}


@dataclass(frozen=True, slots=True)
class Length:
    """An exact amount in one unit; `text` keeps what was typed so that it is shown and saved unchanged."""

    value: Fraction
    unit: Unit
    text: str = ""

    @property
    def exact_cm(self) -> Fraction:
        """The length in centimetres, exact."""
        return self.value * CM_PER[self.unit]

    @property
    def cm(self) -> float:
        """The length in centimetres, as the arithmetic over charts takes it."""
        return self.times_cm(1)

    def times_cm(self, times: int) -> float:
        """A whole multiple of the length, in centimetres: the nearest float to the exact product."""
        per = CM_PER[self.unit]  # whole-number division rounds once, and is far quicker than Fraction's own product
        return (self.value.numerator * per.numerator * times) / (self.value.denominator * per.denominator)

    def in_unit(self, unit: Unit) -> Fraction:
        """The same length counted in another unit, exact."""
        return self.exact_cm / CM_PER[unit]


def exactly(cm: float) -> Fraction:
    """A figure of the arithmetic over charts as an exact one, at six decimals of a centimetre."""
    return Fraction(round(cm * 10**6), 10**6)
