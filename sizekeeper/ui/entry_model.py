"""The people, or the patterns, as a list that follows the library."""

from __future__ import annotations

import dataclasses
from typing import TYPE_CHECKING, Literal

from PySide6.QtCore import QAbstractListModel, QModelIndex, QObject, QPersistentModelIndex, QSortFilterProxyModel, Qt

from sizekeeper.core.groups import belongs
from sizekeeper.core.pattern import Pattern
from sizekeeper.core.person import Person
from sizekeeper.ui.entry_words import entry_name, entry_note, found_by, is_hidden, place_in_list
from sizekeeper.ui.selection import Place

if TYPE_CHECKING:
    from sizekeeper.store.codec import Value
    from sizekeeper.ui.session import Change, Session

EntryKind = Literal["person", "pattern"]
AnyIndex = QModelIndex | QPersistentModelIndex

ID_ROLE = Qt.ItemDataRole.UserRole
NOTE_ROLE = Qt.ItemDataRole.UserRole + 1
HIDDEN_ROLE = Qt.ItemDataRole.UserRole + 2
_FLAGS = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable | Qt.ItemFlag.ItemNeverHasChildren


class EntryModel(QAbstractListModel):
    """Every person or every pattern, hidden ones too, in no order: `EntryFilter` sorts and leaves out."""

    def __init__(self, session: Session, kind: EntryKind, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.session = session
        self.kind: EntryKind = kind
        self._shown: list[Person | Pattern] = self._entries()
        session.changed.connect(self._follow)
        session.drafted.connect(self._follow)

    def entry(self, row: int) -> Person | Pattern:
        """The entry of a row."""
        return self._shown[row]

    def _entries(self) -> list[Person | Pattern]:
        if self.kind == "person":
            return list(self.session.people(hidden=True))
        return list(self.session.patterns(hidden=True))

    def _follow(self, change: Change) -> None:
        """Take rows out, put rows in and repaint, only where something differs."""
        if self.kind not in change.kinds:
            return
        now = {value.id: value for value in self._entries()}
        for row in reversed(range(len(self._shown))):
            fresh = now.pop(self._shown[row].id, None)
            if fresh is None:
                self.beginRemoveRows(QModelIndex(), row, row)
                del self._shown[row]
                self.endRemoveRows()
            elif fresh != self._shown[row]:
                self._shown[row] = fresh
                self.dataChanged.emit(self.index(row), self.index(row))
        if now:
            end = len(self._shown)
            self.beginInsertRows(QModelIndex(), end, end + len(now) - 1)
            self._shown += now.values()
            self.endInsertRows()

    def _spoken(self, value: Value) -> str:
        hidden = ", hidden" if is_hidden(value) else ""
        note = entry_note(value) if isinstance(value, Person | Pattern) else ""
        return f"{entry_name(value)}, {note}{hidden}"

    def rowCount(self, parent: AnyIndex = QModelIndex()) -> int:  # noqa: B008 - Qt's own signature
        """One row for each entry."""
        return 0 if parent.isValid() else len(self._shown)

    def data(self, index: AnyIndex, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """The name, the line below it, and the id."""
        if not index.isValid():
            return None
        value = self._shown[index.row()]
        match role:
            case Qt.ItemDataRole.DisplayRole | Qt.ItemDataRole.ToolTipRole:
                return entry_name(value)
            case Qt.ItemDataRole.EditRole:
                return value.name if isinstance(value, Person) else value.title
            case Qt.ItemDataRole.AccessibleTextRole:
                return self._spoken(value)
            case _:
                return {ID_ROLE: value.id, NOTE_ROLE: entry_note(value), HIDDEN_ROLE: value.hidden}.get(role)

    def setData(self, index: AnyIndex, value: object, role: int = Qt.ItemDataRole.EditRole) -> bool:
        """Rename an entry in the list; an empty name is not taken."""
        name = str(value).strip()
        if role != Qt.ItemDataRole.EditRole or not index.isValid() or not name:
            return False
        before = self.session.committed(self._shown[index.row()].id)
        if isinstance(before, Person):
            place = Place("person", before.id, "name")
            self.session.apply("Rename person", before, dataclasses.replace(before, name=name), place=place)
        elif isinstance(before, Pattern):
            place = Place("pattern", before.id, "title")
            self.session.apply("Rename pattern", before, dataclasses.replace(before, title=name), place=place)
        return True

    def flags(self, index: AnyIndex) -> Qt.ItemFlag:
        """Rows can be chosen and, unless the library is read-only, renamed."""
        if not index.isValid():
            return Qt.ItemFlag.NoItemFlags
        return _FLAGS if self.session.read_only else _FLAGS | Qt.ItemFlag.ItemIsEditable


class EntryFilter(QSortFilterProxyModel):
    """The entries by name, those found by the search box, and hidden ones only when asked for."""

    def __init__(self, model: EntryModel, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._words = ""
        self._hidden_too = False
        self._group = ""
        self._model = model
        self.setSourceModel(model)
        self.sort(0)

    def look_for(self, words: str) -> None:
        """Leave only the entries in which every word stands."""
        if words != self._words:
            self._words = words
            self.invalidate()

    def show_hidden(self, shown: bool) -> None:  # noqa: FBT001 - a slot of a check box
        """Show hidden entries too, or leave them out."""
        if shown != self._hidden_too:
            self._hidden_too = shown
            self.invalidate()

    def show_group(self, group: str) -> None:
        """Leave only the people of a group, or everybody."""
        if group != self._group:
            self._group = group
            self.invalidate()

    def row_of(self, entry: str) -> int:
        """The row in which an entry is shown, -1 when it is left out."""
        rows = (row for row in range(self.rowCount()) if self.index(row, 0).data(ID_ROLE) == entry)
        return next(rows, -1)

    def lessThan(self, left: AnyIndex, right: AnyIndex) -> bool:
        """By name; the platform's own collation is left aside, because it differs from one machine to the next."""
        one, other = self._model.entry(left.row()), self._model.entry(right.row())
        return place_in_list(one) < place_in_list(other)

    def filterAcceptsRow(self, source_row: int, _source_parent: AnyIndex) -> bool:
        """Whether a row is shown."""
        value = self._model.entry(source_row)
        if self._group and isinstance(value, Person) and not belongs(value, self._group):
            return False
        return (self._hidden_too or not value.hidden) and found_by(value, self._words)
