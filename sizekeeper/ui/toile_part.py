"""The toiles: each round with what was pinned, and what that makes of the pattern."""

from __future__ import annotations

from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QPushButton, QWidget

from sizekeeper import assets
from sizekeeper.core import plan_words
from sizekeeper.core.lengths import CHAIN_NAMES
from sizekeeper.core.make import ToileRound
from sizekeeper.core.measure import REGION_ORDER
from sizekeeper.core.piece import CHAINS
from sizekeeper.core.toile_change import altered_by
from sizekeeper.core.toile_words import contrary_words, reckoned_words, state_words, tight_words
from sizekeeper.ui import theme
from sizekeeper.ui.lettering import Lettering, say
from sizekeeper.ui.plan_field import MakeField
from sizekeeper.ui.scroll_sheet import ScrollSheet
from sizekeeper.ui.tab_order import first_of, one_after_the_other
from sizekeeper.ui.toile_row import ToileRow

if TYPE_CHECKING:
    import datetime as dt
    from collections.abc import Callable

    from sizekeeper.core.length import Length
    from sizekeeper.core.make import Make
    from sizekeeper.core.planned import Planned
    from sizekeeper.core.wording import Wording
    from sizekeeper.core.work import Work
    from sizekeeper.ui.plan_edits import MakeEdits

_HEADS = ("", "Printed ease", "Too big by", "Take in", "At", "Felt", "Where exactly", "Ease left")
_ORDINALS = ("First", "Second", "Third", "Fourth", "Fifth", "Sixth", "Seventh", "Eighth")


def _with_note(at: list[int], make: Make, text: str) -> Make:
    rounds = list(make.rounds) or [ToileRound()]
    rounds[at[0]] = replace(rounds[at[0]], note=text.strip())
    return replace(make, rounds=tuple(rounds))


