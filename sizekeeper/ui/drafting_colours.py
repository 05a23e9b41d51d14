"""How the two sides of a plot are drawn: a colour, a line and a marker each, told apart by any one of the three.

A dark plum and a light ochre: their lightness differs, so every kind of colour blindness, and a black and white copy,
tells them apart. On a dark ground the plum is the light one.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QPolygonF

SideName = Literal["left", "right"]
_WIDTH = 2.0
_REACH = 4.0
"""Half the width of a marker, in pixels at normal scale."""


@dataclass(frozen=True, slots=True)
class LineLook:
    """How one side is drawn."""

    colour: str
    style: Qt.PenStyle
    marker: Literal["disc", "diamond"]
    words: str


_LIGHT = {
    "left": LineLook("#5f2352", Qt.PenStyle.SolidLine, "disc", "solid line with discs"),
    "right": LineLook("#a9770f", Qt.PenStyle.DashLine, "diamond", "dashed line with diamonds"),
}
_DARK = {
    "left": LineLook("#efcbe6", Qt.PenStyle.SolidLine, "disc", "solid line with discs"),
    "right": LineLook("#b98a2b", Qt.PenStyle.DashLine, "diamond", "dashed line with diamonds"),
}


def line_look(side: SideName, *, dark: bool) -> LineLook:
    """How a side is drawn on a light or a dark ground."""
    return (_DARK if dark else _LIGHT)[side]


def line_pen(look: LineLook) -> QPen:
    """The pen of a side's line."""
    return QPen(QColor(look.colour), _WIDTH, look.style, Qt.PenCapStyle.FlatCap, Qt.PenJoinStyle.RoundJoin)


def draw_marker(painter: QPainter, at: QPointF, look: LineLook, ground: QColor) -> None:
    """A marker: a full disc, or a hollow diamond."""
    colour = QColor(look.colour)
    painter.setPen(QPen(colour, 1.5))
    if look.marker == "disc":
        painter.setBrush(colour)
        painter.drawEllipse(at, _REACH - 0.5, _REACH - 0.5)
        return
    painter.setBrush(ground)
    reach = _REACH + 1
    corners = ((0.0, -reach), (reach, 0.0), (0.0, reach), (-reach, 0.0))
    painter.drawPolygon(QPolygonF([at + QPointF(*corner) for corner in corners]))


def draw_sample(painter: QPainter, rect: QRectF, look: LineLook, ground: QColor) -> None:
    """A short piece of a side's line with its marker, for a legend."""
    middle = rect.center().y()
    painter.setPen(line_pen(look))
    painter.drawLine(QPointF(rect.left(), middle), QPointF(rect.right(), middle))
    draw_marker(painter, rect.center(), look, ground)
