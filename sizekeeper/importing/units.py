"""Units of length as charts name them: in a cell, a heading, a label or a column of their own."""

from __future__ import annotations

import functools
import re
from fractions import Fraction

UNIT_WORDS: dict[str, str] = {
    **dict.fromkeys(("cm", "cms", "centimetre", "centimetres", "centimeter", "centimeters", "zentimeter", "cm.",
                     "centimètre", "centimètres", "centímetro", "centímetros", "centimetri", "centimetro"), "cm"),
    **dict.fromkeys(("mm", "mms", "millimetre", "millimetres", "millimeter", "millimeters", "mm.", "millimètre",
                     "millimètres", "milímetro", "milímetros", "millimetri", "millimetro"), "mm"),
    **dict.fromkeys(('"', "''", "in", "in.", "ins", "ins.", "inch", "inches", "zoll", "pouce", "pouces", "po", "po.",
                     "duim", "inch.", "pulgada", "pulgadas", "pulg", "pulg.", "pollice", "pollici"), "in"),
    **dict.fromkeys(("'", "ft", "ft.", "foot", "feet", "fuß", "pied", "pieds", "voet", "pie", "pies"), "ft"),
    **dict.fromkeys(("yd", "yd.", "yds", "yard", "yards"), "yd"),
    **dict.fromkeys(("m", "m.", "metre", "metres", "meter", "meters", "mètre", "mètres", "metro", "metri"), "m"),
}  # fmt: skip
"""Words and marks of units, in six languages, each with the unit's short name."""

CHART_UNIT: dict[str, tuple[str, Fraction]] = {
    "cm": ("cm", Fraction(1)),
    "mm": ("mm", Fraction(1)),
    "m": ("cm", Fraction(100)),
    "in": ("in", Fraction(1)),
    "ft": ("in", Fraction(12)),
    "yd": ("in", Fraction(36)),
}
"""The unit in which a chart counts a figure written in another, and by what it is multiplied."""

_LONG = sorted((w for w in UNIT_WORDS if len(w) > 1 and w not in {"in", "in.", "po", "po.", "pie", "pies", "''"}),
               key=len, reverse=True)  # fmt: skip
_LONG = [w for w in _LONG if UNIT_WORDS[w] in {"cm", "mm", "in"}]
_WORD = "|".join(re.escape(w) for w in _LONG)
_STATED = re.compile(
    rf"(?<![\w])(?<!\d )(?:(?P<word>{_WORD})(?![\w])"
    r"|(?P<short>(?<=[(\[/,;|&+–—-])\s*(?:in\.?|po\.?|\"|''|″|”)(?=\s*(?:[)\]/,;|&+–—-]|$))"
    r"|(?:in\.?|po\.?)(?=\s*[)\]/]|$)|(?<=[^\s\w(\[/])\"(?=\s*$)|(?<=\s)\"(?=\s*$)))",
    re.IGNORECASE,
)
_NUMBER_BEFORE = re.compile(r"\d\s*$")
_LEFTOVER = re.compile(r"[(\[]\s*(?:in|en)?\s*[/,;|&+–—-]*\s*(?:and|or|und|et|en|y|e|ou|oder)?\s*[)\]]")


def unit_of(text: str) -> str | None:
    """The unit that a text names and nothing else (`cm`, `(in)`, `inches`), None where it says more."""
    if text.strip() == "M":  # a size, not metres
        return None
    word = text.strip().strip("()[]").strip().replace("″", '"').replace("”", '"').casefold()
    return UNIT_WORDS.get(word.removeprefix("in ")) if word else None


@functools.lru_cache(4096)
def stated_units(text: str) -> tuple[str, ...]:
    """The units of figures that a heading or label states, in order: `Bust, cm (in)` gives cm, in.

    A unit behind a number (`2.5 cm below the waist`) states nothing about the chart's figures.
    """
    alone = unit_of(text)
    if alone:
        return (alone,)
    found: list[str] = []
    for match in _STATED.finditer(text):
        if _NUMBER_BEFORE.search(text[: match.start()]):
            continue
        unit = UNIT_WORDS[match[0].strip().casefold().replace("″", '"').replace("”", '"')]
        if unit not in found:
            found.append(unit)
    return tuple(found)


@functools.lru_cache(4096)
def without_units(text: str) -> str:
    """The text without the units it states and the brackets and joints they leave empty."""
    if not stated_units(text):
        return text.strip()

    def cut(match: re.Match[str]) -> str:
        return match[0] if _NUMBER_BEFORE.search(text[: match.start()]) else ""

    left = _STATED.sub(cut, text)
    for _ in range(2):
        left = _LEFTOVER.sub("", left)
    left = re.sub(r"[\s,;:/–—-]+(?:in|en)?[\s,;:/–—-]*$", "", left)
    return re.sub(r"\s+", " ", left).strip(" ,;:/–—-")
