"""What the layout is given: texts made safe to set."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest

from sizekeeper import assets
from sizekeeper.core.band_colours import looks
from sizekeeper.reports.pdf_data import ACROSS_AT_MOST, figure, sentence, sheet_data, text
from tests.reports import sheets

NBSP = "\N{NO-BREAK SPACE}"


@pytest.mark.parametrize(
    ("typed", "whole", "fraction"),
    [
        ("37 3/4", "37", "3/4"),
        ("3/8", "", "3/8"),
        ("−1 1/16", "−1", "1/16"),
        ("95.5", "95.5", ""),
        ("10/12", "10/12", ""),
    ],
)
def test_a_figure_is_set_as_whole_and_fraction(typed: str, whole: str, fraction: str) -> None:
    assert figure(typed) == [whole, fraction]


@pytest.mark.parametrize("typed", ["1 3/8 in", "3/4 in", "2.5 cm", "8 mm"])
def test_an_amount_never_breaks_from_its_unit(typed: str) -> None:
    assert sentence(f"spread by {typed}.") == f"spread by{NBSP}{typed.replace(chr(32), NBSP)}."


def test_a_size_before_a_word_is_no_amount() -> None:
    assert sentence("Cut 40 straight in linen") == "Cut 40 straight in linen"


def test_a_long_word_can_break_and_stays_the_same_word() -> None:
    word = text("W" * 60)
    assert max(map(len, word.split("\N{ZERO WIDTH SPACE}"))) <= 16
    assert word.replace("\N{ZERO WIDTH SPACE}", "") == "W" * 60


def test_no_place_to_break_comes_between_signs_that_belong_together() -> None:
    family = "👩\u200d👩\u200d👧" * 9
    assert text(family) == family


@pytest.mark.parametrize("mark", ["\u202e", "\u2066", "\x07", "\x00"])
def test_marks_that_would_change_what_follows_are_left_away(mark: str) -> None:
    assert text(f"a{mark}b") == "ab"


def test_line_ends_and_tabs_are_spaces() -> None:
    assert text("a\r\nb\tc") == "a b c"


def test_more_columns_than_fit_go_on_below() -> None:
    tables = sheet_data(sheets.longest(), "a4")["tables"]
    assert [len(table["columns"]) for table in tables] == [ACROSS_AT_MOST] * 3 + [3]
    assert all(len(row["cells"]) == len(table["columns"]) for table in tables for row in table["rows"])


def test_a_verdict_that_is_the_plans_title_is_said_once() -> None:
    sheet = sheets.small(verdict="40 straight.")
    assert sheet_data(sheet, "a4")["plan"]["title"] == ""


def test_the_size_of_all_pieces_is_said_once() -> None:
    sheet = sheets.small()
    assert sheet_data(sheet, "a4")["trace_size"] == "all in 40"
    two = (sheet.trace[0], replace(sheet.trace[1], size="42"))
    assert sheet_data(replace(sheet, trace=two), "a4")["trace_size"] == ""


def test_sizes_that_are_not_shown_are_counted() -> None:
    sheet = sheets.small()
    counted = replace(sheet, table=replace(sheet.table, left_out=21))
    assert sheet_data(counted, "a4")["left_out"] == "21 more sizes are not shown."


def test_the_bands_on_paper_have_the_windows_colours() -> None:
    written = Path(assets.resource("reports", "bands.typ")).read_text(encoding="utf-8")
    for look in looks(dark=False):
        assert f'{look.band}: (ground: rgb("{look.ground}")' in written


def test_inches_ask_for_small_fractions() -> None:
    sheet = sheets.small()
    assert not sheet_data(sheet, "a4")["inches"]
    assert sheet_data(replace(sheet, envelope=replace(sheet.envelope, unit="in", step=Fraction(1, 8))), "a4")["inches"]
