"""From a draft to the charts of a pattern: exact figures, with every cell's text as it was printed."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sizekeeper.core.chart import Cell, Chart, ChartRow, Size
from sizekeeper.core.length import Length

if TYPE_CHECKING:
    from collections.abc import Callable

    from sizekeeper.importing.draft import ChartUnit, Draft, DraftCell, DraftRow, DraftTable


def to_charts(draft: Draft, pattern_id: str, new_id: Callable[[], str]) -> list[Chart]:
    """The draft's tables as charts of a pattern.

    A table with figures for several views makes a chart for each view, and one for the figures that serve all of
    them. Rows of a variant or cup keep it behind their measure's label, and the measure's own row is the first one.

    Args:
        draft: what was read, corrected where needed.
        pattern_id: the pattern the charts belong to.
        new_id: makes an id for each chart.
    """
    return [_chart(table, view, pattern_id, new_id()) for table in draft.tables for view in _views(table)]


def _views(table: DraftTable) -> list[str]:
    return list(dict.fromkeys(row.view or "" for row in table.rows)) or [""]


def _chart(table: DraftTable, view: str, pattern_id: str, chart_id: str) -> Chart:
    rows = [row for row in table.rows if (row.view or "") == view]
    unit = _unit(table, rows)
    seen: set[str] = set()
    return Chart(
        chart_id,
        pattern_id,
        table.kind,
        tuple(Size(size.label, size.aliases) for size in table.sizes),
        tuple(_row(row, seen) for row in rows),
        unit,
        view,
        table.title,
    )


def _unit(table: DraftTable, rows: list[DraftRow]) -> ChartUnit:
    """The table's unit; that of most rows where the rows differ."""
    if table.unit != "mixed":
        return table.unit
    units = [row.unit_in_file for row in rows]
    return max(dict.fromkeys(units), key=units.count)


def _row(row: DraftRow, seen: set[str]) -> ChartRow:
    measure = row.measure
    if row.variant and measure in seen:
        measure = f"{measure}_{row.variant.casefold().replace(' ', '_')}"
    seen.add(row.measure)
    label = (
        row.label
        if not row.variant or row.variant.casefold() in row.label.casefold()
        else f"{row.label}, {row.variant}"
    )
    return ChartRow(
        measure,
        tuple(_cell(cell, row.unit_in_file) for cell in row.cells),
        label,
        row.written_as,
        row.doubt,
    )


def _cell(cell: DraftCell, unit: ChartUnit) -> Cell:
    if cell.low is None or cell.high is None:
        return Cell()
    return Cell(cell.text, Length(cell.low, unit, cell.text), Length(cell.high, unit, cell.text))
