"""Widths: a change at a level, spread over the pieces and edges she ticks."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QApplication, QCheckBox, QHBoxLayout, QLineEdit, QPushButton, QVBoxLayout, QWidget

from sizekeeper.core.length import Length
from sizekeeper.core.make import WidthChoice
from sizekeeper.core.piece import LEVEL_ORDER
from sizekeeper.core.piece_words import LEVEL_NAMES
from sizekeeper.core.toile_change import TOILE
from sizekeeper.core.trousers import SEAT
from sizekeeper.core.width_plan import around
from sizekeeper.core.work import FOLLOWING
from sizekeeper.core.work_words import amount, drawn_words, follow_words, gather_words, level_name, width_summary
from sizekeeper.errors import LengthError
from sizekeeper.ui import theme
from sizekeeper.ui.lettering import Lettering, say
from sizekeeper.ui.name_box import NameBox
from sizekeeper.ui.person_fields import CalmCombo
from sizekeeper.ui.plan_edits import length_typed, with_width, without_width
from sizekeeper.ui.plan_field import MakeField
from sizekeeper.ui.plan_fold import CalmSpin, Fold
from sizekeeper.ui.tab_order import one_after_the_other

if TYPE_CHECKING:
    from sizekeeper.core.make import Make
    from sizekeeper.core.piece import Level, Piece
    from sizekeeper.core.planned import Planned
    from sizekeeper.core.wording import Wording
    from sizekeeper.core.work import WidthLine, Work
    from sizekeeper.ui.plan_edits import MakeEdits

_MOST_EDGES = 4
_NO_PIECES = "List the pieces that cross this level on the Pattern page, then tick those it goes into."
_ASKED_BY = {TOILE: "as the toile asks, after all rounds", SEAT: "what the thigh still lacks after the crotch"}


def _kept(make: Make, choice: WidthChoice) -> WidthChoice:
    """A choice as the make has it, else as it came."""
    return next((c for c in make.widths if (c.level, c.reason) == (choice.level, choice.reason)), choice)


def _with_amount(choice: WidthChoice, unit: list[str], make: Make, text: str) -> Make:
    length = length_typed(text, unit[0])
    if length is None or not length.value:
        raise LengthError("type how much wider, or with a minus how much narrower")
    old = _kept(make, choice)
    return with_width(make, old, replace(old, amount=length))


class PieceTick(QWidget):
    """One piece that can take a share: ticked or not, at how many edges, and its share.

    Signals:
        changed(): it was ticked or given other edges.
    """

    changed = Signal()

    def __init__(self, piece: Piece, level: Level, parent: QWidget | None = None) -> None:
        """Not ticked."""
        super().__init__(parent)
        self.piece = piece.id
        times = piece.times(level)
        fold = ", on the fold" if piece.on_fold else ""
        self.tick = NameBox(piece.name, self)
        self.counts = Lettering(f"cut {piece.cut}{fold}: counts {'once' if times == 1 else f'{times} ×'}", "note", self)
        self.edges = CalmSpin(self)
        self.edges.setRange(1, _MOST_EDGES)
        self.edges.setSuffix(" edge")
        self.edges.setAccessibleName(f"At how many edges of {piece.name}")
        self.share = Lettering("", "small heading", self)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(theme.spacing(1.5))
        self.tick.setFixedWidth(theme.spacing(30))
        self.counts.setWordWrap(False)
        self.counts.setMinimumWidth(theme.spacing(25))
        for widget in (self.tick, self.counts, self.edges, self.share):
            row.addWidget(widget)
        row.addStretch(1)
        self.tick.clicked.connect(self.changed)
        self.edges.valueChanged.connect(self.changed)

    def show_share(self, share: str, edges: int, *, ticked: bool) -> None:
        """Show what it takes."""
        self.edges.blockSignals(True)
        self.edges.setValue(edges)
        self.edges.setSuffix(" edge" if edges == 1 else " edges")
        self.edges.blockSignals(False)
        self.tick.setChecked(ticked)
        self.edges.setEnabled(ticked)
        self.share.setText(share)


class WidthRow(QWidget):
    """One change of width."""

    def __init__(self, choice: WidthChoice, edits: MakeEdits, parent: QWidget | None = None) -> None:
        """A row for the level and reason of a choice."""
        super().__init__(parent)
        self._choice, self._edits = choice, edits
        self._unit = ["cm"]
        self._ticks: list[PieceTick] = []
        level = LEVEL_NAMES[choice.level]
        self.problem = Lettering("", "warning", self)
        write = partial(_with_amount, choice, self._unit)
        name = f"Change of width at the {level}"
        self.field = MakeField(edits, name, f"Change the width at the {level}", write, self.problem, self)
        self.by_width = QCheckBox("shared by width", self)
        self.by_width.setToolTip("Wide pieces take more. Else every edge takes the same.")
        self.away = QPushButton("Take away", self)
        self.away.setAccessibleName(f"Take away the change at the {level}")
        self.asked_by = Lettering(_ASKED_BY.get(choice.reason, ""), "muted", self)
        self.follow, self.gathers = Lettering("", "muted", self), Lettering("", "muted", self)
        self.drawn = Lettering("", "muted", self)
        self._lay_out()
        self.by_width.clicked.connect(self._on_ticked)
        self.away.clicked.connect(self._on_away)

    @property
    def key(self) -> tuple[str, str]:
        """The level and the reason it stands for."""
        return self._choice.level, self._choice.reason

    @property
    def stops(self) -> list[QWidget]:
        """What Tab goes through, in order."""
        ticks: list[QWidget] = [widget for tick in self._ticks for widget in (tick.tick, tick.edges)]
        return [self.field, self.by_width, self.away, *ticks]

    def _lay_out(self) -> None:
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, theme.spacing())
        self._column.setSpacing(theme.spacing(0.5))
        row = QHBoxLayout()
        row.setSpacing(theme.spacing(1.5))
        name = Lettering(level_name(self._choice.level), "small heading", self)
        name.setMinimumWidth(theme.spacing(12))
        self.asked_by.setWordWrap(False)
        for widget in (name, self.field, self.asked_by, self.by_width, self.away):
            row.addWidget(widget)
        row.addStretch(1)
        self._column.addLayout(row)
        self._column.addWidget(self.problem)
        self._rows = QVBoxLayout()
        self._rows.setSpacing(theme.spacing(0.25))
        self._column.addLayout(self._rows)
        self._column.addWidget(self.drawn)
        self._column.addWidget(self.follow)
        self._column.addWidget(self.gathers)

    def show_line(self, line: WidthLine, planned: Planned, words: Wording) -> None:
        """Show the change and its shares."""
        self._choice = line.choice
        self._unit[0] = planned.found.person.unit
        follows = line.choice.reason in FOLLOWING
        by = line.choice.amount
        self.field.show_value(by.text or f"{'-' if by.value < 0 else ''}{amount(by.exact_cm, words)}")
        self.field.setReadOnly(follows or self._edits.read_only)
        self.asked_by.setVisible(follows)
        self.away.setVisible(not follows)
        self.by_width.setChecked(line.choice.sharing == "by_width")
        self._show_ticks(line, planned, words)
        if not self.field.typing:
            say(self.problem, line.problem if self._ticks or not line.problem else _NO_PIECES)
        say(self.drawn, drawn_words(line, words))
        say(self.follow, follow_words(line, planned.pieces))
        say(self.gathers, gather_words(line))
        for widget in (self.by_width, self.away, *self._ticks):
            widget.setEnabled(not self._edits.read_only)

    def _show_ticks(self, line: WidthLine, planned: Planned, words: Wording) -> None:
        level = line.choice.level
        able = [p for p in planned.pieces.pieces if p.times(level) and (p.crosses(level) or p.id in line.choice.pieces)]
        if [t.piece for t in self._ticks] != [p.id for p in able]:
            self._build(able, level)
        ticked = line.choice.pieces or tuple(p.id for p in around(planned.pieces.pieces, level))
        shares = {share.piece: share for share in line.plan.shares} if line.plan is not None else {}
        for tick in self._ticks:
            share = shares.get(tick.piece)
            way = "" if share is None else "wider" if share.per_edge > 0 else "narrower"
            said = "" if share is None else f"{amount(share.per_edge, words)} {way}{' each' if share.edges > 1 else ''}"
            tick.show_share(said, line.choice.edges.get(tick.piece, 1), ticked=tick.piece in ticked)

    def _build(self, able: list[Piece], level: Level) -> None:
        for old in self._ticks:
            self._rows.removeWidget(old)
            old.hide()
            old.deleteLater()
        self._ticks = [PieceTick(piece, level, self) for piece in able]
        for tick in self._ticks:
            self._rows.addWidget(tick)
            tick.changed.connect(self._on_ticked)

    def _on_ticked(self) -> None:
        make = self._edits.make
        old = _kept(make, self._choice)
        new = replace(
            old,
            pieces=tuple(t.piece for t in self._ticks if t.tick.isChecked()),
            edges={t.piece: t.edges.value() for t in self._ticks if t.tick.isChecked() and t.edges.value() > 1},
            sharing="by_width" if self.by_width.isChecked() else "equal",
        )
        if not new.pieces:
            say(self.problem, "Tick at least one piece for the change to go into.")
            return
        where = LEVEL_NAMES[self._choice.level]
        self._edits.apply(f"Share the width at the {where} differently", with_width(make, old, new))

    def _on_away(self) -> None:
        where = LEVEL_NAMES[self._choice.level]
        self._edits.apply(f"Take away the change at the {where}", without_width(self._edits.make, self._choice))


class WidthsFold(Fold):
    """Every change of width, and a way to add one."""

    title = "Widths"

    def __init__(self, edits: MakeEdits, parent: QWidget | None = None) -> None:
        """Without changes."""
        super().__init__(edits, parent)
        self.rows: list[WidthRow] = []
        self._unit = "cm"
        note = "All round, wider with a plus, narrower with a minus. A piece on the fold or cut twice counts twice."
        self.inside.addWidget(Lettering(note, "muted", self.body))
        self._list = QVBoxLayout()
        self.inside.addLayout(self._list)
        self.where = CalmCombo("Level of a new change of width", self.body)
        for level in LEVEL_ORDER:
            self.where.addItem(level_name(level), level)
        self.where.setCurrentIndex(2)
        self.by = QLineEdit(self.body)
        self.by.setAccessibleName("Amount of a new change of width, all round")
        self.by.setPlaceholderText("all round")
        self.by.setMaximumWidth(theme.spacing(14))
        self.add = QPushButton("Add this change", self.body)
        row = QHBoxLayout()
        row.setSpacing(theme.spacing())
        for widget in (self.where, self.by, self.add):
            row.addWidget(widget)
        row.addStretch(1)
        self.inside.addLayout(row)
        self.inside.addWidget(self.problem)
        self.add.clicked.connect(self._on_add)
        self.by.returnPressed.connect(self._on_add)

    def applies(self, _planned: Planned, _work: Work) -> bool:
        """Always: any garment can be made wider somewhere."""
        return True

    def show_planned(self, planned: Planned, work: Work, words: Wording) -> str:
        """Show every change."""
        self._unit = planned.found.person.unit
        keys: list[tuple[str, str]] = [(line.choice.level, line.choice.reason) for line in work.widths]
        if [row.key for row in self.rows] != keys:
            self._build(work)
        for row, line in zip(self.rows, work.widths, strict=True):
            row.show_line(line, planned, words)
        inside = [widget for row in self.rows for widget in row.stops]
        one_after_the_other(self.button, *inside, self.where, self.by, self.add)
        for widget in (self.where, self.by, self.add):
            widget.setEnabled(not self.edits.read_only)
        return ", ".join(width_summary(line, words) for line in work.widths) or "nothing to change"

    def _build(self, work: Work) -> None:
        field = QApplication.focusWidget()
        if field is not None and any(row.isAncestorOf(field) for row in self.rows):
            self.where.setFocus(Qt.FocusReason.OtherFocusReason)  # before the row that has it goes away
        for old in self.rows:
            self._list.removeWidget(old)
            old.hide()
            old.deleteLater()
        self.rows = [WidthRow(line.choice, self.edits, self.body) for line in work.widths]
        for row in self.rows:
            self._list.addWidget(row)

    def _on_add(self) -> None:
        """Add a change at the level picked; one that is there already gets the new amount."""
        if not self.by.text().strip():
            return
        try:
            length = length_typed(self.by.text(), self._unit) or Length(Fraction(0), "cm")
        except LengthError as error:
            say(self.problem, f"Amount: {error}.")
            return
        level = LEVEL_ORDER[self.where.currentIndex()]
        say(self.problem, "")
        self.by.setText("")
        new = WidthChoice(level, length)
        make = self.edits.make
        old = _kept(make, new)
        text = f"Change the width at the {LEVEL_NAMES[level]}"
        self.edits.apply(text, with_width(make, old, replace(old, amount=length)))
