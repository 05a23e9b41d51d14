"""The ease table of a decision sheet: the sizes around what is cut, region by region, as texts and numbers."""

from __future__ import annotations

import math
from collections.abc import Collection, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from sizekeeper.core.comparison import Comparison
from sizekeeper.core.ease import SAME
from sizekeeper.core.notation import show
from sizekeeper.core.places import place_words, short_place, split
from sizekeeper.core.planned import tried
from sizekeeper.core.result import Fit
from sizekeeper.core.run import along
from sizekeeper.core.sentences import ROLE_WORDS, cut_at
from sizekeeper.core.trousers import SEAT
from sizekeeper.core.work import width_choices
from sizekeeper.reports.sheet import SheetCell, SheetColumn, SheetRow, SheetTable

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sizekeeper.core.planned import Planned
    from sizekeeper.core.regions import Region
    from sizekeeper.core.result import RegionAt, RegionFit
    from sizekeeper.core.wording import Wording

NOTHING = "–"
"""What stands where nothing is known."""
_UNITS = {"cm": "centimetres", "in": "inches"}
_NO_EDGES = (0.0, 0.0, 0.0)


@dataclass(frozen=True)
class Cut:
    """What is cut: the position for each region, and at which regions a toile has the say instead of the print."""

    fit: Fit
    comparison: Comparison
    at: Mapping[str, float]
    tried: Collection[str] = ()
    bust: bool = False
    follows_body: Collection[str] = ()
    """The regions that the work list changes by an amount worked out from the body."""


def cut_of(fit: Fit, comparison: Comparison, planned: Planned | None) -> Cut:
    """What the plan that is shown cuts; without plans, what the verdict names."""
    if planned is None:
        return Cut(fit, comparison, {measure: position for measure, (position, _) in cut_at(fit).items()})
    plan = planned.shown
    at = {measure: region.position for measure, region in plan.regions.items()}
    seat = [choice.level for choice in width_choices(planned) if choice.reason == SEAT]
    return Cut(fit, comparison, at, tried(planned), plan.bust is not None, seat)


def sheet_table(cut: Cut, words: Wording, *, columns_at_most: int, private: bool) -> SheetTable:
    """The table of a sheet.

    Args:
        cut: what is cut, of which comparison.
        words: how figures and measures are said.
        columns_at_most: how many columns there are at most; those that are cut are always there.
        private: only what is cut, without ease and body; see `sheet_making`.
    """
    shown = _cut_positions(cut) if private else _shown(cut, columns_at_most)
    columns = tuple(_column(cut, at) for at in shown)
    regions_at = cut.comparison.at_all(np.array(shown))
    row = _private_row if private else _row
    rows = tuple(
        row(cut, judged, region, [at[region.measure] for at in regions_at], shown, words)
        for judged, region in zip(cut.comparison.regions.found, cut.fit.regions, strict=True)
    )
    left_out = 0 if private else sum(not any(_same(size, at) for at in shown) for size in range(len(cut.fit.labels)))
    what = _what(cut, words, rows, private=private)
    return SheetTable(cut.fit.mode, what, columns, rows, left_out, cut.fit.stretch, cut.bust)


def _column(cut: Cut, at: float) -> SheetColumn:
    labels = cut.fit.labels
    chosen = any(_same(at, position) for position in cut.at.values())
    return SheetColumn(place_words(at, labels), chosen, split(at, len(labels))[1] != 0, short_place(at, labels))


def _same(one: float, other: float) -> bool:
    return abs(one - other) < SAME


def _cut_positions(cut: Cut) -> list[float]:
    return sorted({round(at, 9) for at in cut.at.values()} or {cut.fit.verdict.position})


def _shown(cut: Cut, at_most: int) -> list[float]:
    """The positions with a column: what is cut, the best line on either side, and the listed sizes nearest to it."""
    chosen = _cut_positions(cut)
    ranked = sorted((c for c in cut.fit.candidates if c.between is not None), key=lambda c: c.rank)
    found = list(chosen)
    if len(chosen) == 1:
        at = chosen[0]
        for low, high in ((at - 1, at), (at, at + 1)):
            beside = next((c.position for c in ranked if low + SAME < c.position < high - SAME), None)
            found += [beside] if beside is not None and len(found) < at_most else []
    sizes = [float(size) for size in range(len(cut.fit.labels))]
    nearest = sorted(sizes, key=lambda size: (min(abs(size - at) for at in chosen), size))
    for size in nearest:
        if len(found) < at_most and not any(_same(size, at) for at in found):
            found.append(size)
    return sorted(found)


