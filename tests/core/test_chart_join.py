from __future__ import annotations

from dataclasses import replace

import pytest

from sizekeeper.core.chart import Chart, Size
from sizekeeper.core.chart_edit import with_unit, with_written_as
from sizekeeper.core.chart_join import joined, made_clear, merged
from tests.core.written import chart, sizes, texts


def cm(result: Chart, row: int) -> list[float | None]:
    return [None if low is None else round(low, 6) for low in result.rows[row].lows()]


def test_figures_of_the_same_size_and_measure_are_replaced() -> None:
    result = joined(chart("38, 40", bust="88, 92"), chart("40", bust="93"))
    assert (texts(result.chart), [(c.size, c.old, c.new) for c in result.changed]) == (
        {"bust": "88, 93"},
        [("40", "92", "93")],
    )


def test_figures_that_are_not_given_stay() -> None:
    result = joined(chart("38, 40", bust="88, 92", waist="70, 74"), chart("38, 40", bust=", 93"))
    assert texts(result.chart) == {"bust": "88, 93", "waist": "70, 74"}


def test_a_figure_that_says_the_same_in_other_words_is_no_change() -> None:
    result = joined(chart("38", bust="88"), chart("38", bust="88.0"))
    assert (result.changed, texts(result.chart)) == ((), {"bust": "88"})


def test_empty_places_are_counted_as_filled() -> None:
    assert joined(chart("38, 40", bust="88, "), chart("38, 40", bust="88, 92")).added == 1


@pytest.mark.parametrize(
    ("ours", "theirs", "whole"),
    [
        ("38, 42", "38, 40, 42", "38, 40, 42"),
        ("38, 40", "40, 42", "38, 40, 42"),
        ("38, 40", "34, 36, 38", "34, 36, 38, 40"),
        ("38, 40", "34, 36", "34, 36, 38, 40"),
        ("38, 40", "42, 44", "38, 40, 42, 44"),
        ("38, 40, 42", "42, 41, 40", "38, 40, 41, 42"),
        ("S, M", "L, XL", "S, M, L, XL"),
    ],
)
def test_new_sizes_go_where_they_stand_in_the_other_chart(ours: str, theirs: str, whole: str) -> None:
    assert sizes(joined(chart(ours), chart(theirs)).chart) == whole


def test_a_size_is_the_same_by_any_of_its_names() -> None:
    named = replace(chart("38", bust="88"), sizes=(Size("38", ("M",)),))
    assert texts(joined(named, chart("M", bust="90")).chart) == {"bust": "90"}


def test_a_measure_that_is_not_there_gets_a_row() -> None:
    result = joined(chart("38", bust="88"), chart("38", hip="96"))
    assert ([row.measure for row in result.chart.rows], [row.measure for row in result.rows]) == (
        ["bust", "hip"],
        ["hip"],
    )


def test_figures_in_another_unit_carry_it() -> None:
    inches = with_unit(chart("38, 40", bust="34 1/2, 36"), "in")
    result = joined(chart("38, 40", bust="88, "), inches)
    assert (texts(result.chart), cm(result.chart, 0)) == ({"bust": "34 1/2 in, 36 in"}, [87.63, 91.44])


def test_an_empty_chart_takes_the_unit_of_the_other() -> None:
    inches = with_unit(chart("38", bust="34"), "in")
    result = joined(chart("38"), inches)
    assert (result.chart.unit, texts(result.chart)) == ("in", {"bust": "34"})


def test_a_flat_figure_laid_over_a_whole_row_makes_it_a_flat_row() -> None:
    flat = with_written_as(chart("38, 40", bust="44, 46"), 0, "half")
    result = joined(chart("38, 40", bust="90, 94"), flat)
    assert (result.chart.rows[0].written_as, cm(result.chart, 0)) == ("half", [88, 92])


def test_a_flat_figure_laid_beside_full_ones_is_multiplied_out() -> None:
    flat = with_written_as(chart("40", bust="46"), 0, "half")
    result = joined(chart("38, 40", bust="90, 94"), flat)
    assert (result.chart.rows[0].written_as, texts(result.chart)) == ("full", {"bust": "90, 92"})


def test_a_range_keeps_both_ends_in_another_unit() -> None:
    inches = with_unit(chart("38", bust="34-36"), "in")
    result = joined(chart("38, 40", bust=", 92"), inches)
    row = result.chart.rows[0]
    assert [row.lows()[0], row.highs()[0]] == pytest.approx([34 * 2.54, 36 * 2.54])


def test_a_text_with_a_mark_beside_its_figure_is_cleared_of_it() -> None:
    marked = chart("38", bust="88")
    cell = replace(marked.rows[0].cells[0], text="88*")
    odd = replace(marked, rows=(replace(marked.rows[0], cells=(cell,)),))
    assert texts(made_clear(odd)) == {"bust": "88"}


def test_charts_of_two_kinds_or_views_stay_apart() -> None:
    body, finished = chart("38", bust="88"), chart("38", "finished", bust="94")
    assert merged([body, finished, replace(finished, view="B")]) == [body, finished, replace(finished, view="B")]


def test_charts_of_one_kind_become_one() -> None:
    whole = merged([chart("38, 40", bust="88, 92"), chart("42", bust="96")])
    assert [(sizes(c), texts(c)) for c in whole] == [("38, 40, 42", {"bust": "88, 92, 96"})]


def test_two_figures_for_one_size_are_both_kept_in_rows_of_their_own() -> None:
    tall = replace(chart("38", bust="90"), name="Tall")
    whole = merged([chart("38", bust="88"), tall])[0]
    assert [(row.measure, row.label) for row in whole.rows] == [("bust", whole.rows[0].label), ("bust_2", "Bust, Tall")]
