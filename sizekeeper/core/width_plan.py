"""From a choice about a width to the share of each piece, the pieces that must follow and what gathers take up."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING

from sizekeeper.core.flat import exact, net_width
from sizekeeper.core.follows import Follow, follows, ring
from sizekeeper.core.piece import Level
from sizekeeper.core.widths import MILLIMETRES, Share, gather_after, spread
from sizekeeper.errors import PlanError

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from sizekeeper.core.make import WidthChoice
    from sizekeeper.core.notation import Notation
    from sizekeeper.core.piece import Piece, Pieces


@dataclass(frozen=True, slots=True)
class Gathers:
    """How often as long the gathered edge is as the seam it joins: before the change, and after it; exact."""

    before: Fraction
    after: Fraction


@dataclass(frozen=True, slots=True)
class WidthPlan:
    """A change of width at a level: shares that add up to it exactly, pieces that follow, gathers that take it up.

    `gathers` is None where nothing is gathered there or a width was not measured. `reason` tells it from another
    change at the same level. `following` is the change that other pieces follow: without what goes into gathered edges,
    unless all of it does, which only other layers of them follow.
    """

    level: Level
    change: Fraction
    shares: tuple[Share, ...]
    follows: tuple[Follow, ...]
    gathers: Gathers | None = None
    reason: str = ""
    following: Fraction = Fraction(0)


def around(pieces: Sequence[Piece], level: Level) -> tuple[Piece, ...]:
    """The pieces that usually take a change at a level: those of the first part that goes round it, ungathered."""
    found = [p for p in pieces if p.crosses(level) and p.times(level) and not p.gathered_at(level)]
    return tuple(p for p in found if ring(p.role) == ring(found[0].role))


def plan_width(
    choice: WidthChoice, pieces: Pieces, seam_allowance: Fraction | None, notation: Notation = MILLIMETRES
) -> WidthPlan:
    """Spread the change of a choice over its pieces, or the usual ones.

    Args:
        choice: where, how much, over which pieces and how.
        pieces: the pattern's pieces.
        seam_allowance: the pattern's, exact cm; needed where widths were measured with it.
        notation: what shares are rounded to.

    Raises:
        PlanError: the change cannot be spread; the message says what is missing.
    """
    chosen = [p for p in pieces.pieces if p.id in choice.pieces] or list(around(pieces.pieces, choice.level))
    nets = {p.id: _net(p, choice.level, seam_allowance) for p in chosen} if choice.sharing == "by_width" else {}
    change = choice.amount.exact_cm
    shares = spread(
        change,
        chosen,
        choice.level,
        notation=notation,
        edges=choice.edges,
        sharing=choice.sharing,
        net_widths=nets,
    )
    full = {p.id for p in chosen if p.gathered_at(choice.level)}
    flat = [share.around for share in shares if share.piece not in full]
    return WidthPlan(
        level=choice.level,
        change=change,
        shares=shares,
        follows=follows(chosen, pieces.pieces, choice.level),
        gathers=_gathers(chosen, pieces.pieces, choice.level, seam_allowance, {s.piece: s.around for s in shares}),
        reason=choice.reason,
        following=sum(flat, Fraction(0)) if flat else change,
    )


def _net(piece: Piece, level: Level, seam_allowance: Fraction | None) -> Fraction:
    across = piece.width(level)
    if across is None:
        where = level.replace("_", " ")
        raise PlanError(f"Measure the width of “{piece.name}” at the {where} first, or share the change equally.")
    return net_width(across, exact(piece.seam_allowance) if piece.seam_allowance else seam_allowance, piece.name)


def _gathers(
    changed: Sequence[Piece],
    pieces: Sequence[Piece],
    level: Level,
    seam_allowance: Fraction | None,
    takes: Mapping[str, Fraction],
) -> Gathers | None:
    """The gather ratio before and after, where every width that it needs was measured.

    The seam is that of the changed pieces that lie flat; where only gathered ones change, of the first part that does.
    What each piece `takes`, by id, goes to the edge it belongs to.
    """
    at = [p for p in pieces if p.times(level) and p.crosses(level)]
    full = [p for p in pieces if p.times(level) and p.gathered_at(level)]
    flat = next((p for p in (*changed, *around(pieces, level)) if not p.gathered_at(level)), None)
    if not full or flat is None:
        return None
    beside = [p for p in at if ring(p.role) == ring(flat.role)]
    parts = {ring(p.role) for p in full}
    if any(p not in full and ring(p.role) in parts for p in at) or any(p.width(level) is None for p in beside):
        return None
    gathered, seam = (
        sum((_net(p, level, seam_allowance) * p.times(level) for p in group), Fraction(0)) for group in (full, beside)
    )
    longer, wider = (sum((takes.get(p.id, Fraction(0)) for p in group), Fraction(0)) for group in (full, beside))
    return Gathers(*gather_after(gathered, seam, wider, longer))
