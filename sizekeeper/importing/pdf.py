"""Tables of a text PDF: drawn tables cell by cell, else the lines of text as they stand."""

from __future__ import annotations

import io
import logging

from sizekeeper.errors import ReadError
from sizekeeper.importing.grid import Sheet, sheet_of_texts
from sizekeeper.importing.limits import PAGES, Progress


def readings_of_pdf(data: bytes, name: str, progress: Progress) -> list[list[Sheet]]:
    """Two ways to read a PDF, each a list with one sheet for each page: by its drawn tables, and by its lines of text.

    Raises:
        ReadError: it is protected, broken, too long, or holds no text.
    """
    import pdfplumber  # noqa: PLC0415 - heavy, and needed for PDFs only
    from pdfminer.pdfdocument import PDFPasswordIncorrect  # noqa: PLC0415 - as above
    from pdfplumber.utils.exceptions import PdfminerException  # noqa: PLC0415 - as above

    logging.getLogger("pdfminer").setLevel(logging.ERROR)
    try:
        with pdfplumber.open(io.BytesIO(data)) as document:
            pages = document.pages
            if len(pages) > PAGES:
                raise ReadError(f"“{name}” has more than {PAGES} pages: save the page with the chart alone.")
            drawn, lines = [], []
            for i, page in enumerate(pages):
                progress(i, len(pages))
                tables = page.extract_tables()
                rows = [[cell or "" for cell in row] for table in tables for row in [*table, []]]
                drawn.append(sheet_of_texts(f"Page {i + 1}", rows))
                text = page.extract_text() or ""
                lines.append(sheet_of_texts(f"Page {i + 1}", [[line] for line in text.split("\n")]))
                page.close()
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
