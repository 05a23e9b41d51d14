from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAction
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLineEdit

from sizekeeper.core.pattern import Pattern
from sizekeeper.core.person import Person
from sizekeeper.ui.sidebar import Sidebar

if TYPE_CHECKING:
    from PySide6.QtCore import QPoint
    from PySide6.QtWidgets import QListView
    from pytestqt.qtbot import QtBot

    from sizekeeper.store.codec import Value
    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Session


@pytest.fixture
def sidebar(session: Session, selection: Selection, qtbot: QtBot) -> Sidebar:
    values: list[Value] = [Person("a", "Ada"), Person("b", "Bo"), Pattern("s", "Skirt"), Pattern("t", "Top")]
    session.apply_all("Add all", [(None, value) for value in values])
    selection.choose_person("a")
    selection.choose_pattern("s")
    new_person, new_pattern = QAction("New person"), QAction("New pattern")
    sidebar = Sidebar(session, selection, new_person, new_pattern)
    new_person.setParent(sidebar)
    new_pattern.setParent(sidebar)
    qtbot.addWidget(sidebar)
    sidebar.resize(240, 600)
    with qtbot.waitExposed(sidebar):
        sidebar.show()
    return sidebar


def middle(view: QListView, row: int) -> QPoint:
    return view.visualRect(view.model().index(row, 0)).center()


def test_a_click_chooses_a_person_and_leaves_the_pattern(sidebar: Sidebar, selection: Selection) -> None:
    view = sidebar.people.view
    QTest.mouseClick(view.viewport(), Qt.MouseButton.LeftButton, pos=middle(view, 1))
    assert (selection.person, selection.pattern) == ("b", "s")


def test_arrow_keys_walk_through_the_patterns(sidebar: Sidebar, selection: Selection) -> None:
    QTest.keyClick(sidebar.patterns.view, Qt.Key.Key_Down)
    assert selection.pattern == "t"


def test_enter_opens_the_entry(sidebar: Sidebar, qtbot: QtBot) -> None:
    with qtbot.waitSignal(sidebar.opened, check_params_cb=lambda entry: entry == "s"):
        QTest.keyClick(sidebar.patterns.view, Qt.Key.Key_Return)


def test_a_double_click_opens_the_entry(sidebar: Sidebar, qtbot: QtBot) -> None:
    view = sidebar.people.view
    QTest.mouseClick(view.viewport(), Qt.MouseButton.LeftButton, pos=middle(view, 1))
    with qtbot.waitSignal(sidebar.opened, check_params_cb=lambda entry: entry == "b"):
        view = sidebar.people.view
        QTest.mouseDClick(view.viewport(), Qt.MouseButton.LeftButton, pos=middle(view, 1))


def test_what_is_chosen_elsewhere_is_marked(sidebar: Sidebar, selection: Selection) -> None:
    selection.choose_person("b")
    assert sidebar.people.view.currentIndex().data() == "Bo"


def test_searching_does_not_choose_anybody_else(sidebar: Sidebar, selection: Selection) -> None:
    QTest.keyClicks(sidebar.search, "bo")
    assert selection.person == "a"
    assert not sidebar.people.view.currentIndex().isValid()
    QTest.keyClick(sidebar.search, Qt.Key.Key_Escape)
    assert (sidebar.search.text(), sidebar.people.view.currentIndex().data()) == ("", "Ada")


def test_enter_in_the_search_box_opens_the_first_that_was_found(sidebar: Sidebar, qtbot: QtBot) -> None:
    QTest.keyClicks(sidebar.search, "top")
    with qtbot.waitSignal(sidebar.opened, check_params_cb=lambda entry: entry == "t"):
        QTest.keyClick(sidebar.search, Qt.Key.Key_Return)
    assert sidebar.search.text() == ""


def test_enter_in_an_empty_search_box_opens_nothing(sidebar: Sidebar, qtbot: QtBot) -> None:
    with qtbot.assertNotEmitted(sidebar.opened):
        QTest.keyClick(sidebar.search, Qt.Key.Key_Return)


def test_down_leads_from_the_search_box_into_the_list(sidebar: Sidebar, qtbot: QtBot) -> None:
    with qtbot.waitActive(sidebar):
        sidebar.activateWindow()
    sidebar.start_search()
    assert sidebar.search.hasFocus()
    QTest.keyClick(sidebar.search, Qt.Key.Key_Down)
    assert sidebar.people.view.hasFocus()


def test_a_search_without_result_says_so(sidebar: Sidebar) -> None:
    QTest.keyClicks(sidebar.search, "zzz")
    assert sidebar.people.note.text() == "Nobody found."
    assert sidebar.people.note.isVisible()
    assert not sidebar.people.view.isVisible()


def test_hidden_entries_are_offered_only_when_there_are_some(sidebar: Sidebar, session: Session) -> None:
    assert not sidebar.hidden_too.isVisible()
    session.apply("Hide person", session.committed("b"), Person("b", "Bo", hidden=True))
    assert sidebar.hidden_too.isVisible()
    assert sidebar.people.filter.rowCount() == 1
    sidebar.hidden_too.setChecked(True)
    assert sidebar.people.filter.rowCount() == 2


def test_bringing_the_last_hidden_one_back_takes_the_offer_away(sidebar: Sidebar, session: Session) -> None:
    session.apply("Hide person", session.committed("b"), Person("b", "Bo", hidden=True))
    sidebar.hidden_too.setChecked(True)
    session.undo_stack.undo()
    assert not sidebar.hidden_too.isVisible()
    assert not sidebar.hidden_too.isChecked()


def test_a_person_taken_away_leaves_nobody_else_chosen_by_accident(
    sidebar: Sidebar, session: Session, selection: Selection
) -> None:
    session.apply("Take away", session.committed("a"), None)
    assert selection.person == "a"


def test_the_menu_of_an_entry_is_asked_for_where_it_stands(sidebar: Sidebar, qtbot: QtBot) -> None:
    view = sidebar.people.view
    where = middle(view, 1)
    with qtbot.waitSignal(sidebar.menu_wanted, check_params_cb=lambda entry, _where: entry == "b"):
        view.customContextMenuRequested.emit(where)


def test_the_menu_key_asks_for_the_menu_of_the_current_entry(sidebar: Sidebar, qtbot: QtBot) -> None:
    view = sidebar.people.view
    with qtbot.waitSignal(sidebar.menu_wanted, check_params_cb=lambda entry, _where: entry == "a"):
        view.customContextMenuRequested.emit(view.viewport().rect().bottomRight() * 2)


def test_f2_renames_in_the_list(sidebar: Sidebar, session: Session, qtbot: QtBot) -> None:
    view = sidebar.people.view
    view.setFocus()
    QTest.keyClick(view, Qt.Key.Key_F2)
    field = next(iter(view.findChildren(QLineEdit)))
    QTest.keyClicks(field, "Adele")
    with qtbot.waitSignal(session.changed):
        QTest.keyClick(field, Qt.Key.Key_Return)
    assert session.committed("a") == Person("a", "Adele")
