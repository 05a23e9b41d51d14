"""Bad files of every kind give one sentence that names the file, soon, and nothing else."""

from __future__ import annotations

import tracemalloc
import zlib
from typing import TYPE_CHECKING

import pytest

from sizekeeper.errors import ReadError
from sizekeeper.importing.limits import CELLS, MEASURES, ROWS, SHEETS
from sizekeeper.importing.read import read_bytes, read_file, read_html, read_text
from tests.importing.layouts import FOLDER
from tests.importing.made_files import CHART, open_document, packed, pdf, with_part, workbook

if TYPE_CHECKING:
    from pathlib import Path

BOOK = workbook({"Sheet1": CHART})
SHEET = "xl/worksheets/sheet1.xml"
HEAD = b'<?xml version="1.0"?><worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>'
TAIL = b"</sheetData></worksheet>"
OLE = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"
ENTITIES = b'<?xml version="1.0"?><!DOCTYPE x [<!ENTITY a "aa"><!ENTITY b "&a;&a;">]><worksheet/>'


MANY_SHEETS = {"xl/workbook.xml": b"<w/>"} | {f"xl/worksheets/s{i}.xml": b"<s/>" for i in range(SHEETS + 1)}


def _sheet(rows: bytes, end: bytes = b"") -> bytes:
    return with_part(BOOK, SHEET, HEAD + rows + b"</sheetData>" + end + b"</worksheet>")


