"""Lines of texts as an item model: reasons, ranking, the ease at the ruler's place."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, QPersistentModelIndex, QRectF, Qt
from PySide6.QtGui import QPainter, QPixmap

from sizekeeper.core.preference import Band
from sizekeeper.ui import bands, theme

if TYPE_CHECKING:
    from collections.abc import Sequence

Index = QModelIndex | QPersistentModelIndex


@dataclass(frozen=True, slots=True)
class Line:
    """One row: its texts, what a screen reader says, and the band whose sample stands in front."""

    texts: tuple[str, ...]
    said: str = ""
    band: Band | None = None
    strong: bool = False


class LineModel(QAbstractTableModel):
    """Lines under a heading; figures stand at the right of their column."""

    def __init__(self, heading: Sequence[str], parent: QObject | None = None) -> None:
        """Start without lines."""
        super().__init__(parent)
        self._heading = tuple(heading)
        self._lines: list[Line] = []
        self._dark = False
        self._words_in = frozenset({0})

    @property
    def lines(self) -> Sequence[Line]:
        """The lines shown."""
        return self._lines

    def set_words_in(self, columns: frozenset[int]) -> None:
        """Which columns hold words, which start at the left."""
        self._words_in = columns

    def set_heading(self, heading: Sequence[str]) -> None:
        """Other headings for as many columns."""
        if tuple(heading) != self._heading:
            self._heading = tuple(heading)
            self.headerDataChanged.emit(Qt.Orientation.Horizontal, 0, len(heading) - 1)

    def set_lines(self, lines: Sequence[Line]) -> None:
        """Show other lines, touching only what is different."""
        grows, shrinks = len(lines) > len(self._lines), len(lines) < len(self._lines)
        if grows:
            self.beginInsertRows(QModelIndex(), len(self._lines), len(lines) - 1)
            self._lines.extend(lines[len(self._lines) :])
            self.endInsertRows()
        if shrinks:
            self.beginRemoveRows(QModelIndex(), len(lines), len(self._lines) - 1)
            del self._lines[len(lines) :]
            self.endRemoveRows()
        for row, line in enumerate(lines):
            if line != self._lines[row]:
                self._lines[row] = line
                self.dataChanged.emit(self.index(row, 0), self.index(row, len(self._heading) - 1))

    def set_dark(self, *, dark: bool) -> None:
        """Which of the two sets of band colours the samples have."""
        self._dark = dark

    # Qt's own names from here on.

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own signature
        """How many lines."""
        return 0 if parent.isValid() else len(self._lines)

    def columnCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own signature
        """How many columns."""
        return 0 if parent.isValid() else len(self._heading)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """A text, how it stands, and what is said of it."""
        if not index.isValid():
            return None
        line, column = self._lines[index.row()], index.column()
        if role in (Qt.ItemDataRole.AccessibleTextRole, Qt.ItemDataRole.ToolTipRole):
            return line.said or " ".join(line.texts)
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return self._side(column)
        if role == Qt.ItemDataRole.DecorationRole and column == 0 and line.band is not None:
            return _sample(line.band, dark=self._dark)
        if role == Qt.ItemDataRole.FontRole and line.strong:
            return theme.heading_font(3)
        return line.texts[column] if role == Qt.ItemDataRole.DisplayRole else None

    def _side(self, column: int) -> Qt.AlignmentFlag:
        side = Qt.AlignmentFlag.AlignLeft if column in self._words_in else Qt.AlignmentFlag.AlignRight
        return side | Qt.AlignmentFlag.AlignVCenter

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """The heading of a column."""
        if orientation == Qt.Orientation.Horizontal and section < len(self._heading):
            if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole):
                return self._heading[section]
            if role == Qt.ItemDataRole.TextAlignmentRole:
                return self._side(section)
        return None


def _sample(band: Band, *, dark: bool) -> QPixmap:
    side = theme.spacing(1.5)
    pixmap = QPixmap(side, side)
    pixmap.fill(Qt.GlobalColor.transparent)
    painter = QPainter(pixmap)
    bands.paint_swatch(painter, QRectF(0, 0, side, side), band, dark=dark)
    painter.end()
    return pixmap
