"""A table of the reading as the chart it will be: sizes across, a measure in each row, all typed over in place."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING, Literal

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, QPersistentModelIndex, Qt, Signal

from sizekeeper.core.chart import TIMES
from sizekeeper.core.length import CM_PER
from sizekeeper.core.notation import Notation, show
from sizekeeper.importing.measure_names import CLOSE
from sizekeeper.importing.question import WRITTEN
from sizekeeper.ui.import_roles import at_words

if TYPE_CHECKING:
    from sizekeeper.core.measure import Measures
    from sizekeeper.importing.draft import DraftCell, DraftRow, DraftTable

Index = QModelIndex | QPersistentModelIndex
Part = Literal["size", "measure", "written", "figure", "corner"]
AT = Qt.ItemDataRole.UserRole
"""The role under which a place tells the address of its cell in the file."""
FIRST = 2
"""The column of the first size: the measure and how it was written stand before it."""

_SHORT = {"full": "around", "half": "flat × 2", "quarter": "quarter × 4"}
_NOWHERE = QModelIndex()


class TableModel(QAbstractTableModel):
    """One table of the reading. Row 0 holds the sizes, column 0 the measures, column 1 how each was written.

    Signals:
        corrected(str, str, str): what was corrected ("size", "measure", "written", "figure"), the cell, the new value.
    """

    corrected = Signal(str, str, str)

    def __init__(self, table: DraftTable, measures: Measures, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.table = table
        self.measures = measures

    def show(self, table: DraftTable) -> None:
        """Show the table as it is read now."""
        same = (len(table.rows), len(table.sizes)) == (len(self.table.rows), len(self.table.sizes))
        if not same:
            self.beginResetModel()
        self.table = table
        if same:
            self.dataChanged.emit(self.index(0, 0), self.index(self.rowCount() - 1, self.columnCount() - 1))
        else:
            self.endResetModel()

    @staticmethod
    def part(index: Index) -> Part:
        """What stands at a place."""
        if index.row() == 0:
            return "size" if index.column() >= FIRST else "corner"
        return ("measure", "written", "figure")[min(index.column(), FIRST)]

    def row_of(self, index: Index) -> DraftRow:
        """The row of a place below the sizes."""
        return self.table.rows[index.row() - 1]

    def cell_of(self, index: Index) -> DraftCell:
        """The figure at a place."""
        return self.row_of(index).cells[index.column() - FIRST]

    def at(self, index: Index) -> str:
        """The address of the cell in the file that a place comes from, empty where there is none."""
        part = self.part(index)
        if part == "size":
            return self.table.sizes[index.column() - FIRST].at
        if part == "figure":
            return self.cell_of(index).at
        return self.row_of(index).label_at if part in ("measure", "written") else ""

    def place_of(self, at: str) -> QModelIndex:
        """Where the label or the figure of a cell in the file stands, preferring labels."""
        for c, size in enumerate(self.table.sizes):
            if size.at == at:
                return self.index(0, c + FIRST)
        for r, row in enumerate(self.table.rows, start=1):
            if row.label_at == at:
                return self.index(r, 0)
        for r, row in enumerate(self.table.rows, start=1):
            for c, cell in enumerate(row.cells, start=FIRST):
                if cell.at == at:
                    return self.index(r, c)
        return QModelIndex()

    def row_name(self, row: DraftRow) -> str:
        """A row's measure by its trade name, or as printed where it is the chart's own; view and variant behind it."""
        name = self.measures.name(row.measure) if row.measure in self.measures else row.label
        extra = [f"view {row.view}" if row.view else "", row.variant or ""]
        return " · ".join([name, *(part for part in extra if part and part.casefold() not in name.casefold())])

    def _text(self, index: Index) -> str:
        part = self.part(index)
        if part == "corner":
            return "Size" if index.column() == 0 else ""
        if part == "size":
            return self.table.sizes[index.column() - FIRST].label
        row = self.row_of(index)
        if part == "measure":
            return self.row_name(row)
        if part == "written":
            return "" if row.dimension != "girth" else "flat?" if row.doubt else _SHORT[row.written_as]
        cell = self.cell_of(index)
        return cell.text or "–"

    def _words(self, index: Index) -> str:
        """A place in words, for a tip and for a screen reader."""
        part = self.part(index)
        if part == "corner":
            return "Sizes across" if index.column() == 0 else "How each measure was written"
        at = self.at(index)
        where = f", {at_words(at)} in the file" if at else ""
        if part == "size":
            size = self.table.sizes[index.column() - FIRST]
            aliases = f", also {', '.join(size.aliases)}" if size.aliases else ""
            return f"Size {size.label}{aliases}{where}"
        row = self.row_of(index)
        if part == "measure":
            return f"{self.row_name(row)}, printed as “{row.label}”{where}"
        if part == "written":
            doubt = "; it may be half of the girth" if row.doubt else ""
            return f"{self.row_name(row)}: {WRITTEN[row.written_as]}{doubt}" if row.dimension == "girth" else "A length"
        size = self.table.sizes[index.column() - FIRST]
        return f"{self.row_name(row)}, size {size.label}: {self._figure_words(row, self.cell_of(index))}{where}"

    def _figure_words(self, row: DraftRow, cell: DraftCell) -> str:
        if cell.low is None or cell.high is None:
            return f"no figure, “{cell.text}”" if cell.text else "no figure"

        notation = Notation("in", Fraction(1, 16)) if row.unit_in_file == "in" else Notation("cm", Fraction(1, 10))
        times = CM_PER[row.unit_in_file] * TIMES[row.written_as]
        return " to ".join(dict.fromkeys(show(end * times, notation) for end in (cell.low, cell.high)))

    def rowCount(self, parent: Index = _NOWHERE) -> int:
        """The sizes' row and the measures' rows."""
        return 0 if parent.isValid() else len(self.table.rows) + 1

    def columnCount(self, parent: Index = _NOWHERE) -> int:
        """The measures' two columns and the sizes' columns."""
        return 0 if parent.isValid() else len(self.table.sizes) + FIRST

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """Texts, words, and where the sizes stand."""
        if not index.isValid():
            return None
        if role == Qt.ItemDataRole.DisplayRole:
            return self._text(index)
        if role == Qt.ItemDataRole.EditRole:
            cell = self.cell_of(index) if self.part(index) == "figure" else None
            return cell.text if cell is not None else self._text(index)
        if role in (Qt.ItemDataRole.ToolTipRole, Qt.ItemDataRole.AccessibleTextRole):
            return self._words(index)
        if role == Qt.ItemDataRole.TextAlignmentRole:
            side = Qt.AlignmentFlag.AlignRight if index.column() >= FIRST else Qt.AlignmentFlag.AlignLeft
            return side | Qt.AlignmentFlag.AlignVCenter
        return self.at(index) if role == AT else None

    def setData(self, index: Index, value: object, role: int = Qt.ItemDataRole.EditRole) -> bool:
        """Correct what stands at a place; the same again is no correction."""
        part, text = self.part(index), " ".join(str(value).split())
        if role != Qt.ItemDataRole.EditRole or part == "corner":
            return False
        row = self.row_of(index) if part in ("measure", "written") else None
        doubtful = row is not None and bool(row.doubt if part == "written" else row.sure <= CLOSE)
        known = {} if row is None else {"measure": row.measure, "written": row.written_as}
        before = known.get(part, self.data(index, Qt.ItemDataRole.EditRole))
        if (text == before and not doubtful) or (not text and part != "figure"):
            return False
        self.corrected.emit(part, self.at(index), text)
        return True

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Whatever comes from a cell of the file can be corrected; lengths are never halves."""
        if not index.isValid():
            return Qt.ItemFlag.NoItemFlags
        flags = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable
        if not self.at(index):
            return flags
        if self.part(index) == "written" and self.row_of(index).dimension != "girth":
            return flags
        return flags | Qt.ItemFlag.ItemIsEditable
