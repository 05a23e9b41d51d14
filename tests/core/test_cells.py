from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sizekeeper.core.cells import cell_problem, parse_cell, write_figure
from sizekeeper.core.chart import Cell


def ends(text: str, unit: str = "cm") -> tuple[float, float]:
    """Both ends of a cell's figure in cm."""
    cell = parse_cell(text, unit)  # type: ignore[arg-type]
    assert cell.low is not None
    assert cell.high is not None
    return cell.low.cm, cell.high.cm


@pytest.mark.parametrize("text", ["86-90", "86 - 90", "86–90", "86 to 90", "86 bis 90", "86 à 90", "86 cm–90 cm"])
def test_a_range_has_a_lower_and_a_higher_end(text: str) -> None:
    assert ends(text) == (86, 90)


@pytest.mark.parametrize("text", ["37-3/4", "37 3/4", "37¾", '37.75"', "37 - 3/4"])
def test_a_mixed_number_is_one_figure_and_no_range(text: str) -> None:
    assert ends(text, "in") == (37.75 * 2.54, 37.75 * 2.54)


def test_a_range_may_have_mixed_numbers_at_its_ends() -> None:
    assert ends("34-1/2-36 1/4", "in") == (34.5 * 2.54, 36.25 * 2.54)


def test_a_unit_behind_a_range_counts_for_both_ends() -> None:
    assert ends("34-36 in") == (34 * 2.54, 36 * 2.54)


def test_a_bare_figure_has_the_charts_unit() -> None:
    assert ends("860", "mm") == (86, 86)


def test_a_written_unit_wins_over_the_charts() -> None:
    assert ends("10 in", "cm") == (25.4, 25.4)


@pytest.mark.parametrize("text", ["", "  ", "\n"])
def test_a_blank_cell_is_empty_and_no_problem(text: str) -> None:
    assert parse_cell(text, "cm") == Cell()
    assert cell_problem(text, "cm") == ""


@pytest.mark.parametrize("text", ["abc", "8O", "86--90", "90-86", "-5", "0", "12 kg", "1/0", "9" * 5000, "-" * 5000])
def test_a_text_that_is_no_figure_is_kept_and_explained_in_one_sentence(text: str) -> None:
    assert parse_cell(text, "cm") == Cell(text)
    assert parse_cell(text, "cm").bad
    assert cell_problem(text, "cm").count(". ") == 0
    assert cell_problem(text, "cm").endswith(".")


def test_a_range_that_runs_downward_is_told_which_end_comes_first() -> None:
    assert cell_problem("90-86", "cm") == "“90-86” runs downward: write the smaller figure first."


def test_a_word_is_told_how_figures_look() -> None:
    assert cell_problem("abc", "cm") == "“abc” is not a figure like 96, 37 3/4 or 86-90."


def test_a_figure_needs_no_explanation() -> None:
    assert cell_problem("86-90", "cm") == ""


@pytest.mark.parametrize(
    ("value", "unit", "like", "text"),
    [
        (Fraction(151, 4), "in", "", "37 3/4"),
        (Fraction(3, 4), "in", "", "3/4"),
        (Fraction(151, 4), "in", "36.25", "37.75"),
        (Fraction(191, 2), "cm", "", "95.5"),
        (Fraction(191, 2), "cm", "91,5", "95,5"),
        (Fraction(96), "cm", "91,5", "96"),
        (Fraction(1, 3), "cm", "", "1/3"),
        (Fraction(151, 4), "in", "36½", "37¾"),
        (Fraction(1, 2), "in", "¾", "½"),
        (Fraction(593, 16), "in", "36½", "37 1/16"),
    ],
)
def test_a_figure_is_written_as_charts_print_it(value: Fraction, unit: str, like: str, text: str) -> None:
    assert write_figure(value, unit, like) == text  # type: ignore[arg-type]


@given(st.fractions(min_value=Fraction(1, 64), max_value=300, max_denominator=64), st.sampled_from(["cm", "in", "mm"]))
def test_a_written_figure_reads_back_exactly(value: Fraction, unit: str) -> None:
    cell = parse_cell(write_figure(value, unit), unit)  # type: ignore[arg-type]
    assert cell.low is not None
    assert (cell.low.value, cell.low.unit) == (value, unit)


@given(st.text(max_size=40))
def test_any_text_is_a_figure_or_has_a_sentence(text: str) -> None:
    cell = parse_cell(text, "cm")
    assert cell.bad == bool(cell_problem(text, "cm"))
