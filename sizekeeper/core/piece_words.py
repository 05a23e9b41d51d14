"""What pieces, their heights and lengths are called on the screen and by a screen reader."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sizekeeper.core.notation import show, spoken

if TYPE_CHECKING:
    from sizekeeper.core.notation import Notation
    from sizekeeper.core.piece import Across, Along, Chain, Layer, Level, Passing, Piece, PieceRole

LEVEL_NAMES: dict[Level, str] = {
    "neck": "neck", "bust": "bust", "waist": "waist", "high_hip": "high hip", "hip": "hip", "thigh": "thigh",
    "knee": "knee", "hem": "hem", "sleeve": "upper arm", "wrist": "wrist",
}  # fmt: skip
CHAIN_NAMES: dict[Chain, str] = {
    "back_waist": "neck to waist",
    "sleeve": "sleeve",
    "skirt": "waist to hem",
    "inseam": "inside leg",
    "rise": "rise",
}
ROLE_NAMES: dict[PieceRole, str] = {
    "front": "bodice front", "back": "bodice back", "side": "side panel", "yoke": "yoke", "band": "midriff or hip band",
    "waistband": "waistband", "skirt_front": "skirt front", "skirt_back": "skirt back", "leg_front": "trouser front",
    "leg_back": "trouser back", "sleeve": "sleeve", "cuff": "cuff", "collar": "collar", "facing": "facing",
    "placket": "placket", "pocket": "pocket", "guide": "guide (paper only)", "other": "something else",
}  # fmt: skip
LAYER_NAMES: dict[Layer, str] = {
    "self": "self", "lining": "lining", "underlining": "underlining", "interfacing": "interfacing",
}  # fmt: skip
PASSING_NAMES: dict[Passing, str] = {
    "head": "head", "shoulders": "shoulders", "hips": "hips", "hand": "hand", "heel": "heel",
}  # fmt: skip


def cut_words(piece: Piece) -> str:
    """How a piece is cut: `cut 2`, `cut 1 on the fold, lining`."""
    words = f"cut {piece.cut}{' on the fold' if piece.on_fold else ''}"
    return words if piece.layer == "self" else f"{words}, {LAYER_NAMES[piece.layer]}"


def view_words(view: str) -> str:
    """Which view a piece is cut for: `view B`; empty for all views."""
    return f"view {view}" if view else ""


def width_words(across: Across, notation: Notation) -> str:
    """The width at a level as it is written beside the drawing."""
    text = across.width.text or show(across.width.exact_cm, notation)
    return with_unit(text, across.width.unit)


def length_words(along: Along, notation: Notation) -> str:
    """The length in a chain as it is written beside the drawing."""
    text = along.length.text or show(along.length.exact_cm, notation)
    return with_unit(text, along.length.unit)


def with_unit(text: str, unit: str) -> str:
    """A figure as typed, with its unit behind it where none was typed."""
    return f"{text} {unit}" if text and (text[-1].isdigit() or text[-1] in "½¼¾⅛⅜⅝⅞.") else text


def piece_spoken(piece: Piece, notation: Notation) -> str:
    """A piece in words for a screen reader."""
    parts = [f"{piece.name or 'A piece without a name'}, {cut_words(piece)}"]
    if piece.view:
        parts.append(view_words(piece.view))
    if piece.levels:
        parts.append("crosses " + ", ".join(LEVEL_NAMES[level] for level in piece.levels))
    parts += [f"{CHAIN_NAMES[one.chain]} {spoken(one.length.exact_cm, notation)} long" for one in piece.along]
    parts += [f"{LEVEL_NAMES[one.level]} {spoken(one.width.exact_cm, notation)} wide" for one in piece.across]
    if piece.line:
        parts.append("has a lengthen or shorten line")
    return "; ".join(parts)
