from __future__ import annotations

import dataclasses
from typing import TYPE_CHECKING, Literal

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QFontMetrics
from PySide6.QtTest import QTest

from sizekeeper.ui.overview_cell import LEGEND, SIZES
from sizekeeper.ui.overview_grid import wrapped
from sizekeeper.ui.overview_sizes import OverviewSizes
from sizekeeper.ui.overview_window import OverviewWindow
from tests.build import chart
from tests.ui.comparing import ADA, BODY, LOOSE, SHIRT, TOP, charts, put, put_household, put_views, who, work_out
from tests.ui.naming import nameless

if TYPE_CHECKING:
    from PySide6.QtWidgets import QComboBox
    from pytestqt.modeltest import ModelTester
    from pytestqt.qtbot import QtBot

    from sizekeeper.ui.session import Session
    from sizekeeper.ui.settings import Settings

ACROSS, DOWN = Qt.Orientation.Horizontal, Qt.Orientation.Vertical


def opened(session: Session, settings: Settings, qtbot: QtBot) -> OverviewWindow:
    """The window with all cells worked out."""
    sizes = OverviewSizes(session)
    window = OverviewWindow(session, settings, sizes)
    sizes.setParent(window)
    qtbot.addWidget(window)
    work_out(sizes)
    return window


@pytest.fixture
def window(session: Session, settings: Settings, qtbot: QtBot) -> OverviewWindow:
    """The window on a small household."""
    put_household(session)
    return opened(session, settings, qtbot)


def headings(
    window: OverviewWindow, orientation: Literal[Qt.Orientation.Horizontal, Qt.Orientation.Vertical]
) -> list[str]:
    model = window.model
    count = model.columnCount() if orientation == ACROSS else model.rowCount()
    return [str(model.headerData(i, orientation)) for i in range(count)]


def texts(window: OverviewWindow) -> list[list[str]]:
    model = window.model
    return [[str(model.index(r, c).data()) for c in range(model.columnCount())] for r in range(model.rowCount())]


def choose(box: QComboBox, data: str) -> None:
    box.setCurrentIndex(box.findData(data))


def test_people_run_down_and_patterns_across(window: OverviewWindow) -> None:
    assert headings(window, DOWN) == ["Ada", "Bea", "Cleo"]
    assert headings(window, ACROSS) == ["Aster top", "Bryony shirt"]


def test_a_cell_holds_the_size_to_cut(window: OverviewWindow) -> None:
    assert [row[0].split()[0] for row in texts(window)] == ["38", "42", "42"]


def test_every_sign_in_the_cells_is_explained_below(window: OverviewWindow) -> None:
    said = window.legend.text().replace("\N{NO-BREAK SPACE}", " ")
    assert all(f"{sign} {words}" in said for sign, words in {**SIZES, **LEGEND}.items())


def test_a_column_is_as_wide_as_its_longest_size(session: Session, settings: Settings, qtbot: QtBot) -> None:
    long = "Petite-and-short-38"
    named = chart("finished", f"{long} 40 42", bust="93, 97, 101")
    put(session, ADA, *charts(TOP, named), *charts(SHIRT, BODY, LOOSE))
    window = opened(session, settings, qtbot)
    with qtbot.waitActive(window):
        window.show()
    assert window.grid.columnWidth(0) > QFontMetrics(window.grid.font()).horizontalAdvance(long)
    assert window.grid.columnWidth(1) == window.grid.horizontalHeader().defaultSectionSize()


def test_turned_the_patterns_run_down(window: OverviewWindow) -> None:
    before = texts(window)
    window.turn.setChecked(True)
    assert headings(window, DOWN) == ["Aster top", "Bryony shirt"]
    assert texts(window) == [list(column) for column in zip(*before, strict=True)]


def test_hidden_people_and_patterns_are_left_out(session: Session, window: OverviewWindow) -> None:
    session.apply("Hide", ADA, dataclasses.replace(ADA, hidden=True))
    window.follow()
    assert headings(window, DOWN) == ["Bea", "Cleo"]
    window.stop()


def test_both_ways_can_be_searched(window: OverviewWindow) -> None:
    window.find_people.setText("cle")
    window.find_patterns.setText("moorhen")
    assert (headings(window, DOWN), headings(window, ACROSS)) == (["Cleo"], ["Aster top"])


def test_a_group_alone_can_be_shown(window: OverviewWindow) -> None:
    choose(window.groups, "Cast")
    assert headings(window, DOWN) == ["Ada", "Cleo"]


def test_without_groups_there_is_nothing_to_filter_by(session: Session, settings: Settings, qtbot: QtBot) -> None:
    put(session, who("Dot", "90"))
    assert opened(session, settings, qtbot).groups.isHidden()


def test_nothing_found_says_so_in_place_of_the_grid(window: OverviewWindow) -> None:
    window.find_people.setText("nobody of this name")
    assert window.nothing.isVisibleTo(window)
    assert "found" in window.nothing.text()


def test_an_empty_library_says_what_to_do_first(session: Session, settings: Settings, qtbot: QtBot) -> None:
    assert opened(session, settings, qtbot).nothing.text().startswith("Add at least one person")


def test_patterns_can_be_ordered_by_publisher_and_people_by_doubts(window: OverviewWindow) -> None:
    choose(window.patterns_by, "publisher")
    choose(window.people_by, "doubts")
    assert headings(window, ACROSS) == ["Aster top", "Bryony shirt"]
    assert headings(window, DOWN)[0] == "Cleo"


