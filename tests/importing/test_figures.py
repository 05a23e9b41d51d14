"""One cell's figure, in every way people write it."""

from __future__ import annotations

from fractions import Fraction

import pytest

from sizekeeper.importing.figures import figure_in, is_missing

SINGLE = {
    "37 3/4": ("37.75", None), "37-3/4": ("37.75", None), "37¾": ("37.75", None), "37¾″": ("37.75", "in"),
    "35 ⅝”": ("35.625", "in"), "82,5": ("82.5", None), "82.5 cm": ("82.5", "cm"), "86\u00a0cm": ("86", "cm"),
    "8\u200a¾": ("8.75", None), "5′6″": ("66", "in"), "5' 6 1/2\"": ("66.5", "in"), "5 ft 6 in": ("66", "in"),
    "1 yd 4 in": ("40", "in"), "1.68 m": ("1.68", "m"), "1,016": ("1016", None), ".5": ("0.5", None),
    "½": ("0.5", None),
    "-1 1/2": ("-1.5", None), "86*": ("86", None), "86¹": ("86", None), "90 (1)": ("90", None), "ca. 86": ("86", None),
    "34 Zoll": ("34", "in"), "32 pouces": ("32", "in"), "870 mm": ("870", "mm"),
}  # fmt: skip


@pytest.mark.parametrize("text", SINGLE)
def test_a_single_length_is_exact_and_keeps_its_unit(text: str) -> None:
    figure = figure_in(text)
    assert figure is not None
    assert [(a.low, a.high, a.unit) for a in figure.amounts] == [(Fraction(SINGLE[text][0]),) * 2 + (SINGLE[text][1],)]


@pytest.mark.parametrize(
    "text",
    ["86-90", "86 – 90", "86—90", "86 to 90", "86 bis 90", "86 à 90", "86 tot 90", "86 a 90", "from 86 to 90", "86/90"],
)
def test_a_range_has_both_ends(text: str) -> None:
    figure = figure_in(text)
    assert figure is not None
    assert [(int(a.low), int(a.high)) for a in figure.amounts] == [(86, 90)]


def test_a_range_of_fractions_is_not_a_mixed_number() -> None:
    figure = figure_in('37-1/2 - 39 1/2"')
    assert figure is not None
    assert (figure.amounts[0].low, figure.amounts[0].high, figure.amounts[0].unit) == (
        Fraction(75, 2),
        Fraction(79, 2),
        "in",
    )


@pytest.mark.parametrize("text", ["86 cm (34 in)", "86cm / 34″", "86 (34)", "86/34", "86 cm 34 in", "86 cm or 34 in"])
def test_one_length_in_two_units_is_two_amounts(text: str) -> None:
    figure = figure_in(text)
    assert figure is not None
    assert [(int(a.low), a.unit) for a in figure.amounts] == [(86, "cm"), (34, "in")]


def test_ranges_in_two_units_keep_their_ends() -> None:
    figure = figure_in("86-90 cm / 34-35 1/2 in")
    assert figure is not None
    assert [(float(a.low), float(a.high), a.unit) for a in figure.amounts] == [(86, 90, "cm"), (34, 35.5, "in")]


@pytest.mark.parametrize(
    "text", ["", "S", "XS (4-6)", "12 B", "2.5 cm below the underarm", "n/a", "–", "86 90", "1/0", "a/b", "(" * 50]
)
def test_what_is_no_figure_is_none(text: str) -> None:
    assert figure_in(text) is None


@pytest.mark.parametrize("text", ["-", "–", "n/a", "N.A.", "k.A.", "nvt", "#DIV/0!", "..."])
def test_marks_for_no_figure_are_known(text: str) -> None:
    assert is_missing(text)


def test_a_second_figure_that_is_no_other_unit_is_told_of() -> None:
    figure = figure_in("86 (96)")
    assert figure is not None
    assert (float(figure.amounts[0].low), figure.aside) == (86, "(96)")
