"""The decision sheet as a workbook, read back by openpyxl."""

from __future__ import annotations

import io
import math
import operator
import zipfile
from dataclasses import replace
from fractions import Fraction
from typing import TYPE_CHECKING

import openpyxl
import pytest
from openpyxl.utils import get_column_letter

from sizekeeper.core.notation import CENTIMETRES, INCHES, Notation
from sizekeeper.core.preference import BANDS
from sizekeeper.reports.sheet import SheetFigures, SheetPlan
from sizekeeper.reports.workbook import workbook
from sizekeeper.reports.workbook_style import fractions
from tests.reports.sheets import HOSTILE, cell_of, figure_row, hostile, longest, private, small

if TYPE_CHECKING:
    from openpyxl import Workbook
    from openpyxl.worksheet.worksheet import Worksheet

    from sizekeeper.reports.sheet import Sheet


def book(sheet: Sheet) -> Workbook:
    return openpyxl.load_workbook(io.BytesIO(workbook(sheet)))


def first(sheet: Sheet) -> Worksheet:
    return book(sheet).worksheets[0]


def texts(page: Worksheet) -> list[str]:
    """Every text on a page that is no formula."""
    return [str(c.value) for row in page.iter_rows() for c in row if c.data_type == "s"]


def formulas(found: Workbook) -> list[str]:
    return [str(c.value) for page in found.worksheets for row in page.iter_rows() for c in row if c.data_type == "f"]


def test_there_is_a_page_for_the_ease_one_for_the_work_and_one_for_the_figures() -> None:
    assert book(small()).sheetnames == ["Ease", "Work", "Figures"]


def test_figures_are_numbers_in_her_unit() -> None:
    page = first(small(INCHES))
    row = [page.cell(7, column).value for column in (2, 3)]
    assert row == pytest.approx([96 / 2.54, 5 / 2.54])


@pytest.mark.parametrize(
    ("notation", "shown"),
    [(INCHES, "# ?/8"), (Notation("in", Fraction(1, 16)), "# ??/16"), (CENTIMETRES, "0.0")],
)
def test_inches_are_shown_as_fractions_and_centimetres_with_a_decimal(notation: Notation, shown: str) -> None:
    page = first(small(notation))
    assert {page[cell].number_format for cell in ("B7", "C7", "E7")} == {shown}


def test_ease_band_and_misfit_are_formulas() -> None:
    page = first(small())
    assert [page[cell].data_type for cell in ("E7", "F7", "E8", "F8")] == ["f"] * 4


def test_the_edges_of_the_bands_stand_in_cells_that_the_formulas_read() -> None:
    page = first(small())
    row = next(c.row for c in page["A"] if c.value == "Where the bands begin") + 1
    assert [page.cell(row, column).value for column in (2, 3, 4)] == [2.5, 7.5, 13.0]
    assert all(f"${letter}${row}" in str(page["F7"].value) for letter in "BCD")


def test_edges_of_a_knit_go_with_the_body() -> None:
    sheet = small()
    knit = replace(sheet.table.rows[0], edges_share=(-0.1, 0.0, 0.08), edges_cm=(-9.6, 0.0, 7.68), asked_share=-0.03)
    page = first(replace(sheet, table=replace(sheet.table, rows=(knit,))))
    row = next(c.row for c in page["A"] if c.value == "Where the bands begin") + 1
    assert all(str(page.cell(row, column).value).endswith("*$B7") for column in (2, 3, 4))
    assert str(page["C7"].value).endswith("*$B7")


def test_every_band_has_a_fill_with_a_pattern_of_its_own() -> None:
    page = first(small())
    rules = {
        rule.formula[0]: rule.dxf.fill for span in page.conditional_formatting for rule in span.rules if rule.dxf.fill
    }
    patterns = [next(fill.patternType for test, fill in rules.items() if f'"{band}"' in test) for band in BANDS]
    assert len(set(patterns)) == 4
    assert "solid" not in patterns


