"""The amounts of a plan, worked out: lengths by chain, widths by level, the seat of trousers, the worksheet."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction
from typing import TYPE_CHECKING, cast, get_args

from sizekeeper.core.children import longer_by
from sizekeeper.core.flat import exact
from sizekeeper.core.length import CM_PER, Length, exactly
from sizekeeper.core.length_plan import Cut, change_of, chart_length
from sizekeeper.core.lengths import BODY_LENGTH, LengthChange, LengthPlan, own_change, place_change
from sizekeeper.core.make import LengthChoice, WidthChoice
from sizekeeper.core.opening import passages
from sizekeeper.core.piece import CHAINS, Chain
from sizekeeper.core.planned import tried
from sizekeeper.core.toile_change import TOILE, next_change
from sizekeeper.core.trousers import CROTCH_DEPTH_EASE, SEAT, THIGH_EASE, Seat, SeatChanges, seat_changes, thigh_choice
from sizekeeper.core.width_plan import WidthPlan, plan_width
from sizekeeper.core.widths import MILLIMETRES, SIXTEENTHS
from sizekeeper.core.worksheet import Worksheet, worksheet
from sizekeeper.errors import PlanError

if TYPE_CHECKING:
    from sizekeeper.core.opening import Passage
    from sizekeeper.core.piece import PieceRole
    from sizekeeper.core.planned import Planned
    from sizekeeper.core.preference import Garment

_CHAINS_OF: dict[Garment, tuple[Chain, ...]] = {
    "dress": ("back_waist", "sleeve", "skirt"),
    "top": ("back_waist", "sleeve"),
    "jacket": ("back_waist", "sleeve"),
    "coat": ("back_waist", "sleeve", "skirt"),
    "skirt": ("skirt",),
    "trousers": ("rise", "inseam"),
}
_PART_OF: dict[Chain, tuple[PieceRole, ...]] = {
    "back_waist": ("back", "yoke", "front"),
    "sleeve": ("sleeve",),
    "skirt": ("skirt_back", "skirt_front"),
    "inseam": ("leg_back", "leg_front"),
    "rise": ("leg_back", "leg_front"),
}
_RISE_EASE = Length(CROTCH_DEPTH_EASE / CM_PER["in"], "in", "1/2 in")
FOLLOWING = (TOILE, SEAT)
"""The reasons of changes of width whose amounts are not hers to type."""


@dataclass(frozen=True)
class LengthLine:
    """One chain: her choice, the change it comes to, where that goes, or why it cannot.

    `from_toile` is the part of the change that the toiles asked for, exact cm.
    """

    choice: LengthChoice
    change: LengthChange | None
    plan: LengthPlan | None
    problem: str = ""
    from_toile: Fraction = Fraction(0)


@dataclass(frozen=True)
class WidthLine:
    """One change of width: her choice, its shares, or why it cannot be spread."""

    choice: WidthChoice
    plan: WidthPlan | None
    problem: str = ""


@dataclass(frozen=True)
class Work:
    """Everything that is to be changed for a plan."""

    lengths: tuple[LengthLine, ...]
    widths: tuple[WidthLine, ...]
    seat: SeatChanges | None
    sheet: Worksheet


def work_of(planned: Planned) -> Work:
    """Work out every amount of the plan that is shown."""
    lengths = tuple(_length(planned, chain) for chain in chains(planned))
    seat = seat_of(planned, lengths)
    widths = tuple(_width(planned, choice) for choice in width_choices(planned, seat))
    sheet = worksheet(
        planned.shown,
        planned.pieces,
        [line.plan for line in lengths if line.plan is not None],
        [line.plan for line in widths if line.plan is not None],
        seat=seat,
        ticks=planned.make.ticks,
    )
    return Work(lengths, widths, seat, sheet)


def chains(planned: Planned) -> tuple[Chain, ...]:
    """The lengths a garment is fitted by: the usual ones of its kind that its pieces have, and any she chose."""
    usual = _CHAINS_OF[planned.found.pattern.garment]
    pieces = planned.pieces.pieces
    chosen = {choice.chain for choice in planned.make.lengths} | {state.at for state in planned.toile()}
    out = []
    for chain in CHAINS:
        has = any(p.role in _PART_OF[chain] or p.length(chain) is not None for p in pieces)
        if chain in chosen or (chain in usual and (has or not pieces)):
            out.append(chain)
    return tuple(out)


def choice_of(planned: Planned, chain: Chain) -> LengthChoice:
    """What she chose for a chain, the usual where she chose nothing."""
    found = next((choice for choice in planned.make.lengths if choice.chain == chain), None)
    return found or LengthChoice(chain)


def cut_of(planned: Planned) -> Cut:
    """What lengths are judged against."""
    return Cut(
        planned.found.body,
        planned.comparison.run,
        planned.shown.position,
        planned.pieces,
        planned.seam_allowance,
        exact(planned.make.growth),
    )


def _length(planned: Planned, chain: Chain) -> LengthLine:
    choice = choice_of(planned, chain)
    asked = replace(choice, ease=_RISE_EASE) if chain == "rise" and choice.ease is None else choice
    toile = next((state.change for state in planned.toile() if state.at == chain), Fraction(0))
    change, plan = None, None
    try:
        change = _by_length_size(planned, asked) or change_of(asked, cut_of(planned))
        if toile:
            change = own_change(chain, toile) if change is None else replace(change, change=change.change + toile)
        if change is not None and change.change and planned.pieces.pieces:
            plan = place_change(change, planned.pieces.pieces, choice.piece, choice.levels)
    except PlanError as error:
        return LengthLine(choice, change, None, str(error), toile)
    return LengthLine(choice, change, plan, "", toile)


def _by_length_size(planned: Planned, choice: LengthChoice) -> LengthChange | None:
    """The change to the lengths of another size, for a child whose height and girth lie apart; None where not asked."""
    if choice.amount is not None or choice.wanted is not None:
        return None
    found = _both_lengths(planned, choice.chain, planned.make.length_size)
    if found is None:
        return None
    here, there = found
    growth = exact(planned.make.growth)
    return LengthChange(choice.chain, longer_by(here, there, growth), "length_size", there + growth, here)


def _both_lengths(planned: Planned, chain: Chain, size: str) -> tuple[Fraction, Fraction] | None:
    """A chain's length in the size that is cut and in another one, exact cm; None where the charts lack either."""
    labels, run, measure = planned.plans.labels, planned.comparison.run, BODY_LENGTH[chain]
    if size not in labels:
        return None
    figures = run.finished.get(measure) or run.body.get(measure)
    here, there = (chart_length(figures, p) for p in (planned.shown.position, float(labels.index(size))))
    return None if here is None or there is None else (here, there)


