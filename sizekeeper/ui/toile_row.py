"""One place of a toile: what was found there, what is taken in, and how it felt."""

from __future__ import annotations

from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject

from sizekeeper.core.make import Make, Pinned, ToileRound
from sizekeeper.core.toile import altered_before
from sizekeeper.core.toile_words import ease_words
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.person_fields import CalmCombo
from sizekeeper.ui.plan_edits import length_typed
from sizekeeper.ui.plan_field import MakeField

if TYPE_CHECKING:
    from PySide6.QtWidgets import QGridLayout, QWidget

    from sizekeeper.core.make import Felt, Seams
    from sizekeeper.core.planned import Planned
    from sizekeeper.core.toile import ToileState
    from sizekeeper.core.wording import Wording
    from sizekeeper.ui.plan_edits import MakeEdits

FELT: tuple[tuple[str, Felt | None], ...] = (("–", None), ("tight", "tight"), ("right", "right"), ("loose", "loose"))
SEAMS: tuple[tuple[str, Seams], ...] = (("both sides", "both"), ("one seam", "one"))


class Where:
    """Which round and place a row stands for, and the unit its figures are typed in."""

    def __init__(self, at: str) -> None:
        """The first round."""
        self.at, self.round, self.unit = at, 0, "cm"


def pinned_in(make: Make, where: Where) -> Pinned:
    """What a round says of a place, empty where it says nothing."""
    if where.round >= len(make.rounds):
        return Pinned(where.at)
    return next((p for p in make.rounds[where.round].pinned if p.at == where.at), Pinned(where.at))


def with_pinned(make: Make, at: Where, /, **changes: object) -> Make:
    """The make with something else said of a place in a round; what says nothing is not kept."""
    new = replace(pinned_in(make, at), **changes)  # type: ignore[arg-type]  # the callers name its fields
    rounds = list(make.rounds) or [ToileRound()]
    old = rounds[at.round]
    known = [p.at for p in old.pinned]
    pinned = [new if p.at == at.at else p for p in old.pinned]
    if at.at not in known:
        pinned.append(new)
    empty = Pinned(at.at)
    kept = tuple(p for p in pinned if replace(p, seams="both") != empty or p.at != at.at)
    rounds[at.round] = replace(old, pinned=kept)
    return replace(make, rounds=tuple(rounds))


def _write_length(field: str, where: Where, make: Make, text: str) -> Make:
    return with_pinned(make, where, **{field: length_typed(text, where.unit)})


def _write_where(where: Where, make: Make, text: str) -> Make:
    return with_pinned(make, where, where=text.strip())


class ToileRow(QObject):
    """The widgets of one place, in the rows of a grid."""

    def __init__(self, at: str, name: str, edits: MakeEdits, problem: Lettering, parent: QWidget) -> None:
        """Widgets without figures."""
        super().__init__(parent)
        self.where, self._edits, self._name = Where(at), edits, name
        self.name = Lettering(name, "plain", parent)
        self.printed, self.left = Lettering("", "muted", parent), Lettering("", "plain", parent)
        lower = name.lower()
        what = f"Change the toile at the {lower}"
        self.found = MakeField(
            edits, f"Surplus found at the {lower}", what, partial(_write_length, "found", self.where), problem, parent,
            wide=8,
        )  # fmt: skip
        self.taken = MakeField(
            edits, f"Taken in at the {lower}", what, partial(_write_length, "taken", self.where), problem, parent,
            wide=8,
        )  # fmt: skip
        self.seams = self._choices(f"Seams pinned at the {lower}", [text for text, _ in SEAMS], parent)
        self.felt = self._choices(f"How the {lower} felt", [text for text, _ in FELT], parent)
        self.place = MakeField(
            edits, f"Where at the {lower}", what, partial(_write_where, self.where), problem, parent, wide=12
        )
        self.seams.activated.connect(self._on_seams)
        self.felt.activated.connect(self._on_felt)
        for label in (self.name, self.printed, self.left):
            label.setWordWrap(False)

    @staticmethod
    def _choices(name: str, texts: list[str], parent: QWidget) -> CalmCombo:
        box = CalmCombo(name, parent)
        box.setSizeAdjustPolicy(CalmCombo.SizeAdjustPolicy.AdjustToContents)
        box.addItems(texts)
        return box

    @property
    def widgets(self) -> tuple[QWidget, ...]:
        """The widgets from left to right."""
        return (self.name, self.printed, self.found, self.taken, self.seams, self.felt, self.place, self.left)

    @property
    def stops(self) -> tuple[QWidget, ...]:
        """What Tab goes through, in order."""
        return (self.found, self.taken, self.seams, self.felt, self.place)

    def put_in(self, grid: QGridLayout, row: int) -> None:
        """Stand in a row of a grid."""
        for column, widget in enumerate(self.widgets):
            grid.addWidget(widget, row, column)

    def set_visible(self, *, visible: bool, seams: bool) -> None:
        """Show or hide the whole row; a length has no seams to be pinned at."""
        for widget in self.widgets:
            widget.setVisible(visible and (seams or widget is not self.seams))

    def show_round(self, number: int, planned: Planned, state: ToileState | None, words: Wording) -> None:
        """Show what a round says here."""
        if number != self.where.round:
            for field in (self.found, self.taken, self.place):
                field.forget()
        self.where.round, self.where.unit = number, planned.found.person.unit
        pinned = pinned_in(planned.make, self.where)
        self.found.show_value(pinned.found.text if pinned.found is not None else "")
        self.taken.show_value(pinned.taken.text if pinned.taken is not None else "")
        self.place.show_value(pinned.where)
        self.seams.setCurrentIndex([seams for _, seams in SEAMS].index(pinned.seams))
        self.felt.setCurrentIndex([felt for _, felt in FELT].index(pinned.felt))
        for box in (self.seams, self.felt):
            box.setEnabled(not self._edits.read_only)
        self.printed.setText(self._printed_words(planned, words))
        left = state.left if state is not None else None
        self.left.setText("" if left is None else ease_words(float(left), words))

    def _printed_words(self, planned: Planned, words: Wording) -> str:
        """The printed ease, with what was changed before the round that is shown."""
        at, rounds = planned.shown.regions.get(self.where.at), planned.make.rounds
        if at is None or at.ease_cm is None:
            return ""
        shown = rounds[self.where.round] if self.where.round < len(rounds) else ToileRound()
        return ease_words(at.ease_cm + float(altered_before(shown, self.where.at) or 0), words)

    def _on_seams(self, row: int) -> None:
        after = with_pinned(self._edits.make, self.where, seams=SEAMS[row][1])
        self._edits.apply(f"Change the toile at the {self._name.lower()}", after)

    def _on_felt(self, row: int) -> None:
        after = with_pinned(self._edits.make, self.where, felt=FELT[row][1])
        self._edits.apply(f"Change the toile at the {self._name.lower()}", after)
