"""The families of outlines: bodice, skirt, trouser leg, sleeve and strip, from heights and widths at levels.

Each gives its path and where the edges lie at each level. The curves between are of our own drawing, for the picture
only.
"""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainterPath

from sizekeeper.core.piece import Level, Piece, PieceRole

if TYPE_CHECKING:
    from collections.abc import Callable

Shape = tuple[QPainterPath, dict[Level, tuple[float, float]]]

_ARMHOLE = 0.2
_STRIPS: dict[PieceRole, tuple[float, float]] = {
    "band": (24, 10), "waistband": (38, 7), "cuff": (24, 9), "collar": (22, 8), "facing": (20, 9), "placket": (5, 22),
    "pocket": (16, 18), "guide": (30, 5), "other": (24, 30), "yoke": (20, 12), "side": (14, 30),
}  # fmt: skip
"""Width and length of pieces without a shape of their own."""
_FLATTEST = 9.0
"""No piece is drawn more than this often as long as wide, or as wide as long: its marks would not be seen."""


def _side(path: QPainterPath, points: list[QPointF]) -> None:
    """A side seam: smooth through its points, and never wider or narrower than they are (Fritsch and Carlson)."""
    slopes = [(b.x() - a.x()) / max(b.y() - a.y(), 0.01) for a, b in pairwise(points)]
    if not slopes:
        return
    inner = [2 * a * b / (a + b) if a * b > 0 else 0.0 for a, b in pairwise(slopes)]
    leans = [slopes[0], *inner, slopes[-1]]
    for (start, end), (lean, last) in zip(pairwise(points), pairwise(leans), strict=True):
        reach = (end.y() - start.y()) / 3
        path.cubicTo(start + QPointF(lean * reach, reach), end - QPointF(last * reach, reach), end)


def _bodice(piece: Piece, heights: dict[Level, float], widths: dict[Level, float]) -> Shape:
    below = [level for level in heights if level != "neck"]
    bottom = max(heights.values(), default=0.0)
    if not below or bottom <= 0:
        return _short(piece, heights, widths)
    path = QPainterPath()
    spans: dict[Level, tuple[float, float]] = {level: (0.0, widths[level]) for level in heights}
    first = heights[below[0]]
    if "neck" in heights:
        wide = widths[below[0]]
        deep = first * (0.34 if piece.role == "front" else 0.1)
        neck, shoulder = wide * 0.32, wide * 0.78
        path.moveTo(0, deep)
        path.cubicTo(neck * 0.6, deep, neck, deep * 0.6, neck, 0)
        path.lineTo(shoulder, first * _ARMHOLE)
        path.cubicTo(shoulder * 0.92, first * 0.75, wide * 0.84, first, wide, first)
        spans["neck"] = (0.0, neck)
    else:
        path.moveTo(0, first)
        path.lineTo(widths[below[0]], first)
    _side(path, [QPointF(widths[level], heights[level]) for level in below])
    if len(below) == 1 and "neck" not in heights:
        bottom += 12
        path.lineTo(widths[below[0]], bottom)
    path.lineTo(0, bottom)
    path.closeSubpath()
    return path, spans


def _short(piece: Piece, heights: dict[Level, float], widths: dict[Level, float]) -> Shape:
    """A yoke: neck and shoulder and little below."""
    wide = next((one.width.cm for one in piece.across), widths.get("neck", 20.0))
    long = piece.along[0].length.cm if piece.along else wide * 0.6
    path = QPainterPath(QPointF(0, long * 0.3))
    path.cubicTo(wide * 0.2, long * 0.3, wide * 0.34, long * 0.2, wide * 0.36, 0)
    path.lineTo(wide * 0.95, long * 0.3)
    path.cubicTo(wide * 0.9, long * 0.5, wide * 0.95, long * 0.8, wide, long)
    path.lineTo(0, long)
    path.closeSubpath()
    return path, dict.fromkeys(heights, (0.0, wide * 0.36))


