"""The figures a decision sheet rests on: her measurements with day and hand, and the rows of the pattern's charts."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sizekeeper.core.days import day_words
from sizekeeper.core.found_words import HANDS
from sizekeeper.core.lengths import BODY_LENGTH
from sizekeeper.core.notation import show
from sizekeeper.core.reading_edit import shown_text
from sizekeeper.core.work import chains
from sizekeeper.reports.sheet import SheetFigures

if TYPE_CHECKING:
    from collections.abc import Collection
    from typing import Literal

    from sizekeeper.core.chart import Chart, ChartRow
    from sizekeeper.core.found import Found
    from sizekeeper.core.planned import Planned
    from sizekeeper.core.reading_edit import Figure
    from sizekeeper.core.wording import Wording

_TITLES = {"body": "Body chart", "finished": "Finished measurements"}
_WRITTEN = {"full": "", "half": ", as half", "quarter": ", as quarter"}
_UNITS: dict[str, str] = {"cm": "cm", "in": "inches", "mm": "mm"}


def figures_of(found: Found, planned: Planned | None, words: Wording) -> tuple[SheetFigures, ...]:
    """Her figures and the chart rows, as far as they were compared or lengths rest on them."""
    used = _used(found, planned)
    body, finished = found.laid
    made = [_body_figures(found, used, words)]
    made += [_chart_figures(chart, used, words) for chart in (finished, body) if chart is not None]
    return tuple(figures for figures in made if figures.rows)


def _used(found: Found, planned: Planned | None) -> frozenset[str]:
    """The measures compared, and those that lengths and the bust adjustment are worked out from."""
    used = {region.measure for region in found.fit.regions} if found.fit is not None else set()
    if found.fit is not None:
        used |= set(found.fit.chart_says)
    if planned is not None:
        used |= {BODY_LENGTH[chain] for chain in chains(planned)}
        used |= {"high_bust"} if planned.planner.bust() is not None else set()
        if found.pattern.garment == "trousers":
            used |= {"crotch_length", "crotch_depth", "front_rise", "thigh"}
    return frozenset(used)


def _body_figures(found: Found, used: Collection[str], words: Wording) -> SheetFigures:
    across = ("figure", "measured", "how", "may be off by")
    rows = [
        (words.name(measure), _reading(found, figure, tolerance.tolerance_cm, words))
        for measure, tolerance in found.body.items()
        if measure in used and (figure := found.figure(measure)) is not None
    ]
    return SheetFigures("Body measurements", across, tuple(rows))


def _reading(found: Found, figure: Figure, tolerance_cm: float, words: Wording) -> tuple[str, ...]:
    """The figure as typed, or the middle of several; the day, the hand, and what it may be off by."""
    last = figure.last
    how = HANDS[last.by] + (f", over {last.over}" if last.over else "")
    text = shown_text(last, found.person.unit)
    if figure.count > 1 and figure.exact_cm is not None:
        text = show(figure.exact_cm, words.notation, unit=False)
        how = f"{how}, the middle of {figure.count}"
    elif last.length is not None and (last.length.unit in ("in", "ft", "yd")) != (words.notation.unit == "in"):
        text = f"{text} = {words.length(last.length.cm)}"
    return text, day_words(last.on), how, words.length(tolerance_cm)


def _chart_figures(chart: Chart, used: Collection[str], words: Wording) -> SheetFigures:
    """The rows of a chart, figures as they are printed, over all its sizes."""
    unit: Literal["cm", "in", "mm"] = chart.unit
    view = f", view {chart.view}" if chart.view else ""
    return SheetFigures(
        f"{_TITLES[chart.kind]}{view}, in {_UNITS[unit]}",
        tuple(size.label for size in chart.sizes),
        tuple(
            (f"{words.name(row.measure)}{_WRITTEN[row.written_as]}", _texts(row, len(chart.sizes)))
            for row in chart.rows
            if row.measure in used
        ),
    )


def _texts(row: ChartRow, sizes: int) -> tuple[str, ...]:
    texts = [cell.text.strip() or "–" for cell in row.cells[:sizes]]
    return (*texts, *["–"] * (sizes - len(texts)))
