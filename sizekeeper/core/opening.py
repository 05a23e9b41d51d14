"""Getting in: whether an opening lets pass what must go through it.

An opening without fastening passes its girth, stretched; a slit, zip or placket adds twice its length, once for each
side; elastic passes its stretched-out girth, but never more than the edge it is sewn to (common practice, no source).
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sizekeeper.core.ease import SAME
from sizekeeper.core.piece import Passing

if TYPE_CHECKING:
    from collections.abc import Mapping

    from sizekeeper.core.piece import Opening

MEASURE_OF: dict[Passing, str] = {
    "head": "head",
    "shoulders": "shoulders",
    "hips": "hip",
    "hand": "hand",
    "heel": "heel",
}
"""The body measure of what must pass. Round both shoulders is no measure of a person's; the make keeps it."""


@dataclass(frozen=True, slots=True)
class Passage:
    """Whether one part of the body passes: what it needs and what the opening gives, cm; None where not known."""

    opening: str
    passing: Passing
    needs_cm: float | None
    gives_cm: float | None

    @property
    def short_cm(self) -> float | None:
        """How much is lacking; 0 where it passes, None where it cannot be told."""
        if self.needs_cm is None or self.gives_cm is None:
            return None
        return max(0.0, self.needs_cm - self.gives_cm) if self.needs_cm > self.gives_cm + SAME else 0.0


def gives_cm(opening: Opening, finished_cm: float | None, stretch: float) -> float | None:
    """The girth an opening passes, cm; None where its edge is not known.

    Args:
        opening: the opening.
        finished_cm: the edge's girth in the finished chart at the size that is cut, used where none is typed.
        stretch: the fabric's share.
    """
    around = opening.around.cm if opening.around is not None else finished_cm
    if around is None:
        return None
    passes = around * (1 + stretch)
    if opening.elastic is not None:
        passes = min(passes, opening.elastic.cm)
    return passes + (2 * opening.fastening.cm if opening.fastening is not None else 0.0)


def passages(
    openings: tuple[Opening, ...],
    body: Mapping[str, float],
    finished: Mapping[str, float],
    stretch: float = 0.0,
    *,
    child: bool = False,
) -> tuple[Passage, ...]:
    """Every part of the body that must pass an opening, as listed; for a child the head comes first.

    A child's head is large for its neck, so its neck openings are looked at before all else (common practice).

    Args:
        openings: the openings of the pattern.
        body: her figures by measure, cm.
        finished: the finished figures at the size that is cut, by measure, cm.
        stretch: the fabric's share.
        child: whether it is for a child.
    """
    found = [
        Passage(o.name, p, body.get(MEASURE_OF[p]), gives_cm(o, finished.get(o.measure), stretch))
        for o in openings
        for p in o.must_pass
    ]
    return tuple(sorted(found, key=lambda passage: passage.passing != "head")) if child else tuple(found)
