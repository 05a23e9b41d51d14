"""The file's grid with what was recognised laid over it, and what can be set there by hand."""

from __future__ import annotations

from typing import TYPE_CHECKING, cast

from PySide6.QtCore import QItemSelection, QItemSelectionModel, QRect, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QFontMetrics, QKeyEvent, QPainter, QPalette, QPen
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHeaderView,
    QLineEdit,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTableView,
    QWidget,
)

from sizekeeper.ui import theme
from sizekeeper.ui.import_grid_model import CELL, CellView, GridModel, Index
from sizekeeper.ui.import_roles import LEFT_OUT, UNUSED, paint_role

if TYPE_CHECKING:
    from PySide6.QtCore import QEvent

    from sizekeeper.importing.areas import Box

_CHOSEN = 0.24
"""How strong the accent is behind marked cells, whose text stays as it is (coined)."""
_WIDEST = 34
"""Steps of spacing; longer texts are shortened, and can be read whole in the line below."""


class CellPainter(QStyledItemDelegate):
    """Paints a cell as what it was taken for."""

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Ground and outline of the role, its letter, then the text."""
        view = cast("CellView", index.data(CELL))
        rect, palette = QRect(option.rect), option.palette
        chosen = bool(option.state & QStyle.StateFlag.State_Selected)
        painter.save()
        ground = palette.color(QPalette.ColorRole.Base)
        painter.fillRect(rect, theme.mix(ground, theme.accent(palette), _CHOSEN) if chosen else ground)
        if view.text or view.look is LEFT_OUT:
            paint_role(painter, QRectF(rect), view.look, palette, marked=view.asked, chosen=chosen)
        letter = "" if not view.text else f"{view.look.letter}{view.table or ''}"
        room = rect.adjusted(theme.spacing(0.75), 0, -theme.spacing(0.75), 0)
        self._letter(
            painter, room, letter, palette.color(QPalette.ColorRole.Text) if chosen else theme.muted_text(palette)
        )
        self._text(painter, room, view, letter, palette, quiet=view.look in (UNUSED, LEFT_OUT) and not chosen)
        if option.state & QStyle.StateFlag.State_HasFocus:
            painter.setPen(QPen(theme.accent(palette), 2, Qt.PenStyle.SolidLine))
            painter.drawRect(rect.adjusted(1, 1, -2, -2))
        painter.restore()

    def _letter(self, painter: QPainter, room: QRect, letter: str, colour: QColor) -> None:
        painter.setFont(theme.scaled_font(0.72))
        painter.setPen(colour)
        painter.drawText(room, int(Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft), letter)

    def _text(
        self, painter: QPainter, room: QRect, view: CellView, letter: str, palette: QPalette, *, quiet: bool
    ) -> None:
        font = theme.scaled_font(1.0)
        font.setItalic(view.text != view.printed)
        font.setStrikeOut(view.look is LEFT_OUT)
        painter.setFont(font)
        painter.setPen(theme.muted_text(palette) if quiet else palette.color(QPalette.ColorRole.Text))
        left = theme.spacing(1.0 + 0.9 * len(letter)) if letter else 0
        right = theme.spacing(2.25) if view.asked else 0
        room = room.adjusted(left, 0, -right, 0)
        side = Qt.AlignmentFlag.AlignRight if view.number else Qt.AlignmentFlag.AlignLeft
        text = painter.fontMetrics().elidedText(view.text, Qt.TextElideMode.ElideRight, room.width())
        painter.drawText(room, int(Qt.AlignmentFlag.AlignVCenter | side), text)

    def sizeHint(self, _option: QStyleOptionViewItem, index: Index) -> QSize:
        """The text with its letter and a question mark beside it, up to a width."""
        view = cast("CellView", index.data(CELL))
        wide = QFontMetrics(theme.scaled_font(1.0)).horizontalAdvance(view.text)
        return QSize(min(wide + theme.spacing(6), theme.spacing(_WIDEST)), theme.spacing(3.25))

    def createEditor(self, parent: QWidget, option: QStyleOptionViewItem, index: Index) -> QWidget:
        """A plain line with a name for screen readers."""
        editor = super().createEditor(parent, option, index)
        if isinstance(editor, QLineEdit):
            editor.setAccessibleName("Text of the cell")
        return editor


class ImportGrid(QTableView):
    """The grid. Delete leaves the marked cells out, or takes them back.

    Signals:
        leave_wanted(object): addresses of cells that shall not be read.
        back_wanted(object): addresses of cells that shall be read as they came.
        moved(): another cell is the current one.
    """

    leave_wanted = Signal(object)
    back_wanted = Signal(object)
    moved = Signal()

    def __init__(self, model: GridModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._model = model
        self.setModel(model)
        self.setItemDelegate(CellPainter(self))
        self.setAccessibleName("The file's cells")
        self.setSelectionMode(QAbstractItemView.SelectionMode.ContiguousSelection)
        self.setEditTriggers(
            QAbstractItemView.EditTrigger.EditKeyPressed
            | QAbstractItemView.EditTrigger.DoubleClicked
            | QAbstractItemView.EditTrigger.AnyKeyPressed
        )
        self.setShowGrid(False)
        self.setTabKeyNavigation(False)
        self.setWordWrap(False)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        for header in (self.horizontalHeader(), self.verticalHeader()):
            header.setResizeContentsPrecision(20)
            header.setHighlightSections(True)
        self.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self._space()
        self.selectionModel().currentChanged.connect(self._on_moved)
        model.modelReset.connect(self._on_reset)

    def go_to(self, at: str) -> bool:
        """Make a cell the current one and bring it into view; False where the sheet has no such cell."""
        index = self._model.place_of(at)
        if index.isValid():
            self.selectionModel().setCurrentIndex(index, QItemSelectionModel.SelectionFlag.ClearAndSelect)
            self.scrollTo(index, QAbstractItemView.ScrollHint.EnsureVisible)
        return index.isValid()

    def marked(self) -> list[str]:
        """The addresses of the marked cells, each once."""
        found = (self._model.at(i.row(), i.column()) for i in self.selectionModel().selectedIndexes())
        return [at for at in dict.fromkeys(found) if at]

    def marked_box(self) -> Box | None:
        """The rectangle of the marked cells, None where fewer than four cells are marked: no table is that small."""
        places = [(i.row(), i.column()) for i in self.selectionModel().selectedIndexes()]
        if len(places) < _SMALLEST:
            return None
        rows, columns = [r for r, _ in places], [c for _, c in places]
        return min(rows), min(columns), max(rows), max(columns)

    def mark(self, box: Box) -> None:
        """Mark a rectangle of cells."""
        top, left, bottom, right = box
        corners = QItemSelection(self._model.index(top, left), self._model.index(bottom, right))
        self.selectionModel().select(corners, QItemSelectionModel.SelectionFlag.ClearAndSelect)

    def leave_out(self) -> None:
        """Leave the marked cells out; if all of them are left out already, take them back."""
        marked = self.marked()
        left = [
            view.at
            for i in self.selectionModel().selectedIndexes()
            if (view := self._model.view(i.row(), i.column())).look is LEFT_OUT
        ]
        if marked and len(set(left)) == len(marked):
            self.back_wanted.emit(marked)
        elif marked:
            self.leave_wanted.emit(marked)

    def restore(self) -> None:
        """Read the marked cells as they came."""
        if marked := self.marked():
            self.back_wanted.emit(marked)

    def _on_moved(self) -> None:
        self.moved.emit()

    def _on_reset(self) -> None:
        """Columns fit their texts; the first cell is the current one."""
        self.resizeColumnsToContents()
        if self._model.rowCount() and self._model.columnCount():
            self.setCurrentIndex(self._model.index(0, 0))

    def _space(self) -> None:
        self.verticalHeader().setDefaultSectionSize(theme.spacing(3.25))
        self.horizontalHeader().setMinimumSectionSize(theme.spacing(5))

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if theme.font_changed(event):
            self._space()
            self.resizeColumnsToContents()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Delete leaves out, Enter types into the cell."""
        if event.key() in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace):
            self.leave_out()
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self.state() != self.State.EditingState:
            self.edit(self.currentIndex())
        else:
            super().keyPressEvent(event)


_SMALLEST = 4
"""Fewer marked cells than these are no table: a size, a measure and a figure with the corner between them."""
