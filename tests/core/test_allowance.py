from __future__ import annotations

from fractions import Fraction

import pytest

from sizekeeper.core.allowance import allowances
from sizekeeper.core.pattern import Pattern
from tests.core.paper import inches, long

PATTERN = Pattern("p", "Dress", seam_allowance=long("1.5 cm"))
SILENT = Pattern("p", "Dress")


def test_a_wider_allowance_of_hers_is_drawn_outside_the_printed_line() -> None:
    assert allowances(PATTERN, long("2.5 cm")).to_draw == 1
    assert allowances(PATTERN, long("1 cm")).to_draw == Fraction(-1, 2)
    assert allowances(SILENT, long("1 cm")).to_draw == 0
    assert allowances(PATTERN).to_draw == 0


def test_a_seam_can_be_let_out_by_both_its_edges_less_a_quarter_inch_each() -> None:
    found = allowances(Pattern("p", "Dress", seam_allowance=long("5/8 in")))
    assert (found.per_edge(), found.per_seam(), found.at("waist")) == (inches("3/8"), inches("3/4"), inches("1 1/2"))


@pytest.mark.parametrize(("measure", "edges"), [("upper_arm", 2), ("thigh", 4), ("across_back", 0), ("head", 0)])
def test_a_region_can_be_let_out_at_as_many_edges_as_it_has_seams(measure: str, edges: int) -> None:
    assert allowances(PATTERN).at(measure, long("0.5 cm")) == edges


def test_an_allowance_of_a_quarter_inch_or_less_gives_nothing() -> None:
    assert allowances(PATTERN, long("1/8 in")).at("waist") == 0


def test_an_allowance_nobody_knows_tells_nothing() -> None:
    found = allowances(SILENT)
    assert (found.per_edge(), found.per_seam(), found.at("waist")) == (None, None, None)
