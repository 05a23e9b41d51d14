from __future__ import annotations

import dataclasses
import sys
from collections import Counter
from typing import TYPE_CHECKING

from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QMenu

from sizekeeper.core.chart import Chart
from sizekeeper.core.pattern import Pattern
from sizekeeper.core.person import Person
from sizekeeper.ui.entry_actions import free_name
from sizekeeper.ui.selection import Place

if TYPE_CHECKING:
    from sizekeeper.ui.window import MainWindow

ADA = Person("a", "Ada")
SKIRT = Pattern("s", "Skirt")


def add(window: MainWindow, *values: Person | Pattern | Chart) -> None:
    window.session.apply_all("Add", [(None, value) for value in values])


def everything(window: MainWindow) -> list[QAction]:
    menus = [action.menu() for action in window.menuBar().actions()]
    return [
        action for menu in menus if isinstance(menu, QMenu) for action in menu.actions() if not action.isSeparator()
    ]


def test_undo_and_redo_name_the_edit(window: MainWindow) -> None:
    add(window, ADA)
    window.session.apply("Change waist", ADA, dataclasses.replace(ADA, notes="x"))
    assert window.menus.undo.text().replace("&", "") == "Undo Change waist"
    window.menus.undo.trigger()
    assert window.menus.redo.text().replace("&", "") == "Redo Change waist"


def test_undo_is_offered_only_when_there_is_something_to_undo(window: MainWindow) -> None:
    assert not window.menus.undo.isEnabled()
    add(window, ADA)
    assert window.menus.undo.isEnabled()


def test_no_two_actions_share_a_key(window: MainWindow) -> None:
    keys = Counter(key.toString() for action in everything(window) for key in action.shortcuts())
    assert [key for key, count in keys.items() if count > 1] == []


def test_the_platforms_standard_keys_are_used(window: MainWindow) -> None:
    standard = QKeySequence.StandardKey
    pairs = (
        (window.entries.new_person, standard.New),
        (window.library.open, standard.Open),
        (window.library.copy, standard.SaveAs),
        (window.menus.undo, standard.Undo),
        (window.menus.find, standard.Find),
        (window.menus.quit, standard.Quit),
    )
    assert [a.text() for a, key in pairs if a.shortcuts() != QKeySequence.keyBindings(key)] == []


def test_redo_has_the_key_of_the_platform_and_those_that_hands_know(window: MainWindow) -> None:
    keys = [key.toString() for key in window.menus.redo.shortcuts()]
    assert keys[0] == QKeySequence.keyBindings(QKeySequence.StandardKey.Redo)[0].toString()
    assert sys.platform == "darwin" or {"Ctrl+Y", "Ctrl+Shift+Z"} <= set(keys)


def test_every_action_of_the_menus_does_something(window: MainWindow) -> None:
    signal = "2triggered(bool)"
    idle = [action.text() for action in everything(window) if action.receivers(signal) == 0]
    assert [text for text in idle if not text.strip("&")[0].isdigit()] == []


def test_pages_are_turned_from_the_view_menu(window: MainWindow) -> None:
    add(window, ADA)
    window.menus.turns[2].trigger()
    assert window.pages.front == "fit"
    assert [action.isChecked() for action in window.menus.turns] == [False, False, True]


def test_pages_are_not_offered_while_the_welcome_is_shown(window: MainWindow) -> None:
    assert not any(action.isEnabled() for action in window.menus.turns)
    add(window, ADA)
    assert all(action.isEnabled() for action in window.menus.turns)


def test_the_ease_table_can_be_copied_on_the_fit_page_only(window: MainWindow) -> None:
    add(window, ADA)
    assert not window.menus.copy_table.isEnabled()
    window.turn_to("fit")
    window.menus.copy_table.trigger()
    assert window.pages.page("fit").copied == 1  # type: ignore[attr-defined]


def test_new_people_get_names_that_nobody_has(window: MainWindow) -> None:
    window.entries.new_person.trigger()
    window.entries.new_person.trigger()
    assert [p.name for p in window.session.people()] == ["New person", "New person 2"]


def test_a_free_name_is_told_from_one_in_other_capitals() -> None:
    assert free_name("Skirt", ["SKIRT", "skirt 2"]) == "Skirt 3"


def test_new_entries_take_the_unit_of_the_preferences(window: MainWindow) -> None:
    window.settings.choose(unit="in")
    window.entries.new_person.trigger()
    window.entries.new_pattern.trigger()
    assert [p.unit for p in window.session.people()] == ["in"]
    assert [p.unit for p in window.session.patterns()] == ["in"]


def test_a_duplicate_pattern_has_charts_of_its_own_and_is_one_step(window: MainWindow) -> None:
    add(window, SKIRT, Chart("c", "s", "body", name="as printed"))
    window.entries.copy_pattern.trigger()
    copy = next(p for p in window.session.patterns() if p.id != "s")
    charts = window.session.charts(copy.id)
    assert copy.title == "Skirt (copy)"
    assert [(c.name, c.id != "c") for c in charts] == [("as printed", True)]
    window.menus.undo.trigger()
    assert window.session.patterns() == [SKIRT]
    assert len(window.session.values()) == 2


def test_a_duplicate_person_is_chosen(window: MainWindow) -> None:
    add(window, ADA)
    window.entries.copy_person.trigger()
    chosen = window.session.person(window.selection.person)
    assert chosen is not None
    assert chosen.name == "Ada (copy)"


def test_hiding_chooses_somebody_else_and_undo_brings_her_back(window: MainWindow) -> None:
    add(window, ADA, Person("b", "Bo"))
    window.entries.hide_person.trigger()
    assert [p.name for p in window.session.people()] == ["Bo"]
    assert window.selection.person == "b"
    assert "Ada is hidden" in window.status.words.text()
    window.menus.undo.trigger()
    assert window.selection.person == "a"
    assert [p.name for p in window.session.people()] == ["Ada", "Bo"]


def test_a_hidden_pattern_is_brought_back_from_the_menu(window: MainWindow) -> None:
    add(window, dataclasses.replace(SKIRT, hidden=True))
    window.selection.choose_pattern("s")
    assert window.entries.hide_pattern.text() == "&Bring back"
    window.entries.hide_pattern.trigger()
    assert window.session.patterns() == [SKIRT]


def test_what_needs_an_entry_is_offered_only_with_one(window: MainWindow) -> None:
    entries = window.entries
    needing = (entries.copy_person, entries.hide_person, entries.history_of_person, entries.erase_person)
    assert not any(action.isEnabled() for action in needing)
    add(window, ADA)
    assert all(action.isEnabled() for action in needing)
    assert not entries.history_of_pattern.isEnabled()


def test_the_plans_are_reached_from_the_view_menu(window: MainWindow) -> None:
    add(window, ADA, SKIRT)
    window.menus.plans.trigger()
    assert window.pages.front == "fit"
    assert window.pages.page("fit").asked == [Place("fit", ADA.id, f"{SKIRT.id}/plan:plans")]  # type: ignore[attr-defined]
