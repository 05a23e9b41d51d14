"""Asks before a chart's figures are read in another unit."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QMessageBox, QWidget

from sizekeeper.core.cells import parse_cell
from sizekeeper.core.notation import CENTIMETRES, show

if TYPE_CHECKING:
    from sizekeeper.core.chart import Chart
    from sizekeeper.core.length import Unit

UNITS = {"cm": "centimetres", "in": "inches", "mm": "millimetres"}


class UnitQuestion(QMessageBox):
    """Read the figures in another unit, or leave them.

    Signals:
        agreed(): the figures should be read in the other unit.
    """

    agreed = Signal()

    def __init__(self, chart: Chart, unit: Unit, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setIcon(QMessageBox.Icon.NoIcon)
        self.setWindowTitle("Unit of the chart")
        self.setText(f"Read the figures as {UNITS[unit]}?")
        self.setInformativeText(consequence(chart, unit))
        self.yes = self.addButton(f"Read as {UNITS[unit]}", QMessageBox.ButtonRole.AcceptRole)
        self.setEscapeButton(self.addButton("Cancel", QMessageBox.ButtonRole.RejectRole))
        self.setDefaultButton(self.yes)
        self.accepted.connect(self.agreed)

    @classmethod
    def ask(cls, chart: Chart, unit: Unit, *, parent: QWidget) -> UnitQuestion:
        """Open the question over a window; `agreed` answers."""
        question = cls(chart, unit, parent)
        question.open()
        return question


def consequence(chart: Chart, unit: Unit) -> str:
    """What another unit means, by the first figure it changes: the texts stay, what they say does not."""
    stays = "Every figure stays as typed"
    for row in chart.rows:
        for cell in row.cells:
            read = parse_cell(cell.text, unit)
            if read.low is not None and read.low != cell.low:
                return f"{stays}. “{cell.text}” is then read as {UNITS[unit]}: {show(read.low.exact_cm, CENTIMETRES)}."
    return f"{stays}, and all have their unit written."
