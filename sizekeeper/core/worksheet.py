"""The worksheet: every change of every piece in the order of work, each with a tick of its own.

Lengths first, then widths from the top down, one change at a time (Texas A&M AgriLife Extension E-372, 2006), then the
pieces that match: facings, linings, interfacings, guides and plackets.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING, Literal

from sizekeeper.core.follows import FollowReason
from sizekeeper.core.length import exactly
from sizekeeper.core.piece import CHAINS, LEVEL_ORDER

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from sizekeeper.core.lengths import LengthPlan
    from sizekeeper.core.piece import Piece, Pieces
    from sizekeeper.core.plan import Plan
    from sizekeeper.core.trousers import SeatChanges
    from sizekeeper.core.width_plan import WidthPlan

Part = Literal["trace", "length", "width", "match"]
PARTS: tuple[Part, ...] = ("trace", "length", "width", "match")
StepKind = Literal["line", "length", "width", "bust", "crotch", "follow"]
_MATCHING = ("facing", "placket", "guide", "pocket")


@dataclass(frozen=True, slots=True)
class Step:
    """One thing to do to one piece. `amount` is exact cm on the piece as it lies on the paper, negative is less.

    `where` is a level, or the two levels the line lies between. `edges` is at how many edges the amount is shared out,
    `per_edge` what each gets. `why` says why a piece follows, `cause` what asked for the change: the chain of a length,
    the reason of a width. `key` changes with the amount, so that a tick never stands beside an amount that was not the
    one ticked, and with the cause, so that of two like changes at one level each has its own.
    """

    part: Part
    kind: StepKind
    piece: str
    where: tuple[str, ...]
    amount: Fraction
    edges: int = 1
    why: FollowReason | None = None
    cause: str = ""

    @property
    def key(self) -> str:
        """What a tick refers to."""
        return ":".join((self.kind, "-".join(self.where), self.piece, str(self.amount), self.cause))

    @property
    def per_edge(self) -> Fraction:
        """What each edge gets."""
        return self.amount / self.edges

    @property
    def pleat(self) -> Fraction:
        """How deep a pleat to fold where the piece is shortened: half of it; 0 elsewhere."""
        return -self.amount / 2 if self.kind == "length" and self.amount < 0 else Fraction(0)


@dataclass(frozen=True, slots=True)
class Worksheet:
    """The steps in order of work, and which are done."""

    steps: tuple[Step, ...]
    ticks: frozenset[str]

    def done(self, step: Step) -> bool:
        """Whether a step is ticked."""
        return step.key in self.ticks

    @property
    def left(self) -> int:
        """How many steps are still to do."""
        return sum(not self.done(step) for step in self.steps)

    def of(self, piece: str) -> tuple[Step, ...]:
        """The steps of one piece, in order."""
        return tuple(step for step in self.steps if step.piece == piece)


def ticked(ticks: Sequence[str], step: Step, *, done: bool) -> tuple[str, ...]:
    """The ticks with one step marked done or not."""
    others = tuple(key for key in ticks if key != step.key)
    return (*others, step.key) if done else others


def worksheet(
    plan: Plan | None,
    pieces: Pieces,
    lengths: Iterable[LengthPlan] = (),
    widths: Iterable[WidthPlan] = (),
    *,
    seat: SeatChanges | None = None,
    ticks: Iterable[str] = (),
) -> Worksheet:
    """Every step of a plan and its alterations, in the order of work.

    Args:
        plan: the plan that was chosen; its own lines and its bust adjustment come in.
        pieces: the pattern's pieces.
        lengths: the changes of length.
        widths: the changes of width.
        seat: the changes of a trouser's seat; its depth is a change of length in the chain `rise` and comes from there,
            its thigh a change of width (`trousers.thigh_choice`).
        ticks: the keys of the steps that are done.
    """
    by_id = {piece.id: piece for piece in pieces.pieces}
    steps = [*_lines(plan), *_lengths(lengths, by_id), *_bust(plan, by_id), *_widths(widths, by_id)]
    steps += _seat(seat, pieces)
    return Worksheet(tuple(sorted(steps, key=_order)), frozenset(ticks))


def _lines(plan: Plan | None) -> list[Step]:
    if plan is None or plan.bust is not None:
        return []
    return [Step("trace", "line", piece, (), Fraction(0)) for piece in plan.touched or ()]


def _lengths(lengths: Iterable[LengthPlan], by_id: dict[str, Piece]) -> list[Step]:
    found = []
    for plan in sorted(lengths, key=lambda plan: CHAINS.index(plan.change.chain)):
        amount, chain = plan.change.change, plan.change.chain
        found += [
            Step(_part("length", by_id[p]), "length", p, plan.levels, amount, cause=chain)
            for p in (plan.piece, *plan.same)
        ]
    return found


def _bust(plan: Plan | None, by_id: dict[str, Piece]) -> list[Step]:
    if plan is None or plan.bust is None:
        return []
    half = exactly(plan.bust.half_cm)
    return [Step(_part("width", by_id[p]), "bust", p, ("bust",), half) for p in plan.touched or ()]


def _widths(widths: Iterable[WidthPlan], by_id: dict[str, Piece]) -> list[Step]:
    found = []
    for plan in widths:
        found += [
            Step("width", "width", share.piece, (plan.level,), share.on_piece, share.edges, cause=plan.reason)
            for share in plan.shares
        ]
        found += [
            Step("match", "follow", follow.piece, (plan.level,), plan.following, why=follow.reason, cause=plan.reason)
            for follow in plan.follows
            if follow.piece in by_id
        ]
    return found


def _seat(seat: SeatChanges | None, pieces: Pieces) -> list[Step]:
    """The crotch points of the trouser fronts and backs, after the depth and before the thigh."""
    if seat is None:
        return []
    amounts = {"leg_front": seat.front, "leg_back": seat.back}
    found = [(piece, amounts.get(piece.role)) for piece in pieces.pieces]
    return [
        Step(_part("width", piece), "crotch", piece.id, ("hip", "thigh"), amount) for piece, amount in found if amount
    ]


def _part(part: Part, piece: Piece) -> Part:
    return "match" if piece.layer != "self" or piece.role in _MATCHING else part


def _order(step: Step) -> tuple[int, int, int]:
    """Part by part; widths from the top down, the bust adjustment first there. Sorting keeps all else as it was."""
    if step.part == "length" or not step.where:
        return (PARTS.index(step.part), 0, 0)
    return (PARTS.index(step.part), _height(step.where[0]), step.kind != "bust")


def _height(level: str) -> int:
    return next((at for at, known in enumerate(LEVEL_ORDER) if known == level), len(LEVEL_ORDER))
