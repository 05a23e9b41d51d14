"""The envelope's table of fabric, from a file or a pasted text: widths of fabric down, sizes across, lengths inside.

A row may say `with nap` behind its width; a row of its own names the view of the rows below it. Without a row of sizes
there is one length, for all sizes. Figures without a unit are in the units the caller states, or in yards or metres
where the heading says so. What cannot be told is refused, never guessed.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING, Literal

from sizekeeper.core.length import Unit
from sizekeeper.core.notation import parse_length
from sizekeeper.core.piece import FabricLine
from sizekeeper.errors import LengthError, ReadError
from sizekeeper.importing.delimited import sheet_from_text
from sizekeeper.importing.files import bytes_of, readings
from sizekeeper.importing.limits import no_progress

if TYPE_CHECKING:
    from collections.abc import Iterable
    from pathlib import Path

    from sizekeeper.core.length import Length
    from sizekeeper.importing.grid import GridCell, Row, Sheet

_NAP = re.compile(r"[,;]?\s*\b(with(?:out)?|no)\s+nap\b", re.IGNORECASE)
_BRACKET = re.compile(r"\([^)]*\)|\bwide\b", re.IGNORECASE)
_YARDS = re.compile(r"\b(?:yards?|yds?)\b", re.IGNORECASE)
_METRES = re.compile(r"\b(?:met(?:er|re)s?|m)\b", re.IGNORECASE)
_VIEW = re.compile(r"view\s+", re.IGNORECASE)
_ALL = ("all", "all sizes")
_WIDTHS_CM = (50, 400)
_LONGEST_CM = 2000
"""Widths and lengths outside these are in another unit than stated (coined)."""


@dataclass(frozen=True, slots=True)
class FabricTable:
    """What a table is read against: the name that errors give, the unit of widths, the pattern's sizes and views."""

    name: str
    unit: Literal["cm", "in"]
    sizes: Sequence[str] = ()
    views: Sequence[str] = ()

    def fail(self, cell: GridCell, sentence: str) -> ReadError:
        """An error that names the file and the cell."""
        return ReadError(f"“{self.name}”, {cell.at}: {sentence}")


@dataclass(slots=True)
class _Reading:
    """Where the reading of a table is: the unit of lengths, the size of each column, the view, the lines so far."""

    unit: Unit
    sizes: dict[int, str] | None = None
    view: str = ""
    lines: list[FabricLine] = field(default_factory=list)


def read_fabric_text(text: str, table: FabricTable) -> tuple[FabricLine, ...]:
    """The lines of a pasted table.

    Raises:
        ReadError: it is no table of fabric, or a figure is unclear; the sentence names the cell.
    """
    return read_fabric_sheet(sheet_from_text(text.replace("\r\n", "\n").strip("\n"), table.name), table)


def read_fabric_file(path: Path, table: FabricTable) -> tuple[FabricLine, ...]:
    """The lines of a table in a file of any kind that charts are read from; of its sheets the first.

    Raises:
        ReadError: the file cannot be read, is no table of fabric, or a figure is unclear; the sentence names the cell.
    """
    sheets = readings(bytes_of(path), table.name, no_progress)[0]
    return read_fabric_sheet(sheets[0], table)


def read_fabric_sheet(sheet: Sheet, table: FabricTable) -> tuple[FabricLine, ...]:
    """The lines of a table on a sheet.

    Raises:
        ReadError: it is no table of fabric, or a figure is unclear; the sentence names the cell.
    """
    reading = _Reading("yd" if table.unit == "in" else "m")
    for row in sheet.rows:
        filled = [(place, cell) for place, cell in enumerate(row) if cell is not None and cell.text.strip()]
        if filled:
            _take(row, filled, reading, table)
    if not reading.lines:
        raise ReadError(f"“{table.name}” holds no table of fabric: widths down its left side and lengths beside them.")
    return tuple(reading.lines)


