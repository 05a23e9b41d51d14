"""The measures a new chart starts with: what envelopes usually print for a garment (common practice, no source)."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sizekeeper.core.chart import Cell, ChartRow

if TYPE_CHECKING:
    from sizekeeper.core.chart import Chart, ChartKind
    from sizekeeper.core.preference import Garment

_BODICE = ("bust", "waist", "hip", "back_waist_length")
_BODY: dict[Garment, tuple[str, ...]] = {
    "dress": _BODICE,
    "top": _BODICE,
    "skirt": ("waist", "hip"),
    "trousers": ("waist", "hip", "inseam"),
    "jacket": _BODICE,
    "coat": _BODICE,
}
_FINISHED: dict[Garment, tuple[str, ...]] = {
    "dress": ("bust", "waist", "hip", "garment_back_length"),
    "top": ("bust", "waist", "hip", "sleeve_length", "garment_back_length"),
    "skirt": ("waist", "hip", "hem", "skirt_length"),
    "trousers": ("waist", "hip", "thigh", "inseam", "trouser_hem"),
    "jacket": ("bust", "waist", "hip", "upper_arm", "sleeve_length", "garment_back_length"),
    "coat": ("bust", "waist", "hip", "upper_arm", "sleeve_length", "garment_back_length"),
}


def starting_measures(kind: ChartKind, garment: Garment, *, child: bool = False) -> tuple[str, ...]:
    """The ids of the measures a chart for a garment starts with; children's body charts lead with the height."""
    if kind == "finished":
        return _FINISHED[garment]
    return ("height", *_BODY[garment]) if child else _BODY[garment]


def with_starting_rows(chart: Chart, garment: Garment, *, child: bool = False) -> Chart:
    """The chart with the measures it lacks of those a chart for the garment starts with; their figures are empty."""
    lacking = [m for m in starting_measures(chart.kind, garment, child=child) if chart.row(m) is None]
    rows = tuple(ChartRow(measure, tuple(Cell() for _ in chart.sizes)) for measure in lacking)
    return replace(chart, rows=chart.rows + rows)
