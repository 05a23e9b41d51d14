"""The same small chart in every kind of file, and what only some kinds of file have."""

from __future__ import annotations

import datetime as dt
import io
from typing import TYPE_CHECKING

import openpyxl
import pytest

from sizekeeper.importing.read import read_bytes, read_file, read_html, read_text
from tests.importing.layouts import FOLDER
from tests.importing.made_files import CHART, open_document, pdf, workbook

if TYPE_CHECKING:
    from sizekeeper.importing.draft import Draft

CSV = "Body measurements (cm);8;10;12\nBust;82,5;86,5;90,5\nWaist;64;68;72\n"
PAGE = (
    "<html><body><script>1<2</script><table><tr><th>Body measurements (cm)<th>8<th>10<th>12<tr><td>Bust<td>82.5<td>86.5"
    "<td>90.5<tr><td>Waist<td>64<td>68<td>72</table></body></html>"
)
KINDS = {
    "csv with semicolons": CSV.encode(),
    "csv with a mark of its encoding": CSV.encode("utf-8-sig"),
    "utf-16": CSV.encode("utf-16"),
    "utf-16 without a mark": CSV.encode("utf-16-le"),
    "tab-separated": CSV.replace(";", "\t").encode(),
    "pipes": CSV.replace(";", "|").encode(),
    "separator told in the first line": ("sep=;\n" + CSV).encode(),
    "xlsx": workbook({"Sheet1": CHART}),
    "ods": open_document(CHART),
    "html": PAGE.encode(),
    "ruled pdf": pdf(CHART, ruled=True),
    "pdf without lines": pdf(CHART, ruled=False),
}


def figures(draft: Draft) -> dict[str, list[float | None]]:
    return {row.measure: [None if cm is None else round(cm, 4) for cm in row.cm] for row in draft.tables[0].rows}


@pytest.mark.parametrize("kind", KINDS)
def test_a_chart_reads_the_same_whatever_the_kind_of_file(kind: str) -> None:
    draft = read_bytes(KINDS[kind], "chart with a misleading name.png")
    assert draft.tables[0].labels == ("8", "10", "12")
    assert (draft.tables[0].kind, draft.tables[0].unit) == ("body", "cm")
    assert figures(draft) == {"bust": [82.5, 86.5, 90.5], "waist": [64, 68, 72]}


def test_a_western_text_without_a_mark_keeps_its_umlauts() -> None:
    draft = read_bytes("Größe;36;38\nHüftumfang (cm);90;94\n".encode("cp1252"), "x.csv")
    assert draft.tables[0].rows[0].label == "Hüftumfang (cm)"


def test_an_old_workbook_gives_dates_merged_cells_and_ranges() -> None:
    draft = read_file(FOLDER.parent / "old_workbook.xls")
    assert draft.tables[0].rows[2].cm_low == (90.0, 94.0, 98.0)
    assert draft.tables[1].labels == ("8-10", "10-12")
    assert draft.tables[1].rows[0].same_for_all_sizes


def test_a_fraction_shown_by_a_number_format_is_printed_and_exact() -> None:
    book = openpyxl.Workbook()
    sheet = book.worksheets[0]
    for line in [["Body (in)", "00", 0, 2], ["Bust", 31.625, 32.25, 33]]:
        sheet.append(line)
    for cell in sheet[2][1:]:
        cell.number_format = "# ?/?"
    sheet["C1"].number_format = "0"
    row = read_bytes(_saved(book), "x.xlsx").tables[0].rows[0]
    assert [cell.text for cell in row.cells] == ["31 5/8", "32 1/4", "33"]
    assert row.cm[0] == pytest.approx(31.625 * 2.54)


def test_sizes_shown_with_leading_noughts_stay_apart_from_nought() -> None:
    book = openpyxl.Workbook()
    sheet = book.worksheets[0]
    for row in [["Size", 0, 0, 2], ["Bust (in)", 31, 32, 33]]:
        sheet.append(row)
    sheet["B1"].number_format = "00"
    assert read_bytes(_saved(book), "x.xlsx").tables[0].labels == ("00", "0", "2")


def test_a_unit_in_the_number_format_is_the_unit_of_the_figure() -> None:
    book = openpyxl.Workbook()
    sheet = book.worksheets[0]
    for line in (["Size", "S", "M"], ["Bust", 86, 92]):
        sheet.append(line)
    for cell in sheet[2][1:]:
        cell.number_format = '0" cm"'
    draft = read_bytes(_saved(book), "x.xlsx")
    assert draft.tables[0].unit == "cm"
    assert "unit_inferred" not in {flag.code for flag in draft.flags}


