"""The list of a pattern's pieces: what each is called and how it is cut, in the order of the instructions."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QAbstractListModel, QEvent, QModelIndex, QPersistentModelIndex, QRect, QSize, Qt, Signal
from PySide6.QtGui import QFontMetrics, QPainter, QPalette
from PySide6.QtWidgets import QAbstractItemView, QListView, QStyle, QStyledItemDelegate, QStyleOptionViewItem, QWidget

from sizekeeper.core.piece_words import cut_words, piece_spoken, view_words
from sizekeeper.ui import theme

if TYPE_CHECKING:
    from collections.abc import Sequence

    from PySide6.QtGui import QKeyEvent

    from sizekeeper.core.notation import Notation
    from sizekeeper.core.piece import Piece

AnyIndex = QModelIndex | QPersistentModelIndex
_SHORT, _TALL = 5, 11
"""The list shows at least and at most so many rows; more are scrolled."""


class PieceListModel(QAbstractListModel):
    """The pieces, ready to be painted."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.pieces: tuple[Piece, ...] = ()
        self._notation: Notation | None = None

    def show_pieces(self, pieces: Sequence[Piece], notation: Notation) -> None:
        """Show other pieces; while they are the same ones in the same order, nothing is chosen anew."""
        self._notation = notation
        before, self_new = [one.id for one in self.pieces], tuple(pieces)
        if before == [one.id for one in self_new]:
            self.pieces = self_new
            if self_new:
                self.dataChanged.emit(self.index(0), self.index(len(self_new) - 1))
            return
        self.beginResetModel()
        self.pieces = self_new
        self.endResetModel()

    def rowCount(self, parent: AnyIndex = QModelIndex()) -> int:  # noqa: B008 - Qt's own default
        """How many pieces there are."""
        return 0 if parent.isValid() else len(self.pieces)

    def data(self, index: AnyIndex, role: int = Qt.ItemDataRole.DisplayRole) -> Any:  # noqa: ANN401 - Qt's
        """The name; for which view and how it is cut; all of it in words."""
        if not index.isValid():
            return None
        piece = self.pieces[index.row()]
        if role == Qt.ItemDataRole.DisplayRole:
            return piece.name or "No name"
        if role == Qt.ItemDataRole.UserRole:
            return " · ".join(part for part in (view_words(piece.view), cut_words(piece)) if part)
        if role == Qt.ItemDataRole.AccessibleTextRole and self._notation is not None:
            return piece_spoken(piece, self._notation)
        return None


class _PieceDelegate(QStyledItemDelegate):
    """A name, and how it is cut in smaller letters below it."""

    def sizeHint(self, _option: QStyleOptionViewItem, _index: AnyIndex) -> QSize:
        """Two lines with some air."""
        high = QFontMetrics(theme.scaled_font(1.0)).height() + QFontMetrics(theme.small_font()).height()
        return QSize(theme.spacing(20), high + theme.spacing(0.75))

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: AnyIndex) -> None:
        """Draw both lines; the piece in hand lies on a wash with a bar of the accent before it."""
        palette: QPalette = option.palette
        rect: QRect = option.rect
        state = option.state
        painter.save()
        if state & QStyle.StateFlag.State_Selected:
            painter.fillRect(rect, theme.accent_wash(palette))
            painter.fillRect(QRect(rect.left(), rect.top(), 3, rect.height()), theme.accent(palette))
            if state & QStyle.StateFlag.State_HasFocus:
                painter.setPen(theme.accent(palette))
                painter.drawRect(rect.adjusted(0, 0, -1, -1))
        painter.setPen(theme.rule_colour(palette))
        painter.drawLine(rect.bottomLeft(), rect.bottomRight())
        inner = rect.adjusted(theme.spacing(1.25), theme.spacing(0.25), -theme.spacing(0.75), -theme.spacing(0.25))
        self._line(painter, inner, str(index.data()), palette.color(QPalette.ColorRole.WindowText), 1.0)
        small = QFontMetrics(theme.small_font()).height()
        below = QRect(inner.left(), inner.bottom() - small, inner.width(), small + 1)
        self._line(painter, below, str(index.data(Qt.ItemDataRole.UserRole)), theme.muted_text(palette), 0.88)
        painter.restore()

    def _line(self, painter: QPainter, rect: QRect, text: str, colour: Any, size: float) -> None:  # noqa: ANN401
        painter.setFont(theme.scaled_font(size))
        painter.setPen(colour)
        shown = painter.fontMetrics().elidedText(text, Qt.TextElideMode.ElideRight, rect.width())
        painter.drawText(rect, int(Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft), shown)


