"""A column of widgets on a sheet that scrolls, as the parts of the Fit page are laid out."""

from __future__ import annotations

from PySide6.QtCore import QEvent, Qt
from PySide6.QtWidgets import QFrame, QScrollArea, QVBoxLayout, QWidget

from sizekeeper.ui import theme


class ScrollSheet(QScrollArea):
    """A column without a frame that scrolls up and down; its margins follow the text size."""

    def __init__(self, apart: float, parent: QWidget | None = None) -> None:
        """An empty column; `apart` is the room between its widgets in steps of spacing."""
        super().__init__(parent)
        self._apart = apart
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setWidgetResizable(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.sheet = QWidget()
        self.column = QVBoxLayout(self.sheet)
        self.setWidget(self.sheet)
        for bare in (self.viewport(), self.sheet):
            bare.setAutoFillBackground(False)
        self._space()

    def _space(self) -> None:
        side = theme.spacing(4)
        self.column.setContentsMargins(side, theme.spacing(1), side, theme.spacing(3))
        self.column.setSpacing(theme.spacing(self._apart))

    # Qt's own names from here on.

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if hasattr(self, "column") and theme.font_changed(event):
            self._space()
