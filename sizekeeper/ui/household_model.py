"""The household's tables as an item model, and the filter that sorts and searches them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import (
    QAbstractTableModel,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    QSortFilterProxyModel,
    Qt,
    Signal,
)

from sizekeeper.ui.household_cells import HouseCell

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sizekeeper.ui.household_cells import Heading, HouseRow, Order

Index = QModelIndex | QPersistentModelIndex

CELL = Qt.ItemDataRole.UserRole
"""The `HouseCell` of a cell, ready to paint; over a column its `Heading`."""
KEY = Qt.ItemDataRole.UserRole + 1
"""What the row is about."""
LEFT_OUT = Qt.ItemDataRole.UserRole + 2
"""Whether the row has no tick although it could."""

_READ = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable | Qt.ItemFlag.ItemNeverHasChildren


class HouseModel(QAbstractTableModel):
    """Rows of cells under headings, in the order given.

    Signals:
        ticked(str, bool): somebody put a tick before a row, or took it away.
    """

    ticked = Signal(str, bool)

    def __init__(self, parent: QObject | None = None) -> None:
        """Start empty."""
        super().__init__(parent)
        self._headings: list[Heading] = []
        self._rows: list[HouseRow] = []

    @property
    def headings(self) -> Sequence[Heading]:
        """What stands over the columns."""
        return self._headings

    @property
    def rows(self) -> Sequence[HouseRow]:
        """The rows in the order given."""
        return self._rows

    def show(self, headings: Sequence[Heading], rows: Sequence[HouseRow]) -> None:
        """Show other rows, touching only what is different."""
        if len(headings) != len(self._headings):
            self.beginResetModel()
            self._headings, self._rows = list(headings), list(rows)
            self.endResetModel()
            return
        if list(headings) != self._headings:
            self._headings = list(headings)
            self.headerDataChanged.emit(Qt.Orientation.Horizontal, 0, len(headings) - 1)
        self._follow(rows)

    def change(self, row: HouseRow) -> None:
        """Show one row as it is now."""
        place = next((i for i, one in enumerate(self._rows) if one.key == row.key), -1)
        if place >= 0 and self._rows[place] != row:
            self._rows[place] = row
            self.dataChanged.emit(self.index(place, 0), self.index(place, len(self._headings) - 1))

    def _follow(self, rows: Sequence[HouseRow]) -> None:
        """Take rows out and put rows in so that those which stay keep their place in the views."""
        wanted = [row.key for row in rows]
        kept = set(wanted)
        for place in reversed(range(len(self._rows))):
            if self._rows[place].key not in kept:
                self.beginRemoveRows(QModelIndex(), place, place)
                del self._rows[place]
                self.endRemoveRows()
        stay = [row.key for row in self._rows]
        known = set(stay)
        if stay != [key for key in wanted if key in known]:
            self.beginResetModel()
            self._rows = list(rows)
            self.endResetModel()
            return
        for place, row in enumerate(rows):
            if place >= len(self._rows) or self._rows[place].key != row.key:
                self.beginInsertRows(QModelIndex(), place, place)
                self._rows.insert(place, row)
                self.endInsertRows()
            elif self._rows[place] != row:
                self._rows[place] = row
                self.dataChanged.emit(self.index(place, 0), self.index(place, len(self._headings) - 1))

    def order(self, row: int, column: int) -> Order:
        """What a cell is sorted by."""
        return self._rows[row].cells[column].order

    # Qt's own names from here on.

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own signature
        """How many rows."""
        return 0 if parent.isValid() else len(self._rows)

    def columnCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own signature
        """How many columns."""
        return 0 if parent.isValid() else len(self._headings)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """A cell, what is said of it, and the tick before a row."""
        if not index.isValid():
            return None
        row = self._rows[index.row()]
        cell = row.cells[index.column()]
        if role == Qt.ItemDataRole.DisplayRole:
            return cell.text
        if role in (Qt.ItemDataRole.AccessibleTextRole, Qt.ItemDataRole.ToolTipRole):
            return cell.said or cell.text
        if role == Qt.ItemDataRole.CheckStateRole and index.column() == 0 and row.ticked is not None:
            return Qt.CheckState.Checked if row.ticked else Qt.CheckState.Unchecked
        return {CELL: cell, KEY: row.key, LEFT_OUT: row.ticked is False}.get(role)

    def setData(self, index: Index, value: object, role: int = Qt.ItemDataRole.EditRole) -> bool:
        """Put a tick before a row or take it away; whoever keeps the ticks shows the row anew."""
        if role != Qt.ItemDataRole.CheckStateRole or not index.isValid():
            return False
        self.ticked.emit(self._rows[index.row()].key, Qt.CheckState(value) == Qt.CheckState.Checked)
        return True

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Rows can be picked, and ticked where there is something to tick."""
        if not index.isValid():
            return Qt.ItemFlag.NoItemFlags
        ticks = index.column() == 0 and self._rows[index.row()].ticked is not None
        return _READ | Qt.ItemFlag.ItemIsUserCheckable if ticks else _READ

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """What stands over a column, and the row's name for a screen reader."""
        if orientation == Qt.Orientation.Vertical:
            named = role == Qt.ItemDataRole.AccessibleTextRole and 0 <= section < len(self._rows)
            return self._rows[section].cells[0].text if named else None
        if not 0 <= section < len(self._headings):
            return None
        heading = self._headings[section]
        if role == CELL:
            return heading
        if role == Qt.ItemDataRole.DisplayRole:
            return f"{heading.text} {heading.note}".strip()
        said = heading.said or heading.text
        if role == Qt.ItemDataRole.ToolTipRole:
            return f"{said}.\nClick to sort by it, or press Ctrl+Up or Ctrl+Down in the column."
        return said if role == Qt.ItemDataRole.AccessibleTextRole else None


class HouseFilter(QSortFilterProxyModel):
    """The rows sorted by a column; what has no value comes last either way, and equal rows keep their order."""

    def __init__(self, model: HouseModel, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._model = model
        self._words: tuple[str, ...] = ()
        self.setSourceModel(model)

    def look_for(self, words: str) -> None:
        """Leave only the rows in which every word stands."""
        found = tuple(words.casefold().split())
        if found != self._words:
            self._words = found
            self.invalidate()

    def row_of(self, key: str) -> int:
        """The row that is about this, -1 where it is not shown."""
        return next((row for row in range(self.rowCount()) if self.index(row, 0).data(KEY) == key), -1)

    def cell(self, row: int, column: int) -> HouseCell:
        """A cell as shown."""
        cell = self.index(row, column).data(CELL)
        assert isinstance(cell, HouseCell)  # noqa: S101 - the model gives nothing else
        return cell

    def lessThan(self, left: Index, right: Index) -> bool:
        """By what a cell is sorted by."""
        one, other = (self._model.order(index.row(), index.column()) for index in (left, right))
        if one[0] != other[0] and self.sortOrder() == Qt.SortOrder.DescendingOrder:
            return one > other
        return one < other

    def filterAcceptsRow(self, source_row: int, _source_parent: Index) -> bool:
        """Whether every word stands in the texts of a row."""
        if not self._words:
            return True
        cells = self._model.rows[source_row].cells
        text = " ".join(f"{cell.text} {cell.note}" for cell in cells).casefold()
        return all(word in text for word in self._words)
