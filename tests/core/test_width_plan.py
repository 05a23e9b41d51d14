from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

import pytest

from sizekeeper.core.make import WidthChoice
from sizekeeper.core.width_plan import Gathers, around, plan_width
from sizekeeper.core.widths import SIXTEENTHS
from sizekeeper.errors import PlanError
from tests.core.paper import across, long, piece, pieces

if TYPE_CHECKING:
    from sizekeeper.core.piece import Piece

FRONT = piece("Front", "bust waist", "front", on_fold=True, across=across("waist", "21.5 cm", 1))
BACK = piece("Back", "bust waist", "back", cut=2, across=across("waist", "23 cm", 2))
FULL = piece("Skirt", "waist hem", "skirt_front", cut=2, across=across("waist", "63 cm", 2, gathered=True))
SHEET = pieces(FULL, FRONT, BACK)
SEAM = Fraction(3, 2)


@pytest.mark.parametrize("text", ["2 in", "5.08 cm", "50.8 mm", "0.0508 m"])
def test_the_unit_a_change_is_typed_in_does_not_matter(text: str) -> None:
    plan = plan_width(WidthChoice("waist", long(text)), SHEET, SEAM, SIXTEENTHS)
    half = long("1/2 in").exact_cm
    assert [(s.piece, s.per_edge) for s in plan.shares] == [("Front", half), ("Back", half)]


def test_the_usual_pieces_are_those_of_the_first_part_that_is_not_gathered() -> None:
    assert around(SHEET.pieces, "waist") == (FRONT, BACK)
    assert around(SHEET.pieces, "hem") == (FULL,)
    assert around(SHEET.pieces, "thigh") == ()


def test_only_the_ticked_pieces_take_the_change() -> None:
    plan = plan_width(WidthChoice("waist", long("2 cm"), pieces=("Back",)), SHEET, SEAM)
    assert [(s.piece, s.per_edge) for s in plan.shares] == [("Back", Fraction(1))]


def test_the_gathered_skirt_takes_up_what_the_bodice_gains() -> None:
    # Front 20 and back 20 net, each twice: 80. Skirt 60 net twice: 120, one and a half times. With 20 more: 120 on 100.
    plan = plan_width(WidthChoice("waist", long("20 cm")), SHEET, SEAM)
    assert plan.gathers == Gathers(Fraction(3, 2), Fraction(6, 5))
    assert [(f.piece, f.reason) for f in plan.follows] == [("Skirt", "absorbs")]


@pytest.mark.parametrize("order", [(FULL, FRONT, BACK), (FRONT, BACK, FULL)], ids=["skirt first", "skirt last"])
def test_the_gathers_become_fuller_by_what_the_gathered_skirt_itself_gains(order: tuple[Piece, ...]) -> None:
    # Seam 80 and skirt 120 round, as above. The skirt alone gains 20: 140 on 80 is 1 3/4; the bodice stays.
    plan = plan_width(WidthChoice("waist", long("20 cm"), pieces=("Skirt",)), pieces(*order), SEAM)
    assert plan.gathers == Gathers(Fraction(3, 2), Fraction(7, 4))
    assert plan.follows == ()


@pytest.mark.parametrize("order", [(FULL, FRONT, BACK), (FRONT, BACK, FULL)], ids=["skirt first", "skirt last"])
def test_the_gathers_between_two_ticked_parts_change_by_the_share_of_each(order: tuple[Piece, ...]) -> None:
    # 24 over three pieces that go round twice: 8 each. The seam gains 16, the skirt 8: 128 on 96 is 1 1/3.
    ticked = ("Front", "Back", "Skirt")
    plan = plan_width(WidthChoice("waist", long("24 cm"), pieces=ticked), pieces(*order), SEAM)
    assert plan.gathers == Gathers(Fraction(3, 2), Fraction(4, 3))


def test_of_a_bodice_with_one_half_ticked_the_whole_seam_is_gathered_onto() -> None:
    # Only the back gains 20: the seam is still 80 and becomes 100.
    plan = plan_width(WidthChoice("waist", long("20 cm"), pieces=("Back",)), SHEET, SEAM)
    assert plan.gathers == Gathers(Fraction(3, 2), Fraction(6, 5))


def test_a_skirt_that_is_gathered_in_front_only_has_no_ratio_to_the_whole_bodice() -> None:
    plain = piece("Skirt back", "waist hem", "skirt_back", cut=2, across=across("waist", "23 cm", 2))
    sheet = pieces(FRONT, BACK, FULL, plain)
    assert plan_width(WidthChoice("waist", long("2 cm"), pieces=("Skirt",)), sheet, SEAM).gathers is None
    assert plan_width(WidthChoice("waist", long("2 cm")), sheet, SEAM).gathers is None


def test_a_gathered_skirt_without_a_flat_part_beside_it_joins_no_known_seam() -> None:
    plan = plan_width(WidthChoice("waist", long("2 cm"), pieces=("Skirt",)), pieces(FULL), SEAM)
    assert plan.gathers is None


def test_nothing_is_said_of_gathers_where_a_width_is_missing() -> None:
    bare = pieces(FULL, FRONT, piece("Back", "waist", "back", cut=2))
    assert plan_width(WidthChoice("waist", long("2 cm")), bare, SEAM).gathers is None


def test_by_width_asks_for_a_width_that_is_missing() -> None:
    bare = pieces(piece("Back", "waist", "back", cut=2))
    with pytest.raises(PlanError, match="Measure the width of “Back” at the waist"):
        plan_width(WidthChoice("waist", long("2 cm"), sharing="by_width"), bare, SEAM)


def test_by_width_shares_in_proportion_to_the_net_widths() -> None:
    # Net 20 and 20: alike.
    plan = plan_width(WidthChoice("waist", long("2 cm"), sharing="by_width"), SHEET, SEAM)
    assert [s.per_edge for s in plan.shares] == [Fraction(1, 2), Fraction(1, 2)]


def test_a_pattern_without_pieces_there_says_to_tick_one() -> None:
    with pytest.raises(PlanError, match="Tick at least one piece"):
        plan_width(WidthChoice("hip", long("2 cm")), SHEET, SEAM)
