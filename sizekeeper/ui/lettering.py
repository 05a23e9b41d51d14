"""Labels and rules that keep their look when text size or light and dark change."""

from __future__ import annotations

from typing import Literal

from PySide6.QtCore import QEvent, QSize, Qt
from PySide6.QtGui import QFont, QPainter, QPaintEvent, QPalette
from PySide6.QtWidgets import QApplication, QLabel, QSizePolicy, QWidget

from sizekeeper.ui import theme

Voice = Literal["title", "part", "small heading", "plain", "muted", "note", "warning", "accent"]
"""How a label speaks: three headings, plain text, text that steps back, a small note, a warning, the accent."""


class Lettering(QLabel):
    """A label in one of the program's voices. Text is always plain, so that names with marks in them stay as typed."""

    def __init__(self, text: str = "", voice: Voice = "plain", parent: QWidget | None = None) -> None:
        super().__init__(text, parent)
        self._voice: Voice = voice
        self._dressing = False
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setWordWrap(voice in ("muted", "note", "warning", "plain"))
        self._dress()
        theme.text_size().changed.connect(self._dress)

    @property
    def voice(self) -> Voice:
        """How the label speaks."""
        return self._voice

    def speak(self, text: str, voice: Voice) -> None:
        """Change the text and how it is said."""
        self._voice = voice
        self.setText(text)
        self._dress()

    def _dress(self) -> None:
        """Font and colour of the voice, from the text size and the ground as they are now."""
        self._dressing = True
        levels = {"title": 1, "part": 2, "small heading": 3}
        colours = {"muted": theme.muted_text, "note": theme.muted_text, "warning": theme.warning_text}
        colours["accent"] = theme.accent
        if self._voice in levels:
            self.setFont(theme.heading_font(levels[self._voice]))
        else:
            self.setFont(theme.small_font() if self._voice == "note" else QFont())
        parent = self.parentWidget()
        ground = QApplication.palette() if parent is None else parent.palette()
        colour = colours.get(self._voice)
        self.setPalette(theme.with_text(colour(ground)) if colour else QPalette())
        self._dressing = False

    def changeEvent(self, event: QEvent) -> None:
        """Follow light and dark."""
        super().changeEvent(event)
        if event.type() in (QEvent.Type.PaletteChange, QEvent.Type.ParentChange) and not self._dressing:
            self._dress()


class Rule(QWidget):
    """A thin line across, in the colour of rules."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        """One pixel high."""
        return QSize(1, 1)

    def minimumSizeHint(self) -> QSize:
        """One pixel high."""
        return QSize(1, 1)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the line."""
        painter = QPainter(self)
        painter.fillRect(self.rect(), theme.rule_colour(self.palette()))


def say(label: Lettering, text: str) -> None:
    """Show a text, or hide its label while there is none."""
    if label.text() != text:
        label.setText(text)
    if label.isHidden() == bool(text):
        label.setVisible(bool(text))
