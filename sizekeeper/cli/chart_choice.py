"""The charts of a file that a command works with: one of each kind, chosen by table and view."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sizekeeper.errors import FitError

if TYPE_CHECKING:
    from collections.abc import Sequence
    from pathlib import Path

    from sizekeeper.core.chart import Chart, ChartKind
    from sizekeeper.importing.draft import Draft, DraftTable


def charts_in(file: Path, *, table: str | None, view: str | None) -> tuple[Chart | None, Chart | None]:
    """The body chart and the finished chart to use, of those in a file.

    Args:
        file: the chart file.
        table: the title or the sheet of the table to use, where there are several.
        view: the view whose figures count, where views have figures of their own.

    Raises:
        ReadError: the file cannot be read.
        FitError: two are possible, and neither `table` nor `view` says which.
    """
    from sizekeeper.importing.read import read_file  # noqa: PLC0415 - reading is not wanted for --help
    from sizekeeper.importing.to_chart import to_charts  # noqa: PLC0415 - the same
    from sizekeeper.store.codec import new_id  # noqa: PLC0415 - the same

    draft = read_file(file)
    if table is not None:
        draft = replace(draft, tables=_named(draft, file.name, table))
    charts = to_charts(draft, "", new_id)
    for kind in ("body", "finished"):
        views = [chart.view for chart in charts if chart.kind == kind]
        if len(set(views)) < len(views):
            tables = _names([table for table in draft.tables if table.kind == kind])
            raise FitError(f"{file.name} has several {kind} tables ({tables}); say which with --table.")
    return _one(charts, "body", file.name, view), _one(charts, "finished", file.name, view)


def _named(draft: Draft, file: str, wanted: str) -> tuple[DraftTable, ...]:
    """The tables that --table names, by their title or their sheet, and those of the other kind."""
    name = wanted.casefold()
    exact = [table for table in draft.tables if name in (table.title.casefold(), table.sheet.casefold())]
    named = exact or [table for table in draft.tables if name in f"{table.title} {table.sheet}".casefold()]
    if not named:
        raise FitError(f"{file} has no table “{wanted}”; it has {_names(draft.tables)}.")
    kinds = {table.kind for table in named}
    return tuple(table for table in draft.tables if table in named or table.kind not in kinds)


def _names(tables: Sequence[DraftTable]) -> str:
    """Tables by title and sheet, for a message."""
    titles = [f"“{table.title or 'without a title'}” on sheet “{table.sheet}”" for table in tables]
    return ", ".join(titles)


def _one(charts: list[Chart], kind: ChartKind, file: str, view: str | None) -> Chart | None:
    """The one chart of a kind, of the view that is asked for.

    Raises:
        FitError: the views have figures of their own, and --view does not name one of them.
    """
    found = [chart for chart in charts if chart.kind == kind]
    if view is not None and any(chart.view for chart in found):
        return _of_view(found, view)
    if len(found) > 1:
        views = ", ".join(f"“{chart.view or 'all others'}”" for chart in found)
        raise FitError(f"{file} has {kind} figures for {len(found)} views ({views}); say which with --view.")
    return found[0] if found else None


def _of_view(charts: list[Chart], view: str) -> Chart:
    """The chart of a view, or the one that serves all others.

    Raises:
        FitError: there is neither.
    """
    by_view = {chart.view.casefold(): chart for chart in charts}
    found = by_view.get(view.casefold())
    if found is None:
        views = ", ".join(f"“{chart.view}”" for chart in charts if chart.view)
        raise FitError(f"There is no view “{view}” in the chart; it has {views}.")
    return found
