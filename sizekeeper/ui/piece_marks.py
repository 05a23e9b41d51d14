"""The marks of a drawn piece: outline, fold, levels, darts, gathers, the line, lengths and changes."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QPainter, QPainterPath, QPalette, QPen, QPolygonF, QTransform

from sizekeeper.core.lengths import line_levels
from sizekeeper.core.piece import CHAINS, Level
from sizekeeper.ui import theme

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sizekeeper.core.piece import Piece
    from sizekeeper.ui.piece_outline import Outline


@dataclass(frozen=True)
class Inks:
    """The drawing's colours, from a palette."""

    fill: QColor
    line: QColor
    thin: QColor
    muted: QColor
    words: QColor
    change: QColor
    wash: QColor

    @classmethod
    def of(cls, palette: QPalette) -> Inks:
        """The colours on the palette's ground."""
        ground, text = palette.color(QPalette.ColorRole.Window), palette.color(QPalette.ColorRole.WindowText)
        accent = theme.accent(palette)
        return cls(
            fill=theme.surface(palette),
            line=theme.mix(ground, text, 0.75),
            thin=theme.mix(ground, text, 0.35),
            muted=theme.muted_text(palette),
            words=text,
            change=accent,
            wash=theme.mix(theme.surface(palette), accent, 0.25),
        )


@dataclass(frozen=True, slots=True)
class Label:
    """Words in the margin: at which y and from which edge of the piece a leader runs to them."""

    y: float
    edge: float
    lines: tuple[str, ...]
    kind: Literal["level", "measured", "change"]


@dataclass(frozen=True, slots=True)
class PlacedLabel:
    """A label on the widget: where its leader starts, and its box's top."""

    label: Label
    start: QPointF
    top: float
    height: float


def place_labels(
    labels: Sequence[Label], to_widget: QTransform, line: float, room: QRectF, *, lift: float = 0.0
) -> list[PlacedLabel]:
    """Put labels beside their heights, none over another, all within the room; `lift` raises them, in lines."""
    placed: list[PlacedLabel] = []
    below = room.top()
    for label in labels:
        start = to_widget.map(QPointF(label.edge, label.y))
        height = line * len(label.lines)
        top = max(start.y() - height / 2 - lift * line, below)
        placed.append(PlacedLabel(label, start, top, height))
        below = top + height
    above = room.bottom()
    for number in range(len(placed) - 1, -1, -1):
        one = placed[number]
        top = min(one.top, above - one.height)
        placed[number] = PlacedLabel(one.label, one.start, top, one.height)
        above = top
    return placed


