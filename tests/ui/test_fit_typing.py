"""Typing a body figure on the Fit page."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from sizekeeper.core.person import Person, Reading
from tests.build import length, person
from tests.ui.household import ADA, amounts, field, headline, settle

if TYPE_CHECKING:
    import datetime as dt
    from collections.abc import Callable

    import pytest
    from pytestqt.qtbot import QtBot

    from sizekeeper.ui.fit_page import FitPage
    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Session


def typing(page: FitPage, qtbot: QtBot, measure: str, text: str, key: Qt.Key | None = None) -> None:
    into = field(page, measure)
    into.setFocus()
    into.selectAll()
    QTest.keyClicks(into, text)
    if key is not None:
        QTest.keyClick(into, key)


def reading(session: Session, measure: str) -> Reading:
    value = session.committed(ADA.id)
    assert isinstance(value, Person)
    return value.of(measure)[-1]


def test_every_keystroke_repaints_the_answer_and_saves_nothing(
    page: FitPage, session: Session, selection: Selection, qtbot: QtBot
) -> None:
    settle(session, selection)
    typing(page, qtbot, "waist", "27")
    assert amounts(page, "waist")["40"] == "2 7/8"
    assert reading(session, "waist").text == "28"
    assert not session.undo_stack.count()


def test_enter_makes_one_edit_of_today_and_goes_to_the_next_field(
    page: FitPage, session: Session, selection: Selection, qtbot: QtBot, today: Callable[[], dt.date]
) -> None:
    settle(session, selection)
    typing(page, qtbot, "waist", "27 1/2", Qt.Key.Key_Return)
    assert (reading(session, "waist").text, reading(session, "waist").on) == ("27 1/2", today())
    assert session.undo_stack.undoText() == "Change waist"
    assert session.undo_stack.count() == 1
    assert field(page, "hip").hasFocus()


def test_what_is_typed_when_another_person_is_chosen_stays_with_the_one_before(
    page: FitPage, session: Session, selection: Selection, qtbot: QtBot
) -> None:
    settle(session, selection)
    session.apply("Add", None, replace(ADA, id="other", name="Other"))
    typing(page, qtbot, "waist", "27")
    selection.choose_person("other")
    assert reading(session, "waist").text == "27"
    assert field(page, "waist").text() == "28"


def test_undo_brings_the_old_figure_and_the_old_answer_back(
    page: FitPage, session: Session, selection: Selection, qtbot: QtBot
) -> None:
    settle(session, selection)
    typing(page, qtbot, "waist", "27", Qt.Key.Key_Return)
    session.undo_stack.undo()
    assert field(page, "waist").text() == "28"
    assert amounts(page, "waist")["40"] == "1 7/8"


def test_escape_takes_the_draft_back(page: FitPage, session: Session, selection: Selection, qtbot: QtBot) -> None:
    settle(session, selection)
    typing(page, qtbot, "waist", "27", Qt.Key.Key_Escape)
    assert field(page, "waist").text() == "28"
    assert amounts(page, "waist")["40"] == "1 7/8"
    assert session.person(ADA.id) == ADA


def test_a_text_that_is_no_length_is_explained_and_keeps_the_answer_meanwhile(
    page: FitPage, session: Session, selection: Selection, qtbot: QtBot
) -> None:
    settle(session, selection)
    typing(page, qtbot, "waist", "28 x")
    assert page.answer.board.problem.text().startswith("Waist: ")
    assert page.answer.board.problem.isVisible()
    assert field(page, "waist").problem
    assert headline(page) == "Cut 40 straight."


def test_an_entered_text_that_is_no_length_is_kept_and_counts_as_missing(
    page: FitPage, session: Session, selection: Selection, qtbot: QtBot
) -> None:
    settle(session, selection)
    typing(page, qtbot, "waist", "snug", Qt.Key.Key_Return)
    assert (reading(session, "waist").text, reading(session, "waist").length) == ("snug", None)
    assert field(page, "waist").text() == "snug"
    assert amounts(page, "waist")["40"] == ""
    assert "Waist" in page.answer.board.problem.text()


def test_the_only_figure_can_be_mended_where_it_went_wrong(
    page: FitPage, session: Session, selection: Selection, qtbot: QtBot
) -> None:
    settle(session, selection, who=person("in", bust="38"))
    typing(page, qtbot, "bust", "x", Qt.Key.Key_Return)
    assert headline(page).startswith("There is no measure that both")
    typing(page, qtbot, "bust", "38", Qt.Key.Key_Return)
    assert headline(page) == "Cut 40 straight."


def test_a_figure_of_the_other_unit_is_questioned_in_place(
    page: FitPage, session: Session, selection: Selection, qtbot: QtBot
) -> None:
    settle(session, selection, who=person("cm", bust="96", waist="71"))
    typing(page, qtbot, "waist", "28")
    assert "inches" in page.answer.board.problem.text()


def test_emptying_a_field_takes_the_measurement_away(
    page: FitPage, session: Session, selection: Selection, qtbot: QtBot
) -> None:
    settle(session, selection)
    into = field(page, "waist")
    into.setFocus()
    into.selectAll()
    QTest.keyClick(into, Qt.Key.Key_Delete)
    assert page.answer.board.problem.text() == "Waist: empty. Enter takes this measurement away."
    QTest.keyClick(into, Qt.Key.Key_Return)
    assert [row.measure for row in page.answer.board.regions.rows] == ["bust", "hip"]
    assert session.undo_stack.undoText() == "Take away waist"


def test_the_middle_of_several_readings_of_today_is_not_typed_over(
    page: FitPage, session: Session, selection: Selection, today: Callable[[], dt.date]
) -> None:
    twice = tuple(Reading("bust", text, length(f"{text} in"), today()) for text in ("38", "39"))
    settle(session, selection, who=replace(ADA, readings=twice))
    assert field(page, "bust").text() == "38 1/2 in"
    assert field(page, "bust").isReadOnly()


def test_tab_goes_from_figure_to_figure_and_on_to_the_table(
    page: FitPage, session: Session, selection: Selection
) -> None:
    settle(session, selection)
    field(page, "bust").setFocus()
    seen = []
    for _ in range(3):
        focused = page.focusWidget()
        assert focused is not None
        QTest.keyClick(focused, Qt.Key.Key_Tab)
        focused = page.focusWidget()
        assert focused is not None
        seen.append(focused.accessibleName())
    assert seen == ["Waist, body figure", "Hip, body figure", "Ease in each size"]


def test_in_a_library_open_elsewhere_nothing_can_be_typed_or_set(
    page: FitPage, session: Session, selection: Selection, monkeypatch: pytest.MonkeyPatch
) -> None:
    settle(session, selection)
    monkeypatch.setattr(type(session), "read_only", property(lambda _: True))
    page.open_part("likes")
    page.refresh()
    assert field(page, "waist").isReadOnly()
    assert not page.panel.likes.form.isEnabled()
    assert not page.panel.likes.mode.isEnabled()
