from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

import pytest

from sizekeeper.core.notation import parse_length
from sizekeeper.core.piece import PrintedSquare
from sizekeeper.ui.pieces_square import scale_words
from tests.ui.piecework import DRESS, FRONT, in_front, pieces_of, saved, settle, type_into

if TYPE_CHECKING:
    from pytestqt.qtbot import QtBot

    from sizekeeper.ui.pattern_page import PatternPage
    from sizekeeper.ui.pieces_square import SquarePart
    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Session
    from sizekeeper.ui.settings import Settings


@pytest.fixture
def page(qtbot: QtBot, session: Session, selection: Selection, settings: Settings) -> PatternPage:
    page = in_front(qtbot, session, selection, settings)
    settle(session, selection, DRESS, pieces_of(FRONT))
    return page


@pytest.fixture
def square(page: PatternPage) -> SquarePart:
    return page.pieces.square


def test_the_measured_side_is_compared_with_the_usual_one(square: SquarePart, session: Session) -> None:
    type_into(square.measured, "9.8")
    assert saved(session).square == PrintedSquare(parse_length("9.8", "cm"), parse_length("10 cm"))
    assert square.says.text().startswith("It came out 2 % smaller: printed figures are multiplied by 0.98.")
    assert square.says.voice == "warning"
    assert session.undo_stack.undoText() == "Change test square"


def test_a_side_in_inches_is_compared_with_the_usual_inches(square: SquarePart, session: Session) -> None:
    type_into(square.measured, "4 in")
    assert square.nominal.text() == "4 in"
    assert square.says.text() == "True to size: printed figures hold as they are."


def test_another_size_of_square_is_typed_before_or_after(square: SquarePart, session: Session) -> None:
    type_into(square.nominal, "5")
    type_into(square.measured, "5.04")
    assert square.says.text().startswith("It came out 0.8 % larger: printed figures are multiplied by 1.008.")
    assert square.says.voice == "muted"
    type_into(square.nominal, "5.04")
    assert square.says.text().startswith("True to size")


def test_an_emptied_side_forgets_the_square(square: SquarePart, session: Session) -> None:
    type_into(square.measured, "9.8")
    square.measured.clear()
    square.measured.finish()
    assert saved(session).square is None


def test_a_side_that_is_no_length_is_explained(square: SquarePart, session: Session) -> None:
    type_into(square.measured, "0")
    assert square.says.text() == "Test square as measured: “0” is not above zero."
    assert saved(session).square is None


@pytest.mark.parametrize(("factor", "off"), [(Fraction(101, 100), False), (Fraction(1011, 1000), True)])
def test_more_than_one_percent_asks_to_print_again(factor: Fraction, off: bool) -> None:
    assert ("print it again" in scale_words(factor, off=off)) is off
