"""Which other pieces must follow when some are made wider or narrower at a level."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from collections.abc import Iterable

    from sizekeeper.core.piece import Level, Piece, PieceRole

FollowReason = Literal["layer", "joins", "absorbs", "cap", "armhole"]
"""Another layer of the same part; joined to it at the level; gathered there and so takes it up; the sleeve cap that
must still meet the armhole; the armhole that must still meet the sleeve."""

_RINGS: tuple[frozenset[PieceRole], ...] = (
    frozenset({"front", "back", "side"}),
    frozenset({"skirt_front", "skirt_back"}),
    frozenset({"leg_front", "leg_back"}),
)
"""Pieces that lie beside each other round the body: of these some can change and others stay."""


@dataclass(frozen=True, slots=True)
class Follow:
    """A piece that must follow, and why."""

    piece: str
    reason: FollowReason


def follows(changed: Iterable[Piece], pieces: Iterable[Piece], level: Level) -> tuple[Follow, ...]:
    """The pieces that must follow a change of some pieces at a level, in the order of the list.

    Where only gathered edges change, the seam they join stays as it is and the gathers take the change up.

    Args:
        changed: the pieces that take the change.
        pieces: all pieces of the pattern.
        level: where the width changes.
    """
    taken = tuple(changed)
    ids = {piece.id for piece in taken}
    found = [(piece, _reason(piece, taken, level)) for piece in pieces if piece.id not in ids]
    return tuple(Follow(piece.id, reason) for piece, reason in found if reason is not None)


def _reason(piece: Piece, taken: tuple[Piece, ...], level: Level) -> FollowReason | None:
    if piece.role == "sleeve" and level == "bust":
        return "cap"
    if level == "sleeve" and piece.role in ("front", "back", "yoke") and piece.layer == "self":
        return "armhole"
    return None if not piece.crosses(level) or piece.role == "pocket" else _at_level(piece, taken, level)


def _at_level(piece: Piece, taken: tuple[Piece, ...], level: Level) -> FollowReason | None:
    """Why a piece that crosses the level follows there."""
    rings = {ring(one.role) for one in taken}
    if all(one.gathered_at(level) for one in taken):
        return "layer" if piece.layer != "self" and ring(piece.role) in rings else None
    if piece.gathered_at(level):
        return "absorbs"
    if piece.layer != "self":
        same = ring(piece.role) in rings or piece.role == "facing"
        return "layer" if same else "joins"
    return None if ring(piece.role) in rings else "joins"


def ring(role: PieceRole) -> frozenset[PieceRole]:
    """The parts that lie beside a part round the body, itself among them."""
    return next((one for one in _RINGS if role in one), frozenset({role}))
