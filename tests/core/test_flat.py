from __future__ import annotations

from fractions import Fraction

import pytest

from sizekeeper.core.flat import girth, measured_row, net_width
from sizekeeper.core.length import Length
from sizekeeper.core.piece import Across
from sizekeeper.errors import PlanError
from tests.core.paper import across, inches, long, piece
from tests.core.written import chart

ALLOWANCE = Fraction(3, 2)
FRONT = piece("Front", "bust waist", "front", on_fold=True, across=across("waist", "20 cm", 1))
BACK = piece(
    "Back", "bust waist", "back", cut=2, across=across("waist", "24 cm", 2, darts=long("2.5 cm"), overlap=long("1 cm"))
)
SKIRT = piece("Skirt", "waist hip", "skirt_front", cut=2, across=across("waist", "70 cm", 2, gathered=True))


def test_the_net_width_is_less_allowances_darts_pleats_and_overlap() -> None:
    # 30 - 2 x 1.5 - 2 - 4 - 3 = 18
    found = Across("waist", long("30 cm"), 2, long("2 cm"), long("40 mm"), long("3 cm"))
    assert net_width(found, ALLOWANCE) == 18


def test_a_width_measured_without_allowances_needs_none_to_be_known() -> None:
    assert net_width(Across("waist", long("12 in")), None) == inches("12")


def test_allowances_that_nobody_knows_are_asked_for() -> None:
    with pytest.raises(PlanError, match="“Front” was measured with seam allowances"):
        girth([FRONT], "waist", None)


def test_more_than_the_width_cannot_be_taken_off() -> None:
    with pytest.raises(PlanError, match="“Front” has no width left at the high hip"):
        net_width(Across("high_hip", long("3 cm"), 2), ALLOWANCE, "Front")


def test_a_girth_is_the_sum_of_net_widths_times_how_often_each_goes_round() -> None:
    # Front 20 - 1.5 = 18.5, on the fold; back 24 - 3 - 2.5 - 1 = 17.5, cut twice: 37 + 35.
    found = girth([SKIRT, FRONT, BACK], "waist", ALLOWANCE)
    assert found.cm == 72
    assert found.of == (("Front", 2), ("Back", 2))


def test_a_pieces_own_allowance_goes_before_the_patterns() -> None:
    own = piece("Band", "waist", "waistband", seam_allowance=long("1 cm"), across=across("waist", "74 cm", 2))
    assert girth([own], "waist", ALLOWANCE).cm == 72


def test_a_piece_of_the_part_that_was_not_measured_is_named() -> None:
    with pytest.raises(PlanError, match="“Side” goes round the waist; measure"):
        girth([FRONT, piece("Side", "waist", "side", cut=2)], "waist", ALLOWANCE)


def test_a_gathered_edge_never_tells_the_girth() -> None:
    with pytest.raises(PlanError, match="where it lies flat"):
        girth([SKIRT], "waist", ALLOWANCE)


def test_a_level_that_nothing_goes_round_is_named() -> None:
    with pytest.raises(PlanError, match="No piece goes round the hip"):
        girth([FRONT], "hip", ALLOWANCE)


def test_a_measured_girth_joins_the_finished_chart_marked_as_measured() -> None:
    finished = chart("38, 40", "finished", "in", bust="38, 40")
    row = measured_row(finished, girth([FRONT, BACK], "waist", ALLOWANCE), 1, "28 3/8")
    assert (row.measure, row.measured, [c.text for c in row.cells]) == ("waist", True, ["", "28 3/8"])
    assert row.cells[1].low == Length(Fraction(72) / Fraction(254, 100), "in", "28 3/8")


def test_a_measured_sleeve_is_the_upper_arm_and_figures_already_there_stay() -> None:
    sleeve = piece("Sleeve", "sleeve", "sleeve", cut=2, across=across("sleeve", "34 cm"))
    row = measured_row(chart("S, M", "finished", upper_arm="33, "), girth([sleeve], "sleeve", None), 1, "34")
    assert (row.measure, [c.text for c in row.cells]) == ("upper_arm", ["33", "34"])
