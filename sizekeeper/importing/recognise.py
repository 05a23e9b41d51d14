"""From the grids of a file to a draft: the tables found on each sheet are settled, joined and doubted."""

from __future__ import annotations

from dataclasses import replace
from functools import partial
from itertools import combinations
from typing import TYPE_CHECKING

from sizekeeper.importing import vocabulary as words
from sizekeeper.importing.bands import label
from sizekeeper.importing.doubts import doubts_between, doubts_of
from sizekeeper.importing.draft import NO_CORRECTIONS, Corrections, Draft, DraftTable, Flag
from sizekeeper.importing.finding import find
from sizekeeper.importing.grid import GridCell, Sheet, place, sheet_of
from sizekeeper.importing.halves import all_flat, bodies_for, suspected
from sizekeeper.importing.joining import join_two_units, join_wrapped
from sizekeeper.importing.kinds import infer_kinds, split_by_kind
from sizekeeper.importing.limits import Progress, check_size, no_progress
from sizekeeper.importing.plain_text import split_lines
from sizekeeper.importing.settle import Settling
from sizekeeper.importing.unit_doubts import is_of_people, unit_doubts
from sizekeeper.importing.units import stated_units

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sizekeeper.importing.raw import Found, RawTable


def recognise(
    source: str,
    sheets: Sequence[Sheet],
    corrections: Corrections = NO_CORRECTIONS,
    progress: Progress = no_progress,
) -> Draft:
    """The draft that a file's sheets make; its tables are empty where nothing like a chart was found.

    Raises:
        ReadError: a sheet lists more measures than any chart.
    """
    split = [_corrected(split_lines(_corrected(sheet, corrections)), corrections) for sheet in sheets]
    found = []
    for i, sheet in enumerate(split):
        tick = partial(progress, i, len(sheets))
        tick()
        found.append(find(sheet, corrections, tick, partial(_check, source)))
    used = [f for f in found if f.tables]
    tables: list[DraftTable] = []
    flags: list[Flag] = []
    for one in used:
        progress(len(sheets), len(sheets))
        drafted, said = _settled(one, corrections)
        tables += drafted
        flags += said
    tables, told = join_two_units(tables, across=True)
    flags += told
    tables, told = _with_halves(tables, flags)
    flags += told
    unset = [table for table in tables if table.key not in corrections.units]
    flags += (flag for table in unset for flag in unit_doubts(table))
    flags += (flag for table in tables for flag in doubts_of(table))
    flags += doubts_between(tables)
    flags += _hidden(sheets, used)
    flags += _across_sheets(sheets, used)
    return Draft(source, tuple(tables), tuple(dict.fromkeys(flags)), tuple(split), {f.sheet: f.roles for f in found})


def _check(source: str, found: Found) -> None:
    check_size(source, measures=sum(len(table.rows) for table in found.tables))


def _corrected(sheet: Sheet, corrections: Corrections) -> Sheet:
    """The sheet with cells changed or left out by hand."""
    changed = {at: text for (name, at), text in corrections.cells.items() if name == sheet.name}
    ignored = {at for name, at in corrections.ignored if name == sheet.name}
    if not changed and not ignored:
        return sheet
    rows = [[_changed(cell, changed, ignored) for cell in row] for row in sheet.rows]
    for at, text in changed.items():
        if "#" not in at:
            r, c = place(at)
            if r < len(rows) and c < len(rows[r]) and rows[r][c] is None and text.strip():
                rows[r][c] = GridCell(at, text)
    made = sheet_of(sheet.name, rows)
    return Sheet(made.name, made.rows, sheet.single_column)


def _changed(cell: GridCell | None, changed: dict[str, str], ignored: set[str]) -> GridCell | None:
    if cell is None or cell.at in ignored:
        return None
    if cell.at in changed:
        return GridCell(cell.at, changed[cell.at]) if changed[cell.at].strip() else None
    return cell


def _settled(found: Found, corrections: Corrections) -> tuple[list[DraftTable], list[Flag]]:
    _kind_around(found)
    raws = join_wrapped([part for table in found.tables for part in split_by_kind(table)])
    inferred = infer_kinds(raws)
    flat = all_flat([c.text for c in [*found.notes, *found.titles]])
    stated = _stated_around(found)
    settled: list[tuple[DraftTable, list[Flag], RawTable]] = []
    for raw in raws:
        raw.units = raw.units or stated
        beside = next((t.unit for t, _, _ in settled if t.unit != "mixed"), None)
        one = Settling(raw, corrections, beside=beside, flat=flat or all_flat([raw.title]))
        table = one.table()
        told = one.flags
        if any(flag.code == "unit_inferred" for flag in told) and not is_of_people(table):
            continue
        if raw in inferred and one.key not in corrections.kinds:
            told.append(Flag("kind_inferred", "", f"nothing says body or finished; read as {table.kind}", found.sheet))
        if raw.wrapped:
            told.append(Flag("wrapped_table", table.sizes[0].at, "one table printed in several blocks", found.sheet))
        settled.append((table, told, raw))
    return _doubted(found, settled)


