from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from sizekeeper.core.piece import PrintedSquare
from sizekeeper.core.print_scale import PrintScale, print_scale, scaled_chart
from sizekeeper.errors import PlanError
from tests.core.paper import long
from tests.core.written import chart


def scale(measured: str, nominal: str) -> PrintScale:
    return print_scale(PrintedSquare(long(measured), long(nominal)))


def test_the_scale_is_the_square_as_measured_over_the_square_as_it_should_be() -> None:
    assert scale("9.8 cm", "10 cm").factor == Fraction(98, 100)
    assert scale("4 in", "10 cm").factor == Fraction(1016, 1000)


@pytest.mark.parametrize(("measured", "off"), [("9.89", True), ("9.9", False), ("10.1", False), ("10.11", True)])
def test_more_than_one_in_a_hundred_is_warned_of(measured: str, off: bool) -> None:
    assert scale(f"{measured} cm", "10 cm").off is off


def test_without_a_square_the_print_is_taken_to_be_true() -> None:
    assert print_scale(None) == PrintScale(Fraction(1))


@pytest.mark.parametrize(("measured", "nominal"), [("0 cm", "10 cm"), ("10 cm", "0 cm")])
def test_a_square_without_a_side_is_refused(measured: str, nominal: str) -> None:
    with pytest.raises(PlanError, match="test square"):
        scale(measured, nominal)


def test_printed_figures_are_multiplied_and_measured_rows_are_not() -> None:
    finished = chart("38, 40", "finished", bust="100, -", waist="80, 84")
    finished = replace(finished, rows=(finished.rows[0], replace(finished.rows[1], measured=True)))
    found = scaled_chart(finished, PrintScale(Fraction(102, 100)))
    assert [row.lows() for row in found.rows] == [[102, None], [80, 84]]
    assert found.rows[0].cells[0].text == "100"
    assert PrintScale(Fraction(102, 100)).applied(Fraction(50)) == 51


def test_a_true_print_leaves_the_chart_alone() -> None:
    finished = chart("38, 40", "finished", bust="100, 104")
    assert scaled_chart(finished, PrintScale()) is finished
