"""Reading chart files: a plain 20x12 chart against pandas merely loading it, and workbooks of more and more sheets.

Run by hand: `.venv/bin/python -m tests.benchmarks.reading`. Aims: at most 3 times pandas; time linear in the sheets.
"""

from __future__ import annotations

import tempfile
import time
from pathlib import Path
from typing import TYPE_CHECKING

import openpyxl
import pandas as pd

from sizekeeper.importing.read import read_file
from tests.benchmarks.timing import median_ms

if TYPE_CHECKING:
    from openpyxl.worksheet.worksheet import Worksheet

SIZES = 12
MEASURES = (
    "Bust", "Waist", "Hip", "High hip", "Thigh", "Upper arm", "Across back", "Calf", "Wrist", "Neck", "High bust",
    "Underbust", "Knee", "Ankle", "Elbow", "Head", "Back waist length", "Sleeve length", "Inseam",
)  # fmt: skip


def fill(sheet: Worksheet) -> None:
    """A body chart of 12 sizes and 19 measures under its heading row."""
    sheet.append(["Body measurements (cm)", *(str(34 + 2 * size) for size in range(SIZES))])
    for row, measure in enumerate(MEASURES):
        sheet.append([measure, *(30 + 4 * row + 2.5 * size for size in range(SIZES))])


def main() -> None:
    """Print the times and ratios."""
    with tempfile.TemporaryDirectory() as folder:
        plain = Path(folder) / "plain.xlsx"
        book = openpyxl.Workbook()
        fill(book.worksheets[0])
        book.save(plain)
        theirs = median_ms(lambda: pd.read_excel(plain, engine="openpyxl"))
        ours = median_ms(lambda: read_file(plain))
        print(
            f"20x12 chart: pandas {theirs:.1f} ms, Sizekeeper {ours:.1f} ms, ratio {ours / theirs:.2f} (aim: at most 3)"
        )
        for sheets in (25, 50, 100, 200):
            many = Path(folder) / f"{sheets}.xlsx"
            book = openpyxl.Workbook()
            fill(book.worksheets[0])
            for _ in range(sheets - 1):
                fill(book.create_sheet())
            book.save(many)
            start = time.perf_counter()
            draft = read_file(many)
            took = (time.perf_counter() - start) * 1000
            assert len(draft.tables) == sheets
            print(f"{sheets:4} sheets: {took:6.0f} ms, {took / sheets:.1f} ms a sheet")


if __name__ == "__main__":
    main()
