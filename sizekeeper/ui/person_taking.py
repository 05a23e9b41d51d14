"""The line above the list: the day, the hand and the clothes of the figures typed now."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QCompleter, QHBoxLayout, QLabel, QWidget

from sizekeeper.core.found_words import HANDS
from sizekeeper.ui import theme
from sizekeeper.ui.person_fields import CalmCombo, DayField, DraftField
from sizekeeper.ui.reading_words import OVER

if TYPE_CHECKING:
    import datetime as dt

    from sizekeeper.ui.person_desk import PersonDesk


class TakingBar(QWidget):
    """How the figures typed from now on are taken. Nothing here is an edit: it goes along with each new figure."""

    def __init__(self, desk: PersonDesk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.on = DayField("Day of the figures typed now", self)
        self.by = CalmCombo("Who measures now", self)
        self.by.addItems(list(HANDS.values()))
        self.over = DraftField("Measuring over", self)
        self.over.setPlaceholderText(OVER[1])
        self.over.setCompleter(QCompleter(list(OVER), self))
        self._lay()
        self.on.day_entered.connect(self._on_day)
        self.by.activated.connect(self._on_hand)
        self.over.entered.connect(self._on_over)
        desk.taking_changed.connect(self.refresh)

    def _lay(self) -> None:
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(theme.spacing())
        for text, widget in (("Mea&suring on", self.on), ("", self.by), ("over", self.over)):
            if text:
                label = QLabel(text, self)
                label.setBuddy(widget)
                row.addWidget(label)
            row.addWidget(widget)
        row.setStretch(row.count() - 1, 1)
        self.over.setMinimumWidth(self.over.fontMetrics().averageCharWidth() * 12)

    def refresh(self) -> None:
        """Show how the figures are taken just now."""
        taking = self._desk.taking
        self.on.show_day(taking.on, self._desk.today())
        self.by.setCurrentIndex(list(HANDS).index(taking.by))
        self.over.show_text(taking.over)
        self.setEnabled(not self._desk.read_only)

    def finish(self) -> None:
        """Take over what is being typed."""
        self.over.finish()

    def _on_day(self, day: dt.date) -> None:
        self._desk.take(on=day)

    def _on_hand(self, row: int) -> None:
        self._desk.take(by=list(HANDS)[row])

    def _on_over(self, text: str) -> None:
        self._desk.take(over=text.strip())
