"""How large a file may be. Charts are small; what is larger is no chart, or is made to fill the memory (all coined)."""

from __future__ import annotations

from collections.abc import Callable

from sizekeeper.errors import ReadError

FILE_BYTES = 50_000_000
UNPACKED_BYTES = 60_000_000
ROWS = 10_000
COLUMNS = 1_000
CELLS = 80_000
SHEETS = 500
PAGES = 60
MEASURES = 2_000

Progress = Callable[[int, int], None]
"""Called with how much is done and how much there is; it may raise to stop the reading."""


def no_progress(_done: int, _total: int) -> None:
    """Tell nobody."""


def check_size(
    name: str, *, rows: int = 0, columns: int = 0, cells: int = 0, sheets: int = 0, measures: int = 0
) -> None:
    """Refuse what is larger than any chart.

    Raises:
        ReadError: a limit is passed; the sentence names the file and the limit.
    """
    for count, limit, what in (
        (rows, ROWS, "rows on a sheet"),
        (columns, COLUMNS, "columns on a sheet"),
        (cells, CELLS, "cells"),
        (sheets, SHEETS, "sheets"),
        (measures, MEASURES, "rows of measures on a sheet"),
    ):
        if count > limit:
            raise ReadError(
                f"“{name}” has more than {limit:,} {what}, which is more than any chart: copy the chart alone."
            )
