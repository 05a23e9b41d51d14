"""A sheet in each of its formats: the right bytes for the right suffix."""

from __future__ import annotations

import datetime as dt
import io
from dataclasses import replace
from pathlib import Path

import openpyxl
import pytest
from pypdf import PdfReader

from sizekeeper import assets
from sizekeeper.core.found import Found, find
from sizekeeper.core.make import Make
from sizekeeper.core.pattern import Pattern
from sizekeeper.core.planned import plan_ahead
from sizekeeper.errors import ReportError
from sizekeeper.reports.export import FORMATS, Format, export, format_of, written
from tests.build import person
from tests.fits import BODY_CHART, FINISHED
from tests.reports.sheets import small

DAY = dt.date(2026, 11, 25)
ILSE = person("in", bust="38", waist="28", hip="43")


def comparison(*, measured: bool = True) -> Found:
    who = ILSE if measured else replace(ILSE, readings=())
    charts = (BODY_CHART, FINISHED)
    measures, defaults = assets.measures(), assets.ease_defaults()
    return find(who, Pattern("pattern", "Wrap dress"), *charts, measures=measures, defaults=defaults)


def exported(form: Format, *, private: bool = False) -> bytes:
    found = comparison()
    planned = plan_ahead(found, Make("make", found.person.id, found.pattern.id))
    return export(found, planned, form, today=DAY, names=assets.measures().name, private=private)


@pytest.mark.parametrize(
    ("file", "form"),
    [("a.pdf", "pdf"), ("A.PDF", "pdf"), ("a.htm", "html"), ("a.b.xlsx", "xlsx"), ("a.csv", "csv"), ("a.doc", None)],
)
def test_a_suffix_names_a_format(file: str, form: str | None) -> None:
    assert format_of(Path(file)) == form


def test_a_pdf_is_one_and_names_both() -> None:
    text = PdfReader(io.BytesIO(exported("pdf"))).pages[0].extract_text()
    assert "Ilse" in text
    assert "Wrap dress" in text


def test_a_web_page_is_utf_8() -> None:
    page = exported("html").decode("utf-8")
    assert page.lstrip().lower().startswith("<!doctype html>")
    assert "Wrap dress" in page


def test_a_workbook_can_be_opened() -> None:
    book = openpyxl.load_workbook(io.BytesIO(exported("xlsx")))
    texts = [cell.value for sheet in book for row in sheet.iter_rows() for cell in row]
    assert any("Wrap dress" in str(text) for text in texts)


def test_a_csv_says_that_it_is_utf_8_exactly_once() -> None:
    data = exported("csv")
    assert data.startswith(b"\xef\xbb\xbf")
    assert data.count(b"\xef\xbb\xbf") == 1
    assert "Wrap dress" in data.decode("utf-8-sig")


@pytest.mark.parametrize("form", FORMATS)
def test_a_private_sheet_is_asked_for_in_every_format(form: Format) -> None:
    assert exported(form, private=True) != exported(form)


def test_the_paper_of_a_pdf_is_the_one_asked_for() -> None:
    sizes = [PdfReader(io.BytesIO(written(small(), "pdf", paper))).pages[0].mediabox for paper in ("a4", "us-letter")]
    assert [(round(box.width), round(box.height)) for box in sizes] == [(595, 842), (612, 792)]


def test_without_a_comparison_there_is_no_sheet() -> None:
    with pytest.raises(ReportError, match="no measure that both"):
        export(comparison(measured=False), None, "csv", today=DAY, names=assets.measures().name)
