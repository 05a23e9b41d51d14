"""A sheet as read from any file: a grid of cells that know what they show and where they stand."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

MERGED_LIMIT = 20_000
"""The most grid places one merged area may fill; larger ones keep their first cell only (coined)."""

_ADDRESS = re.compile(r"([A-Z]+)([1-9][0-9]*)$")


@dataclass(frozen=True, slots=True)
class GridCell:
    """One filled cell. `text` is what the sheet shows; `number` is what it stores, where it stores a number.

    `date` is (year, month, day) of a cell that a spreadsheet made a date. `note` tells of a formula that has no
    computed value, or one that ended in an error.
    """

    at: str
    text: str
    number: Fraction | None = None
    date: tuple[int, int, int] | None = None
    note: Literal["", "formula", "error"] = ""


Row = tuple["GridCell | None", ...]


@dataclass(frozen=True, slots=True)
class Sheet:
    """A named grid; every row is equally long. A merged area holds the same cell in all its places.

    `hidden` are the addresses of filled cells that the workbook does not show.
    """

    name: str
    rows: tuple[Row, ...]
    single_column: bool = False
    hidden: frozenset[str] = frozenset()

    @property
    def width(self) -> int:
        """How many columns the grid has."""
        return len(self.rows[0]) if self.rows else 0

    def transposed(self) -> Sheet:
        """The same cells with rows and columns exchanged; each keeps its own address."""
        return Sheet(self.name, tuple(zip(*self.rows, strict=True)), self.single_column)

    def cells(self) -> Iterator[GridCell]:
        """Every filled cell, row by row; a merged one appears once for each place it fills."""
        return (cell for row in self.rows for cell in row if cell is not None)


def column_letters(column: int) -> str:
    """The letters of a column counted from 0: A, B ... Z, AA."""
    letters = ""
    column += 1
    while column:
        column, rest = divmod(column - 1, 26)
        letters = chr(65 + rest) + letters
    return letters


def address(row: int, column: int) -> str:
    """The address of a place counted from 0: `address(5, 1)` is `B6`."""
    return f"{column_letters(column)}{row + 1}"


def place(at: str) -> tuple[int, int]:
    """Row and column, from 0, of an address; the `#3` of a number in a line of text is left out of account.

    Raises:
        ValueError: the text is not an address.
    """
    match = _ADDRESS.match(at.partition("#")[0])
    if match is None:
        raise ValueError(at)
    column = 0
    for letter in match[1]:
        column = column * 26 + ord(letter) - 64
    return int(match[2]) - 1, column - 1


def sheet_of(name: str, rows: Iterable[Sequence[GridCell | None]]) -> Sheet:
    """A sheet from rows of any length, without the empty rows and columns at its end."""
    kept = [list(row) for row in rows]
    while kept and not any(kept[-1]):
        kept.pop()
    width = max((_filled(row) for row in kept), default=0)
    return Sheet(name, tuple((*row[:width], *[None] * (width - len(row))) for row in kept))


def _filled(row: Sequence[GridCell | None]) -> int:
    return max((i + 1 for i, cell in enumerate(row) if cell is not None), default=0)


def sheet_of_texts(name: str, rows: Iterable[Sequence[str]]) -> Sheet:
    """A sheet from rows of texts; blank texts are empty places."""
    return sheet_of(
        name,
        (
            [GridCell(address(r, c), text.strip()) if text.strip() else None for c, text in enumerate(row)]
            for r, row in enumerate(rows)
        ),
    )


def filled_merged(
    rows: list[list[GridCell | None]],
    areas: Iterable[tuple[int, int, int, int]],
) -> list[list[GridCell | None]]:
    """The rows with every merged area (first row, first column, last row, last column) holding its first cell."""
    for top, left, bottom, right in areas:
        if top >= len(rows) or left >= len(rows[top]):
            continue
        last_row, last_column = min(bottom, len(rows) - 1), right
        if (last_row - top + 1) * (last_column - left + 1) > MERGED_LIMIT:
            continue
        for row in rows[top : last_row + 1]:
            end = min(last_column, len(row) - 1)
            row[left : end + 1] = [rows[top][left]] * (end + 1 - left)
    return rows


def area_of(sheet: Sheet, area: str) -> Sheet:
    """The part of a sheet inside an area such as `A3:F9`; cells keep their addresses.

    Raises:
        ValueError: the text is not an area.
    """
    first, _, last = area.partition(":")
    top, left = place(first)
    bottom, right = place(last or first)
    return sheet_of(sheet.name, [row[left : right + 1] for row in sheet.rows[top : bottom + 1]])
