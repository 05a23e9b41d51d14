"""The toiles: what was pinned, what is left, and the next change."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from sizekeeper.core.make import ToileRound
from tests.build import chart, person
from tests.ui.planning import BODICE, WAISTBAND, open_desk, saved_make, steps, type_in

if TYPE_CHECKING:
    from sizekeeper.ui.fit_page import FitPage
    from sizekeeper.ui.plan_desk import PlanDesk
    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Session


@pytest.fixture
def desk(page: FitPage, session: Session, selection: Selection) -> PlanDesk:
    """The first toile of the dress; its waist is printed with 1 7/8 in of ease."""
    desk = open_desk(page, session, selection, pieces=(*BODICE, *WAISTBAND), part="toile")
    desk.toile.add.click()
    return desk


def test_what_was_found_replaces_what_was_printed(desk: PlanDesk) -> None:
    # Common practice, no source: printed ease 1 7/8, found 2 1/2 too big, 2 taken: 1/2 left, not -1/8.
    row = desk.toile.rows["waist"]
    type_in(row.found, "2 1/2")
    type_in(row.taken, "2")
    assert (row.printed.text(), row.left.text()) == ("1 7/8 in", "1/2 in")
    assert desk.toile.said.text().splitlines()[0] == (
        "Waist: came up 5/8 in larger than printed, make it 2 in narrower, that leaves 1/2 in of ease."
    )


def widened(desk: PlanDesk, by: str) -> None:
    """Change the width at the waist under Alterations, and come back to the toile."""
    desk.turn_to("alter")
    desk.alter.widths.by.setText(by)
    desk.alter.widths.add.click()
    desk.turn_to("toile")


def test_a_width_changed_before_the_toile_is_sewn_is_in_its_printed_ease(
    page: FitPage, session: Session, selection: Selection
) -> None:
    # 1 7/8 in printed and 1 in wider make 2 7/8; 2 1/2 found is 3/8 less.
    desk = open_desk(page, session, selection, pieces=(*BODICE, *WAISTBAND), part="toile")
    widened(desk, "1")
    desk.toile.add.click()
    type_in(desk.toile.rows["waist"].found, "2 1/2")
    assert desk.toile.rows["waist"].printed.text() == "2 7/8 in"
    assert desk.toile.said.text().startswith("Waist: came up 3/8 in smaller than printed plus the 1 in added")
    assert desk.toile.reckoned.text() == "Printed ease reckons in what was changed before this toile: waist 1 in wider."


def test_a_width_changed_after_the_toile_was_begun_is_not_in_its_printed_ease(desk: PlanDesk) -> None:
    assert desk.toile.reckoned.text() == ""
    widened(desk, "1")
    assert desk.toile.rows["waist"].printed.text() == "1 7/8 in"
    assert desk.toile.reckoned.text() == "Changed since this toile was begun, and not in its printed ease: waist."


def test_a_toile_of_which_nobody_noted_what_was_changed_before_says_so(desk: PlanDesk, session: Session) -> None:
    make = saved_make(session)
    session.apply("Set up", make, replace(make, rounds=(ToileRound(make.rounds[0].on),)))
    widened(desk, "1")
    assert desk.toile.rows["waist"].printed.text() == "1 7/8 in"
    assert desk.toile.reckoned.text() == (
        "It was not noted what was changed before this toile, so its printed ease leaves that out: waist."
    )


def test_what_an_earlier_toile_asked_for_is_no_change_before_the_next(desk: PlanDesk, session: Session) -> None:
    type_in(desk.toile.rows["waist"].taken, "2")
    desk.toile.add.click()
    assert saved_make(session).rounds[1].altered == {}
    assert desk.toile.rows["waist"].printed.text() == "1 7/8 in"


def test_every_figure_is_one_step(desk: PlanDesk, session: Session) -> None:
    type_in(desk.toile.rows["waist"].found, "2 1/2")
    assert steps(session) == ["Begin a toile", "Change the toile at the waist"]
    session.undo_stack.undo()
    assert desk.toile.rows["waist"].found.text() == ""


def test_what_passes_the_tight_edge_is_warned_of(desk: PlanDesk) -> None:
    # The waist of a dress is tight below 1.2 cm; 1 in found and 1 taken leave nothing: 12 mm, 1/2 in rounded up.
    type_in(desk.toile.rows["waist"].found, "1")
    type_in(desk.toile.rows["waist"].taken, "1")
    assert desk.toile.warning.text() == "Waist: what is left passes the tight edge by 1/2 in."


def test_what_was_felt_against_what_was_pinned_is_questioned(desk: PlanDesk) -> None:
    row = desk.toile.rows["waist"]
    type_in(row.taken, "1")
    row.felt.setCurrentText("tight")
    row.felt.activated.emit(row.felt.currentIndex())
    assert desk.toile.warning.text() == "Waist: it felt tight, and yet it is taken in; look again."


def test_the_next_change_stands_among_the_widths(desk: PlanDesk) -> None:
    type_in(desk.toile.rows["waist"].taken, "2")
    desk.turn_to("alter")
    row = desk.alter.widths.rows[0]
    assert not row.asked_by.isHidden()
    assert desk.alter.widths.button.summary == "waist 2 in narrower"


def test_changes_add_up_over_the_rounds_and_each_round_is_kept(desk: PlanDesk, session: Session) -> None:
    type_in(desk.toile.rows["waist"].taken, "2")
    desk.toile.add.click()
    assert desk.toile.rows["waist"].taken.text() == ""
    type_in(desk.toile.rows["waist"].taken, "-1/2")
    desk.turn_to("alter")
    assert desk.alter.widths.button.summary == "waist 1 1/2 in narrower"
    assert [len(one.pinned) for one in saved_make(session).rounds] == [1, 1]


def test_an_earlier_round_can_be_looked_at(desk: PlanDesk) -> None:
    type_in(desk.toile.rows["waist"].taken, "2")
    desk.toile.add.click()
    desk.toile.turns[0].click()
    assert desk.toile.rows["waist"].taken.text() == "2"
    assert [turn.isChecked() for turn in desk.toile.turns] == [True, False]
    assert desk.toile.turns[0].text() == "First toile, 25 November"


def test_a_round_can_be_taken_away(desk: PlanDesk, session: Session) -> None:
    desk.toile.away.click()
    assert saved_make(session).rounds == ()
    session.undo_stack.undo()
    assert len(saved_make(session).rounds) == 1


def test_what_is_no_length_is_said_and_stays(desk: PlanDesk, session: Session) -> None:
    type_in(desk.toile.rows["waist"].taken, "a bit")
    assert desk.toile.problem.text() == "Taken in at the waist: “a bit” is not a length"
    assert saved_make(session).rounds[0].pinned == ()


def test_a_note_is_kept_with_the_round(desk: PlanDesk, session: Session) -> None:
    type_in(desk.toile.note, "shoulder seam too far back")
    assert saved_make(session).rounds[0] == ToileRound(
        saved_make(session).rounds[0].on, (), "shoulder seam too far back", {}
    )


def test_after_a_toile_nothing_is_warned_of_from_the_printed_figure(
    page: FitPage, session: Session, selection: Selection
) -> None:
    made = chart("finished", "38 40", "in", bust="38 1/4, 40", waist="27, 28 1/4")
    who = person("in", bust="38", waist="28")
    desk = open_desk(page, session, selection, made, pieces=BODICE, who=who)
    card = next(c for c in desk.plans.cards if c.plan is not None and c.plan.label == "40")
    card.button.click()
    assert "tight at the waist" in card.doubts.text()
    desk.turn_to("toile")
    desk.toile.add.click()
    type_in(desk.toile.rows["waist"].found, "1")
    desk.turn_to("plans")
    assert "tight at the waist" not in card.doubts.text()


def test_a_length_pinned_lengthens_the_chain(desk: PlanDesk) -> None:
    type_in(desk.toile.rows["skirt"].taken, "-1")
    desk.turn_to("alter")
    assert desk.alter.lengths.rows["skirt"].comes_to.text() == "Skirt 1 in longer. The toile asks for 1 in longer."


def test_the_verdict_does_not_warn_of_a_printed_figure_that_was_tried_on(
    page: FitPage, session: Session, selection: Selection
) -> None:
    made = chart("finished", "38 40", "in", bust="38 1/4, 40 1/8", waist="26, 27 1/2")
    desk = open_desk(page, session, selection, made, pieces=BODICE, who=person("in", bust="38", waist="28"))
    next(c for c in desk.plans.cards if c.plan is not None and c.plan.label == "40").button.click()
    assert "will not close at the waist" in page.answer.verdict.shown.warnings
    desk.turn_to("toile")
    desk.toile.add.click()
    type_in(desk.toile.rows["waist"].found, "1/2")
    assert "will not close at the waist" not in page.answer.verdict.shown.warnings


def test_what_was_refused_in_one_round_does_not_stand_in_another(desk: PlanDesk) -> None:
    type_in(desk.toile.rows["waist"].taken, "a bit")
    desk.toile.add.click()
    assert (desk.toile.rows["waist"].taken.text(), desk.toile.problem.text()) == ("", "")


def test_a_new_toile_is_typed_at_once_and_the_last_one_taken_away_leaves_the_focus_where_it_begins(
    desk: PlanDesk,
) -> None:
    assert desk.toile.rows["bust"].found.hasFocus()
    desk.toile.away.setFocus()
    desk.toile.away.click()
    assert desk.toile.add.hasFocus()


def test_printed_found_and_left_ease_add_up_as_they_are_shown(
    page: FitPage, session: Session, selection: Selection
) -> None:
    # 30 less 28 1/16 is 1 15/16; 2 1/2 found is 9/16 more; 2 taken leave 1/2.
    desk = open_desk(
        page,
        session,
        selection,
        chart("finished", "40", "in", bust="40", waist="30"),
        who=person("in", bust="38", waist="28 1/16"),
        part="toile",
    )
    desk.toile.add.click()
    row = desk.toile.rows["waist"]
    type_in(row.found, "2 1/2")
    type_in(row.taken, "2")
    assert (row.printed.text(), row.left.text()) == ("1 15/16 in", "1/2 in")
    assert "came up 9/16 in larger than printed" in desk.toile.said.text()


def test_a_change_that_no_piece_takes_is_not_in_the_toile(
    page: FitPage, session: Session, selection: Selection
) -> None:
    desk = open_desk(page, session, selection, part="alter")
    widened(desk, "1")
    desk.turn_to("toile")
    desk.toile.add.click()
    assert saved_make(session).rounds[0].altered == {}
