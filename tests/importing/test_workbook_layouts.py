"""Charts that only a workbook can lay out so: merged cells, formats of numbers, several sheets, hidden places."""

from __future__ import annotations

import io
from typing import TYPE_CHECKING

import openpyxl
import pytest

from sizekeeper.importing.read import read_bytes
from tests.importing.made_files import workbook

if TYPE_CHECKING:
    from collections.abc import Callable

    from openpyxl.worksheet.worksheet import Worksheet

    from sizekeeper.importing.draft import Draft
    from tests.importing.made_files import Rows

IN_CM: Rows = [["Size", "Bust", "Waist"], ["S", 86, 68], ["M", 92, 74], ["L", 98, 80]]
IN_INCHES: Rows = [["Size", "Bust", "Waist"], ["S", 33.875, 26.75], ["M", 36.25, 29.125], ["L", 38.625, 31.5]]


def changed(rows: Rows, change: Callable[[Worksheet], object]) -> Draft:
    """The draft of a workbook's only sheet once something was set in it."""
    book = openpyxl.load_workbook(io.BytesIO(workbook({"Chart": rows})))
    change(book.worksheets[0])
    made = io.BytesIO()
    book.save(made)
    return read_bytes(made.getvalue(), "chart.xlsx")


def codes(draft: Draft) -> set[tuple[str, str]]:
    return {(flag.code, flag.at) for flag in draft.flags}


def test_one_chart_in_two_units_on_two_sheets_is_one_table() -> None:
    draft = read_bytes(workbook({"Body cm": IN_CM, "Body inch": IN_INCHES}), "chart.xlsx")
    assert [(t.kind, t.unit, t.rows[0].cm) for t in draft.tables] == [("body", "cm", (86, 92, 98))]
    assert ("dual_unit", "A2") in codes(draft)


def test_two_sheets_whose_figures_disagree_stay_two_tables() -> None:
    other: Rows = [*IN_INCHES[:3], ["L", 39.5, 31.5]]
    draft = read_bytes(workbook({"Body cm": IN_CM, "Body inch": other}), "chart.xlsx")
    assert [(t.unit, t.rows[0].cm[2]) for t in draft.tables] == [("cm", 98), ("in", pytest.approx(100.33))]


def test_a_sheet_for_each_size_gives_its_name_to_the_size() -> None:
    sheets: dict[str, Rows] = {f"Size {n}": [["Finished (cm)", None], ["Bust", 60 + n]] for n in (36, 38)}
    draft = read_bytes(workbook(sheets), "chart.xlsx")
    assert [(t.labels, t.rows[0].cm) for t in draft.tables] == [(("36",), (96,)), (("38",), (98,))]


def _hide(sheet: Worksheet) -> None:
    sheet.row_dimensions[3].hidden = True


def test_figures_in_a_hidden_row_are_read_and_told_of() -> None:
    draft = changed([["Body (cm)", "S", "M"], ["Bust", 86, 92], ["Waist", 68, 74]], _hide)
    assert draft.tables[0].rows[1].cm == (68, 74)
    assert ("hidden_cells", "B3") in codes(draft)


def _widen(sheet: Worksheet) -> None:
    sheet.merge_cells("B2:C2")


def test_a_figure_merged_over_two_sizes_is_that_of_both() -> None:
    draft = changed([["Finished (cm)", "S", "M", "L"], ["Sleeve length", 60, None, 61]], _widen)
    assert draft.tables[0].rows[0].cm == (60, 60, 61)


def _formats(sheet: Worksheet) -> None:
    for column in "BCD":
        sheet[f"{column}2"].number_format = '# ?/?\\"'
        sheet[f"{column}3"].number_format = '0.0" cm"'


def test_the_formats_of_numbers_tell_their_units() -> None:
    rows: Rows = [["Finished", "S", "M", "L"], ["Bust", 38.5, 41.25, 44.625], ["Length", 61, 62.5, 64]]
    draft = changed(rows, _formats)
    assert [row.unit_in_file for row in draft.tables[0].rows] == ["in", "cm"]
    assert draft.tables[0].rows[0].cm[2] == pytest.approx(44.625 * 2.54)
