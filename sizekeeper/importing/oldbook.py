"""XLS, XLSB and ODS workbooks, read by calamine in a process of its own."""

from __future__ import annotations

import datetime as dt
import io
import math
from typing import TYPE_CHECKING, Any

from sizekeeper.importing.apart import DAMAGED, LARGE, PROTECTED, RefusedError, read_apart
from sizekeeper.importing.grid import GridCell, Sheet, address, filled_merged, sheet_of
from sizekeeper.importing.limits import check_size
from sizekeeper.importing.shown import exact, general

if TYPE_CHECKING:
    from sizekeeper.importing.limits import Progress

_PLACES = 1_000_000


def sheets_of_old_workbook(data: bytes, name: str, progress: Progress) -> list[Sheet]:
    """The sheets of a workbook in one of the other formats.

    Raises:
        ReadError: it is protected, broken, larger than any chart, or takes too long.
    """
    told = read_apart("workbook", data, name, progress)
    check_size(name, sheets=len(told))
    return [_sheet(title, areas, rows, name) for title, areas, rows in told]


def sheets(data: bytes) -> list[list[Any]]:
    """Name, merged areas and rows of each sheet, as JSON takes them; a date is `{"date": "2026-10-08"}`.

    Raises:
        RefusedError: the workbook is protected, broken or too large.
    """
    import python_calamine as calamine

    made: list[list[Any]] = []
    try:
        book = calamine.CalamineWorkbook.from_filelike(io.BytesIO(data))
        for i, name in enumerate(book.sheet_names):
            sheet = book.get_sheet_by_index(i)
            if sheet.total_height * sheet.total_width > _PLACES:
                raise RefusedError(LARGE)
            rows = [[_plain(value) for value in row] for row in sheet.to_python(skip_empty_area=False)]
            made.append([name, sheet.merged_cell_ranges or [], rows])
    except calamine.PasswordError as error:
        raise RefusedError(PROTECTED) from error
    except calamine.CalamineError as error:
        raise RefusedError(DAMAGED) from error
    return made


def _plain(value: Any) -> Any:  # noqa: ANN401 - what calamine gives, as JSON takes it
    if isinstance(value, dt.date):
        return {"date": value.isoformat()[:10]}
    if isinstance(value, float) and not math.isfinite(value):
        return ""
    return value if isinstance(value, (bool, int, float, str)) or value is None else str(value)


def _sheet(title: str, areas: list[Any], values: list[list[Any]], name: str) -> Sheet:
    check_size(name, rows=len(values), columns=max(map(len, values), default=0))
    rows = [[_cell(r, c, value) for c, value in enumerate(row)] for r, row in enumerate(values)]
    check_size(name, cells=sum(cell is not None for row in rows for cell in row))
    return sheet_of(title, filled_merged(rows, [(top, left, bottom, right) for (top, left), (bottom, right) in areas]))


def _cell(row: int, column: int, value: object) -> GridCell | None:
    at = address(row, column)
    if isinstance(value, bool):
        return GridCell(at, str(value))
    if isinstance(value, (int, float)):
        return GridCell(at, general(value), exact(value))
    if isinstance(value, dict):
        date = str(value["date"])
        year, month, day = (int(part) for part in date.split("-"))
        return GridCell(at, date, date=(year, month, day))
    text = str(value).strip() if value is not None else ""
    error = text.startswith("#") and text.endswith(("!", "?", "/A"))
    return GridCell(at, text, note="error" if error else "") if text else None