def test_names_and_sizes_stay_in_sight() -> None:
    assert first(small()).freeze_panes == "B7"


def test_the_size_to_cut_is_said_in_words() -> None:
    assert [first(small()).cell(5, column).value for column in (5, 7, 9)] == ["38", "40\nto cut", "42"]


def test_it_prints_sideways_with_its_headings_on_every_page() -> None:
    page = first(longest())
    assert (page.page_setup.orientation, page.page_setup.fitToWidth, page.page_setup.fitToHeight) == ("landscape", 3, 0)
    assert (page.print_title_rows, page.print_title_cols) == ("$5:$6", "$A:$A")
    assert page.sheet_properties.pageSetUpPr is not None
    assert page.sheet_properties.pageSetUpPr.fitToPage


def test_a_spreadsheet_works_everything_out_when_it_opens_the_file() -> None:
    assert book(small()).calculation.fullCalcOnLoad


def test_only_numbers_go_into_the_cells_that_may_be_changed() -> None:
    [check] = first(small()).data_validations.dataValidation
    assert check.type == "decimal"
    assert {"B7", "E15"} <= {cell for span in check.sqref.ranges for cell in _cells(str(span))}


def _cells(span: str) -> list[str]:
    page = openpyxl.Workbook().worksheets[0]
    found = page[span]
    return [c.coordinate for row in (found if isinstance(found, tuple) else ((found,),)) for c in row]


def test_the_work_list_has_a_cell_to_tick_for_every_step_and_piece() -> None:
    page = book(small())["Work"]
    ticks = [(c.value, page.cell(c.row, 2).value or "") for c in page["A"] if c.value in ("☐", "☑")]
    assert ticks == [
        ("☐", ""),  # what to measure again
        ("☐", "Bodice front"),
        ("☐", "Skirt back"),
        ("☐", "Bodice front"),
        ("☑", "Skirt front"),
        ("☐", "Skirt back"),
    ]


@pytest.mark.parametrize("text", HOSTILE)
def test_nothing_that_people_type_becomes_a_formula(text: str) -> None:
    found = book(hostile(text))
    assert formulas(found) == formulas(book(hostile("plain")))


@pytest.mark.parametrize("text", ["=1+1", "+1", "-1", "@SUM(A1)", "#N/A", "<b>&amp;", "&C&D"])
def test_a_name_is_read_back_as_it_was_typed(text: str) -> None:
    cell = first(hostile(text))["A1"]
    assert (cell.value, cell.data_type, cell.quotePrefix) == (text, "s", True)


def test_headers_and_footers_hold_nothing_that_people_type() -> None:
    for page in book(hostile("&C&D secret")).worksheets:
        assert page.oddFooter is not None
        assert page.oddFooter.center is not None
        assert page.oddFooter.center.text == "&P / &N"
        assert page.HeaderFooter.oddHeader is None or not str(page.HeaderFooter.oddHeader.center.text or "")


def test_a_private_workbook_has_no_figure_of_the_body_and_no_formula_on_it() -> None:
    found = book(private("96.7"))
    numbers = [c.value for row in found.worksheets[0].iter_rows() for c in row if isinstance(c.value, float | int)]
    assert numbers == pytest.approx([97.7, 101.7, 105.7])
    assert not [c for row in found.worksheets[0].iter_rows() for c in row if c.data_type == "f"]
    with zipfile.ZipFile(io.BytesIO(workbook(private("96.7")))) as parts:
        assert not any(b"96.7" in parts.read(name) for name in parts.namelist())


def test_a_private_workbook_has_the_printed_figures_as_the_envelope_has_them() -> None:
    page = first(replace(private("96.52"), envelope=INCHES))
    assert (page["E6"].value, page["E7"].number_format) == ("finished, in", "# ?/8")
    assert page["E7"].value == pytest.approx(97.52 / 2.54)


