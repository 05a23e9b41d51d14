from __future__ import annotations

from typing import TYPE_CHECKING

from sizekeeper.ui.selection import Place, Selection

if TYPE_CHECKING:
    from pytestqt.qtbot import QtBot


def test_choosing_somebody_tells_the_pages_once(selection: Selection) -> None:
    heard: list[str] = []
    selection.person_changed.connect(heard.append)
    selection.choose_person("a")
    selection.choose_person("a")
    assert (heard, selection.person) == (["a"], "a")


def test_choosing_a_pattern_leaves_the_person(selection: Selection, qtbot: QtBot) -> None:
    selection.choose_person("a")
    with qtbot.assertNotEmitted(selection.person_changed):
        selection.choose_pattern("s")
    assert (selection.person, selection.pattern) == ("a", "s")


def test_a_place_is_asked_for_each_time(selection: Selection) -> None:
    heard: list[Place] = []
    selection.page_wanted.connect(heard.append)
    selection.go(Place("fit"))
    selection.go(Place("fit"))
    assert heard == [Place("fit"), Place("fit")]
