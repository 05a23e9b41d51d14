"""What each cell of a grid was taken for: its letter, its words and how it is outlined."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QPainter, QPalette, QPen

from sizekeeper.ui import theme

if TYPE_CHECKING:
    from collections.abc import Mapping


@dataclass(frozen=True, slots=True)
class RoleLook:
    """A part that cells play: the letter in the cell, the words for it, and the pen of its outline."""

    letter: str
    words: str
    style: Qt.PenStyle
    width: float = 1.0
    strong: bool = False


SIZE = RoleLook("S", "size", Qt.PenStyle.SolidLine, 2.0, strong=True)
MEASURE = RoleLook("M", "measure", Qt.PenStyle.DashLine, 2.0, strong=True)
FIGURE = RoleLook("F", "figure", Qt.PenStyle.SolidLine)
NAME = RoleLook("N", "name", Qt.PenStyle.SolidLine, 2.0, strong=True)
DETAIL = RoleLook("D", "detail", Qt.PenStyle.DashLine)
GAP = RoleLook("G", "no figure", Qt.PenStyle.DotLine, 1.5)
HEADING = RoleLook("H", "heading, read for its words", Qt.PenStyle.DashDotLine, 1.0, strong=True)
UNUSED = RoleLook("", "not used", Qt.PenStyle.NoPen)
LEFT_OUT = RoleLook("✕", "left out by you", Qt.PenStyle.DotLine)

LEGEND = (SIZE, MEASURE, FIGURE, GAP, HEADING, UNUSED)
PEOPLE_LEGEND = (NAME, MEASURE, FIGURE, GAP, DETAIL, HEADING, UNUSED)

_LOOKS: Mapping[str, RoleLook] = {
    "size": SIZE,
    "measure": MEASURE,
    "value": FIGURE,
    "name": NAME,
    "detail": DETAIL,
    "missing": GAP,
    "text": GAP,
    "heading": HEADING,
    "unit": HEADING,
    "title": HEADING,
}


def look_of(role: str) -> RoleLook:
    """How a cell is shown that the reader gave this role; unknown roles are not used."""
    return _LOOKS.get(role, UNUSED)


def at_words(at: str) -> str:
    """A cell as people say it: `B3`, or `line 3, part 2` where a line of text was cut into figures."""
    cell, mark, part = at.partition("#")
    if not mark:
        return cell
    return f"line {cell.lstrip('ABCDEFGHIJKLMNOPQRSTUVWXYZ')}, part {int(part) + 1}"


def paint_role(
    painter: QPainter, rect: QRectF, look: RoleLook, palette: QPalette, *, marked: bool, chosen: bool = False
) -> None:
    """Outline a cell and lay the ground of its role.

    Args:
        painter: draws on the grid.
        rect: the cell.
        look: what it was taken for.
        palette: the colours of the place.
        marked: whether a question is about it.
        chosen: whether it is selected, with a ground laid already.
    """
    painter.save()
    if look is UNUSED or look is LEFT_OUT:
        painter.fillRect(rect, QBrush(theme.rule_colour(palette), Qt.BrushStyle.BDiagPattern))
    elif look.strong and not chosen:
        painter.fillRect(rect, theme.mix(palette.color(QPalette.ColorRole.Base), theme.accent(palette), 0.08))
    if look.style != Qt.PenStyle.NoPen:
        colour = theme.accent(palette) if look.strong else theme.muted_text(palette)
        painter.setPen(QPen(colour, look.width, look.style))
        inset = 1.0 + look.width / 2
        painter.drawRect(rect.adjusted(inset, inset, -inset - 1, -inset - 1))
    if marked:
        _mark(painter, rect, theme.warning_text(palette))
    painter.restore()


def _mark(painter: QPainter, rect: QRectF, colour: QColor) -> None:
    """A question mark on a tab at the right edge."""
    side = min(rect.height() - 4, theme.spacing(2))
    tab = QRectF(rect.right() - side - 2, rect.top() + (rect.height() - side) / 2, side, side)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(colour)
    painter.drawRoundedRect(tab, 3, 3)
    painter.setFont(theme.heading_font(3))
    painter.setPen(QColor("white") if theme.luminance(colour) < 0.3 else QColor("black"))  # noqa: PLR2004 - the text's ground
    painter.drawText(tab, int(Qt.AlignmentFlag.AlignCenter), "?")