def _skirt(_piece: Piece, heights: dict[Level, float], widths: dict[Level, float]) -> Shape:
    levels = list(heights)
    path = QPainterPath(QPointF(0, heights[levels[0]]))
    path.lineTo(widths[levels[0]], heights[levels[0]])
    points = [QPointF(widths[level], heights[level]) for level in levels]
    if len(points) == 1:
        points.append(QPointF(widths["hem"], heights[levels[0]] + 60))
    _side(path, points)
    path.lineTo(0, points[-1].y())
    path.closeSubpath()
    return path, {level: (0.0, widths[level]) for level in levels}


def _leg(piece: Piece, heights: dict[Level, float], widths: dict[Level, float]) -> Shape:
    hook = widths["thigh"] * (0.26 if piece.role == "leg_back" else 0.16)
    crease = widths["thigh"] / 2 - hook
    spans: dict[Level, tuple[float, float]] = {}
    for level in heights:
        wide = widths[level]
        if level == "thigh":
            spans[level] = (-hook, wide - hook)
        elif level in ("knee", "hem"):
            spans[level] = (crease - wide / 2, crease + wide / 2)
        else:
            spans[level] = (0.0, wide)
    levels = list(heights)
    path = QPainterPath(QPointF(spans[levels[0]][0], heights[levels[0]]))
    right = [QPointF(spans[level][1], heights[level]) for level in levels]
    path.lineTo(right[0])
    _side(path, right)
    left = [QPointF(spans[level][0], heights[level]) for level in reversed(levels)]
    path.lineTo(left[0])
    for start, end in pairwise(left):
        if end.x() > start.x() and start.x() < 0:
            path.cubicTo(QPointF(start.x() * 0.2, start.y()), QPointF(end.x(), (start.y() + end.y()) / 2), end)
        else:
            path.lineTo(end)
    path.closeSubpath()
    return path, spans


def _sleeve(_piece: Piece, heights: dict[Level, float], widths: dict[Level, float]) -> Shape:
    levels = list(heights)
    top, wide = heights[levels[0]], widths[levels[0]]
    low = heights[levels[-1]] if len(levels) > 1 else top + 28
    foot = widths[levels[-1]] if len(levels) > 1 else wide * 0.85
    half, end = wide / 2, foot / 2
    path = QPainterPath(QPointF(-half, top))
    path.cubicTo(-half * 0.62, top * 0.95, -half * 0.62, 0, 0, 0)
    path.cubicTo(half * 0.62, 0, half * 0.62, top * 0.95, half, top)
    path.lineTo(end, low)
    path.lineTo(-end, low)
    path.closeSubpath()
    return path, {level: (-widths[level] / 2, widths[level] / 2) for level in levels}


def _strip(piece: Piece, heights: dict[Level, float], widths: dict[Level, float]) -> Shape:
    wide, long = _STRIPS.get(piece.role, (24.0, 30.0))
    if piece.across:
        wide = max(widths[one.level] for one in piece.across)
    if piece.along:
        long = sum(one.length.cm for one in piece.along)
    elif piece.across and piece.role not in ("waistband", "guide", "cuff", "collar", "band", "placket"):
        long *= wide / _STRIPS.get(piece.role, (24.0, 30.0))[0]
    wide, long = max(wide, long / _FLATTEST), max(long, wide / _FLATTEST)
    path = QPainterPath()
    if piece.role == "pocket":
        path.moveTo(0, 0)
        path.lineTo(wide, 0)
        path.lineTo(wide, long * 0.7)
        path.quadTo(wide, long, wide / 2, long)
        path.quadTo(0, long, 0, long * 0.7)
        path.closeSubpath()
    elif piece.role == "facing":
        path.moveTo(0, long * 0.45)
        path.cubicTo(wide * 0.35, long * 0.45, wide * 0.6, long * 0.3, wide * 0.66, 0)
        path.lineTo(wide, long * 0.12)
        path.cubicTo(wide * 0.9, long * 0.7, wide * 0.5, long, 0, long)
        path.closeSubpath()
    else:
        path.addRect(QRectF(0, 0, wide, long))
    return path, dict.fromkeys(heights, (0.0, wide))


SHAPES: dict[str, Callable[[Piece, dict[Level, float], dict[Level, float]], Shape]] = {
    "bodice": _bodice,
    "skirt": _skirt,
    "leg": _leg,
    "sleeve": _sleeve,
    "strip": _strip,
}
"""How each family of pieces is drawn from its levels' heights and widths."""