def _kind_around(found: Found) -> None:
    """Give the tables the kind that a title or note states for the whole sheet, where nothing nearer states one."""
    if any(table.kind or any(row.kind for row in table.rows) for table in found.tables):
        return
    said = {word.kind for cell in [*found.titles, *found.notes] if (word := label(cell)).kind_only}
    if len(said) == 1:
        (kind,) = said
        for table in found.tables:
            table.kind = kind


def _stated_around(found: Found) -> tuple[str, ...]:
    """The unit that a title block or note states for the whole sheet."""
    for cell in found.titles:
        if stated_units(cell.text):
            return stated_units(cell.text)
    for cell in found.notes:
        told = words.STATED_FOR_ALL.search(cell.text) or label(cell).kind_only
        if told and stated_units(cell.text):
            return stated_units(cell.text)
    return stated_units(found.sheet)


def _doubted(
    found: Found, settled: Sequence[tuple[DraftTable, list[Flag], RawTable]]
) -> tuple[list[DraftTable], list[Flag]]:
    tables, dual = join_two_units([t for t, _, _ in settled])
    flags = [flag for _, told, _ in settled for flag in told] + dual
    flags += _sheet_flags(found, tables, [raw for _, _, raw in settled])
    return tables, flags


def _with_halves(tables: Sequence[DraftTable], flags: Sequence[Flag]) -> tuple[list[DraftTable], list[Flag]]:
    """The tables with their girths that may be flat widths marked, and a flag for each."""
    unsure = {(f.sheet, f.note) for f in flags if f.code == "kind_inferred" and not f.at}
    done, told = [], []
    for table in tables:
        inferred = any(sheet == table.sheet and note.endswith(table.kind) for sheet, note in unsure)
        bodies = bodies_for(table, tables)
        rows = []
        for row in table.rows:
            half = suspected(row, table, bodies, kind_inferred=inferred)
            if half:
                told.append(
                    Flag(
                        "half_width_suspected", row.label_at, f"{row.label}: looks like half of the girth", table.sheet
                    )
                )
            rows.append(replace(row, doubt="half_width_suspected") if half else row)
        done.append(replace(table, rows=tuple(rows)))
    return done, told


def _sheet_flags(found: Found, tables: Sequence[DraftTable], raws: Sequence[RawTable]) -> Iterator[Flag]:
    sheet = found.sheet
    if len(tables) > 1 and not _interleaved(raws):
        yield Flag("multi_table", "", f"{len(tables)} tables on one sheet", sheet)
    if found.single_column:
        yield Flag("single_column_text", "", "each line was one cell and is split into figures", sheet)
    rows = [row for table in tables for row in table.rows]
    views = list(dict.fromkeys(row.view for row in rows if row.view))
    if views:
        yield Flag("multi_view", "", f"figures for views {', '.join(views)}", sheet)
    variants = list(dict.fromkeys(row.variant for row in rows if row.variant))
    cups = [v for v in variants if v.endswith(" cup")]
    if cups:
        yield Flag("cup_sizes", "", f"figures for {', '.join(cups)}", sheet)
    if len(variants) > len(cups):
        yield Flag("multi_variant", "", f"figures for {', '.join(v for v in variants if v not in cups)}", sheet)
    for cell in found.left_out:
        yield Flag("not_a_measure", cell.at, f"{cell.text[:40]}: not a measure, left out", sheet)
    if found.titles:
        yield Flag("title_block", found.titles[0].at, "lines above the table are not part of it", sheet)
    if found.notes:
        yield Flag("trailing_note", found.notes[0].at, "lines below the table are not part of it", sheet)


def _interleaved(raws: Sequence[RawTable]) -> bool:
    """Whether body and finished figures alternate within one printed table, as with a column for the kind."""
    if all(raw.orientation == "long" for raw in raws):
        return True
    boxes = [_box(raw) for raw in raws]
    return any(
        first[0] <= second[2] and second[0] <= first[2] and first[1] <= second[3] and second[1] <= first[3]
        for first, second in combinations(boxes, 2)
    )


def _box(raw: RawTable) -> tuple[int, int, int, int]:
    """First row, first column, last row, last column of a table's figures; a line's figures are its columns."""
    cells = [f.cell.at for row in raw.rows for figures in row.cells.values() for f in figures]
    places = [(place(at)[0], int(at.partition("#")[2] or place(at)[1])) for at in cells]
    rows, columns = [r for r, _ in places], [c for _, c in places]
    return min(rows), min(columns), max(rows), max(columns)


def _hidden(sheets: Sequence[Sheet], used: Sequence[Found]) -> Iterator[Flag]:
    """The figures that were read and that the workbook does not show, one flag for each sheet."""
    unseen = {sheet.name: sheet.hidden for sheet in sheets if sheet.hidden}
    for found in used:
        read = [at for at, role in found.roles.items() if role == "value" and at in unseen.get(found.sheet, ())]
        if read:
            first = min(read, key=place)
            yield Flag("hidden_cells", first, f"{len(read)} figures that were read are hidden there", found.sheet)


def _across_sheets(sheets: Sequence[Sheet], used: Sequence[Found]) -> Iterator[Flag]:
    filled = [sheet.name for sheet in sheets if sheet.rows]
    if len(filled) > 1:
        yield Flag("multi_sheet", "", f"tables come from {', '.join(f.sheet for f in used)} of {len(filled)} sheets")
