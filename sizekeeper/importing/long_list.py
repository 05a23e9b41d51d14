"""Long lists: one row for each size and measure, with the figure in a column of its own."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sizekeeper.importing import vocabulary as words
from sizekeeper.importing.bands import distinct, is_figure, is_text, label, zones
from sizekeeper.importing.grid import GridCell, Row, Sheet
from sizekeeper.importing.headers import attribute, size_likeness
from sizekeeper.importing.labels import Label
from sizekeeper.importing.raw import Found, RawFigure, RawRow, RawSize, RawTable
from sizekeeper.importing.sizes import recovered_date, shown_label

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sizekeeper.importing.vocabulary import Kind

_MOST, _SOME = 0.7, 0.3
_LEAST_ROWS = 4


@dataclass(slots=True)
class _Columns:
    """Which column holds what."""

    size: int
    measure: int
    values: list[int]
    heads: dict[int, Label]
    first: int
    head_cells: list[GridCell]


def long_lists(sheet: Sheet) -> Found:
    """The long lists of a sheet, each as a table; none where the sheet holds no such list."""
    found = Found(sheet.name, single_column=sheet.single_column)
    for top, bottom in zones(sheet):
        columns = _columns(sheet.rows[top:bottom])
        if columns is not None:
            _read(sheet, sheet.rows[top:bottom], columns, found)
    return found


def _columns(rows: Sequence[Row]) -> _Columns | None:
    """The columns of a list, by the words at their heads and by what stands in them."""
    head = next((i for i, row in enumerate(rows[:6]) if _is_head(row)), None)
    if head is None:
        return None
    body = rows[head + 1 :]
    heads = {place: label(cell) for place, cell in distinct(rows[head]) if is_text(cell)}
    size = next((p for p, word in heads.items() if word.size_word), None)
    measure = _most(body, heads, lambda cell: is_text(cell) and label(cell).is_measure and size_likeness(cell) < _MOST)
    if size is None or measure is None or size == measure or len(body) < _LEAST_ROWS:
        return None
    values = [p for p in heads if p not in (size, measure) and _share(body, p, is_figure) >= _MOST]
    if not values or not _repeats(body, size, measure):
        return None
    cells = [cell for _, cell in distinct(rows[head])]
    return _Columns(size, measure, values, heads, head + 1, cells)


def _is_head(row: Row) -> bool:
    cells = [cell for _, cell in distinct(row)]
    return len(cells) > 2 and all(is_text(c) for c in cells) and any(label(c).size_word for c in cells)  # noqa: PLR2004


def _share(rows: Sequence[Row], place: int, test: object) -> float:
    cells = [row[place] for row in rows if row[place] is not None]
    return sum(bool(test(cell)) for cell in cells) / len(cells) if cells and callable(test) else 0.0


def _most(rows: Sequence[Row], places: object, test: object) -> int | None:
    shares = {p: _share(rows, p, test) for p in places} if isinstance(places, dict) else {}
    best = max(shares, key=lambda p: shares[p], default=None)
    return best if best is not None and shares[best] >= _SOME else None


def _repeats(rows: Sequence[Row], size: int, measure: int) -> bool:
    """Whether names and sizes come back, as they must where each row is one of their meetings."""
    names = [cell.text for row in rows if (cell := row[measure]) is not None]
    sizes = [cell.text for row in rows if (cell := row[size]) is not None]
    return len(set(names)) < len(names) and len(set(sizes)) <= len(names)


def _read(sheet: Sheet, rows: Sequence[Row], columns: _Columns, found: Found) -> None:
    table = RawTable(sheet.name, "long", [])
    for row in rows[: columns.first - 1]:
        for _, cell in distinct(row):
            _title(table, cell, found)
    for cell in columns.head_cells:
        found.roles[cell.at] = "heading"
    for word in columns.heads.values():
        table.units = table.units or (word.units if len(columns.values) == 1 else ())
    made: dict[tuple[str | None, ...], RawRow] = {}
    current: dict[int, GridCell] = {}
    for row in rows[columns.first :]:
        _entry(row, columns, table, made, current, found)
    table.rows = [entry for entry in made.values() if entry.cells]
    if table.rows:
        found.tables.append(table)
        found.scores.append(1.2)  # a list read as a list explains more than the same list read as a table


def _title(table: RawTable, cell: GridCell, found: Found) -> None:
    word = label(cell)
    if word.prose:
        return
    table.kind = word.kind or table.kind
    table.units = word.units or table.units
    if word.kind or word.units:
        table.title, table.title_at = word.text, cell.at
        found.roles[cell.at] = "title"


def _entry(
    row: Row,
    columns: _Columns,
    table: RawTable,
    made: dict[tuple[str | None, ...], RawRow],
    current: dict[int, GridCell],
    found: Found,
) -> None:
    """One row of the list; a size or measure left blank is that of the row above."""
    for place in (columns.size, columns.measure):
        cell = row[place]
        if cell is not None:
            current[place] = cell
    size, name = current.get(columns.size), current.get(columns.measure)
    if size is None or name is None or not any(row[p] is not None for p in columns.values):
        return
    said = _said(row, columns)
    for place in columns.values:
        cell = row[place]
        if cell is None:
            continue
        head = columns.heads[place]
        entry = _row_of(made, name, said, head)
        entry.cells.setdefault(_size_place(table, size), []).append(RawFigure(cell, _unit(said, head)))
        found.roles |= {cell.at: "value", size.at: "size", name.at: "measure"}


def _said(row: Row, columns: _Columns) -> dict[str, str]:
    said: dict[str, str] = {}
    for place, cell in distinct(row):
        if place not in (columns.size, columns.measure, *columns.values) and is_text(cell):
            said |= attribute(columns.heads.get(place), cell)
            if label(cell).written_as != "full":
                said["written"] = label(cell).written_as
    return said


def _unit(said: dict[str, str], head: Label) -> str | None:
    return said.get("unit") or (head.units[0] if head.units else None)


def _row_of(made: dict[tuple[str | None, ...], RawRow], name: GridCell, said: dict[str, str], head: Label) -> RawRow:
    word = label(name)
    kind = said.get("kind") or word.kind or head.kind
    view = said.get("view") or word.view or head.view
    variant = said.get("variant") or word.cup or word.variant or head.cup or head.variant
    bound = words.bound_in(head.text)
    key = (words.folded(word.text), kind, view, variant, bound)
    if key not in made:
        stated: Kind | None = "body" if kind == "body" else "finished" if kind else None
        row = RawRow(word, name.at, kind=stated, kind_from_row=True, units=word.units, view=view, variant=variant)
        row.bound = bound
        written = said.get("written") or head.written_as
        row.written = "half" if written == "half" else "quarter" if written == "quarter" else row.written
        made[key] = row
    return made[key]


def _size_place(table: RawTable, cell: GridCell) -> int:
    date = recovered_date(cell)
    text = date or shown_label(cell.text)
    for i, size in enumerate(table.sizes):
        if size.label == text:
            return i
    table.sizes.append(RawSize(text, cell.at, date=date is not None))
    return len(table.sizes) - 1
