"""A button that reads like a word in a sentence."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QSize, Qt
from PySide6.QtGui import QEnterEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QPushButton, QWidget

from sizekeeper.ui import theme


class Link(QPushButton):
    """A flat button in the accent's colour, underlined under the mouse and framed when it has the focus."""

    def __init__(self, text: str, name: str = "", parent: QWidget | None = None) -> None:
        super().__init__(text, parent)
        self.setAccessibleName(name or text)
        self.setFlat(True)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setAutoDefault(False)

    def sizeHint(self) -> QSize:
        """The text, with room to be framed; an arrow behind it where a menu hangs."""
        width = self.fontMetrics().horizontalAdvance(self._shown())
        return QSize(width + theme.spacing(1.5), self.fontMetrics().height() + theme.spacing(0.75))

    def minimumSizeHint(self) -> QSize:
        """The whole text."""
        return self.sizeHint()

    def _shown(self) -> str:
        text = self.text().replace("&", "")
        return f"{text} ▾" if self.menu() is not None else text

    def enterEvent(self, event: QEnterEvent) -> None:
        """The mouse came: underline."""
        super().enterEvent(event)
        self.update()

    def leaveEvent(self, event: QEvent) -> None:
        """The mouse left."""
        super().leaveEvent(event)
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the words."""
        painter = QPainter(self)
        palette = self.palette()
        colour = theme.accent(palette) if self.isEnabled() else theme.muted_text(palette)
        font = self.font()
        font.setUnderline(self.underMouse() and self.isEnabled())
        painter.setFont(font)
        painter.setPen(QPen(colour))
        painter.drawText(self.rect(), int(Qt.AlignmentFlag.AlignCenter), self._shown())
        if self.hasFocus():
            painter.setPen(QPen(colour, 1))
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            painter.drawRoundedRect(self.rect().adjusted(1, 1, -2, -2), 3, 3)
