"""One table of the reading: its kind, unit and direction above the chart as it will be."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QCheckBox, QComboBox, QHBoxLayout, QVBoxLayout, QWidget

from sizekeeper.importing.question import KINDS, UNITS
from sizekeeper.ui import theme
from sizekeeper.ui.import_table_model import TableModel
from sizekeeper.ui.import_table_view import TableView
from sizekeeper.ui.lettering import Lettering

if TYPE_CHECKING:
    from PySide6.QtCore import QEvent

    from sizekeeper.core.measure import Measures
    from sizekeeper.importing.draft import DraftTable

WAYS = {"measures_in_rows": "sizes across", "sizes_in_rows": "sizes down", "long": "one figure a row"}
_SEVERAL = "several units"


class TableCard(QWidget):
    """A table with its choices. Whether it is taken in is a tick beside its name.

    Signals:
        chosen(str, str, str): which choice ("kind", "unit", "way") was made, the table's key, and the value.
        ticked(str, bool): the table's key and whether it is taken in.
    """

    chosen = Signal(str, str, str)
    ticked = Signal(str, bool)

    def __init__(self, table: DraftTable, measures: Measures, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.key = table.key
        self.model = TableModel(table, measures, self)
        self.taken = QCheckBox(self)
        self.kind = self._choice("Kind of the table", {kind: words.capitalize() for kind, words in KINDS.items()})
        self.unit = self._choice("Unit of the table", {unit: f"in {words}" for unit, words in UNITS.items()})
        self.way = self._choice("How the table lies in the file", WAYS)
        self.title = Lettering("", "note", self)
        self.view = TableView(self.model, "The chart as it will be", self)
        self._arrange()
        self.taken.toggled.connect(self._on_ticked)
        self.kind.activated.connect(self._on_kind)
        self.unit.activated.connect(self._on_unit)
        self.way.activated.connect(self._on_way)
        self.show_table(table, taken=True, several=False)

    def _choice(self, name: str, items: dict[str, str]) -> QComboBox:
        choice = QComboBox(self)
        choice.setAccessibleName(name)
        choice.setToolTip(name)
        for value, words in items.items():
            choice.addItem(words, value)
        return choice

    def _arrange(self) -> None:
        self._line = QHBoxLayout()
        for widget in (self.taken, self.kind, self.unit, self.way):
            self._line.addWidget(widget)
        self._line.addStretch(1)
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.addLayout(self._line)
        self._column.addWidget(self.title)
        self._column.addWidget(self.view)
        self._space()

    def show_table(self, table: DraftTable, *, taken: bool, several: bool, sheet: str = "") -> None:
        """Show the table as it is read now.

        Args:
            table: the table.
            taken: whether it is taken in.
            several: whether there are others beside it, so that it can be left out.
            sheet: the name of its sheet, where there are others.
        """
        self.key = table.key
        self.model.show(table)
        blocked = self.taken.blockSignals(True)
        self.taken.setChecked(taken)
        self.taken.blockSignals(blocked)
        self.taken.setVisible(several)
        self.kind.setCurrentIndex(self.kind.findData(table.kind))
        self._show_unit(table)
        self.way.setCurrentIndex(self.way.findData(table.orientation))
        title = " · ".join(part for part in (sheet, table.title) if part)
        self.title.setText(title)
        self.title.setVisible(bool(title))
        for widget in (self.kind, self.unit, self.way, self.view):
            widget.setEnabled(taken)
        name = f"{KINDS[table.kind].capitalize()} as they will be"
        self.view.setAccessibleName(name)
        self.taken.setAccessibleName(f"Take in: {KINDS[table.kind]}, {table.title or table.sheet}")

    def _show_unit(self, table: DraftTable) -> None:
        mixed = self.unit.findData("mixed")
        if table.unit == "mixed" and mixed < 0:
            self.unit.addItem(f"in {_SEVERAL}", "mixed")
        elif table.unit != "mixed" and mixed >= 0:
            self.unit.removeItem(mixed)
        self.unit.setCurrentIndex(self.unit.findData(table.unit))

    def _on_ticked(self, taken: bool) -> None:  # noqa: FBT001 - a slot
        self.ticked.emit(self.key, taken)

    def _on_kind(self) -> None:
        self._choose("kind", self.kind, self.model.table.kind)

    def _on_unit(self) -> None:
        if self.unit.currentData() != "mixed":
            self._choose("unit", self.unit, self.model.table.unit)

    def _on_way(self) -> None:
        self._choose("way", self.way, self.model.table.orientation)

    def _choose(self, which: str, choice: QComboBox, before: str) -> None:
        if choice.currentData() != before:
            self.chosen.emit(which, self.key, choice.currentData())

    def _space(self) -> None:
        self._line.setSpacing(theme.spacing(1))
        self._column.setSpacing(theme.spacing(0.75))

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if theme.font_changed(event):
            self._space()
