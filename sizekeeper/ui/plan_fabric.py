"""Fabric: the envelope's figure and what is lengthened, against what she has."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QCheckBox

from sizekeeper.core.fabric import fabric_need
from sizekeeper.core.make import FabricHad
from sizekeeper.errors import LengthError
from sizekeeper.ui.lettering import Lettering, say
from sizekeeper.ui.plan_cloth import NONE, text_of
from sizekeeper.ui.plan_edits import length_typed
from sizekeeper.ui.plan_fabric_table import FabricTaking
from sizekeeper.ui.plan_field import MakeField
from sizekeeper.ui.plan_fold import CalmSpin, Fold, figures

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget

    from sizekeeper.core.fabric import FabricNeed
    from sizekeeper.core.make import Make
    from sizekeeper.core.planned import Planned
    from sizekeeper.core.wording import Wording
    from sizekeeper.core.work import Work
    from sizekeeper.ui.plan_edits import MakeEdits


def _had(make: Make) -> FabricHad:
    return make.fabric or FabricHad(NONE, NONE)


def _with_had(make: Make, had: FabricHad) -> Make:
    empty = not had.width.value and not had.length.value
    return replace(make, fabric=None if empty else had)


def _with_size(part: str, unit: list[str], make: Make, text: str) -> Make:
    length = length_typed(text, unit[0]) or NONE
    if length.value < 0:
        raise LengthError("a fabric is never shorter than nothing")
    had = _had(make)
    new = replace(had, width=length) if part == "width" else replace(had, length=length)
    return _with_had(make, new)


def _with_shrinkage(make: Make, text: str) -> Make:
    kept = text.strip().removesuffix("%").strip().replace(",", ".")
    try:
        share = float(kept or 0) / 100
    except ValueError as error:
        raise LengthError(f"“{text.strip()}” is not a share in percent") from error
    if not 0 <= share < 1:
        raise LengthError("what is lost in washing lies between 0 and 100 %")
    return _with_had(make, replace(_had(make), shrinks=share))


class FabricFold(Fold):
    """The envelope's fabric and what is lengthened, against what she has."""

    title = "Fabric"

    def __init__(self, edits: MakeEdits, parent: QWidget | None = None) -> None:
        """Silent."""
        super().__init__(edits, parent)
        self._unit = ["cm"]
        self._shown: tuple[Planned, Work, Wording] | None = None
        what = "Change the fabric"
        width, length = (partial(_with_size, part, self._unit) for part in ("width", "length"))
        self.wide = MakeField(edits, "Width of the fabric", what, width, self.problem, self.body)
        self.long = MakeField(edits, "Length of the fabric", what, length, self.problem, self.body)
        self.shrinks = MakeField(
            edits, "Lost in washing, percent", what, _with_shrinkage, self.problem, self.body, wide=5
        )
        self.nap = QCheckBox("all pieces one way: nap or print", self.body)
        self.lays = CalmSpin(self.body)
        self.lays.setRange(1, 6)
        self.lays.setKeyboardTracking(False)
        self.lays.setAccessibleName("Lengths laid end to end")
        self.said, self.warning = Lettering("", "plain", self.body), Lettering("", "warning", self.body)
        rows: list[tuple[str, QWidget]] = [("I have, wide", self.wide), ("long", self.long)]
        rows += [("lost in washing, %", self.shrinks), ("lengths laid end to end", self.lays)]
        self.inside.addLayout(figures(self.body, rows, columns=4))
        self.taking = FabricTaking(edits, self.problem, self.body)
        for widget in (self.nap, self.problem, self.said, self.warning, self.taking):
            self.inside.addWidget(widget)
        self.nap.clicked.connect(self._on_nap)
        self.lays.valueChanged.connect(self._on_laid)

    def applies(self, _planned: Planned, _work: Work) -> bool:
        """Always."""
        return True

    def show_planned(self, planned: Planned, work: Work, words: Wording) -> str:
        """Show what she has, and what is needed."""
        self._unit[0] = planned.found.person.unit
        self._shown = (planned, work, words)
        self.taking.show_planned(planned)
        had = _had(planned.make)
        self.wide.show_value(text_of(had.width))
        self.long.show_value(text_of(had.length))
        self.shrinks.show_value(f"{had.shrinks * 100:g}" if had.shrinks else "", "0")
        self.nap.setChecked(had.nap)
        self.nap.setEnabled(planned.make.fabric is not None and not self.edits.read_only)
        self.lays.blockSignals(True)
        self.lays.setValue(planned.make.laid)
        self.lays.blockSignals(False)
        self.lays.setEnabled(not self.edits.read_only)
        self._say_need()
        need = self._need()
        if need is None:
            return ""
        return f"{words.length(abs(float(need.left)))} {'too little' if need.left < 0 else 'left over'}"

    def _need(self) -> FabricNeed | None:
        if self._shown is None:
            return None
        planned, work, _ = self._shown
        had = planned.make.fabric
        if had is None or not had.width.value or not had.length.value:
            return None
        longer = sum((max(Fraction(0), t.change.change) for t in work.lengths if t.change is not None), Fraction(0))
        labels, at = planned.plans.labels, planned.shown.position
        size = labels[min(max(0, -int(-at // 1)), len(labels) - 1)]
        return fabric_need(
            planned.pieces.fabric,
            had,
            size,
            planned.found.view,
            longer=longer,
            lengths_end_to_end=planned.make.laid,
        )

    def _say_need(self) -> None:
        if self._shown is None:
            return
        planned, _, words = self._shown
        need = self._need()
        say(self.warning, "")
        if need is None:
            had = planned.make.fabric
            complete = had is not None and had.width.value and had.length.value
            lines = planned.pieces.fabric
            say(
                self.said,
                "Type how wide and how long your fabric is."
                if lines and not complete
                else "The envelope’s fabric is not typed for this size: paste it, or type it on the Pattern page.",
            )
            return
        said = [f"The envelope asks for {words.length(float(need.table))} at {_wide(need)} wide"]
        if need.added:
            said.append(f"the lengthening takes {words.length(float(need.added))} more")
        say(self.said, f"{', '.join(said)}: {words.length(float(need.needed))} in all.")
        say(self.warning, "\n".join(_notes(need, words)))

    def _on_laid(self, laid: int) -> None:
        self.edits.apply("Change how many lengths are laid end to end", replace(self.edits.make, laid=laid))

    def _on_nap(self) -> None:
        make = self.edits.make
        self.edits.apply("Change the fabric", _with_had(make, replace(_had(make), nap=self.nap.isChecked())))


def _wide(need: FabricNeed) -> str:
    width = need.line.width
    return width.text or f"{float(width.value):g} {width.unit}"


def _notes(need: FabricNeed, words: Wording) -> list[str]:
    said = {
        "narrower": "Your fabric is narrower than any width in the table, so its figure does not hold.",
        "wider_than_table": "Your fabric is wider than that; it may need less.",
        "nap": "The table does not say that it reckons with a nap: lay the pieces out first.",
        "shrinkage": "Wash it before cutting; what it loses is reckoned in.",
    }
    short = [f"{words.length(float(-need.left))} too little."] if need.left < 0 else []
    return short + [said[note] for note in need.notes]
