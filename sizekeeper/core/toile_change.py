"""What a toile showed, turned into the next change, with the same machinery as every other."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING, cast, get_args

from sizekeeper.core.flat import MEASURE_AT
from sizekeeper.core.length import CM_PER, Length
from sizekeeper.core.make import LengthChoice, WidthChoice
from sizekeeper.core.piece import Chain, Level

if TYPE_CHECKING:
    from collections.abc import Iterable

    from sizekeeper.core.length import Unit
    from sizekeeper.core.toile import ToileState

TOILE = "toile"
"""The reason of a change of width that a toile asked for; its amount follows the toile."""
_LEVEL_OF = {measure: level for level, measure in MEASURE_AT.items()}


def level_of(measure: str) -> Level | None:
    """The level at which a measure is taken on the pieces, None for one that is none."""
    found = _LEVEL_OF.get(measure, measure)
    return cast("Level", found) if found in get_args(Level) else None


def altered_by(choices: Iterable[WidthChoice], unit: Unit) -> dict[str, Length]:
    """What some changes of width come to at each measure, all round; without those that toiles asked for.

    Args:
        choices: the changes that stand in the worksheet.
        unit: the unit the amounts are kept in.
    """
    added: dict[str, Fraction] = {}
    for choice in choices:
        if choice.reason != TOILE:
            measure = MEASURE_AT.get(choice.level, choice.level)
            added[measure] = added.get(measure, Fraction(0)) + choice.amount.exact_cm
    return {measure: Length(cm / CM_PER[unit], unit) for measure, cm in added.items() if cm}


def next_change(state: ToileState, unit: Unit) -> WidthChoice | LengthChoice | None:
    """The change of the pattern after all rounds: of a width at a level, or of the length of a chain.

    Args:
        state: what the toiles showed at one place.
        unit: the unit the amount is kept in.

    Returns:
        The choice, to be spread over the usual pieces until she ticks others; None where nothing was taken in or let
        out, or the place is neither a level nor a chain.
    """
    amount = Length(state.change / CM_PER[unit], unit)
    if not amount.value:
        return None
    if state.at in get_args(Chain):
        return LengthChoice(cast("Chain", state.at), amount=amount)
    level = level_of(state.at)
    return None if level is None else WidthChoice(level, amount, reason=TOILE)
