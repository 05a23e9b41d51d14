"""The rows of the list of makes: who and what, what was cut, how far it is, and how it turned out."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sizekeeper.core.days import day_words
from sizekeeper.core.groups import belongs
from sizekeeper.core.make import Make
from sizekeeper.core.make_words import PROGRESS_WORDS, cut_words, shortened, worn_badly_words, worn_words
from sizekeeper.core.person import Person
from sizekeeper.ui.entry_words import entry_name
from sizekeeper.ui.household_cells import Heading, HouseCell, HouseRow, by_number, by_words

if TYPE_CHECKING:
    import datetime as dt

    from sizekeeper.core.make import Progress
    from sizekeeper.core.wording import Wording
    from sizekeeper.ui.session import Session

MAKE_HEADINGS = (
    Heading("For"),
    Heading("Pattern"),
    Heading("What was cut"),
    Heading("How far"),
    Heading("Day", said="The day it was finished, else the day it was decided on"),
    Heading("How it turned out", wide=True),
)
DAY = 4
"""The column of the days."""
_ORDER: tuple[Progress, ...] = ("planned", "sewing", "finished", "given_up")


@dataclass(frozen=True, slots=True)
class Listed:
    """A make with whom and what it is of; the person is None while she is not in the library."""

    make: Make
    person: Person | None
    who: str
    what: str

    @property
    def day(self) -> dt.date | None:
        """The day it was finished, else the day it was decided on."""
        make = self.make
        return make.finished_on or (make.decision.on if make.decision is not None else None)


@dataclass(frozen=True, slots=True)
class Sieve:
    """Which makes are listed: of a group or a person's id, by how far, with words in them, hidden ones too."""

    group: str = ""
    person: str = ""
    progress: str = ""
    words: str = ""
    hidden: bool = False

    def lets_through(self, one: Listed) -> bool:
        """Whether a make is listed."""
        make, person = one.make, one.person
        if make.hidden and not self.hidden:
            return False
        if self.group and not (person is not None and belongs(person, self.group)):
            return False
        if self.person not in ("", make.person) or self.progress not in ("", make.progress):
            return False
        notes = (make.outcome, make.next_time, make.notes, make.view, make.decision.reason if make.decision else "")
        text = " ".join((one.who, one.what, cut_words(make), PROGRESS_WORDS[make.progress], *notes)).casefold()
        return all(word in text for word in self.words.casefold().split())


def listed_makes(session: Session) -> list[Listed]:
    """Every make of the library, drafts laid over, hidden ones too."""
    found = []
    for value in session.values():
        make = session.value(value.id) if isinstance(value, Make) else None
        if isinstance(make, Make):
            person, pattern = session.person(make.person), session.pattern(make.pattern)
            who = entry_name(person) if person is not None else "Somebody who is no longer here"
            what = entry_name(pattern) if pattern is not None else make.name or "A pattern that is no longer here"
            found.append(Listed(make, person, who, what))
    return found


def make_row(one: Listed, words: Wording) -> HouseRow:
    """A make as a row."""
    make, day = one.make, one.day
    cut, worn, badly = cut_words(make), worn_words(make, words), worn_badly_words(make, words)
    view = f"View {make.view}" if make.view else ""
    far = f"{PROGRESS_WORDS[make.progress].capitalize()}{', hidden' if make.hidden else ''}"
    turned_out = shortened(make.outcome)
    when = f"{day.day} {day:%b %Y}" if day is not None else "–"
    return HouseRow(
        make.id,
        (
            HouseCell(one.who, order=by_words(one.who)),
            HouseCell(one.what, view, by_words(f"{one.what} {view}"), f"{one.what}{', ' if view else ''}{view}"),
            HouseCell(cut or "not decided", order=by_words(cut)),
            HouseCell(far, order=by_number(_ORDER.index(make.progress))),
            HouseCell(
                when, order=by_number(None if day is None else day.toordinal()), said=day_words(day) if day else ""
            ),
            HouseCell(
                turned_out or badly, badly if turned_out else "", by_words(turned_out or badly), _said(make, worn)
            ),
        ),
    )


def _said(make: Make, worn: str) -> str:
    next_time = f"Next time: {make.next_time}" if make.next_time else ""
    return "\n".join(part for part in (make.outcome, worn, next_time) if part)
