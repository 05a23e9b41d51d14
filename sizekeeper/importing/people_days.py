"""Days as people write them in tables, in six languages; a day that means two things is said to."""

from __future__ import annotations

import datetime as dt
import re
from typing import TYPE_CHECKING, Literal

from sizekeeper.importing.vocabulary import folded

if TYPE_CHECKING:
    from collections.abc import Iterable

    from sizekeeper.importing.grid import GridCell

Order = Literal["", "dmy", "mdy"]
"""Which of two numbers is the day, where both could be; empty while nobody said."""

_MONTHS: tuple[str, ...] = (
    "jan|ene|gen", "feb|fev|fév", "mar|mär|maer|mrt|maa", "apr|avr|abr", "may|mai|mei|mag", "jun|juin|giu",
    "jul|juil|lug", "aug|aou|aoû|ago", "sep|set", "oct|okt|ott", "nov", "dec|dez|dic|déc",
)  # fmt: skip
"""How the names of the months begin."""

_YEAR_FIRST = re.compile(r"(\d{4})\s*[-./]\s*(\d{1,2})\s*[-./]\s*(\d{1,2})(?:[T ]\d{1,2}:\d{2}.*)?")
_YEAR_LAST = re.compile(r"(\d{1,2})\s*([-./])\s*(\d{1,2})\s*[-./]\s*(\d{4})")
_YEAR_SHORT = re.compile(r"(\d{1,2})\s*([./])\s*(\d{1,2})\s*[./]\s*(\d{2})")
_WORDS = re.compile(r"[^\W\d_]+|\d+")
_MOST_MONTHS, _LONGEST = 12, 40


def day_in(cell: GridCell, order: Order, *, recent: bool = False) -> tuple[dt.date | None, bool]:
    """The day a cell states, and whether it could mean another one too, with day and month the other way round.

    A day that is unclear is None until `order` says which number is the day. A year of two digits is read only where
    the day is `recent`, so that it can be no other century's: measured, not born.
    """
    if cell.date is not None:
        return _day(*cell.date), False
    text = " ".join(cell.text.split())
    if len(text) > _LONGEST:
        return None, False
    if match := _YEAR_FIRST.fullmatch(text):
        return _day(int(match[1]), int(match[2]), int(match[3])), False
    if match := _YEAR_LAST.fullmatch(text):
        return _of_numbers(int(match[1]), int(match[3]), int(match[4]), "dmy" if match[2] == "." else order)
    if recent and (match := _YEAR_SHORT.fullmatch(text)):
        return _of_numbers(int(match[1]), int(match[3]), 2000 + int(match[4]), "dmy" if match[2] == "." else order)
    return _in_words(text), False


def _of_numbers(first: int, second: int, year: int, order: Order) -> tuple[dt.date | None, bool]:
    if first > _MOST_MONTHS or first == second:
        return _day(year, second, first), False
    if second > _MOST_MONTHS:
        return _day(year, first, second), False
    if not order:
        return None, True
    return _day(year, *((second, first) if order == "dmy" else (first, second))), False


def _in_words(text: str) -> dt.date | None:
    """`17 May 2014`, `May 17th, 2014`, `17. Mai 2014`, `17 de mayo de 2014`."""
    words = [
        word
        for word in _WORDS.findall(text)
        if word.casefold() not in ("de", "del", "of", "le", "st", "nd", "rd", "th", "er")
    ]
    numbers = [int(word) for word in words if word.isdigit()]
    months = [month for word in words if not word.isdigit() and (month := _month(word))]
    if len(words) != 3 or len(numbers) != 2 or len(months) != 1:  # noqa: PLR2004 - day, month and year
        return None
    year = max(numbers)
    return _day(year, months[0], min(numbers)) if year > 31 else None  # noqa: PLR2004 - a year in full


def _month(word: str) -> int:
    name = folded(word)
    for number, starts in enumerate(_MONTHS, start=1):
        if len(name) > 2 and any(name.startswith(folded(start)) for start in starts.split("|")):  # noqa: PLR2004 - three letters
            return number
    return 0


def _day(year: int, month: int, day: int) -> dt.date | None:
    try:
        return dt.date(year, month, day)
    except ValueError:
        return None


def order_of(cells: Iterable[GridCell]) -> Order:
    """Which number is the day in a column, as far as its own days tell: one past the twelfth settles it for all."""
    found: set[Order] = set()
    for cell in cells:
        text = " ".join(cell.text.split())
        match = (_YEAR_LAST.fullmatch(text) or _YEAR_SHORT.fullmatch(text)) if cell.date is None else None
        if match is not None and match[2] != ".":
            first, second = int(match[1]), int(match[3])
            if first > _MOST_MONTHS >= second:
                found.add("dmy")
            elif second > _MOST_MONTHS >= first:
                found.add("mdy")
    return found.pop() if len(found) == 1 else ""
