"""The envelope's table of fabric: how much of which width, for which size."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QModelIndex, Qt, Signal
from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import (
    QAbstractItemView,
    QApplication,
    QHBoxLayout,
    QHeaderView,
    QTableView,
    QVBoxLayout,
    QWidget,
)

from sizekeeper.core.chart_paste import block_from_text
from sizekeeper.errors import ChartError
from sizekeeper.ui import theme
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.pattern_views import ALL_VIEWS
from sizekeeper.ui.person_fields import CalmCombo
from sizekeeper.ui.pieces_fabric_model import FIRST, NAP, WIDTH, FabricModel

if TYPE_CHECKING:
    from PySide6.QtGui import QFocusEvent, QKeyEvent, QResizeEvent

    from sizekeeper.core.chart import Chart
    from sizekeeper.ui.pieces_desk import PiecesDesk
    from sizekeeper.ui.pieces_fabric_lines import Lines

_EXPLAINED = (
    "As the envelope prints it. A length that holds for all sizes goes into the first column; a block can be pasted."
)


class FabricTable(QTableView):
    """The grid: typing replaces, F2 goes into a figure, Delete clears, Ctrl+V lays in a block.

    Signals:
        said(str): something went wrong with what was pasted.
        moved(): another cell is current.
    """

    said = Signal(str)
    moved = Signal()

    def __init__(self, model: FabricModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._model = model
        self.setModel(model)
        self.setAccessibleName("Table of fabric")
        self.setSelectionMode(QAbstractItemView.SelectionMode.ContiguousSelection)
        self.setEditTriggers(
            QAbstractItemView.EditTrigger.AnyKeyPressed
            | QAbstractItemView.EditTrigger.DoubleClicked
            | QAbstractItemView.EditTrigger.EditKeyPressed
        )
        self.verticalHeader().hide()
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self.horizontalHeader().setHighlightSections(False)
        for happened in (model.modelReset, model.rowsInserted, model.rowsRemoved):
            happened.connect(self._space)
        self.selectionModel().currentChanged.connect(self.moved)
        self._space()

    def _space(self) -> None:
        """Columns as wide as their headings, the table as high as its rows."""
        metrics = self.fontMetrics()
        row = metrics.height() + theme.spacing(0.9)
        self.verticalHeader().setDefaultSectionSize(row)
        for column in range(self._model.columnCount()):
            heading = str(self._model.headerData(column, Qt.Orientation.Horizontal))
            wide = metrics.horizontalAdvance(heading) + theme.spacing(2)
            self.setColumnWidth(column, max(wide, theme.spacing(10 if column != NAP else 6)))
        self.setMaximumWidth(sum(self.columnWidth(c) for c in range(self._model.columnCount())) + 2)
        self._fit_height()

    def _fit_height(self) -> None:
        """As high as its rows, and a scroll bar where the columns are wider than the page."""
        rows = self._model.rowCount() * self.verticalHeader().defaultSectionSize()
        wide = sum(self.columnWidth(c) for c in range(self._model.columnCount())) + 2 > self.width()
        bar = self.horizontalScrollBar().sizeHint().height() if wide else 0
        self.setFixedHeight(rows + self.horizontalHeader().sizeHint().height() + bar + 2)

    def clear_chosen(self) -> None:
        """Empty the chosen cells; a cleared width takes its row out."""
        for index in sorted(self.selectedIndexes(), key=lambda i: (-i.row(), -i.column())):
            if index.column() != NAP and index.row() < len(self._model.rows):
                self._model.put(index.row(), index.column(), "")

    def paste(self) -> None:
        """Lay the clipboard in from the current cell on."""
        index = self.currentIndex()
        if not index.isValid() or not self._model.flags(self._model.index(0, 0)) & Qt.ItemFlag.ItemIsEditable:
            return
        try:
            block = block_from_text(QApplication.clipboard().text())
        except ChartError as error:
            self.said.emit(str(error))
            return
        self.said.emit(self._model.put_block(index.row(), index.column(), block))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter goes into a figure, Delete clears, Ctrl+V pastes."""
        if event.matches(QKeySequence.StandardKey.Paste):
            self.paste()
        elif event.key() in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace):
            self.clear_chosen()
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            editing = self.state() == QAbstractItemView.State.EditingState
            if self.currentIndex().flags() & Qt.ItemFlag.ItemIsEditable and not editing:
                self.edit(self.currentIndex())
        else:
            super().keyPressEvent(event)

    def focusNextPrevChild(self, forward: bool) -> bool:  # noqa: FBT001 - Qt's own signature
        """Tab goes from cell to cell and leaves behind the last one, Shift+Tab before the first."""
        index, model = self.currentIndex(), self._model
        end = (model.rowCount() - 1, model.columnCount() - 1) if forward else (0, 0)
        leaves = (index.row(), index.column()) == end and self.state() != QAbstractItemView.State.EditingState
        self.setTabKeyNavigation(not leaves)
        went = super().focusNextPrevChild(forward)
        self.setTabKeyNavigation(True)
        return went

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Tab comes in at the first cell."""
        super().focusInEvent(event)
        if event.reason() == Qt.FocusReason.TabFocusReason:
            self.setCurrentIndex(self._model.index(0, 0))

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """No cell stays marked when something else has the focus."""
        super().focusOutEvent(event)
        if event.reason() in (Qt.FocusReason.TabFocusReason, Qt.FocusReason.BacktabFocusReason):
            self.clearSelection()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Make room for a scroll bar where one is needed."""
        super().resizeEvent(event)
        self._fit_height()

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if theme.font_changed(event) and hasattr(self, "_model"):
            self._space()


