"""What saving a reading does to the library: a new pattern, or new figures in one that is there, said in sentences."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from sizekeeper.core.chart import Chart
from sizekeeper.core.chart_doubts import row_name
from sizekeeper.core.chart_join import joined
from sizekeeper.core.pattern import Pattern
from sizekeeper.importing.halves import for_children

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Sequence

    from sizekeeper.core.chart_join import Joined
    from sizekeeper.core.measure import Measures
    from sizekeeper.core.preference import Garment
    from sizekeeper.importing.draft import DraftTable
    from sizekeeper.importing.opened import Opened

Entry = Pattern | Chart

_GARMENTS: dict[Garment, str] = {
    "trousers": r"trousers?|pants?|shorts|leggings?|jeans|\w*hosen?|pantalon\w*|broek\w*|pantalones",
    "coat": r"coats?|\w*mantel|manteau|jas|abrigo|cappotto",
    "jacket": r"jackets?|blazers?|\w*jacken?|veste|colbert|chaqueta|giacca",
    "dress": r"dress(?:es)?|gowns?|pinafores?|\w*kleid(?:er)?|robes?|jurk|vestido|abito",
    "skirt": r"skirts?|\w*rock|jupes?|rok(?:je)?|falda|gonna",
    "top": r"tops?|shirts?|blouses?|tees?|tunics?|sweater|\w*blusen?|\w*hemd|chemisier|chemise|blusa|cami[sc]\w+",
}
"""Words that name a garment in the six languages of the charts."""


@dataclass(frozen=True, slots=True)
class Plan:
    """The entries before and after saving, and what that changes in sentences, the most telling first."""

    text: str
    pattern: Pattern
    pairs: tuple[tuple[Entry | None, Entry | None], ...]
    changes: tuple[str, ...]


def likely_garment(words: str) -> Garment:
    """The garment that a title names, a dress where it names none."""
    for garment, pattern in _GARMENTS.items():
        if re.search(rf"(?<![^\W_])(?:{pattern})(?![^\W_])", words, re.IGNORECASE):
            return garment
    return "dress"


def likely_child(tables: Iterable[DraftTable]) -> bool:
    """Whether the sizes are children's."""
    return any(for_children(table) for table in tables)


def new_pattern(opened: Opened, entry: str, title: str, garment: Garment, *, child: bool) -> Pattern:
    """The pattern that a reading makes; its unit is that of most tables."""
    units = ["in" if table.unit == "in" else "cm" for table in opened.tables]
    inches = units.count("in") * 2 > len(units)
    return Pattern(entry, title, garment=garment, unit="in" if inches else "cm", child=child)


def plan_new(opened: Opened, pattern: Pattern, measures: Measures, new_id: Callable[[], str]) -> Plan:
    """Saving a reading as a new pattern."""
    charts = _charts_for(opened, pattern, new_id)
    pattern = _with_views(pattern, charts)
    changes = tuple(_says_new(chart, measures) for chart in charts)
    return Plan(f"Import {pattern.title}", pattern, ((None, pattern), *((None, chart) for chart in charts)), changes)


def plan_into(
    opened: Opened, pattern: Pattern, charts: Sequence[Chart], measures: Measures, new_id: Callable[[], str]
) -> Plan:
    """Saving a reading into the charts of a pattern that is there; figures it does not give stay."""
    pairs: list[tuple[Entry | None, Entry | None]] = []
    changes: list[str] = []
    new = _charts_for(opened, pattern, new_id)
    for chart in new:
        old = next((c for c in charts if (c.kind, c.view.casefold()) == (chart.kind, chart.view.casefold())), None)
        if old is None or not (old.sizes or old.rows):
            fresh = chart if old is None else replace(chart, id=old.id, view=old.view)
            pairs.append((old, fresh))
            changes.append(_says_new(chart, measures))
        else:
            result = joined(old, chart)
            pairs.append((old, result.chart))
            changes += _says_joined(old, result, measures)
    after = _with_views(pattern, new)
    return Plan(f"Fill in {pattern.title}", after, ((pattern, after), *pairs), tuple(changes))


def _charts_for(opened: Opened, pattern: Pattern, new_id: Callable[[], str]) -> list[Chart]:
    return [replace(chart, id=new_id(), pattern=pattern.id) for chart in opened.charts]


def _with_views(pattern: Pattern, charts: Iterable[Chart]) -> Pattern:
    known = {view.casefold() for view in pattern.views}
    views = dict.fromkeys(chart.view for chart in charts if chart.view and chart.view.casefold() not in known)
    return replace(pattern, views=(*pattern.views, *views))


def chart_words(chart: Chart) -> str:
    """A chart's name: `Body chart`, `Finished measurements, view B`."""
    name = "Body chart" if chart.kind == "body" else "Finished measurements"
    return f"{name}, view {chart.view}" if chart.view else name


def _says_new(chart: Chart, measures: Measures) -> str:
    labels = [size.label for size in chart.sizes]
    sizes = f"size {labels[0]}" if len(labels) == 1 else f"{len(labels)} sizes, {labels[0]} to {labels[-1]}"
    rows = ", ".join(row_name(row, measures).lower() for row in chart.rows)
    return f"{chart_words(chart)}: {sizes}; {rows}."


def _says_joined(old: Chart, result: Joined, measures: Measures) -> list[str]:
    name = chart_words(old)
    said = [f"{name}: {row_name(c.row, measures)}, size {c.size}: {c.old} becomes {c.new}." for c in result.changed]
    if result.sizes:
        said.append(f"{name}: {_counted('size', result.sizes)} added.")
    if result.rows:
        said.append(f"{name}: {_counted('row', [row_name(row, measures) for row in result.rows])} added.")
    if result.added:
        said.append(f"{name}: {result.added} empty {'place is' if result.added == 1 else 'places are'} filled in.")
    return said or [f"{name}: nothing changes."]


def _counted(what: str, names: Sequence[str]) -> str:
    return f"{what} {names[0]} is" if len(names) == 1 else f"{what}s {', '.join(names)} are"
