"""The grid of everybody and every pattern as an item model: people down and patterns across, or turned."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, QPersistentModelIndex, Qt

from sizekeeper import assets
from sizekeeper.core.wording import Wording
from sizekeeper.ui.entry_words import entry_name, entry_note

if TYPE_CHECKING:
    from collections.abc import Callable, Collection, Sequence

    from sizekeeper.core.pattern import Pattern
    from sizekeeper.core.person import Person
    from sizekeeper.ui.overview_cell import OverviewCell
    from sizekeeper.ui.overview_sizes import Pair
    from sizekeeper.ui.settings import Settings

    Cells = Callable[[str, str], OverviewCell | None]

Index = QModelIndex | QPersistentModelIndex
WAITING = "…"
"""What stands in a cell that is not worked out yet."""

CELL = Qt.ItemDataRole.UserRole
"""The `OverviewCell` of a cell, None while it is not worked out."""


class OverviewModel(QAbstractTableModel):
    """Shows the cells that whoever keeps them has."""

    def __init__(self, cells: Cells, settings: Settings, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._cells, self._settings = cells, settings
        self._people: tuple[Person, ...] = ()
        self._patterns: tuple[Pattern, ...] = ()
        self._turned = False

    @property
    def people(self) -> tuple[Person, ...]:
        """The people in the order shown."""
        return self._people

    @property
    def patterns(self) -> tuple[Pattern, ...]:
        """The patterns in the order shown."""
        return self._patterns

    @property
    def turned(self) -> bool:
        """Whether the patterns run down and the people across."""
        return self._turned

    def set_entries(self, people: Sequence[Person], patterns: Sequence[Pattern], *, turned: bool) -> None:
        """Show these people and patterns; the cells alone change where they are the same as before."""
        same = (
            turned == self._turned
            and [p.id for p in people] == [p.id for p in self._people]
            and [p.id for p in patterns] == [p.id for p in self._patterns]
        )
        if not same:
            self.beginResetModel()
        self._people, self._patterns, self._turned = tuple(people), tuple(patterns), turned
        if not same:
            self.endResetModel()
            return
        for orientation, count in (
            (Qt.Orientation.Horizontal, self.columnCount()),
            (Qt.Orientation.Vertical, self.rowCount()),
        ):
            if count:
                self.headerDataChanged.emit(orientation, 0, count - 1)
        self._all_changed()

    def _all_changed(self) -> None:
        if self.rowCount() and self.columnCount():
            self.dataChanged.emit(self.index(0, 0), self.index(self.rowCount() - 1, self.columnCount() - 1))

    def tell(self, pairs: Collection[Pair]) -> None:
        """Say that the cells of these pairs are different now."""
        people = {person.id: place for place, person in enumerate(self._people)}
        patterns = {pattern.id: place for place, pattern in enumerate(self._patterns)}
        for who, what in pairs:
            if who in people and what in patterns:
                place = (people[who], patterns[what])
                index = self.index(*(reversed(place) if self._turned else place))
                self.dataChanged.emit(index, index)

    def pair(self, index: Index) -> tuple[Person, Pattern]:
        """The person and the pattern of a cell."""
        row, column = (index.column(), index.row()) if self._turned else (index.row(), index.column())
        return self._people[row], self._patterns[column]

    def index_of(self, person: str, pattern: str) -> QModelIndex:
        """The cell of a person and a pattern; an invalid one where either is not shown."""
        row = next((i for i, one in enumerate(self._people) if one.id == person), -1)
        column = next((i for i, one in enumerate(self._patterns) if one.id == pattern), -1)
        if row < 0 or column < 0:
            return QModelIndex()
        return self.index(column, row) if self._turned else self.index(row, column)

    def said(self, index: Index) -> str:
        """A cell in words."""
        person, pattern = self.pair(index)
        cell = self._cells(person.id, pattern.id)
        words = Wording(self._settings.notation_for(person.unit), assets.measures().name)
        text = "not worked out yet" if cell is None else cell.said(words)
        return f"{entry_name(person)} in {entry_name(pattern)}: {text}"

    # Qt's own names from here on.

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own signature
        """How many people, or patterns when turned."""
        return 0 if parent.isValid() else len(self._patterns if self._turned else self._people)

    def columnCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own signature
        """How many patterns, or people when turned."""
        return 0 if parent.isValid() else len(self._people if self._turned else self._patterns)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """A cell's size and marks, and its words."""
        if not index.isValid():
            return None
        if role in (Qt.ItemDataRole.AccessibleTextRole, Qt.ItemDataRole.ToolTipRole):
            return self.said(index)
        if role not in (Qt.ItemDataRole.DisplayRole, CELL):
            return None
        person, pattern = self.pair(index)
        cell = self._cells(person.id, pattern.id)
        if role == CELL:
            return cell
        return WAITING if cell is None else cell.text

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """A person's name, a pattern's title."""
        of_people = (orientation == Qt.Orientation.Vertical) != self._turned
        entries: Sequence[Person | Pattern] = self._people if of_people else self._patterns
        if not 0 <= section < len(entries):
            return None
        name, note = entry_name(entries[section]), entry_note(entries[section])
        if role == Qt.ItemDataRole.DisplayRole:
            return name
        if role in (Qt.ItemDataRole.ToolTipRole, Qt.ItemDataRole.AccessibleTextRole):
            return f"{name}, {note}" if note else name
        return None
