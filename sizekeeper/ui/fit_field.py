"""A field for one figure: typing drafts, Enter, Tab or leaving makes the edit, Esc restores."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QLineEdit, QWidget

from sizekeeper.ui import theme

if TYPE_CHECKING:
    from PySide6.QtGui import QFocusEvent, QKeyEvent


class FigureField(QLineEdit):
    """One figure as typed. It keeps what is being typed when the value around it is set again.

    Signals:
        typed(str): a keystroke; the text so far.
        entered(str): the text is meant: Enter, Tab, or the field was left.
        restored(): Esc took the typing back.
        step_wanted(int): the field above (-1) or below (+1) is wanted.
    """

    typed = Signal(str)
    entered = Signal(str)
    restored = Signal()
    step_wanted = Signal(int)

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        """Start empty; the name is what a screen reader says."""
        super().__init__(parent)
        self._kept = ""
        self._problem = ""
        self.setAccessibleName(name)
        self.textEdited.connect(self.typed)

    @property
    def problem(self) -> str:
        """What is wrong with the text, empty when nothing is."""
        return self._problem

    @property
    def typing(self) -> bool:
        """Whether something is typed that is not entered yet."""
        return self.isModified()

    def set_figure(self, text: str) -> None:
        """The value that stands; it does not disturb what is being typed, nor what Esc restores."""
        if self.typing:
            return
        self._kept = text
        if self.text() != text:
            self.setText(text)
            self.setCursorPosition(0)

    def set_problem(self, sentence: str) -> None:
        """Mark the field, or take the mark off."""
        if sentence != self._problem:
            self._problem = sentence
            self.setAccessibleDescription(sentence)
            self.update()

    def refuse(self, sentence: str) -> None:
        """An entered text was not taken: it stays as typed, marked, until it is mended or Esc restores."""
        self.setModified(True)
        self.set_problem(sentence)

    def forget(self) -> None:
        """Let go of what is typed: the field is for something else now."""
        self.setModified(False)
        self.set_problem("")
        self.setText(self._kept)

    def enter(self) -> None:
        """Mean what is typed, if anything is."""
        if self.typing:
            self.setModified(False)
            self.entered.emit(self.text())

    def _restore(self) -> None:
        self.setText(self._kept)
        self.setModified(False)
        self.set_problem("")
        self.selectAll()
        self.restored.emit()

    # Qt's own names from here on.

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter, Esc, F2 and the arrows."""
        key = event.key()
        if key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.enter()
            self.step_wanted.emit(1)
        elif key == Qt.Key.Key_Escape and self.typing:
            self._restore()
        elif key in (Qt.Key.Key_Up, Qt.Key.Key_Down):
            self.enter()
            self.step_wanted.emit(-1 if key == Qt.Key.Key_Up else 1)
        elif key == Qt.Key.Key_F2:
            self.deselect()
            self.end(False)
        else:
            super().keyPressEvent(event)
            return
        event.accept()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Leaving the field makes the edit; a menu over it does not."""
        super().focusOutEvent(event)
        if event.reason() not in (Qt.FocusReason.PopupFocusReason, Qt.FocusReason.ActiveWindowFocusReason):
            self.enter()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Underline a text that is not understood, besides saying so in words."""
        super().paintEvent(event)
        if self._problem:
            painter = QPainter(self)
            painter.setPen(QPen(theme.warning_text(self.palette()), 2, Qt.PenStyle.DashLine))
            y = self.height() - 2
            painter.drawLine(4, y, self.width() - 4, y)
