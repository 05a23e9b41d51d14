"""Finds the people on a sheet: the row of headings, whether a person has a row or a column, and the rows below."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sizekeeper.importing.figures import figure_in
from sizekeeper.importing.grid import GridCell, Sheet, address, place
from sizekeeper.importing.labels import label_of
from sizekeeper.importing.limits import Progress, no_progress
from sizekeeper.importing.people_columns import column_of
from sizekeeper.importing.people_draft import Column, Table
from sizekeeper.importing.people_words import either_of, field_of, of_reading
from sizekeeper.importing.units import stated_units, unit_of
from sizekeeper.importing.vocabulary import STATED_FOR_ALL

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from sizekeeper.importing.grid import Row
    from sizekeeper.importing.people_draft import PeopleAnswers

_DEEP, _WIDE = 40, 150
"""How far down and across headings are looked for (coined)."""

_LONGEST_HEADING = 80
_LEAST = 2.0
_KNOWN = 0.8


def with_answers(sheet: Sheet, answers: PeopleAnswers) -> Sheet:
    """The sheet with the texts that were typed over its cells, and without the cells that were left out."""
    texts = {at: text for (name, at), text in answers.cells.items() if name == sheet.name}
    left = {at for name, at in answers.ignored if name == sheet.name}
    if not texts and not left:
        return sheet
    rows = [[None if cell is None or cell.at in left else _typed(cell, texts) for cell in row] for row in sheet.rows]
    for at, text in texts.items():
        r, c = place(at)
        if r < len(rows) and c < len(rows[r]) and sheet.rows[r][c] is None and text and at not in left:
            rows[r][c] = GridCell(at, text)
    return replace(sheet, rows=tuple(tuple(row) for row in rows))


def _typed(cell: GridCell, texts: dict[str, str]) -> GridCell | None:
    if cell.at not in texts:
        return cell
    return GridCell(cell.at, texts[cell.at]) if texts[cell.at] else None


def likeness(sheet: Sheet, progress: Progress = no_progress) -> float:
    """How much the best row or column of headings looks like that of a table of people; 0 where there is none."""
    return max((score for score, _, _ in _places(sheet, progress)), default=0.0)


def find_table(
    sheets: Sequence[Sheet], answers: PeopleAnswers, progress: Progress = no_progress
) -> tuple[Sheet, bool, int] | None:
    """The sheet, whether it is turned, and the row of headings: as set by hand, else where most headings are known."""
    best: tuple[float, Sheet, bool, int] | None = None
    for sheet in sheets:
        if answers.sheet not in (None, sheet.name):
            continue
        for score, turned, head in _places(sheet, progress):
            wanted = answers.turned in (None, turned) and answers.head in (None, head)
            if wanted and (best is None or score > best[0]):
                best = (score, sheet, turned, head)
    if best is not None and (best[0] >= _LEAST or answers.head is not None):
        return best[1:]
    return _by_hand(sheets, answers)


def _by_hand(sheets: Sequence[Sheet], answers: PeopleAnswers) -> tuple[Sheet, bool, int] | None:
    sheet = next((sheet for sheet in sheets if answers.sheet in (None, sheet.name)), None)
    if sheet is None or answers.head is None:
        return None
    turned = bool(answers.turned)
    return (sheet, turned, answers.head) if answers.head < (sheet.width if turned else len(sheet.rows)) else None


def _places(sheet: Sheet, progress: Progress) -> Iterable[tuple[float, bool, int]]:
    """How much each of the first rows, and then of the first columns, looks like headings."""
    for turned in (False, True):
        grid = sheet.transposed() if turned else sheet
        for i, row in enumerate(grid.rows[:_DEEP]):
            progress(i, _DEEP)
            if i + 1 < len(grid.rows):
                yield _score(row[:_WIDE]), turned, i


def _score(row: Iterable[GridCell | None]) -> float:
    """How many headings of a row are known; the people's name counts more than anything else."""
    score = 0.0
    for cell in {cell.at: cell for cell in row if cell is not None}.values():
        text = cell.text
        if len(text) > _LONGEST_HEADING or cell.number is not None or figure_in(text) is not None:
            continue
        field = field_of(text)
        if field:
            score += 2.0 if field in ("name", "given", "family") else 1.0
        elif of_reading(text)[1] or either_of(text):
            score += 0.5
        elif label_of(text).names.sure >= _KNOWN:
            score += 1.0
    return score


def table_at(sheet: Sheet, answers: PeopleAnswers, turned: bool, head: int) -> Table:  # noqa: FBT001 - as found
    """The table below a row of headings, each heading taken for what it says or what was set by hand."""
    grid = sheet.transposed() if turned else sheet
    heads, rows = grid.rows[head], list(enumerate(grid.rows))[head + 1 :]
    columns = [column_of(c, address(c, head) if turned else address(head, c), cell) for c, cell in enumerate(heads)]
    units: dict[int, str] = {}
    if rows and (units := _units_row(rows[0][1])):
        rows = rows[1:]
    texts = [cell.text if cell else "" for cell in heads]
    kept = [(r, row) for r, row in rows if any(row) and not _repeats(row, texts) and not _is_note(row)]
    unit = _unit_for_all([row for r, row in enumerate(grid.rows) if r < head or (any(row) and _is_note(row))])
    return Table(grid, turned, head, tuple(_with_hand(c, units, answers) for c in columns), tuple(kept), unit)


def _with_hand(column: Column, units: dict[int, str], answers: PeopleAnswers) -> Column:
    unit = answers.units.get(column.at) or column.unit or units.get(column.place, "")
    if column.at in answers.roles:
        column = replace(column, role=answers.roles[column.at], choices=(), sure=1.0)
    return replace(column, unit=unit, times=answers.times.get(column.at, column.times))


def _units_row(row: Row) -> dict[int, str]:
    """The units that a row right below the headings gives, by column; none where the row says anything else."""
    units = {c: unit_of(cell.text) for c, cell in enumerate(row) if cell is not None}
    return {c: unit for c, unit in units.items() if unit} if all(units.values()) else {}


def _repeats(row: Row, texts: Sequence[str]) -> bool:
    """Whether a row prints the headings again, as on a further page."""
    said = [(cell.text if cell else "") for cell in row]
    return said == list(texts)


def _is_note(row: Row) -> bool:
    """Whether a row is one sentence about all the figures."""
    told = {cell.at: cell.text for cell in row if cell is not None}
    return len(told) == 1 and any(STATED_FOR_ALL.search(text) for text in told.values())


def _unit_for_all(rows: Iterable[Row]) -> str:
    """The unit that the lines above the headings, or notes below, state for every figure; none where they differ."""
    found = {
        unit
        for row in rows
        for cell in row
        if cell is not None and len(cell.text) <= _LONGEST_HEADING
        for unit in stated_units(cell.text)
    }
    return found.pop() if len(found) == 1 else ""
