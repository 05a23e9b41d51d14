"""Households for tests, built in one line: people against one pattern."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sizekeeper import assets
from sizekeeper.core.household import Envelope, Household, Standing, compare_household, standing
from sizekeeper.core.pattern import Pattern
from tests.build import chart, person

if TYPE_CHECKING:
    from sizekeeper.core.chart import Chart
    from sizekeeper.core.person import Person

DRESS = Pattern("pattern", "Wrap dress", garment="dress")
TOP = chart("finished", "38 40 42", bust="100, 104, 108")
"""Steps of 4 cm, so that the lines lie 1 cm apart at an edge and quarters can be drawn."""


def envelope(finished: Chart | None = TOP, body: Chart | None = None, pattern: Pattern = DRESS) -> Envelope:
    """A pattern with its charts; by default the dress with nothing but its bust."""
    return Envelope(pattern, body, finished)


def called(name: str, **figures: str) -> Person:
    """A person of this name and id."""
    return replace(person("cm", **figures), id=name.lower(), name=name)


def household(*people: Person, against: Envelope | None = None) -> Household:
    """These people against a pattern."""
    return compare_household(people, against or envelope(), measures=assets.measures(), defaults=assets.ease_defaults())


def stand(who: Person, against: Envelope | None = None) -> Standing:
    """One person against a pattern."""
    return standing(who, against or envelope(), measures=assets.measures(), defaults=assets.ease_defaults())
