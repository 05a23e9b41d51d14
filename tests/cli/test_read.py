"""`sizekeeper read FILE` prints what was understood, in words or as JSON."""

from __future__ import annotations

import argparse
import json
from typing import TYPE_CHECKING

import pytest

from sizekeeper.cli import read
from sizekeeper.errors import ReadError

if TYPE_CHECKING:
    from pathlib import Path


def run(*words: str) -> int:
    parser = argparse.ArgumentParser()
    read.add_parser(parser.add_subparsers())
    args = parser.parse_args(["read", *words])
    return read.run(args)


@pytest.fixture
def chart(tmp_path: Path) -> str:
    path = tmp_path / "chart.csv"
    path.write_text("Size,S,M\nBust,34 1/2,–\nHip,36 1/2,38 1/2\n", encoding="utf-8")
    return str(path)


def test_the_words_show_the_figures_as_printed_and_ask_what_was_inferred(
    chart: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(chart) == 0
    told = capsys.readouterr().out
    assert "34 1/2" in told
    assert "Which unit?" in told
    assert "C2: Bust: a dash." in told


def test_json_holds_tables_and_flags_with_figures_in_cm(chart: str, capsys: pytest.CaptureFixture[str]) -> None:
    run(chart, "--json")
    told = json.loads(capsys.readouterr().out)
    assert set(told) == {"tables", "flags"}
    assert told["tables"][0]["rows"][0]["cm"] == [pytest.approx(34.5 * 2.54), None]
    assert told["tables"][0]["rows"][0]["at"] == ["B2", "C2"]
    assert {"code": "missing_value", "at": "C2", "note": "Bust: a dash"} in told["flags"]


def test_a_table_has_exactly_the_keys_of_the_contract(chart: str, capsys: pytest.CaptureFixture[str]) -> None:
    run(chart, "--json")
    table = json.loads(capsys.readouterr().out)["tables"][0]
    assert set(table) == {"kind", "sheet", "name", "unit", "orientation", "sizes", "rows"}
    assert set(table["rows"][0]) == {
        "measure", "label", "dimension", "unit_in_file", "written_as", "view", "variant", "same_for_all_sizes",
        "cm", "cm_low", "cm_high", "at",
    }  # fmt: skip


def test_a_file_that_is_no_chart_is_an_error_that_names_it(tmp_path: Path) -> None:
    path = tmp_path / "letter.txt"
    path.write_text("Dear reader")
    with pytest.raises(ReadError, match=r"letter\.txt"):
        run(str(path))
