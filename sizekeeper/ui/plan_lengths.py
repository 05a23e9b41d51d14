"""Lengths: what each chain comes to, where it goes in, and what must get the same."""

from __future__ import annotations

from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from sizekeeper.core.lengths import CHAIN_NAMES, line_levels
from sizekeeper.core.piece import CHAINS
from sizekeeper.core.trousers import CROTCH_DEPTH_EASE
from sizekeeper.core.work_words import amount, length_place_words, length_summary, length_words, where_words
from sizekeeper.ui import theme
from sizekeeper.ui.lettering import Lettering, say
from sizekeeper.ui.person_fields import CalmCombo
from sizekeeper.ui.plan_edits import length_typed, with_length
from sizekeeper.ui.plan_field import MakeField
from sizekeeper.ui.plan_fold import Fold

if TYPE_CHECKING:
    from sizekeeper.core.make import Make
    from sizekeeper.core.piece import Chain, Level, Piece
    from sizekeeper.core.planned import Planned
    from sizekeeper.core.wording import Wording
    from sizekeeper.core.work import LengthLine, Work
    from sizekeeper.ui.plan_edits import MakeEdits

_FIELDS = {"ease": "ease", "wanted": "or to be", "amount": "or change by"}
_NAMES = {"ease": "length ease", "wanted": "length wanted", "amount": "change of length"}


def _write(chain: Chain, field: str, unit: list[str], make: Make, text: str) -> Make:
    return with_length(make, chain, **{field: length_typed(text, unit[0])})


class ChainRow(QWidget):
    """One chain: its figures, where the change goes in, and what it comes to."""

    def __init__(self, chain: Chain, edits: MakeEdits, parent: QWidget | None = None) -> None:
        """Nothing shown yet."""
        super().__init__(parent)
        self.chain, self._edits = chain, edits
        self._unit = ["cm"]
        self._places: list[tuple[str, tuple[Level, ...]]] = []
        self.name = Lettering(CHAIN_NAMES[chain].capitalize(), "small heading", self)
        self.problem = Lettering("", "warning", self)
        self.comes_to = Lettering("", "plain", self)
        self.how = Lettering("", "muted", self)
        self.fields = {field: self._field(field) for field in _FIELDS}
        self.place = CalmCombo(f"Where the change of the {CHAIN_NAMES[chain]} goes in", self)
        self.place.setSizeAdjustPolicy(CalmCombo.SizeAdjustPolicy.AdjustToContents)
        self._lay_out()
        self.place.activated.connect(self._on_place)

    def _field(self, field: str) -> MakeField:
        what = f"{CHAIN_NAMES[self.chain]}: {_NAMES[field]}"
        write = partial(_write, self.chain, field, self._unit)
        return MakeField(self._edits, what.capitalize(), f"Change {what}", write, self.problem, self, wide=8)

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, theme.spacing())
        column.setSpacing(theme.spacing(0.5))
        row = QHBoxLayout()
        row.setSpacing(theme.spacing())
        self.name.setMinimumWidth(theme.spacing(20))
        row.addWidget(self.name)
        for field, words in _FIELDS.items():
            label = Lettering(words, "muted", self)
            label.setWordWrap(False)
            row.addWidget(label)
            row.addWidget(self.fields[field])
        self._into = Lettering("It goes into", "muted", self)
        self._into.setWordWrap(False)
        row.addStretch(1)
        column.addLayout(row)
        column.addWidget(self.problem)
        column.addWidget(self.comes_to)
        into = QHBoxLayout()
        into.setSpacing(theme.spacing())
        into.addWidget(self._into)
        into.addWidget(self.place)
        into.addStretch(1)
        column.addLayout(into)
        column.addWidget(self.how)

    def show_line(self, line: LengthLine, planned: Planned, words: Wording) -> None:
        """Show the chain."""
        self._unit[0] = planned.found.person.unit
        for field, widget in self.fields.items():
            length = getattr(line.choice, field)
            widget.show_value(length.text if length is not None else "", _usual(field, line, words))
        why, summary = length_words(line, words), length_summary(line, words)
        said = f"{summary[:1].upper()}{summary[1:]}. {why}" if summary else why
        say(self.comes_to, said.strip())
        say(self.how, length_place_words(line, planned.pieces, words))
        if not any(field.typing for field in self.fields.values()):
            say(self.problem, line.problem)
        self._show_places(line, planned)

    def _show_places(self, line: LengthLine, planned: Planned) -> None:
        places = [(p, levels) for p in planned.pieces.pieces for levels in _lines(p, self.chain)]
        keys: list[tuple[str, tuple[Level, ...]]] = [(p.id, levels) for p, levels in places]
        texts = [f"{p.name} {where_words(levels)}" for p, levels in places]
        if keys != self._places or [self.place.itemText(i) for i in range(self.place.count())] != texts:
            self._places = keys
            self.place.clear()
            self.place.addItems(texts)
        taken = (line.plan.piece, line.plan.levels) if line.plan is not None else None
        self.place.setCurrentIndex(keys.index(taken) if taken in keys else -1)
        for widget in (self.place, self._into):
            widget.setVisible(line.plan is not None and bool(keys))
        self.place.setEnabled(not self._edits.read_only)

    def _on_place(self, row: int) -> None:
        piece, levels = self._places[row]
        after = with_length(self._edits.make, self.chain, piece=piece, levels=levels)
        self._edits.apply(f"Change where the {CHAIN_NAMES[self.chain]} is changed", after)


