"""The outline of a piece, drawn to the proportion of what was measured on the paper.

Lengths are centimetres, y runs down the grain, x = 0 is the centre or the fold. What nobody measured is drawn as an
ordinary piece of that kind would be (coined figures, for the picture only), scaled along with what was.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainterPath, QTransform

from sizekeeper.core.piece import LEVEL_ORDER, Chain, Level
from sizekeeper.ui.piece_shapes import SHAPES

if TYPE_CHECKING:
    from sizekeeper.core.piece import Piece

BODICE = frozenset({"front", "back", "side", "yoke"})
SKIRT = frozenset({"skirt_front", "skirt_back"})
LEG = frozenset({"leg_front", "leg_back"})
_HEIGHTS: dict[Level, float] = {
    "neck": 0, "bust": 24, "waist": 41, "high_hip": 51, "hip": 61, "thigh": 70, "knee": 100, "sleeve": 14, "wrist": 60,
}  # fmt: skip
_HEM = {"bodice": 67.0, "skirt": 103.0, "leg": 145.0, "sleeve": 42.0, "strip": 67.0}
_BELOW = 8.0
"""How far the hem lies below the lowest level that the piece crosses, where its usual height is above that."""
_ARM: frozenset[Level] = frozenset({"sleeve", "wrist"})
"""Levels along the arm, which have no height on a bodice."""
_WIDTHS: dict[str, dict[Level, float]] = {
    "bodice": {"neck": 20, "bust": 25, "waist": 20, "high_hip": 23, "hip": 26, "thigh": 26, "knee": 26, "hem": 27},
    "skirt": {"waist": 19, "high_hip": 23, "hip": 26, "thigh": 27, "knee": 29, "hem": 31},
    "leg": {"waist": 20, "high_hip": 24, "hip": 27, "thigh": 34, "knee": 25, "hem": 22},
    "sleeve": {"sleeve": 34, "wrist": 22, "hem": 28},
    "strip": {},
}
_SPANS: dict[Chain, tuple[Level, Level]] = {
    "back_waist": ("neck", "waist"), "skirt": ("waist", "hem"), "inseam": ("thigh", "hem"), "rise": ("waist", "thigh"),
    "sleeve": ("sleeve", "hem"),
}  # fmt: skip
"""The heights between which a chain runs."""


@dataclass(frozen=True)
class Outline:
    """A piece's outline. `heights` are its levels' y, `spans` where its edges lie there; `whole` has its centre inside.

    `typed` are the levels and chains whose figures it was drawn from.
    """

    path: QPainterPath
    heights: Mapping[Level, float]
    spans: Mapping[Level, tuple[float, float]]
    top: float
    bottom: float
    whole: bool
    shape: str

    @property
    def frame(self) -> QRectF:
        """The room the outline takes."""
        return self.path.boundingRect()

    def between(self, levels: tuple[Level, ...]) -> float:
        """The y of a line between two levels, or at one; the middle of the piece where it crosses neither."""
        known = [self.heights[level] for level in levels if level in self.heights]
        return sum(known) / len(known) if known else (self.top + self.bottom) / 2

    def reach(self, chain: Chain) -> tuple[float, float]:
        """From which y to which a chain runs on the piece."""
        if self.shape in ("sleeve", "strip") or not self.heights:
            return self.top, self.bottom
        usual = _usual_heights(self.heights, self.shape)
        first, last = (usual[end] for end in _SPANS[chain])
        inside = [y for lv, y in self.heights.items() if first <= usual[lv] <= last]
        if len(inside) < 2:  # noqa: PLR2004 - a stretch has two ends
            return self.top, self.bottom
        return min(inside), max(inside)

    def edges(self, y: float) -> tuple[float, float]:
        """Where the left and the right edge lie at a height."""
        frame = self.frame
        sliver = QPainterPath()
        sliver.addRect(QRectF(frame.left() - 1, y - 0.05, frame.width() + 2, 0.1))
        cut = self.path.intersected(sliver).boundingRect()
        return (cut.left(), cut.right()) if cut.width() else (frame.left(), frame.right())


def shape_of(piece: Piece) -> str:
    """The family of outlines a piece belongs to."""
    if piece.role in BODICE and ("bust" in piece.levels or "waist" in piece.levels or "neck" in piece.levels):
        return "bodice"
    for shape, roles in (("skirt", SKIRT), ("leg", LEG), ("sleeve", {"sleeve"})):
        if piece.role in roles:
            return shape
    return "strip"


def outline(piece: Piece, wider: Mapping[Level, float] | None = None) -> Outline:
    """The outline of a piece.

    Args:
        piece: the piece.
        wider: by how many cm it is to be drawn wider at a level, for a change.
    """
    shape = shape_of(piece)
    heights = _heights(piece, shape)
    whole = shape != "sleeve" and piece.cut % 2 == 1 and not piece.on_fold
    widths = {level: width + (wider or {}).get(level, 0.0) for level, width in _widths(piece, shape).items()}
    path, spans = SHAPES[shape](piece, heights, widths)
    if shape == "strip":
        heights = _down_a_strip(heights, path.boundingRect().height())
    if whole and shape in ("bodice", "skirt"):
        path, spans = _mirrored(path, spans)
    return Outline(path, heights, spans, path.boundingRect().top(), path.boundingRect().bottom(), whole, shape)


def _levels(piece: Piece, shape: str) -> list[Level]:
    crossed = [level for level in LEVEL_ORDER if level in piece.levels]
    if shape == "sleeve":
        return [level for level in crossed if level in ("sleeve", "wrist", "hem")] or ["sleeve", "hem"]
    if shape in ("skirt", "leg"):
        crossed = [level for level in crossed if level not in ("neck", "bust", "sleeve", "wrist")]
        return crossed or ["waist", "hip", "hem"]
    return [level for level in crossed if level not in _ARM] if shape == "bodice" else crossed


def _usual_heights(levels: Iterable[Level], shape: str) -> dict[Level, float]:
    """Every level's usual y on a piece that crosses some levels: the hem lies below all others that it crosses."""
    lowest = max((_HEIGHTS[level] for level in levels if level != "hem"), default=0.0)
    hem = _HEM[shape] if _HEM[shape] > lowest else lowest + _BELOW
    return {**_HEIGHTS, "hem": hem}


