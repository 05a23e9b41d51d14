"""The bust, the seat of trousers, and what lies past the chart."""

from __future__ import annotations

from fractions import Fraction
from functools import partial
from typing import TYPE_CHECKING

from sizekeeper.core.beyond import beyond_range
from sizekeeper.core.places import join
from sizekeeper.core.plan_words import past_words
from sizekeeper.core.sentences import line_words
from sizekeeper.core.work import figure_at
from sizekeeper.core.work_words import amount
from sizekeeper.ui.lettering import Lettering, say
from sizekeeper.ui.plan_fold import Fold

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget

    from sizekeeper.core.plan import BustAdjustment
    from sizekeeper.core.planned import Planned
    from sizekeeper.core.trousers import SeatChanges
    from sizekeeper.core.wording import Wording
    from sizekeeper.core.work import Work
    from sizekeeper.ui.plan_edits import MakeEdits


class BustFold(Fold):
    """The bust adjustment of the plan, or what it would be."""

    title = "Bust adjustment"

    def __init__(self, edits: MakeEdits, parent: QWidget | None = None) -> None:
        """Silent."""
        super().__init__(edits, parent)
        self.said = Lettering("", "plain", self.body)
        self.inside.addWidget(self.said)

    def applies(self, planned: Planned, _work: Work) -> bool:
        """Whether the high bust tells of one."""
        bust = planned.shown.bust or planned.planner.bust()
        return bust is not None and (planned.shown.bust is not None or bust.amount_cm > 0)

    def show_planned(self, planned: Planned, _work: Work, words: Wording) -> str:
        """Say how much, where, and what of the dart."""
        in_plan = planned.shown.bust is not None
        bust = planned.shown.bust or planned.planner.bust()
        assert bust is not None  # noqa: S101 - it applies
        fronts = [p for p in planned.pieces.pieces if p.role == "front" and p.layer == "self"]
        dart = None if not fronts else any(p.dart for p in fronts)
        say(self.said, "\n".join(_bust_words(bust, words, dart=dart, in_plan=in_plan)))
        if in_plan:
            return f"{amount(bust.amount_cm, words)} in all, {amount(bust.half_cm, words)} in each half of the front"
        return "not in this plan"


def _bust_words(bust: BustAdjustment, words: Wording, *, dart: bool | None, in_plan: bool) -> list[str]:
    by = "the high bust" if bust.from_high_bust_row else "the high bust (and the difference it was drafted for)"
    said = [f"By {by} the size is {bust.label}; its bust lacks {amount(bust.amount_cm, words)}."]
    if in_plan:
        said.append(f"Open each half of the front by {amount(bust.half_cm, words)} at the bust.")
        if bust.length_cm is not None and bust.length_cm > 0:
            said.append(f"The front also lacks {amount(bust.length_cm, words)} in length: spread it below the bust.")
        else:
            said.append("The front grows in length too: true the hem of the front to the side seam.")
        if dart is not None:
            how = "goes into the dart that is there" if dart else "makes a dart, or goes into ease or gathers"
            said.append(f"The width added {how}.")
        said.append("Facings and a lining of the front get the same.")
    elif bust.past:
        said = [past_words(bust)]
    elif bust.reached:
        said.append("The garment’s own ease does already, so none is suggested.")
    elif bust.suggested:
        said.append("It is offered as a plan of its own.")
    else:
        said.append("That is less than is worth an adjustment.")
    return said


