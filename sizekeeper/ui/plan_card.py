"""One plan as a column: what to cut, what that gives region by region, what it takes, and what is doubtful."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QPushButton, QSizePolicy, QVBoxLayout, QWidget

from sizekeeper.core import plan_words
from sizekeeper.core.ease import SAME
from sizekeeper.core.planned import doubts_left
from sizekeeper.core.work_words import amount
from sizekeeper.ui import theme
from sizekeeper.ui.fit_lines import Line
from sizekeeper.ui.fit_table import LineTable
from sizekeeper.ui.lettering import Lettering, say

if TYPE_CHECKING:
    from sizekeeper.core.make import PlanKind
    from sizekeeper.core.plan import Plan, PlanDoubt, PlanRegion
    from sizekeeper.core.planned import Planned
    from sizekeeper.core.wording import Wording

KIND_WORDS: dict[PlanKind, str] = {
    "straight": "straight",
    "size_below": "the size below",
    "size_above": "the size above",
    "between": "a line between two sizes",
    "blended": "graded between sizes",
    "bust": "with a bust adjustment",
    "own": "your own choice",
}
_RANKS = ("Best", "Second", "Third", "Fourth", "Fifth", "Sixth", "Seventh")
_HEADING = ("Where", "Ease", "", "In", "Out")
_BODY_HEADING = ("Where", "Off by", "", "", "")


class PlanCard(QWidget):
    """A plan with the button that makes it the decision.

    Signals:
        chosen(object): the plan was chosen.
        let_go(): it was the decision, and is not any more.
    """

    chosen = Signal(object)
    let_go = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        """An empty column."""
        super().__init__(parent)
        self._plan: Plan | None = None
        self._is_chosen = False
        self.kind = Lettering("", "muted", self)
        self.title = Lettering("", "part", self)
        self.title.setWordWrap(True)
        self.off = Lettering("", "plain", self)
        self.table = LineTable(_HEADING, "What the plan gives", self)
        self.table.lines.set_words_in(frozenset({0, 2}))
        self.line = Lettering("", "plain", self)
        self.work = Lettering("", "plain", self)
        self.doubts = Lettering("", "warning", self)
        self.button = QPushButton("Choose this plan", self)
        self._column = QVBoxLayout(self)
        for widget in (self.kind, self.title, self.off, self.table, self.line, self.work, self.doubts):
            self._column.addWidget(widget)
        self._column.addStretch(1)
        self._column.addWidget(self.button)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Expanding)
        self.button.clicked.connect(self._on_clicked)
        self._space()

    @property
    def plan(self) -> Plan | None:
        """The plan shown."""
        return self._plan

    def show_plan(self, plan: Plan, planned: Planned, words: Wording, number: int, *, read_only: bool) -> None:
        """Show a plan; `number` counts from 1, the best."""
        self._plan = plan
        self._is_chosen = planned.chosen is not None and plan.key == planned.chosen.key
        self.kind.setText(
            KIND_WORDS[plan.kind].capitalize()
            if plan.kind == "own"
            else f"{_RANKS[number - 1]} · {KIND_WORDS[plan.kind]}"
        )
        title = plan_words.title(plan, planned.plans.labels, words)
        self.title.setText(title)
        self.table.setAccessibleName(f"What it gives: {title}")
        off = "cannot be judged" if plan.misfit_cm is None else f"off by {amount(plan.misfit_cm, words)}"
        self.off.setText(off.capitalize())
        body = planned.fit.mode == "body"
        unit = words.notation.unit
        heading = _BODY_HEADING if body else _HEADING
        self.table.lines.set_heading((heading[0], f"{heading[1]}, {unit}", *heading[2:]))
        self.table.show_lines([region_line(at, words, body=body) for at in plan.regions.values()])
        say(self.line, plan_words.lines_words(plan, words))
        work = plan_words.work_words(plan, planned.pieces)
        self.work.setText(f"Work: {work}.")
        doubts = doubts_left(plan, planned)
        said = [plan_words.doubt_words(_only(plan, doubt), words)[0] for doubt in doubts]
        say(self.doubts, "\n".join(said))
        self.button.setText("Chosen ✓" if self._is_chosen else "Choose this plan")
        verb = "Take back the decision" if self._is_chosen else "Choose this plan"
        self.button.setAccessibleName(f"{verb}: {title}")
        self.button.setToolTip("Click again to take the decision back" if self._is_chosen else "")
        self.button.setEnabled(not read_only)
        self.update()

    def high(self, wide: int) -> int:
        """How high the column is at a width."""
        return self._column.totalHeightForWidth(wide)

    def _on_clicked(self) -> None:
        if self._is_chosen:
            self.let_go.emit()
        elif self._plan is not None:
            self.chosen.emit(self._plan)

    def _space(self) -> None:
        side = theme.spacing(2)
        self._column.setContentsMargins(side, theme.spacing(1.5), side, theme.spacing(1.5))
        self._column.setSpacing(theme.spacing(1))
        self.setMinimumWidth(theme.spacing(44))
        self.setMaximumWidth(theme.spacing(56))

    # Qt's own names from here on.

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if hasattr(self, "_column") and theme.font_changed(event):
            self._space()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """A thin rule at the left; the chosen plan lies on the accent's pale ground."""
        painter, palette = QPainter(self), self.palette()
        if self._is_chosen:
            painter.fillRect(self.rect(), theme.accent_wash(palette))
            painter.fillRect(0, 0, theme.spacing(0.4), self.height(), theme.accent(palette))
        else:
            painter.fillRect(0, 0, 1, self.height(), theme.rule_colour(palette))


def _only(plan: Plan, doubt: PlanDoubt) -> Plan:
    return replace(plan, doubts=(doubt,))


def region_line(at: PlanRegion, words: Wording, *, body: bool) -> Line:
    """A region of a plan: its ease and band, and what can still be taken in and let out."""
    name = words.name(at.measure)
    if body:
        off = "–" if at.diff_cm is None else words.length(at.diff_cm)
        return Line((name, _bare(off), "", "", ""), f"{name}: the chart’s body is {off} from the one measured")
    ease = "–" if at.ease_cm is None else words.length(at.ease_cm)
    mended = plan_words.mending_words(at, words)
    said = f"{name}: {plan_words.ease_words(at, words)}{', ' if mended else ''}{mended}"
    free = at.role == "free"
    inward = "" if free or at.take_in_cm is None or at.take_in_cm <= SAME else _bare(words.room(at.take_in_cm))
    outward = "" if free or at.let_out_cm is None or at.let_out_cm <= SAME else _bare(words.room(at.let_out_cm))
    return Line((name, _bare(ease), "free" if free else at.band or "", inward, outward), said, at.band)


def _bare(length: str) -> str:
    """A length without its unit, which the heading has."""
    return length.removesuffix(" cm").removesuffix(" in")
