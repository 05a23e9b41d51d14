"""Finds the tables of a sheet whichever way they lie, and tells the words around them apart."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from sizekeeper.importing.bands import figure, is_figure, is_text, zones
from sizekeeper.importing.grid import Sheet, area_of, place
from sizekeeper.importing.keys import with_keys
from sizekeeper.importing.letters import as_printed, spelt_out
from sizekeeper.importing.long_list import long_lists
from sizekeeper.importing.raw import Found, Orientation, RawFigure, RawTable, place_blanks
from sizekeeper.importing.spacing import without_spacing
from sizekeeper.importing.tables import tables_across

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from sizekeeper.importing.draft import Corrections

ORIENTATIONS: tuple[Orientation, ...] = ("long", "measures_in_rows", "sizes_in_rows")
_ENOUGH, _ALL = 0.6, 0.85
_STEP, _LEAST, _MOST = 1.25, 20.0, 200.0
"""By how much a figure grows from size to size at most; between what a body's girths lie, in cm or inches (coined)."""


def find(sheet: Sheet, corrections: Corrections, tick: Callable[[], None], check: Callable[[Found], None]) -> Found:
    """What is on a sheet: in the areas set by hand, else wherever it stands.

    `tick` is called now and then on the way; `check` may refuse what was found.
    """
    areas = corrections.areas.get(sheet.name)
    plain, printed = spelt_out(sheet)
    if areas:
        parts = [_oriented(area_of(plain, area), way, tick) for area, way in areas]
        found = _joined(sheet, parts)
        check(found)
    else:
        found = _best(without_spacing(with_keys(plain)), tick)
        check(found)
        _leave_lists(found)
    as_printed(found, printed)
    for table in found.tables:
        place_blanks(table)
    _words_around(sheet, found)
    return found


def _leave_lists(found: Found) -> None:
    """Take out what only looks like a table: figures of no measure we know, that do not grow as sizes of a body do.

    Nor is it left out where it states a unit or a kind, as a chart of measures of its own does.
    """
    for i, table in reversed(list(enumerate(found.tables))):
        headed = not table.unheaded and len(table.sizes) > 1
        of_its_own = headed and (_says_something(table) or _grows_like_a_body(table))
        if not of_its_own and not any(row.label.is_measure for row in table.rows):
            del found.tables[i], found.scores[i]
            for row in table.rows:
                for at in (row.at, *(f.cell.at for figures in row.cells.values() for f in figures)):
                    found.roles.pop(at, None)


def _says_something(table: RawTable) -> bool:
    """Whether a table states a unit or what its figures are, as a chart of measures of its own does."""
    cells = [f for row in table.rows for figures in row.cells.values() for f in figures]
    in_cells = any(f.unit or ((told := figure(f.cell)) and told.amounts[0].unit) for f in cells)
    of_rows = any(row.kind or row.units or row.context_units for row in table.rows)
    return bool(table.kind or table.units or of_rows or in_cells)


def _grows_like_a_body(table: RawTable) -> bool:
    """Whether every row's figures grow from size to size, little by little, and one of them as a girth could."""
    rows = [[float(read.amounts[0].low) for f in figures if (read := figure(f.cell))] for figures in _lines(table)]
    several = [values for values in rows if len(values) > 1]
    steady = all(a <= b <= a * _STEP for values in several for a, b in pairwise(values))
    return steady and any(v[0] >= _LEAST and v[-1] <= _MOST and v[0] < v[-1] for v in several)


def _lines(table: RawTable) -> list[list[RawFigure]]:
    """The first figure of each size, row by row."""
    return [[row.cells[size][0] for size in sorted(row.cells) if row.cells[size]] for row in table.rows]


def _best(sheet: Sheet, tick: Callable[[], None]) -> Found:
    """The reading of the whole sheet, or of its parts where they lie in different ways."""
    whole = _oriented(sheet, None, tick)
    total = sum(map(is_figure, sheet.cells()))
    if not total or _score(whole) >= _ENOUGH * total:
        return whole
    parts = [_oriented(_rows_only(sheet, top, bottom), None, tick) for top, bottom in zones(sheet)]
    joined = _joined(sheet, parts)
    return joined if _score(joined) > _score(whole) else whole


def _rows_only(sheet: Sheet, top: int, bottom: int) -> Sheet:
    return Sheet(sheet.name, sheet.rows[top:bottom], sheet.single_column)


def _oriented(sheet: Sheet, way: Orientation | None, tick: Callable[[], None]) -> Found:
    """The reading that explains most; later ways are left out where an earlier one explains nearly all."""
    total = sum(map(is_figure, sheet.cells()))
    readings: list[Found] = []
    for orientation in (way,) if way else ORIENTATIONS:
        readings.append(_one_way(sheet, orientation, tick))
        if _score(readings[-1]) >= _ALL * total > 0:
            break
    return max(readings, key=_score)


def _one_way(sheet: Sheet, orientation: Orientation, tick: Callable[[], None]) -> Found:
    if orientation == "long":
        return long_lists(sheet)
    return tables_across(sheet if orientation == "measures_in_rows" else sheet.transposed(), orientation, tick)


def _joined(sheet: Sheet, parts: Sequence[Found]) -> Found:
    joined = Found(sheet.name, single_column=sheet.single_column)
    for part in parts:
        joined.tables += part.tables
        joined.scores += part.scores
        joined.roles |= part.roles
        joined.left_out += part.left_out
    return joined


def _score(found: Found) -> float:
    """How many figures a reading explains; figures of measures we know and under sizes that look so count more."""
    total = 0.0
    for table, sure in zip(found.tables, found.scores, strict=True):
        for row in table.rows:
            known = 1.0 if row.label.names.sure > 0.7 else 0.7 if row.label.is_measure else 0.2  # noqa: PLR2004 - see Names
            total += known * sure * sum(is_figure(f.cell) for cells in row.cells.values() for f in cells)
    return total


def _words_around(sheet: Sheet, found: Found) -> None:
    """Texts that no table used: above the first figure a title block, below the last one notes."""
    rows = [place(f.cell.at)[0] for t in found.tables for r in t.rows for cells in r.cells.values() for f in cells]
    if not rows:
        return
    first, last = min(rows), max(rows)
    beside = {place(at)[0] for at, role in found.roles.items() if role in ("size", "measure")}
    first = min([first, *beside])
    seen: set[str] = set()
    for cell in sheet.cells():
        if cell.at in found.roles or cell.at in seen or not is_text(cell):
            continue
        seen.add(cell.at)
        row = place(cell.at)[0]
        if row in beside:
            found.roles[cell.at] = "remark"
        elif row > last:
            found.notes.append(cell)
            found.roles[cell.at] = "note"
        elif row < first:
            found.titles.append(cell)
            found.roles[cell.at] = "title"
        else:
            found.roles[cell.at] = "remark"
