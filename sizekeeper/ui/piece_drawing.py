"""A piece as a drawing: its outline to proportion, what was measured on it, and where a change goes."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING, Literal

from PySide6.QtCore import QEvent, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QTransform
from PySide6.QtWidgets import QSizePolicy, QWidget

from sizekeeper.core.notation import Notation, show, spoken
from sizekeeper.core.piece import Level
from sizekeeper.core.piece_words import CHAIN_NAMES, LEVEL_NAMES, cut_words, length_words, piece_spoken, width_words
from sizekeeper.ui import theme
from sizekeeper.ui.piece_marks import Inks, Label, PiecePainter, place_labels
from sizekeeper.ui.piece_outline import outline

if TYPE_CHECKING:
    from PySide6.QtGui import QPaintEvent

    from sizekeeper.core.piece import Piece
    from sizekeeper.ui.piece_outline import Outline

CENTIMETRES = Notation("cm", Fraction(1, 10))
_MUCH = 1.35
"""Labels stand on the piece where it can be drawn this many times larger without them beside it."""
_SHOWN_FROM = 0.06
"""A change is drawn at least this large, as a share of the piece; what it is stands beside it in figures."""


@dataclass(frozen=True, slots=True)
class PieceChange:
    """A change drawn on a piece: longer or wider by `amount`, exact cm on the piece as it lies; negative is less.

    A change of length goes in between two `levels`, or at one; a change of width at one. `words` replace the amount
    as it is written beside the line.
    """

    kind: Literal["length", "width"]
    amount: Fraction
    levels: tuple[Level, ...]
    words: str = ""


Changes = PieceChange | Sequence[PieceChange] | None


class PieceDrawing(QWidget):
    """One piece, drawn. Figures stand in the margin, so that they can be read however small the piece is."""

    def __init__(
        self,
        piece: Piece | None = None,
        change: Changes = None,
        notation: Notation = CENTIMETRES,
        parent: QWidget | None = None,
    ) -> None:
        """Draw a piece, with one change or several."""
        super().__init__(parent)
        self.piece: Piece | None = None
        self.changes: tuple[PieceChange, ...] = ()
        self._notation = notation
        self._outline: Outline | None = None
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.show_piece(piece, change)

    def show_piece(self, piece: Piece | None, change: Changes = None, notation: Notation | None = None) -> None:
        """Draw another piece, or the same with other figures or changes."""
        self.piece = piece
        self.changes = (change,) if isinstance(change, PieceChange) else tuple(change or ())
        self._notation = notation or self._notation
        self._outline = outline(piece) if piece is not None else None
        self.setAccessibleName(f"Drawing of {piece.name or 'the piece'}" if piece is not None else "Drawing")
        self.setAccessibleDescription(self._spoken())
        self.update()

    def _spoken(self) -> str:
        if self.piece is None:
            return ""
        said = [piece_spoken(self.piece, self._notation)]
        for change in self.changes:
            way = {"length": ("longer", "shorter"), "width": ("wider", "narrower")}[change.kind][change.amount < 0]
            where = " and ".join(LEVEL_NAMES[level] for level in change.levels)
            said.append(f"{spoken(abs(change.amount), self._notation)} {way} at {where}")
        return "; ".join(said)

    def labels(self, drawn: Outline) -> list[Label]:
        """What stands in the margin, from the top down: changes, then levels with their width."""
        found = [self._change_label(drawn, change) for change in self.changes]
        for level, y in drawn.heights.items():
            across = self._shown.width(level)
            name = LEVEL_NAMES[level]
            measured = across is not None
            text = f"{name} {width_words(across, self._notation)}" if across is not None else name
            found.append(Label(y, drawn.edges(_inside(y, drawn))[1], (text,), "measured" if measured else "level"))
        return sorted(found, key=lambda label: (label.y, label.kind != "change"))

    def _change_label(self, drawn: Outline, change: PieceChange) -> Label:
        y = drawn.between(change.levels)
        lines: tuple[str, ...] = (change.words or show(change.amount, self._notation, sign=True),)
        if change.kind == "length" and change.amount < 0 and not change.words:
            lines = (*lines, f"pleat {show(-change.amount / 2, self._notation)} deep")
        return Label(y, drawn.edges(_inside(y, drawn))[1], lines, "change")

    def _lengths(self, drawn: Outline) -> list[tuple[float, float, str]]:
        """The lengths written along the left of the piece."""
        return [
            (*drawn.reach(one.chain), f"{CHAIN_NAMES[one.chain]} {length_words(one, self._notation)}")
            for one in self._shown.along
        ]

    def _wider(self) -> dict[Level, float]:
        """The changes of width, made large enough to be seen."""
        assert self._outline is not None  # noqa: S101 - asked for while painting one
        least = self._outline.frame.width() * _SHOWN_FROM
        out: dict[Level, float] = {}
        for change in self.changes:
            if change.kind == "width" and change.amount:
                size = max(abs(float(change.amount)), least)
                out |= dict.fromkeys(change.levels, size if change.amount > 0 else -size)
        return out

    def _rooms(self, painter: QPainter, drawn: Outline, labels: list[Label]) -> tuple[QRectF, QRectF]:
        """The room for the piece with its labels beside it, and with its labels on it."""
        metrics = painter.fontMetrics()
        line = metrics.height()
        widest = max((metrics.horizontalAdvance(text) for one in labels for text in one.lines), default=0)
        left = theme.spacing(1.5) + line * (1 + bool(self._lengths(drawn)))
        right = min(widest, self.width() * 0.45) + theme.spacing(3)
        top, high = theme.spacing(1.5), self.height() - line * 2 - theme.spacing(2.5)
        beside = QRectF(left, top, self.width() - left - right, high)
        return beside, QRectF(left, top, self.width() - left - theme.spacing(1.5), high)

    def _paint(self, painter: QPainter, drawn: Outline) -> None:
        painter.setFont(theme.small_font())
        line = painter.fontMetrics().height()
        labels = self.labels(drawn)
        beside, alone = self._rooms(painter, drawn, labels)
        to_widget, large = fitted(drawn.frame, beside), fitted(drawn.frame, alone)
        inside = large.m11() > to_widget.m11() * _MUCH and self._bare(painter, drawn, labels, large)
        to_widget = large if inside else to_widget
        self._paint_piece(painter, drawn, to_widget, line)
        hand = PiecePainter(painter, self._shown, drawn, to_widget, Inks.of(self.palette()))
        if inside:
            hand.labels_inside(place_labels(labels, to_widget, line, to_widget.mapRect(drawn.frame), lift=0.5))
        else:
            hand.labels(place_labels(labels, to_widget, line, QRectF(0, 0, self.width(), beside.bottom() + line)))
        self._caption(painter, line)

    def _bare(self, painter: QPainter, drawn: Outline, labels: list[Label], to_widget: QTransform) -> bool:
        """Whether the piece has room for its labels, and nothing drawn on it that they would hide."""
        metrics = painter.fontMetrics()
        marks = bool(self.changes) or any(one.darts or one.pleats for one in self._shown.across)
        if marks or drawn.shape not in ("strip", "skirt", "sleeve"):
            return False
        if drawn.frame.height() * to_widget.m11() < metrics.height() * (len(labels) + 1):
            return False
        spans = [(drawn.edges(_inside(one.y, drawn)), one.lines[0]) for one in labels]
        return all((b - a) * to_widget.m11() > metrics.horizontalAdvance(text) + 8 for (a, b), text in spans)

    @property
    def _shown(self) -> Piece:
        assert self.piece is not None  # noqa: S101 - asked for while painting one
        return self.piece

    def _paint_piece(self, painter: QPainter, drawn: Outline, to_widget: QTransform, line: int) -> None:
        hand = PiecePainter(painter, self._shown, drawn, to_widget, Inks.of(self.palette()))
        hand.outline()
        hand.levels()
        hand.inner_marks()
        for change in self.changes:
            if change.kind == "length":
                hand.length_change(drawn.between(change.levels), longer=change.amount > 0)
        if wider := self._wider():
            hand.width_change(outline(self._shown, wider), tuple(wider))
        hand.fold(line)
        for top, bottom, text in self._lengths(drawn):
            hand.along(top, bottom, text, line)

    def _caption(self, painter: QPainter, line: int) -> None:
        painter.setFont(theme.small_font())
        painter.setPen(theme.muted_text(self.palette()))
        text = f"{self._shown.name or 'No name'} · {cut_words(self._shown)}"
        text = painter.fontMetrics().elidedText(text, Qt.TextElideMode.ElideMiddle, self.width())
        box = QRectF(0, self.height() - line - 2, self.width(), line + 2)
        painter.drawText(box, int(Qt.AlignmentFlag.AlignCenter), text)

    # Qt's own names from here on.

    def sizeHint(self) -> QSize:
        """Large enough for a trouser leg with its figures."""
        return QSize(theme.spacing(36), theme.spacing(38))

    def minimumSizeHint(self) -> QSize:
        """Still readable at this size."""
        return QSize(theme.spacing(24), theme.spacing(22))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the piece."""
        if self._outline is not None:
            painter = QPainter(self)
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            self._paint(painter, self._outline)

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size and light or dark."""
        super().changeEvent(event)
        if theme.font_changed(event) or theme.palette_changed(event):
            self.updateGeometry()
            self.update()


def fitted(frame: QRectF, room: QRectF) -> QTransform:
    """From the piece's centimetres to the widget: as large as the room lets it be, in its middle."""
    scale = max(min(room.width() / max(frame.width(), 0.1), room.height() / max(frame.height(), 0.1)), 0.01)
    left = room.center().x() - frame.center().x() * scale
    top = room.center().y() - frame.center().y() * scale
    return QTransform(scale, 0, 0, scale, left, top)


def _inside(y: float, drawn: Outline) -> float:
    """A height a little inside the piece, where its edges can be told."""
    least = (drawn.bottom - drawn.top) * 0.005 + 0.06
    return min(max(y, drawn.top + least), drawn.bottom - least)
