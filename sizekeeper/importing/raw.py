"""A table as found on a sheet, before units and kinds are settled: sizes, rows and the words said about each."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

from sizekeeper.core.chart import WrittenAs
from sizekeeper.importing.grid import GridCell, address, place
from sizekeeper.importing.labels import Label
from sizekeeper.importing.vocabulary import Kind

Orientation = Literal["measures_in_rows", "sizes_in_rows", "long"]


@dataclass(frozen=True, slots=True)
class RawSize:
    """A size as headed: its label, the other names printed for it and the cell of the label."""

    label: str
    at: str
    aliases: tuple[str, ...] = ()
    date: bool = False


@dataclass(frozen=True, slots=True)
class RawFigure:
    """A filled cell of a row, with the unit its column states."""

    cell: GridCell
    unit: str | None = None


@dataclass(slots=True)
class RawRow:
    """A measure's row: the label, all that label, section and column say, and the cells by size, in order of print.

    `bound` tells that it is the low or high end of a range whose other end has a row of its own. `section` is a heading
    that says nothing else, such as `Midi`. `also` are the measure's names in further label columns. `blanks` are the
    addresses of the empty places.
    """

    label: Label
    at: str
    kind: Kind | None = None
    kind_from_row: bool = False
    kind_inferred: bool = False
    units: tuple[str, ...] = ()
    context_units: tuple[str, ...] = ()
    view: str | None = None
    variant: str | None = None
    cells: dict[int, list[RawFigure]] = field(default_factory=dict)
    written: WrittenAs = "full"
    bound: Literal["", "low", "high"] = ""
    section: str = ""
    also: tuple[str, ...] = ()
    blanks: dict[int, str] = field(default_factory=dict)


@dataclass(slots=True)
class RawTable:
    """Sizes and rows that share one header. `unheaded`: the first row's figures stand for the labels."""

    sheet: str
    orientation: Orientation
    sizes: list[RawSize]
    rows: list[RawRow] = field(default_factory=list)
    title: str = ""
    title_at: str = ""
    kind: Kind | None = None
    units: tuple[str, ...] = ()
    titled: bool = False
    wrapped: bool = False
    unheaded: bool = False
    missing_rows: list[tuple[str, str]] = field(default_factory=list)


@dataclass(slots=True)
class Found:
    """All that was found on a sheet.

    The tables stand in order, with how sure their sizes are; then what each cell was taken for, and the texts around
    the tables.
    """

    sheet: str
    tables: list[RawTable] = field(default_factory=list)
    scores: list[float] = field(default_factory=list)
    roles: dict[str, str] = field(default_factory=dict)
    titles: list[GridCell] = field(default_factory=list)
    notes: list[GridCell] = field(default_factory=list)
    left_out: list[GridCell] = field(default_factory=list)
    single_column: bool = False


def place_blanks(table: RawTable) -> None:
    """Give every row the addresses of its empty places, where sizes and measures cross."""
    for row in table.rows:
        for i, size in enumerate(table.sizes):
            if i not in row.cells:
                row.blanks[i] = _crossing(table, row.at, size.at)


def _crossing(table: RawTable, row_at: str, size_at: str) -> str:
    if table.orientation == "long" or not size_at:
        return ""
    if "#" in size_at or "#" in row_at:
        down, across = (row_at, size_at) if table.orientation == "measures_in_rows" else (size_at, row_at)
        return f"{down.partition('#')[0]}#{across.partition('#')[2] or 1}"
    row, size = place(row_at), place(size_at)
    return address(row[0], size[1]) if table.orientation == "measures_in_rows" else address(size[0], row[1])