def without_lengths(planned: Planned) -> tuple[Chain, ...]:
    """The chains whose lengths cannot be taken from the size she chose for them, or, while none is, from any."""
    labels, chosen = planned.plans.labels, planned.make.length_size
    sizes = (chosen,) if chosen in labels else labels
    return tuple(c for c in chains(planned) if all(_both_lengths(planned, c, size) is None for size in sizes))


def width_choices(planned: Planned, seat: SeatChanges | None = None) -> tuple[WidthChoice, ...]:
    """Her changes of width, those of the toiles, and the thigh of a seat.

    What she ticked for one that was asked for is kept, its amount follows. A thigh that she changes herself, or that a
    toile was pinned at, is left to that.
    """
    own = [choice for choice in planned.make.widths if choice.reason not in FOLLOWING]
    kept = {(choice.level, choice.reason): choice for choice in planned.make.widths if choice.reason in FOLLOWING}
    unit = planned.found.person.unit
    asked = [next_change(state, unit) for state in planned.toile()]
    found = [choice for choice in asked if isinstance(choice, WidthChoice)]
    thigh = None if seat is None else thigh_choice(seat, unit)
    if thigh is not None and "thigh" not in tried(planned) and not any(choice.level == "thigh" for choice in own):
        found.append(thigh)
    return (*own, *(replace(kept.get((c.level, c.reason), c), amount=c.amount) for c in found))


def _width(planned: Planned, choice: WidthChoice) -> WidthLine:
    notation = SIXTEENTHS if planned.found.person.unit == "in" else MILLIMETRES
    try:
        return WidthLine(choice, plan_width(choice, planned.pieces, planned.seam_allowance, notation))
    except PlanError as error:
        return WidthLine(choice, None, str(error))


def figure_at(planned: Planned, measure: str) -> Fraction | None:
    """A finished figure at the place that is cut, exact cm; None where the chart has none."""
    at = planned.shown.regions.get(measure)
    if at is not None and at.finished_cm is not None:
        return exactly(at.finished_cm)
    return chart_length(planned.comparison.run.finished.get(measure), planned.shown.position)


def passages_of(planned: Planned, *, child: bool) -> tuple[Passage, ...]:
    """Whether what must pass the pattern's openings does, in the size that is cut."""
    body = {measure: figure.cm for measure, figure in planned.found.body.items()}
    if planned.make.shoulders is not None:
        body["shoulders"] = planned.make.shoulders.cm
    openings = planned.pieces.openings
    known = {o.measure: figure_at(planned, o.measure) for o in openings if o.measure}
    finished = {measure: float(cm) for measure, cm in known.items() if cm is not None}
    return passages(openings, body, finished, planned.found.pattern.stretch, child=child)


def seat_of(planned: Planned, lengths: tuple[LengthLine, ...]) -> SeatChanges | None:
    """The changes of a trouser's seat, after its depth; None for other garments."""
    if planned.found.pattern.garment != "trousers":
        return None
    rise = next((line.change for line in lengths if line.choice.chain == "rise"), None)
    body = {measure: exactly(figure.cm) for measure, figure in planned.found.body.items()}
    thigh = planned.shown.regions.get("thigh")
    asked = THIGH_EASE if thigh is None or thigh.asked_cm is None else exactly(thigh.asked_cm)
    return seat_changes(
        Seat(
            body_depth=rise.change if rise is not None else None,
            made_depth=Fraction(0) if rise is not None else None,
            body_length=body.get("crotch_length"),
            made_length=figure_at(planned, "crotch_length"),
            body_thigh=body.get("thigh"),
            made_thigh=figure_at(planned, "thigh"),
            front_rise=body.get("front_rise"),
            made_front_rise=figure_at(planned, "front_rise"),
        ),
        depth_ease=Fraction(0),
        thigh_ease=asked,
    )


def as_chain(text: str) -> Chain | None:
    """A chain by its id, None for anything else."""
    return cast("Chain", text) if text in get_args(Chain) else None
