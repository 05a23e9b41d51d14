"""The Fit page: what she sees, and where it leads."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace
from typing import TYPE_CHECKING

import pytest
from PySide6.QtGui import QGuiApplication

from sizekeeper.core.pattern import Pattern
from sizekeeper.core.person import Person
from sizekeeper.ui.selection import Place
from tests.build import chart, person
from tests.fits import BODY_CHART, FINISHED
from tests.ui.household import ADA, DRESS, LONG, amounts, field, headline, settle

if TYPE_CHECKING:
    from PySide6.QtWidgets import QApplication
    from pytestqt.qtbot import QtBot

    from sizekeeper.core.chart import Chart
    from sizekeeper.ui.fit_page import FitPage
    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Session
    from sizekeeper.ui.settings import Settings


# First sight.


def test_the_verdict_the_chart_and_the_table_stand_at_first_sight(
    page: FitPage, session: Session, selection: Selection
) -> None:
    settle(session, selection)
    assert headline(page) == "Cut 40 straight."
    assert (
        page.answer.verdict.shown.chart == "The body chart alone says 40 at the bust, 38 at the waist, 42 at the hip."
    )
    assert [row.measure for row in page.answer.board.regions.rows] == ["bust", "waist", "hip"]
    assert page.panel.isHidden()


def test_it_says_whose_fit_it_is(page: FitPage, session: Session, selection: Selection) -> None:
    settle(session, selection)
    assert page.heading.whose.text() == "Ilse · Wrap dress · woven dress"


def test_the_figures_stand_as_typed_beside_their_region(page: FitPage, session: Session, selection: Selection) -> None:
    settle(session, selection, who=person("in", bust="38", waist="28 0/8", hip="43"))
    assert field(page, "waist").text() == "28 0/8"


def test_a_figure_typed_in_the_other_unit_is_shown_in_this_one_too(
    page: FitPage, session: Session, selection: Selection, settings: Settings
) -> None:
    settle(session, selection)
    settings.choose(unit="cm")
    assert page.answer.board.regions.rows[0]._text.converted == "= 96.5 cm"


def test_the_chosen_size_stands_in_the_middle_with_five_on_either_side_at_most(
    page: FitPage, session: Session, selection: Selection
) -> None:
    settle(session, selection, LONG, who=person("cm", bust="120"))
    view, chosen = page.answer.board.view, page.answer.board.model.table.chosen
    assert chosen is not None
    middle = view.columnViewportPosition(chosen) + view.columnWidth(chosen) / 2
    assert middle == pytest.approx(view.viewport().width() / 2, abs=2)
    assert view.viewport().width() / view.columnWidth(chosen) <= 11


def test_twelve_sizes_show_eleven_columns_in_a_window_of_1280(
    page: FitPage, session: Session, selection: Selection, qtbot: QtBot
) -> None:
    twelve = chart(
        "finished", " ".join(str(s) for s in range(6, 30, 2)), bust=", ".join(str(84 + 4 * i) for i in range(12))
    )
    settle(session, selection, twelve, who=person("cm", bust="99"))
    view = page.answer.board.view
    qtbot.waitUntil(lambda: view.viewport().width() == 11 * view.columnWidth(0))


# What comes first.


def test_without_a_person_it_asks_for_one(page: FitPage) -> None:
    assert page.first.heading.text() == "Whose size is it?"
    assert page.first.isVisible()


def test_without_a_pattern_it_asks_for_one(page: FitPage, session: Session, selection: Selection) -> None:
    settle(session, selection)
    selection.choose_pattern("")
    assert page.first.heading.text() == "Which pattern is it?"


@pytest.mark.parametrize("blank", [(), (chart("body", "38 40", bust="-, -"),)])
def test_without_figures_on_the_pattern_it_leads_there(
    page: FitPage, session: Session, selection: Selection, qtbot: QtBot, blank: tuple[Chart, ...]
) -> None:
    session.apply_all("Set up", [(None, ADA), (None, DRESS), *((None, replace(c, pattern=DRESS.id)) for c in blank)])
    selection.choose_person(ADA.id)
    selection.choose_pattern(DRESS.id)
    assert "has no figures yet" in page.first.sentence.text()
    with qtbot.waitSignal(selection.page_wanted) as told:
        page.first.button.click()
    assert told.args == [Place("pattern", DRESS.id)]


def test_without_measurements_it_leads_to_them(
    page: FitPage, session: Session, selection: Selection, qtbot: QtBot
) -> None:
    settle(session, selection, who=replace(ADA, readings=()))
    assert page.first.heading.text() == "Measure Ilse first"
    with qtbot.waitSignal(selection.page_wanted) as told:
        page.first.button.click()
    assert told.args == [Place("person", ADA.id)]


def test_without_a_measure_in_common_it_says_so(page: FitPage, session: Session, selection: Selection) -> None:
    settle(session, selection, who=person("cm", wrist="16"))
    assert page.first.heading.text() == "Nothing to compare yet"


# What else it says.


def test_old_measurements_are_marked_at_their_row_and_named_below(
    page: FitPage, session: Session, selection: Selection
) -> None:
    old = tuple(replace(r, on=dt.date(2026, 2, 1)) if r.measure == "waist" else r for r in ADA.readings)
    settle(session, selection, who=replace(ADA, readings=old))
    waist = page.answer.board.regions.rows[1]
    assert (waist._text.doubtful, waist._text.note) == (True, "9 months ago · asks 1 in")
    assert "the waist (9 months ago)" in page.answer.notes.text()


def test_a_childs_measurements_are_old_sooner_and_its_cautions_stand_below(
    page: FitPage, session: Session, selection: Selection
) -> None:
    child = tuple(replace(r, on=dt.date(2026, 8, 1)) for r in ADA.readings)
    settle(session, selection, who=replace(ADA, readings=child, child=True))
    assert "3 months ago" in page.answer.notes.text()
    assert "EN 14682" in page.answer.asides.text()


def test_what_could_not_be_judged_is_said_with_its_reason(
    page: FitPage, session: Session, selection: Selection
) -> None:
    settle(session, selection, who=person("in", bust="38", waist="28", thigh="22"))
    assert "the hip (not measured yet)" in page.answer.asides.text()


def test_a_view_with_figures_of_its_own_can_be_chosen(page: FitPage, session: Session, selection: Selection) -> None:
    roomy = replace(chart("finished", "38 40 42", "in", bust="42, 44, 46"), id="roomy", view="B")
    settle(session, selection, FINISHED, roomy, what=replace(DRESS, views=("A", "B")))
    assert amounts(page, "bust")["40"] == "2 1/8"
    page.heading.view.setCurrentIndex(1)
    page.heading.view.activated.emit(1)
    assert amounts(page, "bust")["40"] == "6"


def test_views_without_figures_of_their_own_are_one_choice_and_come_first(
    page: FitPage, session: Session, selection: Selection
) -> None:
    roomy = replace(chart("finished", "38 40 42", "in", bust="42, 44, 46"), id="roomy", view="B")
    settle(session, selection, FINISHED, roomy, what=replace(DRESS, views=("A", "B", "C")))
    view = page.heading.view
    assert [view.itemText(i) for i in range(view.count())] == ["View A and C", "View B"]
    assert view.currentIndex() == 0


def test_by_the_body_chart_alone_the_ease_is_unknown(page: FitPage, session: Session, selection: Selection) -> None:
    settle(session, selection, BODY_CHART)
    assert "nothing is known of the ease" in page.answer.verdict.shown.warnings
    assert amounts(page, "bust")["42"] == "+2"


# Following.


def test_a_hidden_page_compares_only_when_it_comes_to_the_front(
    page: FitPage, session: Session, selection: Selection
) -> None:
    page.hide()
    settle(session, selection)
    assert page.found is None
    page.show()
    assert headline(page) == "Cut 40 straight."


def test_a_change_of_somebody_else_is_no_reason_to_compare_again(
    page: FitPage, session: Session, selection: Selection
) -> None:
    settle(session, selection)
    before = page.found
    session.apply("Add", None, Person("other", "Somebody else"))
    assert page.found is before


def test_a_changed_chart_changes_the_answer(page: FitPage, session: Session, selection: Selection) -> None:
    settle(session, selection, FINISHED)
    before = session.charts(DRESS.id)[0]
    session.apply("Change", before, replace(before, rows=chart("finished", "38 40 42", "in", bust="39, 42, 44").rows))
    assert amounts(page, "bust")["40"] == "4"


def test_another_pattern_is_another_comparison(page: FitPage, session: Session, selection: Selection) -> None:
    settle(session, selection)
    session.apply("Add", None, Pattern("empty", "Empty"))
    selection.choose_pattern("empty")
    assert page.first.isVisible()


def test_light_and_dark_and_text_size_are_followed_live(
    page: FitPage, session: Session, selection: Selection, qapp: QApplication, qtbot: QtBot, dark: object
) -> None:
    settle(session, selection)
    before = page.answer.board.view.height()
    font = qapp.font()
    font.setPointSizeF(font.pointSizeF() * 1.5)
    qapp.setFont(font)
    qtbot.waitUntil(lambda: page.answer.board.view.height() > before)
    ground = page.grab().toImage().pixelColor(5, 5)
    assert ground.lightness() < 100


# What the window asks of it.


def test_the_table_is_copied_as_text_and_html(page: FitPage, session: Session, selection: Selection) -> None:
    settle(session, selection, what=replace(DRESS, title="<b>Wrap</b>"))
    page.copy_table()
    copied = QGuiApplication.clipboard().mimeData()
    assert copied.text().startswith("Ilse: <b>Wrap</b>\nCut 40 straight.\n")
    assert "&lt;b&gt;Wrap&lt;/b&gt;" in copied.html()


def test_without_a_table_copying_leaves_the_clipboard_alone(page: FitPage) -> None:
    QGuiApplication.clipboard().setText("kept")
    page.copy_table()
    assert QGuiApplication.clipboard().text() == "kept"


def test_it_reveals_the_field_of_an_edit(page: FitPage, session: Session, selection: Selection) -> None:
    settle(session, selection)
    page.reveal(Place("fit", ADA.id, "hip"))
    assert field(page, "hip").hasFocus()


def test_it_reveals_the_region_of_a_changed_preference(page: FitPage, session: Session, selection: Selection) -> None:
    settle(session, selection)
    page.reveal(Place("fit", ADA.id, f"{DRESS.id}/waist"))
    assert page.panel.open_part == "likes"
    assert page.panel.likes.where.currentData() == "waist"
