"""One half of a household table: the words at the left, or the sizes at the right."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QModelIndex, Qt, Signal
from PySide6.QtWidgets import QAbstractItemView, QFrame, QHeaderView, QTableView, QWidget

from sizekeeper.ui import theme
from sizekeeper.ui.household_columns import HouseHeading
from sizekeeper.ui.household_model import KEY

if TYPE_CHECKING:
    from PySide6.QtGui import QFocusEvent, QKeyEvent, QMouseEvent

_BOX = 2.75
"""The width of the box to tick with the air around it, in steps of distance."""


class HouseHalf(QTableView):
    """One half of the table.

    Signals:
        opened(str): a name was clicked, anything else in a row twice, or Enter was pressed.
        sort_wanted(int, bool): sort by a column, from small to large or the other way.
    """

    opened = Signal(str)
    sort_wanted = Signal(int, bool)

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self.heading = HouseHeading(self)
        self.setHorizontalHeader(self.heading)
        self.verticalHeader().hide()
        self.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self.setShowGrid(False)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setTabKeyNavigation(False)
        self.viewport().setAutoFillBackground(False)
        self._clicked_at = 0
        self.doubleClicked.connect(self._open)
        self.clicked.connect(self._on_clicked)

    def _open(self, index: QModelIndex) -> None:
        if index.isValid():
            self.opened.emit(str(index.data(KEY)))

    def _on_clicked(self, index: QModelIndex) -> None:
        """A click on a name opens the row; beside it, on its box, it does not."""
        boxed = index.data(Qt.ItemDataRole.CheckStateRole) is not None
        beside = self._clicked_at - self.visualRect(index).left() < theme.spacing(_BOX)
        if index.column() == 0 and not (boxed and beside):
            self._open(index)

    # Qt's own names from here on.

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Keep where it was clicked."""
        self._clicked_at = round(event.position().x())
        super().mouseReleaseEvent(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter opens a row; Ctrl with up or down sorts by the column of the cursor."""
        ctrl = bool(event.modifiers() & Qt.KeyboardModifier.ControlModifier)
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self._open(self.currentIndex())
        elif ctrl and event.key() in (Qt.Key.Key_Up, Qt.Key.Key_Down) and self.currentIndex().isValid():
            self.sort_wanted.emit(self.currentIndex().column(), event.key() == Qt.Key.Key_Up)
        else:
            super().keyPressEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Put the cursor on a cell of this half, in the row where it is."""
        super().focusInEvent(event)
        index = self.currentIndex()
        if self.model() is None or not self.model().rowCount():
            return
        if not index.isValid() or self.isColumnHidden(index.column()):
            columns = range(self.model().columnCount())
            column = next((c for c in columns if not self.isColumnHidden(c)), 0)
            self.setCurrentIndex(self.model().index(max(0, index.row()), column))
