"""The guess at which size of text a sheet fits one page."""

from __future__ import annotations

from dataclasses import replace

import pytest

from sizekeeper.reports.pdf import pdf
from sizekeeper.reports.pdf_data import sheet_data
from sizekeeper.reports.pdf_height import SMALLEST, fitting_scale, height
from sizekeeper.reports.sheet import SheetFigures
from tests.reports import sheets
from tests.reports.pages import pages


def with_figures(rows: int) -> dict[str, object]:
    """A small sheet with so many rows of figures."""
    table = SheetFigures("Figures", ("a",), tuple((f"Row {i}", ("96",)) for i in range(rows)))
    return sheet_data(replace(sheets.small(), figures=(table,)), "a4")


def test_a_short_sheet_keeps_its_full_size() -> None:
    assert fitting_scale(sheet_data(sheets.small(), "a4"), "a4") == 1.0


def test_the_longer_the_sheet_the_smaller_its_text_until_it_is_too_small() -> None:
    scales = [fitting_scale(with_figures(rows), "a4") for rows in range(1, 90)]
    known = [scale for scale in scales if scale is not None]
    assert known == sorted(known, reverse=True)
    assert min(known) == SMALLEST
    assert scales[-1] is None


def test_a_longer_paper_takes_larger_text() -> None:
    data = with_figures(33)
    a4, letter = fitting_scale(data, "a4"), fitting_scale(data, "us-letter")
    assert a4 is not None
    assert letter is not None
    assert letter < a4


@pytest.mark.parametrize("rows", [10, 33, 40])
def test_a_sheet_that_is_guessed_to_fit_stands_on_one_page(rows: int) -> None:
    table = SheetFigures("Figures", ("a",), tuple((f"Row {i}", ("96",)) for i in range(rows)))
    sheet = replace(sheets.small(), figures=(table,))
    assert fitting_scale(sheet_data(sheet, "a4"), "a4") is not None
    assert len(pages(pdf(sheet, "a4"))) == 1


def test_each_part_makes_it_taller() -> None:
    sheet = sheets.small()
    tall = height(sheet_data(sheet, "a4"), 180)
    for part in ("doubts", "work", "toile", "figures", "trace", "cautions"):
        assert height(sheet_data(replace(sheet, **{part: ()}), "a4"), 180) <= tall  # type: ignore[arg-type]  # empty
