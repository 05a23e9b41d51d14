from __future__ import annotations

import dataclasses
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt

from sizekeeper.core.pattern import Pattern
from sizekeeper.core.person import Person
from sizekeeper.ui.beside_window import BesideWindow, TwoPatterns, TwoPeople
from tests.build import chart
from tests.ui.comparing import ADA, BODY, FINISHED, LOOSE, SHIRT, charts, put, put_household, who
from tests.ui.naming import nameless

if TYPE_CHECKING:
    from pytestqt.qtbot import QtBot

    from sizekeeper.ui.session import Session
    from sizekeeper.ui.settings import Settings


@pytest.fixture
def people(session: Session, settings: Settings, qtbot: QtBot) -> TwoPeople:
    """Ada and Bea in the top."""
    put_household(session)
    window = TwoPeople(session, settings, ("ada", "top"))
    qtbot.addWidget(window)
    return window


@pytest.fixture
def patterns(session: Session, settings: Settings, qtbot: QtBot) -> TwoPatterns:
    """Ada in the top and in the shirt."""
    put_household(session)
    window = TwoPatterns(session, settings, ("ada", "top"))
    qtbot.addWidget(window)
    return window


def lines(window: BesideWindow, side: int) -> list[tuple[str, ...]]:
    """The rows of a side."""
    return [line.texts for line in window.sides[side].table.lines.lines]


def headlines(window: BesideWindow) -> list[str]:
    """Both verdicts."""
    return [side.verdict.shown.headline for side in window.sides]


def test_two_people_begin_with_the_chosen_one_and_another(people: TwoPeople) -> None:
    assert [side.title.text() for side in people.sides] == ["Ada", "Bea"]


def test_each_side_has_its_verdict(people: TwoPeople) -> None:
    assert headlines(people) == ["Cut 38 straight.", "Cut 42 straight."]


def test_the_same_region_stands_in_the_same_row_with_all_its_figures(people: TwoPeople) -> None:
    # Ada: body 88, a close top asks (2.5 + 7.7) / 2 = 5.1; 93 gives 5 of ease, 0.1 less than asked.
    assert lines(people, 0) == [("Bust", "88", "5.1", "5", "close", "93", "−0.1")]
    assert lines(people, 1) == [("Bust", "96", "5.1", "5", "close", "101", "−0.1")]


def test_the_headings_name_the_units(people: TwoPeople) -> None:
    heading = [people.sides[0].table.lines.headerData(i, Qt.Orientation.Horizontal) for i in range(7)]
    assert heading == ["Where", "Body, cm", "Asked", "Ease", "Band", "Finished, cm", "Off"]


def test_two_patterns_are_set_beside_each_other_for_one_person(patterns: TwoPatterns) -> None:
    assert [side.title.text() for side in patterns.sides] == ["Aster top", "Bryony shirt"]
    assert [lines(patterns, side)[0][3] for side in (0, 1)] == ["5", "7"]


def test_a_region_that_only_one_side_judges_is_a_row_of_dashes_on_the_other(
    session: Session, settings: Settings, qtbot: QtBot
) -> None:
    hips = chart("finished", "38 40", bust="93, 97", hip="102, 106")
    her = who("Ada", "88", hip="94")
    put(session, her, *charts(Pattern("a", "A", garment="top"), hips), *charts(SHIRT, LOOSE))
    window = TwoPatterns(session, settings, ("ada", "a"))
    qtbot.addWidget(window)
    assert lines(window, 1)[1] == ("Hip", *["–"] * 6)


def test_swapping_turns_both_sides_round(people: TwoPeople) -> None:
    people.swap.click()
    assert headlines(people) == ["Cut 42 straight.", "Cut 38 straight."]
    assert [side.title.text() for side in people.sides] == ["Bea", "Ada"]


def test_another_choice_is_compared_at_once(people: TwoPeople) -> None:
    people.right.choose(("cleo", ""))
    assert headlines(people)[1] == "No size goes round the body; 42 comes closest."


