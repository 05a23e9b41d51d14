"""What can be done with a chart beside typing: sizes, measures, filling and pasting, as actions with their keys."""

from __future__ import annotations

from typing import TYPE_CHECKING, cast

from PySide6.QtCore import QObject, QPoint, Qt
from PySide6.QtGui import QAction, QActionGroup, QKeySequence
from PySide6.QtWidgets import QApplication, QMenu

from sizekeeper.core import chart_edit as edit
from sizekeeper.core.cells import write_figure
from sizekeeper.core.chart_doubts import dimension
from sizekeeper.core.chart_fill import fill_start, filled_right, step_before
from sizekeeper.core.chart_paste import Paste, block_from_text, fitting, paste
from sizekeeper.errors import ChartError
from sizekeeper.ui.chart_fill_dialog import FillDialog
from sizekeeper.ui.chart_model import SIZE_ROW
from sizekeeper.ui.chart_paste_question import PasteQuestion, added

if TYPE_CHECKING:
    from collections.abc import Callable

    from sizekeeper.core.chart import Chart, WrittenAs
    from sizekeeper.core.length import Length
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
        self.fill = self._action("Fill right…", self._fill, "Ctrl+R")
        self.copy = self._action("Copy", grid.copy)
        self.copy_chart = self._action("Copy the whole chart", grid.copy_chart)
        self.paste = self._action("Paste", self.lay_in)
        self.clear = self._action("Clear", grid.clear_cells)
        self.written: dict[WrittenAs, QAction] = {}
        group = QActionGroup(self)
        for way, text in WRITTEN.items():
            action = self._action(text, self._write_as)
            action.setData(way)
            action.setCheckable(True)
            group.addAction(action)
            self.written[way] = action
        grid.paste_wanted.connect(self.lay_in)
        grid.menu_wanted.connect(self.pop_up)
        grid.cell_changed.connect(self.enable)
        self._rows: list[int] = []
        self._block: list[list[str]] = []
        self._at = (0, 0)
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
        self.fill.setEnabled(on_row and len(chart.sizes) > 1)
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

    def _edit(self, name: str, after: Chart, row: int | None = None, column: int | None = None) -> None:
        """Ask for an edit, then go to where it happened."""
        now = self._grid.current()
        self._model.edited.emit(name, after, self._model.field(now))
        at_row = now.row() if row is None else row
        at_column = now.column() if column is None else column
        self._grid.go_to(self._model.index(min(at_row, self._model.rowCount() - 1), at_column))
        self._grid.setFocus()

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
        self._edit(f"Insert size {name}", edit.with_size_added(self._model.chart, name, column), SIZE_ROW, column)
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
        self._edit(f"Move size {self._size_label()}", after, column=column + by)

    def _remove_sizes(self) -> None:
        sizes = len(self._model.chart.sizes)
        columns = sorted({i.column() for i in self._grid.chosen() if i.column() < sizes})
        labels = [self._model.chart.sizes[c].label for c in columns]
        name = f"Remove size {labels[0]}" if len(labels) == 1 else f"Remove {len(labels)} sizes"
        self._edit(name, edit.without_sizes(self._model.chart, columns), column=max(columns[0] - 1, 0))

    def _turn(self) -> None:
        self._edit("Turn the sizes round", edit.with_sizes_turned(self._model.chart))

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
        self._edit(name, edit.with_row_moved(self._model.chart, row, row + by), row=row + by + 1)

    def _remove_measures(self) -> None:
        rows = sorted({i.row() - 1 for i in self._grid.chosen() if 0 < i.row() <= len(self._model.chart.rows)})
        one = f"Remove {self._model.row_name(rows[0]).lower()}"
        name = one if len(rows) == 1 else f"Remove {len(rows)} measures"
        self._edit(name, edit.without_rows(self._model.chart, rows), row=max(rows[0], SIZE_ROW))

    def _write_as(self) -> None:
        action = cast("QAction", self.sender())
        way = cast("WrittenAs", action.data())
        row = self._row()
        words = {"full": "the whole girth", "half": "half the girth", "quarter": "a quarter of the girth"}[way]
        name = f"Read {self._model.row_name(row).lower()} as {words}"
        self._edit(name, edit.with_written_as(self._model.chart, row, way))

    def _fill(self) -> None:
        """Ask for the step; it is proposed where two neighbouring figures give one."""
        top, left, bottom, right = self._grid.block()
        chart = self._model.chart
        rows = [r for r in range(top - 1, bottom) if 0 <= r < len(chart.rows)]
        starts = {r: fill_start(chart, r, min(self._grid.current().column(), len(chart.sizes) - 1)) for r in rows}
        self._rows = [r for r in rows if (start := starts[r]) is not None and start < len(chart.sizes) - 1]
        if not self._rows:
            self._grid.said.emit("Type the first figure of the row, then fill the sizes to its right.", "warning")
            return
        self._at = (left, right if right > left else len(chart.sizes) - 1)
        first = self._rows[0]
        start = cast("int", starts[first])
        step = step_before(chart, first, start) if len(self._rows) == 1 else None
        text = write_figure(step.value, step.unit, chart.rows[first].cells[start].text) if step else ""
        cell_unit = getattr(chart.rows[first].cells[start].low, "unit", chart.unit)
        dialog = FillDialog.ask(
            self._fill_says(start), text, cell_unit, own=len(self._rows) > 1, parent=self._grid.window()
        )
        dialog.stepped.connect(self._on_stepped)

    def _fill_says(self, start: int) -> str:
        chart = self._model.chart
        last = chart.sizes[min(self._at[1], len(chart.sizes) - 1)].label
        if len(self._rows) > 1:
            return f"{len(self._rows)} measures go on to size {last}, from size to size by"
        row = self._rows[0]
        figure = chart.rows[row].cells[start].text
        says = f"{self._model.row_name(row)} goes on from {figure} in size {chart.sizes[start].label} to size {last} by"
        replaced = any(c.text for c in chart.rows[row].cells[start + 1 : self._at[1] + 1])
        return f"{says} (the figures there are replaced)" if replaced else says

    def _on_stepped(self, step: Length | None) -> None:
        after = self._model.chart
        column = self._grid.current().column()
        filled = 0
        for row in self._rows:
            start = fill_start(after, row, min(column, len(after.sizes) - 1))
            by = step or (step_before(after, row, start) if start is not None else None)
            if start is None or by is None:
                continue
            try:
                after = filled_right(after, row, start, by, min(self._at[1], len(after.sizes) - 1))
                filled += 1
            except ChartError as error:
                self._grid.said.emit(str(error), "warning")
        if filled:
            one = f"Fill {self._model.row_name(self._rows[0]).lower()}"
            self._edit(one if filled == 1 else f"Fill {filled} measures", after)
        elif step is None:
            self._grid.said.emit("None of these rows has two figures side by side: type the step.", "warning")

    def lay_in(self) -> None:
        """Lay the clipboard in from the first chosen cell on; what goes beyond the edge is asked about."""
        if not self._model.editable:
            return
        top, left, _, _ = self._grid.block()
        self._at = (min(top - 1, len(self._model.chart.rows)), min(left, len(self._model.chart.sizes)))
        try:
            self._block = block_from_text(QApplication.clipboard().text())
            done = paste(self._model.chart, *self._at, self._block, self._model.measures)
        except ChartError as error:
            self._grid.said.emit(str(error), "warning")
            return
        typed_sizes_only = self._at[0] < 0 and len(self._block) == 1
        if not (done.sizes or done.measures) or typed_sizes_only or (edit.is_blank(self._model.chart) and self._new()):
            self._paste(done)
            return
        fits = bool(fitting(self._model.chart, *self._at, self._block)[:1]) and self._at[1] < len(
            self._model.chart.sizes
        )
        question = PasteQuestion.ask(done, fits=fits, parent=self._grid.window())
        question.add_chosen.connect(self._on_add)
        question.fit_chosen.connect(self._on_fit)

    def _new(self) -> bool:
        """Whether the chart has no sizes yet: then there is nothing that a paste could go beyond."""
        return not self._model.chart.sizes

    def _on_add(self) -> None:
        self._paste(paste(self._model.chart, *self._at, self._block, self._model.measures))

    def _on_fit(self) -> None:
        block = fitting(self._model.chart, *self._at, self._block)
        self._paste(paste(self._model.chart, *self._at, block, self._model.measures))

    def _paste(self, done: Paste) -> None:
        name = f"Paste {done.figures} figures" if done.figures != 1 else "Paste a figure"
        self._edit(name if done.figures else "Paste sizes", done.chart, row=max(self._at[0] + 1, 0), column=self._at[1])
        if done.sizes or done.measures:
            self._grid.said.emit(f"Pasting added {added(done)}.", "muted")


def _between(chart: Chart, column: int) -> str:
    """A name for a size before a column: midway between two numbers, else the next free one."""
    pair = [s.label for s in chart.sizes[max(column - 1, 0) : column + 1]]
    if len(pair) == 2 and all(label.isdecimal() for label in pair):  # noqa: PLR2004 - a size is between two
        middle = (int(pair[0]) + int(pair[1])) // 2
        if edit.size_named(chart, str(middle)) is None:
            return str(middle)
    return edit.next_size(chart)
