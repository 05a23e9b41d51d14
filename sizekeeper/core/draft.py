"""How one pattern was drafted, read off its charts: ease by size, steps from size to size, proportions of the body.

The figures are those of the envelope: the print scale of somebody's own paper says nothing of how a house drafts.
Figures that are not printed are left out rather than filled in.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

import numpy as np
from numpy.typing import NDArray

from sizekeeper.core.align import lay_out
from sizekeeper.core.measure import REGION_ORDER
from sizekeeper.core.preference import Garment

if TYPE_CHECKING:
    from sizekeeper.core.align import Figures
    from sizekeeper.core.chart import Chart
    from sizekeeper.core.pattern import Pattern

Topic = Literal["ease", "body_step", "garment_step", "proportion"]
TOPICS: tuple[Topic, ...] = ("ease", "body_step", "garment_step", "proportion")
"""What can be compared: finished minus body chart; growth of either chart from one size to the next; the body."""

PROPORTIONS: Mapping[str, tuple[str, str]] = {
    "bust_waist": ("bust", "waist"),
    "waist_hip": ("hip", "waist"),
    "high_bust_bust": ("bust", "high_bust"),
    "back_waist_length": ("back_waist_length", ""),
    "height": ("height", ""),
}
"""Each proportion as one body measure less another, or as a measure by itself."""

Row = NDArray[np.float64]
"""One figure for each size of a pattern, cm; NaN where it is not given."""


@dataclass(frozen=True)
class Draft:
    """What one pattern's charts say, along its sizes.

    `envelope` holds what the envelope says for all sizes at once: the height, and the difference from high bust to
    bust. `doubtful` are measures left out because they may be printed as half widths.
    """

    title: str
    garment: Garment
    labels: tuple[str, ...]
    body: Mapping[str, Row]
    finished: Mapping[str, Row]
    envelope: Mapping[str, float]
    doubtful: tuple[str, ...] = ()


def draft_of(pattern: Pattern, body: Chart | None, finished: Chart | None, title: str = "") -> Draft:
    """A pattern's figures along the sizes of its body chart, or of its finished chart where it has no body chart.

    Args:
        pattern: the pattern.
        body: its body chart, as printed.
        finished: its finished measurements, as printed.
        title: what to call it; its own title where none is given.
    """
    run = lay_out(body, finished, by_body=body is not None)
    said = {"height": pattern.drafted_height, "high_bust_bust": pattern.drafted_difference}
    both = (run.body, run.finished)
    doubtful = {m for figures in both for m, one in figures.items() if one.doubtful}
    return Draft(
        title or pattern.title,
        pattern.garment,
        run.labels,
        _given(run.body),
        _given(run.finished),
        {subject: length.cm for subject, length in said.items() if length is not None},
        tuple(sorted(doubtful)),
    )


def _given(figures: Mapping[str, Figures]) -> dict[str, Row]:
    """The printed figures, the middle of each range; nothing where one was filled in or may be a half width."""
    return {m: np.where(one.filled, np.nan, one.middle) for m, one in figures.items() if not one.doubtful}


def figures(draft: Draft, topic: Topic) -> dict[str, Row]:
    """The figures of a topic by region or proportion, from the top of the body down; cm along the draft's sizes.

    Ease is the finished figure less the body chart's. A step stands at the size stepped to; the first size has none.
    """
    if topic == "ease":
        both = [m for m in REGION_ORDER if m in draft.body and m in draft.finished]
        found = {m: draft.finished[m] - draft.body[m] for m in both}
    elif topic == "proportion":
        found = {subject: _proportion(draft, subject) for subject in PROPORTIONS}
    else:
        chart = draft.body if topic == "body_step" else draft.finished
        found = {m: np.diff(chart[m], prepend=np.nan) for m in REGION_ORDER if m in chart}
    return {subject: row for subject, row in found.items() if not np.isnan(row).all()}


def _proportion(draft: Draft, subject: str) -> Row:
    """A proportion at each size; where the chart has none, what the envelope says for all sizes."""
    larger, smaller = PROPORTIONS[subject]
    nothing = np.full(len(draft.labels), np.nan)
    row = draft.body.get(larger, nothing) - (draft.body.get(smaller, nothing) if smaller else 0.0)
    if np.isnan(row).all() and subject in draft.envelope:
        return np.full(len(draft.labels), draft.envelope[subject])
    return row
