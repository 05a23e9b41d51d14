"""A day as people type it."""

from __future__ import annotations

import datetime as dt

from PySide6.QtCore import QDate, QLocale

_OLDEST = 120
"""Years; nobody who is sewn for is older."""

_FORMATS = ("yyyy-MM-dd", "d.M.yyyy", "d MMM yyyy", "d MMMM yyyy", "MMM d, yyyy", "MMMM d, yyyy")


def read_day(text: str, today: dt.date) -> tuple[dt.date | None, str]:
    """The day of birth that a text states.

    Slashed days such as 3/4/2015 are read as the system's own short form writes them, since they mean two things.

    Returns:
        The day and "", or None and the sentence that says what is wrong; None and "" for an empty text.
    """
    plain = " ".join(text.split())
    if not plain:
        return None, ""
    day = _parsed(plain)
    if day is None:
        return None, f"“{plain}” is not a day: write it as 2014-05-17 or 17 May 2014."
    if day > today:
        return None, f"“{plain}” is still to come: a birth date is in the past."
    if day.year < today.year - _OLDEST:
        return None, f"“{plain}” is more than {_OLDEST} years ago: write the year in full, such as 1987."
    return day, ""


def _parsed(text: str) -> dt.date | None:
    own = QLocale()
    for locale in (own, QLocale.c()):
        for form in _FORMATS:
            found = locale.toDate(text, form)
            if found.isValid():
                return _python(found)
    found = own.toDate(text, own.dateFormat(QLocale.FormatType.ShortFormat).replace("yyyy", "yy").replace("yy", "yyyy"))
    return _python(found) if found.isValid() else None


def _python(day: QDate) -> dt.date:
    return dt.date(day.year(), day.month(), day.day())