def _row(
    cut: Cut, judged: Region, region: RegionFit, at: Sequence[RegionAt], shown: Sequence[float], words: Wording
) -> SheetRow:
    asked = None if region.role == "free" else region.asked_cm
    shares = judged.rule.edge_shares
    return SheetRow(
        measure=region.measure,
        name=words.name(region.measure),
        body=show(region.body_cm, words.notation, unit=False),
        body_cm=region.body_cm,
        asked=NOTHING if asked is None else show(asked, words.notation, unit=False),
        asked_cm=asked,
        role=ROLE_WORDS[region.role],
        edges_cm=region.edges,
        edges_share=shares if any(shares) else None,
        cells=tuple(_cell(cut, judged, one, position, words) for one, position in zip(at, shown, strict=True)),
        asked_share=judged.rule.asked_share if asked is not None else 0.0,
        weight=region.weight,
        adjustable=region.role == "adjustable",
    )


def _cell(cut: Cut, region: Region, at: RegionAt, position: float, words: Wording) -> SheetCell:
    by_body = cut.fit.mode == "body"
    amount, printed = (at.diff_cm, at.chart_cm) if by_body else (at.ease_cm, at.finished_cm)
    chosen = _is_cut(cut, region, position)
    short = at.short_cm is not None and at.short_cm > SAME and not (chosen and region.measure in cut.tried)
    return SheetCell(
        amount=NOTHING if amount is None else show(amount, words.notation, unit=False),
        printed=NOTHING if printed is None else show(printed, words.envelope, unit=False),
        band=at.band,
        amount_cm=amount,
        printed_cm=printed,
        short=f"short by {words.sewn(at.short_cm)}" if short and at.short_cm is not None else "",
        interpolated=at.interpolated,
        chosen=chosen,
        chart_cm=None if cut.fit.mode == "my" else _span(region, position),
    )


def _span(region: Region, position: float) -> tuple[float, float] | None:
    """What the body chart gives at a position, from and to; None where it does not."""
    if region.chart is None:
        return None
    low, high = along(np.array([region.chart.low, region.chart.high]), np.array([position]))[:, 0].tolist()
    return None if math.isnan(low) or math.isnan(high) else (low, high)


def _is_cut(cut: Cut, region: Region, position: float) -> bool:
    return _same(cut.at.get(region.measure, cut.fit.verdict.position), position)


def _private_row(
    cut: Cut, judged: Region, region: RegionFit, at: Sequence[RegionAt], shown: Sequence[float], words: Wording
) -> SheetRow:
    cells = tuple(_private_cell(cut, judged, one, position, words) for one, position in zip(at, shown, strict=True))
    return SheetRow(
        measure=region.measure,
        name=words.name(region.measure),
        body="",
        body_cm=None,
        asked="",
        asked_cm=None,
        role=ROLE_WORDS[region.role],
        edges_cm=_NO_EDGES,
        edges_share=None,
        cells=cells,
        weight=region.weight,
        adjustable=region.role == "adjustable",
    )


def _private_cell(cut: Cut, region: Region, at: RegionAt, position: float, words: Wording) -> SheetCell:
    """The printed figure and the band of what is cut; nothing of other sizes, and no amount."""
    whole = _cell(cut, region, at, position, words)
    if not whole.chosen:
        return SheetCell("", NOTHING, None, None, None)
    hidden = region.measure in cut.follows_body or cut.fit.mode == "body"
    return SheetCell(
        amount="",
        printed=NOTHING if hidden else whole.printed,
        band=whole.band,
        amount_cm=None,
        printed_cm=None if hidden else whole.printed_cm,
        short="too small" if whole.short else "",
        interpolated=whole.interpolated and not hidden,
        chosen=True,
    )


def _what(cut: Cut, words: Wording, rows: Sequence[SheetRow], *, private: bool) -> str:
    """What the figures are, in a sentence or two."""
    unit, printed = _UNITS[words.notation.unit], _UNITS[words.envelope.unit]
    if private and cut.fit.mode == "body":
        said = ["Chosen by the body chart alone, so there are no finished figures"]
    elif private:
        said = [f"How it is to sit, and the finished figure in {printed}, as printed"]
    elif cut.fit.mode == "body":
        said = [f"In {unit}: body chart minus body; small, the body chart’s figure in {printed}"]
    else:
        said = [f"Ease in {unit}: finished minus body; small, the finished figure in {printed}, as printed"]
    if any(cell.interpolated for row in rows for cell in row.cells):
        said.append("~ was filled in between two printed figures")
    if cut.bust:
        said.append("what the plan adds at the bust comes on top")
    return f"{'; '.join(said)}."
