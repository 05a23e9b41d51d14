from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sizekeeper.core import chart_edit as edit
from sizekeeper.core.chart import Size
from sizekeeper.errors import ChartError
from tests.core.written import chart, sizes, texts

if TYPE_CHECKING:
    from collections.abc import Callable

    from sizekeeper.core.chart import Chart

THREE = chart("38 / M, 40, 42", bust="88, 92, 96", waist="70, 74, 78")


def test_a_size_goes_by_several_names() -> None:
    assert edit.size_from_text(" 38 / M | medium ") == Size("38", ("M", "medium"))


def test_a_double_size_is_one_name() -> None:
    assert edit.size_from_text("10/12") == Size("10/12")


def test_a_size_reads_back_as_typed() -> None:
    assert edit.size_text(edit.size_from_text("38 / M")) == "38 / M"


def test_a_size_is_found_by_any_of_its_names_in_small_letters_too() -> None:
    assert [edit.size_named(THREE, name) for name in ("38", "m", "42", "44")] == [0, 0, 2, None]


def test_one_figure_is_typed_anew_and_the_others_stay() -> None:
    after = edit.with_cell(THREE, 1, 2, "80")
    assert texts(after) == {"bust": "88, 92, 96", "waist": "70, 74, 80"}
    assert after.rows[1].lows() == [70, 74, 80]


def test_a_block_is_typed_anew_at_once() -> None:
    after = edit.with_block(THREE, 0, 1, [["93", "97"], ["75", "oops"]])
    assert texts(after) == {"bust": "88, 93, 97", "waist": "70, 75, oops"}
    assert after.rows[1].lows() == [70, 75, None]


@pytest.mark.parametrize(("row", "column"), [(1, 1), (0, 2), (-1, 0), (0, -1)])
def test_a_block_beyond_the_edge_is_refused(row: int, column: int) -> None:
    with pytest.raises(ChartError, match="larger than the chart"):
        edit.with_block(THREE, row, column, [["1", "2"], ["3", "4"]])


def test_cleared_figures_are_empty() -> None:
    assert texts(edit.cleared(THREE, [(0, 0), (1, 2)])) == {"bust": ", 92, 96", "waist": "70, 74, "}


def test_a_new_size_stands_behind_the_last_with_empty_figures() -> None:
    after = edit.with_size_added(THREE, "44")
    assert (sizes(after), texts(after)["bust"]) == ("38 / M, 40, 42, 44", "88, 92, 96, ")


def test_a_new_size_may_stand_between_two() -> None:
    after = edit.with_size_added(THREE, "39", 1)
    assert (sizes(after), texts(after)["waist"]) == ("38 / M, 39, 40, 42", "70, , 74, 78")


@pytest.mark.parametrize(
    "edited",
    [lambda: edit.with_size_added(THREE, "m"), lambda: edit.with_size_renamed(THREE, 2, "40")],
)
def test_two_sizes_never_share_a_name(edited: Callable[[], Chart]) -> None:
    with pytest.raises(ChartError, match=r"The chart has a size (m|40) already"):
        edited()


def test_a_size_never_loses_its_last_name() -> None:
    with pytest.raises(ChartError, match="needs a name"):
        edit.with_size_renamed(THREE, 0, "  / ")


def test_a_renamed_size_keeps_its_figures_and_may_keep_a_name() -> None:
    after = edit.with_size_renamed(THREE, 0, "M / 38")
    assert (sizes(after), texts(after)) == ("M / 38, 40, 42", texts(THREE))


def test_removed_sizes_take_their_figures_with_them() -> None:
    after = edit.without_sizes(THREE, {0, 2})
    assert (sizes(after), texts(after)) == ("40", {"bust": "92", "waist": "74"})


def test_a_moved_size_takes_its_figures_along() -> None:
    after = edit.with_size_moved(THREE, 0, 2)
    assert (sizes(after), texts(after)["bust"]) == ("40, 42, 38 / M", "92, 96, 88")


def test_sizes_can_be_turned_round() -> None:
    after = edit.with_sizes_turned(THREE)
    assert (sizes(after), texts(after)["waist"]) == ("42, 40, 38 / M", "78, 74, 70")


