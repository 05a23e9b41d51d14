"""A draft as the terminal prints it for other programs: the contract of the chart reader."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from sizekeeper.importing.draft import Draft, DraftRow, DraftTable, Flag


def as_json(draft: Draft) -> dict[str, Any]:
    """Tables and flags as plain values; figures are in cm and not rounded."""
    named = len(draft.tables) > 1
    return {"tables": [_table(t, named=named) for t in draft.tables], "flags": [_flag(f) for f in draft.flags]}


def _table(table: DraftTable, *, named: bool) -> dict[str, Any]:
    return {
        "kind": table.kind,
        "sheet": table.sheet,
        "name": (table.title or None) if named else None,
        "unit": table.unit,
        "orientation": table.orientation,
        "sizes": list(table.labels),
        "rows": [_row(row) for row in table.rows],
    }


def _row(row: DraftRow) -> dict[str, Any]:
    return {
        "measure": row.measure,
        "label": row.label,
        "dimension": row.dimension,
        "unit_in_file": row.unit_in_file,
        "written_as": row.written_as,
        "view": row.view,
        "variant": row.variant,
        "same_for_all_sizes": row.same_for_all_sizes,
        "cm": list(row.cm),
        "cm_low": list(row.cm_low) if row.ranged else None,
        "cm_high": list(row.cm_high) if row.ranged else None,
        "at": [cell.at for cell in row.cells],
    }


def _flag(flag: Flag) -> dict[str, str | None]:
    return {"code": flag.code, "at": flag.at or None, "note": flag.note}
