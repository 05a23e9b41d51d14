"""A table of people as read so far: what was set by hand, the columns, the people, and the questions left open."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING, Any, Literal, cast

from sizekeeper.core.measure import MeasuredBy
from sizekeeper.core.person import Person, Reading
from sizekeeper.importing.grid import Row, Sheet
from sizekeeper.importing.people_days import Order
from sizekeeper.importing.question import Answer, Ask, Remark

if TYPE_CHECKING:
    from sizekeeper.importing.opened import Answers

Cell = tuple[str, str]
"""A cell by its sheet and address."""

IGNORED = ""
"""The role of a column that is not read."""

SKIP, NEW = "skip", "new"
"""What becomes of somebody whose name is known already, besides `add:` with an id."""


@dataclass(frozen=True, slots=True)
class PeopleAnswers:
    """Everything set by hand about one table of people.

    `head` is the row of the headings, from 0, and `turned` whether a person has a column and not a row; then `head`
    counts columns. Columns are named by the address of their heading: `roles`, `units` and `times` (2: a half girth).
    `unit` is that of bare numbers. `order` settles days such as 3/4/2015. `words` are words of a column, each by
    (what it is about, the word), with their meaning. By the address of a name: `same` for a name that comes again
    ("one", "apart", "first"), `nameless` for a row without one ("above", "skip"), `sums` for a name such as Total
    ("skip", "person"), `known` for a name in the library ("add:" with the id, "new", "skip"), and `left_out`.
    `confirmed` are doubts that were looked at, by code and cell. `on`, `by` and `groups` are for figures and people of
    which the table does not tell them.
    """

    sheet: str | None = None
    turned: bool | None = None
    head: int | None = None
    roles: Mapping[str, str] = field(default_factory=dict)
    units: Mapping[str, str] = field(default_factory=dict)
    times: Mapping[str, int] = field(default_factory=dict)
    unit: str = ""
    order: Order = ""
    cells: Mapping[Cell, str] = field(default_factory=dict)
    ignored: frozenset[Cell] = frozenset()
    words: Mapping[tuple[str, str], str] = field(default_factory=dict)
    same: Mapping[str, str] = field(default_factory=dict)
    nameless: Mapping[str, str] = field(default_factory=dict)
    sums: Mapping[str, str] = field(default_factory=dict)
    known: Mapping[str, str] = field(default_factory=dict)
    left_out: frozenset[str] = frozenset()
    confirmed: frozenset[tuple[str, str]] = frozenset()
    on: dt.date | None = None
    by: MeasuredBy = "helped"
    groups: tuple[str, ...] = ()


NOTHING_SAID = PeopleAnswers()


@dataclass(frozen=True, slots=True)
class PeopleAsk(Ask):
    """A question about a table of people; `must` tells that nothing is saved before it is answered."""

    must: bool = False


def pick(text: str, change: Callable[[PeopleAnswers], PeopleAnswers]) -> Answer:
    """One way to answer. The window only hands the change back, so that the same buttons serve charts and people."""
    return Answer(text, cast("Callable[[Answers], Answers]", change))


def put(answers: PeopleAnswers, which: str, key: object, value: object) -> PeopleAnswers:
    """The answers with one more entry in one of their mappings."""
    changed: dict[str, Any] = {which: {**getattr(answers, which), key: value}}
    return replace(answers, **changed)


def confirm(answers: PeopleAnswers, *doubts: tuple[str, str]) -> PeopleAnswers:
    """The answers with doubts that were looked at: they are right as they stand."""
    return replace(answers, confirmed=answers.confirmed | set(doubts))


@dataclass(frozen=True, slots=True)
class Column:
    """A column (in a turned table a row) with its heading.

    `role` is one of `HEADINGS`, a measure's id, a measure's id with what is told of it behind a colon, or nothing.
    `unit` is the one the heading states. `choices` are what an unclear heading can mean. `sure`: how sure the role is.
    `times` is 2 or 4 where the heading says that it is part of a girth.
    """

    place: int
    at: str
    label: str
    role: str = IGNORED
    unit: str = ""
    choices: tuple[str, ...] = ()
    sure: float = 1.0
    times: int = 1


@dataclass(frozen=True, slots=True)
class Table:
    """Where the people stand: the sheet turned so that each has a row, the row of headings, and the rows below it."""

    sheet: Sheet
    turned: bool
    head: int
    columns: tuple[Column, ...]
    rows: tuple[tuple[int, Row], ...]
    unit: str = ""


@dataclass(frozen=True, slots=True)
class FoundReading:
    """A figure with the cell it stands in; `guessed` tells that its unit is not known yet."""

    at: str
    reading: Reading
    guessed: bool = False


@dataclass(frozen=True, slots=True)
class FoundPerson:
    """Somebody in the table: her name's cell, she herself without an id, and the cells of what is known of her.

    `known` are those in the library with the same name; `fate` is what becomes of her: "new", "skip", "add:" with an
    id, or nothing while that is not answered.
    """

    at: str
    person: Person
    readings: tuple[FoundReading, ...] = ()
    cells: Mapping[str, str] = field(default_factory=dict)
    known: tuple[Person, ...] = ()
    fate: str = NEW


@dataclass(frozen=True, slots=True)
class PeopleDraft:
    """A source of people as read with the answers so far. `roles` says what each cell was taken for."""

    name: str
    sheets: tuple[Sheet, ...]
    sheet: Sheet
    answers: PeopleAnswers = NOTHING_SAID
    table: Table | None = None
    people: tuple[FoundPerson, ...] = ()
    asks: tuple[PeopleAsk, ...] = ()
    remarks: tuple[Remark, ...] = ()
    roles: Mapping[str, str] = field(default_factory=dict)
    undated: int = 0
    unsigned: int = 0

    @property
    def taken(self) -> tuple[FoundPerson, ...]:
        """Those who are taken in."""
        return tuple(one for one in self.people if one.fate not in (SKIP, ""))

    @property
    def open(self) -> tuple[PeopleAsk, ...]:
        """The questions without whose answer nothing is saved."""
        return tuple(ask for ask in self.asks if ask.must)


class Notes:
    """Collects the questions and remarks while a table is read; what was looked at is not asked again."""

    def __init__(self, sheet: str, answers: PeopleAnswers) -> None:
        self.sheet = sheet
        self.answers = answers
        self.asks: list[PeopleAsk] = []
        self.remarks: list[Remark] = []

    def ask(
        self,
        code: str,
        says: str,
        at: str,
        *answers: Answer,
        edit: Literal["", "measure", "size", "cell"] = "",
        must: bool = False,
    ) -> None:
        """Ask, unless this doubt about this cell was looked at."""
        if (code, at) not in self.answers.confirmed:
            self.asks.append(PeopleAsk(code, says, self.sheet, at, answers, edit, must))

    def remark(self, says: str, at: str) -> None:
        """Tell something that asks nothing."""
        self.remarks.append(Remark(says, self.sheet, at))
