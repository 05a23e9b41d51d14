"""Edits of a list of pieces, each from `Pieces` to new `Pieces`, and what a piece's name tells of it."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import TYPE_CHECKING

from sizekeeper.core.piece import LEVEL_ORDER, Across, Along, Chain, Level, Piece, Pieces

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sizekeeper.core.pattern import Pattern
    from sizekeeper.core.piece import Layer, PieceRole

_LAYERS: tuple[tuple[str, Layer], ...] = (
    ("interlining", "underlining"), ("underlining", "underlining"), ("interfacing", "interfacing"),
    ("fusing", "interfacing"), ("lining", "lining"),
)  # fmt: skip
_ROLES: tuple[tuple[str, PieceRole], ...] = (
    ("guide", "guide"), ("facing", "facing"), ("placket", "placket"), ("pocket", "pocket"), ("flap", "pocket"),
    ("waistband", "waistband"), ("waist band", "waistband"), ("neckband", "collar"), ("collar", "collar"),
    ("hood", "other"), ("cuff", "cuff"), ("sleeve", "sleeve"), ("yoke", "yoke"), ("midriff", "band"), ("band", "band"),
    ("side", "side"),
)  # fmt: skip
"""The word of a piece's name that tells what it is, the most telling first."""
_LEVELS: dict[PieceRole, tuple[Level, ...]] = {
    "front": ("neck", "bust", "waist"), "back": ("neck", "bust", "waist"), "side": ("bust", "waist"), "yoke": ("neck",),
    "band": ("waist",), "waistband": ("waist",), "skirt_front": ("waist", "high_hip", "hip", "hem"),
    "skirt_back": ("waist", "high_hip", "hip", "hem"),
    "leg_front": ("waist", "high_hip", "hip", "thigh", "knee", "hem"),
    "leg_back": ("waist", "high_hip", "hip", "thigh", "knee", "hem"), "sleeve": ("sleeve", "hem"), "cuff": ("wrist",),
    "collar": ("neck",), "facing": ("neck",), "placket": (), "pocket": (), "guide": (), "other": (),
}  # fmt: skip
"""The heights a part usually crosses where the garment's starter list has none like it (common practice, no source)."""
CHAINS_OF: dict[PieceRole, tuple[Chain, ...]] = {
    "front": ("back_waist",), "back": ("back_waist",), "side": ("back_waist",), "yoke": ("back_waist",),
    "band": ("back_waist",), "waistband": ("skirt",), "skirt_front": ("skirt",), "skirt_back": ("skirt",),
    "leg_front": ("rise", "inseam"), "leg_back": ("rise", "inseam"), "sleeve": ("sleeve",), "cuff": ("sleeve",),
}  # fmt: skip
"""The lengths that a part is usually measured in."""
_ON_FOLD: frozenset[PieceRole] = frozenset({"waistband", "band"})


def suggested(name: str, garment: str, usual: Sequence[Piece], piece: str) -> Piece:
    """A piece as its name suggests: what it is, how it is cut and the heights it crosses.

    Args:
        name: as typed, like `Back` or `Skirt front lining`.
        garment: the pattern's kind of garment.
        usual: the starter list of that kind, which knows it best.
        piece: the new piece's id.
    """
    clean = " ".join(name.split())
    same = next((one for one in usual if one.name.casefold() == clean.casefold()), None)
    if same is not None:
        return replace(same, id=piece, name=clean)
    role, layer = _role(clean.casefold(), garment), _layer(clean.casefold())
    like = next((one for one in usual if one.role == role and one.layer == "self"), None)
    start = like or Piece("", "", 1 if role in _ON_FOLD else 2, role in _ON_FOLD, role=role, levels=_LEVELS[role])
    own = layer == "self"
    return replace(start, id=piece, name=clean, layer=layer, line=start.line and own, dart=start.dart and own)


