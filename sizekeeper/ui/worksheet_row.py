"""One step of the worksheet: a tick, the piece, and what is to be done to it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, Signal
from PySide6.QtWidgets import QHBoxLayout, QWidget

from sizekeeper.core.work_words import name_of, step_words
from sizekeeper.ui import theme
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.name_box import NameBox

if TYPE_CHECKING:
    from PySide6.QtGui import QEnterEvent, QFocusEvent

    from sizekeeper.core.piece import Pieces
    from sizekeeper.core.wording import Wording
    from sizekeeper.core.worksheet import Step


class StepTick(NameBox):
    """The tick of a step.

    Signals:
        looked_at(): the keyboard came to it.
    """

    looked_at = Signal()

    # Qt's own names from here on.

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show its piece."""
        super().focusInEvent(event)
        self.looked_at.emit()


class StepRow(QWidget):
    """A step.

    Signals:
        ticked(object, bool): the step was ticked, or its tick taken off.
        looked_at(str): its piece is of interest; the piece's id.
    """

    ticked = Signal(object, bool)
    looked_at = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        """An empty row."""
        super().__init__(parent)
        self.step: Step | None = None
        self.tick = StepTick(parent=self)
        self.what = Lettering("", "plain", self)
        self._row = row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.addWidget(self.tick)
        row.addWidget(self.what, 1)
        self._space()
        self.tick.clicked.connect(self._on_ticked)
        self.tick.looked_at.connect(self._on_looked_at)

    def show_step(self, step: Step, pieces: Pieces, words: Wording, *, done: bool, read_only: bool) -> None:
        """Show a step."""
        self.step = step
        name, what = name_of(pieces, step.piece), step_words(step, words)
        self.tick.show_name(name)
        self.tick.setChecked(done)
        self.tick.setEnabled(not read_only)
        self.tick.setAccessibleName(f"{name}: {what}")
        voice = "muted" if done else "plain"
        if self.what.text() != what or self.what.voice != voice:
            self.what.speak(what, "muted" if done else "plain")

    def _on_ticked(self) -> None:
        if self.step is not None:
            self.ticked.emit(self.step, self.tick.isChecked())

    def _on_looked_at(self) -> None:
        if self.step is not None:
            self.looked_at.emit(self.step.piece)

    def _space(self) -> None:
        self._row.setSpacing(theme.spacing(1.5))
        self.tick.setFixedWidth(theme.spacing(22))

    # Qt's own names from here on.

    def enterEvent(self, event: QEnterEvent) -> None:
        """Show the piece below the mouse."""
        super().enterEvent(event)
        self._on_looked_at()

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if hasattr(self, "_row") and theme.font_changed(event):
            self._space()
