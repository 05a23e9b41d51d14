from __future__ import annotations

import dataclasses
import sqlite3
from typing import TYPE_CHECKING, cast

import pytest
from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QSpinBox

from sizekeeper.core.pattern import Pattern
from sizekeeper.core.person import Person
from sizekeeper.store.library import Library
from sizekeeper.store.writer import Writer
from sizekeeper.ui.library_actions import LibraryActions
from sizekeeper.ui.selection import Place
from sizekeeper.ui.session import Session
from sizekeeper.ui.window import MainWindow
from sizekeeper.ui.window_place import bring_back

if TYPE_CHECKING:
    import datetime as dt
    from collections.abc import Callable, Iterator
    from pathlib import Path

    from PySide6.QtWidgets import QLineEdit
    from pytestqt.qtbot import QtBot

    from sizekeeper.store.codec import Value
    from sizekeeper.ui.pages import PageKind
    from sizekeeper.ui.settings import Settings

ADA, BO = Person("a", "Ada"), Person("b", "Bo")
SKIRT, TOP = Pattern("s", "Skirt"), Pattern("t", "Top")


def fill(session: Session) -> None:
    values: list[Value] = [ADA, BO, SKIRT, TOP]
    session.apply_all("Add all", [(None, value) for value in values])
    session.undo_stack.clear()


def asked(window: MainWindow, page: str) -> list[Place]:
    return window.pages.page(page).asked  # type: ignore[attr-defined, no-any-return]


def field(window: MainWindow, page: str) -> QLineEdit:
    return cast("QLineEdit", window.pages.page(page).field)  # type: ignore[attr-defined]


def active(window: MainWindow, qtbot: QtBot) -> None:
    with qtbot.waitActive(window):
        window.show()
        window.activateWindow()


def test_an_empty_library_welcomes_and_the_first_person_opens_the_pages(window: MainWindow) -> None:
    assert not window.pages_in_front
    window.entries.new_person.trigger()
    assert window.pages_in_front
    assert window.pages.front == "person"
    assert asked(window, "person")[-1] == Place("person", window.selection.person, "name")


def test_undoing_the_first_entry_comes_back_to_the_welcome(window: MainWindow) -> None:
    window.entries.new_pattern.trigger()
    window.session.undo_stack.undo()
    assert not window.pages_in_front
    assert window.selection.pattern == ""


def test_the_first_person_and_pattern_are_chosen_at_the_start(window: MainWindow) -> None:
    fill(window.session)
    assert (window.selection.person, window.selection.pattern) == ("a", "s")


def test_picking_a_pattern_brings_its_page(window: MainWindow) -> None:
    fill(window.session)
    window.sidebar.patterns.chosen.emit("t")
    assert (window.pages.front, window.selection.pattern) == ("pattern", "t")


def test_on_the_fit_page_picking_somebody_stays_there(window: MainWindow) -> None:
    fill(window.session)
    window.turn_to("fit")
    window.sidebar.people.chosen.emit("b")
    assert (window.pages.front, window.selection.person) == ("fit", "b")


def test_opening_somebody_from_the_fit_page_goes_to_her_page(window: MainWindow) -> None:
    fill(window.session)
    window.turn_to("fit")
    window.sidebar.opened.emit("b")
    assert (window.pages.front, window.selection.person) == ("person", "b")


def test_undo_of_an_edit_on_another_page_goes_there_and_says_what_it_did(window: MainWindow) -> None:
    fill(window.session)
    window.session.apply(
        "Change title", TOP, dataclasses.replace(TOP, title="Shirt"), place=Place("pattern", "t", "title")
    )
    window.turn_to("fit")
    window.session.undo_stack.undo()
    assert (window.pages.front, window.selection.pattern) == ("pattern", "t")
    assert window.status.words.text() == "Undone: Change title"
    assert asked(window, "pattern")[-1] == Place("pattern", "t", "title")


