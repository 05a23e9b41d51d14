"""One side of two comparisons set next to each other: whose it is, the verdict, and the regions."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QModelIndex, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from sizekeeper.core.found import Found
from sizekeeper.ui import theme
from sizekeeper.ui.beside_lines import HEADING, beside_lines, heading
from sizekeeper.ui.fit_table import LineTable
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.verdict_view import VerdictText, VerdictView

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sizekeeper.core.result import Fit
    from sizekeeper.core.wording import Wording
    from sizekeeper.ui.fit_source import Missing


class BesideSide(QWidget):
    """A heading, a verdict, and a table whose rows are those of the other side.

    Signals:
        picked(int): the row of a region that was picked.
    """

    picked = Signal(int)

    def __init__(self, side: str, parent: QWidget | None = None) -> None:
        """A side, called `left` or `right` for a screen reader."""
        super().__init__(parent)
        self._side = side
        self.title = Lettering("", "part", self)
        self.title.setWordWrap(True)
        self.verdict = VerdictView(self)
        self.table = LineTable(HEADING, f"Regions, {side} side", self, choose=True)
        self.table.lines.set_words_in(frozenset({0, 4}))
        self._above = QWidget(self)
        self._top = top = QVBoxLayout(self._above)
        top.setContentsMargins(0, 0, 0, 0)
        top.setSpacing(theme.spacing(0.75))
        top.addWidget(self.title)
        top.addWidget(self.verdict)
        top.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(theme.spacing(1.5))
        column.addWidget(self._above)
        column.addWidget(self.table, 1)

        self.table.selectionModel().currentRowChanged.connect(self._on_row)

    def _on_row(self, now: QModelIndex, _before: QModelIndex) -> None:
        if now.isValid():
            self.picked.emit(now.row())

    def pick(self, row: int) -> None:
        """Pick the row that was picked on the other side."""
        if row != self.table.currentIndex().row():
            self.table.selectRow(row)

    @property
    def above(self) -> QWidget:
        """What stands above the table: both sides give it the same height, so that the rows are level."""
        return self._above

    def height_above(self, width: int) -> int:
        """How high what stands above the table is at a width."""
        return self._top.totalHeightForWidth(width)

    def show_found(self, title: str, found: Found | Missing, measures: Sequence[str], words: Wording) -> None:
        """Show a comparison, or what is missing first."""
        fit = fit_in(found)
        self.title.setText(title)
        self.table.setAccessibleName(f"Regions of {title}, {self._side} side")
        if fit is not None:
            self.verdict.show_text(VerdictText.of(fit, words))
        elif isinstance(found, Found):
            self.verdict.show_text(VerdictText("Nothing to compare yet", chart=found.problem))
        else:
            self.verdict.show_text(VerdictText(found.heading, chart=found.sentence))
        by_body = fit is not None and fit.mode == "body"
        self.table.lines.set_heading(heading(words, by_body=by_body))
        self.table.show_lines(beside_lines(fit, measures, words))
        self.table.setVisible(bool(measures))


def fit_in(found: Found | Missing) -> Fit | None:
    """The fit of a comparison, None where there is none."""
    return found.fit if isinstance(found, Found) else None
