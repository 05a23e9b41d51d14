from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from sizekeeper.core.draft import Row, draft_of, figures
from sizekeeper.core.pattern import Pattern
from tests.build import chart, length

SHIRT = Pattern("pattern", "Shirt", garment="top")
BODY = chart("body", "38 40 42", bust="88, 92, 97", waist="70, 74, 79", hip="96, 100, 105")
FINISHED = chart("finished", "38 40 42", bust="95, 99, 105", hip="100, 105, 110")


def listed(row: Row) -> list[float | None]:
    """A row with None where nothing is known."""
    return [None if np.isnan(x) else round(float(x), 6) for x in row]


def test_ease_is_the_finished_figure_less_the_body_charts_in_every_size() -> None:
    found = figures(draft_of(SHIRT, BODY, FINISHED), "ease")
    assert {m: listed(row) for m, row in found.items()} == {"bust": [7, 7, 8], "hip": [4, 5, 5]}


def test_ease_is_known_only_in_sizes_that_both_charts_list() -> None:
    other = chart("finished", "40 42 44", bust="99, 105, 110")
    assert listed(figures(draft_of(SHIRT, BODY, other), "ease")["bust"]) == [None, 7, 8]


def test_a_step_stands_at_the_size_stepped_to() -> None:
    draft = draft_of(SHIRT, BODY, FINISHED)
    assert listed(figures(draft, "body_step")["waist"]) == [None, 4, 5]
    assert listed(figures(draft, "garment_step")["bust"]) == [None, 4, 6]


def test_a_figure_that_is_not_printed_is_left_out_rather_than_filled_in() -> None:
    gaps = chart("body", "38 40 42 44", bust="88, -, 97, 102")
    assert listed(figures(draft_of(SHIRT, gaps, None), "body_step")["bust"]) == [None, None, None, 5]


def test_a_range_counts_by_its_middle() -> None:
    ranges = chart("body", "S M", bust="84..88, 90..94")
    finished = chart("finished", "S M", bust="96, 102")
    assert listed(figures(draft_of(SHIRT, ranges, finished), "ease")["bust"]) == [10, 10]


def test_proportions_are_one_body_measure_less_another() -> None:
    found = figures(draft_of(SHIRT, BODY, None), "proportion")
    assert {m: listed(row) for m, row in found.items()} == {"bust_waist": [18, 18, 18], "waist_hip": [26, 26, 26]}


def test_lengths_of_the_body_are_proportions_by_themselves() -> None:
    body = chart("body", "38 40", back_waist_length="41, 41.5", height="168, 168")
    found = figures(draft_of(SHIRT, body, None), "proportion")
    assert {m: listed(row) for m, row in found.items()} == {"back_waist_length": [41, 41.5], "height": [168, 168]}


def test_what_the_envelope_says_holds_for_every_size_where_the_chart_is_silent() -> None:
    said = replace(SHIRT, drafted_height=length("170 cm"), drafted_difference=length("2 in"))
    found = figures(draft_of(said, BODY, None), "proportion")
    assert (listed(found["height"]), listed(found["high_bust_bust"])) == ([170] * 3, [5.08] * 3)


def test_the_chart_goes_before_what_the_envelope_says() -> None:
    tall = chart("body", "38 40", height="174, 174")
    said = replace(SHIRT, drafted_height=length("170 cm"))
    assert listed(figures(draft_of(said, tall, None), "proportion")["height"]) == [174, 174]


def test_half_widths_count_as_full_girths() -> None:
    half = chart("finished", "38 40 42", bust="47.5, 49.5, 52.5")
    half = replace(half, rows=tuple(replace(row, written_as="half") for row in half.rows))
    assert listed(figures(draft_of(SHIRT, BODY, half), "ease")["bust"]) == [7, 7, 8]


def test_a_girth_that_may_be_a_half_width_is_left_out_and_named() -> None:
    doubtful = replace(FINISHED, rows=tuple(replace(row, doubt="half_width_suspected") for row in FINISHED.rows[:1]))
    draft = draft_of(SHIRT, BODY, doubtful)
    assert (figures(draft, "ease"), draft.doubtful) == ({}, ("bust",))


@pytest.mark.parametrize("topic", ["ease", "garment_step"])
def test_without_finished_measurements_there_is_neither_ease_nor_a_step_of_the_garment(topic: str) -> None:
    assert figures(draft_of(SHIRT, BODY, None), topic) == {}  # type: ignore[arg-type]  # one of the topics


def test_without_a_body_chart_the_finished_sizes_are_the_run() -> None:
    draft = draft_of(SHIRT, None, FINISHED)
    assert (draft.labels, listed(figures(draft, "garment_step")["hip"])) == (("38", "40", "42"), [None, 5, 5])
