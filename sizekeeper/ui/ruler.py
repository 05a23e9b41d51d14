"""A ruler along the size range that slides to any position, listed or not."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent, QPalette, QPen, QPolygonF
from PySide6.QtWidgets import QAbstractSlider, QSizePolicy, QWidget

from sizekeeper.core.places import place_words
from sizekeeper.ui import theme

if TYPE_CHECKING:
    from collections.abc import Sequence

    from PySide6.QtGui import QFocusEvent, QKeyEvent, QMouseEvent

PARTS = 100
"""The ruler's steps from one listed size to the next."""
STEP = 5
"""An arrow key moves by a twentieth of the way."""
_SNAP = 4
"""Pixels within which the mouse falls on a listed size or a drawable line."""


class Ruler(QAbstractSlider):
    """Slides with the mouse, arrows (a twentieth of a size), Page Up and Down (a size), Home and End (the ends).

    `value()` counts in hundredths of a size from the first listed one; it may go one size past either end.
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        """Start without sizes."""
        super().__init__(parent)
        self._labels: tuple[str, ...] = ()
        self._lines: tuple[float, ...] = ()
        self._chosen: float | None = None
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setSingleStep(STEP)
        self.setPageStep(PARTS)
        self.setAccessibleName("Place on the size range")
        self.valueChanged.connect(self._on_value)

    @property
    def position(self) -> float:
        """The place on the size range: 2.5 is halfway from the third listed size to the fourth."""
        return self.value() / PARTS

    def go(self, position: float) -> None:
        """Slide to a place."""
        self.setValue(round(position * PARTS))

    def set_sizes(self, labels: Sequence[str], lines: Sequence[float], chosen: float | None) -> None:
        """Show a size range, the lines that can be drawn between sizes, and the place chosen."""
        shown = (tuple(labels), tuple(lines), chosen)
        if shown == (self._labels, self._lines, self._chosen):
            return
        self._labels, self._lines, self._chosen = shown
        self.setRange(-PARTS, len(labels) * PARTS)
        self._describe()
        self.update()

    def _on_value(self) -> None:
        self._describe()
        self.update()

    def _describe(self) -> None:
        if self._labels:
            self.setAccessibleDescription(place_words(self.position, self._labels))

    def x_of(self, position: float) -> float:
        """Where a place lies across the widget, in pixels."""
        margin = theme.spacing(2)
        share = (position + 1) / (len(self._labels) + 1)
        return margin + share * (self.width() - 2 * margin)

    def place_at(self, x: float) -> float:
        """The place under a pixel; near a listed size or a drawable line it is that."""
        margin = theme.spacing(2)
        share = (x - margin) / max(1, self.width() - 2 * margin)
        place = share * (len(self._labels) + 1) - 1
        marks = [*range(len(self._labels)), *self._lines]
        nearest = min(marks, key=lambda mark: abs(mark - place), default=place)
        near = abs(self.x_of(nearest) - x) <= _SNAP
        return float(nearest if near else min(max(place, -1.0), float(len(self._labels))))

    def _paint_tape(self, painter: QPainter, palette: QPalette, tape: QRectF) -> None:
        """The tape itself, paler past the listed sizes."""
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(theme.surface(palette))
        painter.drawRect(tape)
        inner = QRectF(self.x_of(0), tape.top(), self.x_of(len(self._labels) - 1) - self.x_of(0), tape.height())
        painter.fillRect(inner, theme.accent_wash(palette))
        painter.setPen(QPen(theme.rule_colour(palette), 1))
        painter.drawLine(tape.topLeft(), tape.topRight())
        painter.drawLine(tape.bottomLeft(), tape.bottomRight())

    def _paint_marks(self, painter: QPainter, palette: QPalette, tape: QRectF) -> None:
        """A long mark and a label for each size that has room, a short mark for each drawable line."""
        painter.setPen(QPen(theme.muted_text(palette), 1))
        for line in self._lines:
            x = self.x_of(line)
            painter.drawLine(QPointF(x, tape.top()), QPointF(x, tape.top() + tape.height() * 0.3))
        painter.setFont(theme.small_font())
        metrics, last_end = QFontMetricsF(painter.font()), -1.0
        for place, label in enumerate(self._labels):
            x, width = self.x_of(place), metrics.horizontalAdvance(label)
            painter.setPen(QPen(palette.color(QPalette.ColorRole.WindowText), 1))
            painter.drawLine(QPointF(x, tape.top()), QPointF(x, tape.top() + tape.height() * 0.55))
            if x - width / 2 > last_end:
                painter.drawText(QPointF(x - width / 2, tape.top() - metrics.descent() - 2), label)
                last_end = x + width / 2 + metrics.averageCharWidth()

    def _paint_chosen(self, painter: QPainter, palette: QPalette, tape: QRectF) -> None:
        """A small triangle under what is to be cut."""
        if self._chosen is None:
            return
        x, size = self.x_of(self._chosen), theme.spacing(0.75)
        below = tape.bottom() + 2
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(theme.accent(palette))
        corners = [QPointF(x, below), QPointF(x - size, below + 1.3 * size), QPointF(x + size, below + 1.3 * size)]
        painter.drawPolygon(QPolygonF(corners))

    def _paint_slide(self, painter: QPainter, palette: QPalette, tape: QRectF) -> None:
        """The slide: a line over the tape in a small frame, thicker with the focus."""
        x, half = self.x_of(self.position), theme.spacing(0.75)
        frame = QRectF(x - half, tape.top() - 3, 2 * half, tape.height() + 6)
        painter.setPen(QPen(theme.accent(palette), 2.5 if self.hasFocus() else 1.5))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRoundedRect(frame, 3, 3)
        painter.drawLine(QPointF(x, frame.top()), QPointF(x, frame.bottom()))

    # Qt's own names from here on.

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint tape, marks, what is chosen and the slide."""
        if not self._labels:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        top = QFontMetricsF(theme.small_font()).height() + 4
        margin = theme.spacing(1)
        tape = QRectF(margin, top, self.width() - 2 * margin, theme.spacing(3))
        palette = self.palette()
        self._paint_tape(painter, palette, tape)
        self._paint_marks(painter, palette, tape)
        self._paint_chosen(painter, palette, tape)
        self._paint_slide(painter, palette, tape)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Slide to the mouse."""
        if event.button() == Qt.MouseButton.LeftButton:
            self.setSliderDown(True)
            self.go(self.place_at(event.position().x()))

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Follow the mouse while it is held."""
        if self.isSliderDown():
            self.go(self.place_at(event.position().x()))

    def mouseReleaseEvent(self, _event: QMouseEvent) -> None:
        """Let go."""
        self.setSliderDown(False)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Home and End are the first and the last listed size; the other keys are the slider's own."""
        if event.key() == Qt.Key.Key_Home:
            self.go(0)
        elif event.key() == Qt.Key.Key_End:
            self.go(len(self._labels) - 1)
        elif event.key() == Qt.Key.Key_PageUp:
            self.triggerAction(QAbstractSlider.SliderAction.SliderPageStepAdd)
        elif event.key() == Qt.Key.Key_PageDown:
            self.triggerAction(QAbstractSlider.SliderAction.SliderPageStepSub)
        else:
            super().keyPressEvent(event)

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if theme.font_changed(event):
            self.updateGeometry()

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show the focus."""
        super().focusInEvent(event)
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Show that the focus is gone."""
        super().focusOutEvent(event)
        self.update()

    def sizeHint(self) -> QSize:
        """Labels, tape and the mark beneath."""
        return QSize(theme.spacing(40), round(QFontMetricsF(theme.small_font()).height()) + theme.spacing(5))

    def minimumSizeHint(self) -> QSize:
        """Narrow is enough: labels without room are left out."""
        return QSize(theme.spacing(16), self.sizeHint().height())
