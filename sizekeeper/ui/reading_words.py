"""What the Person page says about readings, in words."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sizekeeper.core import staleness
from sizekeeper.core.found_words import HANDS
from sizekeeper.core.notation import show
from sizekeeper.core.reading_edit import figure_of, shown_text, what_typing_does

if TYPE_CHECKING:
    from sizekeeper.core.measure import Measure, MeasuredBy
    from sizekeeper.core.person import Person
    from sizekeeper.core.reading_edit import Figure
    from sizekeeper.ui.person_desk import PersonDesk

OVER = ("bare skin", "underwear", "a thin shirt", "the clothes it will be worn over")
"""Suggestions of what was measured over; anything else can be typed."""

PRIMARY = (
    "height",
    "across_back",
    "high_bust",
    "bust",
    "upper_arm",
    "back_waist_length",
    "waist",
    "hip",
)
"""The eight measures a size is most often chosen by; common practice, no source."""

MENDED = "Kept as typed, and counted as missing until it is mended."


def state_words(figure: Figure, desk: PersonDesk) -> str:
    """When the figure in a field was measured, and whether it still holds: `8 months ago, measure again`."""
    on, today = figure.last.on, desk.today()
    if staleness.stale(on, today, desk.child):
        return f"{staleness.ago(on, today)}: measure again"
    return f"{desk.day(on)}, median of {figure.count}" if figure.count > 1 else desk.day(on)


def typing_words(person: Person, measure: str, desk: PersonDesk, *, emptied: bool) -> str:
    """What Enter will do with the text in the field, in a few words."""
    if emptied:
        return "takes this figure away"
    on = desk.taking.on
    does = what_typing_does(person, measure, on)
    day = desk.day(on)
    return {
        "first": f"first figure, {day}",
        "adds": f"new figure, {day}",
        "corrects": f"corrects {day}’s" if day == "today" else f"corrects that of {day}",
        "older": f"into the history, {day}",
    }[does]


def typing_sentence(person: Person, measure: str, desk: PersonDesk) -> str:
    """What typing in the field does, as a whole sentence."""
    on = desk.taking.on
    day = desk.day(on)
    figure = figure_of(person, measure)
    if figure is None:
        return f"Typing a figure makes the first measurement, of {day}."
    stands = f"{_with_unit(figure, person)} of {desk.day(figure.last.on)}"
    return {
        "first": "",
        "adds": f"Typing a figure makes a new measurement, of {day}; {stands} stays in the history.",
        "corrects": f"Typing in the field corrects the measurement of {day}.",
        "older": f"Typing a figure adds it to the history, of {day}; {stands} goes on counting.",
    }[what_typing_does(person, measure, on)]


def _with_unit(figure: Figure, person: Person) -> str:
    text = shown_text(figure.last, person.unit)
    bare = figure.last.length is not None and not any(c.isalpha() or c in "\"'″′" for c in text)
    return f"{text} {person.unit}" if bare else text


def median_sentence(figure: Figure, desk: PersonDesk) -> str:
    """The median of several readings of a day, and how far they are apart; empty for a single one."""
    exact = figure.exact_cm
    if figure.count < 2 or exact is None:  # noqa: PLR2004 - a median needs two
        return ""
    lengths = [r.length.exact_cm for r in figure.readings if r.length is not None]
    person = desk.person
    notation = desk.settings.notation_in(person.unit if person else desk.settings.unit)
    apart = show(max(lengths) - min(lengths), notation)
    return f"Counts as {show(exact, notation)}, the median of {figure.count}; they are {apart} apart."


def tolerance_words(measure: Measure, by: MeasuredBy, desk: PersonDesk) -> str:
    """How far a figure may be off, by who measured."""
    if by not in measure.tolerance_cm:
        return ""
    person = desk.person
    notation = desk.settings.notation_in(person.unit if person else desk.settings.unit)
    return f"Measured {HANDS[by]}, it may be off by {show(measure.tolerance(by), notation)}."


def iso_words(measure: Measure) -> str:
    """The measure's name in the standard, with its clause where one is known."""
    if not measure.iso_name:
        return ""
    return f"ISO 8559-1{' ' + measure.iso_clause if measure.iso_clause else ''}: {measure.iso_name}"
