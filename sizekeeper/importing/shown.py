"""How a spreadsheet shows a number: leading zeros, decimals, fractions and the units in its number format."""

from __future__ import annotations

import re
from fractions import Fraction

_FRACTION = re.compile(r"[#0?]*\s*[#?]+/(?P<bottom>[#?]+|\d+)")
_DIGITS = re.compile(r"^0{2,}$")
_DECIMALS = re.compile(r"^[#,]*0?\.(?P<decimals>0+)$|^[#,]*0$")
_LITERAL = re.compile(r'"([^"]*)"|\\(.)|_.|\*.|\[[^\]]*\]')
_PLACES, _WHOLE = 15, 10**15


def general(value: float) -> str:
    """A number as a spreadsheet shows it without a format: fifteen figures, no empty decimals."""
    return str(int(value)) if float(value).is_integer() and abs(value) < _WHOLE else f"{value:.{_PLACES}g}"


def exact(value: float) -> Fraction:
    """The number that was typed, without the noise of binary storage."""
    return Fraction(f"{value:.{_PLACES}g}")


def shown(value: float, number_format: str) -> str:
    """The text that a spreadsheet shows for a number under a number format."""
    if number_format in ("General", "", "@"):
        return general(value)
    section = number_format.split(";", maxsplit=1)[0]
    prefix, core, suffix = _taken_apart(section)
    return f"{prefix}{_core(value, core)}{suffix}"


def _taken_apart(section: str) -> tuple[str, str, str]:
    """Literal text before the figure, the figure's own format, literal text after it."""
    before, core, after = "", "", ""
    end = 0
    for match in [*_LITERAL.finditer(section), None]:
        piece = section[end : match.start() if match else len(section)]
        core += piece
        literal = (match[1] or match[2] or "") if match else ""
        if core.strip():
            after += literal
        else:
            before += literal
        end = match.end() if match else end
    return before, core.strip(), after


def _core(value: float, core: str) -> str:
    fraction = _FRACTION.fullmatch(core)
    if fraction:
        return _as_fraction(exact(value), fraction["bottom"])
    if _DIGITS.match(core) and exact(value).denominator == 1:
        return str(int(value)).zfill(len(core))
    decimals = _DECIMALS.match(core)
    if decimals:
        return f"{value:.{len(decimals['decimals'] or '')}f}"
    return general(value)


def _as_fraction(value: Fraction, bottom: str) -> str:
    if bottom.isdigit():
        part = Fraction(round(value * int(bottom)), int(bottom))
    else:
        part = value.limit_denominator(10 ** len(bottom) - 1)
    whole, rest = divmod(abs(part), 1)
    sign = "-" if part < 0 else ""
    if not rest:
        return f"{sign}{whole}"
    return f"{sign}{whole} {rest}" if whole else f"{sign}{rest}"
