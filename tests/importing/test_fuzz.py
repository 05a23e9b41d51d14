"""Whatever a grid or file holds, reading it ends in a draft or in our own error.

SIZEKEEPER_FUZZ multiplies the number of cases for a run by hand.
"""

from __future__ import annotations

import io
import os
import zipfile
from typing import TYPE_CHECKING

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from sizekeeper.errors import ReadError
from sizekeeper.importing.draft import NO_CORRECTIONS
from sizekeeper.importing.grid import sheet_of_texts
from sizekeeper.importing.read import read_bytes, read_html, read_sheets, read_text
from sizekeeper.importing.reading_json import as_json
from sizekeeper.importing.to_chart import to_charts
from sizekeeper.importing.words import as_text
from tests.importing.layouts import FOLDER, NAMES, PAGES, grid
from tests.importing.made_files import CHART, open_document, pdf, with_part, workbook

if TYPE_CHECKING:
    from random import Random

TIMES = int(os.environ.get("SIZEKEEPER_FUZZ", "1"))
CALM = settings(
    max_examples=100 * TIMES, deadline=None, suppress_health_check=list(HealthCheck), derandomize=TIMES == 1
)

WORDS = st.sampled_from(
    [
        "Bust",
        "Waist",
        "Hip",
        "Taille",
        "Größe",
        "Size",
        "S",
        "M",
        "XL",
        "8",
        "10",
        "00",
        "12-14",
        "86",
        "37¾″",
        "82,5",
        "88-92",
        "86/34",
        "–",
        "n/a",
        "cm",
        "in",
        "inches",
        "Body",
        "Finished",
        "View",
        "A",
        "B",
        "cup",
        "½",
        "flat",
        "x2",
        "08-Oct",
        "2024-10-08",
        "5′6″",
        "*",
        "Height",
        "Length",
        "Type",
        "Unit",
        "34(86)",
        "#REF!",
        "Tall",
        "2T",
        "18M",
        "0",
        "-3",
        "1/0",
        "9/8",
    ],
)
CELLS = st.one_of(
    st.just(""), WORDS, st.text(max_size=12), st.builds("{} {}".format, WORDS, WORDS), st.integers(-5, 2000).map(str)
)
GRIDS = st.lists(st.lists(CELLS, max_size=7), min_size=1, max_size=9)
FILES = [
    path.read_bytes()
    for path in sorted(FOLDER.glob("L*"))
    if path.suffix in (".csv", ".xlsx") and path.name.startswith(("L05", "L10", "L12", "L18", "L24"))
]
BOOK = workbook({"Sheet1": CHART})
with zipfile.ZipFile(io.BytesIO(BOOK)) as _archive:
    SHEET = _archive.read("xl/worksheets/sheet1.xml")
FILES += [(FOLDER.parent / "old_workbook.xls").read_bytes(), open_document(CHART), pdf(CHART, ruled=True)]


@CALM
@given(GRIDS)
def test_any_grid_becomes_a_draft_or_is_refused(cells: list[list[str]]) -> None:
    _accepted(cells)


def _accepted(cells: list[list[str]]) -> None:
    try:
        draft = read_sheets([sheet_of_texts("Sheet1", cells)], NO_CORRECTIONS, "x")
    except ReadError:
        return
    assert as_json(draft)["tables"]
    assert as_text(draft)
    for chart in to_charts(draft, "pattern", lambda: "id"):
        assert all(len(row.cells) == len(chart.sizes) for row in chart.rows)


CHARTS = [grid(name) for name in NAMES if name not in PAGES]


@CALM
@given(
    st.sampled_from(CHARTS), st.lists(st.tuples(st.integers(0, 11), st.integers(0, 8), CELLS), max_size=6), st.randoms()
)
def test_any_chart_with_cells_changed_or_rows_shuffled_is_read_or_refused(
    chart: list[list[str]], changes: list[tuple[int, int, str]], chance: Random
) -> None:
    rows = [list(row) for row in chart]
    for r, c, text in changes:
        if r < len(rows) and c < len(rows[r]):
            rows[r][c] = text
    if len(changes) % 2:
        chance.shuffle(rows)
    _accepted(rows)


@CALM
@given(st.lists(st.tuples(st.floats(0, 1), st.integers(0, 255)), min_size=1, max_size=6))
def test_any_workbook_whose_sheet_was_damaged_is_read_or_refused(changes: list[tuple[float, int]]) -> None:
    changed = bytearray(SHEET)
    for place, byte in changes:
        changed[min(int(place * len(changed)), len(changed) - 1)] = byte
    _read(with_part(BOOK, "xl/worksheets/sheet1.xml", bytes(changed)))


@CALM
@given(st.sampled_from(FILES), st.lists(st.tuples(st.floats(0, 1), st.integers(0, 255)), min_size=1, max_size=20))
def test_any_changed_bytes_of_a_file_are_read_or_refused(data: bytes, changes: list[tuple[float, int]]) -> None:
    changed = bytearray(data)
    for place, byte in changes:
        changed[min(int(place * len(changed)), len(changed) - 1)] = byte
    _read(bytes(changed))


@CALM
@given(st.sampled_from(FILES), st.floats(0, 1), st.floats(0, 1))
def test_any_file_with_a_piece_cut_out_is_read_or_refused(data: bytes, first: float, second: float) -> None:
    start, end = sorted((int(first * len(data)), int(second * len(data))))
    _read(data[:start] + data[end:])


@CALM
@given(
    st.one_of(
        st.text(max_size=300), st.lists(WORDS, max_size=40).map(" ".join), st.lists(WORDS, max_size=40).map("\n".join)
    )
)
def test_any_text_is_read_or_refused(text: str) -> None:
    for read in (read_text, read_html):
        try:
            read(text)
        except ReadError as error:
            assert str(error)  # noqa: PT017 - both outcomes are right, and the refusal must say something


def _read(data: bytes) -> None:
    try:
        draft = read_bytes(data, "x")
    except ReadError as error:
        assert "x" in str(error)  # noqa: PT017 - both outcomes are right, and the refusal must name the file
    else:
        assert as_json(draft)["tables"]
