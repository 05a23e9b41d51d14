"""The names of the pages in a row; the one in front is underlined in plum."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QRect, QSize, Qt
from PySide6.QtGui import QFont, QFontMetrics, QPainter, QPaintEvent, QPalette
from PySide6.QtWidgets import QTabBar, QWidget

from sizekeeper.ui import theme


class PageBar(QTabBar):
    """A tab bar with our own look: it keeps the tab bar's keys, and its words for a screen reader."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName("Pages")
        self.setDrawBase(False)
        self.setExpanding(False)
        self.setUsesScrollButtons(False)
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self._hovered = -1

    def _font(self, index: int) -> QFont:
        font = theme.scaled_font(1.15)
        if index == self.currentIndex():
            font.setWeight(QFont.Weight.DemiBold)
        return font

    def _paint_tab(self, painter: QPainter, index: int) -> None:
        palette, rect = self.palette(), self.tabRect(index)
        chosen = index == self.currentIndex()
        words = palette.color(QPalette.ColorRole.WindowText)
        painter.setFont(self._font(index))
        painter.setPen(words if chosen or index == self._hovered else theme.muted_text(palette))
        painter.drawText(rect, Qt.AlignmentFlag.AlignCenter, self.tabText(index))
        if chosen:
            thick = theme.spacing(0.4)
            inner = rect.adjusted(theme.spacing(1.5), 0, -theme.spacing(1.5), 0)
            painter.fillRect(
                QRect(inner.left(), rect.bottom() - thick + 1, inner.width(), thick), theme.accent(palette)
            )
            if self.hasFocus():
                painter.setPen(theme.accent(palette))
                painter.drawRect(rect.adjusted(1, 1, -2, -thick - 2))

    def tabSizeHint(self, index: int) -> QSize:
        """The name in its heaviest lettering, with air around it."""
        font = theme.scaled_font(1.15)
        font.setWeight(QFont.Weight.DemiBold)
        metrics = QFontMetrics(font)
        return QSize(metrics.horizontalAdvance(self.tabText(index)) + theme.spacing(3), round(metrics.height() * 2.1))

    def minimumTabSizeHint(self, index: int) -> QSize:
        """Names are never cut off."""
        return self.tabSizeHint(index)

    def event(self, event: QEvent) -> bool:
        """Light up the name below the mouse."""
        if event.type() == QEvent.Type.HoverMove:
            self._hovered = self.tabAt(self.mapFromGlobal(self.cursor().pos()))
            self.update()
        elif event.type() == QEvent.Type.HoverLeave:
            self._hovered = -1
            self.update()
        return super().event(event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the names."""
        painter = QPainter(self)
        for index in range(self.count()):
            self._paint_tab(painter, index)