class ToilePart(ScrollSheet):
    """The rounds of a make, one in front."""

    def __init__(self, edits: MakeEdits, today: Callable[[], dt.date], parent: QWidget | None = None) -> None:
        """Without a round."""
        super().__init__(1.25, parent)
        self._edits, self._today = edits, today
        self._planned: Planned | None = None
        self._altered: dict[str, Length] = {}
        self._at, self._rounds, self._make = [0], 0, ""
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAsNeeded)
        sheet = self.sheet
        self.whose = Lettering("", "small heading", sheet)
        self.whose.setWordWrap(True)
        self.intro = Lettering("", "muted", sheet)
        self.turns: list[QPushButton] = []
        self.add, self.away = QPushButton("Begin a toile", sheet), QPushButton("Take this round away", sheet)
        self.problem = Lettering("", "warning", sheet)
        self.grid_box = QWidget(sheet)
        self.rows = self._make_rows()
        self.note = MakeField(
            edits, "Note on this toile", "Change the toile’s note", partial(_with_note, self._at), self.problem,
            sheet, wide=30,
        )  # fmt: skip
        self.said, self.warning = Lettering("", "plain", sheet), Lettering("", "warning", sheet)
        self.reckoned = Lettering("", "muted", sheet)
        self._turns = QHBoxLayout()
        self._lay_out()
        self.add.clicked.connect(self._on_add)
        self.away.clicked.connect(self._on_away)

    def _make_rows(self) -> dict[str, ToileRow]:
        names = {measure: assets.measures().name(measure) for measure in REGION_ORDER}
        names |= {chain: f"{CHAIN_NAMES[chain].capitalize()}, length" for chain in CHAINS}
        return {at: ToileRow(at, name, self._edits, self.problem, self.grid_box) for at, name in names.items()}

    def _lay_out(self) -> None:
        grid = QGridLayout(self.grid_box)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(theme.spacing(1.5))
        grid.setVerticalSpacing(theme.spacing(0.5))
        for column, head in enumerate(_HEADS):
            label = Lettering(head, "note", self.grid_box)
            label.setWordWrap(False)
            grid.addWidget(label, 0, column)
        for number, row in enumerate(self.rows.values(), start=1):
            row.put_in(grid, number)
        grid.setColumnStretch(6, 1)
        self.column.addWidget(self.whose)
        self.column.addWidget(self.intro)
        self._turns.addWidget(self.add)
        self._turns.addStretch(1)
        self._turns.addWidget(self.away)
        self.column.addLayout(self._turns)
        for widget in (self.grid_box, self.reckoned, self.note, self.problem, self.said, self.warning):
            self.column.addWidget(widget)
        self.column.addStretch(1)

    def show_planned(self, planned: Planned, work: Work, words: Wording) -> None:
        """Show the rounds; a new one comes to the front."""
        count = len(planned.make.rounds)
        if count != self._rounds or planned.make.id != self._make:
            self._at[0] = max(0, count - 1)
            self._rounds, self._make = count, planned.make.id
        self._planned = planned
        self._altered = altered_by((t.choice for t in work.widths if t.plan is not None), planned.found.person.unit)
        self.whose.setText(plan_words.title(planned.shown, planned.plans.labels, words))
        say(self.intro, _intro(count))
        self._show_turns(planned)
        states = {state.at: state for state in planned.toile()}
        chains = {line.choice.chain for line in work.lengths}
        for at, row in self.rows.items():
            shown = bool(count) and (at in planned.shown.regions or at in chains or at in states)
            row.set_visible(visible=shown, seams=at not in CHAINS)
            if shown:
                row.show_round(self._at[0], planned, states.get(at), words)
        for widget in (self.grid_box, self.note, self.away):
            widget.setVisible(bool(count))
        say(self.reckoned, reckoned_words(planned.make.rounds[self._at[0]], self._altered, words) if count else "")
        if count:
            self.note.show_value(planned.make.rounds[self._at[0]].note, "what else the toile showed")
        said = [text for state in states.values() if (text := state_words(state, words))]
        if any(state.change for state in states.values()):
            said.append("These changes stand under Alterations and in the worksheet; changes add up over the rounds.")
        say(self.said, "\n".join(said))
        warned = [
            text for state in states.values() for text in (tight_words(state, words), contrary_words(state, words))
        ]
        say(self.warning, "\n".join(text for text in warned if text))

    def _show_turns(self, planned: Planned) -> None:
        rounds = planned.make.rounds
        while len(self.turns) < len(rounds):
            button = QPushButton(self.sheet)
            button.setCheckable(True)
            button.setAutoExclusive(False)
            button.clicked.connect(self._on_turn)
            self._turns.insertWidget(len(self.turns), button)
            self.turns.append(button)
        for number, button in enumerate(self.turns):
            button.setVisible(number < len(rounds))
            if number < len(rounds):
                button.setText(round_name(number, rounds[number].on))
                button.setChecked(number == self._at[0])
        stops = [widget for row in self.rows.values() for widget in row.stops]
        one_after_the_other(*self.turns, self.add, self.away, *stops, self.note)
        self.add.setText("Another toile" if rounds else "Begin a toile")
        for widget in (self.add, self.away):
            widget.setEnabled(not self._edits.read_only)

    def _on_turn(self) -> None:
        self._at[0] = self.turns.index(self.sender())  # type: ignore[arg-type]  # only these are connected
        self._edits.again.emit()

    def _on_add(self) -> None:
        make, begun = self._edits.make, ToileRound(self._today(), altered=self._altered)
        self._edits.apply("Begin a toile", replace(make, rounds=(*make.rounds, begun)))
        first = first_of([row.found for row in self.rows.values()])
        if first is not None:
            first.setFocus(Qt.FocusReason.OtherFocusReason)

    def _on_away(self) -> None:
        make, at = self._edits.make, self._at[0]
        rounds = (*make.rounds[:at], *make.rounds[at + 1 :])
        self.add.setFocus(Qt.FocusReason.OtherFocusReason)
        self._edits.apply("Take a toile away", replace(make, rounds=rounds))


def _intro(rounds: int) -> str:
    if not rounds:
        return "Sew the bodice or the trousers of cheap cloth, try it on, pin it, and type here what you pinned."
    return (
        "All round, as it was on the body: how much too big it was (with a minus: too small), and what you take in "
        "(with a minus: let out). Once a place was tried on, only what you found there counts, not the printed figure."
    )


def round_name(number: int, on: dt.date | None) -> str:
    """What a round is called: `Second toile, 24 November`."""
    first = _ORDINALS[number] if number < len(_ORDINALS) else f"{number + 1}th"
    return f"{first} toile, {on.day} {on:%B}" if on is not None else f"{first} toile"
