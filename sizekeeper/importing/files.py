"""From a file to grids: what it is is told by its content, never by its name."""

from __future__ import annotations

import io
import re
import zipfile
import zlib
from typing import TYPE_CHECKING

from sizekeeper.errors import ReadError
from sizekeeper.importing.archive import contents
from sizekeeper.importing.delimited import decoded, sheet_from_text
from sizekeeper.importing.limits import FILE_BYTES, Progress
from sizekeeper.importing.oldbook import sheets_of_old_workbook
from sizekeeper.importing.pdf import readings_of_pdf
from sizekeeper.importing.webpage import sheets_of_page
from sizekeeper.importing.workbook import sheets_of_workbook

if TYPE_CHECKING:
    from pathlib import Path

    from sizekeeper.importing.grid import Sheet

_OLE = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"
_PICTURES = {
    b"\x89PNG": "a picture", b"\xff\xd8\xff": "a picture", b"GIF8": "a picture", b"II*\x00": "a picture",
    b"MM\x00*": "a picture",
    b"RIFF": "a picture or a sound", b"\x7fELF": "a program", b"MZ": "a program", b"7z\xbc\xaf": "an archive",
    b"Rar!": "an archive",
    b"\x1f\x8b": "an archive", b"SQLite format 3": "a database", b"{\\rtf": "a text document",
}  # fmt: skip
_PAGE = re.compile(
    r"\s*(?:<!doctype html|<\?xml[^>]*>\s*<(?:!doctype html|html)|<!--|<html|<meta|<table|<body|<head|<div|"
    r"Version:\d\.\d)",
    re.IGNORECASE,
)
_BROKEN = (zipfile.BadZipFile, zlib.error, KeyError, ValueError, TypeError, AttributeError, IndexError, EOFError,
           OSError, SyntaxError, AssertionError, NotImplementedError, RecursionError, OverflowError, LookupError,
           StopIteration, ArithmeticError)  # fmt: skip
"""What the libraries raise for files that are broken inside; each is told as one sentence."""


class _Stopped(BaseException):
    """Carries what the progress call raised past the handlers for broken files."""

    def __init__(self, cause: Exception) -> None:
        super().__init__()
        self.cause = cause


def _stopping(progress: Progress) -> Progress:
    def told(done: int, total: int) -> None:
        try:
            progress(done, total)
        except Exception as error:
            raise _Stopped(error) from error

    return told


def bytes_of(path: Path) -> bytes:
    """The content of a file.

    Raises:
        ReadError: it cannot be read or is larger than any chart.
    """
    try:
        if path.is_dir():
            raise ReadError(f"“{path.name}” is a folder, not a file.")
        if path.stat().st_size > FILE_BYTES:
            raise ReadError(f"“{path.name}” is larger than {FILE_BYTES // 1_000_000} MB, which is more than any chart.")
        data = path.read_bytes()
    except FileNotFoundError as error:
        raise ReadError(f"There is no file “{path.name}”.") from error
    except OSError as error:
        raise ReadError(f"“{path.name}” cannot be read: {error.strerror or error}.") from error
    return data


def readings(data: bytes, name: str, progress: Progress) -> list[list[Sheet]]:
    """The ways to read a file's content, each a list of sheets; all but PDFs have one.

    Raises:
        ReadError: the content is not a table, or is broken or unsafe.
    """
    if not data.strip():
        raise ReadError(f"“{name}” is empty.")
    try:
        return _readings(data, name, _stopping(progress))
    except _Stopped as stopped:
        raise stopped.cause from None
    except ReadError:
        raise
    except MemoryError as error:
        raise ReadError(f"“{name}” is too large to be read.") from error
    except _BROKEN as error:
        raise ReadError(f"“{name}” is damaged and cannot be read.") from error


def _readings(data: bytes, name: str, progress: Progress) -> list[list[Sheet]]:
    if data.startswith(b"PK"):
        return [_packed(data, name, progress)]
    if data.startswith(_OLE):
        if "EncryptedPackage".encode("utf-16-le") in data:
            raise ReadError(f"“{name}” is protected by a password: save it without one.")
        return [sheets_of_old_workbook(data, name, progress)]
    if data[:1024].lstrip().startswith(b"%PDF"):
        return readings_of_pdf(data, name, progress)
    for start, what in _PICTURES.items():
        if data.startswith(start) and (start != b"MZ" or b"\x00" in data[:200]):
            raise ReadError(f"“{name}” is {what}, not a table.")
    text = decoded(data, name)
    if _PAGE.match(text) or re.search(r"<t[rd][\s>]", text[:200_000], re.IGNORECASE):
        return [_page(text, name)]
    if re.match(r"\s*<\?xml|\s*<[a-z]\w*[\s>]", text, re.IGNORECASE):
        raise ReadError(f"“{name}” is an XML file of a kind that cannot be read: save it as XLSX or CSV.")
    return [[sheet_from_text(text, name)]]


def _packed(data: bytes, name: str, progress: Progress) -> list[Sheet]:
    with zipfile.ZipFile(io.BytesIO(data)) as archive:
        found = contents(archive, name, progress)
    if found.kind == "xlsx":
        try:
            return sheets_of_workbook(data, name, formulas=found.formulas, progress=progress)
        except ReadError:
            raise
        except Exception as error:  # openpyxl raises dozens of kinds for broken workbooks
            raise ReadError(f"“{name}” is damaged and cannot be read as a spreadsheet.") from error
    if found.kind == "other":
        raise ReadError(f"“{name}” is an archive or a text document, not a spreadsheet.")
    return sheets_of_old_workbook(data, name, progress)


def _page(text: str, name: str) -> list[Sheet]:
    sheets = sheets_of_page(text, name)
    if not sheets:
        raise ReadError(f"“{name}” is a web page without a table.")
    return sheets
