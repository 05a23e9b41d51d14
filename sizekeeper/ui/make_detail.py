"""The make in front: its heading with what can be done with it, what was made to read, what came of it to edit."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, Qt
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from sizekeeper.ui import theme
from sizekeeper.ui.lettering import Lettering, say
from sizekeeper.ui.make_outcome import MakeOutcome
from sizekeeper.ui.make_reading import MakeReading
from sizekeeper.ui.scroll_sheet import ScrollSheet

if TYPE_CHECKING:
    from sizekeeper.ui.makes_rows import Listed


class MakeDetail(QWidget):
    """One make."""

    def __init__(self, parent: QWidget | None = None) -> None:
        """Without a make."""
        super().__init__(parent)
        self.title = Lettering("", "part", self)
        self.title.setWordWrap(True)
        self.fit = QPushButton("Open on Fit", self)
        self.sheet = QPushButton("Decision sheet…", self)
        self.history = QPushButton("History…", self)
        self.hide_it = QPushButton("Hide", self)
        self.why_not = Lettering("", "note", self)
        self.page = ScrollSheet(1, self)
        self.reading = MakeReading(self.page.sheet)
        self.outcome = MakeOutcome(self.page.sheet)
        self._lay_out()
        self._space()

    @property
    def buttons(self) -> tuple[QPushButton, ...]:
        """What can be done with it."""
        return (self.fit, self.sheet, self.history, self.hide_it)

    def _lay_out(self) -> None:
        self._top, self._both = QHBoxLayout(), QHBoxLayout()
        self._top.addWidget(self.title, 1)
        for button in self.buttons:
            self._top.addWidget(button, 0, Qt.AlignmentFlag.AlignTop)
        self._both.addWidget(self.outcome, 1)
        self._both.addWidget(self.reading, 1)
        self.page.column.addLayout(self._both)
        self.page.column.addStretch(1)
        self._column = QVBoxLayout(self)
        self._column.setSpacing(0)
        self._column.addLayout(self._top)
        self._column.addWidget(self.why_not)
        self._column.addWidget(self.page, 1)

    def show_heading(self, one: Listed, why_not: str, *, read_only: bool) -> None:
        """Say which make it is, and offer what can be done; `why_not` says why it cannot be opened on Fit."""
        view = f", view {one.make.view}" if one.make.view else ""
        self.title.setText(f"{one.who} · {one.what}{view}")
        say(self.why_not, why_not)
        for button in (self.fit, self.sheet):
            button.setEnabled(not why_not)
        self.hide_it.setText("Bring back" if one.make.hidden else "Hide")
        self.hide_it.setEnabled(not read_only)

    def _space(self) -> None:
        self._column.setContentsMargins(0, theme.spacing(1), 0, 0)
        self._top.setContentsMargins(theme.spacing(4), 0, theme.spacing(3), 0)
        self._top.setSpacing(theme.spacing())
        self.why_not.setContentsMargins(theme.spacing(4), 0, theme.spacing(3), 0)
        self._both.setSpacing(theme.spacing(4))

    # Qt's own names from here on.

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if hasattr(self, "_column") and theme.font_changed(event):
            self._space()