BAD = {
    "empty": (b"", "is empty"),
    "blank": (b" \n \n", "is empty"),
    "truncated workbook": (BOOK[: len(BOOK) // 2], "damaged"),
    "truncated ods": (open_document(CHART)[:300], "damaged"),
    "workbook without its sheet": (packed({"xl/workbook.xml": b"<workbook/>"}), "damaged"),
    "another archive": (packed({"word/document.xml": b"<w/>"}), "not a spreadsheet"),
    "old workbook with nothing in it": (OLE + b"\x00" * 2000, "damaged"),
    "workbook with a password": (OLE + "EncryptedPackage".encode("utf-16-le") + b"\x00" * 600, "password"),
    "shopping list": (b"Item,Qty,Price\nMilk,2,1.20\nBread,1,2.50\nButter,3,2.10\n", "No chart"),
    "recipe": (b"Cake,4,8,12\nEggs,2,4,6\nFlour (g),200,400,600\nMilk (ml),100,200,300\n", "No chart"),
    "addresses": (b"Name;No;Post code\nMill Lane;12;40210\nQuay;7;40211\nHill;31;40300\n", "No chart"),
    "list of pieces": (b"Piece,Cut,On fold\nFront,1,yes\nBack,2,no\nSleeve,2,no\nCollar,2,no\n", "No chart"),
    "cloth alone": (b"Fabric required (m),S,M,L\n115 cm wide,2.4,2.5,2.6\n150 cm wide,1.8,1.9,2\n", "No chart"),
    "sizes without figures": (b"Body measurements (cm),8,10,12\nBust,,,\nWaist,,,\n", "No chart"),
    "picture": (b"\x89PNG\r\n\x1a\n" + bytes(range(256)), "a picture"),
    "noise": (zlib.compress(bytes(range(256)) * 40, 9) + b"\x00\x01\x02", "not a text file"),
    "broken pdf": (b"%PDF-1.7\nnothing here", "damaged"),
    "prose": (b"Dear reader,\nthis is a letter about hips.\n", "No chart was found"),
    "other xml": (b"<?xml version='1.0'?><svg><g/></svg>", "XML"),
    "page without a table": (b"<!doctype html><html><p>Bust 86</p></html>", "without a table"),
    "entities": (with_part(BOOK, SHEET, ENTITIES), "XML declarations"),
    "too many rows": (_sheet(b"<row/>" * (ROWS + 1)), "rows"),
    "too many cells": (_sheet(b"<row>" + b'<c r="A1"/>' * (CELLS + 1000) + b"</row>"), "cells"),
    "a row of 16,384 columns": (_sheet(b'<row r="1"><c r="XFD1"><v>1</v></c></row>'), "columns"),
    "a merge over everything": (_sheet(b"", b'<mergeCells><mergeCell ref="A1:XFD1048576"/></mergeCells>'), "merges"),
    "a bomb": (with_part(BOOK, SHEET, HEAD + b" " * 70_000_000 + TAIL), "unpacks to more"),
    "too many sheets": (packed(MANY_SHEETS), "sheets"),
    "ods repeated without end": (open_document(CHART, repeated='table:number-rows-repeated="1000000"'), "more than"),
    "text of a million lines": (b"1;2;3\n" * 1_000_000, "rows"),
    "more measures than any chart": (
        b"Size;S;M\n" + b"".join(b"Part %d;50;52\n" % i for i in range(MEASURES + 1)),
        "rows of measures",
    ),
    "text of a wide line": (b"1;" * 2000, "columns"),
}  # fmt: skip


@pytest.mark.parametrize("kind", BAD)
def test_a_bad_file_gives_one_sentence_that_names_it(kind: str) -> None:
    data, said = BAD[kind]
    with pytest.raises(ReadError, match=said) as told:
        read_bytes(data, "my chart.xlsx")
    assert "my chart.xlsx" in str(told.value)
    assert "\n" not in str(told.value)


@pytest.mark.parametrize("kind", ["a bomb", "text of a million lines", "a merge over everything"])
def test_a_file_made_to_fill_the_memory_does_not(kind: str) -> None:
    tracemalloc.start()
    try:
        with pytest.raises(ReadError):
            read_bytes(BAD[kind][0], "x")
        _, most = tracemalloc.get_traced_memory()
    finally:
        tracemalloc.stop()
    assert most < 200_000_000


def test_a_workbook_that_sends_its_reader_round_in_circles_is_refused() -> None:
    with pytest.raises(ReadError, match="damaged"):
        read_file(FOLDER.parent / "endless_workbook.xls")


def test_a_missing_file_and_a_folder_are_named(tmp_path: Path) -> None:
    with pytest.raises(ReadError, match=r"no file “gone\.csv”"):
        read_file(tmp_path / "gone.csv")
    with pytest.raises(ReadError, match="is a folder"):
        read_file(tmp_path)


def test_pasted_text_without_a_chart_is_refused_in_words() -> None:
    with pytest.raises(ReadError, match="the pasted text"):
        read_text("nothing")
    with pytest.raises(ReadError, match="the pasted text"):
        read_html("<p>nothing</p>")


def test_a_formula_that_ended_in_an_error_is_missing_and_named() -> None:
    cell = b'<c r="B2" t="e"><f>1/0</f><v>#DIV/0!</v></c>'
    rows = (
        b'<row r="1"><c r="A1" t="inlineStr"><is><t>Body (cm)</t></is></c>'
        b'<c r="B1"><v>8</v></c><c r="C1"><v>10</v></c></row>'
        b'<row r="2"><c r="A2" t="inlineStr"><is><t>Bust</t></is></c>' + cell + b'<c r="C2"><v>86</v></c></row>'
    )
    draft = read_bytes(_sheet(rows), "x.xlsx")
    assert draft.tables[0].rows[0].cm == (None, 86.0)
    assert [(f.at, f.note) for f in draft.flags if f.code == "missing_value"] == [
        ("B2", "Bust: a formula that ended in an error")
    ]


class StoppedError(Exception):
    """Raised by a progress call that has had enough."""


@pytest.mark.parametrize("data", [BOOK, open_document(CHART), pdf(CHART, ruled=True)], ids=["xlsx", "ods", "pdf"])
@pytest.mark.parametrize("enough", [1, 2, 3])
def test_a_progress_call_may_stop_the_reading_at_any_time(data: bytes, enough: int) -> None:
    told: list[tuple[int, int]] = []

    def stop(done: int, total: int) -> None:
        told.append((done, total))
        if len(told) == enough:
            raise StoppedError

    if data.startswith(b"%PDF") and enough > 1:
        enough = 2  # the file, then its grids
    with pytest.raises(StoppedError):
        read_bytes(data, "x", progress=stop)
    assert all(done <= total for done, total in told)
