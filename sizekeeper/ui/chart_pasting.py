"""Pasting a block into a chart's grid, after saying what it would add."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QApplication

from sizekeeper.core.chart_paste import SIZES, Paste, block_from_text, fitting, paste
from sizekeeper.errors import ChartError
from sizekeeper.ui.chart_paste_question import PasteQuestion, added

if TYPE_CHECKING:
    from sizekeeper.core.chart import Chart
    from sizekeeper.ui.chart_grid import ChartGrid


class ChartPasting(QObject):
    """Lays the clipboard into a grid, from the first chosen cell on."""

    def __init__(self, grid: ChartGrid) -> None:
        super().__init__(grid)
        self._grid = grid
        self._block: list[list[str]] = []
        self._at = (SIZES, 0)

    @property
    def _chart(self) -> Chart:
        return self._grid.chart_model().chart

    def lay_in(self) -> None:
        """Paste; what goes beyond the chart's edge is asked about first."""
        if not self._grid.chart_model().editable:
            return
        top, left, _, _ = self._grid.block()
        self._at = (min(top - 1, len(self._chart.rows)), min(left, len(self._chart.sizes)))
        try:
            self._block = block_from_text(QApplication.clipboard().text())
            done = self._paste(self._block)
        except ChartError as error:
            self._grid.said.emit(str(error), "warning")
            return
        if self._adds_unasked(done):
            self._put(done)
            return
        inside = self._at[0] < len(self._chart.rows) and self._at[1] < len(self._chart.sizes)
        question = PasteQuestion.ask(done, fits=inside, parent=self._grid.window())
        question.add_chosen.connect(self._on_add)
        question.fit_chosen.connect(self._on_fit)

    def _adds_unasked(self, done: Paste) -> bool:
        """Nothing to ask: nothing is added, or sizes are where sizes are typed, or the chart has none yet."""
        only_sizes = self._at[0] == SIZES and len(self._block) == 1
        return only_sizes or not self._chart.sizes or not (done.sizes or done.measures)

    def _paste(self, block: list[list[str]]) -> Paste:
        return paste(self._chart, *self._at, block, self._grid.chart_model().measures)

    def _on_add(self) -> None:
        self._put(self._paste(self._block))

    def _on_fit(self) -> None:
        self._put(self._paste(fitting(self._chart, *self._at, self._block)))

    def _put(self, done: Paste) -> None:
        if done.chart == self._chart:
            return
        name = {0: "Paste sizes", 1: "Paste a figure"}.get(done.figures, f"Paste {done.figures} figures")
        self._grid.make_edit(name, done.chart, max(self._at[0] + 1, 0), self._at[1])
        if done.sizes or done.measures:
            self._grid.said.emit(f"Pasting added {added(done)}.", "muted")
