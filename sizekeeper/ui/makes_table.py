"""The list of makes as a table that is sorted by a click on a heading."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QSignalBlocker, Qt, Signal

from sizekeeper.ui import theme
from sizekeeper.ui.household_half import HouseHalf
from sizekeeper.ui.household_model import KEY, HouseFilter, HouseModel
from sizekeeper.ui.household_paint import HouseDelegate
from sizekeeper.ui.household_type import HouseType
from sizekeeper.ui.makes_rows import DAY, MAKE_HEADINGS

if TYPE_CHECKING:
    from collections.abc import Sequence

    from PySide6.QtCore import QModelIndex
    from PySide6.QtGui import QResizeEvent
    from PySide6.QtWidgets import QWidget

    from sizekeeper.ui.household_cells import HouseRow

_SHARES = (0.13, 0.17, 0.17, 0.12, 0.11)
"""The share of the width that each column but the last has (coined)."""


class MakesTable(HouseHalf):
    """The makes; a click picks one, a double click or Enter opens it.

    Signals:
        picked(str): another make is in front, "" for none.
    """

    picked = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        """Empty, the newest first."""
        super().__init__("Makes", parent)
        self.rows = HouseModel(self)
        self.filter = HouseFilter(self.rows, self)
        self._delegate = HouseDelegate(self)
        self._sorted = (DAY, False)
        self.setModel(self.filter)
        self.setItemDelegate(self._delegate)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAsNeeded)
        self.setContextMenuPolicy(Qt.ContextMenuPolicy.CustomContextMenu)
        self.sort_wanted.connect(self.sort_by)
        self.heading.sectionClicked.connect(self._on_heading)
        self.selectionModel().currentRowChanged.connect(self._on_row)
        self._dress()

    @property
    def key(self) -> str:
        """The id of the make that is picked, "" while none is."""
        index = self.currentIndex()
        return str(index.data(KEY)) if index.isValid() else ""

    def show_rows(self, rows: Sequence[HouseRow]) -> None:
        """Show other rows; the one that was picked stays picked while it is there, else the first is."""
        key = self.key
        self.rows.show(MAKE_HEADINGS, rows)
        self.sort_by(*self._sorted)
        self._fit_columns()
        if not self.pick(key) and self.filter.rowCount() and not self.currentIndex().isValid():
            self.setCurrentIndex(self.filter.index(0, 0))

    @property
    def needed_height(self) -> int:
        """How high it is when no row has to be scrolled to."""
        kind = HouseType.now()
        return kind.header_height + self.filter.rowCount() * kind.row_height + theme.spacing(0.5)

    def pick(self, key: str) -> bool:
        """Put the cursor on a make; False where it is not listed."""
        row = self.filter.row_of(key) if key else -1
        if row >= 0:
            index = self.filter.index(row, max(0, self.currentIndex().column()))
            if index != self.currentIndex():
                self.setCurrentIndex(index)
            self.scrollTo(index)
        return row >= 0

    def sort_by(self, column: int, rising: bool) -> None:  # noqa: FBT001 - a slot
        """Sort by a column."""
        order = Qt.SortOrder.AscendingOrder if rising else Qt.SortOrder.DescendingOrder
        self._sorted = (column, rising)
        if (self.filter.sortColumn(), self.filter.sortOrder()) != (column, order):
            self.filter.sort(column, order)
        with QSignalBlocker(self.heading):
            self.heading.setSortIndicator(column, order)
        self.heading.viewport().update()

    def _on_heading(self, column: int) -> None:
        """A click sorts by a column; another one turns the order round."""
        self.sort_by(column, not self._sorted[1] if self._sorted[0] == column else True)

    def _on_row(self, index: QModelIndex) -> None:
        self.picked.emit(str(index.data(KEY)) if index.isValid() else "")

    def _on_clicked(self, _index: QModelIndex) -> None:
        """A click only picks."""

    def _fit_columns(self) -> None:
        width, taken = self.viewport().width(), 0
        if self.rows.columnCount():
            for column, share in enumerate(_SHARES):
                self.setColumnWidth(column, round(width * share))
                taken += self.columnWidth(column)
            self.setColumnWidth(len(_SHARES), max(width - taken, theme.spacing(8)))

    def _dress(self) -> None:
        kind = HouseType.now()
        self._delegate.dress(self.palette(), kind)
        self.heading.dress(kind)
        self.verticalHeader().setDefaultSectionSize(kind.row_height)
        self.viewport().update()

    # Qt's own names from here on.

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size and light or dark."""
        super().changeEvent(event)
        if hasattr(self, "_sorted") and (theme.font_changed(event) or theme.palette_changed(event)):
            self._dress()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Share the width anew."""
        super().resizeEvent(event)
        self._fit_columns()
