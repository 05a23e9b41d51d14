"""How tall a decision sheet will be, roughly: enough to guess at which size of text it fits one page.

A guess only: whether it does fit is seen when it is laid out. All heights are mm at full size, fitted to the template.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Any

from sizekeeper.reports.papers import PAPER_CM

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from sizekeeper.reports.sheet import Paper

MARGINS = 30.0
"""The margins above and below, or left and right together."""
SMALLEST = 0.82
"""The smallest size of text, as a part of the full size: 7.8 points in sentences."""
_STEPS = 14
"""More steps of work than this stand below the plan rather than beside it, as the template has it."""
_PIECES = 4
"""More pieces than this stand in two columns where nothing stands beside them."""
_LINE, _SMALL_LINE, _ROW = 4.1, 3.9, 4.75
_PLACE_FITS = 22
"""Letters of a place of the toile that stand in one line."""
_LETTER = 1.57
"""How wide a letter is on the average."""


def fitting_scale(data: dict[str, Any], paper: Paper) -> float | None:
    """The size of text at which a sheet should fit one page, as a part of the full size; None where none is near."""
    room = 10 * PAPER_CM[paper][1] - MARGINS
    scale = room / height(data, 10 * PAPER_CM[paper][0] - MARGINS)
    if scale >= 1:
        return 1.0
    scale = math.floor(scale * 50) / 50
    return max(scale, SMALLEST) if scale > SMALLEST - 0.06 else None


def height(data: dict[str, Any], width: float) -> float:
    """About how tall the sheet is at full size, mm."""
    return (
        16.0
        + 5.0 * _lines([data["verdict"]], width / 2)
        + _SMALL_LINE * _lines(data["doubts"], width * 1.05)
        + sum(_table(table) for table in data["tables"])
        + _work(data, width)
        + _beside(data, width)
        + _toile(data["toile"])
        + sum(10.5 + 3.75 * len(figures["rows"]) for figures in data["figures"])
    )


def _toile(places: Sequence[str]) -> float:
    long = sum(len(place) > _PLACE_FITS for place in places)
    return 12.0 + 5.2 * len(places) + 2.0 * long if places else 0.0


def _lines(texts: Iterable[str], width: float) -> int:
    return sum(max(1, math.ceil(len(one) * _LETTER / width)) for one in texts)


def _table(table: dict[str, Any]) -> float:
    return 9.0 + sum(13.1 if row["flat"] else 14.6 for row in table["rows"])


def _work(data: dict[str, Any], width: float) -> float:
    """The plan and the pieces, and the work list beside or below them."""
    steps = [step for part in data["work"] for step in part["steps"]]
    beside = len(steps) <= _STEPS and bool(steps)
    half = (width - 8) / 2
    column = half if beside or (steps and data["trace"]) else width
    listed = _steps(data["work"], half if beside else width)
    plan, pieces = _plan(data["plan"], column), _pieces(data["trace"], alone=not steps)
    if beside:
        return max(plan + pieces, listed)
    return (max(plan, pieces) if steps else plan + pieces) + listed


def _plan(plan: dict[str, Any] | None, width: float) -> float:
    if plan is None:
        return 0.0
    said = [one for one in (plan["title"], plan["reason"], plan["advised"], *plan["lines"]) if one]
    return 7.0 + _LINE * _lines(said, width) + 0.3 * len(said)


def _steps(work: Sequence[dict[str, Any]], width: float) -> float:
    if not work:
        return 0.0
    said = [f"{piece}: {words}" for part in work for piece, words, _ in part["steps"]]
    lines = _lines(said, width - 6)
    return 7.0 + 6.2 * len(work) + _ROW * len(said) + 3.6 * (lines - len(said))


def _pieces(trace: Sequence[Sequence[Any]], *, alone: bool) -> float:
    """The pieces to trace; alone they stand in two columns, as the template has it."""
    rows = math.ceil(len(trace) / 2) if alone and len(trace) > _PIECES else len(trace)
    return 7.0 + _ROW * rows if trace else 0.0


def _beside(data: dict[str, Any], width: float) -> float:
    """What to measure again and the cautions, side by side."""
    parts = [part for part in (data["again"], data["cautions"]) if part]
    column = width if len(parts) == 1 else (width - 8) / 2
    return max((8.5 + _LINE * _lines(part, column) + 2.0 * (len(part) - 1) for part in parts), default=0.0)
