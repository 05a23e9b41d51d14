"""How lengths are written: text to `Length`, and lengths back to the fractions and decimals people read.

A written unit is looked up by pint, with exact fractions. pint is loaded on the first written unit only, because it
costs more than everything else at start-up.
"""

from __future__ import annotations

import functools
import re
import unicodedata
from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING, Literal, cast, get_args

from sizekeeper.core.length import CM_PER, Length, Unit
from sizekeeper.errors import LengthError

if TYPE_CHECKING:
    import pint

UNIT_WORDS = {
    '"': "in", "''": "in", "'": "ft",
    "inches": "inch", "ins": "inch", "zoll": "inch", "pouce": "inch", "pouces": "inch", "po": "inch",
    "duim": "inch", "inch": "inch", "pulgada": "inch", "pulgadas": "inch", "pulg": "inch", "pollice": "inch",
    "pollici": "inch", "cms": "cm", "mms": "mm", "centimetres": "cm", "centimeters": "cm", "zentimeter": "cm",
    "centimètres": "cm", "centimètre": "cm", "centímetros": "cm", "centimetri": "cm", "feet": "foot",
    "yds": "yard", "yards": "yard",
}  # fmt: skip
"""Spellings pint does not know, and marks, each with the unit's name in pint."""

_MARKS = str.maketrans(
    {
        "″": '"', "”": '"', "“": '"', "„": '"', "＂": '"', "′": "'", "’": "'", "‘": "'",
        "⁄": "/", "∕": "/", "−": "-", "–": "-", "‐": "-", "‑": "-", "\t": " ",
    },
)  # fmt: skip
_NUMBER = r"(?:\d+[ \-]+\d+/\d+|\d+/\d+|\d+(?:[.,]\d+)?|[.,]\d+)"
_TERM = re.compile(rf"\s*(?P<number>{_NUMBER})\s*(?P<unit>''|['\"]|[^\W\d_]+\.?)?\s*")
_LONGEST = 80


@dataclass(frozen=True, slots=True)
class Notation:
    """How lengths are shown: the unit and the step they are rounded to.

    Inches step by 1/8 or 1/16 and are shown as proper fractions; centimetres step by 0.1 or 0.5.
    """

    unit: Literal["cm", "in"] = "cm"
    step: Fraction = Fraction(1, 10)


CENTIMETRES = Notation("cm", Fraction(1, 10))
INCHES = Notation("in", Fraction(1, 8))


@functools.cache
def unit_registry() -> pint.UnitRegistry[Fraction]:
    """The unit engine, counting in exact fractions; loaded when first needed."""
    import pint

    return pint.UnitRegistry(non_int_type=Fraction)


def _plain(text: str) -> str:
    """Marks and spaces of every kind in their plain form; vulgar fractions set apart: `37¾` becomes `37 3/4`."""
    out = []
    for char in text.translate(_MARKS):
        if unicodedata.category(char) == "No" and "⁄" in unicodedata.normalize("NFKC", char):
            out.append(" " + unicodedata.normalize("NFKC", char).replace("⁄", "/"))
        elif unicodedata.category(char) in ("Zs", "Cf"):
            out.append(" ")
        else:
            out.append(char)
    return " ".join("".join(out).split())


def _number(text: str) -> Fraction:
    """`37 3/4`, `37-3/4`, `3/4`, `37.75` or `37,75` as an exact fraction."""
    whole, _, part = text.replace("-", " ").rpartition(" ")
    part = part.replace(",", ".")
    if part.startswith("."):
        part = "0" + part
    if part.endswith("/0") or re.search(r"/0+$", part):
        raise LengthError("a fraction cannot be divided by zero")
    return (Fraction(whole.strip()) if whole.strip() else Fraction(0)) + Fraction(part)


@functools.cache
def _known_unit(word: str) -> tuple[Unit, Fraction]:
    """The unit a written word names, and what its figures are multiplied by to be in that unit."""
    name = UNIT_WORDS.get(word.casefold().rstrip("."), word.casefold().rstrip("."))
    registry = unit_registry()
    try:
        unit = registry.Unit(name)
    except Exception as error:  # pint raises several kinds of its own, and of tokenize, for words it does not know
        raise LengthError(f"“{word}” is not a unit of length") from error
    if unit.dimensionality != {"[length]": 1}:
        raise LengthError(f"“{word}” is not a unit of length")
    short = f"{unit:~}"
    if short in get_args(Unit):
        return cast("Unit", short), Fraction(1)
    return "cm", Fraction(registry.Quantity(Fraction(1), unit).to("cm").magnitude)


