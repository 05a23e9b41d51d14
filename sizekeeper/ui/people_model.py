"""The people as they will be: a row each, with the cell of the file behind every field."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QAbstractTableModel, QDate, QLocale, QModelIndex, QObject, QPersistentModelIndex, Qt, Signal
from PySide6.QtGui import QFont

from sizekeeper.core.groups import groups_text
from sizekeeper.importing.people_columns import role_words
from sizekeeper.importing.people_draft import NEW, SKIP

if TYPE_CHECKING:
    import datetime as dt
    from collections.abc import Iterable

    from sizekeeper.core.measure import Measures
    from sizekeeper.importing.people_draft import FoundPerson, PeopleDraft

Index = QModelIndex | QPersistentModelIndex
AT = Qt.ItemDataRole.UserRole
"""The role under which a field tells the address of its cell, empty where it has none."""

NOT_A_LENGTH = Qt.ItemDataRole.UserRole + 1
"""The role under which a figure tells that its text is no length."""

_NOWHERE = QModelIndex()
_FIRST = ("name", "fate")
_DETAILS = ("groups", "born", "child", "unit", "on", "by", "over", "notes")
_HEADS = {"fate": "What happens"}


@dataclass(frozen=True, slots=True)
class _Field:
    """A field as shown: its text, its cell, whether a question about it is open, and whether it is no length."""

    text: str
    at: str = ""
    open: bool = False
    wrong: bool = False


class PeopleModel(QAbstractTableModel):
    """Those found in a table. A tick at the name takes somebody in.

    Signals:
        typed(str, str): a cell's address and the text it shall have.
        ticked(str, bool): the cell of a name, and whether she is taken in.
    """

    typed = Signal(str, str)
    ticked = Signal(str, bool)

    def __init__(self, measures: Measures, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._measures = measures
        self._asked: frozenset[str] = frozenset()
        self.people: tuple[FoundPerson, ...] = ()
        self.columns: tuple[str, ...] = _FIRST

    def show(self, draft: PeopleDraft) -> None:
        """Show the people as they are read now; the same rows and columns keep the place that is looked at."""
        used = {one.reading.measure for person in draft.people for one in person.readings}
        told = [role for role in _DETAILS if any(role in person.cells for person in draft.people)]
        known = [m.id for m in self._measures if m.id in used]
        fresh = (*_FIRST, *(r for r in told if r != "notes"), *known, *(r for r in told if r == "notes"))
        asked = frozenset(ask.at for ask in draft.asks)
        same = fresh == self.columns and len(draft.people) == len(self.people)
        if not same:
            self.beginResetModel()
        self.people, self.columns, self._asked = draft.people, fresh, asked
        if not same:
            self.endResetModel()
        elif self.people:
            self.dataChanged.emit(self.index(0, 0), self.index(self.rowCount() - 1, self.columnCount() - 1))

    def field(self, row: int, column: int) -> _Field:
        """A field as shown."""
        found, role = self.people[row], self.columns[column]
        if role == "fate":
            return _Field(fate_words(found), open=not found.fate)
        if role in found.cells or role == "name":
            at = found.cells.get(role, found.at)
            return _Field(_detail(found, role), at, at in self._asked)
        figures = [one for one in found.readings if one.reading.measure == role]
        if not figures:
            return _Field("")
        asked = any(one.at in self._asked or one.guessed for one in figures)
        wrong = any(one.reading.length is None for one in figures)
        return _Field(", ".join(one.reading.text for one in figures), figures[0].at, asked, wrong)

    def rowCount(self, parent: Index = _NOWHERE) -> int:
        """A row for each person."""
        return 0 if parent.isValid() else len(self.people)

    def columnCount(self, parent: Index = _NOWHERE) -> int:
        """Her name, what happens, what is told of her, and her figures."""
        return 0 if parent.isValid() else len(self.columns)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """Texts, ticks, words for screen readers, and the cells behind."""
        if not index.isValid():
            return None
        field = self.field(index.row(), index.column())
        if role == Qt.ItemDataRole.CheckStateRole:
            taken = self.people[index.row()].fate != SKIP
            state = Qt.CheckState.Checked if taken else Qt.CheckState.Unchecked
            return state if self.columns[index.column()] == "name" else None
        if role == Qt.ItemDataRole.FontRole:
            return self._font(index, field)
        texts = {
            Qt.ItemDataRole.DisplayRole: f"{field.text} ?" if field.open and field.text else field.text,
            Qt.ItemDataRole.EditRole: field.text,
            Qt.ItemDataRole.ToolTipRole: self.says(index.row(), index.column()),
            Qt.ItemDataRole.AccessibleTextRole: self.says(index.row(), index.column()),
        }
        return texts.get(Qt.ItemDataRole(role)) if role < AT else {AT: field.at, NOT_A_LENGTH: field.wrong}.get(role)

    def _font(self, index: Index, field: _Field) -> QFont:
        font = QFont()
        font.setStrikeOut(self.people[index.row()].fate == SKIP and self.columns[index.column()] != "fate")
        font.setItalic(field.wrong)
        return font

    def says(self, row: int, column: int) -> str:
        """A field in words."""
        field = self.field(row, column)
        parts = [f"{self.people[row].person.name}, {self._head(column)}: {field.text or 'nothing'}"]
        if field.wrong:
            parts.append("not a length, counts as not measured")
        if field.open:
            parts.append("a question is open")
        return f"{'; '.join(parts)}."

    def _head(self, column: int) -> str:
        role = self.columns[column]
        return _HEADS.get(role) or role_words(role)

    def setData(self, index: Index, value: object, role: int = Qt.ItemDataRole.EditRole) -> bool:
        """Type into the cell behind a field, or tick somebody."""
        found = self.people[index.row()]
        if role == Qt.ItemDataRole.CheckStateRole:
            self.ticked.emit(found.at, Qt.CheckState(value) == Qt.CheckState.Checked)
            return True
        field, text = self.field(index.row(), index.column()), str(value).strip()
        if role != Qt.ItemDataRole.EditRole or not field.at or text == field.text:
            return False
        self.typed.emit(field.at, text)
        return True

    def flags(self, index: Index) -> Qt.ItemFlag:
        """What has a cell of its own can be typed into; a name can be ticked."""
        if not index.isValid():
            return Qt.ItemFlag.NoItemFlags
        flags = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable
        if self.columns[index.column()] == "name":
            flags |= Qt.ItemFlag.ItemIsUserCheckable
        return flags | Qt.ItemFlag.ItemIsEditable if self.field(index.row(), index.column()).at else flags

    def headerData(self, section: int, way: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """What stands in a column."""
        if role == Qt.ItemDataRole.DisplayRole and way == Qt.Orientation.Horizontal:
            return self._head(section)
        return None


def _detail(found: FoundPerson, role: str) -> str:
    person = found.person
    readings = [one.reading for one in found.readings]
    texts = {
        "name": person.name,
        "groups": groups_text(person.groups),
        "born": _day(person.born) if person.born else "",
        "child": "yes" if person.child else "",
        "unit": person.unit,
        "notes": " ".join(person.notes.split()),
        "on": _each(_day(reading.on) for reading in readings),
        "by": _each(reading.by for reading in readings),
        "over": _each(reading.over for reading in readings),
    }
    return texts[role]


def _each(texts: Iterable[str]) -> str:
    return ", ".join(dict.fromkeys(text for text in texts if text))


def _day(day: dt.date) -> str:
    return QLocale().toString(QDate(day.year, day.month, day.day), "d MMM yyyy")


def fate_words(found: FoundPerson) -> str:
    """What becomes of somebody, in words."""
    if found.fate == SKIP:
        return "left out"
    if found.fate == NEW:
        return "another person" if found.known else "new"
    if not found.fate:
        return "in the library already"
    there = next((person for person in found.known if f"add:{person.id}" == found.fate), None)
    return f"added to {there.name}" if there is not None else "new"
