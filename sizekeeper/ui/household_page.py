"""The Household page: one pattern on everybody, or one person in every pattern."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING, cast

from PySide6.QtCore import QMimeData
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QStackedWidget, QVBoxLayout, QWidget

from sizekeeper import assets
from sizekeeper.core.wording import Wording
from sizekeeper.reports.household_table import as_html, as_text, patterns_table, people_table
from sizekeeper.ui.fit_empty import FirstThings
from sizekeeper.ui.fit_source import Missing
from sizekeeper.ui.household_heading import WAYS, HouseholdHeading
from sizekeeper.ui.household_patterns import PatternsPart
from sizekeeper.ui.household_people import PeoplePart
from sizekeeper.ui.household_source import offer_of, title_of
from sizekeeper.ui.household_work import Standings
from sizekeeper.ui.selection import Place

if TYPE_CHECKING:
    from PySide6.QtGui import QHideEvent, QShowEvent

    from sizekeeper.core.household import Envelope
    from sizekeeper.core.notation import Notation
    from sizekeeper.core.pattern import Pattern
    from sizekeeper.core.person import Person
    from sizekeeper.reports.household_table import HouseholdTable
    from sizekeeper.ui.household_heading import Way
    from sizekeeper.ui.household_work import Key
    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Change, Session
    from sizekeeper.ui.settings import Settings

_KINDS = {"person", "pattern", "chart", "pieces"}
_WAY = "household/way"
_NOBODY = Missing(
    "Who is sewn for?",
    "Add the people of the household and type their measurements: bust, waist and hip are enough to start. "
    "Here they are compared with a pattern side by side.",
    "Go to the measurements",
    Place("person"),
)
_NO_PATTERN = Missing(
    "Which patterns are there?",
    "Add a pattern and type what its envelope prints, or read its chart from a file. "
    "Here everybody is compared with it.",
    "Go to the pattern",
    Place("pattern"),
)


class HouseholdPage(QWidget):
    """Compares everybody with the selected pattern, or the selected person with every pattern, live."""

    def __init__(
        self, session: Session, selection: Selection, settings: Settings, parent: QWidget | None = None
    ) -> None:
        """Show what is selected, the way it was shown last."""
        super().__init__(parent)
        self._session, self._selection, self._settings = session, selection, settings
        self._views: dict[str, str] = {}
        self._stale = True
        self._titled: list[tuple[str, Envelope]] | None = None
        self.standings = Standings(self)
        self.heading = HouseholdHeading(self)
        self.first = FirstThings(self)
        self.people = PeoplePart(self.standings, settings.stored, self)
        self.patterns = PatternsPart(self.standings, self)
        stored = str(settings.stored.value(_WAY, ""))
        self._way: Way = next((way for way in WAYS if way == stored), "people")
        self._stack = QStackedWidget(self)
        for part in (self.first, self.people, self.patterns):
            self._stack.addWidget(part)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.heading)
        column.addWidget(self._stack, 1)
        self.heading.show_way(self._way)
        self._connect()

    def _connect(self) -> None:
        self._session.changed.connect(self._on_change)
        self._session.drafted.connect(self._on_change)
        self._selection.person_changed.connect(self._on_person)
        self._selection.pattern_changed.connect(self._on_pattern)
        self._settings.changed.connect(self.refresh)
        self.first.go.connect(self._selection.go)
        self.heading.turned.connect(self.turn)
        self.heading.view_chosen.connect(self._on_view)
        self.people.opened.connect(self._open_person)
        self.patterns.opened.connect(self._open_pattern)
        self.standings.came.connect(self._on_came)

    @property
    def way(self) -> Way:
        """The way that is in front: "people" for one pattern on everybody, "patterns" for one person in every one."""
        return self._way

    def turn(self, way: str) -> None:
        """Compare the other way."""
        self._way = cast("Way", way)
        self._settings.stored.setValue(_WAY, way)
        self.heading.show_way(self._way)
        self.refresh()

    def refresh(self) -> None:
        """Compare again what is different; a page that is not in front does so when it comes to the front."""
        if not self.isVisible():
            self._stale = True
            return
        self._stale = False
        people, patterns = self._session.people(), self._session.patterns()
        person, pattern = self._session.person(self._selection.person), self._session.pattern(self._selection.pattern)
        if not people or (self._way == "patterns" and person is None):
            self._show_missing(_NOBODY)
        elif not patterns or (self._way == "people" and pattern is None):
            self._show_missing(_NO_PATTERN)
        elif self._way == "people" and pattern is not None:
            self._show_people(pattern, people)
        elif person is not None:
            self._show_patterns(person, patterns)

    def _show_missing(self, missing: Missing) -> None:
        self.standings.rest()
        self.heading.show_what("", {}, "")
        self.first.show_missing(missing)
        self._stack.setCurrentWidget(self.first)

    def _show_people(self, pattern: Pattern, people: list[Person]) -> None:
        offer, view = offer_of(self._session, pattern), self._views.get(pattern.id, "")
        view = view if view in offer.envelopes else next(iter(offer.envelopes))
        envelope, title = offer.envelopes[view], title_of(pattern)
        if envelope.body is None and envelope.finished is None:
            self._show_missing(_no_figures(pattern, title))
            return
        self.heading.show_what(title, offer.views, view)
        self._stack.setCurrentWidget(self.people)
        self.people.show_people(envelope, people, self._wording(self._notation(people)))

    def _show_patterns(self, person: Person, patterns: list[Pattern]) -> None:
        self.heading.show_what(person.name.strip() or "No name yet", {}, "")
        self._stack.setCurrentWidget(self.patterns)
        if self._titled is None:
            self._titled = [one for pattern in patterns for one in offer_of(self._session, pattern).titled()]
        self.patterns.show_patterns(person, self._titled, self._wording(self._settings.notation_for(person.unit)))

    def _notation(self, people: list[Person]) -> Notation:
        """The unit chosen for everybody, else the one most of these people are measured in."""
        return self._settings.notation_for(Counter(person.unit for person in people).most_common(1)[0][0])

    @staticmethod
    def _wording(notation: Notation) -> Wording:
        return Wording(notation, assets.measures().name)

    def _on_came(self, keys: list[Key]) -> None:
        if self._stack.currentWidget() is self.people:
            self.people.show_come()
        elif self._stack.currentWidget() is self.patterns:
            self.patterns.show_come(keys)

    def _on_change(self, change: Change) -> None:
        if change.kinds & {"pattern", "chart", "pieces"}:
            self._titled = None
        if change.kinds & _KINDS:
            self.refresh()

    def _on_person(self, person: str) -> None:
        """In the one way another person is compared; in the other her row is marked."""
        if self._way == "patterns":
            self.refresh()
        else:
            self.people.table.pick(person)

    def _on_pattern(self, _pattern: str) -> None:
        if self._way == "people":
            self.refresh()

    def _on_view(self, view: str) -> None:
        self._views[self._selection.pattern] = view
        self.refresh()

    def _open_person(self, person: str) -> None:
        pattern = self._selection.pattern
        self._go_to_fit(person, pattern, self._views.get(pattern, ""))

    def _open_pattern(self, pattern: str, view: str) -> None:
        self._go_to_fit(self._selection.person, pattern, view)

    def _go_to_fit(self, person: str, pattern: str, view: str) -> None:
        """Show a person and a pattern on the Fit page, in the view that was compared."""
        self._selection.choose_person(person)
        self._selection.choose_pattern(pattern)
        self._selection.go(Place("fit", person, f"{pattern}/view:{view}"))

    # What the window asks of a page.

    def reveal(self, place: Place) -> None:
        """Put the cursor on a person or a pattern."""
        if self._session.person(place.entry) is not None:
            self.turn("people")
            self.people.table.pick(place.entry)
            self.people.table.words.setFocus()

    def copy_table(self) -> None:
        """Put the comparison on the clipboard as it is sorted now, as text and as HTML."""
        table = self._table()
        if table is not None:
            data = QMimeData()
            data.setText(as_text(table))
            data.setHtml(as_html(table))
            QGuiApplication.clipboard().setMimeData(data)

    def _table(self) -> HouseholdTable | None:
        person = self._session.person(self._selection.person)
        household = self.people.household
        if self._stack.currentWidget() is self.people and household is not None:
            return people_table(household, self.people.measure, self._wording(self._notation(self._session.people())))
        if self._stack.currentWidget() is self.patterns and person is not None:
            words = self._wording(self._settings.notation_for(person.unit))
            return patterns_table(person, self.patterns.standings, words)
        return None

    # Qt's own names from here on.

    def showEvent(self, event: QShowEvent) -> None:
        """Catch up with what changed while another page was in front."""
        super().showEvent(event)
        if self._stale:
            self.refresh()

    def hideEvent(self, event: QHideEvent) -> None:
        """Leave off comparing while another page is in front."""
        super().hideEvent(event)
        self._stale = self._stale or bool(self.standings.waiting)
        self.standings.rest()


def _no_figures(pattern: Pattern, title: str) -> Missing:
    return Missing(
        "What does the envelope say?",
        f"{title} has no figures yet. Type its body chart, its finished measurements, or both; two or three sizes are "
        "enough.",
        "Type the charts",
        Place("pattern", pattern.id),
    )
