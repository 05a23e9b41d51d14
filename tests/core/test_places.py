"""Places on the size range in words."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from sizekeeper.core.comparison import compare
from sizekeeper.core.fit import fit_of
from sizekeeper.core.places import beyond, inline_words, join, line_gap_cm, place_words, short_place
from sizekeeper.core.question import Question
from tests.build import body, chart

if TYPE_CHECKING:
    from sizekeeper.core.result import Fit
from sizekeeper import assets

LABELS = ("38", "40", "42")


@pytest.mark.parametrize(
    ("position", "said"),
    [
        (1, "40"),
        (0.5, "between 38 and 40, halfway"),
        (1.25, "between 40 and 42, a quarter of the way"),
        (1.75, "between 40 and 42, three quarters of the way"),
        (0.35, "between 38 and 40, 35 % of the way"),
        (-0.5, "before 38 by half a step"),
        (2.5, "past 42 by half a step"),
        (3, "past 42 by one step"),
        (2.2, "past 42 by 20 % of a step"),
    ],
)
def test_a_place_is_said_in_words_and_never_as_a_bare_number(position: float, said: str) -> None:
    assert place_words(position, LABELS) == said


@pytest.mark.parametrize(
    ("position", "said"),
    [
        (2, "42"),
        (0.5, "halfway between 38 and 40"),
        (1.25, "a quarter of the way from 40 to 42"),
        (2.5, "past 42 by half a step"),
    ],
)
def test_a_place_inside_a_sentence_needs_no_comma(position: float, said: str) -> None:
    assert inline_words(position, LABELS) == said


@pytest.mark.parametrize(
    ("position", "lines"), [(0, ("38", "")), (0.25, ("38–40", "¼ way")), (1.5, ("40–42", "halfway"))]
)
def test_a_column_is_headed_by_two_short_lines(position: float, lines: tuple[str, str]) -> None:
    assert short_place(position, LABELS) == lines


def test_what_stands_in_brackets_goes_to_the_second_line_of_a_heading() -> None:
    labels = ("L (18-20)", "XL (22-24)")
    assert [short_place(p, labels) for p in (1, 0.5)] == [("XL", "(22-24)"), ("L–XL", "halfway")]


@pytest.mark.parametrize(("position", "past"), [(-0.1, True), (0, False), (2, False), (2.1, True)])
def test_places_past_the_listed_sizes_are_known_as_such(position: float, past: bool) -> None:
    assert beyond(position, 3) is past


@pytest.mark.parametrize(
    ("parts", "said"), [([], ""), (["a"], "a"), (["a", "b"], "a and b"), (["a", "b", "c"], "a, b and c")]
)
def test_words_in_a_row_are_joined_as_people_write(parts: list[str], said: str) -> None:
    assert join(parts) == said


def compared(bust: str, waist: str) -> Fit:
    finished = chart("finished", "38 40 42", bust=bust, waist=waist)
    return fit_of(compare(body(bust=88, waist=70), None, finished, Question(), assets.ease_defaults()), {})


def test_printed_lines_lie_a_quarter_of_the_smallest_step_apart() -> None:
    assert line_gap_cm(compared(bust="92, 96, 102", waist="74, 77, 84"), 0) == pytest.approx(3 / 4)


def test_without_a_torso_girth_that_counts_no_distance_between_lines_is_known() -> None:
    finished = chart("finished", "38 40", upper_arm="30, 32")
    fit = fit_of(compare(body(upper_arm=26), None, finished, Question(), assets.ease_defaults()), {})
    assert line_gap_cm(fit, 0) is None
