from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt

from sizekeeper.core.chart import Chart
from sizekeeper.ui.pieces_switch import CHARTS
from tests.core.written import chart, texts
from tests.ui.piecework import BACK, DRESS, FRONT, SLEEVE, in_front, pieces_of, settle, type_into, wide

if TYPE_CHECKING:
    from pytestqt.qtbot import QtBot

    from sizekeeper.ui.pattern_page import PatternPage
    from sizekeeper.ui.pieces_girths import GirthsPart
    from sizekeeper.ui.selection import Selection
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