def test_a_place_is_heard_by_a_page_that_was_not_there_yet(window: MainWindow) -> None:
    fill(window.session)
    window.selection.go(Place("pattern", "s", "title"))
    assert asked(window, "pattern") == [Place("pattern", "s", "title")]


def test_what_undo_did_is_said_until_the_next_edit(window: MainWindow) -> None:
    fill(window.session)
    window.session.apply("Change name", ADA, dataclasses.replace(ADA, name="Ava"))
    window.session.undo_stack.undo()
    window.session.apply("Change title", SKIRT, dataclasses.replace(SKIRT, title="Kilt"))
    assert window.status.words.text() == ""


def test_the_saved_mark_speaks_when_everything_is_in_the_file(window: MainWindow, qtbot: QtBot) -> None:
    with qtbot.waitSignal(window.session.saved_changed, check_params_cb=bool):
        fill(window.session)
    assert window.status.mark.text() == "Saved"


CONTROL, SHIFT = Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.ShiftModifier


@pytest.mark.parametrize(("key", "held"), [(Qt.Key.Key_Z, CONTROL | SHIFT), (Qt.Key.Key_Y, CONTROL)])
def test_ctrl_z_in_a_field_undoes_the_librarys_edit_while_nobody_is_typing_and_both_keys_redo_it(
    window: MainWindow, qtbot: QtBot, key: Qt.Key, held: Qt.KeyboardModifier
) -> None:
    fill(window.session)
    active(window, qtbot)
    line = field(window, "person")
    line.setFocus()
    QTest.keyClicks(line, "Ava")
    window.session.apply("Change name", ADA, dataclasses.replace(ADA, name="Ava"))
    QTest.keyClick(line, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert window.session.committed("a") == ADA
    QTest.keyClick(line, key, held)
    assert window.session.committed("a") == dataclasses.replace(ADA, name="Ava")


def test_ctrl_z_in_the_middle_of_typing_belongs_to_the_field(window: MainWindow, qtbot: QtBot) -> None:
    fill(window.session)
    window.session.apply("Change name", ADA, dataclasses.replace(ADA, name="Ava"))
    active(window, qtbot)
    line = field(window, "person")
    line.setFocus()
    QTest.keyClicks(line, "Avas")
    window.session.draft(dataclasses.replace(ADA, name="Avas"))
    QTest.keyClick(line, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert line.text() == ""
    assert window.session.undo_stack.index() == 1
    QTest.keyClick(line, Qt.Key.Key_Y, CONTROL)
    assert line.text() == "Avas"


def test_ctrl_z_in_a_number_that_is_stepped_undoes_the_librarys_edits_but_not_in_the_middle_of_typing(
    window: MainWindow, qtbot: QtBot
) -> None:
    fill(window.session)
    active(window, qtbot)
    line = field(window, "person")
    number = QSpinBox(line.parentWidget())
    number.setKeyboardTracking(False)
    number.show()
    number.setFocus()
    window.session.apply("Change name", ADA, dataclasses.replace(ADA, name="Ava"))
    QTest.keyClicks(number, "5")
    QTest.keyClick(number, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert (window.session.undo_stack.index(), number.text()) == (1, "0")
    QTest.keyClick(number, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert window.session.undo_stack.index() == 0


def test_ctrl_f_leads_to_the_search_box_even_when_the_list_was_put_away(window: MainWindow, qtbot: QtBot) -> None:
    fill(window.session)
    active(window, qtbot)
    window.show_sidebar(False)
    window.menus.find.trigger()
    assert window.sidebar.search.hasFocus()
    assert window.menus.side.isChecked()


def test_place_page_person_and_pattern_are_remembered(
    window: MainWindow, settings: Settings, plain_pages: tuple[PageKind, ...], qtbot: QtBot
) -> None:
    fill(window.session)
    window.setGeometry(60, 50, 640, 480)
    window.selection.choose_person("b")
    window.selection.choose_pattern("t")
    window.turn_to("fit")
    window.close()
    again = MainWindow(window.session, settings, plain_pages)
    qtbot.addWidget(again)
    assert (again.selection.person, again.selection.pattern, again.pages.front) == ("b", "t", "fit")
    assert again.size() == window.size()


def test_another_library_does_not_begin_where_this_one_was_left(
    window: MainWindow, settings: Settings, plain_pages: tuple[PageKind, ...], qtbot: QtBot
) -> None:
    fill(window.session)
    window.selection.choose_person("b")
    window.close()
    settings.stored.setValue("window/library", "another")
    again = MainWindow(window.session, settings, plain_pages)
    qtbot.addWidget(again)
    assert again.selection.person == "a"


@pytest.mark.parametrize("place", [QRect(-5000, 40, 600, 400), QRect(100, 9000, 600, 400), QRect(0, -3000, 9000, 9000)])
def test_a_window_off_every_screen_is_brought_back(window: MainWindow, place: QRect) -> None:
    window.setGeometry(place)
    bring_back(window)
    screen = QGuiApplication.primaryScreen().availableGeometry()
    assert screen.contains(window.geometry())


def test_a_window_on_the_screen_stays_where_it_is(window: MainWindow) -> None:
    window.setGeometry(50, 60, 600, 400)
    bring_back(window)
    assert window.geometry() == QRect(50, 60, 600, 400)


def test_closing_finishes_what_is_being_typed_and_saves_it(
    window: MainWindow, library_file: Path, now: Callable[[], dt.datetime], qtbot: QtBot
) -> None:
    fill(window.session)
    active(window, qtbot)
    line = field(window, "person")

    def commit() -> None:
        window.session.apply("Change name", ADA, dataclasses.replace(ADA, name=line.text()))

    line.editingFinished.connect(commit)
    line.setFocus()
    QTest.keyClicks(line, "Adele")
    window.close()
    with Library.open(library_file, now=now, read_only=True) as library:
        assert "Adele" in [value.name for value in library.values() if isinstance(value, Person)]


def refuse(window: MainWindow, library_file: Path, qtbot: QtBot) -> None:
    """Have an edit refused: the file goes away under the window."""
    fill(window.session)
    window.session.writer.flush()
    library_file.rename(library_file.with_suffix(".moved"))
    with qtbot.waitSignal(window.session.failed):
        window.session.apply("Change name", ADA, dataclasses.replace(ADA, name="Ava"))


def test_an_edit_that_cannot_be_saved_is_kept_and_offered_as_a_copy(
    window: MainWindow, library_file: Path, qtbot: QtBot
) -> None:
    refuse(window, library_file, qtbot)
    assert "was moved or deleted" in window.notice.text
    assert window.status.mark.text() == "Not saved"
    assert window.session.person("a") == dataclasses.replace(ADA, name="Ava")
    library_file.with_suffix(".moved").rename(library_file)
    with qtbot.waitSignal(window.session.saved_changed, check_params_cb=bool):
        window.library.retry.trigger()
    assert window.notice.text == ""
    assert window.status.mark.text() == "Saved"


@pytest.mark.parametrize("letting_go", [False, True])
def test_edits_that_are_not_in_the_file_are_let_go_only_when_she_says_so(
    window: MainWindow, library_file: Path, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch, letting_go: bool
) -> None:
    refuse(window, library_file, qtbot)
    library_file.with_suffix(".moved").rename(library_file)
    asked_about: list[str] = []

    def let_go(_window: MainWindow, edits: str) -> bool:
        asked_about.append(edits)
        return letting_go

    monkeypatch.setattr(LibraryActions, "ask_to_let_go", staticmethod(let_go))
    window.library.read_again.trigger()
    assert asked_about == ["“Change name”"]
    assert window.session.person("a") == (ADA if letting_go else dataclasses.replace(ADA, name="Ava"))
    assert len(window.session.writer.refused) == (0 if letting_go else 1)


def test_closing_asks_before_an_edit_is_lost(
    window: MainWindow, library_file: Path, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    refuse(window, library_file, qtbot)
    answers = [False, True]
    monkeypatch.setattr(MainWindow, "ask_to_lose", lambda *_: answers.pop(0))
    assert not window.close()
    assert window.close()
    assert answers == []


def test_a_file_changed_by_another_program_is_noticed_when_the_window_comes_back(
    window: MainWindow, library_file: Path
) -> None:
    fill(window.session)
    window.session.writer.flush()
    connection = sqlite3.connect(library_file)
    connection.execute("UPDATE library SET generation = generation + 1, word = 'outside'")
    connection.commit()
    connection.close()
    window.saving.look_outside()
    assert window.notice.text.startswith("The library was changed by another program.")


@pytest.fixture
def looking(
    session: Session,
    library_file: Path,
    now: Callable[[], dt.datetime],
    settings: Settings,
    plain_pages: tuple[PageKind, ...],
    qtbot: QtBot,
) -> Iterator[MainWindow]:
    """A second window on the library that the session holds."""
    fill(session)
    session.writer.flush()
    writer = Writer(Library.open(library_file, now=now))
    second = MainWindow(Session(writer), settings, plain_pages)
    qtbot.addWidget(second)
    yield second
    writer.close()
    writer.library.close()


def test_the_second_window_says_that_it_only_looks(looking: MainWindow) -> None:
    assert looking.notice.text == "This library can only be looked at here: another window has it open."
    assert looking.status.mark.text() == "Read-only"
    assert not looking.entries.new_person.isEnabled()
    assert not looking.entries.erase_person.isEnabled()


def test_an_edit_in_a_window_that_only_looks_changes_nothing_and_says_so(looking: MainWindow) -> None:
    looking.session.apply("Change name", ADA, dataclasses.replace(ADA, name="Ava"))
    assert looking.session.person("a") == ADA
    assert looking.status.words.text() == "Nothing was changed: the library can only be looked at in this window."


def test_a_window_that_only_looks_follows_the_other_one(looking: MainWindow, session: Session) -> None:
    session.apply("Change name", ADA, dataclasses.replace(ADA, name="Ava"))
    session.writer.flush()
    looking.saving.look_outside()
    assert looking.session.person("a") == dataclasses.replace(ADA, name="Ava")


def test_the_menu_of_an_entry_opens_at_the_entry(window: MainWindow) -> None:
    fill(window.session)
    window.sidebar.menu_wanted.emit("s", QPoint(20, 20))
    assert window.menus.pattern_menu.isVisible()
    window.menus.pattern_menu.close()


def test_tab_leads_from_the_list_through_the_pages_bar_into_the_page(window: MainWindow, qtbot: QtBot) -> None:
    fill(window.session)
    active(window, qtbot)
    window.sidebar.search.setFocus()
    reached = set()
    for _ in range(12):
        focus = QApplication.focusWidget()
        assert focus is not None
        reached.add(focus)
        QTest.keyClick(focus, Qt.Key.Key_Tab)
    assert {
        window.sidebar.people.view,
        window.sidebar.patterns.view,
        window.pages.bar,
        field(window, "person"),
    } <= reached


def test_ctrl_z_in_the_empty_search_box_undoes_the_librarys_edit(window: MainWindow, qtbot: QtBot) -> None:
    fill(window.session)
    active(window, qtbot)
    window.session.apply("Change name", ADA, dataclasses.replace(ADA, name="Ava"))
    window.find_entry()
    QTest.keyClick(window.sidebar.search, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert window.session.committed("a") == ADA


def test_ctrl_z_in_the_search_box_takes_back_what_is_typed_there(window: MainWindow, qtbot: QtBot) -> None:
    fill(window.session)
    active(window, qtbot)
    window.session.apply("Change name", ADA, dataclasses.replace(ADA, name="Ava"))
    window.find_entry()
    QTest.keyClicks(window.sidebar.search, "dress")
    QTest.keyClick(window.sidebar.search, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert (window.sidebar.search.text(), window.session.undo_stack.undoText()) == ("", "Change name")
