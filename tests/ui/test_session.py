from __future__ import annotations

import dataclasses
import sqlite3
from typing import TYPE_CHECKING

import pytest

from sizekeeper.core.chart import Chart
from sizekeeper.core.pattern import Pattern
from sizekeeper.core.person import Person
from sizekeeper.store.codec import Value, encode
from sizekeeper.store.library import Library
from sizekeeper.store.writer import Writer
from sizekeeper.ui.selection import Place
from sizekeeper.ui.session import Change, Session

if TYPE_CHECKING:
    import datetime as dt
    from collections.abc import Callable
    from pathlib import Path

    from pytestqt.qtbot import QtBot

ILSE = Person("ilse", "Ilse")
RENAMED = dataclasses.replace(ILSE, name="Ilse K.")


def in_file(path: Path, now: Callable[[], dt.datetime]) -> list[object]:
    with Library.open(path, now=now, read_only=True) as library:
        return list(library.values())


def test_an_edit_is_in_the_file_once_the_saved_mark_is_there(
    session: Session, library_file: Path, now: Callable[[], dt.datetime], qtbot: QtBot
) -> None:
    with qtbot.waitSignal(session.saved_changed, check_params_cb=lambda saved: saved):
        session.apply("Add person", None, ILSE)
    assert session.saved
    assert in_file(library_file, now) == [ILSE]


def test_the_mark_goes_off_before_the_edit_is_in_the_file(session: Session) -> None:
    marks: list[bool] = []
    session.saved_changed.connect(marks.append)
    session.apply("Add person", None, ILSE)
    assert marks == [False]
    assert not session.saved


def test_undo_and_redo_put_entries_back_and_say_what_they_did(session: Session) -> None:
    said: list[tuple[object, str]] = []
    session.revisited.connect(lambda place, text: said.append((place, text)))
    session.apply("Add person", None, ILSE)
    session.apply("Change name", ILSE, RENAMED, place=Place("person", "ilse", "name"))
    session.undo_stack.undo()
    assert session.committed("ilse") == ILSE
    session.undo_stack.redo()
    assert session.committed("ilse") == RENAMED
    place = Place("person", "ilse", "name")
    assert said == [(place, "Undone: Change name"), (place, "Redone: Change name")]


def test_several_entries_are_one_step_to_undo(session: Session) -> None:
    session.apply_all("Add pattern", [(None, Pattern("p", "Dress")), (None, Chart("c", "p", "body"))])
    session.undo_stack.undo()
    assert session.values() == []


def test_an_edit_that_changes_nothing_is_no_step(session: Session) -> None:
    session.apply("Add person", None, ILSE)
    session.apply("Change name", ILSE, dataclasses.replace(ILSE))
    assert session.undo_stack.count() == 1


def test_an_edit_announces_what_it_touched(session: Session) -> None:
    heard: list[Change] = []
    session.changed.connect(heard.append)
    session.apply("Add person", None, ILSE)
    assert heard == [Change(frozenset({"person"}), frozenset({"ilse"}), "Add person")]


def test_a_draft_is_shown_but_not_saved(session: Session, library_file: Path, now: Callable[[], dt.datetime]) -> None:
    session.apply("Add person", None, ILSE)
    session.draft(RENAMED)
    assert (session.value("ilse"), session.committed("ilse")) == (RENAMED, ILSE)
    assert session.writer.flush()
    assert in_file(library_file, now) == [ILSE]


def test_a_dropped_draft_shows_what_stands_again(session: Session) -> None:
    session.apply("Add person", None, ILSE)
    session.draft(RENAMED)
    session.drop_draft("ilse")
    assert session.value("ilse") == ILSE
    assert not session.drafting


def test_typing_back_to_what_stands_is_no_draft(session: Session) -> None:
    session.apply("Add person", None, ILSE)
    session.draft(RENAMED)
    session.draft(ILSE)
    assert not session.drafting


def test_the_same_draft_twice_is_told_once(session: Session) -> None:
    session.apply("Add person", None, ILSE)
    heard: list[Change] = []
    session.drafted.connect(heard.append)
    session.draft(RENAMED)
    session.draft(RENAMED)
    assert len(heard) == 1


@pytest.mark.parametrize("after", [ILSE, RENAMED])
def test_an_edit_ends_the_draft_of_its_entry(session: Session, after: Person) -> None:
    session.apply("Add person", None, ILSE)
    session.draft(dataclasses.replace(ILSE, name="Ils"))
    session.apply("Change name", ILSE, after)
    assert not session.drafting
    assert session.value("ilse") == after


