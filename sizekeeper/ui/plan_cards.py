"""The plans side by side, why they stand in this order, and the decision."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtCore import QSize, Qt
from PySide6.QtWidgets import QFrame, QHBoxLayout, QPushButton, QScrollArea, QVBoxLayout, QWidget

from sizekeeper.core import plan_words
from sizekeeper.core.days import day_words
from sizekeeper.core.notation import parse_length
from sizekeeper.core.plan import PER_CHANGE_CM
from sizekeeper.core.planned import decision_on
from sizekeeper.errors import LengthError
from sizekeeper.ui import theme
from sizekeeper.ui.fit_field import FigureField
from sizekeeper.ui.lettering import Lettering, Rule, say
from sizekeeper.ui.plan_card import PlanCard
from sizekeeper.ui.plan_choice import OwnChoice
from sizekeeper.ui.scroll_sheet import ScrollSheet
from sizekeeper.ui.tab_order import one_after_the_other

if TYPE_CHECKING:
    import datetime as dt
    from collections.abc import Callable

    from sizekeeper.core.plan import Plan
    from sizekeeper.core.planned import Planned
    from sizekeeper.core.wording import Wording
    from sizekeeper.ui.plan_edits import MakeEdits
    from sizekeeper.ui.settings import Settings

PER_CHANGE = "plan_per_change_cm"
"""The preference that says what a change weighs beside misfit, cm."""
_KEY = (
    "In: what can be taken in afterwards before it is tight. Out: what the seam allowances let out. "
    "Too small by more than that cannot be mended."
)


def per_change_cm(settings: Settings) -> float:
    """What a change weighs beside misfit when plans are put in order, cm."""
    stored = settings.stored.value(PER_CHANGE)
    try:
        return PER_CHANGE_CM if stored is None else max(0.0, float(str(stored)))
    except ValueError:
        return PER_CHANGE_CM


def shown_plans(planned: Planned) -> tuple[Plan, ...]:
    """Every plan in order, and behind them the one decided on where it is a place of her own."""
    plans, chosen = planned.plans.plans, planned.chosen
    if chosen is None or any(plan.key == chosen.key for plan in plans):
        return plans
    return (*plans, chosen)


class CardsRow(QScrollArea):
    """The columns in a row, as high as the highest; it scrolls sideways where they need more room."""

    def __init__(self, parent: QWidget | None = None) -> None:
        """No columns yet."""
        super().__init__(parent)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setWidgetResizable(True)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.sheet = QWidget()
        self.setWidget(self.sheet)
        self.cards: list[PlanCard] = []
        self.row = QHBoxLayout(self.sheet)
        self.row.setContentsMargins(0, 0, 0, 0)
        self.row.setSpacing(0)
        self.row.addStretch(0)
        for bare in (self.viewport(), self.sheet):
            bare.setAutoFillBackground(False)

    def fit_height(self) -> None:
        """As high as the columns need at their widths."""
        shown = [card for card in self.cards if not card.isHidden()]
        share = max(self.viewport().width() // max(1, len(shown)), 1)
        heights = [card.high(min(max(share, card.minimumWidth()), card.maximumWidth())) for card in shown]
        bar = self.horizontalScrollBar().sizeHint().height()
        self.setFixedHeight(max(heights, default=0) + bar)

    # Qt's own names from here on.

    def resizeEvent(self, event: object) -> None:
        """The columns' texts wrap anew."""
        super().resizeEvent(event)  # type: ignore[arg-type]  # Qt's own event
        self.fit_height()

    def minimumSizeHint(self) -> QSize:
        """One column."""
        return QSize(theme.spacing(40), theme.spacing(20))


