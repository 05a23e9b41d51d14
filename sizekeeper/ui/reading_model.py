"""All readings of one measure as a table, newest day first."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, QPersistentModelIndex, Qt

from sizekeeper.core.found_words import HANDS
from sizekeeper.core.notation import show, spoken
from sizekeeper.core.reading_edit import shown_text, with_reading

if TYPE_CHECKING:
    from sizekeeper.core.person import Person, Reading
    from sizekeeper.ui.person_desk import PersonDesk

Index = QModelIndex | QPersistentModelIndex
DAY, FIGURE, OTHER, HAND = range(4)
_TITLES = ("Day", "Figure", "", "Measured")
_NOWHERE = QModelIndex()


class ReadingModel(QAbstractTableModel):
    """The readings of the measure in hand; the figure is edited in its cell."""

    def __init__(self, desk: PersonDesk, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._measure = ""
        self._entry = ""
        self._readings: list[tuple[int, Reading]] = []

    def show_measure(self, measure: str) -> None:
        """Show the readings of a measure of the person at the desk; only rows that differ are announced."""
        person = self._desk.person
        readings = _newest_first(person, measure) if person else []
        if (measure, self._desk.entry) != (self._measure, self._entry):
            self.beginResetModel()
            self._measure, self._entry, self._readings = measure, self._desk.entry, readings
            self.endResetModel()
        else:
            self._become(readings)

    def _become(self, readings: list[tuple[int, Reading]]) -> None:
        """Take rows out or put rows in where the lists begin to differ, then announce the rows kept."""
        old = [r for _, r in self._readings]
        new = [r for _, r in readings]
        surplus = len(new) - len(old)
        start = next((i for i, (a, b) in enumerate(zip(old, new, strict=False)) if a != b), min(len(old), len(new)))
        if surplus > 0:
            self.beginInsertRows(QModelIndex(), start, start + surplus - 1)
            self._readings = readings
            self.endInsertRows()
        elif surplus < 0:
            self.beginRemoveRows(QModelIndex(), start, start - surplus - 1)
            self._readings = readings
            self.endRemoveRows()
        self._readings = readings
        if readings:
            self.dataChanged.emit(self.index(0, 0), self.index(len(readings) - 1, HAND))

    def reading(self, row: int) -> tuple[int, Reading] | None:
        """The reading in a row, with its place among all of the person's; None for no row."""
        return self._readings[row] if 0 <= row < len(self._readings) else None

    def row_of(self, reading: Reading) -> int:
        """The row of a reading; -1 where it is not."""
        return next((row for row, (_, r) in enumerate(self._readings) if r == reading), -1)

    def _text(self, reading: Reading, column: int) -> str:
        person = self._desk.person
        length = reading.length
        match column:
            case 0:
                return self._desk.plain_day(reading.on)
            case 1:
                return shown_text(reading, person.unit) if person else reading.text
            case 2:
                return show(length.exact_cm, self._desk.other_notation(length.unit)) if length else "not a length"
            case _:
                return HANDS[reading.by]

    def _spoken(self, reading: Reading, column: int) -> str:
        if column == FIGURE and reading.length is not None:
            return spoken(reading.length.exact_cm, self._desk.settings.notation_in(_tape(reading.length.unit)))
        if column == OTHER and reading.length is not None:
            return spoken(reading.length.exact_cm, self._desk.other_notation(reading.length.unit))
        return self._text(reading, column)

    def rowCount(self, parent: Index = _NOWHERE) -> int:
        """One row a reading."""
        return 0 if parent.isValid() else len(self._readings)

    def columnCount(self, parent: Index = _NOWHERE) -> int:
        """Day, figure, the same in the other unit, and who measured."""
        return 0 if parent.isValid() else len(_TITLES)

    def flags(self, index: Index) -> Qt.ItemFlag:
        """The figure can be edited."""
        flags = super().flags(index)
        if index.isValid() and index.column() == FIGURE and not self._desk.read_only:
            flags |= Qt.ItemFlag.ItemIsEditable
        return flags

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> Any:  # noqa: ANN401 - Qt's own signature
        """The columns' titles."""
        if orientation == Qt.Orientation.Horizontal and 0 <= section < len(_TITLES):
            if role == Qt.ItemDataRole.DisplayRole:
                return _TITLES[section]
            if role == Qt.ItemDataRole.AccessibleTextRole:
                return _TITLES[section] or "In the other unit"
        return None

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:  # noqa: ANN401 - Qt's own signature
        """A cell as text, as typed for editing, in words for a screen reader, and with its note as a tip."""
        found = self.reading(index.row()) if index.isValid() else None
        if found is None:
            return None
        _, reading = found
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.EditRole):
            return self._text(reading, index.column())
        if role == Qt.ItemDataRole.AccessibleTextRole:
            return self._spoken(reading, index.column())
        if role == Qt.ItemDataRole.ToolTipRole:
            said = (f"over {reading.over}" if reading.over else "", reading.note)
            return ", ".join(s for s in said if s) or None
        return None

    def setData(self, index: Index, value: Any, role: int = Qt.ItemDataRole.EditRole) -> bool:  # noqa: ANN401 - Qt's own signature
        """Correct the figure of a reading."""
        found, person = self.reading(index.row()), self._desk.person
        text = str(value).strip()
        if role != Qt.ItemDataRole.EditRole or index.column() != FIGURE or found is None or person is None or not text:
            return False
        place, reading = found
        if text == self._text(reading, FIGURE):
            return False
        self._desk.edit(
            "Correct an earlier figure", with_reading(person, place, replace(reading, text=text)), self._measure
        )
        return True


def _newest_first(person: Person, measure: str) -> list[tuple[int, Reading]]:
    found = [(i, r) for i, r in enumerate(person.readings) if r.measure == measure]
    return sorted(found, key=lambda pair: (pair[1].on, pair[0]), reverse=True)


def _tape(unit: str) -> Any:  # noqa: ANN401 - "cm" or "in"
    return "in" if unit in ("in", "ft", "yd") else "cm"
