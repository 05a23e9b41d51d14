from __future__ import annotations

from fractions import Fraction

import pytest

from sizekeeper.core.children import ChildSizes, child_sizes, longer_by, tucks
from tests.build import body, chart

CHART = chart("body", "5 6 7 8", height="110, 116, 122, 128", bust="59, 61, 63, 65", waist="54, 55, 56, 57")


def test_a_tall_slim_child_has_one_size_for_the_girth_and_a_larger_one_for_the_length() -> None:
    found = child_sizes(body(height=127, bust=61.5, waist=53), CHART)
    assert found == ChildSizes(1, "bust", 3, "height")
    assert found.apart == 2


def test_of_two_equally_near_sizes_the_larger_is_taken() -> None:
    assert child_sizes(body(height=113, bust=64), CHART) == ChildSizes(3, "bust", 1, "height")


def test_another_measure_stands_in_where_the_first_is_missing() -> None:
    backs = chart("body", "5 6", back_waist_length="24, 26", waist="54..55, 56..57")
    assert child_sizes(body(back_waist_length=26, waist=54.5), backs) == ChildSizes(0, "waist", 1, "back_waist_length")


def test_a_row_without_figures_is_passed_over() -> None:
    bare = chart("body", "5 6", height="110, 116", bust="-, -", waist="54, 55")
    assert child_sizes(body(height=110, bust=60, waist=55), bare) == ChildSizes(1, "waist", 0, "height")


@pytest.mark.parametrize("her", [{"height": 116}, {"bust": 61}])
def test_with_only_girth_or_length_known_there_are_not_two_sizes(her: dict[str, float]) -> None:
    assert child_sizes(body(**her), CHART) is None


def test_growth_goes_into_the_length_only() -> None:
    # Length 40 in the girth's size, 44 in the height's, 3 to grow into.
    assert longer_by(Fraction(40), Fraction(44), Fraction(3)) == 7


@pytest.mark.parametrize(("growth", "depth", "count"), [(4, 1, 2), (5, 1, 3), (0, 1, 0), (3, 2, 1)])
def test_a_tuck_takes_up_twice_its_depth(growth: int, depth: int, count: int) -> None:
    assert tucks(Fraction(growth), Fraction(depth)) == count
