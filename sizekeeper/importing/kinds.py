"""Whether figures are of the body or of the finished garment: split by what is said, inferred where nothing is."""

from __future__ import annotations

import statistics
from dataclasses import replace
from typing import TYPE_CHECKING

from sizekeeper import assets
from sizekeeper.core.length import CM_PER
from sizekeeper.core.measure import TORSO_GIRTHS, Use
from sizekeeper.importing.bands import figure
from sizekeeper.importing.labels import resolved
from sizekeeper.importing.vocabulary import Kind, kind_in

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sizekeeper.importing.raw import RawRow, RawTable


_SAME = 0.03
"""Girths this near to each other are the same ones, in another unit (coined)."""


def split_by_kind(table: RawTable) -> list[RawTable]:
    """One table for each kind that the rows state, in the order in which they appear; unstated rows stay together."""
    sheet_kind = kind_in(table.sheet)
    for row in table.rows:
        row.kind = row.kind or table.kind or sheet_kind
    stated = {row.kind for row in table.rows} - {None}
    for row in table.rows:
        if row.kind is None and stated:
            row.kind = _beside_stated(row, table, stated)
            row.kind_inferred = _use(row) == "both"
    kinds = list(dict.fromkeys(row.kind for row in table.rows))
    return [replace(table, kind=kind, rows=[row for row in table.rows if row.kind == kind]) for kind in kinds]


def _use(row: RawRow) -> Use:
    """Whose measure a row's is: only a body's, only a garment's, or either's."""
    own = resolved(row.label.names, None, finished_words=False)
    return assets.measures()[own].use if own else "both"


def _beside_stated(row: RawRow, table: RawTable, stated: set[Kind | None]) -> Kind:
    """The kind of a row that says nothing, in a table where other rows do."""
    own = resolved(row.label.names, None, finished_words=False)
    use = _use(row)
    if use != "both":
        return use
    if len(stated) > 1:
        return "finished" if own is None else "body"
    (only,) = stated
    twin = any(other.kind == only and set(other.label.names.ids) & set(row.label.names.ids) for other in table.rows)
    other_kind: Kind = "finished" if only == "body" else "body"
    if twin or only == "finished":
        return other_kind
    return "finished" if own is None else "body"


def infer_kinds(tables: Sequence[RawTable]) -> list[RawTable]:
    """Give a kind to the tables that state none, from their measures and from the other tables; return those."""
    inferred = [table for table in tables if table.kind is None]
    for table in inferred:
        table.kind = _guess(table, [t for t in tables if t.kind is not None and t is not table])
        for row in table.rows:
            row.kind = table.kind
    return inferred


def _guess(table: RawTable, others: Sequence[RawTable]) -> Kind:
    if any(row.label.written_as != "full" for row in table.rows):
        return "finished"
    for other in others:
        ratio = _ratio(table, other)
        if ratio is not None and other.kind and abs(ratio - 1) < _SAME:
            return other.kind
        if ratio is not None and other.kind == "body":
            return "finished"
        if ratio is not None and other.kind == "finished":
            return "body"
    measures = assets.measures()
    ids = [m for row in table.rows if (m := resolved(row.label.names, None, finished_words=False))]
    garment = sum(measures[m].use == "finished" for m in ids)
    body = sum(measures[m].use == "body" for m in ids)
    return "finished" if garment > body else "body"


def _ratio(table: RawTable, other: RawTable) -> float | None:
    """How much larger a table's torso girths are than another's of the same sizes; None where that cannot be said."""
    scale = _per_cm(table) / _per_cm(other)
    if [s.label for s in table.sizes] != [s.label for s in other.sizes]:
        return None
    ratios = []
    for measure in TORSO_GIRTHS:
        ours, theirs = _first_figures(table, measure), _first_figures(other, measure)
        ratios += [scale * a / b for a, b in zip(ours, theirs, strict=False) if b]
    return statistics.median(ratios) if ratios else None


def _per_cm(table: RawTable) -> float:
    units = table.units or next((row.context_units for row in table.rows if row.context_units), ())
    return float(CM_PER[units[0]]) if len(units) == 1 else 1.0


def _first_figures(table: RawTable, measure: str) -> list[float]:
    for row in table.rows:
        if measure in row.label.names.ids:
            found = [figure(cells[0].cell) for _, cells in sorted(row.cells.items())]
            return [float(f.amounts[0].middle()) if f else 0.0 for f in found]
    return []
