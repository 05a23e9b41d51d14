"""The sheet as text holds all that stands on the page."""

from __future__ import annotations

from dataclasses import replace

import pytest

from sizekeeper.reports.papers import paper_of
from sizekeeper.reports.sheet_text import sheet_text
from tests.reports.sheets import private, small


def test_the_text_holds_everything_in_the_order_of_the_page() -> None:
    text = sheet_text(small())
    in_order = [
        "Ilse Marten · Marlet dress · Quill & Thimble · View B", "25 November 2026", "Cut 40 straight.",
        "42 only if the bust", "Ease: finished minus body.",
        "Bust: must fit, body 96, asked for 5",
        "  38: 1, tight, printed 97", "  40 (chosen): 5, close, printed 101", "  42: 9, easy, printed 105",
        "Decided on 24 November 2026: 40 straight", "Off by 0.8 cm.", "Reason: Less to trace",
        "Advised was: Grade between sizes",
        "Trace\n[ ] Bodice front: Trace the plan", "Length\n[x] Skirt front: Cut across", "[ ] Skirt back: Cut across",
        "Pieces to trace\n[ ] Bodice front: cut 1 on the fold, 40", "Measure again\n", "toile\nNeck and shoulders",
        "Take care\nA toile first", "Her figures\nBust: measured 96, on 2026-11-20\nWaist: measured 70",
    ]  # fmt: skip
    places = [text.find(words) for words in in_order]
    assert -1 not in places, [words for words, at in zip(in_order, places, strict=True) if at < 0]
    assert places == sorted(places)


def test_the_text_of_a_private_sheet_has_no_body_and_no_ease() -> None:
    text = sheet_text(private("96"))
    assert "body" not in text.split("Finished figures.")[1]
    assert "  40 (chosen): close, printed 101" in text


def test_a_sheet_without_plan_and_work_has_no_empty_headings() -> None:
    text = sheet_text(small(plan=None, work=(), trace=(), toile=(), cautions=(), figures=(), measure_again=()))
    assert not any(heading in text for heading in ("Decided", "Pieces to trace", "toile", "Take care"))


@pytest.mark.parametrize(("country", "paper"), [("US", "us-letter"), ("ca", "us-letter"), ("NO", "a4"), ("", "a4")])
def test_the_paper_is_that_of_the_country(country: str, paper: str) -> None:
    assert paper_of(country) == paper


@pytest.mark.parametrize(
    ("count", "said"), [(1, "1 more size is not shown."), (2, "2 more sizes are not shown."), (0, None)]
)
def test_the_text_says_how_many_sizes_are_not_shown(count: int, said: str | None) -> None:
    sheet = small()
    lines = sheet_text(replace(sheet, table=replace(sheet.table, left_out=count))).splitlines()
    assert [line for line in lines if "not shown" in line] == ([said] if said else [])
