"""The sleeve: its ease at the upper arm, its cap against the armhole, and where it ends."""

from __future__ import annotations

from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING, Literal

from PySide6.QtWidgets import QPushButton

from sizekeeper.core.length import CM_PER, exactly
from sizekeeper.core.planned import tried
from sizekeeper.core.sleeve import CapCheck, arm_change, end_to_be_level_with_waist, ends_below_waist
from sizekeeper.core.work_words import amount
from sizekeeper.errors import LengthError
from sizekeeper.ui.lettering import Lettering, say
from sizekeeper.ui.plan_edits import length_typed, with_length
from sizekeeper.ui.plan_field import MakeField
from sizekeeper.ui.plan_fold import Fold, figures

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget

    from sizekeeper.core.length import Length
    from sizekeeper.core.make import Make
    from sizekeeper.core.planned import Planned
    from sizekeeper.core.sleeve import ArmChange
    from sizekeeper.core.wording import Wording
    from sizekeeper.core.work import Work
    from sizekeeper.ui.plan_edits import MakeEdits

_ARM_EASE = CM_PER["in"]
"""Ease at the upper arm where none is asked for: 1/2 to 2 in (New Mexico State University Extension C-228)."""

Part = Literal["sleeve_cap", "armhole", "shoulder_to_waist"]
_NAMES: dict[Part, str] = {
    "sleeve_cap": "Seam of the sleeve cap",
    "armhole": "Seam of the armhole, front and back",
    "shoulder_to_waist": "From the shoulder’s end straight down to the waist",
}
_LABELS: dict[Part, str] = {
    "sleeve_cap": "sleeve cap, along the seam",
    "armhole": "armhole, front and back",
    "shoulder_to_waist": "shoulder’s end straight down to the waist",
}
_EDITS: dict[Part, str] = {
    "sleeve_cap": "Change the sleeve cap",
    "armhole": "Change the armhole",
    "shoulder_to_waist": "Change the way to the waist",
}


def _with_part(part: Part, unit: list[str], make: Make, text: str) -> Make:
    length = length_typed(text, unit[0])
    if length is not None and length.value <= 0:
        raise LengthError("it must be more than nothing")
    return replace(make, **{part: length})  # type: ignore[arg-type]  # each part is a length of the make


