"""The side panel: the ruler, the candidates with their reasons, and how she likes it to fit."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QAccessible
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QWidget

from sizekeeper.core.person import Person
from sizekeeper.core.preference import RegionPreference
from tests.build import chart
from tests.ui.household import ADA, DRESS, headline, in_front, settle

if TYPE_CHECKING:
    import datetime as dt
    from collections.abc import Callable

    from pytestqt.modeltest import ModelTester
    from pytestqt.qtbot import QtBot

    from sizekeeper.ui.fit_field import FigureField
    from sizekeeper.ui.fit_page import FitPage
    from sizekeeper.ui.fit_region_form import RegionForm
    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Session
    from sizekeeper.ui.settings import Settings


@pytest.fixture
def page(
    qtbot: QtBot, session: Session, selection: Selection, settings: Settings, today: Callable[[], dt.date]
) -> FitPage:
    """The page in front with the dress on it."""
    page = in_front(qtbot, session, selection, settings, today)
    settle(session, selection)
    return page


def asked(page: FitPage, measure: str) -> float | None:
    assert page.found is not None
    assert page.found.fit is not None
    return next(r.asked_cm for r in page.found.fit.regions if r.measure == measure)


def likes(page: FitPage, measure: str) -> RegionForm:
    page.open_part("likes")
    page.panel.likes.pick(measure)
    return page.panel.likes.form


def kept(session: Session, measure: str) -> RegionPreference:
    value = session.committed(ADA.id)
    assert isinstance(value, Person)
    return value.preference("dress", knit=False).region(measure)


def enter(qtbot: QtBot, into: FigureField, text: str, key: Qt.Key = Qt.Key.Key_Return) -> None:
    into.setFocus()
    into.selectAll()
    QTest.keyClicks(into, text)
    QTest.keyClick(into, key)


# Opening and folding away.


def test_each_part_is_one_click_away_and_one_click_folds_it_away(page: FitPage) -> None:
    for name in ("slide", "sizes", "likes"):
        button = page.heading.parts.buttons[name]
        button.click()
        assert (page.panel.open_part, page.panel.isVisible()) == (name, True)
    page.heading.parts.buttons["likes"].click()
    assert page.panel.isHidden()


def test_a_click_on_a_regions_name_opens_how_it_should_fit(page: FitPage, qtbot: QtBot) -> None:
    row = page.answer.board.regions.rows[1]
    QTest.mouseClick(row, Qt.MouseButton.LeftButton, pos=QPoint(10, row.height() // 2))
    assert (page.panel.open_part, page.panel.likes.where.currentText()) == ("likes", "Waist")


def test_enter_on_a_cell_explains_its_size(page: FitPage, qtbot: QtBot) -> None:
    view, model = page.answer.board.view, page.answer.board.model
    column = next(i for i, c in enumerate(model.table.columns) if c.label == "42")
    view.setCurrentIndex(model.index(0, column))
    QTest.keyClick(view, Qt.Key.Key_Return)
    assert page.panel.open_part == "sizes"
    assert page.panel.sizes.why.text().endswith(": 42")


def test_a_click_on_a_size_explains_it(page: FitPage, qtbot: QtBot) -> None:
    heading = page.answer.board.view.horizontalHeader()
    QTest.mouseClick(
        heading.viewport(), Qt.MouseButton.LeftButton, pos=QPoint(heading.sectionViewportPosition(0) + 5, 10)
    )
    assert page.panel.sizes.why.text().endswith(": 38")


# The ruler.


def test_the_ruler_starts_at_what_is_chosen(page: FitPage) -> None:
    page.open_part("slide")
    assert page.panel.slide.place.text() == "40"


def test_sliding_says_the_place_the_line_and_the_ease_there(page: FitPage) -> None:
    page.open_part("slide")
    page.panel.slide.ruler.go(0.5)
    assert page.panel.slide.place.text() == "Between 38 and 40, halfway"
    assert page.panel.slide.line.text() == "The line runs 3/16 in outside 38, along each edge."
    bust = page.panel.slide.table.lines.lines[0]
    assert bust.texts == ("Bust", "1 3/8", "2", "3/4 short", "close")


def test_sliding_past_the_last_size_goes_on_with_the_last_step(page: FitPage) -> None:
    page.open_part("slide")
    page.panel.slide.ruler.go(3)
    assert page.panel.slide.place.text() == "Past 42 by one step"
    assert page.panel.slide.table.lines.lines[0].texts[1] == "5 3/8"


def test_the_ruler_stays_where_she_put_it_while_figures_change(page: FitPage, session: Session) -> None:
    page.open_part("slide")
    page.panel.slide.ruler.go(0.5)
    session.apply("Change", ADA, replace(ADA, name="Ilsebill"))
    assert page.panel.slide.ruler.position == 0.5
    page.panel.slide.back.click()
    assert page.panel.slide.ruler.position == 1


def test_by_the_body_chart_the_ruler_shows_the_chart_against_the_body(page: FitPage) -> None:
    page.open_part("likes")
    page.panel.likes.mode.buttons["body"].click()
    page.open_part("slide")
    page.panel.slide.ruler.go(2)
    assert page.panel.slide.table.lines.lines[0].texts[:4] == ("Bust", "40", "38", "2 over")


# The candidates.


def test_the_candidates_stand_in_order_with_how_far_they_are_off(page: FitPage) -> None:
    page.open_part("sizes")
    assert page.found is not None
    assert page.found.fit is not None
    lines = page.panel.sizes.ranking.lines.lines
    assert [line.texts[0] for line in lines] == [str(c.rank) for c in page.found.fit.candidates]
    assert lines[0].texts[1] == "40"


def test_picking_a_candidate_shows_its_reasons(page: FitPage) -> None:
    page.open_part("sizes")
    row = next(i for i, line in enumerate(page.panel.sizes.ranking.lines.lines) if line.texts[1] == "38")
    page.panel.sizes.ranking.selectRow(row)
    bust = page.panel.sizes.reasons.lines.lines[0]
    # 5.1 cm asked, half an inch given; short counts double, and the region to choose size by twice.
    short = 5.1 - 0.5 * 2.54
    assert bust.texts == ("Bust ×2", "1/2", "2", "1 1/2 short", f"{2 * (2 * short) ** 2:.2f}")


def test_the_lines_are_a_sound_model_and_stay_one(page: FitPage, qtmodeltester: ModelTester) -> None:
    page.open_part("sizes")
    model = page.panel.sizes.ranking.lines
    qtmodeltester.check(model)  # type: ignore[no-untyped-call]
    model.set_lines(model.lines[:2])
    model.set_lines([*model.lines, *model.lines])
    qtmodeltester.check(model)  # type: ignore[no-untyped-call]


# By what a size is judged.


def test_a_size_can_be_judged_by_the_body_chart_alone(page: FitPage) -> None:
    page.open_part("likes")
    page.panel.likes.mode.buttons["body"].click()
    assert "nothing is known of the ease" in page.answer.verdict.shown.warnings


def test_by_what_a_size_is_judged_is_kept_with_her_preferences(page: FitPage, session: Session) -> None:
    page.open_part("likes")
    page.panel.likes.mode.buttons["designer"].click()
    value = session.committed(ADA.id)
    assert isinstance(value, Person)
    assert value.preference("dress", knit=False).mode == "designer"
    assert session.undo_stack.undoText() == "Judge by the ease it was drafted with"
    page.panel.likes.mode.buttons["my"].click()
    assert session.committed(ADA.id) == ADA


def test_a_mode_that_this_patterns_charts_do_not_allow_gives_way_to_the_usual_one(
    page: FitPage, session: Session
) -> None:
    page.open_part("likes")
    page.panel.likes.mode.buttons["designer"].click()
    session.apply("Take away", next(c for c in session.charts(DRESS.id) if c.kind == "body"), None)
    assert page.panel.likes.mode.buttons["my"].isChecked()
    assert headline(page) == "Cut 40 straight."


def test_a_mode_that_lacks_a_chart_says_what_it_needs(page: FitPage, session: Session, selection: Selection) -> None:
    session.apply("Take away", next(c for c in session.charts(DRESS.id) if c.kind == "finished"), None)
    page.open_part("likes")
    button = page.panel.likes.mode.buttons["my"]
    assert (button.isEnabled(), button.toolTip()) == (False, "Needs finished measurements.")


# How it counts.


def test_a_region_set_free_no_longer_counts(page: FitPage, session: Session) -> None:
    form = likes(page, "waist")
    form.counts.setCurrentIndex(form.counts.findData("free"))
    form.counts.activated.emit(form.counts.currentIndex())
    assert kept(session, "waist").role == "free"
    assert session.undo_stack.undoText() == "Change what counts at the waist"
    assert page.answer.board.regions.rows[1]._text.note == "hangs free"


def test_another_region_can_be_the_one_to_choose_size_by(page: FitPage) -> None:
    form = likes(page, "waist")
    form.counts.setCurrentIndex(form.counts.findData("lead"))
    form.counts.activated.emit(form.counts.currentIndex())
    assert [row._text.leads for row in page.answer.board.regions.rows] == [False, True, False]


def test_the_usual_says_what_it_is_and_can_be_had_back(page: FitPage, session: Session) -> None:
    form = likes(page, "hip")
    assert form.counts.currentText() == "as usual: hangs free"
    form.counts.setCurrentIndex(form.counts.findData("counted"))
    form.counts.activated.emit(form.counts.currentIndex())
    assert form.resets[0].isVisible()
    form.resets[0].click()
    assert kept(session, "hip") == RegionPreference()
    assert not form.resets[0].isVisible()


def test_with_every_region_free_the_way_back_stays_open(page: FitPage, session: Session) -> None:
    regions = {m: RegionPreference(role="free") for m in ("bust", "waist", "hip")}
    preference = replace(ADA.preference("dress", knit=False), regions=regions)
    session.apply("Change", ADA, replace(ADA, preferences=(preference,)))
    assert "hang free" in headline(page)
    likes(page, "bust").resets[0].click()
    assert headline(page) != ""
    assert page.found is not None
    assert page.found.fit is not None


# The ease she likes.


def test_a_band_she_likes_changes_what_is_asked(page: FitPage) -> None:
    form = likes(page, "bust")
    form.likes.setCurrentIndex(form.likes.findData("easy"))
    form.likes.activated.emit(form.likes.currentIndex())
    assert asked(page, "bust") == pytest.approx((7.7 + 13) / 2)


def test_an_exact_figure_is_drafted_while_typed_and_kept_on_enter(
    page: FitPage, session: Session, qtbot: QtBot
) -> None:
    form = likes(page, "bust")
    form.own_ease.setFocus()
    QTest.keyClicks(form.own_ease, "3 1/2")
    assert asked(page, "bust") == pytest.approx(3.5 * 2.54)
    assert kept(session, "bust").own is None
    QTest.keyClick(form.own_ease, Qt.Key.Key_Return)
    own = kept(session, "bust").own
    assert own is not None
    assert (own.value, own.text) == (Fraction(7, 2), "3 1/2")


def test_escape_takes_a_typed_preference_back(page: FitPage, session: Session, qtbot: QtBot) -> None:
    form = likes(page, "bust")
    enter(qtbot, form.own_ease, "3 1/2", Qt.Key.Key_Escape)
    assert asked(page, "bust") == pytest.approx(5.1)
    assert session.person(ADA.id) == ADA


def test_a_refused_text_does_not_follow_to_another_person(
    page: FitPage, session: Session, selection: Selection, qtbot: QtBot
) -> None:
    form = likes(page, "bust")
    enter(qtbot, form.own_ease, "snug")
    session.apply("Add", None, replace(ADA, id="other", name="Other"))
    selection.choose_person("other")
    assert (form.own_ease.text(), form.problem.isVisible()) == ("", False)


def test_a_text_that_is_no_ease_stays_and_is_explained(page: FitPage, session: Session, qtbot: QtBot) -> None:
    form = likes(page, "bust")
    enter(qtbot, form.own_ease, "snug")
    assert (form.own_ease.text(), form.problem.isVisible()) == ("snug", True)
    assert kept(session, "bust").own is None


def test_a_band_edge_of_her_own_moves_the_bands(page: FitPage, qtbot: QtBot) -> None:
    form = likes(page, "bust")
    enter(qtbot, form.edge_fields[1], "2")
    words = [page.answer.board.model.index(0, i).data(Qt.ItemDataRole.ToolTipRole) for i in range(5)]
    assert any("Bust in 40: 2 and one eighth inches of ease, easy" in said for said in words)
    assert form.edge_fields[1].text() == "2"


def test_edges_that_do_not_rise_are_refused_in_place(page: FitPage, session: Session, qtbot: QtBot) -> None:
    form = likes(page, "bust")
    enter(qtbot, form.edge_fields[0], "9")
    assert "must rise" in form.problem.text()
    assert kept(session, "bust").edges is None


def test_the_usual_edges_come_back_with_one_click(page: FitPage, session: Session, qtbot: QtBot) -> None:
    form = likes(page, "bust")
    enter(qtbot, form.edge_fields[1], "2")
    form.resets[3].click()
    assert kept(session, "bust") == RegionPreference()
    assert form.edge_fields[1].text() == "3 in"


def test_the_ease_can_be_taken_from_a_garment_she_likes(page: FitPage, session: Session, qtbot: QtBot) -> None:
    form = likes(page, "bust")
    form.open_liked.click()
    QTest.keyClicks(form.garment.garment, "the linen shirt")
    QTest.keyClicks(form.garment.figure, "21")
    assert form.garment.result.text() == "42 in − 38 in body = 4 in of ease"
    form.garment.use.click()
    own = kept(session, "bust").own
    assert own is not None
    assert (own.exact_cm, kept(session, "bust").liked) == (Fraction(1016, 100), "the linen shirt")
    assert form.taken_from.text() == "Taken from the linen shirt."
    form.resets[2].click()
    assert kept(session, "bust") == RegionPreference()


def test_a_garment_measured_all_the_way_round_is_not_doubled(page: FitPage, qtbot: QtBot) -> None:
    form = likes(page, "bust")
    form.open_liked.click()
    form.garment.how.setCurrentIndex(1)
    QTest.keyClicks(form.garment.figure, "41 1/2")
    assert form.garment.result.text().endswith("= 3 1/2 in of ease")


def test_a_garments_figure_that_is_no_length_is_explained(page: FitPage, qtbot: QtBot) -> None:
    form = likes(page, "bust")
    form.open_liked.click()
    QTest.keyClicks(form.garment.figure, "wide")
    assert "is not a length" in form.garment.result.text()
    assert not form.garment.use.isEnabled()


def test_undo_takes_a_preference_back(page: FitPage, session: Session, qtbot: QtBot) -> None:
    form = likes(page, "bust")
    enter(qtbot, form.own_ease, "3")
    session.undo_stack.undo()
    assert asked(page, "bust") == pytest.approx(5.1)
    assert form.own_ease.text() == ""


def test_a_width_is_never_doubled(page: FitPage, session: Session, selection: Selection, qtbot: QtBot) -> None:
    broad = replace(ADA, id="broad", readings=tuple(replace(r, measure="across_back") for r in ADA.readings[:1]))
    back = replace(chart("finished", "38 40", "in", across_back="39, 40"), id="back")
    settle(session, selection, back, who=broad, what=replace(DRESS, id="other"))
    form = likes(page, "across_back")
    form.open_liked.click()
    QTest.keyClicks(form.garment.figure, "39")
    assert form.garment.result.text() == "39 in − 38 in body = 1 in of ease"


# For everybody.


@pytest.mark.parametrize("part", ["", "slide", "sizes", "likes"])
def test_every_widget_that_takes_the_focus_has_a_name(page: FitPage, part: str) -> None:
    page.open_part(part)
    takers = [w for w in page.findChildren(QWidget) if w.focusPolicy() & Qt.FocusPolicy.TabFocus and w.isVisible()]
    assert takers
    for widget in takers:
        name = QAccessible.queryAccessibleInterface(widget).text(QAccessible.Text.Name)
        assert name, f"{type(widget).__name__} {widget.objectName()} has no name"
