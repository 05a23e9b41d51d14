"""Every layout is read as written down by hand, from CSV and from a workbook alike."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from sizekeeper.importing.read import read_file
from sizekeeper.importing.reading_json import as_json
from tests.importing.layouts import (
    FOLDER,
    NAMES,
    PAGES,
    SAMPLES,
    as_workbook,
    differences,
    expected,
    layout,
    sample,
)

if TYPE_CHECKING:
    from pathlib import Path

FILES = [(name, told["file"]) for name in SAMPLES for told in sample(name)["files"]]


@pytest.mark.parametrize(("name", "file"), FILES)
def test_a_sample_is_read_exactly(name: str, file: str) -> None:
    assert differences(as_json(read_file(FOLDER / file)), sample(name)) == []


@pytest.mark.parametrize("name", NAMES)
def test_a_layout_of_ours_is_read_as_written_by_hand(name: str) -> None:
    assert differences(as_json(read_file(layout(name))), expected(name)) == []


@pytest.mark.parametrize("name", [name for name in NAMES if name not in PAGES])
def test_a_workbook_is_read_like_the_csv_of_the_same_content(name: str, tmp_path: Path) -> None:
    assert differences(as_json(read_file(as_workbook(name, tmp_path / "chart.xlsx"))), expected(name)) == []
