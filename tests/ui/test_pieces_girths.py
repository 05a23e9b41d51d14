from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt

from sizekeeper.core.chart import Chart
from sizekeeper.core.piece import Piece
from sizekeeper.ui.pieces_switch import CHARTS
from tests.core.written import chart, texts
from tests.ui.piecework import BACK, DRESS, FRONT, SLEEVE, in_front, pieces_of, saved, settle, type_into, wide

if TYPE_CHECKING:
    from pytestqt.qtbot import QtBot

    from sizekeeper.ui.pattern_page import PatternPage
    from sizekeeper.ui.pieces_girths import GirthsPart
    from sizekeeper.ui.selection import Place, Selection
    from sizekeeper.ui.session import Session
    from sizekeeper.ui.settings import Settings

BODY = replace(chart("38, 40, 42", bust="88, 92, 96"), id="c", pattern="p")
FINISHED = replace(chart("38, 40, 42", "finished", waist="75, 79, 83"), id="d", pattern="p")
MEASURED = pieces_of(
    replace(FRONT, across=(wide("bust", "25", 1), wide("waist", "21", 1))),
    replace(BACK, across=(wide("bust", "26", 2),)),
)
"""At the bust 2 x (25 - 1.5) + 2 x (26 - 3) = 93 cm all round; at the waist the back is not measured yet."""


@pytest.fixture
def page(qtbot: QtBot, session: Session, selection: Selection, settings: Settings) -> PatternPage:
    return in_front(qtbot, session, selection, settings)


@pytest.fixture
def girths(page: PatternPage) -> GirthsPart:
    return page.pieces.girths


def said(girths: GirthsPart) -> dict[str, str]:
    return {line.level: line.says for line in girths.lines}


def offers(girths: GirthsPart) -> dict[str, str]:
    return {line.level: line.offer for line in girths.lines}


def finished(session: Session) -> Chart:
    (found,) = [v for v in session.values() if isinstance(v, Chart) and v.kind == "finished"]
    return found


def add(girths: GirthsPart, level: str) -> None:
    next(link for at, _, _, link in girths.rows if at == level).click()


def test_net_widths_are_summed_up_round_the_body(girths: GirthsPart, session: Session, selection: Selection) -> None:
    settle(session, selection, DRESS, BODY, MEASURED)
    assert said(girths)["bust"] == "93 cm   (Front × 2, Back × 2)"


def test_what_lacks_is_said_in_its_place(girths: GirthsPart, session: Session, selection: Selection) -> None:
    settle(session, selection, DRESS, BODY, MEASURED)
    assert said(girths)["waist"] == "“Back” goes round the waist; measure its width there first."
    assert offers(girths)["waist"] == ""


def test_a_girth_follows_what_is_being_typed(page: PatternPage, session: Session, selection: Selection) -> None:
    settle(session, selection, DRESS, BODY, pieces_of(replace(SLEEVE, across=())))
    assert page.pieces.girths.lines == ()
    field = page.pieces.form.sheet.row("sleeve", along=False).figure
    type_into(field, "36", *[])
    assert said(page.pieces.girths) == {"sleeve": "33 cm   (Sleeve × 1)"}


def test_a_girth_joins_the_finished_chart_marked_as_measured(
    girths: GirthsPart, session: Session, selection: Selection
) -> None:
    settle(session, selection, DRESS, BODY, FINISHED, MEASURED)
    assert girths.chosen_size == "40"
    add(girths, "bust")
    row = finished(session).row("bust")
    assert row is not None
    assert (row.measured, texts(finished(session))["bust"], row.lows()[1]) == (True, ", 93, ", 93)
    assert said(girths)["bust"].endswith("It stands in the finished chart.")
    assert session.undo_stack.undoText() == "Add bust to the finished chart"
    session.undo_stack.undo()
    assert finished(session) == FINISHED


def test_a_finished_chart_without_sizes_takes_those_of_the_body_chart(
    girths: GirthsPart, session: Session, selection: Selection
) -> None:
    settle(session, selection, DRESS, BODY, MEASURED)
    girths.size_box.setCurrentText("42")
    girths.size_box.activated.emit(2)
    add(girths, "bust")
    assert [size.label for size in finished(session).sizes] == ["38", "40", "42"]
    assert texts(finished(session))["bust"] == ", , 93"


def test_a_printed_measure_is_compared_and_never_written_over(
    girths: GirthsPart, session: Session, selection: Selection
) -> None:
    printed = replace(chart("38, 40, 42", "finished", bust="92, 96, 100"), id="d", pattern="p")
    settle(session, selection, DRESS, BODY, printed, MEASURED)
    assert said(girths)["bust"] == "93 cm   (Front × 2, Back × 2). The chart prints 96 cm for 40."
    assert offers(girths)["bust"] == ""


