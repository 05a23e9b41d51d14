from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from sizekeeper.core.align import lay_out
from sizekeeper.core.length_plan import Cut, change_of
from sizekeeper.core.make import LengthChoice
from sizekeeper.core.piece import Pieces, PrintedSquare
from tests import build
from tests.core.paper import along, inches, long, piece, pieces

BACK = piece("Back", "neck bust waist", "back", cut=2, line=True, along=along("back_waist", "13 1/8 in"))
FRONT = piece("Front", "neck bust waist", "front", on_fold=True, line=True)
SHEET = pieces(BACK, FRONT)
BARE = pieces(replace(BACK, along=()), FRONT)
BODY_CHART = build.chart("body", "38 40", "in", back_waist_length="16, 16 1/2", bust="36, 38")
FINISHED = build.chart("finished", "38 40", "in", skirt_length="24, 25", sleeve_length="22, 22", bust="40, 42")
HER = build.body("in", back_waist_length=17, sleeve_length=23)
CUT = Cut(HER, lay_out(BODY_CHART, FINISHED, by_body=False), 0.5, SHEET)


def found(choice: LengthChoice, sheet: Pieces = SHEET, **changes: object) -> tuple[str, Fraction] | None:
    change = change_of(choice, replace(CUT, pieces=sheet, **changes))  # type: ignore[arg-type]  # as given
    return None if change is None else (change.basis, change.change)


def test_the_pieces_are_compared_with_the_body_and_the_ease_asked_for() -> None:
    # 17 + 1/2 - 13 1/8 = 4 3/8
    assert found(LengthChoice("back_waist", ease=long("1/2 in"))) == ("pieces", inches("4 3/8"))


def test_without_measured_pieces_the_body_chart_tells_at_the_place_that_is_cut() -> None:
    # Halfway between 16 and 16 1/2: 17 - 16 1/4 = 3/4.
    assert found(LengthChoice("back_waist"), BARE) == ("body_chart", inches("3/4"))


def test_a_finished_length_is_compared_with_body_and_ease() -> None:
    assert found(LengthChoice("sleeve", ease=long("1 in"))) == ("finished_chart", inches("2"))


def test_a_skirt_is_as_long_as_she_wants_it() -> None:
    # Halfway 24 1/2; wanted 26.
    assert found(LengthChoice("skirt", wanted=long("26 in"))) == ("finished_chart", inches("1 1/2"))
    assert found(LengthChoice("skirt")) is None


def test_a_length_she_wants_is_not_compared_with_a_body_chart() -> None:
    assert found(LengthChoice("back_waist", wanted=long("18 in")), BARE) is None


def test_an_amount_of_her_own_goes_before_all() -> None:
    assert found(LengthChoice("back_waist", amount=long("-2 cm"))) == ("own", Fraction(-2))


def test_what_a_child_is_to_grow_into_is_added() -> None:
    grown = found(LengthChoice("back_waist"), BARE, growth=Fraction(3))
    assert grown == ("body_chart", inches("3/4") + 3)


def test_the_print_scale_is_taken_into_account_for_a_length_listed_in_the_pattern() -> None:
    listed = replace(BACK, along=along("back_waist", "40 cm", printed=True))
    sheet = replace(pieces(listed), square=PrintedSquare(long("10.1 cm"), long("10 cm")))
    # 17 in = 43.18; 40 x 1.01 = 40.4.
    assert found(LengthChoice("back_waist"), sheet) == ("pieces", Fraction(278, 100))


def test_she_can_say_which_pieces_make_up_the_chain() -> None:
    yoke = piece("Yoke", "neck", "yoke", along=along("back_waist", "4 in"))
    assert found(LengthChoice("back_waist", chain_pieces=("Back",)), pieces(BACK, yoke)) == ("pieces", inches("3 7/8"))


def test_a_chart_that_ends_before_the_place_tells_nothing() -> None:
    short = build.chart("body", "38 40", "in", back_waist_length="16, -", bust="36, 38")
    assert found(LengthChoice("back_waist"), BARE, run=lay_out(short, FINISHED, by_body=False), position=1.0) is None


def test_what_a_child_is_to_grow_into_is_a_change_even_where_nothing_else_is_known() -> None:
    assert found(LengthChoice("skirt"), growth=Fraction(5)) == ("own", Fraction(5))
