from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import pytest
from PySide6.QtTest import QTest

from sizekeeper.core.notation import parse_length
from sizekeeper.core.piece import Opening
from tests.core.written import chart
from tests.ui.piecework import DRESS, FRONT, in_front, pieces_of, saved, settle, type_into
from tests.ui.walking import tab_from

if TYPE_CHECKING:
    from pytestqt.qtbot import QtBot

    from sizekeeper.ui.pattern_page import PatternPage
    from sizekeeper.ui.pieces_openings import OpeningsPart
    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Session
    from sizekeeper.ui.settings import Settings

FINISHED = replace(chart("38, 40", "finished", waist="70, 74"), id="c", pattern="p")


@pytest.fixture
def page(qtbot: QtBot, session: Session, selection: Selection, settings: Settings) -> PatternPage:
    page = in_front(qtbot, session, selection, settings)
    settle(session, selection, DRESS, FINISHED, pieces_of(FRONT))
    return page


@pytest.fixture
def openings(page: PatternPage) -> OpeningsPart:
    return page.pieces.openings


def add(openings: OpeningsPart, number: int) -> None:
    openings.add.menu().actions()[number].trigger()


def test_a_usual_opening_is_added_and_its_edge_typed(openings: OpeningsPart, session: Session) -> None:
    add(openings, 0)
    type_into(openings.rows[0].lengths["around"], "58")
    type_into(openings.rows[0].lengths["fastening"], "12")
    assert saved(session).openings == (
        Opening("Neck", ("head",), parse_length("58", "cm"), "neck", parse_length("12", "cm")),
    )
    assert session.undo_stack.undoText() == "Change the opening Neck"


def test_what_must_pass_is_ticked(openings: OpeningsPart, session: Session) -> None:
    add(openings, 1)
    openings.rows[0].passing["shoulders"].click()
    assert saved(session).openings[0].must_pass == ("shoulders", "hips")
    openings.rows[0].passing["hips"].click()
    assert saved(session).openings[0].must_pass == ("shoulders",)


def test_an_edge_can_come_from_the_chart_and_a_missing_measure_is_marked(openings: OpeningsPart) -> None:
    add(openings, 0)
    measure = openings.rows[0].measure
    assert [measure.itemText(i) for i in range(measure.count())] == ["–", "Waist", "Neck (missing)"]
    assert measure.currentText() == "Neck (missing)"


def test_the_measure_of_an_edge_is_changed(openings: OpeningsPart, session: Session) -> None:
    add(openings, 0)
    openings.rows[0].measure.activated.emit(1)
    assert saved(session).openings[0].measure == "waist"


def test_an_opening_is_taken_out_and_brought_back(openings: OpeningsPart, session: Session) -> None:
    add(openings, 0)
    add(openings, 1)
    openings.rows[0].remove.click()
    assert [one.name for one in saved(session).openings] == ["Waist"]
    assert openings.rows[0].name.text() == "Waist"
    assert not openings.rows[1].name.isVisible()
    session.undo_stack.undo()
    assert openings.rows[1].name.text() == "Waist"


def test_a_figure_is_a_draft_while_typed(openings: OpeningsPart, session: Session) -> None:
    add(openings, 0)
    steps = session.undo_stack.count()
    field = openings.rows[0].lengths["elastic"]
    field.setFocus()
    QTest.keyClicks(field, "60")
    drafted = session.value("pp")
    assert getattr(drafted, "openings")[0].elastic == parse_length("60", "cm")  # noqa: B009 - any kind of value
    assert (saved(session).openings[0].elastic, session.undo_stack.count()) == (None, steps)


def test_a_figure_that_is_none_is_explained(openings: OpeningsPart) -> None:
    add(openings, 0)
    type_into(openings.rows[0].lengths["around"], "wide")
    assert openings.problem.text() == "Edge all round of opening 1: “wide” is not a length."


def test_an_opening_is_renamed(openings: OpeningsPart, session: Session) -> None:
    add(openings, 0)
    type_into(openings.rows[0].name, "Back slit")
    assert saved(session).openings[0].name == "Back slit"


def test_tab_goes_through_the_openings_from_left_to_right_and_on_to_the_fabric(
    page: PatternPage, openings: OpeningsPart
) -> None:
    add(openings, 0)
    add(openings, 1)
    one, two = openings.rows
    stops = [*one.stops, *two.stops]
    assert tab_from(openings.add, len(stops) + 1) == [*stops, page.pieces.fabric.table]
    assert stops[6:11] == [
        one.lengths["around"], one.measure, one.lengths["fastening"], one.lengths["elastic"], one.remove,
    ]  # fmt: skip


def test_when_an_opening_is_removed_the_focus_stays_at_the_openings(openings: OpeningsPart) -> None:
    add(openings, 0)
    openings.rows[0].remove.setFocus()
    openings.rows[0].remove.click()
    assert openings.add.hasFocus()
