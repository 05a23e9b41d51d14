"""Days as they are written, the same on every machine."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import datetime as dt

_MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November",
    "December",
)  # fmt: skip


def day_words(day: dt.date) -> str:
    """A day as `3 October 2026`; whatever language the machine speaks."""
    return f"{day.day} {_MONTHS[day.month - 1]} {day.year}"
