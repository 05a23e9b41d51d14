"""The middle of the Fit page: the verdict, the ease table and the notes, on one sheet that scrolls."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sizekeeper.core.plan_verdict import plan_headline, plan_line, plan_warnings
from sizekeeper.reports.ease_table import ease_table
from sizekeeper.ui import fit_rows
from sizekeeper.ui.ease_board import EaseBoard
from sizekeeper.ui.ease_model import NO_TABLE
from sizekeeper.ui.lettering import Lettering, say
from sizekeeper.ui.scroll_sheet import ScrollSheet
from sizekeeper.ui.verdict_view import VerdictText, VerdictView

if TYPE_CHECKING:
    import datetime as dt

    from PySide6.QtWidgets import QWidget

    from sizekeeper.core.found import Found
    from sizekeeper.core.planned import Planned
    from sizekeeper.core.wording import Wording


class FitAnswer(ScrollSheet):
    """Everything she sees at first sight."""

    def __init__(self, parent: QWidget | None = None) -> None:
        """An empty sheet."""
        super().__init__(2, parent)
        sheet = self.sheet
        self.verdict = VerdictView(sheet)
        self.board = EaseBoard(sheet)
        self.plan = Lettering("", "accent", sheet)
        self.plan.setWordWrap(True)
        self.notes = Lettering("", "plain", sheet)
        self.asides = Lettering("", "note", sheet)
        self._lay_out()

    def _lay_out(self) -> None:
        for widget in (self.verdict, self.plan, self.board, self.notes, self.asides):
            self.column.addWidget(widget)
        self.column.addStretch(1)

    def show_found(self, found: Found, words: Wording, today: dt.date, planned: Planned | None = None) -> None:
        """Show what was found, and which plan is the best or was decided on."""
        fit = found.fit
        text = VerdictText(found.problem) if fit is None else VerdictText.of(fit, words)
        if planned is not None:
            text = replace(text, headline=plan_headline(planned, words), warnings=plan_warnings(planned, words))
        self.verdict.show_text(text)
        say(self.plan, "" if planned is None else plan_line(planned, words))
        table = NO_TABLE if fit is None else ease_table(fit)
        heading = f"Body, {found.person.unit}"
        self.board.show_table(table, fit_rows.region_texts(found, words, today), words, heading)
        self.board.setVisible(bool(found.measures))
        say(self.notes, fit_rows.notes(found, words, today))
        say(self.asides, fit_rows.asides(found, words, today))