def test_what_the_plan_adds_at_the_bust_is_said() -> None:
    sheet = small()
    said = texts(first(replace(sheet, table=replace(sheet.table, bust_on_top=True))))
    assert any("what the plan adds at the bust comes on top" in text for text in said)


def test_a_private_workbook_has_the_bands_in_words_and_with_their_fills() -> None:
    page = first(private())
    words = [page.cell(7, column) for column in (6, 8, 10)]
    assert [c.value for c in words] == ["tight", "close", "easy"]
    assert len({c.fill.patternType for c in words}) == 3


def test_every_figure_of_the_longest_sheet_is_there() -> None:
    page = first(longest())
    assert [page.cell(7, column).data_type for column in range(5, 5 + 60)] == ["f"] * 60
    assert page.cell(7 + 11, 1).value == "Region 12 with a long trade name"


def test_a_figure_that_is_not_known_is_an_empty_cell() -> None:
    gap = replace(cell_of(1.0), amount="–", amount_cm=None, printed="–", printed_cm=None, band=None)
    sheet = small()
    page = first(replace(sheet, table=replace(sheet.table, rows=(figure_row("Bust", (gap, gap, gap)),))))
    row = next(c.row for c in page["A"] if c.value == "Finished measurements, cm") + 1
    assert page.cell(row, 5).value is None


def test_rows_are_high_enough_for_the_longest_names() -> None:
    page = first(longest())
    assert (page.row_dimensions[7].height or 0) > 30


def test_every_column_of_a_size_is_wide_enough_for_a_length_and_a_band() -> None:
    page = first(longest())
    assert {page.column_dimensions[get_column_letter(column)].width for column in range(5, 5 + 60)} == {9.0}


def test_a_row_of_figures_is_high_enough_for_how_it_was_measured() -> None:
    how = "with help, over a thin jersey dress, the middle of 3"
    page = book(small(figures=(SheetFigures("Body", ("figure", "how"), (("Bust", ("96", how)),)),)))["Figures"]
    assert float(page.row_dimensions[3].height) >= 15 * len(how) / float(page.column_dimensions["C"].width)


def test_the_plan_does_not_repeat_the_verdict() -> None:
    work = book(small(plan=SheetPlan("Cut 40 straight", decided=False)))["Work"]
    assert sum(text.startswith("Cut 40 straight") for text in texts(work)) == 1


def format_where_true(value: float, notation: Notation, *, sign: bool = False) -> str | None:
    """The format of the first test that is true for a value, worked out as a spreadsheet does."""
    names = {
        "AND": lambda *tests: all(tests),
        "ISNUMBER": lambda _: True,
        "ABS": abs,
        "INT": math.floor,
        "ROUND": lambda x, places: math.floor(abs(x) * 10**places + 0.5) / 10**places,
        "MOD": operator.mod,
        "A1": value,
    }
    for test, shown in fractions("A1", notation, sign=sign):
        if eval(test.replace("=0)", "==0)"), {}, names):  # noqa: S307 - our own formula
            return str(shown.formatCode)
    return None


@pytest.mark.parametrize(
    ("value", "notation", "sign", "shown"),
    [
        (1.5625, INCHES, False, "# ??/16"),  # 1 9/16 lies in the middle of 1 1/2 and 1 5/8
        (-1.5625, INCHES, False, "# ??/16"),
        (1.5, INCHES, False, "# ?/2"),
        (2.0, INCHES, True, "+0;-0;0"),
        (-0.02, INCHES, True, "0;0;0"),
        (-0.02, INCHES, False, "0;0;0"),
        (1.375, INCHES, False, None),
        (1.36, INCHES, False, None),
        (-0.04, CENTIMETRES, True, "0.0;0.0;0.0"),
        (-0.06, CENTIMETRES, True, None),
    ],
)
def test_what_one_number_format_cannot_show_has_one_of_its_own(
    value: float, notation: Notation, sign: bool, shown: str | None
) -> None:
    assert format_where_true(value, notation, sign=sign) == shown
