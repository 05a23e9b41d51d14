"""The figures of a chart as they are written: the text of a cell to a `Cell`, and a figure back to text."""

from __future__ import annotations

import re
from fractions import Fraction
from typing import TYPE_CHECKING

from sizekeeper.core.chart import Cell
from sizekeeper.core.notation import parse_length
from sizekeeper.errors import LengthError

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sizekeeper.core.length import Length, Unit

_RANGE_MARK = re.compile(r"\s*(?:[-–—‒−]|(?<=[\s\d])(?:to|bis|à|tot|hasta|fino a)(?=[\s\d]))\s*", re.IGNORECASE)
"""What stands between the ends of a range, in the languages charts are printed in."""
_NUMBER_ALONE = re.compile(r"[\d\s.,/⁄½¼¾⅛⅜⅝⅞⅓⅔-]+")
_SIGNS = {
    Fraction(1, 2): "½", Fraction(1, 4): "¼", Fraction(3, 4): "¾", Fraction(1, 8): "⅛", Fraction(3, 8): "⅜",
    Fraction(5, 8): "⅝", Fraction(7, 8): "⅞",
}  # fmt: skip
"""The fractions that have a sign of their own."""
_LONGEST = 80
_FINEST = 64
"""The finest inch fraction written as a fraction; a rule is divided no finer (common practice, no source)."""


def parse_cell(text: str, unit: Unit) -> Cell:
    """What a chart's cell says: one figure, a range, nothing, or a text that is no figure.

    Args:
        text: `37 3/4`, `96 cm`, `86-90`, `88 to 92`; `37-3/4` is a mixed number.
        unit: the unit of a bare number, the chart's.

    Returns:
        The cell with the text as typed. A single figure is both `low` and `high`; a text that is no figure keeps
        both None, and counts as missing.
    """
    kept = " ".join(text.split())
    try:
        low, high = _figures(kept, unit)
    except LengthError:
        return Cell(kept)
    return Cell(kept, low, high)


def cell_problem(text: str, unit: Unit) -> str:
    """Why a cell's text is no figure, as one sentence; empty where it is one, or nothing is written."""
    kept = " ".join(text.split())
    if not kept:
        return ""
    try:
        _figures(kept, unit)
    except LengthError as error:
        said = str(error).rstrip(".")
        return f"{said[0].upper()}{said[1:]}."
    return ""


def _figures(text: str, unit: Unit) -> tuple[Length, Length]:
    """Both ends of what a text states; raises LengthError."""
    try:
        low = high = parse_length(text, unit)
    except LengthError as error:
        ends = next(_ranges(text, unit), None) if len(text) <= _LONGEST else None
        if ends is None:
            raise LengthError(_as_chart_figure(str(error), text)) from None
        low, high = ends
    if low.value <= 0:
        raise LengthError(f"“{text}” is not above zero")
    if high.exact_cm < low.exact_cm:
        raise LengthError(f"“{text}” runs downward: write the smaller figure first")
    return low, high


def _as_chart_figure(said: str, text: str) -> str:
    """What is wrong, with the ways a figure can be written where the notation has no better word."""
    if said == f"“{text}” is not a length":
        return f"“{text}” is not a figure like 96, 37 3/4 or 86-90"
    return said


def _ranges(text: str, unit: Unit) -> Iterator[tuple[Length, Length]]:
    """The ways to read a text as a range, the first dash that leaves two figures first."""
    for mark in _RANGE_MARK.finditer(text):
        left, right = text[: mark.start()].strip(), text[mark.end() :].strip()
        try:
            high = parse_length(right, unit if _NUMBER_ALONE.fullmatch(left) else parse_length(left).unit)
            low = parse_length(left, high.unit)
        except LengthError:
            continue
        yield low, high


def write_figure(value: Fraction, unit: Unit, like: str = "") -> str:
    """A figure as it would be typed in a chart, exact: inches as a proper fraction, metric units as a decimal.

    Args:
        value: the amount, in `unit`.
        unit: the unit it counts.
        like: a figure beside it; this one has a decimal comma or signs like ½ where that has, and inches as a decimal
            where that is one.
    """
    whole, part = divmod(abs(value), 1)
    sign = "-" if value < 0 else ""
    decimal = re.search(r"\d[.,]\d", like) is not None
    as_fraction = unit in ("in", "ft", "yd") and not decimal and _FINEST % part.denominator == 0
    if part == 0:
        return f"{sign}{whole}"
    if as_fraction and part in _SIGNS and any(one in like for one in _SIGNS.values()):
        return f"{sign}{whole or ''}{_SIGNS[part]}"
    if as_fraction or (value * 10**6).denominator != 1:
        return f"{sign}{whole} {part}" if whole else f"{sign}{part}"
    text = f"{sign}{float(abs(value)):.6f}".rstrip("0")
    return text.replace(".", ",") if re.search(r"\d,\d", like) else text
