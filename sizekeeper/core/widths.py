"""A change of width at a level, spread over the pieces that go round it.

D = sum of n_p e_p y_p: a piece that counts n_p times round the body (cut twice or on the fold: twice) and is changed at
e_p edges takes y_p at each. Spreading over all cut edges alike is what New Mexico State University Extension C-227
teaches: over the side seams of front and back a quarter each. All amounts are exact; positive is wider.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING

from sizekeeper.core.length import CM_PER
from sizekeeper.core.notation import Notation, rounded
from sizekeeper.errors import PlanError

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from sizekeeper.core.make import Sharing
    from sizekeeper.core.piece import Level, Piece

MILLIMETRES = Notation("cm", Fraction(1, 10))
SIXTEENTHS = Notation("in", Fraction(1, 16))
"""The steps a share is rounded to, as it is drawn."""


@dataclass(frozen=True, slots=True)
class Share:
    """What one piece takes of a change: `per_edge` at each of its `edges`, counted `times` round; exact cm."""

    piece: str
    times: int
    edges: int
    per_edge: Fraction

    @property
    def on_piece(self) -> Fraction:
        """How much wider the piece on the paper becomes: the half piece where it lies on the fold."""
        return self.per_edge * self.edges

    @property
    def around(self) -> Fraction:
        """What the piece adds all round."""
        return self.on_piece * self.times


def spread(
    change: Fraction,
    pieces: Sequence[Piece],
    level: Level,
    *,
    notation: Notation = MILLIMETRES,
    edges: Mapping[str, int] | None = None,
    sharing: Sharing = "equal",
    net_widths: Mapping[str, Fraction] | None = None,
) -> tuple[Share, ...]:
    """Spread a change over pieces; every share but the last is rounded, the last takes the exact rest.

    Args:
        change: all round, exact cm; negative is narrower.
        pieces: those it is spread over, of the self layer.
        level: where they are changed.
        notation: what shares are rounded to.
        edges: at how many edges each piece is changed, by id; 1 where not given.
        sharing: every edge alike, or in proportion to the pieces' net widths.
        net_widths: the net width of each piece by id, exact cm; needed to share by width.

    Raises:
        PlanError: there is nothing to spread over, a piece does not go round the body, or a width is missing.
    """
    counts = [(p, _times(p, level), _edges(p, edges or {})) for p in pieces]
    if not counts:
        raise PlanError("Tick at least one piece for the change to go into.")
    whole = _whole_shares(change, counts, sharing, net_widths or {})
    shares: list[Share] = []
    rest = change
    for number, (piece, times, edge) in enumerate(counts):
        last = number == len(counts) - 1
        per_edge = rest / (times * edge) if last else rounded(whole[number], notation) * CM_PER[notation.unit]
        shares.append(Share(piece.id, times, edge, per_edge))
        rest -= shares[-1].around
    return tuple(shares)


def _whole_shares(
    change: Fraction, counts: Sequence[tuple[Piece, int, int]], sharing: Sharing, net: Mapping[str, Fraction]
) -> list[Fraction]:
    """The share of each edge before rounding."""
    if sharing == "equal":
        return [change / sum(times * edge for _, times, edge in counts)] * len(counts)
    around = sum(times * _net(piece, net) for piece, times, _ in counts)
    return [change * _net(piece, net) / around / edge for piece, _, edge in counts]


def _times(piece: Piece, level: Level) -> int:
    times = piece.times(level)
    if times < 1:
        raise PlanError(f"“{piece.name}” does not go round the body, so it can only follow a change.")
    return times


def _edges(piece: Piece, edges: Mapping[str, int]) -> int:
    found = edges.get(piece.id, 1)
    if found < 1:
        raise PlanError(f"“{piece.name}” needs at least one edge to be changed at.")
    return found


def _net(piece: Piece, net: Mapping[str, Fraction]) -> Fraction:
    found = net.get(piece.id)
    if found is None or found <= 0:
        raise PlanError(f"Measure the width of “{piece.name}” first, or share the change equally.")
    return found


def gather_ratio(gathered: Fraction, seam: Fraction) -> Fraction:
    """How many times as long a gathered edge is as the seam it joins; both net, all round.

    Raises:
        PlanError: the seam has no length left.
    """
    if seam <= 0:
        raise PlanError("The seam that the gathers join has no length left.")
    return gathered / seam


def gather_after(
    gathered: Fraction, seam: Fraction, change: Fraction, taken: Fraction = Fraction(0)
) -> tuple[Fraction, Fraction]:
    """The gather ratio before a change and after it.

    Args:
        gathered: the gathered edge, net, all round; exact cm.
        seam: the seam it joins, likewise.
        change: by how much the seam becomes longer, all round; negative is shorter.
        taken: by how much the gathered edge itself becomes longer, likewise; 0 where it stays as it is.

    Raises:
        PlanError: the seam or the gathered edge has no length left.
    """
    if gathered + taken <= 0:
        raise PlanError("The gathered edge has no length left.")
    return gather_ratio(gathered, seam), gather_ratio(gathered + taken, seam + change)
