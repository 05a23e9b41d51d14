"""Size labels: how much a text looks like one, several systems in one label, and labels that became dates."""

from __future__ import annotations

import functools
import re
from itertools import pairwise
from typing import TYPE_CHECKING

from sizekeeper.importing.figures import plain
from sizekeeper.importing.vocabulary import SIZE

if TYPE_CHECKING:
    from sizekeeper.importing.grid import GridCell

_LETTERS = r"(?:(?:X{1,6}|\d{1,2}X|\d{1,2})?(?:S|L|SMALL|LARGE)|X{1,6}-(?:SMALL|LARGE)|M|MEDIUM|\dX)"
_AGE = (
    r"\d{1,2}(?:\s*[-–/]\s*\d{1,2})?\s*(?:M|Y|T|K|J|MTHS?|MOS?|MONTHS?|YRS?|YEARS?|MOIS|ANS?|MONATE?|JAHRE?|MND|"
    r"MAANDEN|JAAR|MESES|AÑOS|MESI|ANNI)\.?"
)
_NUMBER = r"0{1,3}|\d{1,3}"
_ONE = rf"(?:{_LETTERS}|{_AGE}|{_NUMBER}|\d{{1,2}}[A-K]{{1,2}}|\d{{1,2}}(?:W|P|PT|WP)|NB|NEWBORN|PREEMIE|PREMATURE)"
_EXACT = re.compile(rf"{_ONE}$", re.IGNORECASE)
_SYSTEM = r"(?:[A-Z]{2,3}\.?\s*)?"
_DOUBLE = re.compile(
    rf"{_SYSTEM}{_ONE}\s*(?:[-–/|,&+]|\s+to\s+|\s)\s*{_SYSTEM}{_ONE}(?:\s*[-–/]\s*{_ONE})?$", re.IGNORECASE
)
_BRACKETS = re.compile(
    rf"{_ONE}(?:\s*[-–/]\s*{_ONE})?\s*[(\[]\s*(?:\w{{2,4}}\.?\s*)?{_ONE}(?:\s*[-–/]\s*{_ONE})?\s*[)\]]$", re.IGNORECASE
)
_WORDS = re.compile(
    r"(?:extra[- ]?)*(?:small|medium|large)|one size|klein|mittel|gro(?:ß|ss)|petite?|moyenne?|moyen|grande?|"
    r"middel|groot|"
    r"pequeñ[oa]|median[oa]|piccol[oa]|medi[oa]|einheitsgr(?:ö|oe)(?:ß|ss)e|taille unique|unique|onesize|"
    r"talla única|taglia unica",
    re.IGNORECASE,
)
_MONTHS = {
    m: number
    for number, names in enumerate(
        ("jan janv januar january janvier ene enero gen gennaio januari",
        "feb fév fevr févr februar february februari febbraio febrero",
         "mar mär mrz mars march märz maart marzo mrt", "apr avr april avril abr abril aprile",
         "may mai mei mayo mag maggio",
         "jun juin june juni junio giu giugno", "jul juil july juli juillet julio lug luglio",
         "aug août aout august ago agosto augustus",
         "sep sept september septembre septiembre set settembre", "oct okt october oktober octobre octubre ott ottobre",
         "nov november novembre noviembre", "dec dez déc december dezember décembre dic diciembre dicembre"),
        1,
    )
    for m in names.split()
}  # fmt: skip
_DAY_MONTH = re.compile(r"(\d{1,2})[-./ ]\s*([^\W\d_]{3,9})\.?(?:[-./ ]\s*(\d{2,4}))?$")
_MONTH_DAY = re.compile(r"([^\W\d_]{3,9})\.?[-./ ]\s*(\d{1,4})(?:[-./ ,]\s*(\d{2,4}))?$")
_FULL = re.compile(r"(\d{4})-(\d{1,2})-(\d{1,2})(?:[ T]0?0:00(?::00)?)?$|(\d{1,2})[./-](\d{1,2})[./-](\d{4})$")
_PATTERNS = (
    (_EXACT, 1.0),
    (_WORDS, 1.0),
    (_BRACKETS, 0.9),
    (_DOUBLE, 0.9),
    (re.compile(r"[A-Za-z]"), 0.6),
    (re.compile(r"(?!.*[.,]\d)(?=.*\d)[\w/.() -]{1,8}"), 0.6),
    (re.compile(r"(?!.*\d[.,/]\d).{1,14}"), 0.3),
)
"""Labels by how much they look like sizes, the surest first (coined)."""

