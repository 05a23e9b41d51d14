"""XLS, XLSB and ODS workbooks, read by calamine."""

from __future__ import annotations

import datetime as dt
import io
import math
from typing import TYPE_CHECKING

from sizekeeper.errors import ReadError
from sizekeeper.importing.grid import GridCell, Sheet, address, filled_merged, sheet_of
from sizekeeper.importing.limits import Progress, check_size
from sizekeeper.importing.shown import exact, general

if TYPE_CHECKING:
    from fractions import Fraction


def sheets_of_old_workbook(data: bytes, name: str, progress: Progress) -> list[Sheet]:
    """The sheets of a workbook in one of the other formats.

    Raises:
        ReadError: it is protected, broken or larger than any chart.
    """
    import python_calamine as calamine

    try:
        book = calamine.CalamineWorkbook.from_filelike(io.BytesIO(data))
        check_size(name, sheets=len(book.sheet_names))
        sheets = []
        for i, title in enumerate(book.sheet_names):
            progress(i, len(book.sheet_names))
            sheets.append(_sheet(book.get_sheet_by_index(i), title, name))
    except calamine.PasswordError as error:
        raise ReadError(f"“{name}” is protected by a password: save it without one.") from error
    except calamine.CalamineError as error:
        raise ReadError(f"“{name}” is damaged and cannot be read as a spreadsheet.") from error
    return sheets


def _sheet(sheet: object, title: str, name: str) -> Sheet:
    from python_calamine import CalamineSheet

    assert isinstance(sheet, CalamineSheet)  # noqa: S101 - imported late, so named late
    check_size(
        name, rows=sheet.total_height, columns=sheet.total_width, cells=sheet.total_height * sheet.total_width // 8
    )
    values = sheet.to_python(skip_empty_area=False)
    rows = [[_cell(r, c, value) for c, value in enumerate(row)] for r, row in enumerate(values)]
    areas = [(top, left, bottom, right) for (top, left), (bottom, right) in sheet.merged_cell_ranges or []]
    return sheet_of(title, filled_merged(rows, areas))


def _cell(row: int, column: int, value: object) -> GridCell | None:
    at = address(row, column)
    if isinstance(value, bool):
        return GridCell(at, str(value))
    if isinstance(value, (int, float)) and math.isfinite(value):
        number: Fraction = exact(value)
        return GridCell(at, general(int(value) if number.denominator == 1 else value), number)
    if isinstance(value, dt.date):
        return GridCell(at, value.isoformat()[:10], date=(value.year, value.month, value.day))
    text = str(value).strip() if value is not None else ""
    return (
        GridCell(at, text, note="error" if text.startswith("#") and text.endswith(("!", "?", "/A")) else "")
        if text
        else None
    )