def _role(name: str, garment: str) -> PieceRole:
    for word, role in _ROLES:
        if re.search(rf"\b{word}", name):
            return role
    end = "front" if re.search(r"\bfront\b", name) else "back" if re.search(r"\bback\b", name) else ""
    if re.search(r"\b(trouser|leg)", name) or (garment == "trousers" and end):
        return "leg_back" if end == "back" else "leg_front"
    if re.search(r"\bskirt", name) or (garment == "skirt" and end):
        return "skirt_back" if end == "back" else "skirt_front"
    return "back" if end == "back" else "front" if end else "other"


def _layer(name: str) -> Layer:
    return next((layer for word, layer in _LAYERS if word in name), "self")


def with_piece(pieces: Pieces, piece: Piece) -> Pieces:
    """The list with one piece replaced, by its id."""
    return replace(pieces, pieces=tuple(piece if one.id == piece.id else one for one in pieces.pieces))


def with_added(pieces: Pieces, added: Sequence[Piece], after: str = "") -> Pieces:
    """The list with pieces added behind another one, at the end where there is none."""
    at = next((i + 1 for i, one in enumerate(pieces.pieces) if one.id == after), len(pieces.pieces))
    return replace(pieces, pieces=(*pieces.pieces[:at], *added, *pieces.pieces[at:]))


def for_views(pieces: Sequence[Piece], views: Sequence[str]) -> list[Piece]:
    """Pieces as they are in a pattern with these views: one cut for a view that it lacks is cut for all."""
    known = {view.casefold(): view for view in views}
    return [replace(piece, view=known.get(piece.view.casefold(), "")) for piece in pieces]


def without(pieces: Pieces, piece: str) -> Pieces:
    """The list without a piece."""
    return replace(pieces, pieces=tuple(one for one in pieces.pieces if one.id != piece))


def moved(pieces: Pieces, piece: str, step: int) -> Pieces:
    """The list with a piece moved down by so many places, up where negative; not past the ends."""
    order = [one for one in pieces.pieces if one.id != piece]
    at = next((i for i, one in enumerate(pieces.pieces) if one.id == piece), None)
    if at is None:
        return pieces
    order.insert(min(max(at + step, 0), len(order)), pieces.pieces[at])
    return replace(pieces, pieces=tuple(order))


def with_level(piece: Piece, level: Level, *, on: bool) -> Piece:
    """The piece with a height it crosses, or without it and what was measured there."""
    levels = tuple(one for one in LEVEL_ORDER if (one in piece.levels and one != level) or (on and one == level))
    across = piece.across if on else tuple(one for one in piece.across if one.level != level)
    return replace(piece, levels=levels, across=across)


def with_across(piece: Piece, level: Level, across: Across | None) -> Piece:
    """The piece with its width at a level, None for none."""
    others = [one for one in piece.across if one.level != level]
    rows = sorted([*others, *([across] if across else [])], key=lambda one: LEVEL_ORDER.index(one.level))
    return replace(piece, across=tuple(rows))


def with_along(piece: Piece, chain: Chain, along: Along | None) -> Piece:
    """The piece with its length in a chain, None for none; a length that was there keeps its place."""
    rows = [along if one.chain == chain else one for one in piece.along]
    if along is not None and piece.length(chain) is None:
        rows.append(along)
    return replace(piece, along=tuple(one for one in rows if one is not None))


def chains_shown(piece: Piece) -> tuple[Chain, ...]:
    """The lengths to ask for: those usual for such a piece, and those it has."""
    usual = CHAINS_OF.get(piece.role, ())
    return (*usual, *(one.chain for one in piece.along if one.chain not in usual))


def usual_allowances(piece: Piece, pattern: Pattern, *, along: bool) -> int:
    """How many seam allowances a width or a length on the paper usually includes: one edge is the fold or the hem."""
    known = piece.seam_allowance or pattern.seam_allowance
    if known is None or not known.value:
        return 0
    open_end = "hem" in piece.levels if along else piece.on_fold
    return 1 if open_end else 2
