"""The drawing beside the measurements: a body from the front and the back, with the tape where it goes."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPaintEvent, QPen, QPolygonF, QTransform
from PySide6.QtWidgets import QSizePolicy, QWidget

from sizekeeper.ui import figure_outline as outline
from sizekeeper.ui import theme
from sizekeeper.ui.figure_places import PLACES, Across, Along, Around, TapePlace, in_words

if TYPE_CHECKING:
    from sizekeeper.ui.figure_places import Side

_TAPE = 8.0
_LINE = 4.5
_ARROW = 13.0
_HIGHEST = 62
"""Steps of spacing; larger figures say no more."""
_SIDES: tuple[tuple[Side, str], ...] = (("front", "Front"), ("back", "Back"))


class FigureView(QWidget):
    """The drawn figure; `show_measure` lays the tape."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.measure = ""
        self.setAccessibleName("Where the tape goes")
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def show_measure(self, measure: str) -> None:
        """Lay the tape for a measure; an unknown one or "" shows the bare figure."""
        self.measure = measure
        place = PLACES.get(measure)
        self.setAccessibleDescription(in_words(place) if place else "")
        self.update()

    def _caption(self) -> float:
        """The height of the line below a figure."""
        return self.fontMetrics().height() * 1.3

    def _map(self, index: int) -> QTransform:
        """From figure units to this widget, for the left or the right of the two figures."""
        room = outline.frame()
        scale = min(self.width() / (2 * room.width()), max(self.height() - self._caption(), 1) / room.height())
        middle = self.width() / 2 + (index - 0.5) * room.width() * scale
        return QTransform(scale, 0, 0, scale, middle, -room.top() * scale)

    def _paint_side(self, painter: QPainter, side: Side, caption: str, to_widget: QTransform) -> None:
        place = PLACES.get(self.measure)
        shown = place if place is not None and side in place.sides else None
        painter.save()
        painter.setTransform(to_widget, combine=True)
        colours = _Colours(self)
        if isinstance(shown, Around):
            _paint_behind(painter, shown, colours)
        _paint_body(painter, side, colours)
        if shown is not None:
            _paint_tape(painter, shown, colours)
        painter.restore()
        foot = to_widget.map(QPointF(0, outline.HEIGHT + 8))
        painter.setPen(theme.muted_text(self.palette()))
        painter.setFont(theme.small_font())
        painter.drawText(QRectF(foot.x() - 100, foot.y(), 200, self._caption()), Qt.AlignmentFlag.AlignCenter, caption)

    def sizeHint(self) -> QSize:
        """Two figures side by side, large enough to see a wrist."""
        return QSize(theme.spacing(32), theme.spacing(40))

    def minimumSizeHint(self) -> QSize:
        """Still readable at this size."""
        return QSize(theme.spacing(22), theme.spacing(28))

    def heightForWidth(self, width: int) -> int:
        """As high as two figures of half the width are, up to a limit."""
        room = outline.frame()
        high = width / 2 / room.width() * room.height() + self._caption()
        return min(max(round(high), theme.spacing(28)), theme.spacing(_HIGHEST))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw both sides and the tape."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        for index, (side, caption) in enumerate(_SIDES):
            self._paint_side(painter, side, caption, self._map(index))

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size and light or dark."""
        super().changeEvent(event)
        if theme.font_changed(event) or theme.palette_changed(event):
            self.updateGeometry()
            self.update()


class _Colours:
    """The drawing's colours, from the widget's palette."""

    def __init__(self, widget: QWidget) -> None:
        palette = widget.palette()
        ground, text = palette.color(palette.ColorRole.Window), palette.color(palette.ColorRole.WindowText)
        self.fill = theme.mix(ground, text, 0.09)
        self.line = theme.mix(ground, text, 0.5)
        self.inner = theme.mix(ground, text, 0.26)
        self.tape = theme.accent(palette)
        self.ticks = ground
        self.behind = theme.mix(ground, self.tape, 0.55)


def _pen(colour: QColor, width: float) -> QPen:
    return QPen(colour, width, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap, Qt.PenJoinStyle.RoundJoin)


def _paint_body(painter: QPainter, side: Side, colours: _Colours) -> None:
    painter.setPen(_pen(colours.line, 2.2))
    painter.setBrush(colours.fill)
    painter.drawPath(outline.body())
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(_pen(colours.inner, 1.8))
    painter.drawPath(outline.inner_lines(back=side == "back"))


def _half(place: Around, *, near: bool) -> QPainterPath:
    """The near or the far half of the tape around the body."""
    box = QRectF(-place.half_width, -place.half_height, 2 * place.half_width, 2 * place.half_height)
    path = QPainterPath()
    path.arcMoveTo(box, 180 if near else 0)
    path.arcTo(box, 180 if near else 0, 180)
    return QTransform().translate(*place.middle).rotate(place.tilt).map(path)


def _paint_behind(painter: QPainter, place: Around, colours: _Colours) -> None:
    """The far half of a girth, which the body hides but for its ends."""
    painter.setPen(_pen(colours.behind, _LINE))
    painter.drawPath(_half(place, near=False))


def _paint_tape(painter: QPainter, place: TapePlace, colours: _Colours) -> None:
    match place:
        case Around():
            _paint_around(painter, place, colours)
        case Along():
            _paint_along(painter, place, colours)
        case Across():
            _paint_across(painter, place, colours)


def _paint_around(painter: QPainter, place: Around, colours: _Colours) -> None:
    far = _pen(colours.behind, 2.0)
    far.setDashPattern([2.5, 2.5])
    painter.setPen(far)
    painter.drawPath(_half(place, near=False))
    near = _half(place, near=True)
    painter.setPen(_pen(colours.tape, _TAPE))
    painter.drawPath(near)
    ticks = QPen(colours.ticks, _TAPE * 0.45, Qt.PenStyle.SolidLine, Qt.PenCapStyle.FlatCap)
    ticks.setDashPattern([0.35, 1.6])
    painter.setPen(ticks)
    painter.drawPath(near)


def _paint_along(painter: QPainter, place: Along, colours: _Colours) -> None:
    guide = _pen(colours.tape, 1.8)
    guide.setDashPattern([3, 3])
    painter.setPen(guide)
    for start, end in place.guides:
        painter.drawLine(QPointF(*start), QPointF(*end))
    painter.setPen(_pen(colours.tape, _LINE))
    painter.drawPath(outline.curve(place.line))
    ends = [(place.line[1], place.line[0])]
    if place.arrows == "both":
        ends.append((place.line[-2], place.line[-1]))
    painter.setBrush(colours.tape)
    painter.setPen(_pen(colours.tape, 1.0))
    for before, tip in ends:
        painter.drawPolygon(_arrow(QPointF(*before), QPointF(*tip)))
    painter.setBrush(Qt.BrushStyle.NoBrush)


def _arrow(before: QPointF, tip: QPointF) -> QPolygonF:
    """An arrow's head at the tip, seen coming from the point before."""
    angle = math.atan2(tip.y() - before.y(), tip.x() - before.x())
    barbs = [tip + QPointF(math.cos(angle + turn), math.sin(angle + turn)) * _ARROW for turn in (2.75, -2.75)]
    return QPolygonF([tip, *barbs])


def _paint_across(painter: QPainter, place: Across, colours: _Colours) -> None:
    start, end = QPointF(*place.start), QPointF(*place.end)
    painter.setPen(_pen(colours.tape, _LINE))
    painter.drawLine(start, end)
    for spot in (start, end):
        painter.drawLine(spot + QPointF(0, -9), spot + QPointF(0, 9))
