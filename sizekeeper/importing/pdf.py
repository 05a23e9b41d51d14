"""Tables of a text PDF: drawn tables cell by cell with the lines around them, else the lines of text as they stand."""

from __future__ import annotations

import io
import logging
from typing import TYPE_CHECKING

from sizekeeper.errors import ReadError
from sizekeeper.importing.grid import Sheet, sheet_of_texts
from sizekeeper.importing.limits import PAGES, Progress, check_size

if TYPE_CHECKING:
    from pdfplumber.page import Page

_LEAST_GAP = 2.0
"""Points between two tables below which no line of text fits."""


def readings_of_pdf(data: bytes, name: str, progress: Progress) -> list[list[Sheet]]:
    """Two ways to read a PDF, each a list with one sheet for each page: by its drawn tables, and by its lines of text.

    Raises:
        ReadError: it is protected, broken, too long, or holds no text.
    """
    from pdfminer.pdfdocument import PDFPasswordIncorrect  # noqa: PLC0415 - heavy, and needed for PDFs only
    from pdfplumber.utils.exceptions import PdfminerException  # noqa: PLC0415 - as above

    logging.getLogger("pdfminer").setLevel(logging.ERROR)
    try:
        drawn, lines = _pages(data, name, progress)
    except PDFPasswordIncorrect as error:
        raise ReadError(f"“{name}” is protected by a password: save it without one.") from error
    except PdfminerException as error:
        protected = any(isinstance(cause, PDFPasswordIncorrect) for cause in error.args)
        why = (
            "is protected by a password: save it without one" if protected else "is damaged and cannot be read as a PDF"
        )
        raise ReadError(f"“{name}” {why}.") from error
    if not any(sheet.rows for sheet in lines):
        raise ReadError(f"“{name}” holds no text, only pictures: type the chart in or copy it from elsewhere.")
    return [drawn, lines]


def _pages(data: bytes, name: str, progress: Progress) -> tuple[list[Sheet], list[Sheet]]:
    import pdfplumber  # noqa: PLC0415 - heavy, and needed for PDFs only

    drawn, lines = [], []
    with pdfplumber.open(io.BytesIO(data)) as document:
        if len(document.pages) > PAGES:
            raise ReadError(f"“{name}” has more than {PAGES} pages: save the page with the chart alone.")
        for i, page in enumerate(document.pages):
            progress(i, len(document.pages))
            rows = _drawn(page)
            check_size(name, rows=len(rows), cells=sum(map(len, rows)))
            drawn.append(sheet_of_texts(f"Page {i + 1}", rows))
            lines.append(sheet_of_texts(f"Page {i + 1}", [[line] for line in _lines(page)]))
            page.close()
    return drawn, lines


def _lines(page: Page) -> list[str]:
    return (page.extract_text() or "").split("\n")


def _drawn(page: Page) -> list[list[str]]:
    """The tables of a page from the top down, with the lines of text that stand above, between and below them."""
    rows: list[list[str]] = []
    top = float(page.bbox[1])
    for table in sorted(page.find_tables(), key=lambda t: t.bbox[1]):
        rows += _between(page, top, float(table.bbox[1]))
        rows += [[cell or "" for cell in row] for row in table.extract()]
        rows.append([])
        top = max(top, float(table.bbox[3]))
    return rows + _between(page, top, float(page.bbox[3])) if rows else []


def _between(page: Page, top: float, bottom: float) -> list[list[str]]:
    if bottom - top < _LEAST_GAP:
        return []
    text = page.crop((page.bbox[0], top, page.bbox[2], bottom)).extract_text() or ""
    return [[line] for line in text.split("\n") if line.strip()]
