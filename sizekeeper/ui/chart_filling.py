"""Filling rows of a chart to the right: where a fill begins, by which step, and the edit."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject

from sizekeeper.core.cells import write_figure
from sizekeeper.core.chart_fill import fill_start, filled_right, step_before
from sizekeeper.errors import ChartError
from sizekeeper.ui.chart_fill_dialog import FillDialog

if TYPE_CHECKING:
    from sizekeeper.core.chart import Chart
    from sizekeeper.core.length import Length
    from sizekeeper.ui.chart_grid import ChartGrid


class ChartFilling(QObject):
    """Fills the rows chosen in a grid, each from its last figure before the first empty cell."""

    def __init__(self, grid: ChartGrid) -> None:
        super().__init__(grid)
        self._grid = grid
        self._starts: dict[int, int] = {}
        self._last = 0

    @property
    def _chart(self) -> Chart:
        return self._grid.chart_model().chart

    def rows(self) -> list[int]:
        """The chart's rows that are chosen."""
        top, _, bottom, _ = self._grid.block()
        return [row for row in range(top - 1, bottom) if 0 <= row < len(self._chart.rows)]

    def ask(self) -> None:
        """Ask for the step; it is proposed where two neighbouring figures give one."""
        _, left, _, right = self._grid.block()
        end = len(self._chart.sizes) - 1
        self._last = min(right, end) if right > left else end
        starts = {row: self._start(row, min(left, end), min(right, end)) for row in self.rows()}
        self._starts = {row: at for row, at in starts.items() if at is not None and at < self._last}
        if not self._starts:
            self._grid.said.emit("Type the first figure of the row, then fill the sizes to its right.", "warning")
            return
        row, start = next(iter(self._starts.items()))
        several = len(self._starts) > 1
        cell = self._chart.rows[row].cells[start]
        step = None if several else step_before(self._chart, row, start)
        text = "" if step is None else write_figure(step.value, step.unit, cell.text)
        unit = cell.low.unit if cell.low is not None else self._chart.unit
        dialog = FillDialog.ask(self._says(row, start), text, unit, own=several, parent=self._grid.window())
        dialog.stepped.connect(self._on_stepped)

    def _start(self, row: int, left: int, right: int) -> int | None:
        """Where a row's fill begins: at the figure before the first empty cell chosen, else at the first one chosen."""
        cells = self._chart.rows[row].cells
        empty = next((at for at in range(left, right + 1) if cells[at].low is None), None)
        return fill_start(self._chart, row, left if empty is None or empty == left else empty - 1)

    def _says(self, row: int, start: int) -> str:
        chart, last = self._chart, self._chart.sizes[self._last].label
        if len(self._starts) > 1:
            return f"{len(self._starts)} measures go on to size {last}, from size to size by"
        name, cells = self._grid.chart_model().row_name(row), chart.rows[row].cells
        replaced = any(cell.text for cell in cells[start + 1 : self._last + 1])
        first = "The figures there are replaced. " if replaced else ""
        return f"{first}{name} goes on from {cells[start].text} in size {chart.sizes[start].label} to size {last} by"

    def _on_stepped(self, step: Length | None) -> None:
        after = self._chart
        filled = []
        for row, start in self._starts.items():
            by = step or step_before(after, row, start)
            if by is None:
                continue
            try:
                after = filled_right(after, row, start, by, self._last)
            except ChartError as error:
                self._grid.said.emit(str(error), "warning")
            else:
                filled.append(row)
        if filled:
            one = f"Fill {self._grid.chart_model().row_name(filled[0]).lower()}"
            self._grid.make_edit(one if len(filled) == 1 else f"Fill {len(filled)} measures", after)
        elif step is None:
            self._grid.said.emit("None of these rows has two figures side by side: type the step.", "warning")
