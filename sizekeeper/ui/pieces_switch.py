"""The switch on the Pattern page between what the envelope says and the pieces on the paper."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtGui import QFont, QFontMetrics, QPainter
from PySide6.QtWidgets import QTabBar

from sizekeeper.ui import theme

if TYPE_CHECKING:
    from PySide6.QtGui import QPaintEvent
    from PySide6.QtWidgets import QWidget

CHARTS, PIECES = 0, 1


class PiecesSwitch(QTabBar):
    """Two names; the one shown stands on a wash of the accent. It keeps a tab bar's keys and words."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName("Charts or pieces")
        self.setDrawBase(False)
        self.setExpanding(False)
        self.setUsesScrollButtons(False)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.addTab("Envelope and charts")
        self.addTab("Pieces")

    def show_count(self, count: int) -> None:
        """Say how many pieces are listed."""
        text = f"Pieces ({count})" if count else "Pieces"
        if self.tabText(PIECES) != text:
            self.setTabText(PIECES, text)

    def _font(self, index: int) -> QFont:
        font = theme.scaled_font(1.0)
        if index == self.currentIndex():
            font.setWeight(QFont.Weight.DemiBold)
        return font

    # Qt's own names from here on.

    def tabSizeHint(self, index: int) -> QSize:
        """The name with air around it."""
        font = theme.scaled_font(1.0)
        font.setWeight(QFont.Weight.DemiBold)
        metrics = QFontMetrics(font)
        wide = metrics.horizontalAdvance(self.tabText(index)) + theme.spacing(2.5)
        return QSize(wide, metrics.height() + theme.spacing(1))

    def minimumTabSizeHint(self, index: int) -> QSize:
        """Names are never cut off."""
        return self.tabSizeHint(index)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the names."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        palette = self.palette()
        for index in range(self.count()):
            rect = self.tabRect(index).adjusted(1, 1, -1, -1)
            chosen = index == self.currentIndex()
            if chosen:
                painter.setPen(Qt.PenStyle.NoPen)
                painter.setBrush(theme.accent_wash(palette))
                painter.drawRoundedRect(QRect(rect), rect.height() / 2, rect.height() / 2)
                if self.hasFocus():
                    painter.setPen(theme.accent(palette))
                    painter.setBrush(Qt.BrushStyle.NoBrush)
                    painter.drawRoundedRect(QRect(rect), rect.height() / 2, rect.height() / 2)
            painter.setFont(self._font(index))
            painter.setPen(palette.color(palette.ColorRole.WindowText) if chosen else theme.muted_text(palette))
            painter.drawText(rect, Qt.AlignmentFlag.AlignCenter, self.tabText(index))
