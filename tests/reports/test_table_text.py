"""The decision sheet as comma-separated text."""

from __future__ import annotations

import csv
import io
from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from sizekeeper.core.notation import INCHES
from sizekeeper.reports.table_text import table_text
from tests.reports.sheets import HOSTILE, cell_of, figure_row, hostile, longest, private, small

if TYPE_CHECKING:
    from sizekeeper.reports.sheet import Sheet


def rows(sheet: Sheet) -> list[list[str]]:
    return list(csv.reader(io.StringIO(table_text(sheet), newline="")))


def after(sheet: Sheet, first: str) -> list[str]:
    """The row that follows the one which begins with a text."""
    found = rows(sheet)
    return found[next(i for i, row in enumerate(found) if row and row[0] == first) + 1]


def test_it_says_first_what_and_for_whom_it_is() -> None:
    assert rows(small())[:2] == [["Pattern", "Marlet dress"], ["For", "Ilse Marten"]]


def test_a_row_of_the_ease_table_holds_body_asked_role_and_each_size() -> None:
    sizes = ["1.0", "97.0", "tight", "5.0", "101.0", "close", "9.0", "105.0", "easy"]
    assert after(small(), "Region") == ["Bust", "96.0", "5.0", "must fit", *sizes]


def test_the_heading_says_which_size_is_to_be_cut() -> None:
    heading = next(row for row in rows(small()) if row[:1] == ["Region"])
    assert heading[4:10] == ["38: ease, cm", "38: finished, cm", "38: band", "40 (to cut): ease, cm",
                             "40 (to cut): finished, cm", "40 (to cut): band"]  # fmt: skip


def test_inches_are_decimal_numbers_because_a_fraction_would_become_a_date() -> None:
    eighth = figure_row("Bust", (cell_of(2.2225, 96.52),), body_cm=96.52)
    sheet = small(INCHES)
    sheet = replace(sheet, table=replace(sheet.table, rows=(eighth,), columns=sheet.table.columns[:1]))
    assert after(sheet, "Region")[1:6:3] == ["38.0", "0.875"]


def test_printed_figures_are_in_the_unit_of_the_envelope() -> None:
    eighth = figure_row("Bust", (cell_of(5.0, 96.6),))
    sheet = small(envelope=INCHES)
    sheet = replace(sheet, table=replace(sheet.table, rows=(eighth,), columns=sheet.table.columns[:1]))
    heading = next(row for row in rows(sheet) if row[:1] == ["Region"])
    assert heading[4:6] == ["38: ease, cm", "38: finished, in"]
    assert after(sheet, "Region")[4:6] == ["5.0", "40.0"]


def test_a_figure_that_is_not_known_is_an_empty_field() -> None:
    gap = replace(cell_of(1.0), amount="–", amount_cm=None, printed="–", printed_cm=None, band=None)
    sheet = small()
    sheet = replace(sheet, table=replace(sheet.table, rows=(figure_row("Bust", (gap,)),)))
    assert after(sheet, "Region")[4:] == ["", "", ""]


def test_by_the_body_chart_there_are_differences_and_no_bands() -> None:
    sheet = small()
    sheet = replace(sheet, table=replace(sheet.table, mode="body"))
    assert after(sheet, "Region")[4:] == ["1.0", "97.0", "5.0", "101.0", "9.0", "105.0"]


def test_every_step_of_the_work_is_there_and_what_is_done_is_crossed() -> None:
    found = rows(small())
    start = next(i for i, row in enumerate(found) if row[:1] == ["Done"])
    assert [row[:3] for row in found[start + 1 : start + 4]] == [
        ["", "Trace", "Bodice front"],
        ["x", "Length", "Skirt front"],
        ["", "Length", "Skirt back"],
    ]


def test_a_private_table_has_no_body_no_ease_and_no_ease_asked_for() -> None:
    assert after(private("96.7"), "Region") == [
        "Bust", "must fit", "97.7", "tight", "101.7", "close", "105.7", "easy",
    ]  # fmt: skip
    assert not any("96.7" in field for row in rows(private("96.7")) for field in row)


@pytest.mark.parametrize("text", HOSTILE)
def test_no_field_is_read_as_a_formula(text: str) -> None:
    fields = [field for row in rows(hostile(text)) for field in row]
    assert not any(field[:1] in ("=", "+", "-", "@", "\t", "\r") for field in fields)


@pytest.mark.parametrize("text", HOSTILE)
def test_a_text_that_breaks_lines_keeps_its_row(text: str) -> None:
    assert len(rows(hostile(text))) == len(rows(hostile("a")))


def test_lines_end_as_the_standard_has_it_and_every_text_is_quoted() -> None:
    lines = table_text(small()).split("\r\n")
    assert "\n" not in "".join(lines)
    assert lines[0] == '"Pattern","Marlet dress"'


def test_the_longest_table_has_every_region_and_every_size() -> None:
    found = [row for row in rows(longest()) if row and row[0].startswith("Region ")]
    assert (len(found), {len(row) for row in found}) == (12, {4 + 3 * 30})