def _heights(piece: Piece, shape: str) -> dict[Level, float]:
    """Each level's y, the topmost at 0: usual distances, stretched where a chain was measured."""
    crossed = _levels(piece, shape)
    usual = _usual_heights(crossed, shape)
    levels = sorted(crossed, key=lambda level: usual[level])
    if not levels:
        return {}
    steps = [(low, usual[low] - usual[high]) for high, low in pairwise(levels)]
    factors = _factors(piece, levels, usual)
    spare = sum(factors.values()) / len(factors) if factors else 1.0
    at = _HEIGHTS["sleeve"] if shape == "sleeve" else 0.0
    if shape == "sleeve":
        at *= spare
    out = {levels[0]: at}
    for low, step in steps:
        at += step * factors.get(low, spare)
        out[low] = at
    return out


def _down_a_strip(heights: dict[Level, float], long: float) -> dict[Level, float]:
    """The levels of a strip, spread over its length; a single one lies in the middle."""
    lowest = max(heights.values(), default=0.0)
    return {level: long * (y / lowest if lowest else 0.5) for level, y in heights.items()}


def _factors(piece: Piece, levels: list[Level], usual: Mapping[Level, float]) -> dict[Level, float]:
    """How much longer than usual each step down to a level was measured to be."""
    out: dict[Level, float] = {}
    for along in piece.along:
        ends = [usual[end] for end in _SPANS[along.chain]]
        if along.chain == "sleeve":
            ends = [0.0, usual[levels[-1]]]
        inside = [lv for lv in levels if ends[0] - 0.1 <= usual[lv] <= ends[1] + 0.1]
        if not inside:
            continue
        whole = ends[1] if along.chain == "sleeve" else usual[inside[-1]] - usual[inside[0]]
        if whole > 0:
            factor = min(max(along.length.cm / whole, 0.1), 10.0)
            out |= dict.fromkeys(inside if along.chain == "sleeve" else inside[1:], factor)
    return out


def _widths(piece: Piece, shape: str) -> dict[Level, float]:
    """The width at each level: as measured, else the usual one scaled as the measured ones are."""
    usual = _WIDTHS[shape]
    double = 2.0 if piece.cut % 2 == 1 and not piece.on_fold and shape in ("bodice", "skirt") else 1.0
    typed = {one.level: one.width.cm for one in piece.across}
    known = [cm / (usual[level] * double) for level, cm in typed.items() if level in usual]
    factor = sum(known) / len(known) if known else 1.0
    full = typed["waist"] if (waist := piece.width("waist")) is not None and waist.gathered else None
    out: dict[Level, float] = {level: width * double * factor for level, width in usual.items()}
    if full is not None and shape == "skirt":
        out = dict.fromkeys(usual, full)
    return out | typed


def _mirrored(
    path: QPainterPath, spans: dict[Level, tuple[float, float]]
) -> tuple[QPainterPath, dict[Level, tuple[float, float]]]:
    """A half put beside its mirror image: the piece is cut whole, and its width is that of both halves."""
    half = QTransform.fromScale(0.5, 1).map(path)
    both = half.united(QTransform.fromScale(-1, 1).map(half)).simplified()
    return both, {level: (-right / 2, right / 2) for level, (_, right) in spans.items()}
