"""Fields that show a draft while one types and make the edit on Enter, Tab or leaving; Esc restores."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QDate, QEvent, QKeyCombination, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QPainter, QPaintEvent, QPalette, QPen, QWheelEvent
from PySide6.QtWidgets import QComboBox, QDateEdit, QLineEdit, QPlainTextEdit, QWidget

from sizekeeper.ui import theme
from sizekeeper.ui.undo_keys import is_undo_or_redo

if TYPE_CHECKING:
    import datetime as dt

_STAYS = (Qt.FocusReason.PopupFocusReason, Qt.FocusReason.MenuBarFocusReason)
"""A menu over the field does not count as leaving it."""

_NUMBER_PAD = Qt.KeyboardModifier.KeypadModifier


class DraftField(QLineEdit):
    """A line of text with a draft.

    Signals:
        typed(str): the text after a keystroke, not yet an edit.
        entered(str): the text after Enter, Tab or leaving, only when it is another one.
        restored(): Esc put the text back.
        stepped(int): Enter or an arrow asks for the next (1) or the previous (-1) field.
    """

    typed = Signal(str)
    entered = Signal(str)
    restored = Signal()
    stepped = Signal(int)

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._kept = ""
        self.setAccessibleName(name)
        self.textEdited.connect(self.typed)

    @property
    def dirty(self) -> bool:
        """Whether the text is another one than the entry's."""
        return self.text() != self._kept

    def show_text(self, text: str) -> None:
        """Show the entry's text, unless something else is being typed just now."""
        if self.dirty and self.hasFocus():
            self._kept = text
            return
        self.put_text(text)

    def put_text(self, text: str) -> None:
        """Show the entry's text, whatever stood here."""
        self._kept = text
        if self.text() != text:
            chosen = self.hasSelectedText() and self.hasFocus()
            self.setText(text)
            if chosen:
                self.selectAll()

    def finish(self) -> None:
        """Make the edit now, if something was typed."""
        if self.dirty and not self.isReadOnly():
            text = self.text()
            self.put_text(text)
            self.setText(text)  # forgets the keystrokes, so that undo is the window's from here on
            self.entered.emit(text)

    def restore(self) -> None:
        """Put the entry's text back."""
        self.put_text(self._kept)
        self.selectAll()
        self.restored.emit()

    def _step(self, key: int) -> int:
        """Which neighbour a key asks for; 0 for none."""
        steps = {Qt.Key.Key_Return: 1, Qt.Key.Key_Enter: 1, Qt.Key.Key_Down: 1, Qt.Key.Key_Up: -1}
        return steps.get(Qt.Key(key), 0)

    def event(self, event: QEvent) -> bool:
        """Leave undo and redo to the window while nothing is being typed."""
        if (
            event.type() == QEvent.Type.ShortcutOverride
            and isinstance(event, QKeyEvent)
            and is_undo_or_redo(event)
            and not (self.isUndoAvailable() or self.isRedoAvailable())
        ):
            event.ignore()
            return False
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter and the arrows finish, Esc restores, F2 goes into the text."""
        plain = event.modifiers() & ~_NUMBER_PAD
        step = self._step(event.key())
        if event.key() == Qt.Key.Key_Escape and self.dirty:
            self.restore()
        elif step and plain in (Qt.KeyboardModifier.NoModifier, Qt.KeyboardModifier.ShiftModifier):
            self.finish()
            self.stepped.emit(-1 if plain == Qt.KeyboardModifier.ShiftModifier else step)
        elif event.key() == Qt.Key.Key_F2:
            self.end(False)
        elif is_undo_or_redo(event) and not (self.isUndoAvailable() or self.isRedoAvailable()):
            event.ignore()
        else:
            super().keyPressEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Choose the whole text, so that typing replaces it."""
        super().focusInEvent(event)
        if event.reason() not in (*_STAYS, Qt.FocusReason.MouseFocusReason, Qt.FocusReason.ActiveWindowFocusReason):
            self.selectAll()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Leaving makes the edit, and shows where a long text begins."""
        super().focusOutEvent(event)
        if event.reason() not in _STAYS:
            self.finish()
            if event.reason() != Qt.FocusReason.ActiveWindowFocusReason:
                self.setCursorPosition(0)


class TitleField(DraftField):
    """A heading that can be typed in: a line below it instead of a box around it."""

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(name, parent)
        self.setFrame(False)
        palette = QPalette(self.palette())
        palette.setColor(QPalette.ColorRole.Base, Qt.GlobalColor.transparent)
        self.setPalette(palette)
        self.dress()

    def dress(self) -> None:
        """Take the heading’s font at the text size of now; asked for by the page, since an own font gets no word."""
        self.setFont(theme.heading_font(1))
        self.setTextMargins(0, 0, 0, theme.spacing(0.5))

    def paintEvent(self, event: QPaintEvent) -> None:
        """The text, and the line below it."""
        super().paintEvent(event)
        painter = QPainter(self)
        colour = theme.accent(self.palette()) if self.hasFocus() else theme.rule_colour(self.palette())
        painter.setPen(QPen(colour, 2 if self.hasFocus() else 1))
        painter.drawLine(0, self.height() - 1, self.width(), self.height() - 1)


class DraftNotes(QPlainTextEdit):
    """A few lines of text with a draft; Tab goes on, Esc restores.

    Signals:
        typed(str): the text after a keystroke, not yet an edit.
        entered(str): the text after leaving, only when it is another one.
        restored(): Esc put the text back.
    """

    typed = Signal(str)
    entered = Signal(str)
    restored = Signal()

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._kept = ""
        self.setAccessibleName(name)
        self.setTabChangesFocus(True)
        self.textChanged.connect(self._on_text)

    def show_text(self, text: str) -> None:
        """Show the entry's text, unless something else is being typed just now."""
        typing = self.hasFocus() and self.toPlainText() != self._kept
        self._kept = text
        if not typing and self.toPlainText() != text:
            self.setPlainText(text)

    def finish(self) -> None:
        """Make the edit now, if something was typed."""
        text = self.toPlainText()
        if text != self._kept and not self.isReadOnly():
            self._kept = text
            self.document().clearUndoRedoStacks()
            self.entered.emit(text)

    def _on_text(self) -> None:
        if self.hasFocus() and not self.isReadOnly():
            self.typed.emit(self.toPlainText())

    def event(self, event: QEvent) -> bool:
        """Leave undo and redo to the window while nothing is being typed."""
        if (
            event.type() == QEvent.Type.ShortcutOverride
            and isinstance(event, QKeyEvent)
            and is_undo_or_redo(event)
            and self.toPlainText() == self._kept
        ):
            event.ignore()
            return False
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Esc restores; Ctrl+Enter makes the edit."""
        combined = event.keyCombination()
        if event.key() == Qt.Key.Key_Escape and self.toPlainText() != self._kept:
            self.setPlainText(self._kept)
            self.restored.emit()
        elif combined == QKeyCombination(Qt.KeyboardModifier.ControlModifier, Qt.Key.Key_Return):
            self.finish()
        else:
            super().keyPressEvent(event)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Leaving makes the edit."""
        super().focusOutEvent(event)
        if event.reason() not in _STAYS:
            self.finish()


class CalmCombo(QComboBox):
    """A choice that the wheel does not change while the page scrolls under the pointer."""

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Let the page scroll."""
        event.ignore()


class DayField(QDateEdit):
    """A day, up to today, typed or taken from a calendar.

    Signals:
        day_entered(object): the `date` after Enter, Tab, leaving or a pick, only when it is another one.
    """

    day_entered = Signal(object)

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._kept = QDate()
        self.setAccessibleName(name)
        self.lineEdit().setAccessibleName(name)
        self.setCalendarPopup(True)
        self.setKeyboardTracking(False)
        self.setDisplayFormat("d MMM yyyy")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.dateChanged.connect(self._on_date)

    def show_day(self, day: dt.date, latest: dt.date) -> None:
        """Show a day; later days than `latest` cannot be chosen."""
        self._kept = QDate(day.year, day.month, day.day)
        self.setMaximumDate(max(QDate(latest.year, latest.month, latest.day), self._kept))
        self.setDate(self._kept)

    def _on_date(self, day: QDate) -> None:
        if day != self._kept:
            self._kept = day
            self.day_entered.emit(day.toPython())

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Let the page scroll."""
        event.ignore()
