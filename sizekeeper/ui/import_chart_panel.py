"""The right side of the import window: what is to answer, what is remembered, and each table as it will be."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QFrame, QScrollArea, QVBoxLayout, QWidget

from sizekeeper.importing.asking import remarks
from sizekeeper.ui import theme
from sizekeeper.ui.import_card import TableCard
from sizekeeper.ui.import_memory import Memory
from sizekeeper.ui.import_questions import Questions
from sizekeeper.ui.lettering import Lettering

if TYPE_CHECKING:
    from collections.abc import Sequence

    from PySide6.QtCore import QEvent

    from sizekeeper.core.measure import Measures
    from sizekeeper.importing.opened import Opened
    from sizekeeper.importing.question import Ask

_MANY = 6
"""With more tables than these, only those of the sheet that is looked at are shown."""


class ChartSide(QScrollArea):
    """What becomes of the file.

    Signals:
        corrected(str, str, str, str): what was corrected, the sheet, the cell, and the new value.
        chosen(str, str, str): as `TableCard.chosen`.
        ticked(str, bool): as `TableCard.ticked`.
        looked_at(str, str): the sheet and the cell that the current place of a table comes from.
        leave_wanted(str, object): the sheet and the cells that shall not be read.
    """

    corrected = Signal(str, str, str, str)
    chosen = Signal(str, str, str)
    ticked = Signal(str, bool)
    looked_at = Signal(str, str)
    leave_wanted = Signal(str, object)

    def __init__(self, measures: Measures, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._measures = measures
        self.cards: list[TableCard] = []
        self.questions = Questions(self)
        self.memory = Memory(measures, self)
        self.more = Lettering("", "muted", self)
        self._opened: Opened | None = None
        self._sheet = ""
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        content = QWidget(self)
        self._column = QVBoxLayout(content)
        for part in (self.questions, self.memory, self.more):
            self._column.addWidget(part)
        self._column.addStretch(1)
        self.setWidget(content)
        for ground in (content, self.viewport()):
            ground.setAutoFillBackground(False)
        self._space()

    def show_reading(self, opened: Opened, asked: Sequence[Ask]) -> None:
        """Show the reading as it is now."""
        self._opened = opened
        self.questions.show_them(asked, remarks(opened))
        self.memory.show_names(opened)
        self._show_cards()
        if self.questions.has_focus:
            self.verticalScrollBar().setValue(0)  # the focus is on the first question; Qt went past it

    def show_sheet(self, sheet: str) -> None:
        """Show the tables of another sheet, where there are too many to show all."""
        if sheet != self._sheet:
            self._sheet = sheet
            self._show_cards()

    def _show_cards(self) -> None:
        """One card for each table; cards are kept where they can be."""
        if self._opened is None:
            return
        opened, every = self._opened, self._opened.draft.tables
        tables = every if len(every) <= _MANY else [t for t in every if t.sheet == self._sheet]
        for table in tables[len(self.cards) :]:
            self._add_card(TableCard(table, self._measures, self.widget()))
        while len(self.cards) > len(tables):
            card = self.cards.pop()
            self._column.removeWidget(card)
            card.hide()
            card.deleteLater()
        for card, table in zip(self.cards, tables, strict=True):
            taken = table.key not in opened.answers.left_out
            sheet = table.sheet if len(opened.sheets) > 1 else ""
            card.show_table(table, taken=taken, several=len(every) > 1, sheet=sheet)
        rest = len(every) - len(tables)
        self.more.setText(f"{'One more table is' if rest == 1 else f'{rest} more tables are'} on other sheets.")
        self.more.setVisible(rest > 0)

    def _add_card(self, card: TableCard) -> None:
        card.model.corrected.connect(self._on_corrected)
        card.chosen.connect(self.chosen)
        card.ticked.connect(self.ticked)
        card.view.looked_at.connect(self._on_looked_at)
        card.view.leave_wanted.connect(self._on_leave)
        self._column.insertWidget(self._column.count() - 2, card)
        self.cards.append(card)

    def _sheet_of(self, sender: object) -> str:
        card = next(card for card in self.cards if sender in (card.model, card.view))
        return card.model.table.sheet

    def _on_corrected(self, part: str, at: str, text: str) -> None:
        self.corrected.emit(part, self._sheet_of(self.sender()), at, text)

    def _on_looked_at(self, at: str) -> None:
        self.looked_at.emit(self._sheet_of(self.sender()), at)

    def _on_leave(self, cells: list[str]) -> None:
        self.leave_wanted.emit(self._sheet_of(self.sender()), cells)

    def edit(self, sheet: str, at: str) -> bool:
        """Open the place of a cell in its table for typing; False where no table has it."""
        for card in self.cards:
            if card.model.table.sheet == sheet and card.view.go_to(at):
                self.ensureWidgetVisible(card)
                card.view.setFocus(Qt.FocusReason.OtherFocusReason)
                card.view.edit(card.view.currentIndex())
                return True
        return False

    def _space(self) -> None:
        self._column.setContentsMargins(theme.spacing(2), 0, theme.spacing(3), theme.spacing(2))
        self._column.setSpacing(theme.spacing(2))

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if theme.font_changed(event):
            self._space()
