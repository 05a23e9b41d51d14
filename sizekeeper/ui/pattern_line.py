"""A field on a ruled line, like those of a paper form."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QPainter, QPaintEvent, QPalette, QPen
from PySide6.QtWidgets import QLineEdit, QWidget

from sizekeeper.ui import theme

if TYPE_CHECKING:
    from PySide6.QtGui import QFont


class RuledLine(QLineEdit):
    """One line of text. A keystroke is a draft; Enter or leaving makes the edit, Escape restores.

    Signals:
        typed(str): the text is being typed.
        entered(str): the text is meant.
        restored(): what was typed is given up.
    """

    typed = Signal(str)
    entered = Signal(str)
    restored = Signal()

    def __init__(self, name: str, *, placeholder: str = "", level: int = 0, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._level = level
        self._committed = ""
        self._dressing = False
        self.setFrame(False)
        self.setAccessibleName(name)
        self.setPlaceholderText(placeholder)
        self.textEdited.connect(self.typed)
        self.editingFinished.connect(self._on_finished)
        self._dress()

    def show_text(self, text: str) -> None:
        """Show the text as it stands in the library, unless another one is being typed."""
        self._committed = text
        if self.isModified() and self.hasFocus():
            return
        if self.text() != text:
            self.setText(text)
        self.setModified(False)

    def keep(self) -> None:
        """Let a text that cannot be taken stay in the field."""
        self.setModified(True)

    def _on_finished(self) -> None:
        if self.isModified():
            self.setModified(False)
            self.entered.emit(self.text())

    def _dress(self) -> None:
        self._dressing = True
        if self._level:
            font: QFont = theme.heading_font(self._level)
            self.setFont(font)
        palette = self.palette()
        palette.setColor(QPalette.ColorRole.Base, Qt.GlobalColor.transparent)
        palette.setColor(QPalette.ColorRole.PlaceholderText, theme.muted_text(palette))
        self.setPalette(palette)
        self.setTextMargins(0, 0, 0, theme.spacing(0.25))
        self._dressing = False

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Escape restores."""
        if event.key() == Qt.Key.Key_Escape and self.isModified():
            self.setText(self._committed)
            self.setModified(False)
            self.restored.emit()
            self.selectAll()
            event.accept()
            return
        super().keyPressEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show where the focus is."""
        super().focusInEvent(event)
        self.update()

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size, and light or dark."""
        super().changeEvent(event)
        follows = (QEvent.Type.ApplicationFontChange, QEvent.Type.ApplicationPaletteChange, QEvent.Type.PaletteChange)
        if event.type() in follows and not self._dressing and hasattr(self, "_committed"):
            self._dress()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw the text, and the rule below it: thick in the accent's colour while the field has the focus."""
        super().paintEvent(event)
        painter = QPainter(self)
        focused = self.hasFocus()
        colour = theme.accent(self.palette()) if focused else theme.muted_text(self.palette())
        painter.setPen(QPen(colour, 2 if focused else 1))
        y = self.height() - 1
        painter.drawLine(0, y, self.width(), y)
