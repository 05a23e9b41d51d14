"""The side seam, drawn: the printed lines, and the traced one between them, with the distance at each level."""

from __future__ import annotations

import itertools
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPainterPath, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from sizekeeper.ui import theme

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sizekeeper.core.seam_line import SeamPoint
    from sizekeeper.core.wording import Wording

_SHAPE = {"bust": 0.55, "waist": 0.0, "high_hip": 0.55, "hip": 0.9, "thigh": 0.85}
"""How far out a seam runs at each level beside the waist, as a share of the drawing's swing: only to look like one."""
_SWING = 0.22
_SPREAD = 0.36
"""The share of the width over which the printed lines are spread."""


def point_words(point: SeamPoint, words: Wording) -> str:
    """Where the traced line runs at a level: `on 40`, `5 mm outside 38`."""
    if point.lower == point.upper:
        return f"on {point.lower}"
    way = "outside" if point.from_lower >= 0 else "inside"
    return f"{words.drawn(abs(point.from_lower))} {way} {point.lower}"


class SeamDrawing(QWidget):
    """One edge of the side seam from the top down; outward is to the right. Not to scale across, and said so."""

    def __init__(self, parent: QWidget | None = None) -> None:
        """Nothing to draw."""
        super().__init__(parent)
        self.points: tuple[SeamPoint, ...] = ()
        self._words: Wording | None = None
        self.setAccessibleName("The traced line at the side seam")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)

    def show_points(self, points: Sequence[SeamPoint], words: Wording) -> None:
        """Draw the lines through these levels."""
        self.points, self._words = tuple(points), words
        said = [f"{words.name(point.level)}: {point_words(point, words)}" for point in points]
        self.setAccessibleDescription("; ".join(said))
        self.update()

    def _x(self, level: str, outward: float) -> float:
        """Where a distance from the smallest printed line lies across the drawing."""
        widest = max((max(point.printed.values()) for point in self.points), default=0.0) or 1.0
        left = self._left()
        room = self.width() - left - self._right()
        return left + room * (_SHAPE.get(level, 0.5) * _SWING + outward / widest * _SPREAD + 0.08)

    def _left(self) -> float:
        return theme.spacing(10)

    def _right(self) -> float:
        return theme.spacing(16)

    def _y(self, number: int) -> float:
        top, bottom = theme.spacing(3.5), self.height() - theme.spacing(2.5)
        return top + (bottom - top) * (number / max(1, len(self.points) - 1))

    def _path(self, outward: Sequence[float]) -> QPainterPath:
        """A smooth line through a distance at each level, upright where it starts and ends."""
        places = [
            QPointF(self._x(p.level, o), self._y(i)) for i, (p, o) in enumerate(zip(self.points, outward, strict=True))
        ]
        path = QPainterPath(places[0])
        for here, there in itertools.pairwise(places):
            half = (there.y() - here.y()) / 2
            path.cubicTo(QPointF(here.x(), here.y() + half), QPointF(there.x(), there.y() - half), there)
        return path

    def _paint_printed(self, painter: QPainter) -> None:
        palette = self.palette()
        labels = [label for label in self.points[0].printed if all(label in p.printed for p in self.points)]
        painter.setFont(theme.small_font())
        wide = 0.0
        for label in labels:
            painter.setPen(QPen(theme.muted_text(palette), 1, Qt.PenStyle.DashLine))
            painter.drawPath(self._path([p.printed[label] for p in self.points]))
            x = self._x(self.points[0].level, self.points[0].printed[label])
            words = painter.fontMetrics().horizontalAdvance(label)
            if x - words / 2 > wide:
                box = QRectF(x - words / 2 - 2, 0, words + 4, theme.spacing(3))
                painter.drawText(box, Qt.AlignmentFlag.AlignCenter, label)
                wide = x + words / 2 + 4

    def _paint_levels(self, painter: QPainter) -> None:
        assert self._words is not None  # noqa: S101 - there are points
        palette, high = self.palette(), painter.fontMetrics().height()
        for number, point in enumerate(self.points):
            y = self._y(number)
            traced = self._x(point.level, point.traced)
            painter.setPen(QPen(theme.rule_colour(palette), 1))
            painter.drawLine(QPointF(self._left(), y), QPointF(self.width() - self._right(), y))
            painter.setPen(theme.muted_text(palette))
            name = QRectF(0, y - high, self._left() - theme.spacing(), 2 * high)
            line = Qt.AlignmentFlag.AlignVCenter
            painter.drawText(name, Qt.AlignmentFlag.AlignRight | line, self._words.name(point.level))
            painter.setPen(theme.accent(palette))
            box = QRectF(self.width() - self._right() + theme.spacing(), y - high, self._right(), 2 * high)
            painter.drawText(box, Qt.AlignmentFlag.AlignLeft | line, point_words(point, self._words))
            painter.setBrush(theme.accent(palette))
            painter.drawEllipse(QPointF(traced, y), theme.spacing(0.35), theme.spacing(0.35))
            painter.setBrush(Qt.BrushStyle.NoBrush)

    # Qt's own names from here on.

    def sizeHint(self) -> QSize:
        """Room for five levels."""
        return QSize(theme.spacing(44), theme.spacing(26))

    def minimumSizeHint(self) -> QSize:
        """Still readable at this size."""
        return QSize(theme.spacing(36), theme.spacing(18))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the lines."""
        if not self.points:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setFont(theme.small_font())
        self._paint_printed(painter)
        if len(self.points) > 1:
            painter.setPen(QPen(theme.accent(self.palette()), max(2.0, theme.spacing(0.3))))
            painter.drawPath(self._path([point.traced for point in self.points]))
        self._paint_levels(painter)

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size and light or dark."""
        super().changeEvent(event)
        if theme.font_changed(event) or theme.palette_changed(event):
            self.updateGeometry()
            self.update()