def test_a_measured_girth_is_brought_up_to_date(page: PatternPage, session: Session, selection: Selection) -> None:
    settle(session, selection, DRESS, BODY, FINISHED, MEASURED)
    girths = page.pieces.girths
    add(girths, "bust")
    type_into(page.pieces.form.sheet.row("bust", along=False).figure, "26")
    assert offers(girths)["bust"] == "Bring 40 up to date"
    add(girths, "bust")
    assert texts(finished(session))["bust"] == ", 95, "


def test_without_any_size_nothing_is_offered(girths: GirthsPart, session: Session, selection: Selection) -> None:
    settle(session, selection, DRESS, MEASURED)
    assert said(girths)["bust"].startswith("93 cm")
    assert offers(girths)["bust"] == ""
    assert not girths.size_box.isVisible()


def test_a_measured_row_is_marked_in_the_chart(page: PatternPage, session: Session, selection: Selection) -> None:
    settle(session, selection, DRESS, BODY, FINISHED, MEASURED)
    add(page.pieces.girths, "bust")
    page.switch.setCurrentIndex(CHARTS)
    model = page.finished.model
    assert model.headerData(2, Qt.Orientation.Vertical) == "Bust, measured"
    tip = model.headerData(2, Qt.Orientation.Vertical, Qt.ItemDataRole.ToolTipRole)
    assert tip == "Bust: measured on the pieces, not printed."


VIEWED = replace(DRESS, views=("A", "B"))
SKIRTS = pieces_of(
    Piece("a", "Skirt A", 2, role="skirt_front", levels=("hip",), across=(wide("hip", "80", 2),), view="A"),
    Piece("k", "Skirt B", 2, role="skirt_front", levels=("hip",), across=(wide("hip", "50", 2),), view="B"),
)
"""Net of two allowances of 1.5 cm and cut twice: 154 cm in view A, 94 cm in view B."""


def pick_view(girths: GirthsPart, view: str) -> None:
    at = girths.view_box.findData(view)
    girths.view_box.setCurrentIndex(at)
    girths.view_box.activated.emit(at)


def test_only_the_pieces_of_a_view_are_counted(page: PatternPage, session: Session, selection: Selection) -> None:
    settle(session, selection, VIEWED, BODY, FINISHED, SKIRTS)
    girths = page.pieces.girths
    assert girths.lines == ()  # both views have pieces of their own
    assert girths.view_box.isVisible()
    pick_view(girths, "B")
    assert page.view == "B"
    assert said(girths)["hip"] == "94 cm   (Skirt B × 2)"
    assert girths.says.text().endswith("Counted: the pieces of all views and those of view B.")
    pick_view(girths, "A")
    assert said(girths)["hip"] == "154 cm   (Skirt A × 2)"


def test_a_girth_of_a_view_joins_the_finished_chart_of_that_view(
    page: PatternPage, session: Session, selection: Selection
) -> None:
    own = replace(FINISHED, id="own", view="B")
    settle(session, selection, VIEWED, BODY, FINISHED, own, SKIRTS)
    girths = page.pieces.girths
    assert said(girths)["hip"] == "154 cm   (Skirt A × 2)"  # of the views, only A shares the chart for all
    pick_view(girths, "B")
    add(girths, "hip")
    after = session.committed("own")
    assert isinstance(after, Chart)
    assert texts(after)["hip"] == ", 94, "
    assert session.committed("d") == FINISHED


def test_where_no_piece_has_a_view_none_is_asked_for(
    girths: GirthsPart, session: Session, selection: Selection
) -> None:
    settle(session, selection, VIEWED, BODY, MEASURED)
    assert not girths.view_box.isVisible()
    assert said(girths)["bust"] == "93 cm   (Front × 2, Back × 2)"


def test_girths_are_in_the_size_the_pieces_were_measured_in(
    girths: GirthsPart, session: Session, selection: Selection
) -> None:
    settle(session, selection, DRESS, BODY, FINISHED, replace(MEASURED, measured_in="38"))
    assert (girths.chosen_size, girths.size_box.currentText()) == ("38", "38")
    add(girths, "bust")
    assert texts(finished(session))["bust"] == "93, , "


def test_the_size_the_pieces_were_measured_in_is_kept_and_undone(
    page: PatternPage, session: Session, selection: Selection
) -> None:
    settle(session, selection, DRESS, BODY, FINISHED, MEASURED)
    revisited: list[Place] = []
    session.revisited.connect(lambda place, _text: revisited.append(place))
    girths = page.pieces.girths
    girths.size_box.setCurrentText("42")
    girths.size_box.activated.emit(2)
    assert (saved(session).measured_in, girths.chosen_size) == ("42", "42")
    assert session.undo_stack.undoText() == "Pieces measured in size 42"
    session.undo_stack.undo()
    assert (saved(session), girths.chosen_size) == (MEASURED, "40")
    page.reveal(revisited[0])
    assert girths.size_box.hasFocus()


def test_a_size_that_is_no_longer_listed_gives_way_to_the_middle_one(
    girths: GirthsPart, session: Session, selection: Selection
) -> None:
    settle(session, selection, DRESS, BODY, FINISHED, replace(MEASURED, measured_in="50"))
    assert girths.chosen_size == "40"
