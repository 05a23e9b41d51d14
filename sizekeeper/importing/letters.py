"""Measures that are named by their first letters only, as in `B W H`: taken for what such a set usually means.

A letter alone names nothing; two or three of one set beside each other, or below each other, do. What was read so is
told, and asked about.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sizekeeper.importing.bands import distinct, is_text, label
from sizekeeper.importing.measure_names import CLOSE

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from sizekeeper.importing.grid import GridCell, Sheet
    from sizekeeper.importing.raw import Found

_NAMES = ("bust", "waist", "hip")
_SETS: tuple[dict[str, str], ...] = tuple(
    dict(zip(letters.split(), _NAMES, strict=True))
    for letters in ("B W H", "C W H", "B T H", "O T H", "P T H", "TP TT TH", "TP TT TB", "S V F", "P C CA", "B W HP")
)
"""Sets in English, German and Dutch, French, Italian and Spanish (common practice, no source)."""
_WHOLE, _PART = 3, 2


def spelt_out(sheet: Sheet) -> tuple[Sheet, Mapping[str, str]]:
    """The sheet with letters of measures written out, and what is printed there, by address."""
    names: dict[str, str] = {}
    for grid in (sheet, sheet.transposed()):
        named_across = [_names_measures(line) for line in zip(*grid.rows, strict=True)]
        for line in grid.rows:
            if not _names_measures(line):  # a letter beside a name is only its code
                names |= _named([None if named else cell for cell, named in zip(line, named_across, strict=True)])
    if len(names) < _PART:
        return sheet, {}
    printed = {cell.at: cell.text for cell in sheet.cells() if cell.at in names}
    rows = tuple(tuple(_written_out(cell, names) for cell in row) for row in sheet.rows)
    return replace(sheet, rows=rows), printed


def as_printed(found: Found, printed: Mapping[str, str]) -> None:
    """Give the rows that were written out their printed labels again, and what they are named by some doubt."""
    for row in (row for table in found.tables for row in table.rows if row.at in printed):
        row.label = replace(row.label, text=printed[row.at], names=replace(row.label.names, sure=CLOSE))


def _named(line: Sequence[GridCell | None]) -> dict[str, str]:
    """The names of the letters in a row or column, by address; none where they are no such set."""
    cells = [cell for _, cell in distinct(line) if is_text(cell)]
    letters = {sign: cell.at for cell in cells if (sign := _sign(cell))}
    if len(letters) < sum(bool(_sign(cell)) for cell in cells):
        return {}
    best = max(_SETS, key=lambda names: sum(sign in names for sign in letters))
    known = [sign for sign in letters if sign in best]
    stray = [sign for sign in letters if sign not in best]
    if len(known) == _WHOLE or (len(known) == _PART and not stray):
        return {letters[sign]: best[sign] for sign in known}
    return {}


def _sign(cell: GridCell) -> str:
    """The letters of a cell that holds one or two and nothing else, as capitals; empty for any other."""
    text = cell.text.strip(" .:()").upper()
    return text if text.isalpha() and len(text) <= _PART else ""


def _names_measures(line: Sequence[GridCell | None]) -> bool:
    """Whether a row or column names a measure in words."""
    words = (label(cell) for cell in line if cell is not None and is_text(cell))
    return any(word.is_measure and not word.size_word for word in words)


def _written_out(cell: GridCell | None, names: Mapping[str, str]) -> GridCell | None:
    return replace(cell, text=names[cell.at]) if cell is not None and cell.at in names else cell