def test_views_with_figures_of_their_own_are_choices(session: Session, settings: Settings, qtbot: QtBot) -> None:
    two = Pattern("two", "Two views", garment="top", views=("A", "B"))
    put(session, ADA, *charts(two, FINISHED, dataclasses.replace(LOOSE, view="B")))
    window = TwoPatterns(session, settings, ("ada", "two"))
    qtbot.addWidget(window)
    assert [window.left.itemText(i) for i in range(2)] == ["Two views, view A", "Two views, view B"]
    assert [lines(window, side)[0][5] for side in (0, 1)] == ["93", "95"]


def test_two_patterns_of_one_title_are_told_by_their_publisher(
    session: Session, settings: Settings, qtbot: QtBot
) -> None:
    twin = Pattern("twin", SHIRT.title, "Moorhen", garment="top")
    put(session, ADA, *charts(twin, FINISHED), *charts(SHIRT, LOOSE))
    window = TwoPatterns(session, settings, ("ada", "twin"))
    qtbot.addWidget(window)
    assert {window.left.itemText(i) for i in range(2)} == {"Bryony shirt (Moorhen)", "Bryony shirt (Tarn)"}


def test_both_people_are_shown_in_one_unit(session: Session, settings: Settings, qtbot: QtBot) -> None:
    inches: Person = dataclasses.replace(who("Bea", "96"), unit="in")
    put(session, ADA, inches, *charts(SHIRT, BODY, FINISHED))
    window = TwoPeople(session, settings, ("ada", "shirt"))
    qtbot.addWidget(window)
    assert [lines(window, side)[0][1] for side in (0, 1)] == ["88", "96"]


def test_what_is_missing_stands_in_place_of_the_verdict(session: Session, settings: Settings, qtbot: QtBot) -> None:
    put(session, ADA, Person("new", "Nan"), *charts(SHIRT, BODY, FINISHED))
    window = TwoPeople(session, settings, ("ada", "shirt"))
    qtbot.addWidget(window)
    assert headlines(window)[1] == "Measure Nan first"


def test_by_the_body_chart_alone_the_ease_is_a_dash(session: Session, settings: Settings, qtbot: QtBot) -> None:
    put(session, ADA, who("Bea", "96"), *charts(SHIRT, BODY))
    window = TwoPeople(session, settings, ("ada", "shirt"))
    qtbot.addWidget(window)
    assert lines(window, 0) == [("Bust", "88", "–", "–", "–", "88", "0")]
    assert window.sides[0].table.lines.headerData(5, Qt.Orientation.Horizontal) == "Body chart, cm"


def test_a_line_is_spoken_in_words(people: TwoPeople) -> None:
    said = people.sides[0].table.lines.index(0, 0).data(Qt.ItemDataRole.AccessibleTextRole)
    assert said == (
        "Bust: body 88 centimetres, 5 centimetres of ease, close, asked 5.1 centimetres, "
        "finished 93 centimetres, off by minus 0.1 centimetres"
    )


def test_a_row_picked_on_one_side_is_picked_on_the_other(people: TwoPeople) -> None:
    people.sides[0].table.selectRow(0)
    assert people.sides[1].table.currentIndex().row() == 0


def test_an_edit_is_followed(people: TwoPeople, session: Session, qtbot: QtBot) -> None:
    session.apply("Change name", ADA, dataclasses.replace(ADA, name="Adele"))
    qtbot.waitUntil(lambda: people.sides[0].title.text() == "Adele")
    assert people.left.chosen == ("ada", "")


def test_both_tables_begin_at_one_height(people: TwoPeople) -> None:
    people.right.choose(("cleo", ""))
    assert len({side.above.height() for side in people.sides}) == 1


def test_everything_has_a_name(people: TwoPeople, patterns: TwoPatterns) -> None:
    assert nameless(people) + nameless(patterns) == []
