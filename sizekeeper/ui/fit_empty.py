"""What the Fit page says while there is nothing to compare: what to do first, and the way there."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtWidgets import QPushButton, QVBoxLayout, QWidget

from sizekeeper.ui import theme
from sizekeeper.ui.lettering import Lettering

if TYPE_CHECKING:
    from sizekeeper.ui.fit_source import Missing
    from sizekeeper.ui.selection import Place


class FirstThings(QWidget):
    """A heading, a sentence, and a button that leads to where it is done.

    Signals:
        go(object): the `Place` that the button leads to.
    """

    go = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        """Start silent."""
        super().__init__(parent)
        self._place: Place | None = None
        self.heading = Lettering("", "title", self)
        self.heading.setWordWrap(True)
        self.sentence = Lettering("", "muted", self)
        self.button = QPushButton(self)
        self._column = QVBoxLayout(self)
        self._column.addStretch(2)
        for widget in (self.heading, self.sentence):
            self._column.addWidget(widget)
        self._column.addWidget(self.button, 0, Qt.AlignmentFlag.AlignLeft)
        self._column.addStretch(5)
        self.button.clicked.connect(self._on_button)
        self._space()

    def show_missing(self, missing: Missing) -> None:
        """Say what is missing."""
        self._place = missing.place
        self.heading.setText(missing.heading)
        self.sentence.setText(missing.sentence)
        self.button.setText(missing.button)
        self.button.setVisible(missing.place is not None)

    def _on_button(self) -> None:
        self.go.emit(self._place)

    def _space(self) -> None:
        side = theme.spacing(6)
        self._column.setContentsMargins(side, side, side, side)
        self._column.setSpacing(theme.spacing(1.5))
        self.sentence.setMaximumWidth(theme.spacing(70))

    # Qt's own names from here on.

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if hasattr(self, "_column") and theme.font_changed(event):
            self._space()