def test_undo_lays_a_draft_of_the_same_entry_aside(session: Session) -> None:
    session.apply("Add person", None, ILSE)
    session.apply("Change name", ILSE, RENAMED)
    session.draft(dataclasses.replace(ILSE, name="Ils"))
    session.undo_stack.undo()
    assert session.value("ilse") == ILSE


def test_people_and_patterns_come_by_name_without_the_hidden_ones(session: Session) -> None:
    people: list[Value] = [Person("1", "wim"), Person("2", "Ada"), Person("3", "Bo", hidden=True)]
    patterns: list[Value] = [Pattern("4", "Skirt"), Pattern("5", "coat"), Pattern("6", "Top", hidden=True)]
    session.apply_all("Add all", [(None, value) for value in people + patterns])
    assert [p.name for p in session.people()] == ["Ada", "wim"]
    assert [p.name for p in session.people(hidden=True)] == ["Ada", "Bo", "wim"]
    assert [p.title for p in session.patterns()] == ["coat", "Skirt"]
    assert [p.title for p in session.patterns(hidden=True)] == ["coat", "Skirt", "Top"]


def test_a_view_without_figures_of_its_own_has_the_chart_of_all_views(session: Session) -> None:
    whole, view_a = Chart("c1", "p", "finished"), Chart("c2", "p", "finished", view="A")
    session.apply_all("Add charts", [(None, whole), (None, view_a)])
    assert session.chart("p", "finished", "A") == view_a
    assert session.chart("p", "finished", "B") == whole
    assert session.chart("p", "body") is None


def test_a_library_that_another_window_holds_is_not_edited(
    session: Session, library_file: Path, now: Callable[[], dt.datetime]
) -> None:
    session.apply("Add person", None, ILSE)
    session.writer.flush()
    writer = Writer(Library.open(library_file, now=now))
    other = Session(writer)
    said: list[str] = []
    other.declined.connect(said.append)
    other.draft(RENAMED)
    other.apply("Change name", ILSE, RENAMED)
    assert other.read_only
    assert other.value("ilse") == ILSE
    assert said == ["Nothing was changed: the library can only be looked at in this window."]
    writer.close()
    writer.library.close()


def change_outside(path: Path, person: Person) -> None:
    """Write into the file as another program would: without asking for the lock."""
    connection = sqlite3.connect(path)
    connection.execute("UPDATE version SET value = ? WHERE entry = ?", (encode(person), person.id))
    connection.execute("UPDATE library SET generation = generation + 1, word = 'outside'")
    connection.commit()
    connection.close()


def test_an_edit_of_an_entry_that_changed_outside_is_refused_and_kept(
    session: Session, library_file: Path, qtbot: QtBot
) -> None:
    session.apply("Add person", None, ILSE)
    session.writer.flush()
    change_outside(library_file, dataclasses.replace(ILSE, name="Somebody else"))
    with qtbot.waitSignal(session.failed) as failed:
        session.apply("Change name", ILSE, RENAMED)
    assert "Ilse" in failed.args[0]
    assert session.value("ilse") == RENAMED
    assert [edit.text for edit in session.writer.refused] == ["Change name"]
    assert not session.saved


def test_reading_again_shows_the_file_and_lets_the_steps_to_undo_go(session: Session, library_file: Path) -> None:
    session.apply("Add person", None, ILSE)
    session.writer.flush()
    outside = dataclasses.replace(ILSE, name="Somebody else")
    change_outside(library_file, outside)
    heard: list[Change] = []
    session.changed.connect(heard.append)
    session.reload()
    assert session.values() == [outside]
    assert session.saved
    assert session.undo_stack.count() == 0
    assert heard[-1].ids == {"ilse"}


def test_what_is_left_for_later_is_there_when_it_is_asked_for(
    library_file: Path, now: Callable[[], dt.datetime]
) -> None:
    dress, chart = Pattern("p1", "Dress"), Chart("c1", "p1", "body")
    with Library.open(library_file, now=now) as library:
        library.save("Add", [(None, ILSE), (None, dress), (None, chart)])
        with Writer(library) as writer:
            session = Session(writer, first=("person", "pattern"))
            assert session.committed("c1") is None
            assert (session.people(), session.patterns()) == ([ILSE], [dress])
            assert session.charts("p1") == [chart]
            assert session.values() == [ILSE, dress, chart]
