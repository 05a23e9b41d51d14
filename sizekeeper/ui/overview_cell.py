"""One cell of the grid of everybody and every pattern: the size in short, its marks, and both in words."""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import inf
from typing import TYPE_CHECKING

from sizekeeper import assets
from sizekeeper.core.found import Found
from sizekeeper.core.household import Trouble, TroubleKind, standing_of
from sizekeeper.core.household_words import NOTHING, trouble_words
from sizekeeper.core.notation import CENTIMETRES
from sizekeeper.core.places import short_place
from sizekeeper.core.sentences import headline
from sizekeeper.core.wording import Wording

if TYPE_CHECKING:
    from collections.abc import Mapping

    from sizekeeper.core.result import Fit
    from sizekeeper.ui.fit_source import Missing

MARKS: Mapping[TroubleKind, str] = {
    "too_small": "×",
    "will_not_close": "×",
    "out_of_range": "!",
    "no_single_size": "≠",
    "tied": "±",
    "ease_unknown": "?",
}
"""The mark of what stands in the way; the rest is said in words only."""

LEGEND: Mapping[str, str] = {
    "×": "will not close somewhere",
    "!": "past the chart’s sizes",
    "≠": "no single size fits",
    "±": "another size if the tape is a little off",
    "?": "ease unknown",
}
"""What each mark means, the gravest first."""

SIZES: Mapping[str, str] = {"38–40": "between two sizes", "38/42": "blended, from the top down"}
"""How a size is written that is not one size straight."""


@dataclass(frozen=True, slots=True)
class OverviewCell:
    """The size of one person in one pattern. `position` is its place on the pattern's run, None without a size.

    `headline` is the verdict in words, or why there is none. `view` is the view of the pattern it is the size of and
    `view_said` why that one; both are empty where there is nothing to choose.
    """

    size: str
    marks: str
    headline: str
    position: float | None
    troubles: tuple[Trouble, ...] = ()
    misfit_cm: float | None = None
    view: str = ""
    view_said: str = ""

    @property
    def text(self) -> str:
        """The size and its marks."""
        return f"{self.size} {self.marks}".strip()

    @property
    def gravity(self) -> int:
        """How grave the gravest mark is: 0 without marks, most where there is no size."""
        if self.position is None:
            return len(LEGEND) + 1
        order = list(LEGEND)
        return max((len(order) - order.index(mark) for mark in self.marks), default=0)

    @property
    def worth(self) -> tuple[bool, bool, bool, float]:
        """How well a view fits, the least best: a size that closes before one that does not, known ease first."""
        kinds = {trouble.kind for trouble in self.troubles}
        misfit = inf if self.misfit_cm is None else self.misfit_cm
        return self.position is None, bool(kinds & {"too_small", "will_not_close"}), "ease_unknown" in kinds, misfit

    def said(self, words: Wording) -> str:
        """The whole in words, for a screen reader and the tip."""
        troubles = [trouble_words(trouble, words) for trouble in self.troubles] if self.position is not None else []
        return " ".join(
            [
                *([self.view_said] if self.view_said else []),
                self.headline,
                *(f"{text[:1].upper()}{text[1:]}." for text in troubles),
            ]
        )


def best_view(cells: Mapping[str, OverviewCell], names: Mapping[str, str]) -> OverviewCell:
    """Of a pattern's views the one that fits best, the first of those that fit alike.

    Args:
        cells: the cell of each view, at least one.
        names: what the views are called, empty where there is nothing to choose.
    """
    view, cell = min(cells.items(), key=lambda one: one[1].worth)
    if not names or cell.position is None:
        return replace(cell, view=view)
    said = f"{names[view]} fits best of {len(names)} choices." if len(names) > 1 else f"{names[view]}."
    return replace(cell, view=view, view_said=said)


def cell_of(found: Found | Missing) -> OverviewCell:
    """The cell of a comparison, or of what is missing first."""
    if not isinstance(found, Found):
        return OverviewCell(NOTHING, "", found.sentence, None)
    if found.fit is None:
        return OverviewCell(NOTHING, "", found.problem, None)
    standing = standing_of(found)
    here = {MARKS[trouble.kind] for trouble in standing.troubles if trouble.kind in MARKS}
    return OverviewCell(
        _size(found.fit),
        "".join(mark for mark in LEGEND if mark in here),
        headline(found.fit, Wording(CENTIMETRES, assets.measures().name)),
        found.fit.verdict.position,
        standing.troubles,
        standing.misfit_cm,
    )


def _size(fit: Fit) -> str:
    """What to cut: `40`, between sizes `38–40`, graded from the top down `38/42`."""
    blended = fit.verdict.kind == "blend" and fit.blend is not None
    places = fit.blend.positions.values() if blended and fit.blend is not None else [fit.verdict.position]
    return "/".join(dict.fromkeys(short_place(position, fit.labels)[0] for position in places))