class FabricPart(QWidget):
    """The table with its heading, for one view or for all."""

    def __init__(self, desk: PiecesDesk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._sizes: tuple[str, ...] = ()
        self._view = ""
        self.model = FabricModel(desk, self)
        self.table = FabricTable(self.model, self)
        self.view = CalmCombo("View whose fabric is listed", self)
        self.says = Lettering("", "warning", self)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(theme.spacing(1))
        head = QHBoxLayout()
        head.addWidget(Lettering("Fabric on the envelope", "small heading", self))
        head.addStretch(1)
        head.addWidget(self.view)
        column.addLayout(head)
        column.addWidget(Lettering(_EXPLAINED, "muted", self))
        column.addWidget(self.table)
        column.addWidget(self.says)
        self.view.activated.connect(self._on_view)
        self.model.edited.connect(self._on_edited)
        self.model.spoken_up.connect(self._say)
        self.table.moved.connect(self._say)
        self.table.said.connect(self._on_said)

    def show_charts(self, finished: Chart, body: Chart) -> None:
        """Take the sizes that the table has columns for; shown with the next `refresh`."""
        sizes = finished.sizes or body.sizes
        self._sizes = tuple(size.label for size in sizes)

    def refresh(self) -> None:
        """Show the table as it is now."""
        pattern, committed = self._desk.pattern, self._desk.committed
        views = pattern.views if pattern is not None else ()
        self._view = self._view if self._view in views else ""
        if [self.view.itemData(i) for i in range(self.view.count())] != ["", *views]:
            self.view.clear()
            for view in ("", *views):
                self.view.addItem(view or ALL_VIEWS, view)
        self.view.setCurrentIndex(self.view.findData(self._view))
        self.view.setVisible(bool(views))
        self.model.show_lines(committed.fabric, self._sizes, (committed.pattern, self._view))
        self._say()

    def finish(self) -> None:
        """Make the edit of what is being typed."""
        if self.table.state() == QAbstractItemView.State.EditingState:
            self.table.setCurrentIndex(QModelIndex())

    def _say(self) -> None:
        says, _ = self.model.says(self.table.currentIndex())
        self.says.setText(says)
        self.says.setVisible(bool(says))

    def _on_said(self, sentence: str) -> None:
        self.says.setText(sentence)
        self.says.setVisible(bool(sentence))

    def _on_view(self) -> None:
        self._view = str(self.view.currentData())
        self.refresh()

    def _on_edited(self, text: str, lines: Lines) -> None:
        self._desk.apply(text, replace(self._desk.committed, fabric=lines), "fabric")

    def go_to_first(self) -> None:
        """Put the cursor into the table."""
        self.table.setFocus(Qt.FocusReason.OtherFocusReason)
        if not self.table.currentIndex().isValid():
            self.table.setCurrentIndex(self.model.index(0, WIDTH if not self.model.rows else FIRST))
