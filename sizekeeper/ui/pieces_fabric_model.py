"""The envelope's table of fabric as a grid: fabric widths down, sizes across, a blank row to type the next width in."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt, Signal
from PySide6.QtGui import QGuiApplication

from sizekeeper.core.notation import parse_length, spoken
from sizekeeper.errors import LengthError
from sizekeeper.ui import theme
from sizekeeper.ui.pieces_fabric_lines import Cloth, Lines, cloths, length_of, with_cloth, with_length

if TYPE_CHECKING:
    from collections.abc import Sequence

    from PySide6.QtCore import QObject

    from sizekeeper.core.length import Length, Unit
    from sizekeeper.ui.pieces_desk import PiecesDesk

AnyIndex = QModelIndex | QPersistentModelIndex
WIDTH, NAP, FIRST = 0, 1, 2
"""The columns: the fabric's width, its nap, then one for all sizes and one for each."""
_NO_WIDTH = "Type the fabric’s width at the left first"
_LONG_CM = 2000.0
"""A length above this is questioned; coined."""


class FabricModel(QAbstractTableModel):
    """The table for one view. A text that is no length stays in its cell until it is mended.

    Signals:
        edited(str, object): the name of an edit, and the lines after it.
        spoken_up(): what is to be said of a cell is another thing now.
    """

    edited = Signal(str, object)
    spoken_up = Signal()

    def __init__(self, desk: PiecesDesk, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._lines: Lines = ()
        self._sizes: tuple[str, ...] = ("",)
        self._of = ("", "")
        self._blank = False
        self._count = 0
        self._begun: list[Cloth] = []
        self._bad: dict[tuple[int, int], tuple[str, str]] = {}
        self.rows: tuple[Cloth, ...] = ()

    @property
    def view(self) -> str:
        """The view whose figures are shown, "" for those of all views."""
        return self._of[1]

    @property
    def length_unit(self) -> Unit:
        """The unit of a length of fabric without one."""
        return "yd" if self._desk.notation.unit == "in" else "m"

    def show_lines(self, lines: Lines, sizes: Sequence[str], of: tuple[str, str]) -> None:
        """Show the table of a pattern's view; a size that only the table knows keeps its column."""
        extra = tuple(dict.fromkeys(line.size for line in lines if line.size and line.size not in sizes))
        columns = ("", *sizes, *extra)
        if of != self._of:
            self._begun, self._bad = [], {}
        kept = cloths(lines, of[1])
        self._begun = [one for one in self._begun if not any(_same(one, row) for row in kept)]
        blank = self._desk.writable
        if (of, columns, blank) != (self._of, self._sizes, self._blank):
            self.beginResetModel()
            self._of, self._sizes, self._blank = of, columns, blank
            self.rows, self._lines = (*kept, *self._begun), lines
            self._count = len(self.rows) + blank
            self.endResetModel()
        else:
            self._lines = lines
            self._lay([*kept, *self._begun])

    def _lay(self, wanted: list[Cloth]) -> None:
        """Bring the rows in line with those wanted; each keeps its place, so that typing can go on in it."""
        rest = [one for one in wanted if not any(_same(one, row) for row in self.rows)]
        gone = [at for at, row in enumerate(self.rows) if not any(_same(one, row) for one in wanted)]
        rows = [next((one for one in wanted if _same(one, row)), row) for row in self.rows]
        if len(rest) == len(gone):
            for at in gone:
                rows[at] = rest.pop(0)
        self.rows = tuple(rows)
        for at in reversed(gone if rest or len(wanted) < len(rows) else []):
            self.beginRemoveRows(QModelIndex(), at, at)
            self.rows = (*self.rows[:at], *self.rows[at + 1 :])
            self._count -= 1
            self.endRemoveRows()
        self.rows = (*self.rows, *rest)  # the blank row is the first of them, and a blank one follows below
        if self._count:
            self.dataChanged.emit(self.index(0, 0), self.index(self._count - 1, self.columnCount() - 1))
        if rest:
            self.beginInsertRows(QModelIndex(), self._count, self._count + len(rest) - 1)
            self._count += len(rest)
            self.endInsertRows()

    def says(self, index: AnyIndex) -> tuple[str, bool]:
        """What is to be known of a cell, and whether it is a warning."""
        if (bad := self._bad.get((index.row(), index.column()))) is not None:
            return f"{bad[1]} The text is kept; the figure counts as missing.", True
        length = self._length(index)
        if length is not None and index.column() >= FIRST and length.cm > _LONG_CM:
            return f"{float(length.exact_cm / 100):.4g} m is a great deal of fabric; is the unit right?", True
        return "", False

    def _length(self, index: AnyIndex) -> Length | None:
        if not index.isValid() or index.row() >= len(self.rows):
            return None
        cloth = self.rows[index.row()]
        if index.column() == WIDTH:
            return cloth.width
        return length_of(self._lines, cloth, self._sizes[index.column() - FIRST], self.view)

    def _text(self, index: AnyIndex) -> str:
        if (bad := self._bad.get((index.row(), index.column()))) is not None:
            return bad[0]
        length = self._length(index) if index.column() != NAP else None
        return length.text if length is not None else ""

    def put(self, row: int, column: int, text: str) -> bool:
        """Take a text into a cell, as an edit; a text that is no length is kept there and explained."""
        self._bad.pop((row, column), None)
        try:
            length = self._parsed(column, text)
            after = self._with(self._lines, row, column, length)
        except LengthError as error:
            self._bad[row, column] = (text.strip(), f"{str(error).rstrip('.')}.")
            self.dataChanged.emit(self.index(row, column), self.index(row, column))
            self.spoken_up.emit()
            return True
        if after is not None and after != self._lines:
            self.edited.emit("Change the table of fabric", after)
        self.show_lines(self._lines, self._sizes[1:], self._of)
        self.spoken_up.emit()
        return True

    def _parsed(self, column: int, text: str) -> Length | None:
        if not text.strip():
            return None
        unit: Unit = self._desk.notation.unit if column == WIDTH else self.length_unit
        length = parse_length(text, unit)
        if length.value <= 0:
            raise LengthError(f"“{text.strip()}” is not above zero")
        return length

    def _with(self, lines: Lines, row: int, column: int, length: Length | None) -> Lines | None:
        """The lines with a cell changed; a width alone only begins a row."""
        if row >= len(self.rows):
            if length is None:
                return None
            if column != WIDTH:
                raise LengthError(_NO_WIDTH)
            self._begun.append(Cloth(length))
            return None
        cloth = self.rows[row]
        if column == WIDTH:
            self._begun = [_renewed(one, cloth, length) for one in self._begun if length is not None or one != cloth]
            return with_cloth(lines, cloth, self.view, Cloth(length, cloth.nap) if length is not None else None)
        return with_length(lines, cloth, self._sizes[column - FIRST], self.view, length)

    def set_nap(self, row: int, *, nap: bool) -> None:
        """Say whether a row's figures reckon with a nap."""
        cloth = self.rows[row]
        after = Cloth(cloth.width, nap)
        self._begun = [after if one == cloth else one for one in self._begun]
        lines = with_cloth(self._lines, cloth, self.view, after)
        if lines != self._lines:
            self.edited.emit("Change the nap in the table of fabric", lines)
        self.show_lines(self._lines, self._sizes[1:], self._of)

    def put_block(self, row: int, column: int, block: Sequence[Sequence[str]]) -> str:
        """Take a pasted block in as one edit, or not at all; returns what was wrong with it, empty when nothing was."""
        rows, lines = list(self.rows), self._lines
        try:
            for down, texts in enumerate(block):
                lines = self._with_line(rows, lines, row + down, self._parsed_line(column, texts))
        except LengthError as error:
            return f"Nothing was pasted: {str(error).rstrip('.')}."
        self._begun = rows
        if lines != self._lines:
            self.edited.emit("Paste into the table of fabric", lines)
        self.show_lines(self._lines, self._sizes[1:], self._of)
        return ""

    def _parsed_line(self, column: int, texts: Sequence[str]) -> dict[int, Length | None]:
        """The lengths of a pasted line by their column; what lies past the table's edge is left out."""
        columns = range(column, min(column + len(texts), self.columnCount()))
        return {at: self._parsed(at, text) for at, text in zip(columns, texts, strict=False) if at != NAP}

    def _with_line(self, rows: list[Cloth], lines: Lines, row: int, figures: dict[int, Length | None]) -> Lines:
        """The lines with one pasted line in them; a new row is added to `rows`."""
        width = figures.pop(WIDTH, None)
        if row >= len(rows):
            if width is None and not any(figures.values()):
                return lines
            if width is None:
                raise LengthError(_NO_WIDTH)
            rows.append(Cloth(width))
        elif width is not None:
            after = Cloth(width, rows[row].nap)
            lines, rows[row] = with_cloth(lines, rows[row], self.view, after), after
        for column, length in figures.items():
            lines = with_length(lines, rows[row], self._sizes[column - FIRST], self.view, length)
        return lines

    # Qt's own names from here on.

    def rowCount(self, parent: AnyIndex = QModelIndex()) -> int:  # noqa: B008 - Qt's own default
        """The fabric widths, and a blank row where something can be typed."""
        return 0 if parent.isValid() else self._count

    def columnCount(self, parent: AnyIndex = QModelIndex()) -> int:  # noqa: B008 - Qt's own default
        """Width, nap, all sizes, each size."""
        return 0 if parent.isValid() else FIRST + len(self._sizes)

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = 0) -> Any:  # noqa: ANN401 - Qt's
        """The names of the columns."""
        if orientation == Qt.Orientation.Vertical or role != Qt.ItemDataRole.DisplayRole:
            return None
        names = (f"Fabric width, {self._desk.notation.unit}", "With nap", f"All sizes, {self.length_unit}")
        return names[section] if section < len(names) else self._sizes[section - FIRST]

    def data(self, index: AnyIndex, role: int = Qt.ItemDataRole.DisplayRole) -> Any:  # noqa: ANN401 - Qt's
        """A figure as typed; a bad one in the colour of warnings; in words for a screen reader."""
        if not index.isValid():
            return None
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.EditRole):
            return self._text(index)
        if role == Qt.ItemDataRole.AccessibleTextRole:
            return self._said(index)
        return self._look(index, role)

    def _look(self, index: AnyIndex, role: int) -> Any:  # noqa: ANN401 - Qt's
        if role == Qt.ItemDataRole.CheckStateRole and index.column() == NAP and index.row() < len(self.rows):
            return Qt.CheckState.Checked if self.rows[index.row()].nap else Qt.CheckState.Unchecked
        if role == Qt.ItemDataRole.ForegroundRole and (index.row(), index.column()) in self._bad:
            return theme.warning_text(QGuiApplication.palette())
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return int(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        return None

    def _said(self, index: AnyIndex) -> str:
        heading = str(self.headerData(index.column(), Qt.Orientation.Horizontal))
        if index.row() >= len(self.rows):
            return f"{heading}: empty, a further fabric"
        if index.column() == NAP:
            return f"{heading}: {'yes' if self.rows[index.row()].nap else 'no'}"
        length = self._length(index)
        of = f"fabric {spoken(self.rows[index.row()].width.exact_cm, self._desk.notation)} wide, "
        said = self._text(index) or "empty"
        if length is not None and index.column() == WIDTH:
            return f"{heading}: {spoken(length.exact_cm, self._desk.notation)}"
        return f"{of}{heading}: {said}"

    def setData(self, index: AnyIndex, value: Any, role: int = Qt.ItemDataRole.EditRole) -> bool:  # noqa: ANN401
        """Take what was typed."""
        if role == Qt.ItemDataRole.CheckStateRole and index.column() == NAP and index.row() < len(self.rows):
            self.set_nap(index.row(), nap=Qt.CheckState(value) == Qt.CheckState.Checked)
            return True
        if role != Qt.ItemDataRole.EditRole or str(value).strip() == self._text(index):
            return False
        return self.put(index.row(), index.column(), str(value))

    def flags(self, index: AnyIndex) -> Qt.ItemFlag:
        """Figures are typed, the nap is ticked."""
        if not index.isValid():
            return Qt.ItemFlag.NoItemFlags
        flags = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable
        if not self._desk.writable:
            return flags
        if index.column() == NAP:
            return flags | (Qt.ItemFlag.ItemIsUserCheckable if index.row() < len(self.rows) else flags)
        return flags | Qt.ItemFlag.ItemIsEditable


def _same(one: Cloth, other: Cloth) -> bool:
    return one.width.exact_cm == other.width.exact_cm and one.nap == other.nap


def _renewed(one: Cloth, before: Cloth, length: Length | None) -> Cloth:
    return Cloth(length, one.nap) if one == before and length is not None else one