def test_the_sizes_of_another_chart_are_taken_over_but_not_twice() -> None:
    assert sizes(edit.with_sizes_of(chart("40 / L", "finished", bust="99"), THREE)) == "40 / L, 38 / M, 42"


def test_a_new_measure_stands_below_the_last_or_before_a_row() -> None:
    after = edit.with_row_added(edit.with_row_added(THREE, "hip"), "cuff", "Cuff", 0)
    assert texts(after) == {"cuff": ", , ", "bust": "88, 92, 96", "waist": "70, 74, 78", "hip": ", , "}


@pytest.mark.parametrize(
    "edited",
    [lambda: edit.with_row_added(THREE, "waist"), lambda: edit.with_row_renamed(THREE, 0, "waist")],
)
def test_a_measure_has_one_row_only(edited: Callable[[], Chart]) -> None:
    with pytest.raises(ChartError, match="a row for waist already"):
        edited()


def test_a_measure_needs_a_name() -> None:
    with pytest.raises(ChartError, match="needs a name"):
        edit.with_row_added(THREE, "_")


def test_a_renamed_measure_keeps_its_figures() -> None:
    after = edit.with_row_renamed(THREE, 0, "high_bust", "Upper bust")
    assert (texts(after)["high_bust"], after.rows[0].label) == ("88, 92, 96", "Upper bust")


def test_removed_measures_are_gone() -> None:
    assert texts(edit.without_rows(THREE, {0})) == {"waist": "70, 74, 78"}


@pytest.mark.parametrize(("start", "to"), [(0, 1), (1, 0), (0, 9), (1, -3)])
def test_a_measure_moves_no_further_than_the_ends(start: int, to: int) -> None:
    assert list(texts(edit.with_row_moved(THREE, start, to))) == ["waist", "bust"]


def test_a_row_said_to_be_half_is_doubled_and_no_longer_doubted() -> None:
    doubted = edit.with_row_renamed(THREE, 0, "bust")
    after = edit.with_written_as(doubted, 0, "half")
    assert (after.rows[0].lows(), after.rows[0].doubt) == ([176, 184, 192], "")


def test_another_unit_reads_bare_numbers_anew_and_leaves_written_units_alone() -> None:
    after = edit.with_unit(chart("38, 40, 42", bust="10, 10 cm, x"), "in")
    assert after.rows[0].lows() == pytest.approx([25.4, 10, None])
    assert texts(after) == {"bust": "10, 10 cm, x"}


@pytest.mark.parametrize(
    ("listed", "name"),
    [("38, 40", "42"), ("8, 10, 12", "14"), ("S, M", "Size 3"), ("", "Size 1"), ("38", "Size 2"), ("40, 38", "Size 3"),
     ("Size 2", "Size 3"), ("42, 38, 40", "Size 4")],
)  # fmt: skip
def test_the_next_size_goes_on_in_step_or_by_its_place(listed: str, name: str) -> None:
    assert edit.next_size(chart(listed)) == name


def test_a_chart_without_figures_is_blank() -> None:
    assert edit.is_blank(chart("38, 40", bust=","))
    assert not edit.is_blank(chart("38, 40", bust=", ?"))


@given(st.lists(st.tuples(st.sampled_from("adrmt"), st.integers(0, 5)), max_size=12))
def test_whatever_is_done_to_sizes_each_row_has_one_cell_a_size(steps: list[tuple[str, int]]) -> None:
    now = THREE
    for kind, at in steps:
        column = min(at, len(now.sizes) - 1)
        if kind == "a" or column < 0:
            now = edit.with_size_added(now, edit.next_size(now), max(column, 0))
        elif kind == "d":
            now = edit.without_sizes(now, {column})
        elif kind == "m":
            now = edit.with_size_moved(now, column, 0)
        elif kind == "t":
            now = edit.with_sizes_turned(now)
    assert all(len(row.cells) == len(now.sizes) for row in now.rows)
    assert len({size.label for size in now.sizes}) == len(now.sizes)
