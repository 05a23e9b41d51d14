"""The grid of one sheet as a table model: texts as they are read now, and what each cell was taken for."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, QPersistentModelIndex, Qt, Signal

from sizekeeper.importing.grid import Sheet, address, column_letters
from sizekeeper.ui.import_roles import LEFT_OUT, RoleLook, at_words, look_of

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from sizekeeper.importing.opened import Opened
    from sizekeeper.importing.question import Ask

Index = QModelIndex | QPersistentModelIndex
CELL = Qt.ItemDataRole.UserRole
"""The role under which a place tells its `CellView`."""

_NOWHERE = QModelIndex()


@dataclass(frozen=True, slots=True)
class CellView:
    """One place of the grid as shown. `table` counts from 1 where there are several tables, else it is 0."""

    at: str
    text: str
    printed: str
    look: RoleLook
    table: int = 0
    asked: bool = False
    number: bool = False


class GridModel(QAbstractTableModel):
    """One sheet of what is being imported. Typing into a cell corrects it.

    Signals:
        typed(str, str): a cell's address and its new text.
    """

    typed = Signal(str, str)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.sheet = Sheet("", ())
        self._roles: Mapping[str, str] = {}
        self._texts: dict[str, str] = {}
        self._ignored: set[str] = set()
        self._asked: set[str] = set()
        self._tables: dict[str, int] = {}
        self._places: dict[str, tuple[int, int]] = {}

    def show(self, opened: Opened, sheet: Sheet, asked: Sequence[Ask]) -> None:
        """Show a sheet as it is read now; the same sheet again keeps the place that is looked at."""
        fresh = sheet is not self.sheet
        if fresh:
            self.beginResetModel()
            self.sheet = sheet
            self._places = {}
            for r, row in enumerate(sheet.rows):
                for c, cell in enumerate(row):
                    if cell is not None:
                        self._places.setdefault(cell.at, (r, c))
        self._take(opened)
        self._asked = {ask.at for ask in asked if ask.sheet == sheet.name}
        if fresh:
            self.endResetModel()
        elif sheet.rows:
            self.dataChanged.emit(self.index(0, 0), self.index(self.rowCount() - 1, self.columnCount() - 1))

    def _take(self, opened: Opened) -> None:
        name, corrections = self.sheet.name, opened.answers.corrections
        self._roles = opened.draft.roles.get(name, {})
        self._texts = {at: text for (sheet, at), text in corrections.cells.items() if sheet == name}
        self._ignored = {at for sheet, at in corrections.ignored if sheet == name}
        tables = [table for table in opened.draft.tables if table.sheet == name]
        several = enumerate(tables if len(tables) > 1 else (), start=1)
        self._tables = {cell.at: n for n, table in several for row in table.rows for cell in row.cells if cell.at}

    def place_of(self, at: str) -> QModelIndex:
        """Where a cell stands; an index that is not valid where the sheet has no such cell."""
        place = self._places.get(at)
        if place is None and "#" not in at:
            from sizekeeper.importing.grid import place as place_in  # noqa: PLC0415 - named as the argument is elsewhere

            row, column = place_in(at)
            place = (row, column) if row < self.rowCount() and column < self.columnCount() else None
        return self.index(*place) if place else QModelIndex()

    def at(self, row: int, column: int) -> str:
        """The address of a place; empty for an empty place in a line of text."""
        cell = self.sheet.rows[row][column]
        if cell is not None:
            return cell.at
        return "" if self.sheet.single_column else address(row, column)

    def view(self, row: int, column: int) -> CellView:
        """A place as shown."""
        cell, at = self.sheet.rows[row][column], self.at(row, column)
        printed = cell.text if cell is not None else ""
        text = self._texts.get(at, printed)
        look = LEFT_OUT if at in self._ignored else look_of(self._roles.get(at, ""))
        figure = bool(text) and text.lstrip("-–—+½¼¾⅛⅜⅝⅞ ")[:1].isdigit()
        return CellView(at, text, printed, look, self._tables.get(at, 0), at in self._asked and bool(at), figure)

    def says(self, row: int, column: int) -> str:
        """A place in words: its address, what it says, what it was taken for."""
        view = self.view(row, column)
        if not view.at:
            return "Nothing stands here."
        shown = f"“{view.text}”" if view.text else "empty"
        parts = [shown]
        if view.text:
            parts.append(f"{view.look.words}{f' of table {view.table}' if view.table else ''}")
        if view.text != view.printed:
            parts.append(f"printed as “{view.printed}”" if view.printed else "nothing was printed")
        if view.asked:
            parts.append("a question is open")
        words = at_words(view.at)
        return f"{words[0].upper()}{words[1:]}: {'; '.join(parts)}."

    def rowCount(self, parent: Index = _NOWHERE) -> int:
        """The rows of the sheet."""
        return 0 if parent.isValid() else len(self.sheet.rows)

    def columnCount(self, parent: Index = _NOWHERE) -> int:
        """The columns of the sheet."""
        return 0 if parent.isValid() else self.sheet.width

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """Texts, words and the view of a place."""
        if not index.isValid():
            return None
        row, column = index.row(), index.column()
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.EditRole):
            return self.view(row, column).text
        if role in (Qt.ItemDataRole.ToolTipRole, Qt.ItemDataRole.AccessibleTextRole):
            return self.says(row, column)
        return self.view(row, column) if role == CELL else None

    def setData(self, index: Index, value: object, role: int = Qt.ItemDataRole.EditRole) -> bool:
        """Correct a cell; a text that is the same is no correction."""
        view = self.view(index.row(), index.column())
        text = " ".join(str(value).split())
        if role != Qt.ItemDataRole.EditRole or not view.at or text == view.text:
            return False
        self.typed.emit(view.at, text)
        return True

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Every cell that has an address can be typed into."""
        if not index.isValid():
            return Qt.ItemFlag.NoItemFlags
        flags = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable
        if self.at(index.row(), index.column()):
            flags |= Qt.ItemFlag.ItemIsEditable
        return flags

    def headerData(self, section: int, way: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """Letters across and numbers down, as in a spreadsheet; parts of lines are counted."""
        if role != Qt.ItemDataRole.DisplayRole:
            return None
        if way == Qt.Orientation.Vertical:
            return str(section + 1)
        return str(section + 1) if self.sheet.single_column else column_letters(section)
