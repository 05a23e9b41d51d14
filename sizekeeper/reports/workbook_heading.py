"""The heading of a workbook's first page: whose it is, the verdict, and the sizes across, which stay in sight."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal

from openpyxl.worksheet.properties import PageSetupProperties  # noqa: TID253 - loaded when a workbook is written

from sizekeeper.core.days import day_words
from sizekeeper.reports import workbook_style as style
from sizekeeper.reports.workbook_places import FIRST_SIZE, HEADING, TOP

if TYPE_CHECKING:
    from openpyxl.worksheet.worksheet import Worksheet

    from sizekeeper.core.notation import Notation
    from sizekeeper.reports.sheet import Sheet

_SIZES_A_PAGE = 11
"""How many sizes go side by side on a printed page."""
_LETTER, _A4 = 1, 9
"""The papers' numbers in the file format (ECMA-376, ST_PaperSize as openpyxl names them)."""


def whose(sheet: Sheet) -> str:
    """For whom, of which publisher and view, and when."""
    parts = (f"for {sheet.person}", sheet.publisher, sheet.view, day_words(sheet.on))
    return " · ".join(part for part in parts if part)


def frozen_heading(page: Worksheet, sheet: Sheet, *, before: tuple[str, str, str, str]) -> None:
    """Write the rows above the table and keep them, and the names of the regions, in sight.

    Args:
        page: the empty page.
        sheet: what is written.
        before: the words over the columns before the sizes.
    """
    columns = min(FIRST_SIZE + 2 * len(sheet.table.columns) - 1, FIRST_SIZE + 9)
    letters = 54 + 9 * (columns - 4)
    style.put_wide(page, 1, sheet.pattern, columns, font=style.TITLE, letters=letters * 11 // 18)
    style.put_wide(page, 2, whose(sheet), columns, font=style.SMALL, letters=letters)
    style.put_wide(page, 3, sheet.verdict, columns, font=style.BOLD, letters=letters)
    style.put_wide(page, 4, " ".join(sheet.doubts), columns, letters=letters)
    for column, text in enumerate(before, start=1):
        style.put_text(style.at(page, HEADING, column), text, style.BOLD, style.LEFT if column == 1 else style.CENTRE)
    _sizes(page, sheet)
    page.freeze_panes = style.at(page, TOP, 2).coordinate


def _sizes(page: Worksheet, sheet: Sheet) -> None:
    lines = 1
    for size, column in enumerate(sheet.table.columns):
        first = FIRST_SIZE + 2 * size
        page.merge_cells(start_row=HEADING, end_row=HEADING, start_column=first, end_column=first + 1)
        text = f"{column.words}\nto cut" if column.chosen else column.words
        cell = style.at(page, HEADING, first)
        style.put_text(cell, text, style.ON_ACCENT if column.chosen else style.BOLD, style.CENTRE)
        if column.chosen:
            cell.fill = style.FILLED
        lines = max(lines, style.lines_of(text, 15))
    style.set_height(page, HEADING, lines)


def set_up_print(page: Worksheet, sheet: Sheet) -> None:
    """Sideways, headings on every page."""
    set_up(page, sheet.notation, "landscape", -(-len(sheet.table.columns) // _SIZES_A_PAGE) or 1)
    page.print_title_rows = f"{HEADING}:{TOP - 1}"
    page.print_title_cols = "A:A"


def set_up(page: Worksheet, notation: Notation, way: Literal["portrait", "landscape"], wide: int = 1) -> None:
    """The paper that goes with a unit, and as many pages side by side; page numbers below."""
    page.page_setup.orientation = way
    page.page_setup.paperSize = _LETTER if notation.unit == "in" else _A4
    page.page_setup.fitToWidth = wide
    page.page_setup.fitToHeight = 0
    page.sheet_properties.pageSetUpPr = PageSetupProperties(fitToPage=True)
    if page.oddFooter is not None and page.oddFooter.center is not None:
        page.oddFooter.center.text = "&P / &N"
    page.page_margins.left = page.page_margins.right = 0.4
