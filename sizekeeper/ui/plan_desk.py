"""The plans in the room of the ease table: four parts under the verdict, with a way back."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtWidgets import QApplication, QHBoxLayout, QPushButton, QStackedWidget, QVBoxLayout, QWidget

from sizekeeper.core.plan_verdict import plan_headline, plan_line
from sizekeeper.core.work import work_of
from sizekeeper.ui import theme
from sizekeeper.ui.fit_panel import PartButton
from sizekeeper.ui.lettering import Lettering, say
from sizekeeper.ui.made_before import Earlier, MadeBefore
from sizekeeper.ui.plan_alter import AlterPart
from sizekeeper.ui.plan_cards import PlansPart
from sizekeeper.ui.toile_part import ToilePart
from sizekeeper.ui.worksheet_part import WorksheetPart

if TYPE_CHECKING:
    import datetime as dt
    from collections.abc import Callable

    from sizekeeper.core.planned import Planned
    from sizekeeper.core.wording import Wording
    from sizekeeper.ui.plan_edits import MakeEdits
    from sizekeeper.ui.settings import Settings

DeskPart = Literal["plans", "alter", "worksheet", "toile"]
DESK_PARTS: dict[DeskPart, str] = {
    "plans": "Compare and choose",
    "alter": "Alterations",
    "worksheet": "Worksheet",
    "toile": "Toile",
}


class PlanDesk(QWidget):
    """Plans, alterations, worksheet and toile; only the part in front is kept up to date.

    Signals:
        left(): the ease table is wanted back.
    """

    left = Signal()

    def __init__(
        self, edits: MakeEdits, settings: Settings, today: Callable[[], dt.date], parent: QWidget | None = None
    ) -> None:
        """The plans are in front."""
        super().__init__(parent)
        self._edits = edits
        self._planned: Planned | None = None
        self._words: Wording | None = None
        self._earlier: Earlier | None = None
        self.headline = Lettering("", "title", self)
        self.headline.setWordWrap(True)
        self.best = Lettering("", "accent", self)
        self.best.setWordWrap(True)
        self.before = MadeBefore(self)
        self.back = QPushButton("Back to the ease table", self)
        self.buttons = {part: PartButton(words, self) for part, words in DESK_PARTS.items()}
        self.plans = PlansPart(edits, settings, today, self)
        self.alter = AlterPart(edits, today, self)
        self.worksheet = WorksheetPart(edits, self)
        self.toile = ToilePart(edits, today, self)
        self._stack = QStackedWidget(self)
        for part in (self.plans, self.alter, self.worksheet, self.toile):
            self._stack.addWidget(part)
        self.empty = Lettering("There is nothing to plan from yet: see the ease table.", "plain", self)
        self._lay_out()
        self.back.clicked.connect(self.left)
        for button in self.buttons.values():
            button.clicked.connect(self._on_part)
        edits.again.connect(self._refresh)
        self._space()
        self.turn_to("plans")

    def _lay_out(self) -> None:
        self._top, self._row = QHBoxLayout(), QHBoxLayout()
        said = QVBoxLayout()
        said.setSpacing(theme.spacing(0.5))
        said.addWidget(self.headline)
        said.addWidget(self.best)
        said.addWidget(self.before)
        self._top.addLayout(said, 1)
        self._top.addWidget(self.back, 0, Qt.AlignmentFlag.AlignTop)
        self._row.setSpacing(0)
        for button in self.buttons.values():
            self._row.addWidget(button)
        self._row.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addLayout(self._top)
        column.addLayout(self._row)
        column.addWidget(self.empty)
        column.addWidget(self._stack, 1)

    @property
    def part(self) -> str:
        """The part in front."""
        return self._edits.part

    def turn_to(self, part: str) -> None:
        """Bring a part to the front."""
        if part not in self.buttons:
            return
        self._edits.part = part
        for name, button in self.buttons.items():
            button.setChecked(name == part)
        self._stack.setCurrentIndex(list(self.buttons).index(next(n for n in self.buttons if n == part)))
        self._refresh()

    def come_to(self, part: str) -> None:
        """Bring a part to the front, and the focus to it unless one of its fields had it already.

        A field that goes away hands the focus on to whatever comes next, which may be a button that undoes something.
        """
        had = QApplication.focusWidget()
        self.turn_to(part)
        if not self._holds_focus() or QApplication.focusWidget() is not had or had in self.buttons.values():
            self._take_focus()

    def _take_focus(self) -> None:
        button = next(button for name, button in self.buttons.items() if name == self.part)
        button.setFocus(Qt.FocusReason.OtherFocusReason)

    def _holds_focus(self) -> bool:
        field = QApplication.focusWidget()
        return field is not None and self.isAncestorOf(field)

    def show_planned(self, planned: Planned | None, words: Wording, earlier: Earlier | None = None) -> None:
        """Show the plans for what was found, and what an earlier make tells; without any plans the desk says so."""
        self._planned, self._words, self._earlier = planned, words, earlier
        self.empty.setVisible(planned is None)
        self._stack.setVisible(planned is not None)
        self._refresh()

    def _refresh(self) -> None:
        """Show the part in front anew; the focus stays here when the field that had it goes away."""
        held = self._holds_focus()
        self._show_part()
        if held and not self._holds_focus():
            self._take_focus()

    def _show_part(self) -> None:
        planned, words = self._planned, self._words
        self.before.show_earlier(self._earlier if self.part == "plans" else None)
        if planned is None or words is None:
            self.headline.setText("")
            say(self.best, "")
            return
        self.headline.setText(plan_headline(planned, words))
        say(self.best, plan_line(planned, words) if planned.chosen is None else "")  # each part says what is decided
        if self.part == "plans":
            self.plans.show_planned(planned, words)
            return
        work = work_of(planned)
        if self.part == "alter":
            self.alter.show_planned(planned, work, words)
        elif self.part == "worksheet":
            self.worksheet.show_planned(planned, work, words)
        else:
            self.toile.show_planned(planned, work, words)

    def _on_part(self) -> None:
        self.turn_to(next(name for name, button in self.buttons.items() if button is self.sender()))

    def _space(self) -> None:
        side = theme.spacing(4)
        self._top.setContentsMargins(side, theme.spacing(1), theme.spacing(3), theme.spacing(0.5))
        self._row.setContentsMargins(theme.spacing(3), 0, side, theme.spacing(1))

    # Qt's own names from here on.

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if hasattr(self, "_row") and theme.font_changed(event):
            self._space()
