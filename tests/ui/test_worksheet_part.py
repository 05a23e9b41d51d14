"""The worksheet: the steps in order, their ticks, and the drawings."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from tests.build import person
from tests.core.paper import inches
from tests.ui.planning import BODICE, open_desk, saved_make, steps
from tests.ui.test_plan_alter import SEWN, TALL

if TYPE_CHECKING:
    from sizekeeper.ui.fit_page import FitPage
    from sizekeeper.ui.plan_desk import PlanDesk
    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Session


@pytest.fixture
def desk(page: FitPage, session: Session, selection: Selection) -> PlanDesk:
    """The worksheet of the dress, whose back is to be 2 1/8 in longer."""
    return open_desk(page, session, selection, pieces=BODICE, who=TALL, what=SEWN, part="worksheet")


def test_each_piece_has_its_steps_and_matching_pieces_come_last(desk: PlanDesk) -> None:
    assert [row.tick.accessibleName() for row in desk.worksheet.rows] == [
        "Back: Cut across between bust and waist and spread by 2 1/8 in.",
        "Front: Cut across between bust and waist and spread by 2 1/8 in.",
        "Facing: Cut across between bust and waist and spread by 2 1/8 in.",
    ]
    assert desk.worksheet.heads["match"].isVisible()


def test_a_tick_is_saved_and_can_be_undone(desk: PlanDesk, session: Session) -> None:
    desk.worksheet.rows[0].tick.setFocus()
    QTest.keyClick(desk.worksheet.rows[0].tick, Qt.Key.Key_Space)
    assert desk.worksheet.count.text() == "1 of 3 done"
    assert (len(saved_make(session).ticks), steps(session)) == (1, ["Tick a step: Back"])
    session.undo_stack.undo()
    assert not desk.worksheet.rows[0].tick.isChecked()


def test_a_tick_does_not_stand_beside_another_amount(desk: PlanDesk, session: Session) -> None:
    desk.worksheet.rows[0].tick.click()
    before = session.person(TALL.id)
    taller = person("in", bust="38", waist="28", hip="43", back_waist_length="18")
    session.apply("Grow", before, taller)
    assert not any(row.tick.isChecked() for row in desk.worksheet.rows)


def test_the_piece_in_focus_is_drawn_with_its_change(desk: PlanDesk) -> None:
    desk.worksheet.rows[1].tick.setFocus()
    drawing = desk.worksheet.drawing
    assert drawing.piece is not None
    assert (drawing.piece.name, drawing.changes[0].amount) == ("Front", inches("2 1/8"))
    assert drawing.changes[0].levels == ("bust", "waist")


def test_the_side_seam_is_drawn_for_a_line_between_sizes_only(desk: PlanDesk, session: Session) -> None:
    assert not desk.worksheet.seam.isVisible()
    desk.turn_to("plans")
    between = next(c for c in desk.plans.cards if c.plan is not None and c.plan.kind == "between")
    between.button.click()
    desk.turn_to("worksheet")
    assert desk.worksheet.seam.isVisible()
    assert "outside" in desk.worksheet.seam.accessibleDescription()


def test_without_pieces_it_asks_for_them(page: FitPage, session: Session, selection: Selection) -> None:
    desk = open_desk(page, session, selection, part="worksheet")
    assert desk.worksheet.count.text().startswith("List the pattern’s pieces")
