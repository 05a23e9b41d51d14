"""The drawn figure: the outline of a standing body, from the front and from the back, of nobody's age.

Figure units: the crown of the head is at y = 0, the floor at y = 800, the middle of the body at x = 0. A head is 106
high, so that the figure stands seven and a half heads tall (common practice in drawing, no source).
"""

from __future__ import annotations

import functools
from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainterPath, QTransform

if TYPE_CHECKING:
    from collections.abc import Sequence

Point = tuple[float, float]

HEIGHT = 800.0
HALF_WIDTH = 172.0
"""Room to each side of the middle: the arms, and the line beside them for the height."""

_HEAD: tuple[Point, ...] = (
    (-21, 5), (0, 0), (21, 5), (35, 22), (39, 47), (35, 72), (24, 95), (11, 106), (0, 108), (-11, 106),
)  # fmt: skip

_SIDE: tuple[Point, ...] = (
    (0, 88), (17, 94), (18, 116), (24, 132), (48, 144), (72, 156), (80, 172), (72, 192), (65, 216), (61, 246),
    (55, 276), (51, 305), (57, 336), (66, 366), (72, 402), (73, 440), (68, 492), (57, 548), (51, 582), (50, 612),
    (52, 648), (47, 692), (37, 738), (35, 760), (40, 778), (42, 793), (32, 800), (20, 800), (15, 792), (17, 774),
    (17, 750), (17, 704), (13, 652), (15, 614), (17, 580), (13, 540), (8, 482), (4, 432), (0, 416),
)  # fmt: skip
"""One side of neck, trunk and leg, from the neck down the outside and up the inside of the leg."""

_ARM: tuple[Point, ...] = (
    (50, 145), (66, 151), (79, 159), (87, 172), (95, 198), (104, 236), (112, 284), (121, 322), (130, 366), (137, 404),
    (145, 426), (151, 450), (150, 474), (144, 486), (137, 480), (134, 462), (129, 450), (122, 444), (121, 428),
    (121, 408), (110, 370), (98, 330), (91, 298), (82, 252), (72, 214), (62, 188),
)  # fmt: skip
"""One arm, from the shoulder down the outside and up the inside."""

_FRONT_LINES: tuple[tuple[Point, ...], ...] = (
    ((10, 143), (28, 147), (46, 153)),
    ((10, 236), (26, 243), (44, 238), (53, 226)),
    ((24, 574), (32, 580), (41, 576)),
)
_BACK_LINES: tuple[tuple[Point, ...], ...] = (
    ((26, 184), (36, 206), (30, 226)),
    ((4, 412), (24, 424), (46, 420)),
    ((24, 580), (32, 577), (41, 580)),
)
_SPINE: tuple[Point, ...] = ((0, 134), (0, 388))


def curve(points: Sequence[Point]) -> QPainterPath:
    """A smooth line through points: a Catmull-Rom spline written as Bezier curves."""
    spots = [QPointF(x, y) for x, y in points]
    path = QPainterPath(spots[0])
    for i in range(len(spots) - 1):
        before, start = spots[max(i - 1, 0)], spots[i]
        end, after = spots[i + 1], spots[min(i + 2, len(spots) - 1)]
        path.cubicTo(start + (end - before) / 6, end - (after - start) / 6, end)
    return path


def _closed(points: Sequence[Point]) -> QPainterPath:
    path = curve(points)
    path.closeSubpath()
    return path


def mirrored(path: QPainterPath) -> QPainterPath:
    """The same path on the other side of the middle."""
    return QTransform.fromScale(-1, 1).map(path)


@functools.cache
def body() -> QPainterPath:
    """The outline of the whole body, the same from the front and from the back."""
    path = _closed(_HEAD)
    for part in (_SIDE, _ARM):
        path = path.united(_closed(part))
    return path.united(mirrored(path)).simplified()


@functools.cache
def inner_lines(*, back: bool) -> QPainterPath:
    """The few lines inside the outline that tell front from back."""
    path = QPainterPath()
    for points in _BACK_LINES if back else _FRONT_LINES:
        path.addPath(curve(points))
        path.addPath(mirrored(curve(points)))
    if back:
        path.addPath(curve(_SPINE))
    return path


def frame() -> QRectF:
    """The room one figure takes, in figure units."""
    return QRectF(-HALF_WIDTH, -8, 2 * HALF_WIDTH, HEIGHT + 16)
