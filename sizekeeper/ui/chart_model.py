"""A chart as a table that is typed into like a spreadsheet.

The first row holds the sizes, so that they are named like any cell; the measures stand in the vertical header. Behind
the last size is room for more, and below the last measure a row that asks for one. The model never edits: it says what
the edit would be, and shows the chart it is given.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, QPersistentModelIndex, Qt, Signal
from PySide6.QtGui import QFont

from sizekeeper.core import chart_edit as edit
from sizekeeper.core.cells import cell_problem
from sizekeeper.core.chart_doubts import row_name
from sizekeeper.errors import ChartError
from sizekeeper.ui.chart_splice import columns_spliced, first_difference, rows_spliced
from sizekeeper.ui.chart_words import cell_says, cell_words, row_tip

if TYPE_CHECKING:
    from typing import Any

    from sizekeeper.core.chart import Cell, Chart
    from sizekeeper.core.measure import Measures

Index = QModelIndex | QPersistentModelIndex

SIZE_ROW = 0
"""The model's row that holds the sizes."""
START_COLUMNS = 3
"""Columns an empty chart shows: the two or three sizes she might cut."""
PLACEHOLDER = int(Qt.ItemDataRole.UserRole) + 1
BAD = int(Qt.ItemDataRole.UserRole) + 2
HALF = {"full": "", "half": "half", "quarter": "quarter"}
_LONGEST_SHOWN = 60


