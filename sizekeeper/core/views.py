"""Which of a pattern's views there are to choose between, and the chart that serves one."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sizekeeper.core.found import filled

if TYPE_CHECKING:
    from collections.abc import Iterable

    from sizekeeper.core.chart import Chart, ChartKind
    from sizekeeper.core.pattern import Pattern


def views_of(pattern: Pattern, charts: Iterable[Chart]) -> dict[str, str]:
    """The views to choose between and what each is called, by name; empty where there is nothing to choose.

    Views without finished figures of their own share the chart that serves all: they are one choice, named "".
    """
    with_figures = {chart.view for chart in charts if chart.kind == "finished" and filled(chart)}
    own = {view: f"View {view}" for view in pattern.views if view in with_figures}
    others = [view for view in pattern.views if view not in with_figures]
    if not own:
        return {}
    if "" not in with_figures:
        return own
    return {"": f"View {' and '.join(others)}" if others else "Other views", **own}


def chart_of(charts: Iterable[Chart], kind: ChartKind, view: str) -> Chart | None:
    """The chart of a view with at least one figure, else the one that serves all views."""
    by_view = {chart.view: chart for chart in charts if chart.kind == kind}
    return filled(by_view.get(view) or by_view.get(""))
