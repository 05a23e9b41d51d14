"""The left side of the window that imports people: the file's grid with marks, and what can be set there."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QComboBox, QHBoxLayout, QLabel, QVBoxLayout, QWidget

from sizekeeper.core.people_headings import HEADINGS
from sizekeeper.importing.draft import Corrections, Draft
from sizekeeper.importing.opened import Answers, Opened
from sizekeeper.importing.people_columns import is_measure
from sizekeeper.importing.question import UNITS
from sizekeeper.ui import theme
from sizekeeper.ui.import_grid import ImportGrid
from sizekeeper.ui.import_grid_model import GridModel
from sizekeeper.ui.import_roles import PEOPLE_LEGEND
from sizekeeper.ui.import_sheet_panel import Swatch
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.pattern_link import Link
from sizekeeper.ui.person_fields import CalmCombo

if TYPE_CHECKING:
    from PySide6.QtCore import QEvent

    from sizekeeper.core.measure import Measures
    from sizekeeper.importing.people_draft import Column, PeopleDraft

_NOT_READ = "nothing: it is not read"


class PeopleSheet(QWidget):
    """The table as found.

    Signals:
        typed(str, str): a cell's address and its new text.
        leave_wanted(object): addresses of cells that shall not be read.
        back_wanted(object): addresses of cells that shall be read as they came.
        table_wanted(str, object, object): a sheet, whether a person has a column there (or None), and the row or column
            of the headings (or None): what is not said is to be found.
        role_wanted(str, str): the heading's cell of a column, and what stands in it.
        unit_wanted(str, str): the same, and the unit of its bare figures.
    """

    typed = Signal(str, str)
    leave_wanted = Signal(object)
    back_wanted = Signal(object)
    table_wanted = Signal(str, object, object)
    role_wanted = Signal(str, str)
    unit_wanted = Signal(str, str)

    def __init__(self, measures: Measures, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._draft: PeopleDraft | None = None
        self.model = GridModel(self)
        self.grid = ImportGrid(self.model, self)
        self.sheets = CalmCombo("Sheet of the file", self)
        self.way = CalmCombo("How the people stand", self)
        self.way.addItem("A row for each person", False)
        self.way.addItem("A column for each person", True)
        self.heads = Link("These are the headings", "The current row or column holds the headings", self)
        self.leave = Link("Leave out", "Leave the marked cells out, or take them back", self)
        self.restore = Link("As it came", "Read the marked cells as they came", self)
        self.line = Lettering("", "muted", self)
        self.column_words = QLabel(self)
        self.column_words.setTextFormat(Qt.TextFormat.PlainText)
        self.role = CalmCombo("What the column holds", self)
        self.unit = CalmCombo("Unit of the column", self)
        self._fill_choices(measures)
        self._arrange()
        self._connect()

    def _fill_choices(self, measures: Measures) -> None:
        self.role.setMaxVisibleItems(18)
        self.role.addItem(_NOT_READ, "")
        for role, words in HEADINGS.items():
            self.role.addItem(words, role)
        for measure in measures:
            if measure.use != "finished":
                self.role.addItem(measure.name, measure.id)
        self.unit.addItem("unit as stated", "")
        for unit, words in UNITS.items():
            self.unit.addItem(words, unit)

    def _arrange(self) -> None:
        for combo in (self.sheets, self.role):
            combo.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
            combo.setMinimumContentsLength(14)
        self._tools, self._choices, legend = QHBoxLayout(), QHBoxLayout(), QHBoxLayout()
        for widget in (self.sheets, self.way, self.heads, self.leave, self.restore):
            self._tools.addWidget(widget)
        self._tools.addStretch(1)
        for choice in (self.column_words, self.role, self.unit):
            self._choices.addWidget(choice)
        self._choices.setStretch(1, 1)
        for look in PEOPLE_LEGEND:
            legend.addWidget(Swatch(look, self))
            words = Lettering(look.words.partition(",")[0], "note", self)
            words.setWordWrap(False)
            legend.addWidget(words)
            legend.addSpacing(theme.spacing(0.75))
        legend.addStretch(1)
        self._column = QVBoxLayout(self)
        self._column.addLayout(self._tools)
        self._column.addWidget(self.grid, 1)
        self._column.addWidget(self.line)
        self._column.addLayout(self._choices)
        self._column.addLayout(legend)
        self._space()

    def _connect(self) -> None:
        self.sheets.activated.connect(self._on_sheet)
        self.way.activated.connect(self._on_way)
        self.heads.clicked.connect(self._on_heads)
        self.leave.clicked.connect(self.grid.leave_out)
        self.restore.clicked.connect(self.grid.restore)
        self.grid.moved.connect(self._on_moved)
        self.grid.leave_wanted.connect(self.leave_wanted)
        self.grid.back_wanted.connect(self.back_wanted)
        self.model.typed.connect(self.typed)
        self.role.activated.connect(self._on_role)
        self.unit.activated.connect(self._on_unit)

    def show_reading(self, draft: PeopleDraft) -> None:
        """Show the sheet as it is read now."""
        self._draft = draft
        if self.sheets.count() != len(draft.sheets):
            self.sheets.clear()
            for sheet in draft.sheets:
                self.sheets.addItem(sheet.name, sheet.name)
        self.sheets.setCurrentIndex(self.sheets.findData(draft.sheet.name))
        self.sheets.setVisible(len(draft.sheets) > 1)
        self.way.setCurrentIndex(int(draft.table.turned if draft.table else bool(draft.answers.turned)))
        self.model.show(_as_opened(draft), draft.sheet, draft.asks)
        self._on_moved()

    def go_to(self, at: str) -> None:
        """Bring a cell into view."""
        if at:
            self.grid.go_to(at)

    def edit(self, at: str) -> None:
        """Open a cell for typing."""
        self.go_to(at)
        self.grid.setFocus(Qt.FocusReason.OtherFocusReason)
        self.grid.edit(self.grid.currentIndex())

    def name_column(self, at: str) -> None:
        """Go to the choice of what a column holds."""
        self.go_to(at)
        self.role.setFocus(Qt.FocusReason.OtherFocusReason)
        self.role.showPopup()

    @property
    def _at_column(self) -> Column | None:
        """The column that the current cell stands in."""
        index = self.grid.currentIndex()
        if self._draft is None or self._draft.table is None or not index.isValid():
            return None
        table = self._draft.table
        place = index.row() if table.turned else index.column()
        return next((column for column in table.columns if column.place == place), None)

    def _on_moved(self) -> None:
        index, column = self.grid.currentIndex(), self._at_column
        self.line.setText(self.model.says(index.row(), index.column()) if index.isValid() else "")
        for widget in (self.column_words, self.role, self.unit):
            widget.setEnabled(column is not None)
        if column is None or self._draft is None:
            self.column_words.setText("Column:")
            return
        label = column.label if len(column.label) <= 24 else f"{column.label[:22]}…"  # noqa: PLR2004 - the line's room
        what = "Row" if self._draft.table is not None and self._draft.table.turned else "Column"
        self.column_words.setText(f"{what} “{label}” holds" if label else f"{what} without a heading holds")
        self._show_role(column)
        self.unit.setEnabled(is_measure(column.role))
        self.unit.setCurrentIndex(max(self.unit.findData(column.unit), 0))

    def _show_role(self, column: Column) -> None:
        """The column's role; what is told of single figures is offered only where it stands."""
        place = self.role.findData(column.role)
        while self.role.count() and ":" in str(self.role.itemData(self.role.count() - 1)):
            self.role.removeItem(self.role.count() - 1)
        if place < 0:
            from sizekeeper.importing.people_columns import role_words  # noqa: PLC0415 - seldom wanted

            self.role.addItem(role_words(column.role), column.role)
        self.role.setCurrentIndex(self.role.findData(column.role))

    def _on_sheet(self) -> None:
        self.table_wanted.emit(self.sheets.currentData(), None, None)

    def _on_way(self) -> None:
        if self._draft is not None:
            self.table_wanted.emit(self._draft.sheet.name, self.way.currentData(), None)

    def _on_heads(self) -> None:
        index = self.grid.currentIndex()
        if self._draft is not None and index.isValid():
            turned = bool(self.way.currentData())
            self.table_wanted.emit(self._draft.sheet.name, turned, index.column() if turned else index.row())

    def _on_role(self) -> None:
        if (column := self._at_column) is not None and self.role.currentData() != column.role:
            self.role_wanted.emit(column.at, self.role.currentData())

    def _on_unit(self) -> None:
        if (column := self._at_column) is not None and self.unit.currentData() != column.unit:
            self.unit_wanted.emit(column.at, self.unit.currentData())

    def _space(self) -> None:
        self._tools.setSpacing(theme.spacing(0.75))
        self._choices.setSpacing(theme.spacing(1))
        self._column.setContentsMargins(theme.spacing(3), 0, theme.spacing(1.5), theme.spacing(1))
        self._column.setSpacing(theme.spacing(0.75))

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if theme.font_changed(event):
            self._space()


def _as_opened(draft: PeopleDraft) -> Opened:
    """What the grid shows of a source, as it is told for charts: the roles of cells, and what was set by hand."""
    shown = Draft(draft.name, (), (), draft.sheets, {draft.sheet.name: draft.roles})
    corrections = Corrections(cells=draft.answers.cells, ignored=draft.answers.ignored)
    return Opened(draft.name, draft.sheets, shown, Answers(corrections))
