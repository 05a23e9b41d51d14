"""XLSX and XLSM workbooks: values as shown, dates, merged areas; macros and links are never run or followed."""

from __future__ import annotations

import datetime as dt
import io
import math
import warnings
from dataclasses import replace
from typing import TYPE_CHECKING, Any

from sizekeeper.importing.grid import GridCell, Sheet, address, filled_merged, sheet_of
from sizekeeper.importing.limits import COLUMNS, ROWS, Progress, check_size
from sizekeeper.importing.shown import exact, shown

if TYPE_CHECKING:
    from collections.abc import Mapping

    from openpyxl.workbook import Workbook
    from openpyxl.worksheet.worksheet import Worksheet

_SPREAD = 2_000_000


def sheets_of_workbook(data: bytes, name: str, *, formulas: bool, progress: Progress) -> list[Sheet]:
    """The sheets of a workbook. `formulas` tells that it has some, so that those without a value are noticed.

    Raises:
        ReadError: a sheet is larger than any chart. Whatever openpyxl raises for a broken file passes through.
    """
    book = _loaded(data, values=True)
    raw = _loaded(data, values=False) if formulas else None
    check_size(name, sheets=len(book.worksheets))
    sheets = []
    for i, sheet in enumerate(book.worksheets):
        progress(len(book.worksheets) + i, len(book.worksheets) * 2)
        sheets.append(_sheet(sheet, raw.worksheets[i] if raw else None, name))
    return sheets


def _loaded(data: bytes, *, values: bool) -> Workbook:
    import openpyxl

    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # openpyxl warns of drawings and validations, which are no figures
        return openpyxl.load_workbook(io.BytesIO(data), data_only=values, keep_links=False, keep_vba=False)


def _sheet(sheet: Worksheet, raw: Worksheet | None, name: str) -> Sheet:
    filled: dict[tuple[int, int], GridCell] = {}
    for (r, c), cell in sheet._cells.items():  # noqa: SLF001 - iter_rows would make a cell for every place up to the last
        found = _cell(cell, raw)
        if found is not None:
            filled[r - 1, c - 1] = found
    height = max((r for r, _ in filled), default=-1) + 1
    width = max((c for _, c in filled), default=-1) + 1
    check_size(name, rows=height if height > ROWS else 0, columns=width if width > COLUMNS else 0)
    check_size(name, cells=height * width if height * width > _SPREAD else 0)
    areas = [(m.min_row - 1, m.min_col - 1, m.max_row - 1, m.max_col - 1) for m in sheet.merged_cells.ranges]
    width = max([width, *(min(a[3] + 1, COLUMNS) for a in areas if (a[0], a[1]) in filled and a[3] < width + 50)])
    rows: list[list[GridCell | None]] = [[filled.get((r, c)) for c in range(width)] for r in range(height)]
    return replace(sheet_of(sheet.title, filled_merged(rows, areas)), hidden=_hidden(sheet, filled))


def _hidden(sheet: Worksheet, filled: Mapping[tuple[int, int], GridCell]) -> frozenset[str]:
    """The addresses of the filled cells in hidden rows and columns, or of all where the sheet itself is hidden."""
    if sheet.sheet_state != "visible":
        return frozenset(cell.at for cell in filled.values())
    rows = {r - 1 for r, told in sheet.row_dimensions.items() if told.hidden}
    columns = {
        c - 1
        for told in sheet.column_dimensions.values()
        if told.hidden
        for c in range(told.min or 1, (told.max or 0) + 1)
    }
    return frozenset(cell.at for (r, c), cell in filled.items() if r in rows or c in columns)


def _cell(cell: Any, raw: Worksheet | None) -> GridCell | None:  # noqa: ANN401 - openpyxl's cells come in several classes
    value = cell.value
    at = address(cell.row - 1, cell.column - 1)
    if value is None:
        formula = raw is not None and raw.cell(cell.row, cell.column).data_type == "f"
        return GridCell(at, "–", note="formula") if formula else None
    if isinstance(value, bool):
        return GridCell(at, str(value))
    if isinstance(value, (int, float)) and math.isfinite(value):
        return GridCell(at, shown(value, cell.number_format), exact(value))
    if isinstance(value, dt.date):
        return GridCell(at, _date_text(value), date=(value.year, value.month, value.day))
    if cell.data_type == "e":
        return GridCell(at, str(value), note="error")
    text = str(value).strip()
    return GridCell(at, text) if text else None


def _date_text(value: dt.date) -> str:
    return f"{value.year:04}-{value.month:02}-{value.day:02}"
