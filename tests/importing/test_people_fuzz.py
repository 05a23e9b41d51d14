"""Whatever a table holds, nothing but a sentence of the user's world comes of it."""

from __future__ import annotations

import contextlib
import datetime as dt

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from sizekeeper.core.person import Person
from sizekeeper.errors import ReadError, SizekeeperError
from sizekeeper.importing.grid import sheet_of_texts
from sizekeeper.importing.people_draft import NOTHING_SAID, PeopleAnswers
from sizekeeper.importing.people_open import open_people_bytes, open_people_pasted
from sizekeeper.importing.people_read import read_people
from sizekeeper.importing.people_saving import plan_people
from tests.importing.people import TODAY, pasted

WORDS = [
    "Name", "Vorname", "Bust (cm)", "Taille", "½ hip", "Date", "born", "Unit", "Measured by", "Bust: note", "Waist",
    "in", "cm", "92", "38 1/2", "36½ in", "1/2/2026", "2026-01-02", "31/12/2026", "-", "n/a", "Ada", "ada", "=1+1",
    "x", "yes", "37 3/4″ / 96 cm", "1e9", "0", "-5", "a" * 400, "5′6″", "﷽", "\u202eAda", "#REF!", "½", "٣٤",
]  # fmt: skip
CELLS = st.one_of(st.sampled_from(WORDS), st.just(""), st.text(max_size=6))
GRIDS = st.lists(st.lists(CELLS, min_size=1, max_size=6), min_size=1, max_size=6)
KNOWN = [Person("a", "Ada", born=dt.date(2001, 2, 3)), Person("b", "ada"), Person("c", "x", hidden=True)]


@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(GRIDS, st.booleans(), st.none() | st.booleans(), st.none() | st.integers(0, 5))
def test_any_grid_is_read_asked_about_and_planned(
    rows: list[list[str]], known: bool, turned: bool | None, head: int | None
) -> None:
    sheets = (sheet_of_texts("One", rows),)
    answers = PeopleAnswers(turned=turned, head=head)
    draft = read_people("table", sheets, answers, KNOWN if known else [], TODAY)
    for ask in draft.asks:
        for answer in ask.answers:
            read_people("table", sheets, answer.change(answers), KNOWN, TODAY)  # type: ignore[arg-type]  # as it came
    plan_people(draft, KNOWN, lambda: "new")


@settings(max_examples=150, deadline=None)
@given(st.text(max_size=200))
def test_any_pasted_text_is_read_or_refused_in_words(text: str) -> None:
    with contextlib.suppress(SizekeeperError):
        pasted(text, html=text)


@settings(max_examples=150, deadline=None)
@given(st.binary(max_size=200))
def test_any_bytes_are_read_or_refused_in_words(data: bytes) -> None:
    with contextlib.suppress(SizekeeperError):
        sheets = open_people_bytes(b"Name;Bust (cm)\nAda;92\n" + data, "class.csv")
        read_people("class.csv", sheets, NOTHING_SAID, KNOWN, TODAY)


@pytest.mark.parametrize("text", ["", "  \n \t "])
def test_an_empty_clipboard_is_said_to_be_empty(text: str) -> None:
    with pytest.raises(ReadError, match="no table on the clipboard"):
        open_people_pasted("", text)


def test_a_table_larger_than_any_is_refused_by_name() -> None:
    with pytest.raises(ReadError, match=r"“class\.csv” has more than 10,000 rows"):
        open_people_bytes(b"Name;Bust\n" + b"Ada;92\n" * 20_000, "class.csv")


def test_a_picture_is_refused_by_name() -> None:
    with pytest.raises(ReadError, match=r"“class\.csv” is a picture, not a table"):
        open_people_bytes(b"\x89PNG\r\n", "class.csv")
