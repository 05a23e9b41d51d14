"""Flat pieces: measured on the paper, summed up to a finished girth for patterns that print none."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING

from sizekeeper.core.chart import Cell, ChartRow
from sizekeeper.core.follows import ring
from sizekeeper.core.length import CM_PER, Length
from sizekeeper.core.piece import Level
from sizekeeper.errors import PlanError

if TYPE_CHECKING:
    from collections.abc import Iterable

    from sizekeeper.core.chart import Chart
    from sizekeeper.core.piece import Across, Piece, PieceRole

_ZERO = Fraction(0)
MEASURE_AT: dict[str, str] = {"sleeve": "upper_arm"}
"""The measure of the finished chart that a girth at a level is, where it has another name."""


@dataclass(frozen=True, slots=True)
class Girth:
    """A finished girth summed up from pieces, exact cm; `of` are the pieces' ids and how often each goes round."""

    level: Level
    cm: Fraction
    of: tuple[tuple[str, int], ...]


def exact(length: Length | None) -> Fraction:
    """A length in exact cm, 0 for none."""
    return length.exact_cm if length is not None else _ZERO


def net_width(across: Across, allowance: Fraction | None, name: str = "The piece") -> Fraction:
    """The width less allowances, dart and pleat intake and the overlap past the centre, exact cm.

    Args:
        across: what was measured on the paper.
        allowance: the seam allowance printed on the piece, exact cm; None where it is not known.
        name: what a sentence calls the piece.

    Raises:
        PlanError: the allowance is needed and not known, or more is taken off than there is.
    """
    if across.allowances and allowance is None:
        raise PlanError(f"“{name}” was measured with seam allowances, but the pattern does not say how wide they are.")
    off = across.allowances * (allowance or _ZERO) + exact(across.darts) + exact(across.pleats) + exact(across.overlap)
    net = across.width.exact_cm - off
    if net <= 0:
        raise PlanError(f"“{name}” has no width left at the {_said(across.level)} when all is taken off.")
    return net


def girth(pieces: Iterable[Piece], level: Level, seam_allowance: Fraction | None) -> Girth:
    """The finished girth at a level: the sum of net widths times how often each goes round.

    Bodice, band and skirt meet at the waist and each goes round it: the first of these parts that is measured there is
    taken. A gathered edge is longer than the seam it joins and never tells the girth.

    Args:
        pieces: all pieces of the pattern.
        level: where.
        seam_allowance: the pattern's, exact cm, for pieces that have none of their own.

    Raises:
        PlanError: a piece of that part was not measured there, or none was.
    """
    part = _measured_part(pieces, level)
    total = _ZERO
    for piece in part:
        across = piece.width(level)
        if across is None:
            raise PlanError(f"“{piece.name}” goes round the {_said(level)}; measure its width there first.")
        own = exact(piece.seam_allowance) if piece.seam_allowance is not None else seam_allowance
        total += net_width(across, own, piece.name) * piece.times(level)
    return Girth(level, total, tuple((piece.id, piece.times(level)) for piece in part))


def _measured_part(pieces: Iterable[Piece], level: Level) -> list[Piece]:
    """The pieces beside each other round a level of which one at least is measured there, ungathered."""
    parts: dict[frozenset[PieceRole], list[Piece]] = {}
    for piece in pieces:
        if piece.crosses(level) and piece.times(level):
            parts.setdefault(ring(piece.role), []).append(piece)
    if not parts:
        raise PlanError(f"No piece goes round the {_said(level)}.")
    for part in parts.values():
        widths = [across for piece in part if (across := piece.width(level)) is not None]
        if widths and not any(across.gathered for across in widths):
            return part
    raise PlanError(f"No piece is measured at the {_said(level)} where it lies flat.")


def _said(level: Level) -> str:
    return level.replace("_", " ")


def measured_row(chart: Chart, found: Girth, size: int, text: str) -> ChartRow:
    """The row of a finished chart with a measured girth in it, marked as measured.

    Figures of other sizes that are in the row stay. A text is what she sees in the cell, in the chart's unit.

    Args:
        chart: the finished chart.
        found: the girth summed up from pieces of this size.
        size: the column of the size whose lines were measured.
        text: the figure as it is to be written.
    """
    measure = MEASURE_AT.get(found.level, found.level)
    row = chart.row(measure) or ChartRow(measure, tuple(Cell() for _ in chart.sizes))
    length = Length(found.cm / CM_PER[chart.unit], chart.unit, text)
    cells = [Cell(text, length, length) if at == size else cell for at, cell in enumerate(row.cells)]
    return ChartRow(measure, tuple(cells), row.label, measured=True)
