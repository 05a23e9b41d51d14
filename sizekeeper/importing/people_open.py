"""From a file or the clipboard to grids that may hold a table of people, through the same openers as charts."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import TYPE_CHECKING

from sizekeeper.core.people_headings import unguarded
from sizekeeper.errors import ReadError
from sizekeeper.importing.delimited import decoded, sheet_from_text
from sizekeeper.importing.files import bytes_of, readings
from sizekeeper.importing.grid import Sheet, sheet_of_texts
from sizekeeper.importing.limits import Progress, no_progress
from sizekeeper.importing.people_table import likeness
from sizekeeper.importing.webpage import sheets_of_page

if TYPE_CHECKING:
    from collections.abc import Sequence
    from pathlib import Path

PASTED = "the pasted table"
_DELIMITERS = ",;\t|"
_NO_TEXT = (b"PK", b"\xd0\xcf\x11\xe0")
_WIDE = re.compile(r"\s{2,}|\t")


def open_people_file(path: Path, progress: Progress = no_progress) -> tuple[str, tuple[Sheet, ...]]:
    """A file's name and its grids.

    Raises:
        ReadError: the file cannot be read; the sentence names it.
    """
    return path.name, open_people_bytes(bytes_of(path), path.name, progress)


def open_people_bytes(data: bytes, name: str, progress: Progress = no_progress) -> tuple[Sheet, ...]:
    """The grids in a file's content.

    Raises:
        ReadError: the content cannot be read; the sentence names the file.
    """
    ways = [tuple(sheets) for sheets in readings(data, name, progress)]
    if len(ways) == 1 and _is_text(data, ways[0]):
        ways = [(grid,) for grid in _grids(decoded(data, name), name)]
    return _best(ways, name)


def _is_text(data: bytes, sheets: tuple[Sheet, ...]) -> bool:
    """Whether a content was read as delimited text, so that other delimiters can be tried."""
    packed = (
        data.startswith(_NO_TEXT) or b"%PDF" in data[:1024] or re.search(rb"<t[rdab]", data[:200_000], re.IGNORECASE)
    )
    return not packed and len(sheets) == 1


def open_people_pasted(html: str, text: str) -> tuple[str, tuple[Sheet, ...]]:
    """What is on the clipboard: its HTML where that has a table, else its text.

    Raises:
        ReadError: there is nothing on it, or more than any table.
    """
    ways: list[tuple[Sheet, ...]] = []
    if "<table" in html.casefold():
        ways.append(tuple(sheets_of_page(html, PASTED)))
    if text.strip():
        plain = text.replace("\r\n", "\n").replace("\r", "\n").replace("\0", "")
        ways += [(grid,) for grid in _grids(plain, PASTED)]
    if not any(sheet.rows for sheets in ways for sheet in sheets):
        raise ReadError("There is no table on the clipboard: copy the people with their headings first, then paste.")
    return PASTED, _best(ways, PASTED)


def _grids(text: str, name: str) -> list[Sheet]:
    """The grids that a text can make, the likeliest delimiter first; columns may also stand apart by spaces alone."""
    first = sheet_from_text(text, name)
    made = [first]
    for delimiter in _DELIMITERS:
        if delimiter in text and not re.match(r"sep=.\n", text, re.IGNORECASE):
            try:
                made.append(sheet_from_text(f"sep={delimiter}\n{text}", name))
            except ReadError:
                continue
    if first.width <= 1:
        made.append(sheet_of_texts(first.name, [_WIDE.split(line.strip()) for line in text.split("\n")]))
    return [_plain(sheet) for sheet in made]


def _plain(sheet: Sheet) -> Sheet:
    """The grid without the apostrophes that keep a text from being taken for a formula."""
    rows = tuple(
        tuple(cell if cell is None else replace(cell, text=unguarded(cell.text)) for cell in row) for row in sheet.rows
    )
    return replace(sheet, rows=rows)


def _best(ways: Sequence[tuple[Sheet, ...]], name: str) -> tuple[Sheet, ...]:
    """The way of reading in which most headings are known; the first of those that are alike."""
    if not any(sheet.rows for sheets in ways for sheet in sheets):
        raise ReadError(f"“{name}” holds no table.")
    return max(ways, key=lambda sheets: max((likeness(sheet) for sheet in sheets), default=0.0))