class ChartModel(QAbstractTableModel):
    """The table of one chart.

    Signals:
        typed(object): the `Chart` as it would be with the text being typed, or None when the typing was given up.
        edited(str, object, str): the name of an edit, the `Chart` after it, and the cell as a field name.
        refused(str): an edit that cannot be made, in one sentence.
    """

    typed = Signal(object)
    edited = Signal(str, object, str)
    refused = Signal(str)

    def __init__(self, chart: Chart, measures: Measures, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._chart = chart
        self._base = chart
        self._measures = measures
        self._editable = True
        self._shape = self._shape_of(chart)

    @property
    def chart(self) -> Chart:
        """The chart as it stands, without what is being typed."""
        return self._base

    @property
    def measures(self) -> Measures:
        """The known measures, for names."""
        return self._measures

    @property
    def editable(self) -> bool:
        """Whether the chart can be typed into."""
        return self._editable

    def set_editable(self, editable: bool) -> None:  # noqa: FBT001 - a Qt setter
        """Let the chart be typed into, or only looked at."""
        if editable != self._editable:
            self._editable = editable
            self.show(self._base)

    def show(self, chart: Chart) -> None:
        """Show a chart, touching only what is different from the one shown."""
        self._base = chart
        self._lay(chart)

    def draft(self, index: Index, text: str) -> None:
        """Show a figure as it is being typed, before it is an edit."""
        row, column = index.row() - 1, index.column()
        if 0 <= row < len(self._base.rows) and column < len(self._base.sizes):
            drafted = edit.with_cell(self._base, row, column, text)
            self._lay(drafted)
            self.typed.emit(drafted)

    def restore(self) -> None:
        """Take back what is being typed."""
        if self._chart != self._base:
            self._lay(self._base)
            self.typed.emit(None)

    def refusal(self, index: Index, text: str) -> str:
        """Why a text cannot be taken in a cell, empty where it can. Figures always can: a bad one keeps its text."""
        try:
            self.after(index, text)
        except ChartError as error:
            return str(error)
        return ""

    def after(self, index: Index, text: str) -> tuple[str, Chart]:
        """The name of the edit that types a text into a cell, and the chart after it; raises ChartError."""
        chart, row, column = self._base, index.row() - 1, index.column()
        if row < 0:
            return self._after_naming(column, text)
        column = min(column, len(chart.sizes))
        if column == len(chart.sizes) and not text.strip():
            return "", chart
        chart = self.reaching(column)
        name = f"Change {self.row_name(row).lower()} {chart.sizes[column].label}"
        return name, edit.with_cell(chart, row, column, text)

    def reaching(self, column: int) -> Chart:
        """The chart, with one more size named in step where a column lies beyond the last."""
        chart = self._base
        return chart if column < len(chart.sizes) else edit.with_size_added(chart, edit.next_size(chart))

    def _after_naming(self, column: int, text: str) -> tuple[str, Chart]:
        if column < len(self._base.sizes):
            old = edit.size_text(self._base.sizes[column])
            return f"Rename size {old}", edit.with_size_renamed(self._base, column, text)
        if not text.strip():
            return "", self._base
        return f"Add size {text.strip()}", edit.with_size_added(self._base, text)

    def row_name(self, row: int) -> str:
        """What a row of the chart is called."""
        return row_name(self._base.rows[row], self._measures)

    def is_size(self, index: Index) -> bool:
        """Whether a cell holds a size that the chart has."""
        return index.row() == SIZE_ROW and index.column() < len(self._base.sizes)

    def is_figure(self, index: Index) -> bool:
        """Whether a cell holds a figure of the chart, written or not."""
        return 0 < index.row() <= len(self._base.rows) and index.column() < len(self._base.sizes)

    def is_more(self, row: int) -> bool:
        """Whether a row is the one below the last measure that asks for another."""
        return row == len(self._base.rows) + 1

    def field(self, index: Index) -> str:
        """A cell's name in the history, by which undo finds it again."""
        row, column = index.row() - 1, index.column()
        measure = self._base.rows[row].measure if 0 <= row < len(self._base.rows) else ""
        size = self._base.sizes[column].label if column < len(self._base.sizes) else ""
        return f"{self._base.kind}|{self._base.view}|{measure}|{size}"

    def index_of(self, measure: str, size: str) -> QModelIndex:
        """The cell of a measure and a size; the first of the row or column where one is gone."""
        rows = [r.measure for r in self._base.rows]
        row = rows.index(measure) + 1 if measure in rows else SIZE_ROW
        return self.index(row, edit.size_named(self._base, size) or 0)

    def cell(self, index: Index) -> Cell | None:
        """The cell shown at an index, None where there is none."""
        row, column = index.row() - 1, index.column()
        if 0 <= row < len(self._chart.rows) and column < len(self._chart.sizes):
            return self._chart.rows[row].cells[column]
        return None

    def problem(self, index: Index) -> str:
        """What is wrong with a cell's text, empty where nothing is."""
        cell = self.cell(index)
        return cell_problem(cell.text, self._base.unit) if cell is not None and cell.bad else ""

    def says(self, index: Index) -> str:
        """A figure in both units and multiplied out, for the line below the grid; empty where there is none."""
        cell = self.cell(index)
        if cell is None:
            return ""
        row = index.row() - 1
        shown = self._chart.rows[row]
        name = row_name(shown, self._measures)
        return cell_says(cell, shown, name, self._chart.sizes[index.column()].label)

    def _shape_of(self, chart: Chart) -> tuple[int, int]:
        if not self._editable:
            return len(chart.rows) + 1, len(chart.sizes)
        return len(chart.rows) + 2, max(len(chart.sizes) + 1, START_COLUMNS)

    def _lay(self, chart: Chart) -> None:
        if chart is self._chart and self._shape == self._shape_of(chart):
            return
        self._reshape_columns(chart)
        self._reshape_rows(chart)
        old, self._chart = self._chart, chart
        rows, columns = self._shape
        if old.sizes != chart.sizes:
            self._touch(SIZE_ROW, 0, SIZE_ROW, columns - 1)
            self.headerDataChanged.emit(Qt.Orientation.Horizontal, 0, max(columns - 1, 0))
        if [(r.measure, r.label, r.written_as, r.measured) for r in old.rows] != [
            (r.measure, r.label, r.written_as, r.measured) for r in chart.rows
        ]:
            self.headerDataChanged.emit(Qt.Orientation.Vertical, 0, rows - 1)
        self._touch_cells(old, chart)

    def _touch_cells(self, old: Chart, chart: Chart) -> None:
        """Announce the smallest rectangle that holds every figure that is different."""
        changed = [
            (row, column)
            for row, (before, after) in enumerate(zip(old.rows, chart.rows, strict=False))
            if before is not after
            for column in range(len(after.cells))
            if column >= len(before.cells) or before.cells[column] != after.cells[column]
        ]
        if changed:
            rows, columns = [r for r, _ in changed], [c for _, c in changed]
            self._touch(min(rows) + 1, min(columns), max(rows) + 1, max(columns))

    def _touch(self, top: int, left: int, bottom: int, right: int) -> None:
        if right >= left and bottom >= top:
            self.dataChanged.emit(self.index(top, left), self.index(bottom, right))

    def _reshape_columns(self, chart: Chart) -> None:
        """Insert or remove columns where the sizes begin to differ; what stands beside them stays as it is."""
        old, (rows, columns), root = self._chart, self._shape, QModelIndex()
        more = self._shape_of(chart)[1] - columns
        at = first_difference([s.label for s in old.sizes], [s.label for s in chart.sizes])
        if more > 0 and at == len(old.sizes):  # the room for another size becomes the size
            self.beginInsertColumns(root, columns, columns + more - 1)
            self._shape = (rows, columns + more)
            self.endInsertColumns()
        elif more > 0:
            self.beginInsertColumns(root, at, at + more - 1)
            self._shape, self._chart = (rows, columns + more), columns_spliced(old, at, more)
            self.endInsertColumns()
        elif more < 0:
            at = min(at, columns + more)
            self.beginRemoveColumns(root, at, at - more - 1)
            self._shape, self._chart = (rows, columns + more), edit.without_sizes(old, range(at, at - more))
            self.endRemoveColumns()

    def _reshape_rows(self, chart: Chart) -> None:
        """Insert or remove rows where the measures begin to differ."""
        old, (rows, columns), root = self._chart, self._shape, QModelIndex()
        more = self._shape_of(chart)[0] - rows
        at = first_difference([r.measure for r in old.rows], [r.measure for r in chart.rows])
        if more > 0 and at == len(old.rows):
            self.beginInsertRows(root, rows, rows + more - 1)
            self._shape = (rows + more, columns)
            self.endInsertRows()
        elif more > 0:
            self.beginInsertRows(root, at + 1, at + more)
            self._shape, self._chart = (rows + more, columns), rows_spliced(old, at, more)
            self.endInsertRows()
        elif more < 0:
            at = min(at, rows + more - 1)
            self.beginRemoveRows(root, at + 1, at - more)
            self._shape, self._chart = (rows + more, columns), edit.without_rows(old, range(at, at - more))
            self.endRemoveRows()

    def _words(self, index: Index) -> str:
        """A cell in words, for screen readers."""
        row, column = index.row(), index.column()
        if row == SIZE_ROW:
            named = column < len(self._chart.sizes)
            return f"size {edit.size_text(self._chart.sizes[column])}" if named else "room for another size"
        return "add a measure" if self.is_more(row) else cell_words(self.cell(index))

    def _where(self, index: Index) -> str:
        """What a cell is about: its measure and size."""
        if index.row() == SIZE_ROW or self.is_more(index.row()):
            return ""
        measure = self.headerData(index.row(), Qt.Orientation.Vertical, int(Qt.ItemDataRole.AccessibleTextRole))
        size = self.headerData(index.column(), Qt.Orientation.Horizontal, int(Qt.ItemDataRole.AccessibleTextRole))
        return f"{measure}, {size}"

    def _text(self, index: Index) -> str:
        if index.row() == SIZE_ROW:
            return edit.size_text(self._chart.sizes[index.column()]) if index.column() < len(self._chart.sizes) else ""
        cell = self.cell(index)
        return cell.text if cell else ""

    def _placeholder(self, index: Index) -> str:
        if index.row() != SIZE_ROW or index.column() < len(self._chart.sizes) or not self._editable:
            return ""
        return "size" if index.column() == len(self._chart.sizes) or not self._chart.sizes else ""

    def _measure_header(self, section: int, role: int) -> str | None:
        if section == SIZE_ROW:
            return "Size"
        if section > len(self._chart.rows):
            return "Add a measure"
        row = self._chart.rows[section - 1]
        name = row_name(row, self._measures)
        if role == Qt.ItemDataRole.ToolTipRole:
            return row_tip(row, name)
        if row.measured:
            return f"{name}, measured"
        return f"{name}, {HALF[row.written_as]}" if row.written_as != "full" else name

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own signature
        """The sizes, the measures, and room for one more."""
        return 0 if parent.isValid() else self._shape[0]

    def columnCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own signature
        """The sizes, and room for one more."""
        return 0 if parent.isValid() else self._shape[1]

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Every cell can be chosen; sizes and figures can be typed."""
        flags = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable
        if index.isValid() and self._editable and not self.is_more(index.row()):
            flags |= Qt.ItemFlag.ItemIsEditable
        return flags if index.isValid() else Qt.ItemFlag.NoItemFlags

    def data(self, index: Index, role: int = int(Qt.ItemDataRole.DisplayRole)) -> Any:  # noqa: ANN401, PLR0911 - Qt's
        """A cell's text as typed, and what is said of it."""
        if not index.isValid():
            return None
        match role:
            case Qt.ItemDataRole.DisplayRole:
                return self._text(index)[:_LONGEST_SHOWN]
            case Qt.ItemDataRole.EditRole:
                return self._text(index)
            case Qt.ItemDataRole.TextAlignmentRole:
                return int(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
            case Qt.ItemDataRole.FontRole if index.row() == SIZE_ROW:
                font = QFont()
                font.setWeight(QFont.Weight.DemiBold)
                return font
            case Qt.ItemDataRole.ToolTipRole:
                return self.problem(index) or self.says(index) or None
            case Qt.ItemDataRole.AccessibleTextRole:
                return self._words(index)
            case Qt.ItemDataRole.AccessibleDescriptionRole:
                return self._where(index)
            case _:
                return {PLACEHOLDER: self._placeholder(index), BAD: self.problem(index) != ""}.get(role)

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = int(Qt.ItemDataRole.DisplayRole)
    ) -> Any:  # noqa: ANN401 - Qt's own signature
        """The measures down the side; the sizes above, which only screen readers meet."""
        rows, columns = self._shape
        wanted = (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole, Qt.ItemDataRole.ToolTipRole)
        if role not in wanted or not 0 <= section < (rows if orientation == Qt.Orientation.Vertical else columns):
            return None
        if orientation == Qt.Orientation.Vertical:
            return self._measure_header(section, role)
        return f"size {self._chart.sizes[section].label}" if section < len(self._chart.sizes) else "no size yet"

    def setData(self, index: Index, value: Any, role: int = int(Qt.ItemDataRole.EditRole)) -> bool:  # noqa: ANN401
        """Ask for the edit that types a text into a cell."""
        if role != Qt.ItemDataRole.EditRole or not index.isValid() or not self._editable:
            return False
        try:
            name, after = self.after(index, str(value))
        except ChartError as error:
            self.restore()
            self.refused.emit(str(error))
            return False
        if after == self._base:
            self.restore()
            return True
        self.edited.emit(name, after, self.field(index))
        return True
