from __future__ import annotations

import datetime as dt
from dataclasses import replace
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QAbstractItemModelTester, QTest

from sizekeeper.core.make import Make
from sizekeeper.core.pattern import Pattern
from sizekeeper.store.codec import encode
from sizekeeper.ui.history_dialog import HistoryDialog
from sizekeeper.ui.makes_page import MakesPage
from sizekeeper.ui.pages import PAGES
from sizekeeper.ui.selection import Place
from sizekeeper.ui.window import MainWindow
from tests.build import person
from tests.made import MAY, finished, make
from tests.ui.household import ADA, DRESS, settle

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from sizekeeper.store.codec import Value
    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Session
    from sizekeeper.ui.settings import Settings

BEA = replace(person(bust="95"), id="bea", name="Bea", groups=("Choir",))
COAT = Pattern("coat", "Long coat", garment="coat", views=("A",))
EARLY, LATE = dt.date(2025, 3, 1), dt.date(2026, 9, 1)
ADAS = replace(finished("adas", LATE, bust=(2.0, "right")), outcome="Worn to a wedding", next_time="Longer")
BEAS = replace(make("beas", person="bea", pattern="coat", view="B", size="44"), progress="sewing")


@pytest.fixture
def page(
    qtbot: QtBot, session: Session, selection: Selection, settings: Settings, today: Callable[[], dt.date]
) -> MakesPage:
    """The Makes page in front, over an empty library."""
    page = MakesPage(session, selection, settings, today=today)
    qtbot.addWidget(page)
    page.resize(1000, 700)
    with qtbot.waitActive(page):
        page.show()
    return page


def fill(session: Session, selection: Selection, *makes: Make) -> None:
    """Ada with the dress and its charts, Bea, a coat, and these makes."""
    settle(session, selection)
    values: list[Value] = [BEA, COAT, *makes]
    session.apply_all("Set up", [(None, value) for value in values])
    session.undo_stack.clear()


def listed(page: MakesPage) -> list[str]:
    """The ids of the makes as listed."""
    model = page.table.filter
    return [model.index(row, 0).data(Qt.ItemDataRole.UserRole + 1) for row in range(model.rowCount())]


def kept(session: Session, entry: str = "adas") -> Make:
    """A make as it stands."""
    value = session.committed(entry)
    assert isinstance(value, Make)
    return value


def test_an_empty_page_says_what_to_do_first_and_leads_to_the_plans(
    qtbot: QtBot, page: MakesPage, selection: Selection
) -> None:
    with qtbot.waitSignal(selection.page_wanted) as asked:
        page.empty.button.click()

    assert page.empty.isVisible()
    assert asked.args is not None
    assert asked.args[0].page == "fit"


def test_makes_are_listed_with_the_newest_first_and_the_first_is_in_front(
    page: MakesPage, session: Session, selection: Selection
) -> None:
    fill(session, selection, replace(ADAS, id="old", finished_on=EARLY), ADAS, BEAS)
    row = [page.table.filter.index(0, column).data() for column in range(6)]

    assert listed(page) == ["adas", "beas", "old"]
    assert row == ["Ilse", "Wrap dress", "Cut 40 straight", "Finished", "1 Sep 2026", "Worn to a wedding"]
    assert page.make == ADAS
    assert page.detail.title.text() == "Ilse · Wrap dress"


def test_the_list_is_a_sound_model_while_makes_come_and_go(
    page: MakesPage, session: Session, selection: Selection
) -> None:
    fill(session, selection, ADAS)
    tester = QAbstractItemModelTester(page.table.rows, QAbstractItemModelTester.FailureReportingMode.Fatal)

    session.apply("Add", None, BEAS)
    session.apply("Change", ADAS, replace(ADAS, outcome="Too long"))
    session.undo_stack.undo()
    session.undo_stack.undo()

    assert tester.model() is page.table.rows
    assert listed(page) == ["adas"]


