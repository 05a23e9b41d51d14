"""What can be done with a person or a pattern as a whole: make, duplicate, hide, look at its history, erase."""

from __future__ import annotations

import dataclasses
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QAction, QKeySequence

from sizekeeper.core.pattern import Pattern
from sizekeeper.core.person import Person
from sizekeeper.store.codec import new_id
from sizekeeper.ui.entry_words import entry_name
from sizekeeper.ui.selection import Place

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    from PySide6.QtWidgets import QWidget

    from sizekeeper.store.codec import Value
    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Session
    from sizekeeper.ui.settings import Settings


def free_name(wanted: str, taken: Iterable[str]) -> str:
    """A name that nobody has yet: the wanted one, or with a number behind it."""
    used = {name.casefold() for name in taken}
    numbered = (wanted if n == 1 else f"{wanted} {n}" for n in range(1, len(used) + 2))
    return next(name for name in numbered if name.casefold() not in used)


class EntryActions(QObject):
    """The actions of the Person and the Pattern menu, on whoever and whatever is chosen.

    Signals:
        told(str): something was done that has no place on a page to be seen.
    """

    told = Signal(str)

    def __init__(self, session: Session, selection: Selection, settings: Settings, window: QWidget) -> None:
        super().__init__(window)
        self._session = session
        self._selection = selection
        self._settings = settings
        self._window = window
        self.new_person = self._action("&New person", self.make_person, QKeySequence.StandardKey.New)
        self.copy_person = self._action("&Duplicate", self._duplicate_person)
        self.hide_person = self._action("&Hide", self._hide_person)
        self.history_of_person = self._action("H&istory…", self._show_history_of_person)
        self.erase_person = self._action("&Erase a person for good…", self._ask_to_erase)
        self.new_pattern = self._action("&New pattern", self.make_pattern, "Ctrl+Shift+N")
        self.copy_pattern = self._action("&Duplicate", self._duplicate_pattern)
        self.hide_pattern = self._action("&Hide", self._hide_pattern)
        self.history_of_pattern = self._action("H&istory…", self._show_history_of_pattern)
        selection.person_changed.connect(self._refresh)
        selection.pattern_changed.connect(self._refresh)
        session.changed.connect(self._refresh)
        self._refresh()

    def _action(
        self, text: str, run: Callable[[], object], keys: QKeySequence.StandardKey | str | None = None
    ) -> QAction:
        action = QAction(text, self)
        action.triggered.connect(run)
        if isinstance(keys, str):
            action.setShortcut(QKeySequence(keys))
        elif keys is not None:
            action.setShortcuts(keys)
        return action

    @property
    def _person(self) -> Person | None:
        value = self._session.committed(self._selection.person)
        return value if isinstance(value, Person) else None

    @property
    def _pattern(self) -> Pattern | None:
        value = self._session.committed(self._selection.pattern)
        return value if isinstance(value, Pattern) else None

    def _refresh(self, _what: object = None) -> None:
        """Offer only what can be done, and say to whom."""
        write, person, pattern = not self._session.read_only, self._person, self._pattern
        for action in (self.new_person, self.new_pattern):
            action.setEnabled(write)
        for action in (self.copy_person, self.hide_person, self.erase_person):
            action.setEnabled(write and person is not None)
        for action in (self.copy_pattern, self.hide_pattern):
            action.setEnabled(write and pattern is not None)
        self.history_of_person.setEnabled(person is not None)
        self.history_of_pattern.setEnabled(pattern is not None)
        self.hide_person.setText("&Bring back" if person is not None and person.hidden else "&Hide")
        self.hide_pattern.setText("&Bring back" if pattern is not None and pattern.hidden else "&Hide")

    def make_person(self) -> None:
        """Add a person and put the cursor into her name."""
        name = free_name("New person", (p.name for p in self._session.people(hidden=True)))
        person = Person(new_id(), name, unit=self._settings.unit)
        place = Place("person", person.id, "name")
        self._session.apply("Add person", None, person, place=place)
        self._selection.go(place)

    def make_pattern(self) -> None:
        """Add a pattern and put the cursor into its title."""
        title = free_name("New pattern", (p.title for p in self._session.patterns(hidden=True)))
        pattern = Pattern(new_id(), title, unit=self._settings.unit)
        place = Place("pattern", pattern.id, "title")
        self._session.apply("Add pattern", None, pattern, place=place)
        self._selection.go(place)

    def _duplicate_person(self) -> None:
        if (person := self._person) is None:
            return
        name = free_name(f"{entry_name(person)} (copy)", (p.name for p in self._session.people(hidden=True)))
        copy = dataclasses.replace(person, id=new_id(), name=name, hidden=False)
        place = Place("person", copy.id, "name")
        self._session.apply("Duplicate person", None, copy, place=place)
        self._selection.go(place)

    def _duplicate_pattern(self) -> None:
        """Copy a pattern with all its charts and its pieces, as one step."""
        from sizekeeper.core.piece import Pieces  # noqa: PLC0415 - not wanted for the first picture

        if (pattern := self._pattern) is None:
            return
        title = free_name(f"{entry_name(pattern)} (copy)", (p.title for p in self._session.patterns(hidden=True)))
        copy = dataclasses.replace(pattern, id=new_id(), title=title, hidden=False)
        charts = [
            dataclasses.replace(chart, id=new_id(), pattern=copy.id) for chart in self._session.charts(pattern.id)
        ]
        place = Place("pattern", copy.id, "title")
        pieces = [
            dataclasses.replace(value, id=new_id(), pattern=copy.id)
            for value in self._session.values()
            if isinstance(value, Pieces) and value.pattern == pattern.id
        ]
        copies: list[Value] = [copy, *charts, *pieces]
        self._session.apply_all("Duplicate pattern", [(None, value) for value in copies], place=place)
        self._selection.go(place)

    def _hide_person(self) -> None:
        if (person := self._person) is None:
            return
        text = f"{'Bring back' if person.hidden else 'Hide'} person"
        changed = dataclasses.replace(person, hidden=not person.hidden)
        self._session.apply(text, person, changed, place=Place("person", person.id))
        if changed.hidden:
            self._selection.choose_person(next((p.id for p in self._session.people()), ""))
            self.told.emit(f"{entry_name(person)} is hidden. “Show hidden” at the left shows who is hidden.")

    def _hide_pattern(self) -> None:
        if (pattern := self._pattern) is None:
            return
        text = f"{'Bring back' if pattern.hidden else 'Hide'} pattern"
        changed = dataclasses.replace(pattern, hidden=not pattern.hidden)
        self._session.apply(text, pattern, changed, place=Place("pattern", pattern.id))
        if changed.hidden:
            self._selection.choose_pattern(next((p.id for p in self._session.patterns()), ""))
            self.told.emit(f"{entry_name(pattern)} is hidden. “Show hidden” at the left shows what is hidden.")

    def _show_history_of_person(self) -> None:
        if (person := self._person) is not None:
            self._show_history(person)

    def _show_history_of_pattern(self) -> None:
        if (pattern := self._pattern) is not None:
            self._show_history(pattern)

    def _show_history(self, value: Person | Pattern) -> None:
        from sizekeeper.ui.history_dialog import HistoryDialog  # noqa: PLC0415 - seldom wanted

        self._session.writer.flush(_PATIENCE_S)
        HistoryDialog(self._session, value, self._window).open()

    def _ask_to_erase(self) -> None:
        from sizekeeper.ui.erase_dialog import EraseDialog  # noqa: PLC0415 - seldom wanted

        if (person := self._person) is not None:
            dialog = EraseDialog(self._session, person, self._window)
            dialog.erased.connect(self.told)
            dialog.open()


_PATIENCE_S = 2.0
"""How long the history waits for the edits that are still on their way to the file; coined."""