class SleeveFold(Fold):
    """The sleeve: ease at the upper arm, the cap against the armhole, and where it ends."""

    title = "Sleeve"

    def __init__(self, edits: MakeEdits, parent: QWidget | None = None) -> None:
        """Silent."""
        super().__init__(edits, parent)
        self._unit = ["cm"]
        self._to_waist: Length | None = None
        self.said = Lettering("", "plain", self.body)
        self.fields = {
            part: MakeField(edits, name, _EDITS[part], partial(_with_part, part, self._unit), self.problem, self.body)
            for part, name in _NAMES.items()
        }
        self.meets, self.short = Lettering("", "plain", self.body), Lettering("", "warning", self.body)
        self.ends = Lettering("", "plain", self.body)
        self.level = QPushButton("Make it end level with the waist", self.body)
        self._lay_out()
        self.level.clicked.connect(self._on_level)

    def _lay_out(self) -> None:
        cap, armhole, waist = ((_LABELS[part], self.fields[part]) for part in _NAMES)
        self.inside.addWidget(self.said)
        self.inside.addLayout(figures(self.body, [cap, armhole], columns=2))
        for widget in (self.short, self.meets):
            self.inside.addWidget(widget)
        row = figures(self.body, [waist])
        row.addWidget(self.level, 0, 2)
        self.inside.addLayout(row)
        self.inside.addWidget(self.ends)
        self.inside.addWidget(self.problem)

    def applies(self, planned: Planned, work: Work) -> bool:
        """Whether there is a sleeve to speak of."""
        has = any(p.role == "sleeve" for p in planned.pieces.pieces)
        return has or "upper_arm" in planned.shown.regions or any(t.choice.chain == "sleeve" for t in work.lengths)

    def show_planned(self, planned: Planned, work: Work, words: Wording) -> str:
        """Say the ease at the arm, whether the cap meets the armhole, and where the sleeve ends."""
        self._unit[0], self._to_waist = planned.found.person.unit, planned.make.shoulder_to_waist
        for part, field in self.fields.items():
            length: Length | None = getattr(planned.make, part)
            field.show_value(length.text if length is not None else "")
        self.level.setEnabled(self._to_waist is not None and not self.edits.read_only)
        say(self.ends, _ends_words(planned, work, words))
        arm = _arm(planned)
        self._show_cap(planned.make, arm, words)
        if "upper_arm" in tried(planned):
            say(self.said, "The toile tells: what was pinned at the upper arm counts, not the printed figure.")
            return self._summary("as the toile showed")
        if arm is None:
            say(self.said, "The upper arm and its finished figure say whether the sleeve is wide enough.")
            return self._summary("")
        say(self.said, "\n".join(_arm_words(arm, words)))
        wider = f"{amount(arm.change, words)} wider at the upper arm"
        return self._summary(wider if arm.change else "wide enough at the upper arm")

    def _summary(self, said: str) -> str:
        return ", ".join(part for part in (said, "the cap is too short" if self.short.text() else "") if part)

    def _show_cap(self, make: Make, arm: ArmChange | None, words: Wording) -> None:
        """Say whether the cap goes round the armhole, as measured and once the sleeve is wider."""
        if make.sleeve_cap is None or make.armhole is None:
            lacking = "both" if make.sleeve_cap is None and make.armhole is None else "the other"
            say(self.short, "")
            say(self.meets, f"Measure {lacking} on the seam line, without allowances, to see whether the cap fits.")
            return
        check = CapCheck(make.sleeve_cap.exact_cm, make.armhole.exact_cm)
        said = [] if not check.meets else [_meets_words(check, words)]
        if arm is not None and arm.change:
            ease = check.widened(arm).ease
            way = f"{amount(ease, words)} is then to be eased in" if ease >= 0 else "it is still too short"
            said.append(f"Widened along its length alone, the cap grows by {amount(arm.cap_grows, words)}: {way}.")
        short = f"The cap is {amount(check.ease, words)} shorter than the armhole and does not reach round it."
        say(self.short, "" if check.meets else short)
        say(self.meets, "\n".join(said))

    def _on_level(self) -> None:
        if self._to_waist is not None:
            make = replace(self.edits.make, shoulder_to_waist=self._to_waist)
            after = with_length(make, "sleeve", wanted=self._to_waist, amount=None)
            self.edits.apply("End the sleeve level with the waist", after)


def _arm(planned: Planned) -> ArmChange | None:
    """The change at the upper arm; None where it is not known, or only a toile tells."""
    at = planned.shown.regions.get("upper_arm")
    if at is None or at.finished_cm is None or "upper_arm" in tried(planned):
        return None
    asked = _ARM_EASE if at.asked_cm is None else exactly(at.asked_cm)
    return arm_change(exactly(at.finished_cm), exactly(planned.found.body["upper_arm"].cm), asked)


def _arm_words(arm: ArmChange, words: Wording) -> list[str]:
    ease, asked = (words.length(float(cm)) for cm in (arm.ease, arm.asked))
    said = [f"At the upper arm it has {ease} of ease; {asked} is asked."]
    if arm.change:
        said.append(
            f"Widen it by {amount(arm.change, words)}, for instance under Widths at the upper arm. Widened at the "
            f"underarm seam, the cap grows as much: let out the front and the back by "
            f"{amount(arm.armhole_edge, words)} each at the top of the side seam, so that the armhole still meets "
            "the cap; or open it along its length and ease the cap in."
        )
    return said


def _meets_words(check: CapCheck, words: Wording) -> str:
    if not check.ease:
        return "The cap is as long as the armhole and meets it without ease."
    return f"The cap is {amount(check.ease, words)} longer than the armhole: that much is eased in."


def _ends_words(planned: Planned, work: Work, words: Wording) -> str:
    """Where the sleeve ends against the waist on the hanging arm; empty while the way to the waist is not known."""
    waist = planned.make.shoulder_to_waist
    if waist is None:
        return ""
    line = next((t for t in work.lengths if t.choice.chain == "sleeve"), None)
    length = line.change.wanted if line is not None and line.change is not None else None
    if length is None:
        level = end_to_be_level_with_waist(waist.exact_cm)
        return f"To end level with the waist it is to be {words.length(float(level))} long."
    below = ends_below_waist(length, waist.exact_cm)
    way = "below" if below > 0 else "above"
    where = f"{amount(below, words)} {way} the waist" if below else "level with the waist"
    return f"On the hanging arm it ends {where}."
