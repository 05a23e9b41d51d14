"""What can be done with a chart beside typing: sizes, measures, filling and pasting, as actions with their keys."""

from __future__ import annotations

from typing import TYPE_CHECKING, cast

from PySide6.QtCore import QObject, QPoint, Qt
from PySide6.QtGui import QAction, QActionGroup, QKeySequence
from PySide6.QtWidgets import QMenu

from sizekeeper.core import chart_edit as edit
from sizekeeper.core.chart_doubts import dimension
from sizekeeper.ui.chart_filling import ChartFilling
from sizekeeper.ui.chart_model import SIZE_ROW
from sizekeeper.ui.chart_pasting import ChartPasting

if TYPE_CHECKING:
    from collections.abc import Callable

    from sizekeeper.core.chart import Chart, WrittenAs
    from sizekeeper.ui.chart_grid import ChartGrid

WRITTEN: dict[WrittenAs, str] = {
    "full": "Figures are the whole girth",
    "half": "Figures are half the girth",
    "quarter": "Figures are a quarter of the girth",
}


class ChartActions(QObject):
    """The actions of one grid. Each is enabled only where it works."""

    def __init__(self, grid: ChartGrid) -> None:
        super().__init__(grid)
        self._grid = grid
        self._model = grid.chart_model()
        self._filling = ChartFilling(grid)
        self._pasting = ChartPasting(grid)
        self.add_size = self._action("Add size", self._add_size)
        self.insert_size = self._action("Insert size before", self._insert_size, "Ctrl++")
        self.rename_size = self._action("Rename size…", self._rename_size)
        self.size_left = self._action("Move size left", self._size_left, "Alt+Left")
        self.size_right = self._action("Move size right", self._size_right, "Alt+Right")
        self.remove_sizes = self._action("Remove size", self._remove_sizes, "Ctrl+-")
        self.turn = self._action("Turn the sizes round", self._turn)
        self.add_measure = self._action("Add measure", self._add_measure)
        self.rename_measure = self._action("Rename measure…", self._rename_measure, "Shift+F2")
        self.measure_up = self._action("Move measure up", self._measure_up, "Alt+Up")
        self.measure_down = self._action("Move measure down", self._measure_down, "Alt+Down")
        self.remove_measures = self._action("Remove measure", self._remove_measures, "Ctrl+Shift+-")
        self.fill = self._action("Fill right…", self._filling.ask, "Ctrl+R")
        self.copy = self._action("Copy", grid.copy)
        self.copy_chart = self._action("Copy the whole chart", grid.copy_chart)
        self.paste = self._action("Paste", self._pasting.lay_in)
        self.clear = self._action("Clear", grid.clear_cells)
        self.written: dict[WrittenAs, QAction] = {}
        group = QActionGroup(self)
        for way, text in WRITTEN.items():
            action = self._action(text, self._write_as)
            action.setData(way)
            action.setCheckable(True)
            group.addAction(action)
            self.written[way] = action
        grid.paste_wanted.connect(self._pasting.lay_in)
        grid.menu_wanted.connect(self.pop_up)
        grid.cell_changed.connect(self.enable)
        self.enable()

    def _action(self, text: str, does: Callable[[], object], key: str = "") -> QAction:
        action = QAction(text, self)
        action.triggered.connect(does)
        if key:
            action.setShortcut(QKeySequence(key))
            action.setShortcutContext(Qt.ShortcutContext.WidgetWithChildrenShortcut)
        self._grid.addAction(action)
        return action

    def menu_groups(self) -> list[list[QAction]]:
        """The actions as a menu shows them, in groups."""
        return [
            [self.copy, self.paste, self.clear, self.fill, self.copy_chart],
            [self.add_size, self.insert_size, self.rename_size, self.size_left, self.size_right, self.remove_sizes,
             self.turn],
            [self.add_measure, self.rename_measure, self.measure_up, self.measure_down, self.remove_measures],
            list(self.written.values()),
        ]  # fmt: skip

    def put_into(self, menu: QMenu) -> None:
        """Put the actions that work now into a menu."""
        self.enable()
        menu.clear()
        for group in self.menu_groups():
            working = [action for action in group if action.isEnabled()]
            if working and not menu.isEmpty():
                menu.addSeparator()
            menu.addActions(working)

    def pop_up(self, at: QPoint) -> None:
        """Show the menu of the current cell."""
        menu = QMenu(self._grid)
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.put_into(menu)
        menu.popup(at)

    def enable(self) -> None:
        """Enable what works at the current cell."""
        model, index = self._model, self._grid.current()
        chart, column, row = model.chart, index.column(), index.row() - 1
        writable = model.editable
        on_size = writable and column < len(chart.sizes)
        on_row = writable and 0 <= row < len(chart.rows)
        self.add_size.setEnabled(writable)
        for action in (self.insert_size, self.rename_size, self.remove_sizes):
            action.setEnabled(on_size)
        self.size_left.setEnabled(on_size and column > 0)
        self.size_right.setEnabled(on_size and column < len(chart.sizes) - 1)
        self.turn.setEnabled(writable and len(chart.sizes) > 1)
        self.add_measure.setEnabled(writable)
        self.rename_measure.setEnabled(on_row)
        self.remove_measures.setEnabled(on_row)
        self.measure_up.setEnabled(on_row and row > 0)
        self.measure_down.setEnabled(on_row and row < len(chart.rows) - 1)
        self.fill.setEnabled(writable and bool(self._filling.rows()) and len(chart.sizes) > 1)
        self.paste.setEnabled(writable)
        self.clear.setEnabled(writable and model.is_figure(index))
        self._enable_written(row if on_row else None)

    def _enable_written(self, row: int | None) -> None:
        """Lengths and widths are never multiplied; a measure of her own may be a girth."""
        chart = self._model.chart
        girth = row is not None and dimension(chart.rows[row], self._model.measures) in ("girth", None)
        for way, action in self.written.items():
            action.setEnabled(girth)
            action.setChecked(girth and row is not None and chart.rows[row].written_as == way)

    def _size_label(self) -> str:
        return self._model.chart.sizes[self._grid.current().column()].label

    def _row(self) -> int:
        return self._grid.current().row() - 1

    def _add_size(self) -> None:
        self._grid.setFocus()
        self._grid.open_cell(self._model.index(SIZE_ROW, len(self._model.chart.sizes)))

    def _insert_size(self) -> None:
        column = self._grid.current().column()
        name = _between(self._model.chart, column)
        self._grid.make_edit(
            f"Insert size {name}", edit.with_size_added(self._model.chart, name, column), SIZE_ROW, column
        )
        self._grid.open_cell(self._model.index(SIZE_ROW, column))

    def _rename_size(self) -> None:
        self._grid.setFocus()
        self._grid.open_cell(self._model.index(SIZE_ROW, self._grid.current().column()))

    def _size_left(self) -> None:
        self._move_size(-1)

    def _size_right(self) -> None:
        self._move_size(1)

    def _move_size(self, by: int) -> None:
        column = self._grid.current().column()
        after = edit.with_size_moved(self._model.chart, column, column + by)
        self._grid.make_edit(f"Move size {self._size_label()}", after, column=column + by)

    def _remove_sizes(self) -> None:
        sizes = len(self._model.chart.sizes)
        columns = sorted({i.column() for i in self._grid.chosen() if i.column() < sizes})
        labels = [self._model.chart.sizes[c].label for c in columns]
        name = f"Remove size {labels[0]}" if len(labels) == 1 else f"Remove {len(labels)} sizes"
        self._grid.make_edit(name, edit.without_sizes(self._model.chart, columns), column=max(columns[0] - 1, 0))

    def _turn(self) -> None:
        self._grid.make_edit("Turn the sizes round", edit.with_sizes_turned(self._model.chart))

    def _add_measure(self) -> None:
        self._grid.setFocus()
        self._grid.name_measure(len(self._model.chart.rows) + 1)

    def _rename_measure(self) -> None:
        self._grid.name_measure(self._grid.current().row())

    def _measure_up(self) -> None:
        self._move_measure(-1)

    def _measure_down(self) -> None:
        self._move_measure(1)

    def _move_measure(self, by: int) -> None:
        row = self._row()
        name = f"Move {self._model.row_name(row).lower()}"
        self._grid.make_edit(name, edit.with_row_moved(self._model.chart, row, row + by), row=row + by + 1)

    def _remove_measures(self) -> None:
        rows = sorted({i.row() - 1 for i in self._grid.chosen() if 0 < i.row() <= len(self._model.chart.rows)})
        one = f"Remove {self._model.row_name(rows[0]).lower()}"
        name = one if len(rows) == 1 else f"Remove {len(rows)} measures"
        self._grid.make_edit(name, edit.without_rows(self._model.chart, rows), row=max(rows[0], SIZE_ROW))

    def _write_as(self) -> None:
        action = cast("QAction", self.sender())
        way = cast("WrittenAs", action.data())
        row = self._row()
        words = {"full": "the whole girth", "half": "half the girth", "quarter": "a quarter of the girth"}[way]
        name = f"Read {self._model.row_name(row).lower()} as {words}"
        self._grid.make_edit(name, edit.with_written_as(self._model.chart, row, way))


def _between(chart: Chart, column: int) -> str:
    """A name for a size before a column: midway between two numbers, else the next free one."""
    pair = [s.label for s in chart.sizes[max(column - 1, 0) : column + 1]]
    if len(pair) == 2 and all(label.isdecimal() for label in pair):  # noqa: PLR2004 - a size is between two
        middle = (int(pair[0]) + int(pair[1])) // 2
        if edit.size_named(chart, str(middle)) is None:
            return str(middle)
    return edit.next_size(chart)
