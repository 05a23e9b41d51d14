"""Which person, pattern and page are in front of the user."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from PySide6.QtCore import QObject, Signal

PageName = Literal["person", "pattern", "fit", "household", "makes"]


@dataclass(frozen=True, slots=True)
class Place:
    """Where an edit happened, so that undo can go back there: a page, the entry shown, and the field or cell."""

    page: PageName
    entry: str = ""
    field: str = ""


class Selection(QObject):
    """The person and the pattern that the pages show.

    Signals:
        person_changed(str): the id of the person now shown, "" for none.
        pattern_changed(str): the id of the pattern now shown, "" for none.
        make_changed(str): the id of the make that was taken up, "" for the one that is worked on.
        page_wanted(object): a `Place` that should come to the front.
        sheet_wanted(): the decision sheet of what is shown should come to the front.
    """

    person_changed = Signal(str)
    pattern_changed = Signal(str)
    make_changed = Signal(str)
    page_wanted = Signal(object)
    sheet_wanted = Signal()

    def __init__(self, parent: QObject | None = None) -> None:
        """Start with nothing selected."""
        super().__init__(parent)
        self.person = ""
        self.pattern = ""
        self.make = ""

    def choose_person(self, entry: str) -> None:
        """Show a person everywhere; "" for none."""
        if entry != self.person:
            self.person, self.make = entry, ""
            self.person_changed.emit(entry)

    def choose_pattern(self, entry: str) -> None:
        """Show a pattern everywhere; "" for none."""
        if entry != self.pattern:
            self.pattern, self.make = entry, ""
            self.pattern_changed.emit(entry)

    def take_up(self, make: str) -> None:
        """Plan with a make of the person and the pattern that are shown, finished or not; "" for the usual one."""
        if make != self.make:
            self.make = make
            self.make_changed.emit(make)

    def go(self, place: Place) -> None:
        """Ask for a page to come to the front."""
        self.page_wanted.emit(place)
