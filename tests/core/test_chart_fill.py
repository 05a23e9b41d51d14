from __future__ import annotations

from fractions import Fraction

import pytest

from sizekeeper.core.chart_fill import fill_start, filled_right, step_before
from sizekeeper.core.length import Length
from sizekeeper.errors import ChartError
from tests.core.written import chart, texts


@pytest.mark.parametrize(
    ("unit", "row", "step", "filled"),
    [
        ("cm", "88, , ,", "4", "88, 92, 96, 100"),
        ("cm", "88, , ,", "4.5", "88, 92.5, 97, 101.5"),
        ("in", "34 1/2, , ,", "3/2", "34 1/2, 36, 37 1/2, 39"),
        ("in", "34.5, , ,", "3/2", "34.5, 36, 37.5, 39"),
        ("cm", "86-90, , ,", "4", "86-90, 90-94, 94-98, 98-102"),
        ("cm", "34 in, , ,", "2.54", "34 in, 35 in, 36 in, 37 in"),
        ("cm", "88, , ,", "-2", "88, 86, 84, 82"),
    ],
)
def test_a_row_goes_on_by_a_constant_step_written_like_its_first_figure(
    unit: str, row: str, step: str, filled: str
) -> None:
    before = chart("1, 2, 3, 4", unit=unit, bust=row)  # type: ignore[arg-type]
    after = filled_right(before, 0, 0, Length(Fraction(step), "cm" if unit == "cm" else "in"))
    assert texts(after) == {"bust": filled}


def test_a_fill_begins_behind_its_figure_and_may_end_before_the_last_size() -> None:
    after = filled_right(chart("1, 2, 3, 4", bust="80, 84, x, 99"), 0, 1, Length(Fraction(4), "cm"), last=2)
    assert texts(after) == {"bust": "80, 84, 88, 99"}


def test_the_step_is_taken_from_two_neighbouring_figures() -> None:
    step = step_before(chart("1, 2", unit="in", bust="34 1/2, 36"), 0, 1)
    assert step is not None
    assert (step.value, step.unit) == (Fraction(3, 2), "in")


@pytest.mark.parametrize(("row", "column"), [("34, 36", 0), (", 36", 1), ("34, x", 1)])
def test_without_two_figures_there_is_no_step(row: str, column: int) -> None:
    assert step_before(chart("1, 2", bust=row), 0, column) is None


def test_a_fill_looks_leftwards_for_its_first_figure() -> None:
    assert fill_start(chart("1, 2, 3", bust="80, 84,"), 0, 2) == 1
    assert fill_start(chart("1, 2, 3", bust=", , 84"), 0, 1) is None


def test_a_fill_without_a_figure_is_refused() -> None:
    with pytest.raises(ChartError, match="no figure to start from"):
        filled_right(chart("1, 2", bust=", 84"), 0, 0, Length(Fraction(4), "cm"))


def test_a_fill_below_zero_is_refused() -> None:
    with pytest.raises(ChartError, match="below zero"):
        filled_right(chart("1, 2, 3", bust="8, ,"), 0, 0, Length(Fraction(-4), "cm"))
