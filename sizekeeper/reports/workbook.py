"""The decision sheet as a workbook: figures as numbers, and everything that follows from them as formulas.

She can change a measurement there and see which size that would be. The first page has the ease table, the second the
work list with cells to tick, the third the figures it rests on. A private workbook holds no formula and no body figure.
"""

from __future__ import annotations

import datetime as dt
import io
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from openpyxl import Workbook

    from sizekeeper.reports.sheet import Sheet


def workbook(sheet: Sheet) -> bytes:
    """The workbook as the bytes of an XLSX file."""
    from openpyxl import Workbook

    book = Workbook()
    _ease_page(book, sheet)
    _more_pages(book, sheet)
    book.properties.creator = "Sizekeeper"
    book.properties.created = dt.datetime.combine(sheet.on, dt.time())
    book.calculation.fullCalcOnLoad = True
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


def _ease_page(book: Workbook, sheet: Sheet) -> None:
    from sizekeeper.reports.workbook_ease import EasePage, set_widths  # noqa: PLC0415 - it loads openpyxl
    from sizekeeper.reports.workbook_heading import set_up_print  # noqa: PLC0415 - the same
    from sizekeeper.reports.workbook_private import private_page  # noqa: PLC0415 - the same

    page = book.worksheets[0]
    page.title = "Sizes" if sheet.private else "Ease"
    set_widths(page, len(sheet.table.columns))
    if sheet.private:
        private_page(page, sheet)
    else:
        EasePage(page, sheet).write()
    set_up_print(page, sheet)


def _more_pages(book: Workbook, sheet: Sheet) -> None:
    from sizekeeper.reports.workbook_heading import set_up  # noqa: PLC0415 - it loads openpyxl
    from sizekeeper.reports.workbook_work import WorkPage, figures_page  # noqa: PLC0415 - the same

    work = book.create_sheet("Work")
    WorkPage(work).write(sheet)
    set_up(work, sheet.notation, "portrait")
    if sheet.figures:
        figures = book.create_sheet("Figures")
        figures_page(figures, sheet.figures)
        set_up(figures, sheet.notation, "landscape")
