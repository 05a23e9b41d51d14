"""Tables of a text PDF: drawn tables cell by cell with the lines around them, else the lines of text as they stand."""

from __future__ import annotations

import io
import logging
from typing import TYPE_CHECKING

from sizekeeper.errors import ReadError
from sizekeeper.importing.apart import DAMAGED, LARGE, PROTECTED, RefusedError, read_apart
from sizekeeper.importing.grid import Sheet, sheet_of_texts
from sizekeeper.importing.limits import PAGES, check_size

if TYPE_CHECKING:
    from pdfplumber.page import Page
    from pdfplumber.pdf import PDF

    from sizekeeper.importing.limits import Progress

Rows = list[list[str]]

_LEAST_GAP = 2.0
"""Points between two tables below which no line of text fits."""


def readings_of_pdf(data: bytes, name: str, progress: Progress) -> list[list[Sheet]]:
    """Two ways to read a PDF, each a list with one sheet for each page: by its drawn tables, and by its lines of text.

    Raises:
        ReadError: it is protected, broken, too long, or holds no text.
    """
    drawn, lines = read_apart("pdf", data, name, progress)
    for rows in [*drawn, *lines]:
        check_size(name, rows=len(rows), cells=sum(map(len, rows)))
    made = [[sheet_of_texts(f"Page {i}", rows) for i, rows in enumerate(way, 1)] for way in (drawn, lines)]
    if not any(sheet.rows for sheet in made[1]):
        raise ReadError(f"“{name}” holds no text, only pictures: type the chart in or copy it from elsewhere.")
    return made


def pages(data: bytes) -> tuple[list[Rows], list[Rows]]:
    """The rows of every page: of its drawn tables, and of its lines of text.

    Raises:
        RefusedError: the PDF is protected, broken or too long.
    """
    import pdfplumber
    from pdfminer.pdfdocument import PDFPasswordIncorrect  # noqa: PLC0415 - as above

    logging.getLogger("pdfminer").setLevel(logging.ERROR)
    try:
        with pdfplumber.open(io.BytesIO(data)) as document:
            return _read(document)
    except RefusedError:
        raise
    except Exception as error:  # pdfminer raises dozens of kinds for broken files
        protected = any(isinstance(cause, PDFPasswordIncorrect) for cause in (error, *error.args))
        raise RefusedError(PROTECTED if protected else DAMAGED) from error


def _read(document: PDF) -> tuple[list[Rows], list[Rows]]:
    if len(document.pages) > PAGES:
        raise RefusedError(LARGE)
    drawn, lines = [], []
    for page in document.pages:
        drawn.append(_drawn(page))
        lines.append([[line] for line in _lines(page)])
        page.close()
    return drawn, lines


def _lines(page: Page) -> list[str]:
    return (page.extract_text() or "").split("\n")


def _drawn(page: Page) -> Rows:
    """The tables of a page from the top down, with the lines of text that stand above, between and below them."""
    rows: Rows = []
    top = float(page.bbox[1])
    for table in sorted(page.find_tables(), key=lambda t: t.bbox[1]):
        rows += _between(page, top, float(table.bbox[1]))
        rows += [[cell or "" for cell in row] for row in table.extract()]
        rows.append([])
        top = max(top, float(table.bbox[3]))
    return rows + _between(page, top, float(page.bbox[3])) if rows else []


def _between(page: Page, top: float, bottom: float) -> Rows:
    if bottom - top < _LEAST_GAP:
        return []
    text = page.crop((page.bbox[0], top, page.bbox[2], bottom)).extract_text() or ""
    return [[line] for line in text.split("\n") if line.strip()]
