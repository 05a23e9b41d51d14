"""Which of a pattern's views there are to choose between, and the chart and the pieces that serve one."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sizekeeper.core.found import filled

if TYPE_CHECKING:
    from collections.abc import Iterable

    from sizekeeper.core.chart import Chart, ChartKind
    from sizekeeper.core.pattern import Pattern
    from sizekeeper.core.piece import Pieces


def views_of(pattern: Pattern, charts: Iterable[Chart], pieces: Pieces | None = None) -> dict[str, str]:
    """The views to choose between and what each is called, by name; empty where there is nothing to choose.

    Views without finished figures of their own share the chart that serves all: they are one choice, named "". Where
    several share it, those with pieces of their own are choices too, so that no plan counts the pieces of two views.
    """
    with_figures = _with_figures(charts)
    own = [view for view in pattern.views if view in with_figures]
    shared = [view for view in pattern.views if view not in with_figures]
    served = "" in with_figures or not with_figures
    cut = {piece.view for piece in pieces.pieces} if pieces is not None and served and len(shared) > 1 else set()
    rest = [view for view in shared if view not in cut]
    named = {view: f"View {view}" for view in pattern.views if view in own or view in cut}
    if not named:
        return {}
    if not served or (shared and not rest):
        return named
    return {"": f"View {' and '.join(rest)}" if rest else "Other views", **named}


def chart_of(charts: Iterable[Chart], kind: ChartKind, view: str) -> Chart | None:
    """The chart of a view with at least one figure, else the one that serves all views."""
    by_view = {chart.view: chart for chart in charts if chart.kind == kind}
    return filled(by_view.get(view) or by_view.get(""))


def shares_chart(charts: Iterable[Chart], view: str) -> bool:
    """Whether a view has no finished figures of its own and is judged by those that serve all views."""
    return bool(view) and view not in _with_figures(charts)


def pieces_in(pieces: Pieces | None, pattern: Pattern, charts: Iterable[Chart], view: str) -> Pieces | None:
    """What is known of the paper of a view: without the pieces that are cut for other views.

    Where the choice "" stands for a single view, that view's lines of fabric serve it as those of all views do.

    Args:
        pieces: all that is known of the pattern's paper.
        pattern: the pattern. A piece whose view it no longer has counts in all views.
        charts: its charts, which say what views the choice "" stands for.
        view: a choice of `views_of`.
    """
    if pieces is None or not pattern.views:
        return pieces
    here = {view} if view else {*pattern.views} - {*views_of(pattern, charts, pieces)}
    left_out = {*pattern.views} - here
    kept = tuple(piece for piece in pieces.pieces if piece.view not in left_out)
    only = next(iter(here)) if not view and len(here) == 1 else ""
    fabric = tuple(replace(line, view="") if line.view == only else line for line in pieces.fabric)
    same = len(kept) == len(pieces.pieces) and fabric == pieces.fabric
    return pieces if same else replace(pieces, pieces=kept, fabric=fabric)


def _with_figures(charts: Iterable[Chart]) -> set[str]:
    """The views whose finished chart has figures, "" for the one that serves all."""
    return {chart.view for chart in charts if chart.kind == "finished" and filled(chart)}
