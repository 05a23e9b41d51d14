"""The line at the foot of the window: what undo did, and whether everything is saved."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QHBoxLayout, QWidget

from sizekeeper.ui import theme
from sizekeeper.ui.lettering import Lettering

if TYPE_CHECKING:
    from PySide6.QtCore import QEvent

    from sizekeeper.ui.session import Change, Session

_CALM_MS = 600
"""How long saving may take before it is worth a word; coined."""


class StatusLine(QWidget):
    """What happened last, at the left; the saved mark, at the right."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._refused = False
        self._told = ""
        self.words = Lettering("", "note", self)
        self.words.setWordWrap(False)
        self.mark = Lettering("", "note", self)
        self.mark.setWordWrap(False)
        self.slow = QTimer(self)
        self.slow.setSingleShot(True)
        self.slow.setInterval(_CALM_MS)
        self.slow.timeout.connect(self._show_mark)
        self._layout = QHBoxLayout(self)
        self._layout.addWidget(self.words, 1)
        self._layout.addWidget(self.mark)
        self._space()
        session.saved_changed.connect(self._saved_changed)
        session.failed.connect(self._failed)
        session.changed.connect(self._follow)
        session.declined.connect(self.tell)
        session.revisited.connect(self._revisited)
        self._show_mark()

    def tell(self, sentence: str) -> None:
        """Say what happened; it stays until the next edit."""
        self._told = sentence
        self.words.setText(sentence)

    def _revisited(self, _place: object, sentence: str) -> None:
        self.tell(sentence)

    def _follow(self, change: Change) -> None:
        """An edit makes the last sentence old news."""
        if change.text and change.text not in self._told:
            self.tell("")

    def _saved_changed(self, saved: bool) -> None:  # noqa: FBT001 - a slot
        if saved:
            self._refused = False
            self.slow.stop()
            self._show_mark()
        elif not self.slow.isActive():
            self.slow.start()

    def _failed(self, _sentence: str) -> None:
        self._refused = True
        self.slow.stop()
        self._show_mark()

    def _show_mark(self) -> None:
        if self._session.read_only:
            self.mark.speak("Read-only", "note")
        elif self._refused:
            self.mark.speak("Not saved", "warning")
        else:
            self.mark.speak("Saved" if self._session.saved else "Saving…", "note")

    def _space(self) -> None:
        self._layout.setContentsMargins(theme.spacing(1.5), theme.spacing(0.5), theme.spacing(2), theme.spacing(0.5))

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if theme.font_changed(event):
            self._space()
