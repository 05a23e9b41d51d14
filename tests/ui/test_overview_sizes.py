from __future__ import annotations

import dataclasses
from typing import TYPE_CHECKING

import pytest

from sizekeeper.ui.overview_sizes import OverviewSizes
from tests.ui.comparing import ADA, BEA, FINISHED, TOP, charts, put_household, put_views, who, work_out

if TYPE_CHECKING:
    from pytestqt.qtbot import QtBot

    from sizekeeper.ui.overview_sizes import Pair
    from sizekeeper.ui.session import Session


@pytest.fixture
def sizes(session: Session) -> OverviewSizes:
    """The sizes of a small household, all of them asked for."""
    put_household(session)
    sizes = OverviewSizes(session)
    sizes.ask(session.people(), session.patterns())
    return sizes


def again(sizes: OverviewSizes, session: Session) -> list[Pair]:
    """The cells that are not true any more after an edit, once asked for anew."""
    sizes.ask(session.people(), session.patterns())
    open_ = [(p.id, q.id) for p in session.people() for q in session.patterns() if sizes.cell(p.id, q.id) is None]
    sizes.stop()
    return open_


def test_nothing_is_known_before_it_is_worked_out(sizes: OverviewSizes) -> None:
    assert (sizes.cell("ada", "top"), sizes.progress) == (None, (0, 6))
    sizes.stop()


def test_every_cell_comes_in_the_end(sizes: OverviewSizes, qtbot: QtBot) -> None:
    with qtbot.waitSignal(sizes.finished):
        pass
    assert sizes.progress == (6, 6)
    ada = sizes.cell("ada", "top")
    assert ada is not None
    assert ada.size == "38"


def test_cells_in_view_come_first(sizes: OverviewSizes, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("sizekeeper.ui.overview_sizes._SLICE_S", 0.0)
    sizes.look_first(lambda: [("cleo", "shirt")])
    sizes.work()
    sizes.stop()
    assert sizes.cell("cleo", "shirt") is not None
    assert sizes.progress == (1, 6)


def test_stopping_leaves_the_rest_open(sizes: OverviewSizes, qtbot: QtBot) -> None:
    sizes.stop()
    with qtbot.assertNotEmitted(sizes.found, wait=20):
        pass


def test_an_edited_person_opens_her_row_alone(sizes: OverviewSizes, session: Session) -> None:
    work_out(sizes)
    session.apply("Change name", BEA, dataclasses.replace(BEA, name="Beatrix"))
    assert again(sizes, session) == [("bea", "top"), ("bea", "shirt")]


def test_an_edited_chart_opens_its_patterns_column_alone(sizes: OverviewSizes, session: Session) -> None:
    work_out(sizes)
    before = charts(TOP, FINISHED)[1]
    session.apply("Change chart", before, dataclasses.replace(FINISHED, id=before.id, pattern="top", unit="in"))
    assert again(sizes, session) == [("ada", "top"), ("bea", "top"), ("cleo", "top")]


def test_a_draft_counts_while_it_is_typed(sizes: OverviewSizes, session: Session) -> None:
    work_out(sizes)
    session.draft(dataclasses.replace(ADA, readings=()))
    assert again(sizes, session) == [("ada", "top"), ("ada", "shirt")]


def test_what_is_true_still_is_not_worked_out_again(sizes: OverviewSizes, session: Session, qtbot: QtBot) -> None:
    work_out(sizes)
    with qtbot.assertNotEmitted(sizes.found), qtbot.waitSignal(sizes.finished):
        sizes.ask(session.people(), session.patterns())


def test_of_several_views_the_one_that_fits_best_is_shown(session: Session) -> None:
    # 5.1 cm of ease are asked for: 88 + 5.1 is view A's 38 (93), 107 + 5.1 view B's 42 (112).
    put_views(session, ADA, who("Eve", "107"))
    sizes = OverviewSizes(session)
    sizes.ask(session.people(), session.patterns())
    work_out(sizes)
    ada, eve = sizes.cell("ada", "top"), sizes.cell("eve", "top")
    assert ada is not None
    assert eve is not None
    assert [(cell.size, cell.view, cell.view_said) for cell in (ada, eve)] == [
        ("38", "", "View A fits best of 2 choices."),
        ("42", "B", "View B fits best of 2 choices."),
    ]


def test_a_chart_of_another_view_opens_the_column_when_it_comes(sizes: OverviewSizes, session: Session) -> None:
    work_out(sizes)
    session.apply("Add", None, dataclasses.replace(FINISHED, id="new", pattern="top", view="C"))
    assert again(sizes, session) == [("ada", "top"), ("bea", "top"), ("cleo", "top")]
