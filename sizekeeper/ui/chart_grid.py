"""The grid in which a chart is typed: keys, clipboard and cursor as in a spreadsheet."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QItemSelection, QModelIndex, QSize, Qt, Signal
from PySide6.QtGui import QContextMenuEvent, QKeyEvent, QKeySequence, QMouseEvent
from PySide6.QtWidgets import QAbstractItemView, QApplication, QHeaderView, QTableView, QWidget

from sizekeeper.core.chart_edit import cleared
from sizekeeper.core.chart_paste import block_to_text
from sizekeeper.ui import theme
from sizekeeper.ui.chart_delegate import ChartDelegate
from sizekeeper.ui.chart_header import MeasureHeader
from sizekeeper.ui.chart_model import SIZE_ROW, ChartModel

if TYPE_CHECKING:
    from PySide6.QtCore import QEvent

    from sizekeeper.core.chart import Chart
    from sizekeeper.ui.chart_model import Index

MOST_ROWS = 18
"""Rows in view before the grid scrolls by itself; fewer, and it grows with its chart."""
_SHORTCUTS = (Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.AltModifier)
"""One of these alone makes a shortcut; both together are how some keyboards type a third sign."""
_STEPS = {"up": (-1, 0), "down": (1, 0), "left": (0, -1), "right": (0, 1)}


class ChartGrid(QTableView):
    """A chart typed like a spreadsheet.

    Signals:
        said(str, str): a sentence for the line below the grid, and its voice.
        measure_named(int, str, str): a row was given a measure: row of the chart (its length for a new one), id, label.
        paste_wanted(): the clipboard should be laid in from the current cell on.
        naming(QWidget): the field of a measure was opened.
        cell_changed(): another cell is current, or others are chosen.
        menu_wanted(object): the menu of the current cell is wanted at a `QPoint` on the screen.
    """

    said = Signal(str, str)
    measure_named = Signal(int, str, str)
    paste_wanted = Signal()
    naming = Signal(QWidget)
    cell_changed = Signal()
    menu_wanted = Signal(object)

    def __init__(self, model: ChartModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._model = model
        self._start = 0
        self.setModel(model)
        self._delegate = ChartDelegate(model, self)
        self.setItemDelegate(self._delegate)
        self._header = MeasureHeader(model, self)
        self.setVerticalHeader(self._header)
        self._set_up()
        self._delegate.moved.connect(self._on_moved)
        self._delegate.refused.connect(self._on_refused)
        self._delegate.closeEditor.connect(self._on_closed)
        self._header.named.connect(self.measure_named)
        self._header.opened.connect(self.naming)
        self._header.left.connect(self._on_left)
        model.columnsInserted.connect(self._on_shape)
        model.columnsRemoved.connect(self._on_shape)
        model.rowsInserted.connect(self._on_shape)
        model.rowsRemoved.connect(self._on_shape)
        model.headerDataChanged.connect(self._on_shape)
        model.dataChanged.connect(self._on_data)
        self.horizontalScrollBar().rangeChanged.connect(self._on_range)

    def _set_up(self) -> None:
        self.setShowGrid(False)
        self.setFrameShape(QTableView.Shape.NoFrame)
        self.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setEditTriggers(QAbstractItemView.EditTrigger.DoubleClicked | QAbstractItemView.EditTrigger.EditKeyPressed)
        self.setTabKeyNavigation(True)
        self.setCornerButtonEnabled(False)
        self.setWordWrap(False)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAsNeeded)
        self.viewport().setAutoFillBackground(False)
        self._header.viewport().setAutoFillBackground(False)
        self.horizontalHeader().setVisible(False)
        self.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Interactive)
        self.horizontalHeader().setResizeContentsPrecision(20)
        self._measure_up()

    def chart_model(self) -> ChartModel:
        """The table of the chart."""
        return self._model

    def current(self) -> QModelIndex:
        """The current cell, the first where there is none."""
        index = self.currentIndex()
        return index if index.isValid() else self._model.index(SIZE_ROW, 0)

    def chosen(self) -> list[QModelIndex]:
        """The chosen cells, at least the current one, row by row."""
        found = self.selectedIndexes() or [self.current()]
        return sorted(found, key=lambda i: (i.row(), i.column()))

    def block(self) -> tuple[int, int, int, int]:
        """Top, left, bottom and right of the chosen cells."""
        rows, columns = [i.row() for i in self.chosen()], [i.column() for i in self.chosen()]
        return min(rows), min(columns), max(rows), max(columns)

    def go_to(self, index: QModelIndex) -> None:
        """Make a cell the current one and bring it into view."""
        if index.isValid():
            self.setCurrentIndex(index)
            self.scrollTo(index)

    def go(self, move: str) -> bool:
        """Go on from the current cell as a key says; False where there is nowhere to go."""
        now = self.current()
        if move in ("next", "previous"):
            return self._go_along(now, 1 if move == "next" else -1)
        if move == "enter":
            return self._go_down(now)
        down, right = _STEPS[move]
        target = self._model.index(now.row() + down, now.column() + right)
        self._start = target.column() if target.isValid() else self._start
        self.go_to(target)
        return target.isValid()

    def _go_along(self, now: QModelIndex, step: int) -> bool:
        """Along the row, over its end to the next. Only the row of sizes goes on into the room for another size."""
        rows = len(self._model.chart.rows) + 1
        row, column = now.row(), now.column() + step
        if step > 0 and column >= self._width(row, now.column()):
            row, column = row + 1, 0
        elif column < 0:
            row, column = row - 1, self._width(row - 1, 0) - 1
        if not 0 <= row < rows:
            return False
        if row != now.row():
            self._start = 0
        self.go_to(self._model.index(row, column))
        return True

    def _width(self, row: int, column: int) -> int:
        """How many cells of a row Tab goes through."""
        sizes = len(self._model.chart.sizes)
        if row == SIZE_ROW and self._model.editable:
            return sizes + 1 if column < sizes else sizes
        return max(sizes, 1)

    def _go_down(self, now: QModelIndex) -> bool:
        """Enter goes down; at the end of a row typed with Tab, to where that row began."""
        row = now.row() + 1
        if row >= self._model.rowCount():
            return False
        column = min(now.column(), self._start)
        if now.row() == SIZE_ROW:
            column = 0
        self.go_to(self._model.index(row, column))
        return True

    def name_measure(self, section: int, text: str = "") -> None:
        """Open the field in which the measure of a row is picked or named."""
        self._header.name_measure(section, text)

    def refuse_name(self, sentence: str) -> None:
        """Keep the measure's field open, and say why its name cannot be taken."""
        self._header.refuse()
        self.said.emit(sentence, "warning")

    def take_name(self, row: int) -> None:
        """Close the measure's field and go to the first cell of its row."""
        self.go_to(self._model.index(row + 1, 0))
        self._header.close_field()

    def _on_left(self) -> None:
        self.setFocus()
        self.cell_changed.emit()

    def _on_moved(self, move: str, written: bool) -> None:  # noqa: FBT001 - a slot
        """Go on from the cell that was typed; a size typed further out stands behind the last one."""
        last = len(self._model.chart.sizes) - 1
        if written and self.current().column() > last >= 0:
            self.go_to(self._model.index(self.current().row(), last))
        if not self.go(move) and move in ("next", "previous"):
            self.focusNextPrevChild(move == "next")

    def _on_refused(self, sentence: str) -> None:
        self.said.emit(sentence, "warning")

    def _on_closed(self, _editor: QWidget, hint: ChartDelegate.EndEditHint) -> None:
        if hint == ChartDelegate.EndEditHint.RevertModelCache:
            self._model.restore()
        self.cell_changed.emit()

    def open_cell(self, index: QModelIndex, text: str = "") -> None:
        """Open a cell for typing; a text types over what it holds."""
        if not self._model.flags(index) & Qt.ItemFlag.ItemIsEditable:
            return
        self._delegate.typed_over = bool(text)
        self.setCurrentIndex(index)
        self.edit(index)
        if text:
            self._delegate.type_over(text)

    def make_edit(self, name: str, after: Chart, row: int | None = None, column: int | None = None) -> None:
        """Ask for an edit that is no typing, then go to where it happened."""
        now = self.current()
        self._model.edited.emit(name, after, self._model.field(now))
        at_row = now.row() if row is None else row
        at_column = now.column() if column is None else column
        last_row, last_column = self._model.rowCount() - 1, self._model.columnCount() - 1
        self.go_to(self._model.index(min(at_row, last_row), min(at_column, last_column)))
        self.setFocus()

    def finish(self) -> None:
        """Make the edit of the cell that is being typed, if one is."""
        self._delegate.finish_open()

    def clear_cells(self) -> None:
        """Take the chosen figures out, as one edit. Sizes keep their names."""
        places = [(i.row() - 1, i.column()) for i in self.chosen() if self._model.is_figure(i)]
        if not places or not self._model.editable:
            return
        after = cleared(self._model.chart, places)
        if after != self._model.chart:
            first = self._model.index(places[0][0] + 1, places[0][1])
            one = f"Clear {self._model.row_name(places[0][0]).lower()} {self._model.chart.sizes[places[0][1]].label}"
            name = one if len(places) == 1 else f"Clear {len(places)} figures"
            self._model.edited.emit(name, after, self._model.field(first))

    def copy(self) -> None:
        """Put the chosen block on the clipboard, as text that spreadsheets take."""
        top, left, bottom, right = self.block()
        lines = [
            [str(self._model.index(r, c).data(Qt.ItemDataRole.EditRole) or "") for c in range(left, right + 1)]
            for r in range(top, bottom + 1)
        ]
        QApplication.clipboard().setText(block_to_text(lines))

    def copy_chart(self) -> None:
        """Put the whole chart on the clipboard, with its sizes and measures."""
        chart = self._model.chart
        lines = [["Size", *(s.label for s in chart.sizes)]]
        lines += [[self._model.row_name(i), *(c.text for c in r.cells)] for i, r in enumerate(chart.rows)]
        QApplication.clipboard().setText(block_to_text(lines))

    def cut(self) -> None:
        """Copy the chosen block and take its figures out."""
        self.copy()
        self.clear_cells()

    def _on_shape(self) -> None:
        self._measure_up()

    def _on_data(self, top: QModelIndex, bottom: QModelIndex) -> None:
        for column in range(top.column(), bottom.column() + 1):
            self._fit_column(column)

    def _on_range(self) -> None:
        self.updateGeometry()

    def _measure_up(self) -> None:
        """Row height, column widths and the grid's own height, from the font and the chart."""
        height = theme.spacing(3.75)
        self._header.setMinimumSectionSize(height)
        self._header.setDefaultSectionSize(height)
        self.horizontalHeader().setMinimumSectionSize(theme.spacing(6))
        for column in range(self._model.columnCount()):
            self._fit_column(column)
        self._header.updateGeometry()
        self.updateGeometries()
        self.updateGeometry()

    def _fit_column(self, column: int) -> None:
        """As wide as its longest text, within reason."""
        texts = [str(self._model.index(r, column).data() or "") for r in range(self._model.rowCount())]
        longest = max(texts, key=len, default="")
        metrics = self.fontMetrics()
        wanted = max(metrics.horizontalAdvance(longest), metrics.horizontalAdvance(texts[0]) * 11 // 10 if texts else 0)
        width = min(max(wanted + theme.spacing(2.5), theme.spacing(9)), theme.spacing(24))
        if self.columnWidth(column) != width:
            self.setColumnWidth(column, width)

    def sizeHint(self) -> QSize:
        """High enough for the chart, up to a limit, so that the page scrolls and not the grid."""
        rows = min(self._model.rowCount(), MOST_ROWS)
        bar = self.horizontalScrollBar()
        room = bar.sizeHint().height() if bar.maximum() > 0 else 0
        return QSize(super().sizeHint().width(), rows * self._header.defaultSectionSize() + room + 2)

    def minimumSizeHint(self) -> QSize:
        """As high as wished; the page scrolls."""
        return QSize(theme.spacing(30), self.sizeHint().height())

    def currentChanged(self, current: Index, previous: Index) -> None:
        """Say what the cell is about."""
        super().currentChanged(current, previous)
        self.cell_changed.emit()

    def selectionChanged(self, selected: QItemSelection, deselected: QItemSelection) -> None:
        """Other cells are chosen: other actions work."""
        super().selectionChanged(selected, deselected)
        self.cell_changed.emit()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """A click begins a new row of typing."""
        super().mousePressEvent(event)
        self._start = self.current().column()

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """What can be done with the cell, at the mouse or beside the current cell."""
        by_key = event.reason() == QContextMenuEvent.Reason.Keyboard
        at = self.viewport().mapToGlobal(self.visualRect(self.current()).bottomLeft()) if by_key else event.globalPos()
        self.menu_wanted.emit(at)

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size, and light or dark."""
        super().changeEvent(event)
        if theme.font_changed(event) and hasattr(self, "_header"):
            self._measure_up()
        if theme.palette_changed(event):
            self.viewport().update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Keys as in a spreadsheet."""
        if self._clipboard_key(event) or self._moving_key(event) or self._typing_key(event):
            event.accept()
            return
        if event.key() in (Qt.Key.Key_Tab, Qt.Key.Key_Backtab):
            event.ignore()
            return
        before = self.currentIndex()
        super().keyPressEvent(event)
        if self.currentIndex() != before:
            self._start = self.currentIndex().column()

    def _clipboard_key(self, event: QKeyEvent) -> bool:
        for standard, action in (
            (QKeySequence.StandardKey.Copy, self.copy),
            (QKeySequence.StandardKey.Cut, self.cut),
            (QKeySequence.StandardKey.Paste, self.paste_wanted.emit),
        ):
            if event.matches(standard):
                action()
                return True
        return False

    def _moving_key(self, event: QKeyEvent) -> bool:
        key, index = event.key(), self.current()
        if key in (Qt.Key.Key_Tab, Qt.Key.Key_Backtab):
            return self.go("next" if key == Qt.Key.Key_Tab else "previous")
        if key not in (Qt.Key.Key_Return, Qt.Key.Key_Enter) or event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            return False
        if self._model.is_more(index.row()):
            self.name_measure(index.row())
        elif index.row() == SIZE_ROW and self._model.editable:
            self.open_cell(index)
        else:
            self.go("up" if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else "enter")
        return True

    def _typing_key(self, event: QKeyEvent) -> bool:
        """Delete clears, F2 opens a cell, and any other text types over it."""
        index = self.current()
        if event.key() in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace):
            self.clear_cells()
            return True
        if event.key() == Qt.Key.Key_F2:
            self.name_measure(index.row()) if self._model.is_more(index.row()) else self.open_cell(index)
            return True
        text = event.text()
        held = event.modifiers() & (Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.AltModifier)
        if not text.strip() or not text.isprintable() or held in _SHORTCUTS:
            return False
        if not self._model.editable:
            return True
        if self._model.is_more(index.row()):
            self.name_measure(index.row(), text)
        else:
            self.open_cell(index, text)
        return True