@pytest.mark.parametrize(
    ("column", "keys"),
    [(0, ["beas", "adas"]), (1, ["beas", "adas"]), (3, ["beas", "adas"]), (4, ["beas", "adas"])],
)
def test_a_click_on_a_heading_sorts_and_another_turns_the_order_round(
    page: MakesPage, session: Session, selection: Selection, column: int, keys: list[str]
) -> None:
    fill(session, selection, ADAS, BEAS)
    page.table.sort_by(2, True)

    page.table.heading.sectionClicked.emit(column)
    rising = listed(page)
    page.table.heading.sectionClicked.emit(column)

    assert (rising, listed(page)) == (keys, keys[::-1])


@pytest.mark.parametrize(
    ("words", "found"), [("wedding", ["adas"]), ("coat bea", ["beas"]), ("LONGER", ["adas"]), ("zeppelin", [])]
)
def test_a_search_finds_makes_by_whatever_was_noted(
    page: MakesPage, session: Session, selection: Selection, words: str, found: list[str]
) -> None:
    fill(session, selection, ADAS, BEAS)

    page.bar.search.setText(words)

    assert listed(page) == found
    assert page.nothing.isVisible() == (not found)
    assert page.detail.isVisible() == bool(found)


@pytest.mark.parametrize(("whose", "found"), [("Choir", ["beas"]), ("Ilse", ["adas"]), ("Everybody", ["adas", "beas"])])
def test_makes_are_listed_for_a_group_or_a_person(
    page: MakesPage, session: Session, selection: Selection, whose: str, found: list[str]
) -> None:
    fill(session, selection, ADAS, BEAS)

    page.bar.whose.setCurrentIndex(page.bar.whose.findText(whose))

    assert listed(page) == found


def test_makes_are_listed_by_how_far_they_are(page: MakesPage, session: Session, selection: Selection) -> None:
    fill(session, selection, ADAS, BEAS)

    page.bar.far.setCurrentIndex(page.bar.far.findData("sewing"))

    assert listed(page) == ["beas"]
    assert page.bar.count.text() == "1 of 2 makes"


def choose(page: MakesPage, progress: str) -> None:
    """Say how far the make in front is, as a pick from the list does."""
    box = page.detail.outcome.progress
    box.setCurrentIndex(box.findData(progress))
    box.activated.emit(box.currentIndex())


def test_finishing_a_make_keeps_the_day_what_was_cut_and_the_ease_and_is_one_step(
    page: MakesPage, session: Session, selection: Selection
) -> None:
    fill(session, selection, replace(make("adas"), progress="sewing"))

    choose(page, "finished")
    done = kept(session)

    assert done.finished_on == dt.date(2026, 11, 25)
    assert done.kept is not None
    assert done.kept.cut == "Cut 40 straight"
    assert done.kept.regions["bust"].ease_cm == pytest.approx(2.125 * 2.54)  # 40 1/8 less 38
    assert session.undo_stack.undoText() == "Finish the make"
    session.undo_stack.undo()
    assert (kept(session).progress, kept(session).kept) == ("sewing", None)


def test_a_make_whose_pattern_has_no_figures_is_finished_without_any(
    page: MakesPage, session: Session, selection: Selection
) -> None:
    fill(session, selection, BEAS)

    choose(page, "finished")

    assert kept(session, "beas").kept is None
    assert kept(session, "beas").finished_on == dt.date(2026, 11, 25)


def test_what_was_kept_stays_when_the_chart_and_her_figures_change(
    page: MakesPage, session: Session, selection: Selection
) -> None:
    fill(session, selection, replace(make("adas"), progress="sewing"))
    choose(page, "finished")
    before = page.detail.reading.text

    chart = session.charts(DRESS.id)[1]
    session.apply("Change", chart, replace(chart, rows=()))
    session.apply("Change", ADA, replace(ADA, readings=()))

    assert page.detail.reading.text == before
    assert "body 38 in; 2 1/8 in of ease; asked for 2 in" in before


