from __future__ import annotations

import pytest

from sizekeeper.core.chart_paste import SIZES, block_from_text, block_to_text, fitting, paste
from sizekeeper.errors import ChartError
from tests.core.written import MEASURES, chart, sizes, texts

TWO = chart("38, 40", bust="88, 92", waist="70, 74")


def test_a_block_from_a_spreadsheet_is_split_at_tabs_and_lines() -> None:
    assert block_from_text('88\t92\r\n70\t"74\n½"\r\n') == [["88", "92"], ["70", "74 ½"]]


def test_short_lines_are_filled_up() -> None:
    assert block_from_text("88\n70\t74") == [["88", ""], ["70", "74"]]


def test_an_inch_mark_is_no_quote() -> None:
    assert block_from_text('34 1/2"\t36"') == [['34 1/2"', '36"']]


def test_copied_cells_paste_back() -> None:
    assert block_from_text(block_to_text([["88", "37 3/4"], ["", "x"]])) == [["88", "37 3/4"], ["", "x"]]


def test_a_block_inside_the_chart_adds_nothing() -> None:
    done = paste(TWO, 0, 0, [["89", "93"], ["71", "75"]], MEASURES)
    assert (texts(done.chart), done.sizes, done.measures, done.figures) == (
        {"bust": "89, 93", "waist": "71, 75"}, (), (), 4
    )  # fmt: skip


def test_a_wider_block_adds_sizes_in_step() -> None:
    done = paste(TWO, 0, 1, [["93", "97", "101"]], MEASURES)
    assert (sizes(done.chart), done.sizes) == ("38, 40, 42, 44", ("42", "44"))
    assert texts(done.chart) == {"bust": "88, 93, 97, 101", "waist": "70, 74, , "}


def test_a_longer_block_adds_measures_named_by_their_place() -> None:
    done = paste(TWO, 1, 0, [["70", "74"], ["94", "98"]], MEASURES)
    assert (done.measures, texts(done.chart)["measure_3"]) == (("Measure 3",), "94, 98")


def test_a_block_on_the_sizes_names_them() -> None:
    done = paste(TWO, SIZES, 0, [["40", "38", "42"], ["92", "88", "96"]], MEASURES)
    assert (sizes(done.chart), done.sizes, texts(done.chart)["bust"]) == ("40, 38, 42", ("42",), "92, 88, 96")


def test_a_block_far_beyond_the_last_size_names_the_sizes_between() -> None:
    assert sizes(paste(TWO, 0, 3, [["99"]], MEASURES).chart) == "38, 40, 42, 44"


def test_a_whole_table_finds_its_own_places() -> None:
    block = block_from_text("Size\t40\t42\nTaille\t74\t78\nTour de poitrine\t92\t96\nCuff\t20\t21")
    done = paste(TWO, SIZES, 0, block, MEASURES)
    assert texts(done.chart) == {"bust": "88, 92, 96", "waist": "70, 74, 78", "cuff": ", 20, 21"}
    assert (done.sizes, done.measures, done.figures) == (("42",), ("Cuff",), 6)


def test_two_sizes_of_one_name_are_refused() -> None:
    with pytest.raises(ChartError, match="a size 38 already"):
        paste(TWO, SIZES, 1, [["38"]], MEASURES)


@pytest.mark.parametrize("block", [[], [[""]], [["", ""], ["", ""]]])
def test_an_empty_clipboard_is_said_to_be_empty(block: list[list[str]]) -> None:
    with pytest.raises(ChartError, match="nothing to paste"):
        paste(TWO, 0, 0, block, MEASURES)


def test_a_huge_block_is_refused_in_words() -> None:
    with pytest.raises(ChartError, match="1 lines of 5000 cells: too many"):
        paste(TWO, 0, 0, [["1"] * 5000], MEASURES)


def test_only_what_fits_can_be_pasted() -> None:
    block = [["1", "2", "3"], ["4", "5", "6"], ["7", "8", "9"]]
    assert fitting(TWO, 0, 1, block) == [["1"], ["4"]]
    assert fitting(TWO, SIZES, 0, block) == [["1", "2"], ["4", "5"], ["7", "8"]]


def test_a_clipboard_that_holds_no_table_is_refused_in_words() -> None:
    with pytest.raises(ChartError, match="no table"):
        block_from_text("x" * 200_000)
