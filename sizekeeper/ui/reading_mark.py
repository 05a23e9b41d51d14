"""The small drawn signs beside a measurement: to be measured again, in question, not a length."""

from __future__ import annotations

from typing import Literal

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from sizekeeper.ui import theme

Sign = Literal["", "stale", "question", "unreadable"]


class ReadingMark(QWidget):
    """One sign; the words for it always stand beside it.

    An hourglass says that the measurement is old, a ringed question mark that it is in doubt, a triangle with an
    exclamation mark that it is not a length.
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.sign: Sign = ""
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def show_sign(self, sign: Sign) -> None:
        """Show another sign, or none."""
        if sign != self.sign:
            self.sign = sign
            self.update()

    def sizeHint(self) -> QSize:
        """A square as high as the text."""
        side = self.fontMetrics().height()
        return QSize(side, side)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the sign."""
        if not self.sign:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        side = min(self.width(), self.height()) - 3.0
        painter.translate((self.width() - side) / 2, (self.height() - side) / 2)
        painter.setPen(QPen(theme.warning_text(self.palette()), max(1.2, side / 11)))
        if self.sign == "stale":
            _paint_hourglass(painter, side)
        else:
            _paint_letter(painter, side, self.sign)


def _paint_hourglass(painter: QPainter, side: float) -> None:
    left, right, middle = side * 0.18, side * 0.82, side * 0.5
    painter.drawLine(QPointF(left, 0.5), QPointF(right, 0.5))
    painter.drawLine(QPointF(left, side - 0.5), QPointF(right, side - 0.5))
    corners = [(left, 0.5), (right, side - 0.5), (left, side - 0.5), (right, 0.5)]
    painter.drawPolygon(QPolygonF([QPointF(x, y) for x, y in corners]))
    painter.setBrush(painter.pen().color())
    sand = [(middle, side * 0.62), (right - 1, side - 1), (left + 1, side - 1)]
    painter.drawPolygon(QPolygonF([QPointF(x, y) for x, y in sand]))


def _paint_letter(painter: QPainter, side: float, sign: Sign) -> None:
    box = QRectF(0, 0, side, side)
    if sign == "question":
        painter.drawEllipse(box)
    else:
        painter.drawPolygon(QPolygonF([QPointF(side / 2, 0), QPointF(side, side - 0.5), QPointF(0, side - 0.5)]))
        box.adjust(0, side * 0.22, 0, 0)
    font = painter.font()
    font.setBold(True)
    font.setPixelSize(max(6, round(side * 0.68)))
    painter.setFont(font)
    painter.drawText(box, Qt.AlignmentFlag.AlignCenter, "?" if sign == "question" else "!")
