"""How two patterns, or two houses, draft: their figures laid over each other.

Sizes are lined up by a body measure that both charts give, so that what lies above each other is for the same body
whatever its size is called; or by the names of the sizes.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from sizekeeper.core.draft import PROPORTIONS, TOPICS, Draft, Row, Topic, figures
from sizekeeper.core.measure import REGION_ORDER

if TYPE_CHECKING:
    from collections.abc import Sequence


@dataclass(frozen=True, slots=True)
class Point:
    """A figure at one size: where it lies across, and over how many patterns it is the mean; cm.

    `low` and `high` are the least and the greatest of these patterns.
    """

    label: str
    x: float
    cm: float
    low: float
    high: float
    patterns: int = 1


Curve = tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class Panel:
    """One region or proportion of both sides; a side without figures has no points."""

    topic: Topic
    subject: str
    left: Curve
    right: Curve


@dataclass(frozen=True)
class Side:
    """What is compared: one pattern, or all patterns of a house that are of one kind."""

    name: str
    drafts: tuple[Draft, ...]


@dataclass(frozen=True)
class Drafting:
    """Two sides against each other.

    `axis` is the body measure by which sizes are lined up, so that sizes for the same body lie above each other; empty
    where they are lined up by their names, and `labels` then are these in order.
    """

    left: Side
    right: Side
    axis: str
    labels: tuple[str, ...]
    panels: tuple[Panel, ...]

    def of(self, topic: Topic) -> tuple[Panel, ...]:
        """The panels of a topic."""
        return tuple(panel for panel in self.panels if panel.topic == topic)


_AXES = ("bust", "hip", "waist", "height")


def axes(left: Side, right: Side) -> tuple[str, ...]:
    """By what the sizes can be lined up, the best first: body measures that both sides give, and names ("")."""
    trousers = all(draft.garment in ("skirt", "trousers") for draft in (*left.drafts, *right.drafts))
    order = ("hip", "waist", "bust", "height") if trousers else _AXES
    both = [m for m in order if all(any(m in d.body for d in side.drafts) for side in (left, right))]
    shared = set.intersection(*({_key(x) for d in side.drafts for x in d.labels} for side in (left, right)))
    return (*both, "") if shared or not both else tuple(both)


def drafting(left: Side, right: Side, axis: str | None = None) -> Drafting:
    """Compare how two sides draft.

    Args:
        left: the one.
        right: the other.
        axis: by what sizes are lined up, one of `axes`; None for the best.
    """
    possible = axes(left, right)
    chosen = axis if axis in possible else possible[0]
    labels = _merged([draft.labels for side in (left, right) for draft in side.drafts]) if not chosen else ()
    panels = []
    for topic in TOPICS:
        rows = [[figures(draft, topic) for draft in side.drafts] for side in (left, right)]
        known = {subject for side in rows for found in side for subject in found}
        for subject in (s for s in (*REGION_ORDER, *PROPORTIONS) if s in known):
            one, other = (
                _curve(
                    [_laid(d, f[subject], chosen, labels) for d, f in zip(s.drafts, found, strict=True) if subject in f]
                )
                for s, found in zip((left, right), rows, strict=True)
            )
            if one or other:
                panels.append(Panel(topic, subject, one, other))
    return Drafting(left, right, chosen, labels, tuple(panels))


def _key(label: str) -> str:
    return " ".join(label.split()).casefold()


def _merged(runs: Sequence[Sequence[str]]) -> tuple[str, ...]:
    """The names of all runs in one order: a name only one run has goes behind its neighbour there."""
    out: list[str] = []
    for run in runs:
        at = 0
        for label in run:
            known = next((i for i, one in enumerate(out) if _key(one) == _key(label)), None)
            if known is None:
                out.insert(at, label)
                known = at
            at = known + 1
    return tuple(out)


@dataclass(frozen=True)
class _Laid:
    """One pattern's figures in rising order across, without gaps."""

    labels: tuple[str, ...]
    x: Row
    cm: Row


def _laid(draft: Draft, row: Row, axis: str, labels: tuple[str, ...]) -> _Laid:
    if axis:
        x = draft.body.get(axis, np.full(len(draft.labels), np.nan))
    else:
        places = {_key(label): float(place) for place, label in enumerate(labels)}
        x = np.array([places[_key(label)] for label in draft.labels])
    keep = np.flatnonzero(~np.isnan(x) & ~np.isnan(row))
    order = keep[np.argsort(x[keep], kind="stable")]
    return _Laid(tuple(draft.labels[i] for i in order), x[order], row[order])


SAME_PLACE_CM = 0.05
"""Body figures nearer than this are one place across: half the finest figure a chart prints."""


def _curve(laid: Sequence[_Laid]) -> Curve:
    """The mean over the patterns wherever one of them has a size; each counts only within its own sizes.

    Places that fewer than half of them reach are left out: a mean of these few is not the house's (coined).
    """
    known = [one for one in laid if one.x.size]
    if not known:
        return ()
    every = np.unique(np.concatenate([one.x for one in known]))
    places = every[np.diff(every, prepend=-np.inf) > SAME_PLACE_CM]
    values = np.array([_within(one, places) for one in known])
    names: list[dict[str, None]] = [{} for _ in places]
    for one in known:
        for label, at in zip(one.labels, np.searchsorted(places, one.x, side="right") - 1, strict=True):
            names[at][label] = None
    return tuple(
        _point("/".join(here), float(x), column)
        for here, x, column in zip(names, places, values.T, strict=True)
        if 2 * np.count_nonzero(~np.isnan(column)) >= len(known)
    )  # fmt: skip


def _within(one: _Laid, places: Row) -> Row:
    """A pattern's figures at any places, linear between its sizes and unknown outside them."""
    near = np.clip(places, one.x[0], one.x[-1])
    found = np.interp(near, one.x, one.cm)
    return np.where(np.abs(near - places) <= SAME_PLACE_CM, found, np.nan)


def _point(label: str, x: float, column: Row) -> Point:
    given = column[~np.isnan(column)]
    return Point(label, x, float(given.mean()), float(given.min()), float(given.max()), int(given.size))


@dataclass(frozen=True, slots=True)
class Apart:
    """How much more the left side has than the right at one of the left side's sizes; cm."""

    label: str
    x: float
    cm: float


def apart(panel: Panel) -> tuple[Apart, ...]:
    """The difference at each of the left side's sizes that lies within the right side's; empty where none does."""
    if not panel.left or not panel.right:
        return ()
    other = _Laid(
        tuple(p.label for p in panel.right),
        np.array([p.x for p in panel.right]),
        np.array([p.cm for p in panel.right]),
    )
    there = _within(other, np.array([p.x for p in panel.left]))
    pairs = zip(panel.left, there.tolist(), strict=True)
    return tuple(Apart(p.label, p.x, p.cm - cm) for p, cm in pairs if not np.isnan(cm))


def same_names(panel: Panel) -> bool:
    """Whether both sides call the sizes that lie at the same place the same, so that a name says which is meant."""
    right = {round(p.x, 1): _key(p.label) for p in panel.right}
    shared = [p for p in panel.left if round(p.x, 1) in right]
    return bool(shared) and all(right[round(p.x, 1)] == _key(p.label) for p in shared)
