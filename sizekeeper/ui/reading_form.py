"""How one reading was taken: the day, the hand, over what, and a note."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QCompleter, QFormLayout, QPushButton, QWidget

from sizekeeper.core.found_words import HANDS
from sizekeeper.core.reading_edit import with_reading, without
from sizekeeper.ui import theme
from sizekeeper.ui.person_fields import CalmCombo, DayField, DraftField
from sizekeeper.ui.reading_words import OVER

if TYPE_CHECKING:
    import datetime as dt

    from sizekeeper.core.person import Reading
    from sizekeeper.ui.person_desk import PersonDesk


class ReadingForm(QWidget):
    """The particulars of the reading chosen in the table; each change is an edit.

    Signals:
        reading_changed(object): the `Reading` as it is after an edit made here, so that it stays chosen.
    """

    reading_changed = Signal(object)

    def __init__(self, desk: PersonDesk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._at: tuple[int, Reading] | None = None
        self.on = DayField("Measured on", self)
        self.by = CalmCombo("Who measured", self)
        self.by.addItems(list(HANDS.values()))
        self.over = DraftField("Measured over", self)
        self.over.setCompleter(QCompleter(list(OVER), self))
        self.note = DraftField("Note on this measurement", self)
        self.remove = QPushButton("Re&move this one", self)
        self.remove.setAutoDefault(True)
        self._lay()
        self._connect()
        self.show_reading(None)

    def _lay(self) -> None:
        form = QFormLayout(self)
        form.setContentsMargins(0, 0, 0, 0)
        form.setHorizontalSpacing(theme.spacing(1.5))
        form.setVerticalSpacing(theme.spacing(0.75))
        form.setFieldGrowthPolicy(QFormLayout.FieldGrowthPolicy.AllNonFixedFieldsGrow)
        for label, widget in (("On", self.on), ("Measured", self.by), ("Over", self.over), ("Note", self.note)):
            form.addRow(label, widget)
        form.addRow("", self.remove)

    def _connect(self) -> None:
        self.on.day_entered.connect(self._on_day)
        self.by.activated.connect(self._on_hand)
        self.over.entered.connect(self._on_over)
        self.note.entered.connect(self._on_note)
        self.remove.clicked.connect(self.take_away)

    def show_reading(self, at: tuple[int, Reading] | None) -> None:
        """Show a reading with its place among all of the person's; None for none."""
        self._at = at
        self.setEnabled(at is not None and not self._desk.read_only)
        today = self._desk.today()
        reading = at[1] if at else None
        self.on.show_day(reading.on if reading else today, today)
        self.by.setCurrentIndex(list(HANDS).index(reading.by) if reading else 0)
        self.over.show_text(reading.over if reading else "")
        self.note.show_text(reading.note if reading else "")

    def finish(self) -> None:
        """Make the edit of what is being typed."""
        self.over.finish()
        self.note.finish()

    def take_away(self) -> None:
        """Take the reading away; undo brings it back."""
        person = self._desk.person
        if self._at is not None and person is not None and not self._desk.read_only:
            place, reading = self._at
            self._desk.edit("Remove a measurement", without(person, place), reading.measure)

    def _edit(self, text: str, after: Reading) -> None:
        person = self._desk.person
        if self._at is None or person is None or after == self._at[1]:
            return
        place = self._at[0]
        self._at = (place, after)
        self._desk.edit(text, with_reading(person, place, after), after.measure)
        self.reading_changed.emit(after)

    def _on_day(self, day: dt.date) -> None:
        if self._at is not None:
            self._edit("Change the day of a measurement", replace(self._at[1], on=day))

    def _on_hand(self, row: int) -> None:
        if self._at is not None:
            self._edit("Change who measured", replace(self._at[1], by=list(HANDS)[row]))

    def _on_over(self, text: str) -> None:
        if self._at is not None:
            self._edit("Change what was measured over", replace(self._at[1], over=text.strip()))

    def _on_note(self, text: str) -> None:
        if self._at is not None:
            self._edit("Change a measurement’s note", replace(self._at[1], note=text.strip()))
