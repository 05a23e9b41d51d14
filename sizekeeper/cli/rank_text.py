"""A comparison as text for the terminal: the verdict, its doubts, the ease table and the candidates in order."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sizekeeper import assets
from sizekeeper.core import sentences
from sizekeeper.core.notation import show
from sizekeeper.core.places import place_words
from sizekeeper.core.wording import Wording

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sizekeeper.core.notation import Notation
    from sizekeeper.core.result import Candidate, Fit, RegionAt, RegionFit

_SHOWN = 8
"""Candidates that are listed; the JSON has them all."""


def as_text(fit: Fit, name: str, notation: Notation) -> str:
    """The comparison in words and one table.

    Args:
        fit: the comparison.
        name: whose it is.
        notation: how lengths are shown.
    """
    words = Wording(notation, assets.measures().name)
    says = [
        f"{name}: {sentences.headline(fit, words)}",
        *sentences.warnings(fit, words),
        *sentences.doubts(fit, words),
        sentences.chart_says(fit, words),
        sentences.measure_again(fit, words),
        sentences.left_out(fit, words),
    ]
    return "\n".join([*(line for line in says if line), "", *_table(fit, notation)])


def _table(fit: Fit, notation: Notation) -> list[str]:
    what = "body chart minus body" if fit.mode == "body" else "ease (finished minus body)"
    heading = ["", "off by", *(assets.measures().name(region.measure) for region in fit.regions)]
    body = ["body", "", *(show(region.body_cm, notation, unit=False) for region in fit.regions)]
    asked = ["asked", "", *(_asked(region, notation) for region in fit.regions)]
    rows = [_row(candidate, fit, notation) for candidate in fit.candidates[:_SHOWN]]
    unit = "inches" if notation.unit == "in" else "centimetres"
    return [f"{what.capitalize()} in {unit}, best first:", *align([heading, body, asked, *rows])]


def _asked(region: RegionFit, notation: Notation) -> str:
    if region.role == "free":
        return "free"
    return "" if region.asked_cm is None else show(region.asked_cm, notation, unit=False)


def _row(candidate: Candidate, fit: Fit, notation: Notation) -> list[str]:
    off = "" if candidate.misfit_cm is None else show(candidate.misfit_cm, notation, unit=False)
    cells = [_cell(candidate.regions[region.measure], notation) for region in fit.regions]
    return [place_words(candidate.position, fit.labels), off, *cells]


def _cell(at: RegionAt, notation: Notation) -> str:
    amount = at.diff_cm if at.ease_cm is None else at.ease_cm
    if amount is None:
        return "–"
    return f"{show(amount, notation, unit=False)} {at.band or ''}".rstrip()


def align(rows: Sequence[Sequence[str]]) -> list[str]:
    """Rows of text in columns as wide as their widest entry; the first column to the left, the others to the right."""
    widths = [max(len(row[column]) for row in rows) for column in range(len(rows[0]))]
    lines = []
    for row in rows:
        first, *rest = (
            text.ljust(w) if not i else text.rjust(w) for i, (text, w) in enumerate(zip(row, widths, strict=True))
        )
        lines.append("  ".join([first, *rest]).rstrip())
    return lines
