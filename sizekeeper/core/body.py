"""What is known of a body: the figure that counts for each measure, and how far it may be off."""

from __future__ import annotations

import statistics
from typing import TYPE_CHECKING

from sizekeeper.core.result import BodyFigure

if TYPE_CHECKING:
    from sizekeeper.core.measure import Measures
    from sizekeeper.core.person import Person, Reading

SPREAD_NEEDS = 2
"""Readings of one day from which their technical error is known."""


def latest(readings: tuple[Reading, ...]) -> tuple[Reading, ...]:
    """The readings of the newest day, in the order typed."""
    newest = max((reading.on for reading in readings), default=None)
    return tuple(reading for reading in readings if reading.on == newest)


def technical_error(values: list[float]) -> float:
    """The technical error of measurement of one day's readings, cm.

    For two readings sqrt(d^2 / 2); for more the standard deviation, of which that is the case of two. The formula
    sqrt(sum d^2 / 2n) is the usual one of anthropometry, here with n = 1 person.
    """
    return statistics.stdev(values)


def body_figure(readings: tuple[Reading, ...], measures: Measures) -> BodyFigure | None:
    """The figure of one measure: the median of its newest day, None when nothing legible was measured then."""
    newest = [reading for reading in latest(readings) if reading.length is not None]
    if not newest:
        return None
    values = [reading.length.cm for reading in newest if reading.length is not None]
    tolerance = max(measures[reading.measure].tolerance(reading.by) for reading in newest)
    if len(values) >= SPREAD_NEEDS:
        tolerance = max(tolerance, technical_error(values))
    return BodyFigure(statistics.median(values), tolerance)


def body_figures(person: Person, measures: Measures) -> dict[str, BodyFigure]:
    """Every figure of a person that counts, by measure, in body order; unknown measures are left out."""
    by_measure: dict[str, list[Reading]] = {}
    for reading in person.readings:
        by_measure.setdefault(reading.measure, []).append(reading)
    found = {}
    for measure in measures:
        if measure.id in by_measure and measure.use != "finished":
            figure = body_figure(tuple(by_measure[measure.id]), measures)
            if figure is not None:
                found[measure.id] = figure
    return found
