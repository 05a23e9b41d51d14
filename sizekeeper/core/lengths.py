"""Lengths: how much a chain of pieces is to be lengthened or shortened, where, and what must get the same.

change = body length + ease - sum of net piece lengths along the chain, or body - chart where no piece is measured.
Lengths come before widths, measured from seam line to seam line (Texas A&M AgriLife Extension E-372, 2006).
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING, Literal

from sizekeeper.core.flat import exact
from sizekeeper.core.piece import LEVEL_ORDER, Chain, Level
from sizekeeper.errors import PlanError

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sizekeeper.core.piece import Along, Piece, PieceRole

BODY_LENGTH: dict[Chain, str] = {
    "back_waist": "back_waist_length",
    "sleeve": "sleeve_length",
    "skirt": "skirt_length",
    "inseam": "inseam",
    "rise": "crotch_depth",
}
"""The measure a chain is fitted to. A skirt's length is no measure of the body: she says how long it is to be."""

CHAIN_NAMES: dict[Chain, str] = {
    "back_waist": "back neck to waist",
    "sleeve": "sleeve",
    "skirt": "skirt",
    "inseam": "inside leg",
    "rise": "rise",
}
_ROLES: dict[Chain, tuple[PieceRole, ...]] = {
    "back_waist": ("back", "yoke", "band"),
    "sleeve": ("sleeve", "cuff"),
    "skirt": ("skirt_back", "waistband", "band"),
    "inseam": ("leg_back", "cuff"),
    "rise": ("leg_back", "waistband"),
}
_LINE_AT: dict[Chain, tuple[tuple[Level, ...], ...]] = {
    "back_waist": (("bust", "waist"), ("neck", "bust"), ("waist",), ("neck",), ("bust",)),
    "sleeve": (("sleeve", "wrist"), ("sleeve", "hem"), ("sleeve",), ("wrist",)),
    "skirt": (("hip", "hem"), ("waist", "hem"), ("high_hip", "hem"), ("waist",), ("hem",)),
    "inseam": (("thigh", "knee"), ("knee", "hem"), ("thigh", "hem"), ("thigh",), ("hem",)),
    "rise": (("hip", "thigh"), ("high_hip", "hip"), ("waist", "hip"), ("waist",), ("hip",)),
}
"""Where the line of a piece usually lies, the first that it crosses: between two levels or at one."""

_ENDS: frozenset[Level] = frozenset({"neck", "hem", "sleeve", "wrist"})

Basis = Literal["pieces", "body_chart", "finished_chart", "length_size", "own"]


@dataclass(frozen=True, slots=True)
class LengthChange:
    """A change of length in a chain; exact cm, positive longer. `basis` says what it was computed from.

    `wanted` is body length and ease, or the length she wants, or that of the size chosen for a child's lengths; `given`
    what pieces or chart give. Both are None where she states the amount herself.
    """

    chain: Chain
    change: Fraction
    basis: Basis
    wanted: Fraction | None = None
    given: Fraction | None = None

    @property
    def pleat(self) -> Fraction:
        """How deep a pleat to fold on the paper to shorten: half of it; 0 when it is lengthened."""
        return -self.change / 2 if self.change < 0 else Fraction(0)


@dataclass(frozen=True, slots=True)
class LengthPlan:
    """Where a change of length goes: into one piece, between or at levels, and which pieces must get the same."""

    change: LengthChange
    piece: str
    levels: tuple[Level, ...]
    same: tuple[str, ...]


def net_length(along: Along, allowance: Fraction | None, scale: Fraction = Fraction(1), name: str = "") -> Fraction:
    """A length along the grain less allowances, hem and tucks, exact cm.

    Args:
        along: the length, measured on the paper or listed in the pattern.
        allowance: the seam allowance printed on the piece, exact cm; None where it is not known.
        scale: the print scale: multiplies what is listed in the pattern's text, never what was measured.
        name: what a sentence calls the piece.

    Raises:
        PlanError: the allowance is needed and not known, or nothing is left.
    """
    if along.allowances and allowance is None:
        raise PlanError(f"“{name}” was measured with seam allowances, but the pattern does not say how wide they are.")
    off = along.allowances * (allowance or Fraction(0)) + exact(along.hem) + exact(along.taken)
    net = (along.length.exact_cm - off) * (scale if along.printed else 1)
    if net <= 0:
        raise PlanError(f"“{name}” has no length left when allowances and hem are taken off.")
    return net


def chain_pieces(chain: Chain, pieces: Sequence[Piece]) -> tuple[Piece, ...]:
    """The pieces whose lengths usually make up a chain: those of the self layer with a length in it.

    Along the back for the body; the front pieces hang beside them and follow.
    """
    with_length = [p for p in pieces if p.layer == "self" and p.length(chain) is not None and p.role != "guide"]
    return tuple(p for p in with_length if p.role in _ROLES[chain]) or tuple(with_length[:1])


