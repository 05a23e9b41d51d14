from __future__ import annotations

import dataclasses
from typing import TYPE_CHECKING

import pytest
from PySide6.QtWidgets import QMenu

from sizekeeper.ui.overview_window import OverviewWindow
from sizekeeper.ui.selection import Place
from tests.ui.comparing import ADA, BEA, BODY, FINISHED, SHIRT, TOP, charts, put, put_household, put_views

if TYPE_CHECKING:
    from collections.abc import Iterator

    from PySide6.QtGui import QAction
    from pytestqt.qtbot import QtBot

    from sizekeeper.ui.comparison_actions import ComparisonActions
    from sizekeeper.ui.window import MainWindow


@pytest.fixture
def comparisons(window: MainWindow) -> Iterator[ComparisonActions]:
    """The actions of a window on an empty library; what they opened is closed at the end."""
    yield window.comparisons
    window.comparisons.finish()


def offered(comparisons: ComparisonActions) -> list[bool]:
    actions = (comparisons.overview, comparisons.people, comparisons.patterns, comparisons.drafting)
    return [action.isEnabled() for action in actions]


def test_nothing_is_offered_in_an_empty_library(comparisons: ComparisonActions) -> None:
    assert offered(comparisons) == [False] * 4


def test_each_is_offered_when_there_is_enough_to_compare(window: MainWindow, comparisons: ComparisonActions) -> None:
    put(window.session, ADA, *charts(TOP, BODY, FINISHED))
    assert offered(comparisons) == [True, False, False, False]
    put(window.session, BEA)
    assert offered(comparisons) == [True, True, False, False]
    put(window.session, *charts(SHIRT, BODY))
    assert offered(comparisons) == [True] * 4


def test_who_is_hidden_is_nobody_to_compare(window: MainWindow, comparisons: ComparisonActions) -> None:
    put(window.session, ADA, dataclasses.replace(BEA, hidden=True), *charts(TOP, BODY))
    assert not comparisons.people.isEnabled()


def test_the_menu_stands_between_pattern_and_view(window: MainWindow) -> None:
    titles = [action.text().replace("&", "") for action in window.menuBar().actions()]
    assert titles.index("Pattern") < titles.index("Compare") < titles.index("View")
    menu = next(m for a in window.menuBar().actions() if isinstance(m := a.menu(), QMenu) and m.title() == "&Compare")
    assert window.comparisons.overview in menu.actions()


@pytest.mark.parametrize(
    ("which", "name"),
    [("overview", "overview"), ("people", "two people"), ("patterns", "two patterns"), ("drafting", "drafting")],
)
def test_each_opens_a_window_of_its_own_once(
    window: MainWindow, comparisons: ComparisonActions, which: str, name: str
) -> None:
    put_household(window.session)
    action: QAction = getattr(comparisons, which)
    action.trigger()
    first = comparisons.shown(name)
    action.trigger()
    assert first is not None
    assert comparisons.shown(name) is first
    assert (first.isWindow(), first.parent()) == (True, None)


def test_a_closed_window_opens_anew(window: MainWindow, comparisons: ComparisonActions) -> None:
    put_household(window.session)
    comparisons.overview.trigger()
    first = comparisons.shown("overview")
    assert first is not None
    first.close()
    assert comparisons.shown("overview") is None
    comparisons.overview.trigger()
    assert comparisons.shown("overview") is not None


def test_they_close_with_the_main_window(window: MainWindow, comparisons: ComparisonActions) -> None:
    put_household(window.session)
    for action in (comparisons.overview, comparisons.people, comparisons.drafting):
        action.trigger()
    window.close()
    assert [comparisons.shown(name) for name in ("overview", "two people", "drafting")] == [None] * 3


def test_a_cell_of_the_grid_goes_to_its_comparison(window: MainWindow, comparisons: ComparisonActions) -> None:
    put_household(window.session)
    comparisons.overview.trigger()
    grid = comparisons.shown("overview")
    assert isinstance(grid, OverviewWindow)
    grid.wanted.emit("cleo", "shirt", "")
    assert (window.selection.person, window.selection.pattern, window.pages.front) == ("cleo", "shirt", "fit")


def test_a_cell_of_a_view_goes_to_that_view(window: MainWindow, comparisons: ComparisonActions, qtbot: QtBot) -> None:
    put_views(window.session, ADA)
    comparisons.overview.trigger()
    grid = comparisons.shown("overview")
    assert isinstance(grid, OverviewWindow)
    with qtbot.waitSignal(window.selection.page_wanted) as asked:
        grid.wanted.emit("ada", "top", "B")
    assert asked.args == [Place("fit", "ada", "top/view:B")]


def test_what_was_worked_out_is_kept_for_the_next_time(window: MainWindow, comparisons: ComparisonActions) -> None:
    put_household(window.session)
    comparisons.overview.trigger()
    first = comparisons.shown("overview")
    assert isinstance(first, OverviewWindow)
    while first._sizes.progress[0] < first._sizes.progress[1]:
        first._sizes.work()
    first.close()
    comparisons.overview.trigger()
    second = comparisons.shown("overview")
    assert isinstance(second, OverviewWindow)
    assert second.progress.isHidden()


def test_the_two_people_begin_with_whom_the_pages_show(window: MainWindow, comparisons: ComparisonActions) -> None:
    put_household(window.session)
    window.selection.choose_person("bea")
    window.selection.choose_pattern("shirt")
    comparisons.people.trigger()
    shown = comparisons.shown("two people")
    assert shown is not None
    assert [shown.left.chosen, shown.both.chosen] == [("bea", ""), ("shirt", "")]  # type: ignore[attr-defined]
