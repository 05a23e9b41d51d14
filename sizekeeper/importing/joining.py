"""Tables that are one: a chart wrapped into blocks, and the same chart printed once in cm and once in inches."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import TYPE_CHECKING

from sizekeeper.importing.amounts import disagree
from sizekeeper.importing.draft import DraftRow, DraftTable, Flag
from sizekeeper.importing.figures import Amount
from sizekeeper.importing.labels import resolved
from sizekeeper.importing.raw import RawRow, RawTable, place_blanks
from sizekeeper.importing.vocabulary import SIZE, folded

if TYPE_CHECKING:
    from collections.abc import Sequence

_CONTINUED = re.compile(
    r"\b(?:cont(?:inued|'?d|\.)?|continues|forts(?:etzung|\.)|suite|vervolg|continuación|continúa|continua|segue)\b",
    re.IGNORECASE,
)
_SHARED = 0.8
_NEAR = 12


def join_wrapped(tables: Sequence[RawTable]) -> list[RawTable]:
    """The tables, with each block that goes on with further sizes of the one before joined to it."""
    joined: list[RawTable] = []
    for table in tables:
        start = next((t for t in reversed(joined[-_NEAR:]) if _goes_on(t, table)), None)
        if start is None and joined and _adds_measures(joined[-1], table):
            joined[-1].rows += [replace(row, kind=joined[-1].kind) for row in table.rows]
            joined[-1].wrapped = True
        elif start is None:
            joined.append(table)
        else:
            _append(start, table)
    return joined


def _goes_on(first: RawTable, second: RawTable) -> bool:
    same_kind = second.kind in (first.kind, None) or (first.kind is None and not second.titled)
    if first.sheet != second.sheet or first.orientation != second.orientation or not same_kind:
        return False
    if {s.label for s in first.sizes} & {s.label for s in second.sizes} or not second.rows:
        return False
    if second.title and folded(second.title) != folded(first.title) and not _says_only_where(second.title):
        return False
    ours, theirs = {_key(row) for row in first.rows}, {_key(row) for row in second.rows}
    return len(ours & theirs) >= _SHARED * max(len(ours), len(theirs))


def _adds_measures(first: RawTable, second: RawTable) -> bool:
    """Whether a block repeats the head of the one above it, as on a new page, and goes on with other measures."""
    if any(getattr(first, name) != getattr(second, name) for name in ("sheet", "orientation", "units")):
        return False
    same_head = [s.label for s in first.sizes] == [s.label for s in second.sizes]
    names = [{folded(row.label.text) for row in table.rows} for table in (first, second)]
    if not same_head or names[0] & names[1] or first.kind is None:
        return False
    if second.title:
        return first.kind == second.kind and folded(first.title) == folded(second.title)
    return second.kind in (None, first.kind) and not (first.kind == "body" and any(map(_is_garments, second.rows)))


def _is_garments(row: RawRow) -> bool:
    """Whether a row's measure is one that only a garment has."""
    return resolved(row.label.names, "finished", finished_words=False) != resolved(
        row.label.names, "body", finished_words=False
    )


def _says_only_where(title: str) -> bool:
    """Whether a block's title says no more than that it goes on, or with which sizes."""
    return bool(_CONTINUED.search(title)) or _names_sizes(title)


def _names_sizes(title: str) -> bool:
    return bool(SIZE.search(title)) and not re.search(r"[^\W\d_]{4,}", SIZE.sub("", title))


def _key(row: RawRow) -> tuple[str | None, ...]:
    return (folded(row.label.text), row.view, row.variant, *row.units)


def _append(first: RawTable, second: RawTable) -> None:
    """Add the second block's sizes, and its figures to the rows of the same name."""
    place_blanks(first)
    place_blanks(second)
    offset = len(first.sizes)
    first.sizes = [*first.sizes, *second.sizes]
    first.wrapped = True
    if _names_sizes(first.title):
        first.title = ""
    first.kind = first.kind or second.kind
    mine = {_key(row): row for row in first.rows}
    for row in second.rows:
        target = mine.get(_key(row))
        moved = {i + offset: figures for i, figures in row.cells.items()}
        blanks = {i + offset: at for i, at in row.blanks.items()}
        if target is None:
            first.rows.append(replace(row, cells=moved, blanks=blanks))
        else:
            target.cells |= moved
            target.blanks |= blanks


def join_two_units(tables: Sequence[DraftTable], *, across: bool = False) -> tuple[list[DraftTable], list[Flag]]:
    """The tables without those that repeat an earlier one in another unit, and flags for what was found so.

    With `across`, tables of different sheets are looked at, and joined only where all their figures agree.
    """
    kept: list[DraftTable] = []
    flags: list[Flag] = []
    for table in tables:
        first = next((t for t in kept[-_NEAR:] if (t.sheet != table.sheet) is across and _repeats(t, table)), None)
        if first is None:
            kept.append(table)
            continue
        doubts = [d for row in table.rows for d in _disagreements(_same_row(first, row), row, table.sheet)]
        if across and doubts:
            kept.append(table)
            continue
        note = f"the table is printed twice, in {first.unit} and in {table.unit}; {first.unit} is taken"
        flags.append(Flag("dual_unit", table.sizes[0].at, note, table.sheet))
        flags += doubts
    return kept, flags


def _same_row(first: DraftTable, row: DraftRow) -> DraftRow:
    return next(r for r in first.rows if (r.measure, r.view, r.variant) == (row.measure, row.view, row.variant))


def _repeats(first: DraftTable, second: DraftTable) -> bool:
    same = first.kind == second.kind and first.labels == second.labels
    if not same or first.unit == second.unit or "mixed" in (first.unit, second.unit):
        return False
    ours, theirs = ([(r.measure, r.view, r.variant) for r in t.rows] for t in (first, second))
    return bool(theirs) and set(theirs) <= set(ours)


def _disagreements(first: DraftRow, second: DraftRow, sheet: str) -> list[Flag]:
    step = min(cell.step for cell in second.cells)
    flags = []
    for ours, theirs in zip(first.cells, second.cells, strict=True):
        if ours.low is None or ours.high is None or theirs.low is None or theirs.high is None:
            continue
        a = Amount(ours.low, ours.high, first.unit_in_file, ours.step)
        b = Amount(theirs.low, theirs.high, second.unit_in_file, theirs.step)
        if disagree(a, b, step):
            flags.append(Flag("dual_unit_disagrees", ours.at, f"{first.label}: {ours.text} and {theirs.text}", sheet))
    return flags
