"""From a choice about a length to the change it comes to."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import TYPE_CHECKING

import numpy as np

from sizekeeper.core.align import Run
from sizekeeper.core.flat import exact
from sizekeeper.core.length import exactly
from sizekeeper.core.lengths import BODY_LENGTH, chain_length, chain_pieces, length_change, own_change
from sizekeeper.core.piece import Pieces
from sizekeeper.core.print_scale import print_scale
from sizekeeper.core.result import BodyFigure
from sizekeeper.core.run import along

if TYPE_CHECKING:
    from sizekeeper.core.align import Figures
    from sizekeeper.core.lengths import LengthChange
    from sizekeeper.core.make import LengthChoice
    from sizekeeper.core.piece import Piece


@dataclass(frozen=True, slots=True)
class Cut:
    """What lengths are judged against: the body, the charts along the run, the place that is cut, the paper.

    `position` is the place whose lengths are cut; `seam_allowance` the pattern's, exact cm; `growth` what a child is
    to grow into, exact cm, added to every chain.
    """

    body: Mapping[str, BodyFigure]
    run: Run
    position: float
    pieces: Pieces
    seam_allowance: Fraction | None = None
    growth: Fraction = Fraction(0)


def change_of(choice: LengthChoice, cut: Cut) -> LengthChange | None:
    """The change a choice comes to; None where neither she nor the pieces nor the charts say enough.

    What a child is to grow into is added even where nothing says how long it is without.

    Raises:
        PlanError: a piece's net length cannot be told.
    """
    if choice.amount is not None:
        return own_change(choice.chain, choice.amount.exact_cm)
    measure = BODY_LENGTH[choice.chain]
    her = cut.body.get(measure)
    wanted = choice.wanted.exact_cm if choice.wanted is not None else exactly(her.cm) if her is not None else None
    found = length_change(
        choice.chain,
        wanted,
        exact(choice.ease),
        pieces_cm=_pieces_cm(choice, cut),
        body_chart_cm=None if choice.wanted is not None else chart_length(cut.run.body.get(measure), cut.position),
        finished_cm=chart_length(cut.run.finished.get(measure), cut.position),
    )
    if found is None:
        return own_change(choice.chain, cut.growth) if cut.growth else None
    return replace(found, change=found.change + cut.growth)


def chart_length(figures: Figures | None, position: float) -> Fraction | None:
    """A chart's length at a position, exact cm; None where it gives none there."""
    if figures is None:
        return None
    found = float(along(figures.middle[None, :], np.array([position]))[0, 0])
    return None if math.isnan(found) else exactly(found)


def _pieces_cm(choice: LengthChoice, cut: Cut) -> Fraction | None:
    pieces = cut.pieces.pieces
    chosen: tuple[Piece, ...] = tuple(p for p in pieces if p.id in choice.chain_pieces)
    chosen = chosen or chain_pieces(choice.chain, pieces)
    return chain_length(choice.chain, chosen, cut.seam_allowance, print_scale(cut.pieces.square).factor)
