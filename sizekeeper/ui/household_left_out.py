"""Who is left out of the household's comparisons, remembered from one time to the next."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from PySide6.QtCore import QSettings

_KEY = "household/left_out"


class LeftOut:
    """The ids of those who are left out, kept in the platform's own settings place."""

    def __init__(self, stored: QSettings) -> None:
        """Read who was left out."""
        self._stored = stored
        self._ids = set(str(stored.value(_KEY, "")).split())

    def __contains__(self, person: object) -> bool:
        return person in self._ids

    def leave_out(self, person: str, *, out: bool) -> None:
        """Leave a person out, or take her in again."""
        if out:
            self._ids.add(person)
        else:
            self._ids.discard(person)
        self._stored.setValue(_KEY, " ".join(sorted(self._ids)))
