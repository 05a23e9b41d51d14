"""What people typed, made fit for a file."""

from __future__ import annotations

import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sizekeeper.reports.typed_text import clean, one_line, plain_field


@pytest.mark.parametrize(
    ("typed", "kept"),
    [
        ("nul\x00bell\x07", "nulbell"),
        ("two\r\nlines\rmore", "two\nlines\nmore"),
        ("half \ud800 pair", "half  pair"),
        ("not \ufffe a \ufdd0 \U0001ffff character", "not  a   character"),
        ("Söhne, עברית, 38 ¾″, 🧵", "Söhne, עברית, 38 ¾″, 🧵"),
    ],
)
def test_only_what_no_file_holds_is_taken_out(typed: str, kept: str) -> None:
    assert clean(typed) == kept


@given(st.text())
def test_what_is_left_is_text_with_tabs_and_line_ends(typed: str) -> None:
    assert all(char in "\t\n" or unicodedata.category(char) not in ("Cc", "Cs") for char in clean(typed))


def test_one_line_is_one_line() -> None:
    assert one_line("  a\tb\r\nc ") == "a b c"


@pytest.mark.parametrize(
    "typed", ["=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r\n=1", " =1", "＝1", "10-12", "7/8", "1.2.26"]
)
def test_what_a_spreadsheet_would_change_gets_an_apostrophe(typed: str) -> None:
    assert plain_field(typed) == f"'{typed.strip()}"


@pytest.mark.parametrize("typed", ["Ilse", "38", "96.5", "38 1/4", "10–12", "-", "a-b", ""])
def test_what_it_would_not_change_stays(typed: str) -> None:
    assert plain_field(typed) == typed
