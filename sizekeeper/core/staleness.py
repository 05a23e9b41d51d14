"""How long a reading holds: bodies change, children faster."""

from __future__ import annotations

import calendar
import datetime as dt

ADULT_MONTHS = 6
"""Months after which an adult's reading should be taken again; common practice, no source."""

CHILD_MONTHS = 3
"""Months after which a child's reading should be taken again; common practice, no source."""

GROWN_YEARS = 16
"""Age from which a reading holds as long as an adult's; common practice, no source."""

_WEEK = 7


def later_by_months(day: dt.date, months: int) -> dt.date:
    """The same day of the month that many months on, or that month's last day where it is shorter."""
    years, month = divmod(day.month - 1 + months, 12)
    year = day.year + years
    return dt.date(year, month + 1, min(day.day, calendar.monthrange(year, month + 1)[1]))


def months_since(on: dt.date, today: dt.date) -> int:
    """Whole months from a day to today; 0 when the day is not past."""
    months = (today.year - on.year) * 12 + today.month - on.month
    if months > 0 and later_by_months(on, months) > today:
        months -= 1
    return max(months, 0)


def stale(on: dt.date, today: dt.date, child: bool) -> bool:  # noqa: FBT001 - the third word of a plain sentence
    """Whether a reading of that day is too old to cut by: older than six months, for a child three."""
    return today > later_by_months(on, CHILD_MONTHS if child else ADULT_MONTHS)


def years_old(born: dt.date, today: dt.date) -> int:
    """Age in whole years; 0 when the day of birth is not past."""
    return months_since(born, today) // 12


def grows(born: dt.date | None, today: dt.date, *, child: bool) -> bool:
    """Whether a person counts as a child: marked as one, or born less than sixteen years ago."""
    return child or (born is not None and years_old(born, today) < GROWN_YEARS)


def ago(on: dt.date, today: dt.date) -> str:
    """How long ago a day was, in words: `today`, `3 weeks ago`, `8 months ago`, `2 years ago`."""
    days = (today - on).days
    if days < 0:
        return "on a day to come"
    if days < 2 * _WEEK:
        return {0: "today", 1: "yesterday"}.get(days, f"{days} days ago")
    months = months_since(on, today)
    if months < 2:  # noqa: PLR2004 - five to eight weeks say more than "1 month"
        return f"{days // _WEEK} weeks ago"
    if months < 24:  # noqa: PLR2004 - up to two years, months say more
        return f"{months} months ago"
    return f"{months // 12} years ago"
