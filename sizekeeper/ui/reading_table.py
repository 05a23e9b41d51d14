"""The table of all readings of a measure."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QItemSelectionModel, QSize, Qt, Signal
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView, QWidget

from sizekeeper.ui import theme
from sizekeeper.ui.reading_model import FIGURE, HAND, ReadingModel

if TYPE_CHECKING:
    from PySide6.QtGui import QKeyEvent

_ROWS_SEEN = 4


class ReadingTable(QTableView):
    """Readings newest first; F2 corrects a figure, Delete takes a reading away.

    Signals:
        row_chosen(int): another row is current; -1 for none.
        unwanted(): Delete was pressed on the current row.
        left(): Esc asks to go back to the list.
    """

    row_chosen = Signal(int)
    unwanted = Signal()
    left = Signal()

    def __init__(self, model: ReadingModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setModel(model)
        self.setAccessibleName("All measurements of this place")
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setShowGrid(False)
        self.setTabKeyNavigation(False)
        self.setWordWrap(False)
        self.setFrameShape(QTableView.Shape.NoFrame)
        self.verticalHeader().hide()
        header = self.horizontalHeader()
        header.setHighlightSections(False)
        header.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        header.setResizeContentsPrecision(20)
        header.setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        header.setSectionResizeMode(HAND, QHeaderView.ResizeMode.Stretch)
        header.setMinimumSectionSize(theme.spacing(5))
        self._space()
        self.selectionModel().currentRowChanged.connect(self._on_current)

    def choose_row(self, row: int) -> None:
        """Make a row the current one."""
        index = self.model().index(row, FIGURE)
        flags = QItemSelectionModel.SelectionFlag.ClearAndSelect | QItemSelectionModel.SelectionFlag.Rows
        self.selectionModel().setCurrentIndex(index, flags)

    def _space(self) -> None:
        self.verticalHeader().setDefaultSectionSize(theme.spacing(3.25))

    def _on_current(self) -> None:
        self.row_chosen.emit(self.currentIndex().row())

    def sizeHint(self) -> QSize:
        """Room for the title line and a few readings."""
        rows = max(1, min(self.model().rowCount(), _ROWS_SEEN))
        return QSize(theme.spacing(34), self.horizontalHeader().sizeHint().height() + rows * theme.spacing(3.25) + 4)

    def minimumSizeHint(self) -> QSize:
        """As high as wished, narrower if it must be."""
        return QSize(theme.spacing(26), self.sizeHint().height())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Delete takes a reading away, Esc goes back to the list."""
        if event.key() in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace):
            self.unwanted.emit()
        elif event.key() == Qt.Key.Key_Escape:
            self.left.emit()
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self.currentIndex().isValid():
            self.edit(self.currentIndex().siblingAtColumn(FIGURE))
        else:
            super().keyPressEvent(event)

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if theme.font_changed(event):
            self._space()
