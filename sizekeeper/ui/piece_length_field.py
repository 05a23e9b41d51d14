"""A field for one length: typing drafts, Enter, Tab or leaving makes the edit, what is no length stays and says why."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QPainter, QPen

from sizekeeper.core.notation import parse_length
from sizekeeper.errors import LengthError
from sizekeeper.ui import theme
from sizekeeper.ui.person_fields import DraftField

if TYPE_CHECKING:
    from PySide6.QtGui import QKeyEvent, QPaintEvent
    from PySide6.QtWidgets import QWidget

    from sizekeeper.core.length import Length, Unit


class LengthField(DraftField):
    """One length of the pattern, in a unit of its own where none is typed.

    Signals:
        length_typed(object): a keystroke made it this `Length`, or None for none; not yet an edit.
        length_entered(object): it is meant.
        problem_changed(): what is wrong with the text is another thing now, or nothing.
    """

    length_typed = Signal(object)
    length_entered = Signal(object)
    problem_changed = Signal()

    def __init__(self, name: str, parent: QWidget | None = None, *, zero: bool = True) -> None:
        """Start empty.

        Args:
            name: what a screen reader says, and sentences call it.
            parent: the widget it lies on.
            zero: whether nothing at all, 0, is a length here.
        """
        super().__init__(name, parent)
        self.name = name
        self.problem = ""
        self._zero = zero
        self._unit: Unit = "cm"
        self._shown = ""
        self._owner = ""
        self._held: dict[str, str] = {}
        self.setAlignment(Qt.AlignmentFlag.AlignRight)
        self.typed.connect(self._on_typed)
        self.entered.connect(self._on_entered)

    def show_length(self, length: Length | None, unit: Unit) -> None:
        """Show the entry's length as typed; a text that was refused stays until it is mended."""
        self._unit = unit
        self._shown = length.text if length is not None else ""
        if not self.problem:
            self.show_text(self._shown)

    def forget(self) -> None:
        """Let go of what was refused or is being typed: the field is for something else now."""
        self._set_problem("")
        self.put_text(self._shown)

    def turn_to(self, owner: str) -> None:
        """The field is for something else now; what was refused there waits until it is turned to again."""
        if owner == self._owner:
            return
        if self.problem:
            self._held[self._owner] = self.text()
        self.forget()
        self._owner = owner
        if (text := self._held.pop(owner, None)) is not None:
            self.put_text(text)
            self._on_entered(text)

    def _length(self, text: str) -> Length | None:
        if not text.strip():
            return None
        length = parse_length(text, self._unit)
        if length.value < 0 or (length.value == 0 and not self._zero):
            raise LengthError(f"“{text.strip()}” is {'below' if length.value < 0 else 'not above'} zero")
        return length

    def _on_typed(self, text: str) -> None:
        try:
            length = self._length(text)
        except LengthError:
            return
        self._set_problem("")
        self.length_typed.emit(length)

    def _on_entered(self, text: str) -> None:
        try:
            length = self._length(text)
        except LengthError as error:
            self._set_problem(f"{self.name}: {str(error).rstrip('.')}.")
            return
        self._set_problem("")
        self.length_entered.emit(length)

    def _set_problem(self, sentence: str) -> None:
        if sentence != self.problem:
            self.problem = sentence
            self.setAccessibleDescription(sentence)
            self.problem_changed.emit()
            self.update()

    # Qt's own names from here on.

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Esc also takes back a text that was refused."""
        if event.key() == Qt.Key.Key_Escape and self.problem:
            self.forget()
            self.selectAll()
            self.restored.emit()
        else:
            super().keyPressEvent(event)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Underline a text that is not understood, besides saying so in words."""
        super().paintEvent(event)
        if self.problem:
            painter = QPainter(self)
            painter.setPen(QPen(theme.warning_text(self.palette()), 2, Qt.PenStyle.DashLine))
            painter.drawLine(3, self.height() - 2, self.width() - 4, self.height() - 2)
