"""The person on the Person page, and the edits made there: what the parts of the page have in common."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable
from dataclasses import replace
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QDate, QLocale, QObject, Signal

from sizekeeper.core.groups import known_groups
from sizekeeper.core.person import Person
from sizekeeper.core.reading_edit import Taking
from sizekeeper.core.staleness import grows
from sizekeeper.ui.selection import Place

if TYPE_CHECKING:
    from sizekeeper.core.measure import MeasuredBy
    from sizekeeper.core.notation import Notation
    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Change, Session
    from sizekeeper.ui.settings import Settings

Today = Callable[[], dt.date]


class PersonDesk(QObject):
    """Who is being measured, how, and where her edits go.

    Signals:
        leaving(): another person is about to be shown; fields finish what was typed.
        switched(): another person, or none, is shown.
        refreshed(): the person, or the way lengths are shown, is different now.
        measure_chosen(str): a measure's field has the focus.
        taking_changed(): the day, the hand or the clothes for the figures typed now are others.
    """

    leaving = Signal()
    switched = Signal()
    refreshed = Signal()
    measure_chosen = Signal(str)
    taking_changed = Signal()

    def __init__(
        self, session: Session, selection: Selection, settings: Settings, today: Today, parent: QObject | None = None
    ) -> None:
        super().__init__(parent)
        self.session = session
        self.settings = settings
        self.today = today
        self.entry = selection.person
        self.measure = ""
        self._on: dt.date | None = None
        self._by: MeasuredBy | None = None
        self._over = ""
        selection.person_changed.connect(self._on_person)
        session.changed.connect(self._on_change)
        settings.changed.connect(self.refreshed)

    @property
    def person(self) -> Person | None:
        """The person shown, as last edited: what is typed just now stands in its field only."""
        value = self.session.committed(self.entry)
        return value if isinstance(value, Person) else None

    def known_groups(self) -> tuple[str, ...]:
        """Every group that somebody else belongs to, hidden people too."""
        people = [v for v in self.session.values() if isinstance(v, Person) and v.id != self.entry]
        return known_groups(people)

    @property
    def read_only(self) -> bool:
        """Whether nothing can be edited because another window holds the library."""
        return self.session.read_only

    @property
    def child(self) -> bool:
        """Whether the person shown still grows."""
        person = self.person
        return person is not None and grows(person.born, self.today(), child=person.child)

    @property
    def taking(self) -> Taking:
        """How the figures typed now are taken: as chosen, else today and by whoever held the tape last."""
        return Taking(self._on or self.today(), self._by or self._usual_hand(), self._over)

    def _usual_hand(self) -> MeasuredBy:
        person = self.person
        newest = max(person.readings, key=lambda r: r.on, default=None) if person else None
        return newest.by if newest else "helped"

    def take(self, **chosen: Any) -> None:  # noqa: ANN401 - the fields of a Taking, each of its own type
        """Choose the day, the hand or the clothes of the figures typed from now on; those not named stay."""
        taking = replace(self.taking, **chosen)
        if "on" in chosen:
            self._on = taking.on if taking.on != self.today() else None
        if "by" in chosen:
            self._by = taking.by
        if "over" in chosen:
            self._over = taking.over
        self.taking_changed.emit()

    def other_notation(self, unit: str) -> Notation:
        """How a length typed in one unit is shown in the other one."""
        return self.settings.notation_in("cm" if unit in ("in", "ft", "yd") else "in")

    def choose(self, measure: str) -> None:
        """A measure's field has the focus now."""
        if measure != self.measure:
            self.measure = measure
            self.measure_chosen.emit(measure)

    def draft(self, after: Person) -> None:
        """Lay an unsaved value over the person."""
        self.session.draft(after)

    def edit(self, text: str, after: Person, field: str) -> None:
        """Make an edit of the person, named as undo shows it."""
        before = self.person
        if before == after:
            self.restore()
        else:
            self.session.apply(text, before, after, place=Place("person", self.entry, field))

    def restore(self) -> None:
        """Take the draft off again."""
        self.session.drop_draft(self.entry)

    def day(self, day: dt.date) -> str:
        """A day as people write it: `today`, `3 Nov 2026`."""
        return "today" if day == self.today() else self.plain_day(day)

    def plain_day(self, day: dt.date) -> str:
        """A day with its date in any case."""
        return QLocale().toString(QDate(day.year, day.month, day.day), "d MMM yyyy")

    def _on_person(self, entry: str) -> None:
        self.leaving.emit()
        self.entry = entry
        self._on, self._by, self._over = None, None, ""
        self.switched.emit()

    def _on_change(self, change: Change) -> None:
        if self.entry in change.ids:
            self.refreshed.emit()
