"""What is said of the figures a comparison rests on: how old they are, who took them, how the pattern printed."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sizekeeper.core.places import join
from sizekeeper.core.staleness import ago, grows, stale

if TYPE_CHECKING:
    import datetime as dt

    from sizekeeper.core.found import Found
    from sizekeeper.core.measure import MeasuredBy
    from sizekeeper.core.person import Person
    from sizekeeper.core.reading_edit import Figure
    from sizekeeper.core.wording import Wording

HANDS: dict[MeasuredBy, str] = {
    "helped": "with help",
    "alone": "alone",
    "trained": "by a trained hand",
}
"""Who measured, in the order of how usual it is at home."""


def is_old(person: Person, figure: Figure, today: dt.date) -> bool:
    """Whether a figure is too old to cut by."""
    return stale(figure.last.on, today, grows(person.born, today, child=person.child))


def old_words(found: Found, words: Wording, today: dt.date) -> str:
    """Which measurements are old: one sentence, empty where none is."""
    by_age: dict[str, list[str]] = {}
    for measure in found.measures:
        figure = found.figure(measure)
        if figure is not None and is_old(found.person, figure, today):
            by_age.setdefault(ago(figure.last.on, today), []).append(words.the(measure))
    if not by_age:
        return ""
    said = "; ".join(f"{join(where)} ({age})" for age, where in by_age.items())
    return f"Bodies change, and some measurements are old: {said}."


def scale_words(found: Found) -> str:
    """What the pattern's test square does to the printed figures; empty where it came out true."""
    if found.scale.factor == 1:
        return ""
    warned = " Better print it again." if found.scale.off else ""
    share = f"{float(found.scale.factor) * 100:.1f}".removesuffix(".0")
    return f"The test square came out at {share} %: the finished figures are taken times that.{warned}"


def for_child(found: Found, today: dt.date) -> bool:
    """Whether the cautions for children's wear apply: by the pattern, or by who will wear it."""
    return found.pattern.child or grows(found.person.born, today, child=found.person.child)