def test_how_it_was_worn_is_kept_region_by_region(page: MakesPage, session: Session, selection: Selection) -> None:
    fill(session, selection, ADAS)
    box = page.detail.outcome.worn["bust"]
    assert box.currentText() == "as wanted"
    assert not page.detail.outcome.worn["wrist"].isVisible()

    for felt in ("loose", ""):
        box.setCurrentIndex(box.findData(felt))
        box.activated.emit(box.currentIndex())
        assert kept(session).worn == ({"bust": felt} if felt else {})


def test_how_it_was_worn_is_asked_once_it_is_finished(page: MakesPage, session: Session, selection: Selection) -> None:
    fill(session, selection, replace(make("adas"), progress="sewing"))
    assert not any(box.isVisible() for box in page.detail.outcome.worn.values())

    choose(page, "finished")

    asked = [measure for measure, box in page.detail.outcome.worn.items() if box.isVisible()]
    assert asked == ["bust", "waist", "hip"]


def test_a_note_is_an_edit_when_it_is_left_and_esc_restores_it(
    page: MakesPage, session: Session, selection: Selection
) -> None:
    fill(session, selection, ADAS)
    notes = page.detail.outcome.next_time
    notes.setFocus()
    QTest.keyClicks(notes, "x")
    assert kept(session).next_time == "Longer"
    QTest.keyClick(notes, Qt.Key.Key_Escape)
    assert notes.toPlainText() == "Longer"
    assert not session.drafting

    QTest.keyClick(notes, Qt.Key.Key_End)
    QTest.keyClicks(notes, " straps")
    page.table.setFocus()

    assert kept(session).next_time == "Longer straps"
    assert session.undo_stack.undoText() == "Note for next time"


def test_what_is_typed_for_one_make_stays_with_it_when_another_is_picked(
    page: MakesPage, session: Session, selection: Selection
) -> None:
    fill(session, selection, ADAS, BEAS)
    page.table.pick("adas")
    outcome = page.detail.outcome.outcome
    outcome.setFocus()
    outcome.selectAll()
    QTest.keyClicks(outcome, "Fine")

    page.table.pick("beas")

    assert (kept(session).outcome, kept(session, "beas").outcome) == ("Fine", "")
    assert outcome.toPlainText() == ""


def test_tab_goes_down_the_fields_in_the_order_they_stand(
    page: MakesPage, session: Session, selection: Selection
) -> None:
    fill(session, selection, ADAS)
    outcome = page.detail.outcome
    passed = []
    outcome.outcome.setFocus()
    for _ in range(2):
        QTest.keyClick(page.window().focusWidget(), Qt.Key.Key_Tab)
        passed.append(page.window().focusWidget())

    assert passed == [outcome.worn["bust"], outcome.next_time]


def test_the_day_it_was_finished_can_be_changed(page: MakesPage, session: Session, selection: Selection) -> None:
    fill(session, selection, ADAS)

    page.detail.outcome.day.day_entered.emit(MAY)

    assert kept(session).finished_on == MAY


def test_a_hidden_make_leaves_the_list_and_can_be_brought_back(
    page: MakesPage, session: Session, selection: Selection
) -> None:
    fill(session, selection, ADAS, BEAS)
    page.table.pick("adas")
    page.table.setFocus()

    QTest.keyClick(page.table, Qt.Key.Key_Delete)
    assert (listed(page), kept(session).hidden) == (["beas"], True)
    page.bar.hidden.setChecked(True)
    page.table.pick("adas")
    assert page.detail.hide_it.text() == "Bring back"
    page.detail.hide_it.click()

    assert not kept(session).hidden


def test_undo_of_hiding_shows_the_make_again_although_it_was_filtered_away(
    page: MakesPage, session: Session, selection: Selection
) -> None:
    fill(session, selection, ADAS, BEAS)
    page.bar.search.setText("coat")

    page.reveal(Place("makes", "adas", "next_time"))

    assert page.make == ADAS
    assert page.detail.outcome.next_time.hasFocus()


