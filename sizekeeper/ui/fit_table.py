"""A quiet table of texts for the side panel: reasons, ranking, the ease at the ruler's place."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QAbstractTableModel, QEvent, QModelIndex, QObject, QPersistentModelIndex, QRect, QRectF, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPixmap
from PySide6.QtWidgets import QAbstractItemView, QFrame, QHeaderView, QTableView, QWidget

from sizekeeper.ui import bands, theme

if TYPE_CHECKING:
    from collections.abc import Sequence

    from PySide6.QtGui import QKeyEvent

    from sizekeeper.core.preference import Band

Index = QModelIndex | QPersistentModelIndex
_PAD = 3
"""The space Qt leaves beside the text of a cell, in pixels."""


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
        if role == Qt.ItemDataRole.DisplayRole:
            return line.texts[column]
        if role in (Qt.ItemDataRole.AccessibleTextRole, Qt.ItemDataRole.ToolTipRole):
            return line.said or " ".join(line.texts)
        if role == Qt.ItemDataRole.TextAlignmentRole:
            side = Qt.AlignmentFlag.AlignLeft if column in self._words_in else Qt.AlignmentFlag.AlignRight
            return side | Qt.AlignmentFlag.AlignVCenter
        if role == Qt.ItemDataRole.FontRole and line.strong:
            return theme.heading_font(3)
        if role == Qt.ItemDataRole.DecorationRole and column == 0 and line.band is not None:
            return _sample(line.band, dark=self._dark)
        return None

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """The heading of a column."""
        if orientation == Qt.Orientation.Horizontal and section < len(self._heading):
            if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole):
                return self._heading[section]
            if role == Qt.ItemDataRole.TextAlignmentRole:
                side = Qt.AlignmentFlag.AlignLeft if section in self._words_in else Qt.AlignmentFlag.AlignRight
                return side | Qt.AlignmentFlag.AlignVCenter
        return None


def _sample(band: Band, *, dark: bool) -> QPixmap:
    side = theme.spacing(1.5)
    pixmap = QPixmap(side, side)
    pixmap.fill(Qt.GlobalColor.transparent)
    painter = QPainter(pixmap)
    bands.paint_swatch(painter, QRectF(0, 0, side, side), band, dark=dark)
    painter.end()
    return pixmap


class QuietHeading(QHeaderView):
    """Headings in small, muted letters over a thin rule."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(Qt.Orientation.Horizontal, parent)
        self.setHighlightSections(False)
        self.viewport().setAutoFillBackground(False)

    # Qt's own names from here on.

    def paintSection(self, painter: QPainter, rect: QRect, section: int) -> None:
        """Paint one heading."""
        model, across = self.model(), Qt.Orientation.Horizontal
        words = model.headerData(section, across, Qt.ItemDataRole.DisplayRole)
        side = model.headerData(section, across, Qt.ItemDataRole.TextAlignmentRole)
        painter.setFont(theme.small_font())
        painter.setPen(theme.muted_text(self.palette()))
        painter.drawText(rect.adjusted(_PAD, 0, -_PAD, 0), side or Qt.AlignmentFlag.AlignCenter, words or "")
        painter.setPen(theme.rule_colour(self.palette()))
        painter.drawLine(rect.bottomLeft(), rect.bottomRight())


class LineTable(QTableView):
    """Shows lines without a grid or a frame, as high as they are unless told otherwise."""

    def __init__(
        self,
        heading: Sequence[str],
        name: str,
        parent: QWidget | None = None,
        *,
        words_in: int = 0,
        choose: bool = False,
    ) -> None:
        """A table with a heading and a name for screen readers; `choose` lets one line be picked.

        The column `words_in` takes what room is left; the others are as wide as their texts.
        """
        super().__init__(parent)
        self._words_in = words_in
        self.lines = LineModel(heading, self)
        self.setModel(self.lines)
        self.setAccessibleName(name)
        self._choose = choose
        self._plain_looks()
        self.dress()

    def _plain_looks(self) -> None:
        picks = QAbstractItemView.SelectionMode
        self.setSelectionMode(picks.SingleSelection if self._choose else picks.NoSelection)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setShowGrid(False)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setTabKeyNavigation(False)
        self.setWordWrap(False)
        self.verticalHeader().hide()
        self.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self.setHorizontalHeader(QuietHeading(self))
        self.viewport().setAutoFillBackground(False)
        self.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self.horizontalHeader().setSectionResizeMode(self._words_in, QHeaderView.ResizeMode.Stretch)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        if not self._choose:
            self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)

    def show_lines(self, lines: Sequence[Line]) -> None:
        """Show other lines."""
        before = self.lines.rowCount()
        self.lines.set_lines(lines)
        self._fit_columns()
        if not self._choose and before != len(lines):
            self.fit_height()

    def _fit_columns(self) -> None:
        """Make each column as wide as its texts; measuring these few is quicker than asking the view."""
        plain, small = QFontMetricsF(theme.heading_font(3)), QFontMetricsF(theme.small_font())
        for column in range(self.lines.columnCount()):
            if column == self._words_in:
                continue
            texts = {line.texts[column] for line in self.lines.lines}
            heading = str(self.lines.headerData(column, Qt.Orientation.Horizontal))
            widest = max([small.horizontalAdvance(heading), *(plain.horizontalAdvance(text) for text in texts)])
            width = round(widest + 4 * _PAD)
            if self.columnWidth(column) != width:
                self.setColumnWidth(column, width)

    def fit_height(self) -> None:
        """As high as the lines."""
        rows = self.lines.rowCount() * self.verticalHeader().defaultSectionSize()
        self.setFixedHeight(self.horizontalHeader().sizeHint().height() + rows + 2)

    def dress(self) -> None:
        """Take fonts and colours anew."""
        self.lines.set_dark(dark=theme.is_dark(self.palette()))
        self._fit_columns()
        self.verticalHeader().setDefaultSectionSize(theme.spacing(3.25))
        if not self._choose:
            self.fit_height()
        self.viewport().update()

    # Qt's own names from here on.

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size and light or dark."""
        super().changeEvent(event)
        if hasattr(self, "lines") and (theme.font_changed(event) or theme.palette_changed(event)):
            self.dress()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Left and right have nothing to do where a whole line is picked; the page may scroll."""
        if self._choose and event.key() in (Qt.Key.Key_Left, Qt.Key.Key_Right):
            event.ignore()
            return
        super().keyPressEvent(event)

    def minimumSizeHint(self) -> QSize:
        """A few lines."""
        return QSize(theme.spacing(20), theme.spacing(8))
