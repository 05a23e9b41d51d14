"""The four bands as they are painted: a colour and a cloth-like fill each, beside which the word always stands.

The colours are those of `core/band_colours.py`; the fills tell the bands apart without colour.
"""

from __future__ import annotations

import functools
from typing import TYPE_CHECKING

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QPainter, QPen, QPixmap

from sizekeeper.core.band_colours import look, looks

if TYPE_CHECKING:
    from collections.abc import Callable

    from sizekeeper.core.preference import Band

__all__ = ["TILE", "cloth", "look", "looks", "paint_swatch"]

TILE = 12
"""The side of one repeat of a fill, in pixels at normal scale: fine enough for a small swatch."""


def cloth(band: Band, *, dark: bool, ratio: float = 1.0) -> QBrush:
    """The ground of a band with its fill drawn on it, crisp at a screen's pixel ratio."""
    return QBrush(_tile(band, dark, ratio))


@functools.lru_cache(maxsize=32)
def _tile(band: Band, dark: bool, ratio: float) -> QPixmap:  # noqa: FBT001 - a cache key
    shown = look(band, dark=dark)
    tile = QPixmap(round(TILE * ratio), round(TILE * ratio))
    tile.setDevicePixelRatio(ratio)
    tile.fill(QColor(shown.ground))
    painter = QPainter(tile)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(QPen(QColor(shown.thread), 1.0, Qt.PenStyle.SolidLine, Qt.PenCapStyle.FlatCap))
    _FILLS[band](painter)
    painter.end()
    return tile


def _lattice(painter: QPainter) -> None:
    """Tight: lines both ways, close together."""
    for start in range(-TILE, TILE + 1, TILE // 2):
        painter.drawLine(QLineF(start - 1, -1, start + TILE + 1, TILE + 1))
        painter.drawLine(QLineF(start - 1, TILE + 1, start + TILE + 1, -1))


def _twill(painter: QPainter) -> None:
    """Close: slanting lines one way."""
    for start in range(-TILE, TILE + 1, TILE // 2):
        painter.drawLine(QLineF(start - 1, TILE + 1, start + TILE + 1, -1))


def _running_stitch(painter: QPainter) -> None:
    """Easy: short stitches in rows, each row set off by half a stitch."""
    third, half = TILE / 3, TILE / 2
    painter.drawLine(QLineF(1, third / 2 + 0.5, 1 + half, third / 2 + 0.5))
    for start in (1 - half, 1 + half):
        painter.drawLine(QLineF(start, half + third / 2 + 0.5, start + half - 1, half + third / 2 + 0.5))


def _dots(painter: QPainter) -> None:
    """Loose: single dots, far apart."""
    painter.setBrush(painter.pen().color())
    painter.setPen(Qt.PenStyle.NoPen)
    painter.drawEllipse(QPointF(TILE / 2, TILE / 2), 1.0, 1.0)


_FILLS: dict[Band, Callable[[QPainter], None]] = {
    "tight": _lattice,
    "close": _twill,
    "easy": _running_stitch,
    "loose": _dots,
}


def paint_swatch(painter: QPainter, rect: QRectF, band: Band, *, dark: bool) -> None:
    """A small sample of a band's cloth with a fine edge, for a legend or a list."""
    painter.save()
    device = painter.device()
    painter.setBrushOrigin(rect.topLeft())
    painter.setPen(QPen(QColor(look(band, dark=dark).thread), 1))
    painter.setBrush(cloth(band, dark=dark, ratio=device.devicePixelRatio()))
    painter.drawRect(rect.adjusted(0.5, 0.5, -0.5, -0.5))
    painter.restore()
