"""Edits of a person's readings. Each gives the person after the edit; nothing is ever guessed or lost."""

from __future__ import annotations

import datetime as dt
import statistics
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Literal

from sizekeeper.core.measure import MeasuredBy
from sizekeeper.core.notation import parse_length
from sizekeeper.core.person import Person, Reading
from sizekeeper.errors import LengthError

if TYPE_CHECKING:
    from fractions import Fraction

    from sizekeeper.core.length import Length


@dataclass(frozen=True, slots=True)
class Taking:
    """How the figures typed now were taken: the day, who held the tape, and over what."""

    on: dt.date
    by: MeasuredBy = "helped"
    over: str = ""


@dataclass(frozen=True, slots=True)
class Figure:
    """What counts for one measure: the readings of its latest day and the median of those that are lengths.

    `exact_cm` is None while no reading of the day is a length.
    """

    readings: tuple[Reading, ...]

    @property
    def last(self) -> Reading:
        """The reading typed last on that day."""
        return self.readings[-1]

    @property
    def exact_cm(self) -> Fraction | None:
        """The median of the day in cm, exact."""
        return median_cm(self.readings)

    @property
    def count(self) -> int:
        """How many readings the median is taken over."""
        return sum(r.length is not None for r in self.readings)


def median_cm(readings: tuple[Reading, ...]) -> Fraction | None:
    """The median of readings in cm, exact; of an even number the middle of the middle two. None without any."""
    lengths = [r.length.exact_cm for r in readings if r.length is not None]
    return statistics.median(lengths) if lengths else None


def figure_of(person: Person, measure: str) -> Figure | None:
    """The readings of a measure that stand in its field: those of the latest day. None where there are none."""
    readings = person.of(measure)
    return Figure(tuple(r for r in readings if r.on == readings[-1].on)) if readings else None


def read_text(text: str, unit: Literal["cm", "in"]) -> tuple[Length | None, str]:
    """A typed text as a length, or None with the sentence that says what is wrong with it."""
    try:
        length = parse_length(text, unit)
    except LengthError as error:
        return None, str(error)
    if length.value <= 0:
        return None, f"“{text.strip()}” is not more than nothing: a body measurement is above 0"
    return length, ""


def shown_text(reading: Reading, unit: Literal["cm", "in"]) -> str:
    """A reading as typed; with its unit behind it where a bare number would now be taken in another unit."""
    if reading.length is None:
        return reading.text
    again, _ = read_text(reading.text, unit)
    if again is not None and again.exact_cm == reading.length.exact_cm:
        return reading.text
    return f"{reading.text} {reading.length.unit}"


def what_typing_does(person: Person, measure: str, on: dt.date) -> Literal["first", "corrects", "adds", "older"]:
    """What a figure typed for a day does: the measure's first, a correction, a new reading, or one for the history."""
    readings = person.of(measure)
    if not readings:
        return "first"
    if any(r.on == on for r in readings):
        return "corrects"
    return "adds" if on > readings[-1].on else "older"


def with_figure(person: Person, measure: str, text: str, taking: Taking) -> Person:
    """The person after a figure was typed: a new reading of that day, or the day's last one corrected.

    An empty text takes away the reading that stands in the field.
    """
    same_day = [i for i, r in enumerate(person.readings) if r.measure == measure and r.on == taking.on]
    if not text.strip():
        figure = figure_of(person, measure)
        return without(person, place_of(person, figure.last)) if figure else person
    if not same_day:
        return with_further(person, measure, text, taking)
    old = person.readings[same_day[-1]]
    return with_reading(person, same_day[-1], replace(old, text=text.strip()))


def with_further(person: Person, measure: str, text: str, taking: Taking) -> Person:
    """The person with one more reading of a measure; an empty text adds none."""
    if not text.strip():
        return person
    length, _ = read_text(text, person.unit)
    reading = Reading(measure, text.strip(), length, taking.on, taking.by, taking.over)
    return replace(person, readings=(*person.readings, reading))


def with_reading(person: Person, index: int, reading: Reading) -> Person:
    """The person with one reading replaced; its length is read again if its text is another one."""
    old = person.readings[index]
    if reading.text != old.text:
        reading = replace(reading, length=read_text(reading.text, person.unit)[0])
    return replace(person, readings=(*person.readings[:index], reading, *person.readings[index + 1 :]))


def without(person: Person, index: int) -> Person:
    """The person with one reading taken away."""
    return replace(person, readings=(*person.readings[:index], *person.readings[index + 1 :]))


def place_of(person: Person, reading: Reading) -> int:
    """Where a reading stands among all of a person's; the last of equal ones."""
    return max(i for i, r in enumerate(person.readings) if r == reading)