_ORDER = "Lengths come first: a change of length moves every level below it."
_LIST_FIRST = "List the pieces on the Pattern page to see where it goes in, and which pieces must get the same."


def _lines(piece: Piece, chain: Chain) -> list[tuple[Level, ...]]:
    """Where a piece can take a change: at its usual line and, of what lies at one level, there."""
    if piece.layer != "self" or piece.role in ("guide", "facing", "pocket"):
        return []
    usual = line_levels(piece, chain)
    found = [usual] if usual else []
    upper: tuple[Level, ...] = ("neck", "bust")
    if chain == "back_waist" and usual != upper and piece.crosses(*upper):
        found.append(upper)
    return found


def _usual(field: str, line: LengthLine, words: Wording) -> str:
    change = line.change
    if field == "amount":
        if change is None:
            return ""
        return f"{'−' if change.change < 0 else ''}{amount(change.change, words)}"
    if field == "wanted":
        return "" if change is None or change.wanted is None else words.length(float(change.wanted))
    return words.length(float(CROTCH_DEPTH_EASE)) if line.choice.chain == "rise" else "0"


class LengthsFold(Fold):
    """Every chain of the garment."""

    title = "Lengths"

    def __init__(self, edits: MakeEdits, parent: QWidget | None = None) -> None:
        """A row for each chain."""
        super().__init__(edits, parent)
        self.order = Lettering(_ORDER, "muted", self.body)
        self.inside.addWidget(self.order)
        self.rows = {chain: ChainRow(chain, edits, self.body) for chain in CHAINS}
        for row in self.rows.values():
            self.inside.addWidget(row)
        self.inside.addWidget(self.problem)

    def applies(self, _planned: Planned, work: Work) -> bool:
        """Whether the garment has a length to be fitted by."""
        return bool(work.lengths)

    def show_planned(self, planned: Planned, work: Work, words: Wording) -> str:
        """Show every chain."""
        self.order.setText(_ORDER if planned.pieces.pieces else f"{_ORDER} {_LIST_FIRST}")
        lines = {line.choice.chain: line for line in work.lengths}
        for chain, row in self.rows.items():
            row.setVisible(chain in lines)
            if chain in lines:
                row.show_line(lines[chain], planned, words)
        return ", ".join(said for line in work.lengths if (said := length_summary(line, words)))


def with_growth(unit: list[str], make: Make, text: str) -> Make:
    """The make with a length to grow into."""
    return replace(make, growth=length_typed(text, unit[0]))
