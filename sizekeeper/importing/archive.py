"""Looks into a packed workbook before it is opened: what it is, and whether it is safe to unpack."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from sizekeeper.errors import ReadError
from sizekeeper.importing.grid import place
from sizekeeper.importing.limits import CELLS, UNPACKED_BYTES, Progress, check_size

if TYPE_CHECKING:
    import zipfile

_CHUNK = 1 << 18
_OVERLAP = 200
_ENTITY = re.compile(rb"<!(?:DOCTYPE|ENTITY)|<\x00?!\x00?(?:D\x00?O\x00?C|E\x00?N\x00?T)")
_MERGE = re.compile(rb'<(?:\w+:)?mergeCell\s[^>]*?ref="([A-Z]+\d+):([A-Z]+\d+)"')
_REPEAT = re.compile(rb"<(table:table-(?:row|cell))(?=[\s/>])([^>]*)>")
_SEARCHED = (".xml", ".rels", ".vml")


@dataclass(slots=True)
class Contents:
    """What a packed file is and holds."""

    kind: Literal["xlsx", "xlsb", "ods", "other"]
    formulas: bool = False


def contents(archive: zipfile.ZipFile, name: str, progress: Progress) -> Contents:
    """What kind of workbook an archive holds, after every part was looked through.

    Raises:
        ReadError: it is protected, unpacks to more than any chart, or holds XML declarations that charts never do.
    """
    parts = archive.infolist()
    if any(part.flag_bits & 1 for part in parts):
        raise ReadError(f"“{name}” is protected by a password: save it without one.")
    names = {part.filename for part in parts}
    kind = _kind(archive, names)
    sheets = sum(bool(re.match(r"xl/worksheets/[^/]+$", part)) for part in names)
    check_size(name, sheets=sheets)
    found = Contents(kind)
    if kind == "other":
        return found
    if sum(part.file_size for part in parts if part.filename.endswith((".xml", ".bin"))) > UNPACKED_BYTES:
        raise ReadError(
            f"“{name}” unpacks to more than {UNPACKED_BYTES // 1_000_000} MB, which is more than any chart."
        )
    cells = 0
    for i, part in enumerate(parts):
        progress(i, len(parts) * 2)
        if part.filename.endswith(_SEARCHED):
            cells += _searched(archive, part, name, found)
            check_size(name, cells=cells)
    return found


def _kind(archive: zipfile.ZipFile, names: set[str]) -> Literal["xlsx", "xlsb", "ods", "other"]:
    if "xl/workbook.xml" in names:
        return "xlsx"
    if "xl/workbook.bin" in names:
        return "xlsb"
    if "content.xml" in names and "mimetype" in names and b"spreadsheet" in archive.read("mimetype")[:100]:
        return "ods"
    if any(re.fullmatch(r"xl/worksheets/[^/]+\.xml", n) for n in names):
        return "xlsx"
    return "other"


def _searched(archive: zipfile.ZipFile, part: zipfile.ZipInfo, name: str, found: Contents) -> int:
    """How many cells a part holds; formulas, merged areas and declarations are noticed on the way."""
    rows = cells = merged = size = 0
    before = b""
    sheet = part.filename.startswith("xl/worksheets/")
    with archive.open(part) as stream:
        while chunk := stream.read(_CHUNK):
            size += len(chunk)
            if size > UNPACKED_BYTES:
                raise ReadError(
                    f"“{name}” unpacks to more than {UNPACKED_BYTES // 1_000_000} MB, which is more than any chart."
                )
            window = before + chunk
            if _ENTITY.search(window):
                raise ReadError(
                    f"“{name}” holds XML declarations that no spreadsheet program writes, so it is not opened."
                )
            rows += chunk.count(b"<row")
            cells += chunk.count(b"<c ") + chunk.count(b"<c>")
            found.formulas = found.formulas or (sheet and (b"<f>" in window or b"<f " in window))
            merged += _merged(window)
            if rows or cells:
                check_size(name, rows=rows, cells=cells)
            if merged > CELLS:
                raise ReadError(
                    f"“{name}” merges more than {CELLS:,} cells, which is more than any chart: copy the chart alone."
                )
            before = window[-_OVERLAP:]
    if found.kind == "ods" and part.filename == "content.xml":
        cells += _repeated(archive.read(part), name)
    elif b"encryption-data" in before and part.filename.endswith("manifest.xml"):
        raise ReadError(f"“{name}” is protected by a password: save it without one.")
    return cells


def _merged(window: bytes) -> int:
    total = 0
    for match in _MERGE.finditer(window):
        (top, left), (bottom, right) = place(match[1].decode()), place(match[2].decode())
        total += (bottom - top + 1) * (right - left + 1)
    return total


def _repeated(content: bytes, name: str) -> int:
    """How many filled cells an ODS sheet stands for, counting each repeated row and cell as often as it is meant."""
    check_size(name, sheets=content.count(b"<table:table "))
    total, row_times, row_cells = 0, 1, 0
    for match in _REPEAT.finditer(content):
        if match[1] == b"table:table-row":
            total += row_times * row_cells
            row_times, row_cells = _times(match[2], b"rows"), 0
        elif not match[2].rstrip().endswith(b"/") or b"value" in match[2]:
            row_cells += _times(match[2], b"columns")
    return total + row_times * row_cells


def _times(attributes: bytes, what: bytes) -> int:
    match = re.search(rb"number-" + what + rb'-repeated="(\d{1,9})"', attributes)
    return int(match[1]) if match else 1