class SeatFold(Fold):
    """The seat of trousers: crotch depth, crotch length, thigh, in that order."""

    title = "Seat and thigh"

    def __init__(self, edits: MakeEdits, parent: QWidget | None = None) -> None:
        """Silent."""
        super().__init__(edits, parent)
        self.inside.addWidget(Lettering("In this order, because each changes the next.", "muted", self.body))
        self.said = Lettering("", "plain", self.body)
        self.inside.addWidget(self.said)

    def applies(self, _planned: Planned, work: Work) -> bool:
        """Whether these are trousers."""
        return work.seat is not None

    def show_planned(self, planned: Planned, work: Work, words: Wording) -> str:
        """Say the changes in order."""
        assert work.seat is not None  # noqa: S101 - it applies
        has = planned.found.body.keys()
        lacking = partial(_lacking, planned, has)
        say(self.said, "\n".join(_seat_words(work.seat, words, lacking("crotch_length"), lacking("thigh"))))
        seat = work.seat
        thigh = None if seat.thigh is None else max(seat.thigh, Fraction(0))
        steps = (seat.depth, seat.front, seat.back, thigh)
        changed = sum(bool(c) for c in steps)
        if not changed:
            return "not all known" if None in steps else "as it is"
        return f"{changed} changes" if changed > 1 else "1 change"


def _lacking(planned: Planned, has: object, measure: str) -> str:
    name = measure.replace("_", " ")
    if measure not in has:  # type: ignore[operator]  # the keys of her figures
        return f"measure the body’s {name}"
    return "" if figure_at(planned, measure) is not None else f"type the finished {name} on the Pattern page"


def _seat_words(seat: SeatChanges, words: Wording, no_length: str, no_thigh: str) -> list[str]:
    said = [f"1. Crotch depth: {_by(seat.depth, 'deeper', 'shallower', words, 'see Lengths, rise')}"]
    if seat.front is None or seat.back is None:
        said.append(f"2. Crotch length: {no_length or 'not known'}.")
    else:
        front, back = (_by(c, "longer", "shorter", words) for c in (seat.front, seat.back))
        said.append(f"2. Crotch length, at the inseam points: front {front} Back {back}")
    if seat.thigh is None:
        said.append(f"3. Thigh: {no_thigh or 'not known'}.")
    else:
        much = amount(seat.thigh, words)
        rest = f"{much} wider, under Widths at the thigh." if seat.thigh > 0 else "wide enough."
        said.append(f"3. Thigh, after what the inseam points gave: {rest}")
    return said


def _by(cm: Fraction | None, more: str, less: str, words: Wording, unknown: str = "not known") -> str:
    if cm is None:
        return f"{unknown}."
    return f"{amount(cm, words)} {more if cm > 0 else less}." if cm else "as it is."


class BeyondFold(Fold):
    """Past the printed lines: how far outside the last one, at each edge."""

    title = "Beyond the range"

    def __init__(self, edits: MakeEdits, parent: QWidget | None = None) -> None:
        """Silent."""
        super().__init__(edits, parent)
        self.said = Lettering("", "plain", self.body)
        self.warning = Lettering("", "warning", self.body)
        self.inside.addWidget(self.said)
        self.inside.addWidget(self.warning)

    @staticmethod
    def _place(planned: Planned) -> float:
        shown, best = planned.shown.position, planned.fit.best_position
        outside = beyond_range(planned.comparison, shown) is not None
        return shown if outside or best is None else best

    def applies(self, planned: Planned, _work: Work) -> bool:
        """Whether the plan, or the best place of all, lies past the listed sizes."""
        return beyond_range(planned.comparison, self._place(planned)) is not None

    def show_planned(self, planned: Planned, _work: Work, words: Wording) -> str:
        """Say how far outside the last line."""
        place = self._place(planned)
        beyond = beyond_range(planned.comparison, place)
        assert beyond is not None  # noqa: S101 - it applies
        ways = [
            f"{amount(cm, words)} {'outside' if cm > 0 else 'inside'} at {words.the(measure)}"
            for measure, cm in beyond.edge_cm.items()
        ]
        whose = (
            "The plan’s line" if beyond_range(planned.comparison, planned.shown.position) else "The best line of all"
        )
        say(self.said, f"{whose} runs, at each edge of the line of {beyond.label}: {join(ways)}.")
        say(self.warning, line_words(planned.fit, place, words))
        return f"past {beyond.label}"