def test_a_make_of_a_view_that_was_removed_is_read_here_and_not_opened(
    qtbot: QtBot, page: MakesPage, session: Session, selection: Selection
) -> None:
    fill(session, selection, BEAS)

    with qtbot.assertNotEmitted(selection.page_wanted):
        page.table.opened.emit("beas")

    assert not page.detail.fit.isEnabled()
    assert page.detail.why_not.text() == "The pattern no longer has view B, so that this make can only be read here."
    assert "44, straight" in page.detail.reading.text


@pytest.mark.parametrize("key", [Qt.Key.Key_Return, Qt.Key.Key_Enter])
def test_enter_opens_a_make_on_fit(
    qtbot: QtBot, page: MakesPage, session: Session, selection: Selection, key: Qt.Key
) -> None:
    fill(session, selection, ADAS)
    page.table.setFocus()

    with qtbot.waitSignal(selection.page_wanted) as asked:
        QTest.keyClick(page.table, key)

    assert asked.args == [Place("fit", "adas", "pattern/plan:plans/")]


def test_the_sheet_of_a_make_is_asked_for_with_that_make_taken_up(
    qtbot: QtBot, page: MakesPage, session: Session, selection: Selection
) -> None:
    fill(session, selection, ADAS)

    with qtbot.waitSignal(selection.sheet_wanted):
        page.detail.sheet.click()

    assert (selection.person, selection.pattern, selection.make) == ("person", "pattern", "adas")


def test_a_row_has_a_menu_of_what_can_be_done(page: MakesPage, session: Session, selection: Selection) -> None:
    fill(session, selection, ADAS)

    page.table.customContextMenuRequested.emit(page.table.rect().center())

    assert [action.text() for action in page.menu.actions()] == [button.text() for button in page.detail.buttons]
    page.menu.hide()


def test_the_history_of_a_make_is_a_button_away(
    page: MakesPage, session: Session, selection: Selection, monkeypatch: pytest.MonkeyPatch
) -> None:
    fill(session, selection, ADAS)
    opened: list[str] = []
    monkeypatch.setattr(HistoryDialog, "open", lambda dialog: opened.append(dialog.windowTitle()))

    page.detail.history.click()

    assert opened == ["History of Make: Dress"]


def test_every_make_on_the_page_can_be_saved(page: MakesPage, session: Session, selection: Selection) -> None:
    fill(session, selection, replace(make("adas"), progress="sewing"))

    choose(page, "finished")

    assert '"progress":"finished"' in encode(kept(session))


def test_makes_are_the_fifth_page_and_undo_comes_back_to_the_make(
    qtbot: QtBot, session: Session, selection: Selection, settings: Settings
) -> None:
    fill(session, selection, ADAS, BEAS)
    window = MainWindow(session, settings, PAGES)
    qtbot.addWidget(window)
    with qtbot.waitActive(window):
        window.show()
    window.menus.turns[4].trigger()
    page = window.pages.page("makes")
    assert isinstance(page, MakesPage)
    assert (window.pages.front, window.menus.turns[4].shortcut().toString()) == ("makes", "Ctrl+5")
    page.table.pick("beas")
    page.detail.hide_it.click()
    window.turn_to("pattern")

    session.undo_stack.undo()

    assert window.pages.front == "makes"
    assert page.make is not None
    assert (page.make.id, page.make.hidden) == ("beas", False)


def test_the_make_that_is_worked_on_for_those_chosen_meanwhile_comes_to_the_front(
    page: MakesPage, session: Session, selection: Selection
) -> None:
    fill(session, selection, ADAS, replace(BEAS, view=""), replace(ADAS, id="beas old", person="bea", pattern="coat"))
    page.hide()
    selection.choose_person("bea")
    selection.choose_pattern("coat")
    page.show()
    assert page.table.key == "beas"


def test_a_make_that_was_picked_stays_in_front_while_nothing_else_is_chosen(
    page: MakesPage, session: Session, selection: Selection
) -> None:
    fill(session, selection, ADAS, BEAS)
    selection.choose_person("ada")
    selection.choose_pattern("dress")
    page.hide()
    page.show()
    page.table.pick("beas")
    page.hide()
    page.show()
    assert page.table.key == "beas"
