"""Which pieces of a plan need more than tracing."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sizekeeper.core.piece import LEVEL_ORDER

if TYPE_CHECKING:
    from collections.abc import Mapping

    from sizekeeper.core.piece import Level, Piece, Pieces
    from sizekeeper.core.plan import Plan

_UNGRADED = ("pocket", "guide")
"""Pieces that are usually the same for all sizes (common practice, no source)."""
_HEIGHT_OF: dict[str, Level] = {
    "bust": "bust", "waist": "waist", "high_hip": "high_hip", "hip": "hip", "thigh": "thigh", "calf": "knee",
    "upper_arm": "sleeve", "wrist": "wrist", "across_back": "neck",
}  # fmt: skip
"""The height at, or just above which, a region lies."""
_ARM: frozenset[Level] = frozenset({"sleeve", "wrist"})


def touched(plan: Plan, pieces: Pieces) -> tuple[str, ...]:
    """The ids of the pieces that need more than tracing in a plan, of every layer, in the order of the list."""
    if plan.kind == "bust" or plan.bust is not None:
        return tuple(p.id for p in pieces.pieces if p.role in ("front", "facing") and p.crosses("bust"))
    at = positions_at(plan.levels or {"bust": plan.position})
    return tuple(p.id for p in pieces.pieces if p.role not in _UNGRADED and _redrawn(p, at))


def positions_at(levels: Mapping[str, float]) -> dict[Level, float]:
    """The position at every height: that of the last level above it, of the first above all; the arm as the top."""
    first = next(iter(levels.values()))
    out: dict[Level, float] = {}
    at = first
    for level in LEVEL_ORDER:
        at = levels.get(level, at)
        out[level] = first if level in _ARM else at
    return out


def place_of(measure: str, levels: Mapping[str, float]) -> float:
    """The position at which a region of a blended plan is cut, also where the region is no level of its own.

    A hip that hangs free is traced in the size of the last level above it, the arm and the back in that of the first.
    """
    return levels[measure] if measure in levels else positions_at(levels)[_HEIGHT_OF[measure]]


def _redrawn(piece: Piece, at: Mapping[Level, float]) -> bool:
    found = {at[level] for level in piece.levels}
    return len(found) > 1 or any(position != math.floor(position) for position in found)
