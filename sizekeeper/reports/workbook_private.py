"""The first page of a private workbook: what is cut, and nothing that a body measurement could be worked out from.

There is no formula on it, no edge of a band, no ease and no ease asked for.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from sizekeeper.reports import workbook_style as style
from sizekeeper.reports.workbook_heading import frozen_heading
from sizekeeper.reports.workbook_places import FIRST_SIZE, TOP

if TYPE_CHECKING:
    from openpyxl.worksheet.worksheet import Worksheet

    from sizekeeper.reports.sheet import Sheet, SheetCell


def private_page(page: Worksheet, sheet: Sheet) -> None:
    """Write the page."""
    frozen_heading(page, sheet, before=("Region", "", "", "Counts as"))
    for size in range(len(sheet.table.columns)):
        for half, word in enumerate((f"finished, {sheet.envelope.unit}", "band")):
            style.put_text(style.at(page, TOP - 1, FIRST_SIZE + 2 * size + half), word, style.SMALL, style.CENTRE)
    for index, row in enumerate(sheet.table.rows):
        style.put_text(style.at(page, TOP + index, 1), row.name, style.BOLD)
        style.put_text(style.at(page, TOP + index, 4), row.role, style.SMALL, style.CENTRE)
        style.set_height(page, TOP + index, max(style.lines_of(row.name, 17), style.lines_of(row.role, 15), 1))
        for size, cell in enumerate(row.cells):
            _cell(page, sheet, TOP + index, FIRST_SIZE + 2 * size, cell)
    for column in "BC":
        page.column_dimensions[column].hidden = True
    note = TOP + len(sheet.table.rows) + 1
    style.put_wide(page, note, sheet.table.what, FIRST_SIZE + 1, font=style.SMALL, letters=50)


def _cell(page: Worksheet, sheet: Sheet, row: int, column: int, cell: SheetCell) -> None:
    figure, word = style.at(page, row, column), style.at(page, row, column + 1)
    if cell.printed_cm is not None:
        figure.value = style.in_unit(cell.printed_cm, sheet.envelope)
        figure.number_format = style.length_format(sheet.envelope)
        figure.font, figure.alignment = style.PLAIN, style.CENTRE
        style.cancel(page, figure.coordinate, sheet.envelope)
    said = ", ".join(part for part in (cell.band, cell.short) if part)
    if said:
        style.put_text(word, said, None, style.CENTRE)
    for half, one in enumerate((figure, word)):
        if cell.band is not None:
            one.fill, one.font = style.band_fill(cell.band), style.band_font(cell.band)
        if cell.chosen:
            one.border = style.chosen_border(first=half == 0, last=half == 1)
