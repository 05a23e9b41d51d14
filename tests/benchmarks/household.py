"""Fifty people in one pattern, and one person in 300 patterns, against as many single fits; and who can share a line.

Run by hand: `.venv/bin/python -m tests.benchmarks.household`. Aim: at most 1.3 times the sum of the single fits, and
the sizes to trace for fifty in at most 200 ms.
"""

from __future__ import annotations

import itertools
import random
import statistics
import time
from dataclasses import replace
from typing import TYPE_CHECKING

from sizekeeper import assets
from sizekeeper.core.body import body_figures
from sizekeeper.core.chart import Chart
from sizekeeper.core.fit import fit
from sizekeeper.core.household import Envelope, compare_household, every_pattern
from sizekeeper.core.notation import parse_length
from sizekeeper.core.pattern import Pattern
from sizekeeper.core.person import Person
from sizekeeper.core.question import Question
from sizekeeper.core.sharing import share
from sizekeeper.demo import demo_values
from tests.benchmarks.timing import ROUNDS, median_ms

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from sizekeeper.core.person import Reading

PEOPLE, PATTERNS = 50, 300
GROWN = 3
"""The first people of the demo are grown; the last is a child, whom most of its patterns do not fit."""


def household() -> tuple[list[Person], list[Envelope]]:
    """The demo's grown people again and again, each reading up to 6 % off, and its patterns again and again."""
    ids = itertools.count()
    values = demo_values(lambda: f"id{next(ids)}")
    chance = random.Random(5)  # noqa: S311 - nothing is kept secret
    people = [value for value in values if isinstance(value, Person)][:GROWN]
    charts = [value for value in values if isinstance(value, Chart) and not value.view]
    by_kind = {(chart.pattern, chart.kind): chart for chart in charts}
    envelopes = [
        Envelope(pattern, by_kind.get((pattern.id, "body")), by_kind.get((pattern.id, "finished")))
        for pattern in values
        if isinstance(pattern, Pattern)
    ]
    envelopes = [one for one in envelopes if one.body is not None or one.finished is not None]
    many = [_another(people[i % GROWN], f"person{i}", chance) for i in range(PEOPLE)]
    return many, [envelopes[i % len(envelopes)] for i in range(PATTERNS)]


def _another(person: Person, name: str, chance: random.Random) -> Person:
    return replace(person, id=name, name=name, readings=tuple(_off(r, chance) for r in person.readings))


def _off(reading: Reading, chance: random.Random) -> Reading:
    if reading.length is None:
        return reading
    text = f"{reading.length.cm * chance.uniform(0.94, 1.06):.1f} cm"
    return replace(reading, text=text, length=parse_length(text))


def single_fits(pairs: Sequence[tuple[Person, Envelope]]) -> None:
    """The bare fits that a household is made of."""
    for person, one in pairs:
        pattern = one.pattern
        preference = person.preference(pattern.garment, knit=pattern.knit)
        question = Question(pattern.garment, None, pattern.stretch, preference=preference)
        fit(body_figures(person, assets.measures()), one.body, one.finished, question, assets.ease_defaults())


def side_by_side(bare: Callable[[], object], own: Callable[[], object]) -> tuple[float, float]:
    """The median times of two runs in milliseconds, taken in turns, so that a busy machine is busy for both."""
    times: list[tuple[float, float]] = []
    for _ in range(ROUNDS):
        start = time.perf_counter()
        bare()
        middle = time.perf_counter()
        own()
        times.append((middle - start, time.perf_counter() - middle))
    first, second = (statistics.median(column) * 1000 for column in zip(*times, strict=True))
    return first, second


def main() -> None:
    """Print the times and their ratios."""
    people, envelopes = household()
    measures, defaults, one = assets.measures(), assets.ease_defaults(), envelopes[0]
    runs: dict[str, tuple[Callable[[], object], Callable[[], object]]] = {
        f"{PEOPLE} people in one pattern": (
            lambda: single_fits([(person, one) for person in people]),
            lambda: compare_household(people, one, measures=measures, defaults=defaults),
        ),
        f"one person in {PATTERNS} patterns": (
            lambda: single_fits([(people[0], envelope) for envelope in envelopes]),
            lambda: every_pattern(people[0], envelopes, measures=measures, defaults=defaults),
        ),
    }
    for what, (bare, own) in runs.items():
        fits, all_of_it = side_by_side(bare, own)
        print(f"{what}: {all_of_it:.0f} ms, single fits {fits:.0f} ms, ratio {all_of_it / fits:.2f} (aim: at most 1.3)")
    found = compare_household(people, one, measures=measures, defaults=defaults)
    taken = median_ms(lambda: share(found.standings, found.labels))
    print(f"sizes to trace for {PEOPLE} people: {taken:.0f} ms (aim: at most 200)")


if __name__ == "__main__":
    main()