class PiecePainter:
    """Draws the marks of one piece with a painter; `to_widget` takes the piece's centimetres to the widget."""

    def __init__(self, painter: QPainter, piece: Piece, drawn: Outline, to_widget: QTransform, inks: Inks) -> None:
        self._painter = painter
        self._piece = piece
        self._drawn = drawn
        self._to = to_widget
        self._inks = inks
        self._shape = to_widget.map(drawn.path)
        self._step = theme.spacing(0.5)

    def _pen(self, colour: QColor, width: float = 1.0, style: Qt.PenStyle = Qt.PenStyle.SolidLine) -> None:
        pen = QPen(colour, width, style, Qt.PenCapStyle.RoundCap, Qt.PenJoinStyle.RoundJoin)
        self._painter.setPen(pen)

    def _at(self, x: float, y: float) -> QPointF:
        return self._to.map(QPointF(x, y))

    def _across(self, y: float) -> tuple[QPointF, QPointF]:
        """The ends of a line across the piece at a height."""
        least = (self._drawn.bottom - self._drawn.top) * 0.005 + 0.06
        inside = min(max(y, self._drawn.top + least), self._drawn.bottom - least)
        left, right = self._drawn.edges(inside)
        return self._at(left, y), self._at(right, y)

    def outline(self) -> None:
        """The piece itself."""
        self._painter.setBrush(self._inks.fill)
        self._pen(self._inks.line, 1.6)
        self._painter.drawPath(self._shape)
        self._painter.setBrush(Qt.BrushStyle.NoBrush)

    def levels(self) -> None:
        """A thin line at each level that lies inside the piece, waves where it is gathered."""
        for level, y in self._drawn.heights.items():
            across = self._piece.width(level)
            start, end = self._across(y)
            if across is not None and across.gathered:
                self._waves(start, end)
            elif self._drawn.top + 0.5 < y < self._drawn.bottom - 0.5:
                self._pen(self._inks.thin, 1.0, Qt.PenStyle.DotLine)
                self._painter.drawLine(start, end)

    def _waves(self, start: QPointF, end: QPointF) -> None:
        """Gathering stitches: a wavy line."""
        length = end.x() - start.x()
        count = max(3, round(length / (2.2 * self._step)))
        wave = QPainterPath(start)
        for number in range(count):
            x = start.x() + length * number / count
            step, rise = length / count, self._step * 1.5
            wave.cubicTo(QPointF(x + step / 3, start.y() - rise), QPointF(x + 2 * step / 3, start.y() + rise),
                         QPointF(x + step, start.y()))  # fmt: skip
        self._pen(self._inks.line, 1.2)
        self._painter.drawPath(wave)

    def inner_marks(self) -> None:
        """Darts, pleats, the overlap past the centre, and the lengthen or shorten line."""
        self._painter.save()
        self._painter.setClipPath(self._shape)
        if self._piece.dart and "bust" in self._drawn.spans and self._drawn.shape == "bodice":
            self._bust_dart()
        for across in self._piece.across:
            if across.level in self._drawn.spans and across.darts is not None:
                self._dart(across.level, across.darts.cm)
            if across.level in self._drawn.spans and across.pleats is not None:
                self._pleats(across.level)
        overlap = max((one.overlap.cm for one in self._piece.across if one.overlap is not None), default=0.0)
        if overlap and not self._drawn.whole:
            left = min(span[0] for span in self._drawn.spans.values())
            self._pen(self._inks.thin, 1.2, Qt.PenStyle.DashDotLine)
            x = max(left, 0.0) + overlap
            self._painter.drawLine(self._at(x, self._drawn.top), self._at(x, self._drawn.bottom))
        if self._piece.line:
            self._printed_line()
        self._painter.restore()

    def _bust_dart(self) -> None:
        y = self._drawn.heights["bust"]
        right = self._drawn.spans["bust"][1]
        reach = (self._drawn.bottom - y) * 0.2
        apex = self._at(right * 0.45, y)
        edge = right * 1.05
        self._pen(self._inks.line, 1.2)
        for off in (0.6, 1.3):
            self._painter.drawLine(self._at(edge, y + reach * off), apex)

    def _dart(self, level: Level, taken: float) -> None:
        """A wedge at an end of the piece, a diamond inside it."""
        y = self._drawn.heights[level]
        left, right = self._drawn.spans[level]
        middle, half = left + (right - left) * 0.5, max(taken / 2, (right - left) * 0.025)
        long = min(12.0, (self._drawn.bottom - self._drawn.top) * 0.3)
        ends = [y - long, y + long]
        if y - self._drawn.top < 1:
            ends = [y + long]
        elif self._drawn.bottom - y < 1:
            ends = [y - long]
        self._pen(self._inks.line, 1.2)
        for end in ends:
            for side in (-half, half):
                self._painter.drawLine(self._at(middle + side, y), self._at(middle, end))

    def _pleats(self, level: Level) -> None:
        """Two folds with a slant between them, from the level down."""
        y = self._drawn.heights[level]
        left, right = self._drawn.spans[level]
        down = min(8.0, (self._drawn.bottom - self._drawn.top) * 0.25)
        down = -down if self._drawn.bottom - y < 1 else down
        self._pen(self._inks.line, 1.2)
        for share in (0.3, 0.38):
            x = left + (right - left) * share
            self._painter.drawLine(self._at(x, y), self._at(x, y + down))
        self._painter.drawLine(
            self._at(left + (right - left) * 0.38, y), self._at(left + (right - left) * 0.3, y + down / 2)
        )

    def _printed_line(self) -> None:
        """The lengthen or shorten line as it is printed: double, across the piece."""
        found = next((lv for chain in CHAINS if (lv := line_levels(self._piece, chain)) and len(lv) > 1), ())
        y = self._drawn.between(found)
        start, end = self._across(y)
        self._pen(self._inks.thin, 1.2)
        for off in (-1.5, 1.5):
            self._painter.drawLine(start + QPointF(0, off), end + QPointF(0, off))

    def fold(self, line: float) -> None:
        """The fold: a heavy broken edge, and the word beside it."""
        if not self._piece.on_fold:
            return
        frame = self._shape.boundingRect()
        left = self._at(0, 0).x() if self._drawn.shape in ("bodice", "skirt") else frame.left()
        tops = [p.y() for p in (self._shape.pointAtPercent(t / 200) for t in range(201)) if abs(p.x() - left) < 1]
        top, bottom = (min(tops), max(tops)) if tops else (frame.top(), frame.bottom())
        self._pen(self._inks.line, 3.0, Qt.PenStyle.DashLine)
        self._painter.drawLine(QPointF(left, top), QPointF(left, bottom))
        self._upright(QRectF(left - line - self._step * 0.6, top, line, bottom - top), "fold", self._inks.muted)

    def along(self, top: float, bottom: float, text: str, line: float) -> None:
        """A length along the left of the piece: a line with ends, and the figure beside it."""
        frame = self._shape.boundingRect()
        y0, y1 = self._at(0, top).y(), self._at(0, bottom).y()
        x = frame.left() - self._step - (line + self._step * 0.4 if self._piece.on_fold else 0)
        self._pen(self._inks.thin, 1.0)
        self._painter.drawLines([QLineF(x, y0, x, y1)] + [QLineF(x - 3, y, x + 3, y) for y in (y0, y1)])
        self._upright(QRectF(x - line - 2, y0, line, y1 - y0), text, self._inks.words)

    def _upright(self, box: QRectF, text: str, colour: QColor) -> None:
        """Words that run upward, in the middle of a box; they may be longer than it."""
        painter = self._painter
        painter.save()
        long = painter.fontMetrics().horizontalAdvance(text) + 4.0
        limit = painter.viewport().height() - box.width() * 1.5
        middle = min(max(box.center().y(), long / 2), max(limit - long / 2, long / 2))
        painter.translate(box.center().x(), middle)
        painter.rotate(-90)
        painter.setPen(colour)
        painter.drawText(QRectF(-long / 2, -box.width() / 2, long, box.width()),
                         int(Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextDontClip), text)  # fmt: skip
        painter.restore()

    def length_change(self, y: float, *, longer: bool) -> None:
        """Where length goes in or is folded out: a band with arrows that part or meet."""
        start, end = self._across(y)
        half = self._step * 1.1
        band = QRectF(start.x() - self._step, start.y() - half, end.x() - start.x() + 2 * self._step, 2 * half)
        self._painter.save()
        self._painter.setClipPath(self._shape)
        self._painter.fillRect(band, self._inks.wash)
        self._painter.restore()
        self._pen(self._inks.change, 1.6)
        self._painter.drawLines(
            [QLineF(band.topLeft(), band.topRight()), QLineF(band.bottomLeft(), band.bottomRight())]
        )
        reach = self._step * 2.6
        for share in (0.25, 0.75):
            x = band.left() + band.width() * share
            for way in (-1, 1):
                near, far = band.center().y() + way * half, band.center().y() + way * (half + reach)
                self._arrow(QPointF(x, near if longer else far), QPointF(x, far if longer else near))

    def width_change(self, changed: Outline, levels: tuple[Level, ...]) -> None:
        """The edge as it will run, broken, and an arrow to it at each level."""
        self._pen(self._inks.change, 1.6, Qt.PenStyle.DashLine)
        self._painter.drawPath(self._to.map(changed.path))
        for level in levels:
            if level not in self._drawn.spans or level not in changed.spans:
                continue
            y = self._drawn.heights[level]
            before, after = self._drawn.spans[level][1], changed.spans[level][1]
            tip = self._at(after, y)
            away = QPointF(self._step * 2.6 * (1 if after > before else -1), 0)
            self._pen(self._inks.change, 1.6)
            self._arrow(tip - away, tip)

    def _arrow(self, start: QPointF, tip: QPointF) -> None:
        self._pen(self._inks.change, 1.6)
        self._painter.drawLine(start, tip)
        angle = math.atan2(tip.y() - start.y(), tip.x() - start.x())
        barbs = [tip + QPointF(math.cos(angle + t), math.sin(angle + t)) * self._step * 1.4 for t in (2.7, -2.7)]
        self._painter.setBrush(self._inks.change)
        self._painter.drawPolygon(QPolygonF([tip, *barbs]))
        self._painter.setBrush(Qt.BrushStyle.NoBrush)

    def labels(self, placed: Sequence[PlacedLabel]) -> None:
        """The words in the right margin, each with a leader to its height."""
        right = self._shape.boundingRect().right() + self._step * 2.5
        font = QFont(self._painter.font())
        for one in placed:
            change = one.label.kind == "change"
            middle = one.top + one.height / 2
            self._pen(self._inks.change if change else self._inks.thin, 1.0)
            self._painter.drawLine(one.start, QPointF(right - self._step * 0.6, middle))
            bold = QFont(font)
            bold.setBold(change)
            self._painter.setFont(bold)
            self._painter.setPen(self._ink_of(one.label))
            room = QRectF(right, one.top, self._painter.viewport().width() - right, one.height)
            words = "\n".join(
                self._painter.fontMetrics().elidedText(text, Qt.TextElideMode.ElideRight, int(room.width()))
                for text in one.label.lines
            )
            self._painter.drawText(room, int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter), words)
        self._painter.setFont(font)

    def labels_inside(self, placed: Sequence[PlacedLabel]) -> None:
        """The words on the piece itself, in the middle of its width there."""
        for one in placed:
            start, end = self._across(one.label.y)
            box = QRectF(start.x(), one.top, end.x() - start.x(), one.height)
            self._painter.setPen(self._ink_of(one.label))
            self._painter.drawText(box, int(Qt.AlignmentFlag.AlignCenter), "\n".join(one.label.lines))

    def _ink_of(self, label: Label) -> QColor:
        inks = {"change": self._inks.change, "measured": self._inks.words, "level": self._inks.muted}
        return inks[label.kind]
