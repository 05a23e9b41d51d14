"""Pieces measured on the paper, written in one line, for tests."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from sizekeeper.core.length import CM_PER
from sizekeeper.core.notation import parse_length
from sizekeeper.core.piece import Across, Along, Piece, Pieces

if TYPE_CHECKING:
    from sizekeeper.core.length import Length
    from sizekeeper.core.piece import Chain, Layer, Level, PieceRole

INCH = CM_PER["in"]


def inches(text: str) -> Fraction:
    """An amount in inches as exact cm: `inches("2 1/8")`, negative with a minus in front."""
    return parse_length(text, "in").exact_cm


def cm(*figures: int) -> tuple[Fraction, ...]:
    """Whole centimetres as exact figures."""
    return tuple(map(Fraction, figures))


def long(text: str) -> Length:
    """A length with its unit written."""
    return parse_length(text)


def piece(name: str, levels: str = "", role: PieceRole = "other", layer: Layer = "self", **more: object) -> Piece:
    """A piece whose id is its name: `piece("Front", "bust waist", "front", on_fold=True)`."""
    crossed: tuple[Level, ...] = tuple(levels.split())  # type: ignore[arg-type]  # tests name levels as words
    return Piece(name, name, role=role, layer=layer, levels=crossed, **more)  # type: ignore[arg-type]  # as given


def pieces(*listed: Piece) -> Pieces:
    """A pattern's list of pieces."""
    return Pieces("pieces", "pattern", listed)


def along(chain: Chain, text: str, allowances: int = 0, **more: object) -> tuple[Along, ...]:
    """One length along the grain."""
    return (Along(chain, long(text), allowances, **more),)  # type: ignore[arg-type]  # as given


def across(level: Level, text: str, allowances: int = 0, **more: object) -> tuple[Across, ...]:
    """One width at a level."""
    return (Across(level, long(text), allowances, **more),)  # type: ignore[arg-type]  # as given
