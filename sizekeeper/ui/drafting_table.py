"""The figures of the plots as a table: sizes down, both sides of each region across."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QAbstractTableModel, QEvent, QModelIndex, QObject, QPersistentModelIndex, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractItemView, QApplication, QFrame, QHeaderView, QTableView, QWidget

from sizekeeper.core.drafting_words import across_words, point_at, subject_words
from sizekeeper.core.notation import show, spoken
from sizekeeper.ui import theme
from sizekeeper.ui.fit_table import QuietHeading

if TYPE_CHECKING:
    from sizekeeper.core.draft import Topic
    from sizekeeper.core.drafting import Curve, Drafting, Panel
    from sizekeeper.core.wording import Wording

Index = QModelIndex | QPersistentModelIndex
SIGNS = ("●", "◇")
"""The signs of both sides in the headings, as their markers are drawn."""
_NEAR = 0.05


class DraftTableModel(QAbstractTableModel):
    """A row for each size of either side; a dash where a side has none there."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._compared: Drafting | None = None
        self._panels: tuple[Panel, ...] = ()
        self._words: Wording | None = None
        self._places: list[float] = []

    def show_topic(self, compared: Drafting | None, topic: Topic, words: Wording) -> None:
        """Show the figures of a topic; None for none."""
        self.beginResetModel()
        self._compared, self._words = compared, words
        self._panels = () if compared is None else compared.of(topic)
        places = sorted({p.x for panel in self._panels for curve in (panel.left, panel.right) for p in curve})
        self._places = [x for i, x in enumerate(places) if not i or x - places[i - 1] > _NEAR]
        self.endResetModel()

    def _curve(self, column: int) -> tuple[Panel, Curve]:
        panel = self._panels[(column - 1) // 2]
        return panel, (panel.right if (column - 1) % 2 else panel.left)

    def _side(self, column: int) -> str:
        assert self._compared is not None  # noqa: S101 - there are columns only with a comparison
        return (self._compared.right if (column - 1) % 2 else self._compared.left).name

    def _label(self, row: int) -> str:
        """The names of the sizes at a place, with the body measure that lines them up."""
        assert self._compared is not None  # noqa: S101 - there are rows only with a comparison
        assert self._words is not None  # noqa: S101 - as above
        x = self._places[row]
        curves = [curve for panel in self._panels for curve in (panel.left, panel.right)]
        labels = "/".join(dict.fromkeys(p.label for curve in curves if (p := point_at(curve, x)) is not None))
        return f"{labels} ({across_words(self._compared, x, self._words)})" if self._compared.axis else labels

    def _said(self, row: int, column: int) -> str:
        """A cell in words."""
        assert self._words is not None  # noqa: S101 - there are cells only with words
        panel, curve = self._curve(column)
        point = point_at(curve, self._places[row])
        figure = "no figure" if point is None else spoken(point.cm, self._words.notation)
        return f"{subject_words(panel.subject, self._words)}, {self._side(column)}, {self._label(row)}: {figure}"

    # Qt's own names from here on.

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own signature
        """How many sizes."""
        return 0 if parent.isValid() else len(self._places)

    def columnCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own signature
        """The size, and two columns for each region."""
        return 0 if parent.isValid() or not self._panels else 1 + 2 * len(self._panels)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """A figure, or the name of a size."""
        if not index.isValid() or self._words is None:
            return None
        row, column = index.row(), index.column()
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return (
                Qt.AlignmentFlag.AlignRight if column else Qt.AlignmentFlag.AlignLeft
            ) | Qt.AlignmentFlag.AlignVCenter
        if role in (Qt.ItemDataRole.AccessibleTextRole, Qt.ItemDataRole.ToolTipRole):
            return self._said(row, column) if column else self._label(row)
        if role != Qt.ItemDataRole.DisplayRole:
            return None
        if not column:
            return self._label(row)
        point = point_at(self._curve(column)[1], self._places[row])
        return "–" if point is None else show(point.cm, self._words.notation, unit=False)

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """A region with the sign of the side; in words with its name."""
        if orientation != Qt.Orientation.Horizontal or self._words is None or not 0 <= section < self.columnCount():
            return None
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return (
                Qt.AlignmentFlag.AlignRight if section else Qt.AlignmentFlag.AlignLeft
            ) | Qt.AlignmentFlag.AlignVCenter
        if not section:
            return f"Size ({self._words.notation.unit})" if role == Qt.ItemDataRole.DisplayRole else None
        subject = subject_words(self._curve(section)[0].subject, self._words)
        if role == Qt.ItemDataRole.DisplayRole:
            return f"{subject} {SIGNS[(section - 1) % 2]}"
        if role in (Qt.ItemDataRole.AccessibleTextRole, Qt.ItemDataRole.ToolTipRole):
            return f"{subject}, {self._side(section)}"
        return None


class PaperHeading(QuietHeading):
    """Headings behind the last of which there is paper."""

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint them."""
        super().paintEvent(event)
        rest = self.viewport().rect().adjusted(self.length() - self.offset(), 0, 0, 0)
        if rest.isValid():
            QPainter(self.viewport()).fillRect(rest, theme.paper(QApplication.palette()))


class DraftTable(QTableView):
    """The table, without a grid."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.figures = DraftTableModel(self)
        self.setModel(self.figures)
        self.setAccessibleName("Figures of the plots")
        self.setShowGrid(False)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setTabKeyNavigation(False)
        self.verticalHeader().hide()
        self.setHorizontalHeader(PaperHeading(self))
        self.horizontalHeader().setMinimumSectionSize(theme.spacing(6))
        self.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        self.viewport().setAutoFillBackground(False)
        self._dress()

    def _dress(self) -> None:
        self.verticalHeader().setDefaultSectionSize(theme.spacing(3.25))

    # Qt's own names from here on.

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if hasattr(self, "figures") and theme.font_changed(event):
            self._dress()
