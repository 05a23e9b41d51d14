"""A splitter whose handle is a thin rule, wide enough to be taken hold of."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QSplitter, QSplitterHandle, QWidget

from sizekeeper.ui import theme


class _RuleHandle(QSplitterHandle):
    """The handle: a rule at its right edge."""

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the rule."""
        painter = QPainter(self)
        painter.fillRect(self.width() - 1, 0, 1, self.height(), theme.rule_colour(self.palette()))


class ThinSplitter(QSplitter):
    """Two parts side by side; neither can be pushed away by accident."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(Qt.Orientation.Horizontal, parent)
        self.setChildrenCollapsible(False)
        self.setHandleWidth(theme.spacing(0.6))

    def createHandle(self) -> QSplitterHandle:
        """A thin rule."""
        return _RuleHandle(self.orientation(), self)
