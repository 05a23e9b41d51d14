"""The decision sheet as PDF and as page images, laid out by typst from our own template.

The same pages serve the file, the preview and the printer. Only the fonts that come with typst are used, so that a
sheet looks the same on every machine; writing that they do not have (Chinese, an emoji) is set in what the machine has.
"""

from __future__ import annotations

import datetime as dt
import functools
import json
import re
import threading
from typing import TYPE_CHECKING, Any, NamedTuple

from sizekeeper.assets import resource
from sizekeeper.errors import ReportError
from sizekeeper.reports.pdf_data import sheet_data
from sizekeeper.reports.pdf_height import SMALLEST, fitting_scale
from sizekeeper.reports.pdf_scripts import beyond_own_fonts

if TYPE_CHECKING:
    import typst

    from sizekeeper.reports.sheet import Paper, Sheet

_PAGE = re.compile(rb"/Type\s*/Page\b")
_SMALLER = 0.04
"""How much smaller the text is made where the first guess was too large."""
_LOCK = threading.Lock()
"""One page is laid out at a time: a compiler keeps the data of its last page."""


def pdf(sheet: Sheet, paper: Paper) -> bytes:
    """The sheet as a PDF file; the same bytes for the same sheet.

    Raises:
        ReportError: the sheet cannot be laid out.
    """
    data = sheet_data(sheet, paper)
    return typeset("sheet.typ", data, sheet.on, sizes(data, paper)).file


def page_images(sheet: Sheet, paper: Paper, ppi: float) -> list[bytes]:
    """The pages of the sheet as PNG images, as they stand in the PDF.

    Args:
        sheet: what stands on it.
        paper: what it is laid out for.
        ppi: pixels per inch of paper.

    Raises:
        ReportError: the sheet cannot be laid out.
    """
    data = sheet_data(sheet, paper)
    return typeset("sheet.typ", data, sheet.on, sizes(data, paper)).images(ppi)


def sizes(data: dict[str, Any], paper: Paper) -> tuple[float, ...]:
    """The sizes of text at which a sheet is tried on one page, the first by a guess; none where it is too long."""
    guess = fitting_scale(data, paper)
    return () if guess is None else (guess, max(guess - _SMALLER, SMALLEST))


def typeset(template: str, data: dict[str, Any], on: dt.date, scales: tuple[float, ...]) -> LaidOut:
    """Lay data out by one of our templates.

    Args:
        template: a file of resources/reports.
        data: what the template sets, texts and flags only.
        on: the day that the file says it was made.
        scales: the sizes of text to try, as parts of the full size, until everything stands on one page.

    Raises:
        ReportError: typst cannot lay it out.
    """
    made = dt.datetime(on.year, on.month, on.day, tzinfo=dt.UTC)
    return _laid_out(template, json.dumps(data, ensure_ascii=False), scales, made)


class LaidOut(NamedTuple):
    """A file that was laid out, by which template, from what."""

    file: bytes
    template: str
    given: dict[str, str]

    def images(self, ppi: float) -> list[bytes]:
        """Its pages as PNG images.

        Raises:
            ReportError: typst cannot draw them.
        """
        return _compiled(self.template, self.given, None, ppi)


@functools.lru_cache(maxsize=16)
def _laid_out(template: str, written: str, scales: tuple[float, ...], made: dt.datetime) -> LaidOut:
    """On one page, a little smaller if it must be; else on as many as it needs, with a running head and foot.

    Kept, because preview, file and printer ask one after the other.
    """
    for scale in scales:
        given = {"data": written, "pages": "one", "scale": f"{scale:.2f}"}
        file = _compiled(template, given, made)[0]
        if len(_PAGE.findall(file)) == 1:
            return LaidOut(file, template, given)
    given = {"data": written, "pages": "several", "scale": "1"}
    return LaidOut(_compiled(template, given, made)[0], template, given)


def _compiled(template: str, given: dict[str, str], made: dt.datetime | None, ppi: float = 0.0) -> list[bytes]:
    """What typst makes of what it is given: one file, or with `ppi` an image a page."""
    import typst

    with _LOCK:
        compiler = _compiler(template, system=beyond_own_fonts(given["data"]))
        try:
            if ppi:
                pages = compiler.compile(sys_inputs=given, format="png", ppi=ppi)
            else:
                pages = compiler.compile(sys_inputs=given, timestamp=made)
        except typst.TypstError as error:
            raise ReportError(f"The sheet cannot be laid out: {error}") from error
    return [pages] if isinstance(pages, bytes) else list(pages or ())


@functools.cache
def _compiler(template: str, *, system: bool) -> typst.Compiler:
    """What lays out a template; kept, because fonts and template are read once. No package is ever fetched."""
    import typst

    folder = resource("reports")
    nowhere = folder / "no-packages"
    return typst.Compiler(
        folder / template,
        root=folder,
        font_paths=typst.Fonts(include_system_fonts=system),
        package_path=nowhere,
        package_cache_path=nowhere,
    )