def test_labels_that_a_spreadsheet_made_dates_are_recovered_and_flagged() -> None:
    rows: list[list[object]] = [
        ["Body (cm)", dt.date(2024, 10, 8), dt.date(2024, 12, 10)],
        ["Bust", 86, 92],
        ["Hip", 94, 100],
    ]
    draft = read_bytes(workbook({"Sheet1": rows}), "x.xlsx")
    assert draft.tables[0].labels == ("8-10", "10-12")
    assert [flag.at for flag in draft.flags if flag.code == "label_looks_like_date"] == ["B1", "C1"]


def test_a_formula_without_a_value_is_missing_and_says_so() -> None:
    rows: list[list[object]] = [["Body (cm)", "S", "M", "L"], ["Bust", 86, "=B2+6", 98], ["Hip", 94, 100, 106]]
    draft = read_bytes(workbook({"Sheet1": rows}), "x.xlsx")
    assert draft.tables[0].rows[0].cm == (86.0, None, 98.0)
    assert [(f.at, f.note) for f in draft.flags if f.code == "missing_value"] == [
        ("C2", "Bust: a formula without a computed value")
    ]


def test_cells_merged_over_two_sizes_give_both_the_same_figure() -> None:
    book = openpyxl.Workbook()
    sheet = book.worksheets[0]
    for line in (["Body (cm)", "S", "M", "L"], ["Bust", 86, 92, 98], ["Neck", 36, None, 38]):
        sheet.append(line)
    sheet.merge_cells("B3:C3")
    draft = read_bytes(_saved(book), "x.xlsx")
    assert draft.tables[0].rows[1].cm == (36.0, 36.0, 38.0)
    assert [cell.at for cell in draft.tables[0].rows[1].cells] == ["B3", "B3", "D3"]


def test_tables_on_several_sheets_are_read_and_a_read_me_sheet_is_left_out() -> None:
    rows: list[list[object]] = [["Finished (cm)", 8, 10, 12], ["Bust", 92.5, 96.5, 100.5], ["Waist", 70, 74, 78]]
    draft = read_bytes(workbook({"Read me": [["Cut on the fold, 1.5 cm seams."]], "A": CHART, "B": rows}), "x.xlsx")
    assert [(table.sheet, table.kind) for table in draft.tables] == [("A", "body"), ("B", "finished")]
    assert "multi_sheet" in {flag.code for flag in draft.flags}


def test_spanned_headings_and_raised_figures_of_a_page_are_understood() -> None:
    page = (
        "<h2>Body measurements</h2><table><tr><th rowspan=2>Size<th colspan=2>Bust<th>Waist<tr><th>cm<th>in<th>cm"
        "<tr><td>8<td>83<td>32 <sup>5</sup>&frasl;<sub>8</sub><td>64<tr><td>10"
        "<td>87<sup>1</sup><td>34¼&Prime;<td>68</table>"
    )
    draft = read_html(page)
    assert figures(draft) == {"bust": [83, 87], "waist": [64, 68]}
    assert {"dual_unit", "footnote_on_value"} <= {flag.code for flag in draft.flags}


@pytest.mark.parametrize("ruled", [True, False])
def test_a_title_above_a_table_of_a_pdf_tells_its_kind_and_unit(ruled: bool) -> None:
    rows: list[list[object]] = [["Size", 8, 10, 12], ["Bust", 36, 37, 38.5], ["Hip", 38, 39, 40.5]]
    draft = read_bytes(pdf(rows, ruled=ruled, title="Finished garment measurements - inches"), "x.pdf")
    assert (draft.tables[0].kind, draft.tables[0].unit) == ("finished", "in")
    assert not {"unit_inferred", "kind_inferred"} & {flag.code for flag in draft.flags}


def test_pasted_cells_one_to_a_line_are_put_together() -> None:
    draft = read_text("Size\n8\n10\n12\nBust\n83\n87\n91\nWaist\n64\n68\n72")
    assert figures(draft) == {"bust": [83, 87, 91], "waist": [64, 68, 72]}


def test_a_list_in_running_text_is_read() -> None:
    draft = read_text("Sizes: XS (S, M, L)\nFinished bust: 81 (86, 91, 97) cm\nFinished length: 55.5 (57, 58, 59.5) cm")
    assert draft.tables[0].labels == ("XS", "S", "M", "L")
    assert figures(draft) == {"bust": [81, 86, 91, 97], "garment_length": [55.5, 57, 58, 59.5]}


def _saved(book: openpyxl.Workbook) -> bytes:
    made = io.BytesIO()
    book.save(made)
    return made.getvalue()