def parse_length(text: str, default_unit: Unit | None = None) -> Length:
    """The length that a text states.

    Args:
        text: `37 3/4`, `37¾`, `37-3/4 in`, `95,5 cm`, `5′6″`, `1 yd 4 in`; a leading minus is allowed.
        default_unit: the unit of a bare number; None when a unit must be written.

    Returns:
        The length, exact, in the unit written last, keeping the text.

    Raises:
        LengthError: the text is not a length; the message says what is wrong with it.
    """
    if len(text) > _LONGEST:
        raise LengthError(f"“{text[:20]}…” is too long to be a length")
    plain = _plain(text)
    negative = plain.startswith("-")
    terms = _terms(plain.removeprefix("-").removeprefix("+"), text)
    total, last = _sum(terms, text, default_unit)
    return Length(-total if negative else total, last, text.strip())


def _terms(plain: str, text: str) -> list[tuple[Fraction, str]]:
    """The numbers of a text with the unit word behind each."""
    terms: list[tuple[Fraction, str]] = []
    end = 0
    while end < len(plain):
        match = _TERM.match(plain, end)
        if match is None:
            raise LengthError(f"“{text.strip()}” is not a length")
        terms.append((_number(match["number"]), match["unit"] or ""))
        end = match.end()
    if not terms:
        raise LengthError("no length is given")
    return terms


def _sum(terms: list[tuple[Fraction, str]], text: str, default_unit: Unit | None) -> tuple[Fraction, Unit]:
    """The terms added up in the unit of the last one; `5'6` means five feet six inches."""
    cm = Fraction(0)
    unit: Unit | None = None
    for value, word in terms:
        if word:
            found, times = _known_unit(word)
        elif len(terms) == 1 and default_unit is not None:
            found, times = default_unit, Fraction(1)
        elif unit == "ft":
            found, times = "in", Fraction(1)
        elif len(terms) == 1:
            raise LengthError(f"“{text.strip()}” has no unit: write cm or in behind it")
        else:
            raise LengthError(f"“{text.strip()}” is not a length")
        if unit is not None and CM_PER[found] >= CM_PER[unit]:
            raise LengthError(f"“{text.strip()}” is not a length: the larger unit comes first")
        unit = found
        cm += value * times * CM_PER[found]
    assert unit is not None  # noqa: S101 - there is at least one term
    return cm / CM_PER[unit], unit


def rounded(exact_cm: Fraction | float, notation: Notation) -> Fraction:
    """A length in the notation's unit, rounded to its step, halves away from zero.

    A float is taken at six decimals, so that a value that is a hair below its half by binary rounding still goes up.
    """
    exact = exact_cm if isinstance(exact_cm, Fraction) else Fraction(round(exact_cm * 10**6), 10**6)
    steps = abs(exact) / (CM_PER[notation.unit] * notation.step)
    whole = (steps + Fraction(1, 2)).__floor__()
    return whole * notation.step * (-1 if exact < 0 else 1)


def show(exact_cm: Fraction | float, notation: Notation, *, unit: bool = True, sign: bool = False) -> str:
    """A length as people read it: `37 3/4 in`, `95.5 cm`, `+1 1/8`.

    Args:
        exact_cm: the length in centimetres.
        notation: unit and step.
        unit: whether the unit is written behind it.
        sign: whether a positive amount gets a plus sign.
    """
    value = rounded(exact_cm, notation)
    mark = "−" if value < 0 else "+" if sign and value > 0 else ""
    size = abs(value)
    if notation.unit == "in":
        whole, part = divmod(size.numerator, size.denominator)
        pieces = [str(whole)] if whole or not part else []
        if part:
            pieces.append(f"{part}/{size.denominator}")
        body = " ".join(pieces)
    else:
        body = f"{float(size):.1f}".removesuffix(".0")
    return f"{mark}{body}{' ' + notation.unit if unit else ''}"


_DENOMINATORS = {2: ("half", "halves"), 4: ("quarter", "quarters"), 8: ("eighth", "eighths"),
                 16: ("sixteenth", "sixteenths")}  # fmt: skip
_COUNT = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve",
          "thirteen", "fourteen", "fifteen")  # fmt: skip
_UNIT_SPOKEN = {"cm": ("centimetre", "centimetres"), "in": ("inch", "inches")}


def spoken(exact_cm: Fraction | float, notation: Notation) -> str:
    """A length in words for a screen reader: `two and three eighths inches`, `minus 1.5 centimetres`."""
    value = rounded(exact_cm, notation)
    size = abs(value)
    one, many = _UNIT_SPOKEN[notation.unit]
    sign = "minus " if value < 0 else ""
    if notation.unit == "cm" or size.denominator == 1:
        return f"{sign}{float(size):g} {one if size == 1 else many}"
    whole, part = divmod(size.numerator, size.denominator)
    singular, plural = _DENOMINATORS[size.denominator]
    fraction = f"{_COUNT[part]} {singular if part == 1 else plural}"
    return f"{sign}{whole} and {fraction} {many}" if whole else f"{sign}{fraction} of an inch"
