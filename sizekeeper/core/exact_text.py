"""An exact amount as it would be typed: nothing is rounded."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from fractions import Fraction

    from sizekeeper.core.length import Unit

_INCHES = ("in", "ft", "yd")
_FINEST = 64


def exact_text(value: Fraction, unit: Unit) -> str:
    """`37 3/4` for inches and their like, `95.25` for centimetres; a fraction where decimals would not end."""
    tape = unit in _INCHES and value.denominator in {2**n for n in range(_FINEST.bit_length())}
    if value.denominator == 1:
        return str(value.numerator)
    if not tape and _ends(value.denominator):
        return _decimal(value)
    whole, part = divmod(abs(value), 1)
    sign = "-" if value < 0 else ""
    return f"{sign}{whole} {part}" if whole else f"{sign}{part}"


def _ends(denominator: int) -> bool:
    """Whether a fraction with this denominator has decimals that end."""
    for prime in (2, 5):
        while denominator % prime == 0:
            denominator //= prime
    return denominator == 1


def _decimal(value: Fraction) -> str:
    places = 0
    while value.denominator != 1:
        value *= 10
        places += 1
    digits = str(abs(value.numerator)).rjust(places + 1, "0")
    return f"{'-' if value < 0 else ''}{digits[:-places]}.{digits[-places:]}"
