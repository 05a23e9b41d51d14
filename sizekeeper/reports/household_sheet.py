"""The household sheet as a plain document value: everybody against one pattern, and the lines to trace for them.

Said in her units, before any format; names stand here as they were typed.
"""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from typing import TYPE_CHECKING

from sizekeeper.core.ease import SAME
from sizekeeper.core.household_words import (
    NOTHING,
    alteration_short,
    line_words,
    margin_words,
    name_of,
    number,
    off_words,
    trouble_words,
    verdict_short,
    wearers_words,
)
from sizekeeper.core.notation import Notation, show
from sizekeeper.core.preference import Band

if TYPE_CHECKING:
    from sizekeeper.core.household import Household, Standing
    from sizekeeper.core.sharing import Choice, Line, SharedLine, Sharing
    from sizekeeper.core.wording import Wording

CHOICES_AT_MOST = 4
"""How many numbers of shared lines are set out; more lines than these save little tracing (coined)."""


@dataclass(frozen=True, slots=True)
class EaseMark:
    """The ease of one person in one size at the region shown; `chosen` where that is what she cuts there."""

    amount: str
    band: Band | None
    chosen: bool = False


@dataclass(frozen=True, slots=True)
class PersonRow:
    """One person: what she cuts, how far that is off, how safe it is, what stands in the way, her ease in each size."""

    name: str
    cut: str
    off: str
    safe: str
    trouble: str
    marks: tuple[EaseMark, ...]


@dataclass(frozen=True, slots=True)
class LineRow:
    """A line to trace: its words, and for whom."""

    words: str
    people: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class SharedChoice:
    """So many lines for everybody: a title, how far off, and on each line who wears it and what she alters."""

    title: str
    off: str
    lines: tuple[LineRow, ...]


@dataclass(frozen=True, slots=True)
class HouseholdSheet:
    """Everybody against one pattern. `where` is the region whose ease the marks show, `labels` the listed sizes."""

    pattern: str
    publisher: str
    view: str
    on: dt.date
    notation: Notation
    where: str
    labels: tuple[str, ...]
    people: tuple[PersonRow, ...]
    lines: tuple[LineRow, ...]
    choices: tuple[SharedChoice, ...]


def household_sheet(
    household: Household, sharing: Sharing, words: Wording, *, on: dt.date, measure: str = "", view_words: str = ""
) -> HouseholdSheet:
    """The sheet of a household comparison.

    Args:
        household: everybody against one pattern, in the order to be shown.
        sharing: the lines to trace for them.
        words: how figures and measures are said.
        on: the day on the sheet.
        measure: the region whose ease is shown in every size; empty for the one most choose their size by.
        view_words: what the view is called, `View A and C`; without it, by its own name.
    """
    pattern, where = household.envelope.pattern, measure or household.lead
    view = household.envelope.view
    return HouseholdSheet(
        pattern=pattern.title,
        publisher=pattern.publisher,
        view=view_words or (f"View {view}" if view else ""),
        on=on,
        notation=words.notation,
        where=words.name(where) if where else "",
        labels=household.labels,
        people=tuple(_person(standing, household, where, words) for standing in household.standings),
        lines=tuple(_line(line, words) for line in sharing.own),
        choices=tuple(_choice(choice, words) for choice in sharing.choices[:CHOICES_AT_MOST]),
    )


def _person(standing: Standing, household: Household, where: str, words: Wording) -> PersonRow:
    trouble = standing.trouble
    return PersonRow(
        name=name_of(standing),
        cut=verdict_short(standing, words),
        off=off_words(standing.misfit_cm, words),
        safe=margin_words(standing, words),
        trouble=NOTHING if trouble is None else trouble_words(trouble, words),
        marks=tuple(_mark(standing, label, where, words) for label in household.labels),
    )


def _mark(standing: Standing, label: str, where: str, words: Wording) -> EaseMark:
    at, fit = standing.at(label, where), standing.fit
    if at is None or fit is None:
        return EaseMark(NOTHING, None)
    amount = at.ease_cm if at.ease_cm is not None else at.diff_cm
    cut = standing.at_cut().get(where)
    chosen = cut is not None and abs(cut[0] - fit.labels.index(label)) < SAME
    return EaseMark(NOTHING if amount is None else show(amount, words.notation, unit=False), at.band, chosen)


def _line(line: Line, words: Wording) -> LineRow:
    return LineRow(_capital(line_words(line)), tuple(wearers_words(line, words)))


def _choice(choice: Choice, words: Wording) -> SharedChoice:
    title = "One line for all" if choice.count == 1 else f"{_capital(number(choice.count))} lines"
    return SharedChoice(title, words.length(choice.misfit_cm), tuple(_shared(line, words) for line in choice.lines))


def _shared(shared: SharedLine, words: Wording) -> LineRow:
    """A shared line: each of its people with what she alters on it."""
    people = []
    for one in shared.people:
        altered = ", ".join(alteration_short(alteration, words) for alteration in one.alterations)
        people.append(f"{name_of(one.standing)}: {altered}" if altered else f"{name_of(one.standing)}: as it is")
    return LineRow(_capital(line_words(shared.line)), tuple(people))


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
