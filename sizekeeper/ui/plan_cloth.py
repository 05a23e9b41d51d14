"""The cloth: a knit's stretch, and the seam allowances."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from functools import partial
from typing import TYPE_CHECKING

from sizekeeper.core.allowance import KEPT, allowances
from sizekeeper.core.knit import knit_check, most_negative_ease, stretch_of
from sizekeeper.core.length import Length
from sizekeeper.core.make import StretchTest
from sizekeeper.core.pattern import KNIT_FROM
from sizekeeper.core.planned import girths
from sizekeeper.core.work_words import amount, knit_words
from sizekeeper.errors import LengthError, PlanError
from sizekeeper.ui.fit_lines import Line
from sizekeeper.ui.fit_table import LineTable
from sizekeeper.ui.lettering import Lettering, say
from sizekeeper.ui.plan_edits import length_typed
from sizekeeper.ui.plan_field import MakeField
from sizekeeper.ui.plan_fold import Fold, figures

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget

    from sizekeeper.core.knit import KnitCheck
    from sizekeeper.core.make import Make
    from sizekeeper.core.planned import Planned
    from sizekeeper.core.wording import Wording
    from sizekeeper.core.work import Work
    from sizekeeper.ui.plan_edits import MakeEdits

NONE = Length(Fraction(0), "cm")
"""What stands for a figure not typed yet."""


def text_of(length: Length | None) -> str:
    """A length as typed, empty for none."""
    return length.text if length is not None and length.value else ""


def _with_test(part: str, unit: list[str], make: Make, text: str) -> Make:
    length = length_typed(text, unit[0]) or NONE
    test = replace(make.stretch_test or StretchTest(NONE, NONE), **{part: length})
    empty = not test.rest.value and not test.stretched.value
    return replace(make, stretch_test=None if empty else test)


class KnitFold(Fold):
    """The stretch test, and what it says of pattern and body."""

    title = "Stretch"

    def __init__(self, edits: MakeEdits, parent: QWidget | None = None) -> None:
        """Silent."""
        super().__init__(edits, parent)
        self._unit = ["cm"]
        names = {"rest": "Length at rest", "stretched": "Stretched without strain"}
        self.fields = {
            part: MakeField(
                edits, name, "Change the stretch test", partial(_with_test, part, self._unit), self.problem, self.body
            )
            for part, name in names.items()
        }
        self.said = Lettering("", "plain", self.body)
        self.warning = Lettering("", "warning", self.body)
        self.table = LineTable(("Where", "Needs", "Reaches", ""), "Stretch needed", self.body)
        self.inside.addLayout(figures(self.body, [(names[p], f) for p, f in self.fields.items()], columns=2))
        for widget in (self.problem, self.said, self.warning, self.table):
            self.inside.addWidget(widget)

    def applies(self, planned: Planned, _work: Work) -> bool:
        """Whether it is a knit."""
        pattern = planned.found.pattern
        return pattern.fabric == "knit" or pattern.stretch >= KNIT_FROM or planned.make.stretch_test is not None

    def show_planned(self, planned: Planned, _work: Work, words: Wording) -> str:
        """Show the test and what follows from it."""
        self._unit[0] = planned.found.person.unit
        test, pattern = planned.make.stretch_test, planned.found.pattern
        for part, field in self.fields.items():
            field.show_value(text_of(getattr(test, part, None)))
        stretch, tested = pattern.stretch, "as the pattern says"
        if test is not None and test.rest.value and test.stretched.value:
            try:
                stretch, tested = float(stretch_of(test)), "your fabric"
            except PlanError as error:
                say(self.problem, str(error))
        self._show_check(knit_check(stretch, pattern.stretch, girths(planned)), words)
        return f"{stretch:.0%}, {tested}"

    def _show_check(self, check: KnitCheck, words: Wording) -> None:
        ceiling = most_negative_ease(check.stretch)
        say(
            self.said,
            f"It stretches by {check.stretch:.0%}; at the very most it can be {ceiling:.0%} smaller than the body. "
            "That is a ceiling, not a comfortable fit.",
        )
        say(self.warning, "\n".join(knit_words(check, words)))
        lines = []
        for region in check.regions:
            name = words.name(region.measure)
            texts = (name, f"{region.needed:.0%}", words.length(region.reach_cm), "" if region.enough else "too little")
            lines.append(Line(texts, f"{name}: needs {texts[1]}, reaches {texts[2]} {texts[3]}".strip()))
        self.table.show_lines(lines)


def _with_allowance(unit: list[str], make: Make, text: str) -> Make:
    length = length_typed(text, unit[0])
    if length is not None and length.value < 0:
        raise LengthError("a seam allowance is never negative")
    return replace(make, seam_allowance=length)


class AllowanceFold(Fold):
    """The seam allowance she sews with, and what can be let out of it."""

    title = "Seam allowance"

    def __init__(self, edits: MakeEdits, parent: QWidget | None = None) -> None:
        """Silent."""
        super().__init__(edits, parent)
        self._unit = ["cm"]
        write = partial(_with_allowance, self._unit)
        self.field = MakeField(
            edits, "Seam allowance I sew with", "Change the seam allowance", write, self.problem, self.body
        )
        self.said = Lettering("", "plain", self.body)
        self.inside.addLayout(figures(self.body, [("I sew with", self.field)]))
        self.inside.addWidget(self.problem)
        self.inside.addWidget(self.said)

    def applies(self, _planned: Planned, _work: Work) -> bool:
        """Always."""
        return True

    def show_planned(self, planned: Planned, _work: Work, words: Wording) -> str:
        """Say what is cut and what can be let out."""
        self._unit[0] = planned.found.person.unit
        pattern, hers = planned.found.pattern, planned.make.seam_allowance
        known = allowances(pattern, hers)
        self.field.show_value(text_of(hers), "" if known.printed is None else amount(known.printed, words))
        printed = "The pattern does not say what its allowance is."
        if known.printed is not None:
            printed = f"The pattern has {amount(known.printed, words)}."
        said = [printed]
        if known.to_draw:
            way = "outside" if known.to_draw > 0 else "inside"
            said.append(f"Cut {amount(known.to_draw, words)} {way} the printed cutting line, at every edge.")
        edge, seam = known.per_edge(), known.per_seam()
        if edge is None or seam is None:
            say(self.said, f"{printed} Type yours to see what can be let out.")
            return "not known"
        spare, summary = _spare_words(edge, seam, words)
        say(self.said, "\n".join([*said, spare]))
        return summary


def _spare_words(edge: Fraction, seam: Fraction, words: Wording) -> tuple[str, str]:
    """What can be let out of an edge and of a seam, and the same in a few words."""
    by_edge, by_seam = (words.spare(float(cm)) for cm in (edge, seam))
    if by_seam.startswith("0 "):
        kept = amount(KEPT.exact_cm, words)
        return f"Nothing can be let out: {kept} at each edge must stay to hold the seam.", "nothing can be let out"
    said = f"{by_edge} can be let out of each edge, {by_seam} of each seam; the rest holds it."
    return said, f"{by_seam} can be let out of each seam"
