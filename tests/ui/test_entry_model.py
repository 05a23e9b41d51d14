from __future__ import annotations

import dataclasses
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt

from sizekeeper.core.pattern import Pattern
from sizekeeper.core.person import Person
from sizekeeper.ui.entry_model import ID_ROLE, NOTE_ROLE, EntryFilter, EntryModel
from tests.build import person

if TYPE_CHECKING:
    from pytestqt.modeltest import ModelTester

    from sizekeeper.store.codec import Value
    from sizekeeper.ui.session import Session


@pytest.fixture
def household(session: Session) -> list[Person]:
    people = [Person("a", "Ada"), Person("b", "bo", groups=("choir",)), Person("c", "Cy", hidden=True)]
    values: list[Value] = [*people, Pattern("p", "Skirt", "Linden", garment="skirt")]
    session.apply_all("Add all", [(None, value) for value in values])
    return people


def names(shown: EntryFilter) -> list[object]:
    return [shown.index(row, 0).data() for row in range(shown.rowCount())]


def test_the_model_keeps_its_promises_while_entries_come_change_and_go(
    session: Session, household: list[Person], qtmodeltester: ModelTester
) -> None:
    model = EntryModel(session, "person")
    qtmodeltester.check(model)  # type: ignore[no-untyped-call]
    session.apply("Rename person", household[0], dataclasses.replace(household[0], name="Zoe"))
    session.apply("Add person", None, Person("d", "Dot"))
    session.apply("Take away", household[1], None)
    assert {model.index(row, 0).data() for row in range(model.rowCount())} == {"Zoe", "Cy", "Dot"}


def test_a_change_of_one_person_repaints_her_row_only(session: Session, household: list[Person]) -> None:
    model = EntryModel(session, "person")
    rows: list[int] = []
    model.dataChanged.connect(lambda first, last, _roles=None: rows.extend((first.row(), last.row())))
    session.draft(dataclasses.replace(household[1], name="Bob"))
    assert [model.index(row, 0).data() for row in rows] == ["Bob", "Bob"]


def test_a_change_of_a_pattern_leaves_the_people_alone(session: Session, household: list[Person]) -> None:
    model = EntryModel(session, "person")
    heard: list[object] = []
    model.dataChanged.connect(lambda *_: heard.append(1))
    session.apply("Change title", session.committed("p"), Pattern("p", "Coat"))
    assert heard == []


def test_people_stand_by_name_without_regard_to_capitals(session: Session, household: list[Person]) -> None:
    assert names(EntryFilter(EntryModel(session, "person"))) == ["Ada", "bo"]


def test_an_accent_does_not_send_a_name_to_the_end(session: Session, household: list[Person]) -> None:
    session.apply("Add person", None, Person("e", "Äda"))
    session.apply("Add person", None, Person("f", "Zoe"))
    assert names(EntryFilter(EntryModel(session, "person"))) == ["Ada", "Äda", "bo", "Zoe"]


def test_a_new_name_moves_a_person_to_her_place(session: Session, household: list[Person]) -> None:
    shown = EntryFilter(EntryModel(session, "person"))
    session.apply("Rename person", household[0], dataclasses.replace(household[0], name="Zoe"))
    assert names(shown) == ["bo", "Zoe"]


def test_hidden_people_are_shown_when_asked_for(session: Session, household: list[Person]) -> None:
    shown = EntryFilter(EntryModel(session, "person"))
    shown.show_hidden(True)
    assert names(shown) == ["Ada", "bo", "Cy"]


@pytest.mark.parametrize(
    ("words", "found"), [("AD", ["Ada"]), ("choir bo", ["bo"]), ("choir ada", []), ("  ", ["Ada", "bo"])]
)
def test_every_word_looked_for_must_stand_somewhere(
    session: Session, household: list[Person], words: str, found: list[str]
) -> None:
    shown = EntryFilter(EntryModel(session, "person"))
    shown.look_for(words)
    assert names(shown) == found


def test_the_row_of_an_entry_is_found_by_its_id(session: Session, household: list[Person]) -> None:
    shown = EntryFilter(EntryModel(session, "person"))
    assert shown.index(shown.row_of("b"), 0).data(ID_ROLE) == "b"
    assert shown.row_of("c") == -1


def test_renaming_in_the_list_is_one_edit(session: Session, household: list[Person]) -> None:
    model = EntryModel(session, "person")
    row = next(row for row in range(model.rowCount()) if model.index(row, 0).data() == "Ada")
    assert model.setData(model.index(row, 0), "  Adele ")
    assert session.undo_stack.undoText() == "Rename person"
    assert session.person("a") == dataclasses.replace(household[0], name="Adele")


def test_a_pattern_is_renamed_in_the_list_too(session: Session, household: list[Person]) -> None:
    model = EntryModel(session, "pattern")
    assert model.setData(model.index(0, 0), "Long skirt")
    assert [p.title for p in session.patterns()] == ["Long skirt"]


def test_an_empty_name_is_not_taken(session: Session, household: list[Person]) -> None:
    model = EntryModel(session, "person")
    assert not model.setData(model.index(0, 0), "  ")
    assert session.undo_stack.count() == 1


def test_the_line_below_a_name_says_what_is_known(session: Session, household: list[Person]) -> None:
    measured = dataclasses.replace(person(bust="92", waist="74"), id="b", name="bo", groups=("choir",))
    session.apply("Measure", household[1], measured)
    people, patterns = EntryFilter(EntryModel(session, "person")), EntryFilter(EntryModel(session, "pattern"))
    assert [people.index(row, 0).data(NOTE_ROLE) for row in range(2)] == ["not measured yet", "2 measurements · choir"]
    assert patterns.index(0, 0).data(NOTE_ROLE) == "Linden · skirt"


def test_a_screen_reader_hears_name_note_and_that_it_is_hidden(session: Session, household: list[Person]) -> None:
    shown = EntryFilter(EntryModel(session, "person"))
    shown.show_hidden(True)
    assert shown.index(2, 0).data(Qt.ItemDataRole.AccessibleTextRole) == "Cy, not measured yet, hidden"