def test_a_patterns_heading_orders_the_people_by_their_size_and_again_the_other_way(window: OverviewWindow) -> None:
    window.grid.horizontalHeader().sectionClicked.emit(0)
    first = headings(window, DOWN)
    window.grid.horizontalHeader().sectionClicked.emit(0)
    assert (first[0], headings(window, DOWN)[-1]) == ("Ada", "Ada")
    assert window.grid.headings[0].sorts == (0, True)


def test_a_persons_heading_orders_the_patterns_by_her_marks(window: OverviewWindow) -> None:
    window.grid.verticalHeader().sectionClicked.emit(0)
    row = headings(window, DOWN).index("Ada")
    gravities = [cell.gravity for q in window.model.patterns if (cell := window.model._cells("ada", q.id)) is not None]
    assert row == 0
    assert gravities == sorted(gravities, reverse=True)


def test_the_current_cell_stays_with_its_person_and_pattern(window: OverviewWindow) -> None:
    window.grid.setCurrentIndex(window.model.index_of("bea", "shirt"))
    window.find_people.setText("b")
    person, pattern = window.model.pair(window.grid.currentIndex())
    assert (person.id, pattern.id) == ("bea", "shirt")


@pytest.mark.parametrize("key", [Qt.Key.Key_Return, Qt.Key.Key_Enter])
def test_enter_asks_for_the_comparison(window: OverviewWindow, qtbot: QtBot, key: Qt.Key) -> None:
    window.grid.setCurrentIndex(window.model.index_of("bea", "shirt"))
    with qtbot.waitSignal(window.wanted) as asked:
        QTest.keyClick(window.grid, key)
    assert asked.args == ["bea", "shirt", ""]


def test_a_click_asks_for_the_comparison(window: OverviewWindow, qtbot: QtBot) -> None:
    window.show()
    window.turn.setChecked(True)
    rect = window.grid.visualRect(window.model.index_of("cleo", "top"))
    with qtbot.waitSignal(window.wanted) as asked:
        QTest.mouseClick(window.grid.viewport(), Qt.MouseButton.LeftButton, pos=rect.center())
    assert asked.args == ["cleo", "top", ""]


def test_a_cell_is_spoken_in_words(window: OverviewWindow) -> None:
    said = str(window.model.index_of("cleo", "top").data(Qt.ItemDataRole.AccessibleTextRole))
    assert said.startswith("Cleo in Aster top: No size goes round the body; 42 comes closest.")


def test_the_best_of_several_views_is_spoken_and_opened(session: Session, settings: Settings, qtbot: QtBot) -> None:
    put_views(session, who("Eve", "107"))
    window = opened(session, settings, qtbot)
    index = window.model.index(0, 0)
    assert window.model.said(index).startswith("Eve in Aster top: View B fits best of 2 choices. Cut 42 straight.")
    assert "of several views the one that fits best" in window.legend.text()
    window.grid.setCurrentIndex(index)
    with qtbot.waitSignal(window.wanted) as asked:
        QTest.keyClick(window.grid, Qt.Key.Key_Return)
    assert asked.args == ["eve", "top", "B"]


def test_cells_not_worked_out_yet_say_so(session: Session, settings: Settings, qtbot: QtBot) -> None:
    put_household(session)
    sizes = OverviewSizes(session)
    window = OverviewWindow(session, settings, sizes)
    qtbot.addWidget(window)
    assert (texts(window)[0], window.progress.text()) == (["…", "…"], "0 of 6 worked out")
    assert "not worked out yet" in window.model.said(window.model.index(0, 0))
    window.stop()


def test_the_progress_goes_when_all_is_there(window: OverviewWindow) -> None:
    assert window.progress.isHidden()


def test_cells_in_view_are_named(window: OverviewWindow) -> None:
    window.show()
    assert set(window.grid.in_view()) == {(p, q) for p in ("ada", "bea", "cleo") for q in ("top", "shirt")}


def test_closing_stops_the_work(session: Session, settings: Settings, qtbot: QtBot) -> None:
    put_household(session)
    sizes = OverviewSizes(session)
    window = OverviewWindow(session, settings, sizes)
    window.show()
    with qtbot.waitSignal(window.destroyed):
        window.close()
    with qtbot.assertNotEmitted(sizes.found, wait=20):
        pass


def test_an_edit_is_followed(session: Session, window: OverviewWindow, qtbot: QtBot) -> None:
    session.apply("Change name", ADA, dataclasses.replace(ADA, name="Zoe"))
    qtbot.waitUntil(lambda: headings(window, DOWN) == ["Bea", "Cleo", "Zoe"])
    work_out(window._sizes)


def test_the_window_remembers_its_size(session: Session, settings: Settings, qtbot: QtBot) -> None:
    put_household(session)
    first = OverviewWindow(session, settings, OverviewSizes(session))
    first.resize(first.width(), 601)
    first.show()
    with qtbot.waitSignal(first.destroyed):
        first.close()
    assert opened(session, settings, qtbot).height() == 601


def test_everything_has_a_name(window: OverviewWindow) -> None:
    assert nameless(window) == []


def test_the_model_is_sound_before_and_after_it_changes(
    window: OverviewWindow, session: Session, qtmodeltester: ModelTester
) -> None:
    qtmodeltester.check(window.model)  # type: ignore[no-untyped-call]
    window.turn.setChecked(True)
    window.find_people.setText("a")
    qtmodeltester.check(window.model)  # type: ignore[no-untyped-call]


def test_a_long_title_ends_in_an_ellipsis_on_the_last_line(window: OverviewWindow) -> None:
    metrics = QFontMetrics(window.font())
    lines = wrapped("one two three four five six", metrics, metrics.horizontalAdvance("three ") + 4, 3)
    assert len(lines) == 3
    assert lines[-1].endswith("…")
    assert lines[0].startswith("one")