_NAMED = re.compile(
    r"(?:(?:sizes?|sz\.?|gr(?:ö|oe)(?:ß|ss)e|gr\.?|taille|maat|mt\.?|talla|taglia|tg\.?)[\s_]*[:.]?[\s_]*(?=\S)|"
    r"t\.?\s?(?=\d{2}))",
    re.IGNORECASE,
)
"""The word for size, or its abbreviation, in front of a label."""
_FOOTNOTE = re.compile(r"(?<=[\w)])\s*[*†‡§¹²³⁴⁵]+$")
_WEARERS = re.compile(
    r"(?<!\w)(?:miss(?:es)?|wom[ae]n|ladies|m[ae]n|juniors?|girls?|boys?|plus|damen|herren|mädchen|jungen|femmes?|hommes?|"
    r"filles?|garçons?|dames|heren|meisjes|jongens|mujer(?:es)?|hombres?|niñ[oa]s?|donn[ae]|uom(?:o|ini))"
    r"(?:['’]?s['’]?)?(?!\w)",
    re.IGNORECASE,
)
"""Whom a size is for, where that stands before its number."""
_LONGEST = 24
_TALLEST = 200
_COMMON = 66
_CENTURY = 100
_DAYS = 31


@functools.lru_cache(8192)
def likeness(text: str) -> float:
    """How much a text looks like a size label: 1 for the trade's own labels, 0 for what cannot be one."""
    shown = plain(text).strip("* ")
    shown = _WEARERS.sub("", shown).strip(" .:-’'") or shown
    bare = SIZE.sub("", shown).strip(" .:-") if SIZE.search(shown) else _NAMED.sub("", shown, count=1)
    if _WORDS.fullmatch(shown):
        return 1.0
    if not bare or len(bare) > _LONGEST:
        return 0.0
    if bare.isascii() and bare.isdigit():
        number = int(bare)
        return 1.0 if number <= _COMMON or bare.startswith("0") else 0.8 if number <= _TALLEST else 0.0
    return next((like for pattern, like in _PATTERNS if pattern.fullmatch(bare)), 0.0)


def shown_label(text: str) -> str:
    """A size label as charts refer to it: `Size 12`, `12` and `12 *` with its footnote are one."""
    shown = " ".join(text.split())
    shown = _FOOTNOTE.sub("", shown) or shown
    match = _NAMED.match(shown)
    return shown[match.end() :] if match and match.end() < len(shown) else shown


def one_size_in(title: str) -> str:
    """The one size that a title names at its end, `Finished measurements, size 14`; empty where it names none."""
    words = list(SIZE.finditer(title))
    rest = title[words[-1].end() :].strip(" .:()") if words else ""
    return rest if _EXACT.fullmatch(rest) else ""


def names_wearers(text: str) -> bool:
    """Whether a text names whom sizes are for, and nothing else: `Misses`, `Women's`."""
    return not re.search(r"\w", _WEARERS.sub("", SIZE.sub("", text)))


def is_double(text: str) -> bool:
    """Whether a label names the size in two systems or two sizes: `S (8-10)`, `M/L`, `34/36`."""
    shown = plain(text)
    return bool(_BRACKETS.match(shown) or (_DOUBLE.match(shown) and not _EXACT.match(shown)))


def number_in(label: str) -> int | None:
    """The number of a plainly numbered size, None for any other label."""
    match = re.fullmatch(r"(?:\D{0,4}\s)?(\d{1,3})", label.strip())
    return int(match[1]) if match else None


def recovered_date(cell: GridCell) -> str | None:
    """The label or range a spreadsheet turned into a date: 8 October was `8-10`; None where the cell is no date."""
    if cell.date is not None:
        return _from_date(*cell.date)
    text = cell.text.strip()
    match = _FULL.match(text)
    if match:
        year, month, day = (match[1], match[2], match[3]) if match[1] else (match[6], match[5], match[4])
        return _from_date(int(year), int(month), int(day))
    return _from_words(text)


def _from_words(text: str) -> str | None:
    match = _DAY_MONTH.match(text)
    if match and match[2].casefold() in _MONTHS and 1 <= int(match[1]) <= _DAYS:
        return _pair(_MONTHS[match[2].casefold()], int(match[1]))
    match = _MONTH_DAY.match(text)
    if match and match[1].casefold() in _MONTHS:
        return _pair(_MONTHS[match[1].casefold()], int(match[2]) % _CENTURY)
    return None


def _from_date(year: int, month: int, day: int) -> str:
    """A date of the first of a month stands for month and year where the year is long past or ahead, as in `10-32`."""
    if day == 1 and not 2015 <= year <= 2035:  # noqa: PLR2004 - a year in which files are made means "this year" (coined)
        return _pair(month, year % _CENTURY)
    return _pair(month, day)


def _pair(first: int, second: int) -> str:
    return f"{min(first, second)}-{max(first, second)}"


def gaps(labels: list[str]) -> list[int]:
    """Places whose label leaves out sizes that the others' even step would have: after 10 in 8, 10, 14, 16."""
    numbers = [number_in(label) for label in labels]
    if len(numbers) < 4 or any(n is None for n in numbers):  # noqa: PLR2004 - fewer labels show no even step (coined)
        return []
    steps = [b - a for a, b in pairwise(n for n in numbers if n is not None)]
    usual = max(set(steps), key=lambda step: (steps.count(step), -abs(step)))
    if not usual or steps.count(usual) * 2 < len(steps):
        return []
    return [i + 1 for i, step in enumerate(steps) if step / usual > 1 and step % usual == 0]
