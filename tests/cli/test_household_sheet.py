"""`sizekeeper sheet --household`: everybody against a pattern, from the terminal."""

from __future__ import annotations

import io
from typing import TYPE_CHECKING

import openpyxl
import pdfplumber
import pytest

from tests.cli.test_sheet import (
    DRESS,
    GONE,
    ILSE,
    MARIT,
    VIEW_A,
    VIEW_B,
    VIEWED,
    own,
    said,
    sheet,
    store,
)
from tests.fits import BODY_CHART, FINISHED

if TYPE_CHECKING:
    from pathlib import Path


@pytest.fixture
def library(tmp_path: Path) -> Path:
    return store(tmp_path, ILSE, MARIT, GONE, *own(DRESS, BODY_CHART, FINISHED), *own(VIEWED, VIEW_A, VIEW_B))


def test_everybody_who_is_not_hidden_stands_on_the_sheet(library: Path, tmp_path: Path) -> None:
    out = tmp_path / "all.pdf"
    assert sheet(library, "--household", "--pattern", "wrap", "--out", str(out)) == 0
    with pdfplumber.open(io.BytesIO(out.read_bytes())) as file:
        text = "\n".join(page.extract_text() for page in file.pages)
    assert "Wrap dress" in text
    assert [name in text for name in ("Ilse", "Marit", "Gone")] == [True, True, False]


def test_a_household_workbook_opens(library: Path, tmp_path: Path) -> None:
    out = tmp_path / "all.xlsx"
    assert sheet(library, "--household", "--pattern", "wrap", "--out", str(out)) == 0
    assert openpyxl.load_workbook(out).sheetnames == ["People", "Ease", "Lines"]


def test_all_writes_one_for_each_pattern_and_view(library: Path, tmp_path: Path) -> None:
    assert sheet(library, "--household", "--all", "--out", str(tmp_path / "out"), "--format", "xlsx") == 0
    assert sorted(path.name for path in (tmp_path / "out").iterdir()) == [
        "Viewed - View A - household.xlsx",
        "Viewed - View B - household.xlsx",
        "Wrap dress - household.xlsx",
    ]


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("--pattern", "wrap", "--person", "Ilse", "--out", "a.pdf"), "leave --person out"),
        (("--pattern", "wrap", "--private", "--out", "a.pdf"), "leave --private out"),
        (("--pattern", "wrap", "--out", "a.csv"), "written as pdf or xlsx, not as csv"),
        (("--pattern", "wrap", "--out", "a"), "end it in .pdf or .xlsx"),
        (("--pattern", "viewed", "--out", "a.pdf"), "View A and View B; say which with --view"),
        (("--out", "a.pdf"), "Name a pattern with --pattern, or say --all"),
    ],
)
def test_what_a_household_sheet_cannot_be_is_said_and_nothing_is_written(
    library: Path,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
    words: tuple[str, ...],
    says: str,
) -> None:
    monkeypatch.chdir(tmp_path)
    before = sorted(tmp_path.glob("a*"))
    assert sheet(library, "--household", *words) == 2
    assert says in said(capsys)
    assert sorted(tmp_path.glob("a*")) == before
