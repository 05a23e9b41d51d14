"""Every value of a library at one moment, laid out for sheets: what a person and a pattern are compared from.

A snapshot holds frozen values only, so another thread may read it while the window goes on editing.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sizekeeper import assets
from sizekeeper.core.chart import Chart
from sizekeeper.core.found import Found, find
from sizekeeper.core.household import Envelope
from sizekeeper.core.make import Make
from sizekeeper.core.make_words import next_time_words
from sizekeeper.core.makes import hers_before
from sizekeeper.core.pattern import Pattern
from sizekeeper.core.person import Person
from sizekeeper.core.piece import Pieces
from sizekeeper.core.plan import PER_CHANGE_CM
from sizekeeper.core.planned import Planned, plan_ahead
from sizekeeper.core.views import chart_of, pieces_in, shares_chart, views_of
from sizekeeper.errors import ReportError
from sizekeeper.reports.file_names import file_name

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence


@dataclass(frozen=True, slots=True)
class Pairing:
    """A person and a pattern that a sheet is made for; `view` is one that has figures of its own, said in words."""

    person: Person
    pattern: Pattern
    view: str = ""
    view_words: str = ""

    @property
    def words(self) -> str:
        """Whose sheet for what: `Ilse, Wrap dress, View B`."""
        parts = (self.person.name or "Somebody", self.pattern.title or "a pattern without a title", self.view_words)
        return ", ".join(part for part in parts if part)

    def file_name(self, suffix: str, *, private: bool = False) -> str:
        """What its file is called; a private sheet never takes the name of the whole one."""
        mark = "private" if private else ""
        return file_name(self.person.name, self.pattern.title, self.view_words, mark, suffix=suffix)


class Snapshot:
    """The values of a library, found by what belongs together."""

    def __init__(self, values: Iterable[object]) -> None:
        """Sort the values by kind and by pattern; a later one of the same pattern counts as the newer."""
        self._people: list[Person] = []
        self._patterns: list[Pattern] = []
        self._charts: dict[str, list[Chart]] = {}
        self._pieces: dict[str, Pieces] = {}
        self._makes: dict[tuple[str, str, str], Make] = {}
        self._done: list[Make] = []
        for value in values:
            self._keep(value)
        self._people.sort(key=lambda p: (p.name.casefold(), p.id))
        self._patterns.sort(key=lambda p: (p.title.casefold(), p.id))

    def _keep(self, value: object) -> None:
        if isinstance(value, Person):
            self._people.append(value)
        elif isinstance(value, Pattern):
            self._patterns.append(value)
        elif isinstance(value, Chart):
            self._charts.setdefault(value.pattern, []).append(value)
        elif isinstance(value, Pieces):
            self._pieces.setdefault(value.pattern, value)
        elif isinstance(value, Make) and not value.hidden:
            self._keep_make(value)

    def _keep_make(self, make: Make) -> None:
        if make.open:
            self._makes[make.person, make.pattern, make.view] = make
        else:
            self._done.append(make)

    def people(self, *, hidden: bool = False) -> list[Person]:
        """The people by name; hidden ones only when asked for."""
        return [person for person in self._people if hidden or not person.hidden]

    def patterns(self, *, hidden: bool = False) -> list[Pattern]:
        """The patterns by title; hidden ones only when asked for."""
        return [pattern for pattern in self._patterns if hidden or not pattern.hidden]

    def views(self, pattern: Pattern) -> dict[str, str]:
        """The views of a pattern to choose between and what each is called, by name."""
        return views_of(pattern, self._charts.get(pattern.id, ()), self._pieces.get(pattern.id))

    def pairings(self, people: Sequence[Person], patterns: Sequence[Pattern]) -> list[Pairing]:
        """Each person with each pattern, once for every view there is to choose."""
        return [
            Pairing(person, pattern, view, words)
            for person in people
            for pattern in patterns
            for view, words in (self.views(pattern) or {"": ""}).items()
        ]

    def envelope(self, pattern: Pattern, view: str = "") -> Envelope:
        """A pattern with the charts and pieces it is compared by; a view has its own figures or those for all."""
        charts = self._charts.get(pattern.id, ())
        body, finished = chart_of(charts, "body", view), chart_of(charts, "finished", view)
        pieces = pieces_in(self._pieces.get(pattern.id), pattern, charts, view)
        return Envelope(pattern, body, finished, pieces, view)

    def found(self, pairing: Pairing) -> Found:
        """The comparison of a pairing.

        Raises:
            ReportError: nothing can be compared; the sentence says why.
        """
        envelope = self.envelope(pairing.pattern, pairing.view)
        if envelope.body is None and envelope.finished is None:
            raise ReportError(f"{pairing.words}: the pattern has no figures yet.")
        found = find(
            pairing.person,
            envelope.pattern,
            envelope.body,
            envelope.finished,
            envelope.pieces,
            view=envelope.view,
            measures=assets.measures(),
            defaults=assets.ease_defaults(),
        )
        if found.fit is None:
            raise ReportError(f"{pairing.words}: {found.problem}")
        return found

    def planned(self, found: Found, per_change_cm: float = PER_CHANGE_CM) -> Planned | None:
        """The plans of a comparison, for the make of it that is worked on, if there is one."""
        return plan_ahead(found, self._make(found), per_change_cm)

    def next_time(self, found: Found) -> str:
        """What she noted after an earlier make of the pattern, short; empty without a note."""
        return next_time_words(hers_before(self._done, self._make(found)))

    def _make(self, found: Found) -> Make:
        """The make that is worked on; of a view that shares its chart with others, else the one for all of them."""
        key = (found.person.id, found.pattern.id, found.view)
        make = self._makes.get(key)
        if make is None and shares_chart(self._charts.get(found.pattern.id, ()), found.view):
            make = self._makes.get((found.person.id, found.pattern.id, ""))
        return make or Make("", *key, found.pattern.title)