def chain_length(
    chain: Chain, pieces: Sequence[Piece], seam_allowance: Fraction | None, scale: Fraction = Fraction(1)
) -> Fraction | None:
    """The net length of a chain of pieces laid end to end, exact cm; None where none of them has one.

    Raises:
        PlanError: a piece's length cannot be told.
    """
    found = [(piece, along) for piece in pieces if (along := piece.length(chain)) is not None]
    if not found:
        return None
    own = [exact(p.seam_allowance) if p.seam_allowance is not None else seam_allowance for p, _ in found]
    nets = [net_length(along, a, scale, piece.name) for (piece, along), a in zip(found, own, strict=True)]
    return sum(nets, Fraction(0))


def length_change(
    chain: Chain,
    wanted: Fraction | None,
    ease: Fraction = Fraction(0),
    *,
    pieces_cm: Fraction | None = None,
    body_chart_cm: Fraction | None = None,
    finished_cm: Fraction | None = None,
) -> LengthChange | None:
    """The change of a chain: from its pieces where they are measured, else from a chart; None where nothing says.

    Args:
        chain: which.
        wanted: the body's length, or the finished length she wants, exact cm.
        ease: length ease on top; a body chart's length has none and is compared body to body.
        pieces_cm: the net length of the pieces.
        body_chart_cm: the body chart's length at the size that is cut.
        finished_cm: the finished chart's length there.
    """
    if wanted is None:
        return None
    if pieces_cm is not None:
        return LengthChange(chain, wanted + ease - pieces_cm, "pieces", wanted + ease, pieces_cm)
    if body_chart_cm is not None:
        return LengthChange(chain, wanted - body_chart_cm, "body_chart", wanted, body_chart_cm)
    if finished_cm is not None:
        return LengthChange(chain, wanted + ease - finished_cm, "finished_chart", wanted + ease, finished_cm)
    return None


def own_change(chain: Chain, amount: Fraction) -> LengthChange:
    """A change of the amount that she states herself."""
    return LengthChange(chain, amount, "own")


def line_levels(piece: Piece, chain: Chain) -> tuple[Level, ...]:
    """Where the line of a piece lies for a chain: between the two levels, or at the one, that it crosses."""
    return next((levels for levels in _LINE_AT[chain] if piece.crosses(*levels)), ())


def place_change(
    change: LengthChange, pieces: Sequence[Piece], chosen: str = "", levels: tuple[Level, ...] = ()
) -> LengthPlan:
    """Put a change into a piece: the one she picks, else the chain's first with a line; and list what must follow.

    Every piece that crosses the same levels gets the same: facings, guides, linings, plackets too.

    Args:
        change: how much.
        pieces: all pieces of the pattern.
        chosen: the id of the piece that takes it, empty for the usual one.
        levels: the line's levels, empty for the usual ones of that piece.

    Raises:
        PlanError: there is no such piece, or no piece to take the change.
    """
    piece = _taking(change.chain, pieces, chosen)
    where = levels or line_levels(piece, change.chain)
    if not where:
        name = CHAIN_NAMES[change.chain]
        raise PlanError(f"“{piece.name}” crosses no level of the {name}, so nothing can go in there; tick its levels.")
    return LengthPlan(change, piece.id, where, tuple(p.id for p in beside(piece, pieces, where)))


def beside(piece: Piece, pieces: Sequence[Piece], levels: Sequence[Level]) -> tuple[Piece, ...]:
    """The other pieces that cross the same levels, of every layer, in the order of the list.

    At a single level those that lie at it alone, as the other parts of a band do, or pass through it: what only ends
    there, as a bodice does at the waist, is joined to the changed piece and stays as it is.
    """
    arm = _on_arm(piece)
    others = [p for p in pieces if p.id != piece.id and p.crosses(*levels) and _on_arm(p) == arm]
    return tuple(p for p in others if len(levels) > 1 or _passes(p, levels[0]))


def _on_arm(piece: Piece) -> bool:
    return "sleeve" in piece.levels or "wrist" in piece.levels


def _passes(piece: Piece, level: Level) -> bool:
    """Whether a piece that crosses a level lies at it alone or goes on both ways; at an end all that reach it do."""
    at = LEVEL_ORDER.index(level)
    heights = [LEVEL_ORDER.index(one) for one in piece.levels]
    return level in _ENDS or len(heights) == 1 or min(heights) < at < max(heights)


def _taking(chain: Chain, pieces: Sequence[Piece], chosen: str) -> Piece:
    if chosen:
        found = next((p for p in pieces if p.id == chosen), None)
        if found is None:
            raise PlanError("The piece that was to take the change is no longer in the list; pick another.")
        return found
    usual = [p for p in pieces if p.layer == "self" and p.role in _ROLES[chain] and line_levels(p, chain)]
    if not usual:
        raise PlanError(f"No piece of the {CHAIN_NAMES[chain]} is listed; add it on the Pattern page first.")
    return min(usual, key=lambda p: (not p.line, _LINE_AT[chain].index(line_levels(p, chain))))
