from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sizekeeper.core.make import Make
from sizekeeper.ui.selection import Place
from tests.made import finished, make
from tests.ui.household import settle
from tests.ui.planning import open_desk

if TYPE_CHECKING:
    from pytestqt.qtbot import QtBot

    from sizekeeper.ui.fit_page import FitPage
    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Session

DONE = finished("done", next_time="Longer straps.", bust=(5.0, "right"), waist=(1.0, "tight"))


def makes(session: Session) -> dict[str, Make]:
    """The makes that are saved, by id."""
    return {value.id: value for value in session.values() if isinstance(value, Make)}


def test_the_plans_say_what_an_earlier_make_tells_and_lead_to_it(
    qtbot: QtBot, page: FitPage, session: Session, selection: Selection
) -> None:
    desk = open_desk(page, session, selection)
    assert desk.before.isHidden()
    session.apply("Add", None, DONE)
    assert desk.before.said.text() == (
        "Made before: Cut 40 straight, 2 May 2026. Worn: waist too tight. Next time: Longer straps."
    )

    with qtbot.waitSignal(selection.page_wanted) as asked:
        desk.before.link.click()

    assert asked.args == [Place("makes", "done")]


def test_the_plans_say_what_was_made_for_somebody_else_of_the_house(
    page: FitPage, session: Session, selection: Selection
) -> None:
    desk = open_desk(page, session, selection)
    bea = replace(session.people()[0], id="bea", name="Bea")

    session.apply_all("Add", [(None, bea), (None, replace(DONE, person="bea"))])

    assert desk.before.said.text().startswith("Made before for Bea: Cut 40 straight")


def test_the_line_stands_on_the_plans_and_on_no_other_part(
    page: FitPage, session: Session, selection: Selection
) -> None:
    desk = open_desk(page, session, selection)
    session.apply("Add", None, DONE)

    desk.turn_to("toile")

    assert desk.before.isHidden()


def test_after_a_finished_make_the_next_decision_is_a_make_of_its_own(
    page: FitPage, session: Session, selection: Selection
) -> None:
    desk = open_desk(page, session, selection)
    session.apply("Add", None, DONE)
    assert desk.plans.decision.text() == "Not decided yet"

    desk.plans.cards[0].button.click()

    assert makes(session).pop("done") == DONE
    assert [one.progress for one in makes(session).values()] == ["finished", "planned"]


def test_a_finished_make_that_is_opened_can_be_looked_at_and_the_next_one_planned(
    page: FitPage, session: Session, selection: Selection
) -> None:
    desk = open_desk(page, session, selection)
    session.apply("Add", None, DONE)

    page.reveal(Place("fit", "done", "pattern/plan:plans/"))
    assert desk.plans.decision.text() == "Decided: Cut 40 straight"
    assert not desk.plans.back.isEnabled()
    assert desk.before.link.text() == "Plan the next one"
    desk.before.link.click()

    assert desk.plans.decision.text() == "Not decided yet"
    assert desk.plans.cards[0].button.isEnabled()


def test_an_older_make_that_is_still_sewn_is_the_one_edited_when_it_was_opened(
    page: FitPage, session: Session, selection: Selection
) -> None:
    desk = open_desk(page, session, selection)
    session.apply_all("Add", [(None, make("older", size="38")), (None, make("newer", size="42"))])

    page.reveal(Place("fit", "older", "pattern/plan:plans/"))
    desk.plans.back.click()

    assert makes(session)["older"].decision is None
    assert makes(session)["newer"].decision is not None


def test_another_person_lets_go_of_the_make_that_was_taken_up(
    page: FitPage, session: Session, selection: Selection
) -> None:
    open_desk(page, session, selection)
    session.apply("Add", None, DONE)
    page.reveal(Place("fit", "done", "pattern/plan:plans/"))
    assert selection.make == "done"

    selection.choose_person("")

    assert selection.make == ""


def test_the_ease_that_was_worn_as_wanted_is_said_and_becomes_hers_by_a_press_as_one_step(
    page: FitPage, session: Session, selection: Selection
) -> None:
    settle(session, selection)
    session.apply("Add", None, finished("done", bust=(2.54, "right")))
    form = page.panel.likes.form
    page.open_part("likes")
    page.panel.likes.pick("bust")
    assert form.worn.text() == "Made before: as wanted with 1 in of ease."
    assert form.ask_worn.text() == "Ask for this ease, 1 in"

    form.ask_worn.click()

    own = session.people()[0].preference("dress", knit=False).region("bust").own
    assert own is not None
    assert (own.cm, own.text) == (2.54, "1 in")
    assert form.ask_worn.isHidden()
    session.undo_stack.undo()
    assert session.people()[0].preferences == ()


def test_nothing_is_offered_where_nothing_was_worn_as_wanted(
    page: FitPage, session: Session, selection: Selection
) -> None:
    settle(session, selection)
    session.apply("Add", None, finished("done", bust=(2.54, "tight")))

    page.open_part("likes")
    page.panel.likes.pick("bust")

    assert page.panel.likes.form.worn.text() == "Made before: too tight with 1 in of ease."
    assert page.panel.likes.form.ask_worn.isHidden()
