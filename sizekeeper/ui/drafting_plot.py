"""One small plot: a region or a proportion of both sides, from size to size. Mouse and arrow keys read the figures."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from sizekeeper.core.drafting_words import across_words, point_at, reading, subject_words, summary
from sizekeeper.core.notation import show
from sizekeeper.ui import theme
from sizekeeper.ui.drafting_colours import SideName, draw_marker, line_look, line_pen
from sizekeeper.ui.drafting_scale import Scale, Tick, round_ticks, span_across, span_up

if TYPE_CHECKING:
    from PySide6.QtGui import QFocusEvent

    from sizekeeper.core.drafting import Curve, Drafting, Panel
    from sizekeeper.core.wording import Wording

_MOST_UP = 5
_HINT = "Left and right read the figures."
_LEFT, _RIGHT = Qt.AlignmentFlag.AlignLeft, Qt.AlignmentFlag.AlignRight
_MIDDLE = Qt.AlignmentFlag.AlignVCenter


class DraftPlot(QWidget):
    """A plot with its title, axes, two lines, and the figures at the place that is read."""

    def __init__(self, compared: Drafting, panel: Panel, words: Wording, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.setMaximumHeight(theme.spacing(_HIGHEST))
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self._read: int | None = None
        self.show_panel(compared, panel, words)

    def show_panel(self, compared: Drafting, panel: Panel, words: Wording) -> None:
        """Show another panel; nothing is read any more where the places are others."""
        self._compared, self._panel, self._words = compared, panel, words
        places = sorted({point.x for curve in (panel.left, panel.right) for point in curve})
        self._places = [x for i, x in enumerate(places) if not i or x - places[i - 1] > _NEAR]
        if self._read is not None and self._read >= len(self._places):
            self._read = None
        self._across = span_across(compared, compared.of(panel.topic))
        self.setAccessibleName(summary(compared, panel, words))
        self._say()
        self.updateGeometry()
        self.update()

    @property
    def panel(self) -> Panel:
        """The panel shown."""
        return self._panel

    @property
    def said(self) -> str:
        """The figures at the place that is read; empty while none is."""
        if self._read is None:
            return ""
        return reading(self._compared, self._panel, self._places[self._read], self._words)

    def read(self, place: int | None) -> None:
        """Read the figures at a place, counted from the first size; None for none."""
        if place is not None:
            place = min(max(place, 0), len(self._places) - 1) if self._places else None
        if place != self._read:
            self._read = place
            self._say()
            self.update()

    def _say(self) -> None:
        """What a screen reader says, and the tip."""
        self.setAccessibleDescription(self.said or _HINT)
        self.setToolTip(self.said)

    # How it is painted.

    def _scale(self) -> tuple[Scale, list[Tick]]:
        """Where everything lies, and the figures at the left."""
        small = QFontMetricsF(theme.small_font())
        ticks = round_ticks(*span_up(self._panel), _MOST_UP, self._words.notation)
        left = _INSET + max(small.horizontalAdvance(tick.words) for tick in ticks) + theme.spacing(1)
        top = _INSET + 2 * self._line() + theme.spacing(0.75)
        bottom = _INSET + small.height() + theme.spacing(0.75)
        area = QRectF(self.rect()).adjusted(left, top, -theme.spacing(1), -bottom)
        return Scale(area, self._across, (ticks[0].value, ticks[-1].value)), ticks

    def _line(self) -> float:
        return QFontMetricsF(theme.heading_font(3)).height()

    def _paint_title(self, painter: QPainter) -> None:
        """What it is about, and below it what is read there or in what unit the figures are."""
        row = QRectF(_INSET, _INSET, self.width(), self._line())
        painter.setPen(self.palette().windowText().color())
        painter.setFont(theme.heading_font(3))
        painter.drawText(row, _LEFT | _MIDDLE, subject_words(self._panel.subject, self._words))
        row.translate(0, row.height())
        painter.setFont(theme.small_font())
        if self._read is None:
            painter.setPen(theme.muted_text(self.palette()))
            across = self._words.name(self._compared.axis).lower() if self._compared.axis else "size"
            painter.drawText(row, _LEFT | _MIDDLE, f"{self._words.notation.unit}, by {across}")
            return
        self._paint_reading(painter, row, self._places[self._read])

    def _paint_reading(self, painter: QPainter, row: QRectF, x: float) -> None:
        """The place that is read, and each side's figure behind a marker of its own."""
        metrics = QFontMetricsF(painter.font())
        place = self._place_words(x)
        painter.drawText(row, _LEFT | _MIDDLE, place)
        left = row.left() + metrics.horizontalAdvance(place) + theme.spacing(1.5)
        dark, ground = theme.is_dark(self.palette()), theme.paper(self.palette())
        for side, curve in self._curves():
            point = point_at(curve, x)
            if point is None:
                continue
            draw_marker(painter, QPointF(left + 5, row.center().y()), line_look(side, dark=dark), ground)
            text = show(point.cm, self._words.notation)
            painter.setPen(self.palette().windowText().color())
            painter.drawText(QRectF(left + 13, row.top(), row.width(), row.height()), _LEFT | _MIDDLE, text)
            left += 13 + metrics.horizontalAdvance(text) + theme.spacing(1.5)

    def _place_words(self, x: float) -> str:
        points = [point_at(curve, x) for _, curve in self._curves()]
        labels = "/".join(dict.fromkeys(p.label for p in points if p is not None))
        if not self._compared.axis:
            return labels
        return f"{labels} ({across_words(self._compared, x, self._words)})"

    def _curves(self) -> tuple[tuple[SideName, Curve], ...]:
        return (("left", self._panel.left), ("right", self._panel.right))

    def _paint_axes(self, painter: QPainter, scale: Scale, ticks: list[Tick]) -> None:
        area, rule = scale.area, QPen(theme.rule_colour(self.palette()), 1)
        painter.setFont(theme.small_font())
        height = QFontMetricsF(painter.font()).height()
        for tick in ticks:
            y = scale.y(tick.value)
            painter.setPen(rule)
            painter.drawLine(QPointF(area.left(), y), QPointF(area.right(), y))
            painter.setPen(theme.muted_text(self.palette()))
            room = QRectF(0, y - height / 2, area.left() - theme.spacing(0.5), height)
            painter.drawText(room, _RIGHT | _MIDDLE, tick.words)
        self._paint_places(painter, scale)
        zero = scale.y(0.0)
        if area.top() <= zero <= area.bottom():  # smaller than the body lies below this line
            painter.setPen(QPen(theme.muted_text(self.palette()), 1))
            painter.drawLine(QPointF(area.left(), zero), QPointF(area.right(), zero))

    def _paint_places(self, painter: QPainter, scale: Scale) -> None:
        """Figures or names of sizes below, as many as there is room for."""
        painter.setPen(theme.muted_text(self.palette()))
        metrics, free = QFontMetricsF(painter.font()), -1.0
        for tick in self._across_ticks():
            x, half = scale.x(tick.value), metrics.horizontalAdvance(tick.words) / 2
            if x - half < free or not scale.area.left() - half <= x <= scale.area.right() + 1:
                continue
            left = min(x - half, self.width() - 2 * half - 2)
            free = left + 2 * half + theme.spacing(1)
            room = QRectF(left - 1, scale.area.bottom() + theme.spacing(0.5), 2 * half + 2, metrics.height())
            painter.drawText(room, Qt.AlignmentFlag.AlignCenter, tick.words)

    def _across_ticks(self) -> list[Tick]:
        if self._compared.axis:
            low, high = self._across
            most = max(int(self.width() / theme.spacing(6)), 2)
            return [t for t in round_ticks(low, high, most, self._words.notation) if low <= t.value <= high]
        return [Tick(float(place), label) for place, label in enumerate(self._compared.labels)]

    def _paint_curve(self, painter: QPainter, scale: Scale, side: SideName, curve: Curve) -> None:
        look = line_look(side, dark=theme.is_dark(self.palette()))
        if any(p.high > p.low for p in curve):
            self._paint_span(painter, scale, curve, QColor(look.colour))
        line = QPolygonF([scale.at(p.x, p.cm) for p in curve])
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(line_pen(look))
        painter.drawPolyline(line)
        crowded = len(curve) > 1 and scale.area.width() / len(curve) < _CROWDED
        for place, point in enumerate(curve):
            if not crowded or place % 3 == 0:
                draw_marker(painter, scale.at(point.x, point.cm), look, theme.paper(self.palette()))

    @staticmethod
    def _paint_span(painter: QPainter, scale: Scale, curve: Curve, colour: QColor) -> None:
        """From the least to the greatest of a house's patterns."""
        around = [scale.at(p.x, p.high) for p in curve] + [scale.at(p.x, p.low) for p in reversed(curve)]
        wash = QColor(colour)
        wash.setAlphaF(0.14)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(wash)
        painter.drawPolygon(QPolygonF(around))

    def _paint_read(self, painter: QPainter, scale: Scale) -> None:
        """The line at the place that is read."""
        if self._read is not None:
            x = scale.x(self._places[self._read])
            painter.setPen(QPen(theme.accent(self.palette()), 1))
            painter.drawLine(QPointF(x, scale.area.top()), QPointF(x, scale.area.bottom()))

    # Qt's own names from here on.

    def sizeHint(self) -> QSize:
        """Wider than high."""
        return QSize(theme.spacing(42), theme.spacing(25))

    def minimumSizeHint(self) -> QSize:
        """Narrower, but as high."""
        return QSize(theme.spacing(32), theme.spacing(25))

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if theme.font_changed(event):
            self.setMaximumHeight(theme.spacing(_HIGHEST))
            self.updateGeometry()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw it."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self._paint_title(painter)
        scale, ticks = self._scale()
        self._paint_axes(painter, scale, ticks)
        self._paint_read(painter, scale)
        for side, curve in self._curves():
            self._paint_curve(painter, scale, side, curve)
        if self.hasFocus():
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.setPen(QPen(theme.accent(self.palette()), 1))
            painter.drawRect(QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -0.5))

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Read the place that lies nearest."""
        scale, _ = self._scale()
        x = event.position().x()
        near = min(range(len(self._places)), key=lambda i: abs(scale.x(self._places[i]) - x), default=None)
        self.read(near)

    def leaveEvent(self, event: QEvent) -> None:
        """The mouse went; what the keys read stays."""
        super().leaveEvent(event)
        if not self.hasFocus():
            self.read(None)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Begin to read at the first size."""
        super().focusInEvent(event)
        if self._read is None:
            self.read(0)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Read no more."""
        super().focusOutEvent(event)
        self.read(None)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Left and right, Home and End move what is read."""
        at, last = self._read or 0, len(self._places) - 1
        wanted = {
            Qt.Key.Key_Left: at - 1,
            Qt.Key.Key_Right: at + 1,
            Qt.Key.Key_Home: 0,
            Qt.Key.Key_End: last,
        }.get(Qt.Key(event.key()))
        if wanted is None:
            super().keyPressEvent(event)
        else:
            self.read(wanted)


_NEAR = 0.05
_INSET = 4
"""The space inside the frame of the focus, in pixels."""
_HIGHEST = 40
_CROWDED = 11.0
"""Pixels from point to point below which only some get a marker."""
