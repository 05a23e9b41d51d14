"""Groups: typed at the person, chosen at the left, renamed and dissolved for all."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAction
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from sizekeeper.core.person import Person
from sizekeeper.ui.people_group_filter import GroupFilter, GroupName
from sizekeeper.ui.person_page import PersonPage
from sizekeeper.ui.sidebar import Sidebar

if TYPE_CHECKING:
    import datetime as dt
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Session
    from sizekeeper.ui.settings import Settings

PEOPLE = [
    Person("a", "Ada", groups=("Household",)),
    Person("b", "Bo", groups=("Household", "Cast")),
    Person("c", "Cy"),
]


@pytest.fixture
def sidebar(session: Session, selection: Selection, qtbot: QtBot) -> Sidebar:
    session.apply_all("Add all", [(None, person) for person in PEOPLE])
    new_person, new_pattern = QAction("New person"), QAction("New pattern")
    sidebar = Sidebar(session, selection, new_person, new_pattern)
    new_person.setParent(sidebar)
    new_pattern.setParent(sidebar)
    qtbot.addWidget(sidebar)
    with qtbot.waitExposed(sidebar):
        sidebar.show()
    return sidebar


@pytest.fixture
def page(
    session: Session,
    selection: Selection,
    settings: Settings,
    today: Callable[[], dt.date],
    qtbot: QtBot,
) -> PersonPage:
    session.apply_all("Add all", [(None, person) for person in PEOPLE])
    selection.choose_person("c")
    page = PersonPage(session, selection, settings, today=today)
    qtbot.addWidget(page)
    with qtbot.waitActive(page):
        page.show()
    return page


def shown(sidebar: Sidebar) -> list[str]:
    entries = sidebar.people.filter
    return [entries.index(row, 0).data() for row in range(entries.rowCount())]


def the_filter(sidebar: Sidebar) -> GroupFilter:
    assert sidebar.group is not None
    return sidebar.group


def groups_of(session: Session, entry: str) -> tuple[str, ...]:
    person = session.person(entry)
    assert person is not None
    return person.groups


def press(*keys: Qt.Key) -> None:
    """Press keys where the focus is, as an open list takes them before the field does."""
    for key in keys:
        popup = QApplication.activePopupWidget()
        QTest.keyClick(popup or QApplication.focusWidget(), key)  # type: ignore[arg-type]  # one of them is there


def test_no_groups_are_offered_while_nobody_belongs_to_one(
    session: Session, selection: Selection, qtbot: QtBot
) -> None:
    session.apply("Add", None, Person("z", "Zoë"))
    sidebar = Sidebar(session, selection, QAction("New person", session), QAction("New pattern", session))
    qtbot.addWidget(sidebar)
    assert sidebar.group is None


def test_the_groups_are_offered_by_the_alphabet(sidebar: Sidebar) -> None:
    choice = the_filter(sidebar).choice
    assert [choice.itemText(i) for i in range(choice.count())] == ["Everybody", "Cast", "Household"]


def test_a_group_shows_its_people_only(sidebar: Sidebar) -> None:
    the_filter(sidebar).choose("Household")
    assert shown(sidebar) == ["Ada", "Bo"]


def test_everybody_is_shown_again_when_the_group_is_nobodys(sidebar: Sidebar, session: Session) -> None:
    the_filter(sidebar).choose("Cast")
    session.apply("Leave", PEOPLE[1], Person("b", "Bo"))
    assert (the_filter(sidebar).group, shown(sidebar)) == ("", ["Ada", "Bo", "Cy"])


def test_the_arrow_keys_choose_a_group(sidebar: Sidebar) -> None:
    QTest.keyClick(the_filter(sidebar).choice, Qt.Key.Key_Down)
    assert shown(sidebar) == ["Bo"]


def test_renaming_a_group_is_one_step_for_everybody(
    sidebar: Sidebar, session: Session, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(GroupName, "ask", lambda _parent, group: f"Our  {group.lower()}")
    the_filter(sidebar).choose("Household")
    the_filter(sidebar).rename.trigger()
    assert [groups_of(session, entry) for entry in "ab"] == [("Our household",), ("Our household", "Cast")]
    assert the_filter(sidebar).group == "Our household"
    session.undo_stack.undo()
    assert [groups_of(session, entry) for entry in "ab"] == [("Household",), ("Household", "Cast")]


@pytest.mark.parametrize("name", ["", "  ", "Household"])
def test_a_group_without_another_name_stays(
    name: str, sidebar: Sidebar, session: Session, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(GroupName, "ask", lambda *_: name)
    the_filter(sidebar).choose("Household")
    steps = session.undo_stack.count()
    the_filter(sidebar).rename.trigger()
    assert session.undo_stack.count() == steps


def test_dissolving_a_group_leaves_its_people_and_is_one_step(sidebar: Sidebar, session: Session) -> None:
    the_filter(sidebar).choose("Household")
    the_filter(sidebar).dissolve.trigger()
    assert ([groups_of(session, entry) for entry in "ab"], shown(sidebar)) == ([(), ("Cast",)], ["Ada", "Bo", "Cy"])
    session.undo_stack.undo()
    assert groups_of(session, "a") == ("Household",)


def test_a_group_being_typed_is_completed_from_those_known(page: PersonPage, session: Session) -> None:
    page.header.groups.setFocus()
    QTest.keyClicks(page.header.groups, "hou")
    press(Qt.Key.Key_Down, Qt.Key.Key_Return)
    assert page.header.groups.text() == "Household"
    QTest.keyClick(page.header.groups, Qt.Key.Key_Return)
    assert groups_of(session, "c") == ("Household",)


def test_the_last_of_several_groups_is_completed(page: PersonPage) -> None:
    page.header.groups.setFocus()
    QTest.keyClicks(page.header.groups, "Choir, cas")
    press(Qt.Key.Key_Down, Qt.Key.Key_Return)
    assert page.header.groups.text() == "Choir, Cast"


def test_escape_puts_the_list_away_and_then_what_was_typed(page: PersonPage, session: Session) -> None:
    page.header.groups.setFocus()
    QTest.keyClicks(page.header.groups, "hou")
    press(Qt.Key.Key_Escape)
    assert page.header.groups.text() == "hou"
    QTest.keyClick(page.header.groups, Qt.Key.Key_Escape)
    assert (page.header.groups.text(), groups_of(session, "c")) == ("", ())


def test_a_group_typed_in_other_capitals_is_the_known_one(page: PersonPage, session: Session) -> None:
    page.header.groups.setFocus()
    QTest.keyClicks(page.header.groups, "HOUSEHOLD")
    QTest.keyClick(page.header.groups, Qt.Key.Key_Tab)
    assert (page.header.groups.text(), groups_of(session, "c")) == ("Household", ("Household",))


def test_a_group_with_a_comma_stays_one_when_it_is_shown_and_typed(page: PersonPage, session: Session) -> None:
    page.header.groups.setFocus()
    QTest.keyClicks(page.header.groups, '"Cast, act 2", friends')
    QTest.keyClick(page.header.groups, Qt.Key.Key_Return)
    assert groups_of(session, "c") == ("Cast, act 2", "friends")
    assert page.header.groups.text() == '"Cast, act 2", friends'
