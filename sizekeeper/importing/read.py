"""Reads a chart from a file, from pasted text or from the clipboard's HTML."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from sizekeeper.errors import ReadError
from sizekeeper.importing.delimited import sheet_from_text
from sizekeeper.importing.draft import NO_CORRECTIONS, Corrections, Draft
from sizekeeper.importing.files import bytes_of, readings
from sizekeeper.importing.limits import Progress, no_progress
from sizekeeper.importing.recognise import recognise
from sizekeeper.importing.webpage import sheets_of_page

if TYPE_CHECKING:
    import os

    from sizekeeper.importing.grid import Sheet

PASTED = "the pasted text"


def read_file(
    path: str | os.PathLike[str],
    corrections: Corrections = NO_CORRECTIONS,
    progress: Progress = no_progress,
) -> Draft:
    """The draft of the charts in a file of any kind we know.

    Raises:
        ReadError: the file cannot be read or holds no chart; the sentence names it.
    """
    file = Path(path)
    return read_bytes(bytes_of(file), file.name, corrections, progress)


def read_bytes(
    data: bytes,
    name: str,
    corrections: Corrections = NO_CORRECTIONS,
    progress: Progress = no_progress,
) -> Draft:
    """The draft of the charts in a file's content; `name` is used in messages.

    Raises:
        ReadError: the content cannot be read or holds no chart; the sentence names it.
    """
    drafts = [recognise(name, sheets, corrections, progress) for sheets in readings(data, name, progress)]
    return _with_tables(max(drafts, key=_figures) if len(drafts) > 1 else drafts[0])


def read_text(text: str, corrections: Corrections = NO_CORRECTIONS, name: str = PASTED) -> Draft:
    """The draft of the charts in a text: tab-separated, with any delimiter, or lines copied from a PDF.

    Raises:
        ReadError: the text holds no chart.
    """
    return read_sheets(
        [sheet_from_text(text.replace("\r\n", "\n").replace("\r", "\n").replace("\0", ""), name)], corrections, name
    )


def read_html(text: str, corrections: Corrections = NO_CORRECTIONS, name: str = PASTED) -> Draft:
    """The draft of the charts in the tables of an HTML text.

    Raises:
        ReadError: the text holds no table, or no chart.
    """
    return read_sheets(sheets_of_page(text, name), corrections, name)


def read_sheets(sheets: list[Sheet], corrections: Corrections, name: str) -> Draft:
    """The draft of grids that were read before: corrections are tried without opening the file again.

    Raises:
        ReadError: the grids hold no chart.
    """
    return _with_tables(recognise(name, sheets, corrections))


def _figures(draft: Draft) -> int:
    return sum(cell.low is not None for table in draft.tables for row in table.rows for cell in row.cells)


def _with_tables(draft: Draft) -> Draft:
    if not draft.tables:
        name = draft.source if draft.source == PASTED else f"“{draft.source}”"
        raise ReadError(f"No chart was found in {name}: there must be size labels, measures and figures.")
    return draft