def merged(before: Iterable[FabricLine], read: Iterable[FabricLine]) -> tuple[FabricLine, ...]:
    """A table with lines read into it: those of the same width, nap, size and view are replaced, others kept."""
    found = {_key(line): line for line in before}
    return tuple((found | {_key(line): line for line in read}).values())


def _key(line: FabricLine) -> tuple[object, ...]:
    return line.width.exact_cm, line.nap, line.size, line.view


def _take(row: Row, filled: list[tuple[int, GridCell]], reading: _Reading, table: FabricTable) -> None:
    first = filled[0][1] if filled[0][0] == 0 else None
    width = None if first is None else _width(first, table)
    if width is not None and len(filled) > 1:
        _lengths(width, filled, reading, table)
    elif first is not None and len(filled) == 1:
        _heading(first, reading, table)
    elif reading.sizes is None and not reading.lines:
        _named_unit(row[0].text if row[0] is not None else "", filled[0][1], reading, table)
        reading.sizes = {place: _size(cell, table) for place, cell in filled if place}
    else:
        raise table.fail(filled[0][1], f"“{filled[0][1].text.strip()}” is no width of a fabric.")


def _heading(cell: GridCell, reading: _Reading, table: FabricTable) -> None:
    """A text alone in its row: the view of the rows below, or before the first figures a title."""
    said = cell.text.strip()
    view = next((v for v in table.views if v.casefold() == _VIEW.sub("", said).strip().casefold()), None)
    if view is not None:
        reading.view = view
    elif reading.sizes is None and not reading.lines:
        _named_unit(said, cell, reading, table)
    else:
        raise table.fail(cell, f"“{said}” is neither a fabric’s width with its lengths nor a view of the pattern.")


def _named_unit(text: str, cell: GridCell, reading: _Reading, table: FabricTable) -> None:
    yards, metres = _YARDS.search(text), _METRES.search(text)
    if yards and metres:
        raise table.fail(cell, "the lengths are in yards or in metres; leave one of them out.")
    if yards or metres:
        reading.unit = "yd" if yards else "m"


def _size(cell: GridCell, table: FabricTable) -> str:
    said = cell.text.strip()
    if said.casefold() in _ALL:
        return ""
    return next((size for size in table.sizes if size.casefold() == said.casefold()), said)


def _width(cell: GridCell, table: FabricTable) -> FabricLine | None:
    """A line with the width and the nap of a row, its length still nothing; None where the cell is no width."""
    nap = _NAP.search(cell.text)
    plain = _BRACKET.sub("", _NAP.sub("", cell.text)).strip()
    try:
        width = parse_length(plain, table.unit)
    except LengthError:
        return None
    return FabricLine(width, width, nap=nap is not None and nap[1].casefold() == "with")


def _lengths(width: FabricLine, filled: Sequence[tuple[int, GridCell]], reading: _Reading, table: FabricTable) -> None:
    cell = filled[0][1]
    if not _WIDTHS_CM[0] <= width.width.cm <= _WIDTHS_CM[1]:
        raise table.fail(cell, f"{_said(width.width)} is no width of a fabric; write its unit.")
    sizes = reading.sizes if reading.sizes is not None else {1: ""}
    for place, there in filled[1:]:
        if not there.text.strip(" -–—"):
            continue
        if place not in sizes:
            raise table.fail(there, "this column has no size above it; the first row must name the sizes.")
        line = replace(width, length=_length(there, reading.unit, table), size=sizes[place], view=reading.view)
        if any(_key(line) == _key(other) for other in reading.lines):
            raise table.fail(there, "this width and size stand in the table twice.")
        reading.lines.append(line)


def _length(cell: GridCell, unit: Unit, table: FabricTable) -> Length:
    try:
        length = parse_length(cell.text, unit)
    except LengthError as error:
        raise table.fail(cell, f"{error}.") from error
    if not 0 < length.cm <= _LONGEST_CM:
        raise table.fail(cell, f"{_said(length)} is no length of fabric for a garment; write its unit.")
    return length


def _said(length: Length) -> str:
    return f"{float(length.value):g} {length.unit}"
