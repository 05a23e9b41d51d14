"""Keys to a chart: where `B = body, G = garment` is printed, a cell with that letter says body or garment."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import TYPE_CHECKING

from sizekeeper.importing.grid import Sheet
from sizekeeper.importing.vocabulary import kind_in

if TYPE_CHECKING:
    from sizekeeper.importing.grid import GridCell
    from sizekeeper.importing.vocabulary import Kind

_ENTRY = re.compile(r"(?<![\w(])(?P<sign>[^\W\d_]{1,3}|[*†‡#]{1,2})\s*[=:]\s*(?P<words>[^;,/|()=:]+)")
_WORDS: dict[Kind, str] = {"body": "body", "finished": "finished"}


def with_keys(sheet: Sheet) -> Sheet:
    """The sheet with the signs of its key written out, where it has signs for body and for garment."""
    signs = _signs(sheet)
    if set(signs.values()) != set(_WORDS.values()):
        return sheet
    rows = tuple(tuple(_written_out(cell, signs) for cell in row) for row in sheet.rows)
    return Sheet(sheet.name, rows, sheet.single_column)


def _signs(sheet: Sheet) -> dict[str, str]:
    found: dict[str, str] = {}
    for cell in sheet.cells():
        for entry in _ENTRY.finditer(cell.text) if "=" in cell.text or ":" in cell.text else ():
            kind = kind_in(entry["words"])
            if kind is not None:
                found.setdefault(entry["sign"], _WORDS[kind])
    return found


def _written_out(cell: GridCell | None, signs: dict[str, str]) -> GridCell | None:
    """A sign as its word; the key itself is no part of the chart."""
    if cell is None or cell.number is not None:
        return cell
    sign = cell.text.strip(" ().")
    if sign in signs:
        return replace(cell, text=signs[sign])
    return None if any(kind_in(e["words"]) for e in _ENTRY.finditer(cell.text)) else cell
