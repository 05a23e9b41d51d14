"""Edits of a pattern's views: each can have figures, pieces and fabric of its own beside those of all."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sizekeeper.core.chart_edit import cleared

if TYPE_CHECKING:
    from sizekeeper.core.chart import Chart
    from sizekeeper.core.pattern import Pattern
    from sizekeeper.core.piece import Pieces


def with_view(pattern: Pattern, source: Chart, name: str, entry: str, *, copied: bool) -> tuple[Pattern, Chart]:
    """The pattern with one more view, and that view's finished chart.

    Args:
        pattern: the pattern.
        source: the finished chart to start from: its sizes and measures, and its figures if they are copied.
        name: the view's name.
        entry: the id of the new chart.
        copied: whether the figures are copied too.
    """
    chart = replace(source, id=entry, view=name)
    if not copied:
        chart = cleared(chart, [(r, c) for r in range(len(chart.rows)) for c in range(len(chart.sizes))])
    return replace(pattern, views=(*pattern.views, name)), chart


def with_view_renamed(pattern: Pattern, old: str, name: str) -> Pattern:
    """The pattern with another name for a view, in the same place."""
    return replace(pattern, views=tuple(name if view == old else view for view in pattern.views))


def without_view(pattern: Pattern, name: str) -> Pattern:
    """The pattern without a view."""
    return replace(pattern, views=tuple(view for view in pattern.views if view != name))


def pieces_with_view_renamed(pieces: Pieces, old: str, name: str) -> Pieces:
    """What is known of the paper, with another name for a view."""
    return replace(
        pieces,
        pieces=tuple(replace(piece, view=name) if piece.view == old else piece for piece in pieces.pieces),
        fabric=tuple(replace(line, view=name) if line.view == old else line for line in pieces.fabric),
    )


def pieces_without_view(pieces: Pieces, name: str) -> Pieces:
    """What is known of the paper, without the pieces and the fabric of a view."""
    return replace(
        pieces,
        pieces=tuple(piece for piece in pieces.pieces if piece.view != name),
        fabric=tuple(line for line in pieces.fabric if line.view != name),
    )
