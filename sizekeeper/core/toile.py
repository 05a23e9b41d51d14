"""The toile: what was found on the body replaces what was printed, and becomes the next change.

ease left = surplus found - amount taken. Changes add up over the rounds, and each round is kept. After a toile nothing
is warned of from the printed figure any more: only what was found on the body tells. All figures are exact cm.

A toile is sewn with what was decided before it, so the printed ease it is compared with reckons in the changes of width
that stood in the worksheet when the round was begun. What was changed later is not in it; nor is anything for a round
that did not note it, and then that is said in words.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING

from sizekeeper.core.flat import exact
from sizekeeper.core.length import exactly
from sizekeeper.core.make import Felt

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from sizekeeper.core.make import Pinned, ToileRound


@dataclass(frozen=True, slots=True)
class ToileState:
    """What the toiles showed at one measure or chain, after all rounds; exact cm, None where nobody measured.

    `printed` is the ease the charts gave before any toile, with what was `altered` before the round in which the
    surplus was first `found` on the body: 0 where nothing was, None where it was not noted and so is not in it. `taken`
    adds up what was taken in over all rounds, negative where let out. `left` is the ease that would be left now. `felt`
    is what she felt last. `past_tight` is how far `left` lies below the tight edge, 0 where it does not or none is
    known.
    """

    at: str
    printed: Fraction | None
    found: Fraction | None
    taken: Fraction
    left: Fraction | None
    felt: Felt | None = None
    past_tight: Fraction = Fraction(0)
    altered: Fraction | None = Fraction(0)

    @property
    def came_up(self) -> Fraction | None:
        """How much larger than printed it came up; negative smaller. None where either is not known."""
        return None if self.found is None or self.printed is None else self.found - self.printed

    @property
    def change(self) -> Fraction:
        """The change of the pattern: negative narrower, as `widths.spread` takes it."""
        return -self.taken


def toile_state(
    at: str, rounds: Sequence[ToileRound], printed_cm: float | None = None, tight_edge_cm: float | None = None
) -> ToileState | None:
    """What all rounds say of one measure or chain; None where none speaks of it.

    Args:
        at: the measure or chain.
        rounds: the toiles, the first first; a surplus is that of the toile with the changes of the rounds before.
        printed_cm: the ease the charts give at what was cut, without any change.
        tight_edge_cm: the ease below which the region is tight, None where there is none.
    """
    speaking = [(one, pinned) for one in rounds for pinned in one.pinned if pinned.at == at]
    if not speaking:
        return None
    said = [pinned for _, pinned in speaking]
    first, taken, left = _added_up(said)
    altered = altered_before(next((one for one, pinned in speaking if pinned.found is not None), speaking[0][0]), at)
    past = exactly(tight_edge_cm) - left if left is not None and tight_edge_cm is not None else Fraction(0)
    return ToileState(
        at=at,
        printed=None if printed_cm is None else exactly(printed_cm) + (altered or Fraction(0)),
        found=first,
        taken=taken,
        left=left,
        felt=next((pinned.felt for pinned in reversed(said) if pinned.felt is not None), None),
        past_tight=max(Fraction(0), past),
        altered=altered,
    )


def altered_before(one: ToileRound, at: str) -> Fraction | None:
    """How much wider a measure was made before a round, exact cm, negative narrower; None where nobody noted it."""
    return None if one.altered is None else exact(one.altered.get(at))


def _added_up(said: Iterable[Pinned]) -> tuple[Fraction | None, Fraction, Fraction | None]:
    """The surplus of the toile as first cut, all that was taken, and the ease left; a new surplus counts anew."""
    first: Fraction | None = None
    left: Fraction | None = None
    taken = Fraction(0)
    for pinned in said:
        if pinned.found is not None:
            left = pinned.found.exact_cm
            first = left + taken if first is None else first
        taken += exact(pinned.taken)
        left = None if left is None else left - exact(pinned.taken)
    return first, taken, left


def toile_states(
    rounds: Sequence[ToileRound],
    printed_cm: Mapping[str, float] | None = None,
    tight_edges_cm: Mapping[str, float] | None = None,
) -> tuple[ToileState, ...]:
    """What all rounds say, for every measure and chain they speak of, in the order first spoken of."""
    places = dict.fromkeys(pinned.at for one in rounds for pinned in one.pinned)
    found = [toile_state(at, rounds, (printed_cm or {}).get(at), (tight_edges_cm or {}).get(at)) for at in places]
    return tuple(state for state in found if state is not None)