class PieceList(QListView):
    """The pieces as a list.

    Signals:
        chosen(str): the id of the piece now in hand.
        edit_wanted(), remove_wanted(), copy_wanted(): Enter or F2; Delete; Ctrl+D.
        move_wanted(int): Alt with an arrow: up (-1) or down (1).
    """

    chosen = Signal(str)
    edit_wanted = Signal()
    remove_wanted = Signal()
    copy_wanted = Signal()
    move_wanted = Signal(int)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName("Pieces")
        self.pieces = PieceListModel(self)
        self.setModel(self.pieces)
        self.setItemDelegate(_PieceDelegate(self))
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setFrameShape(QListView.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setUniformItemSizes(True)
        self.viewport().setAutoFillBackground(False)
        self.setTabKeyNavigation(False)
        self._showing = False
        self._most = _TALL
        self.selectionModel().currentChanged.connect(self._on_current)
        self.doubleClicked.connect(self.edit_wanted)

    def show_pieces(self, pieces: Sequence[Piece], chosen: str, notation: Notation) -> None:
        """Show the pieces, the one in hand marked."""
        self._showing = True
        self.pieces.show_pieces(pieces, notation)
        row = next((i for i, one in enumerate(pieces) if one.id == chosen), -1)
        if row >= 0 and row != self.currentIndex().row():
            self.setCurrentIndex(self.pieces.index(row))
        self.setFixedHeight(self.sizeHint().height())
        self._showing = False

    def be_short(self, *, short: bool) -> None:
        """Show only a few rows where something else must be seen below, else as many as there is room for."""
        most = _SHORT if short else _TALL
        if most != self._most:
            self._most = most
            self.setFixedHeight(self.sizeHint().height())

    def _on_current(self, index: QModelIndex) -> None:
        if index.isValid() and not self._showing:
            self.chosen.emit(self.pieces.pieces[index.row()].id)

    def sizeHint(self) -> QSize:
        """As high as its rows, within limits."""
        delegate = self.itemDelegate()
        row = delegate.sizeHint(QStyleOptionViewItem(), QModelIndex()).height()
        rows = min(max(self.pieces.rowCount(), _SHORT), self._most)
        return QSize(theme.spacing(30), row * rows + 2)

    def minimumSizeHint(self) -> QSize:
        """Some names can be read."""
        return QSize(theme.spacing(20), self.sizeHint().height())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter and F2 go to the name, Delete takes it out, Ctrl+D doubles it, Alt with an arrow moves it."""
        key, keys = event.key(), event.modifiers()
        steps = {Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1}
        if key in (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_F2):
            self.edit_wanted.emit()
        elif key == Qt.Key.Key_Delete:
            self.remove_wanted.emit()
        elif key == Qt.Key.Key_D and keys == Qt.KeyboardModifier.ControlModifier:
            self.copy_wanted.emit()
        elif key in steps and keys & Qt.KeyboardModifier.AltModifier:
            self.move_wanted.emit(steps[Qt.Key(key)])
        else:
            super().keyPressEvent(event)

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if theme.font_changed(event) and hasattr(self, "pieces"):
            self.setFixedHeight(self.sizeHint().height())
            self.scheduleDelayedItemsLayout()