class PlansPart(ScrollSheet):
    """The plans, and the one she decides on."""

    def __init__(
        self, edits: MakeEdits, settings: Settings, today: Callable[[], dt.date], parent: QWidget | None = None
    ) -> None:
        """Without plans."""
        super().__init__(1.5, parent)
        self._edits, self._settings, self._today = edits, settings, today
        self._planned: Planned | None = None
        self._words: Wording | None = None
        sheet = self.sheet
        self.decision = Lettering("", "small heading", sheet)
        self.decision.setWordWrap(True)
        self.why = Lettering("", "muted", sheet)
        self.back = QPushButton("Take the decision back", sheet)
        self.row = CardsRow(sheet)
        self.cards = self.row.cards
        self.key = Lettering(_KEY, "note", sheet)
        self.order = Lettering("", "muted", sheet)
        self.weight = FigureField("What each change weighs beside the misfit", sheet)
        self.weight.setMaximumWidth(theme.spacing(12))
        self.problem = Lettering("", "warning", sheet)
        self.own = OwnChoice(sheet)
        self._lay_out(sheet)
        self._connect()

    def _lay_out(self, sheet: QWidget) -> None:
        top = QHBoxLayout()
        said = QVBoxLayout()
        said.setSpacing(theme.spacing(0.5))
        said.addWidget(self.decision)
        said.addWidget(self.why)
        top.addLayout(said, 1)
        top.addWidget(self.back, 0, Qt.AlignmentFlag.AlignTop)
        self.column.addLayout(top)
        self.column.addWidget(self.row)
        self.column.addWidget(self.key)
        self.column.addWidget(self.order)
        weigh = QHBoxLayout()
        weigh.setSpacing(theme.spacing())
        label = Lettering("Each change weighs", "muted", sheet)
        label.setWordWrap(False)
        weigh.addWidget(label)
        weigh.addWidget(self.weight)
        weigh.addWidget(self.problem, 1)
        weigh.addStretch(1)
        self.column.addLayout(weigh)
        self.column.addWidget(Rule(sheet))
        self.column.addWidget(self.own)
        self.column.addStretch(1)

    def _connect(self) -> None:
        self.back.clicked.connect(self._on_let_go)
        self.own.decided.connect(self._on_own)
        self.weight.entered.connect(self._on_weight)
        self.weight.restored.connect(self._on_weight_restored)

    def show_planned(self, planned: Planned, words: Wording) -> None:
        """Show every plan."""
        plans = shown_plans(planned)
        if [plan.key for plan in plans] != [card.plan.key for card in self.cards if card.plan and not card.isHidden()]:
            self.row.horizontalScrollBar().setValue(0)  # the best is another one, and stands at the left
        self._planned, self._words = planned, words
        while len(self.cards) < len(plans):
            card = PlanCard(self.row.sheet)
            card.chosen.connect(self._on_chosen)
            card.let_go.connect(self._on_let_go)
            self.row.row.insertWidget(len(self.cards), card, 1)
            self.cards.append(card)
        for number, card in enumerate(self.cards, start=1):
            shown = number <= len(plans)
            card.setVisible(shown)
            if shown:
                card.show_plan(plans[number - 1], planned, words, number, read_only=self._edits.read_only)
        columns = [widget for card in self.cards for widget in (card.table, card.button)]
        one_after_the_other(self.back, *columns, self.weight, self.own.place, self.own.reason, self.own.button)
        self.order.setText(plan_words.order_words(planned.plans, words))
        self.weight.set_figure(words.drawn(planned.plans.per_change_cm))
        self.own.show_planned(planned, read_only=self._edits.read_only)
        self._show_decision(planned, words)
        self.row.fit_height()

    def _show_decision(self, planned: Planned, words: Wording) -> None:
        decision = planned.make.decision
        self.back.setVisible(decision is not None)
        self.back.setEnabled(not self._edits.read_only)
        if decision is None:
            self.decision.setText("Not decided yet")
            say(self.why, "Choose a plan: its lengths, widths and order of work are then worked out for it.")
            return
        if planned.chosen is None:
            self.decision.setText(f"Decided on {decision.place.size}, which is no longer in the chart")
        else:
            self.decision.setText(f"Decided: {plan_words.title(planned.chosen, planned.plans.labels, words)}")
        said = [f"on {day_words(decision.on)}"] if decision.on is not None else []
        said += [f"advised then: {decision.advised.rstrip('.')}"] if decision.advised else []
        said += [f"reason: {decision.reason}"] if decision.reason else []
        text = "; ".join(said)
        say(self.why, f"{text[:1].upper()}{text[1:]}")

    def _decide(self, plan: Plan, reason: str) -> None:
        assert self._planned is not None and self._words is not None  # noqa: S101, PT018 - there are plans
        advised = plan_words.headline(self._planned.plans, self._words)
        title = plan_words.title(plan, self._planned.plans.labels, self._words)
        decision = decision_on(plan, self._planned, reason, advised, self._today())
        self._edits.apply(f"Decide: {title}", replace(self._edits.make, decision=decision))

    def _on_chosen(self, plan: Plan) -> None:
        self._decide(plan, "")

    def _on_own(self, position: float, reason: str) -> None:
        if self._planned is not None:
            plans = [p for p in self._planned.plans.plans if p.position == position and not p.levels and p.bust is None]
            self._decide(plans[0] if plans else self._planned.planner.at(position), reason)

    def _on_let_go(self) -> None:
        self._edits.apply("Take back the decision", replace(self._edits.make, decision=None))

    def _on_weight(self, text: str) -> None:
        """Keep what a change weighs; an empty text puts the usual back."""
        unit = self._words.notation.unit if self._words is not None else "cm"
        try:
            length = parse_length(text, unit) if text.strip() else None
            if length is not None and length.value < 0:
                raise LengthError("a change never weighs less than nothing")  # noqa: TRY301 - said in the same place
        except LengthError as error:
            self.weight.refuse(str(error))
            say(self.problem, f"{error}.")
            return
        self.weight.set_problem("")
        say(self.problem, "")
        if length is None:
            self._settings.stored.remove(PER_CHANGE)
        else:
            self._settings.stored.setValue(PER_CHANGE, length.cm)
        self._settings.changed.emit()

    def _on_weight_restored(self) -> None:
        say(self.problem, "")
