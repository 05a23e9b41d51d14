"""What an entry says, as labelled lines, so that two versions of it can be laid side by side."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sizekeeper.core.chart import Chart
from sizekeeper.core.days import day_words
from sizekeeper.core.learned import Learned
from sizekeeper.core.pattern import Pattern
from sizekeeper.core.person import Person
from sizekeeper.core.piece import Pieces
from sizekeeper.ui.version_sewing import make_lines, pieces_lines

if TYPE_CHECKING:
    import datetime as dt

    from sizekeeper.core.length import Length
    from sizekeeper.core.measure import MeasuredBy, Measures
    from sizekeeper.core.preference import EasePreference
    from sizekeeper.store.codec import Value

_HANDS: dict[MeasuredBy, str] = {"trained": "by a trained hand", "helped": "with help", "alone": "alone"}


def moment_words(moment: dt.datetime) -> str:
    """A moment as `3 October 2026, 14:05`, in the time of this place."""
    here = moment.astimezone()
    return f"{day_words(here.date())}, {here:%H:%M}"


def lines_of(value: Value | None, measures: Measures) -> dict[str, str]:
    """Everything an entry says, by label; what is empty is left out. None, an entry taken away, says nothing."""
    if value is None:
        return {}
    if isinstance(value, Person):
        lines = _person_lines(value, measures)
    elif isinstance(value, Pattern):
        lines = _pattern_lines(value)
    elif isinstance(value, Chart):
        lines = _chart_lines(value, measures)
    elif isinstance(value, Learned):
        lines = {f"“{name}”": measures.name(measure) for name, measure in value.names.items()}
    elif isinstance(value, Pieces):
        lines = pieces_lines(value)
    else:
        lines = make_lines(value, measures)
    return {label: text for label, text in lines.items() if text}


def _yes(truth: bool) -> str:  # noqa: FBT001 - the only thing it takes
    return "yes" if truth else ""


def _typed(length: Length | None) -> str:
    return "" if length is None else length.text or f"{float(length.value):g} {length.unit}"


def _person_lines(person: Person, measures: Measures) -> dict[str, str]:
    lines = {
        "Name": person.name,
        "Unit": person.unit,
        "Born": day_words(person.born) if person.born else "",
        "Child": _yes(person.child),
        "Groups": ", ".join(person.groups),
        "Notes": person.notes,
        "Hidden": _yes(person.hidden),
    }
    for reading in sorted(person.readings, key=lambda r: r.on):
        label = f"{measures.name(reading.measure)}, {day_words(reading.on)}"
        extra = "; ".join(part for part in (_HANDS[reading.by], reading.over, reading.note) if part)
        lines[label] = "; ".join(part for part in (lines.get(label, ""), f"{reading.text} ({extra})") if part)
    for preference in person.preferences:
        lines[f"Ease, {'knit ' if preference.knit else ''}{preference.garment}"] = _ease(preference, measures)
    return lines


def _ease(preference: EasePreference, measures: Measures) -> str:
    parts = [f"size chosen by {measures.name(preference.lead).lower()}"] if preference.lead else []
    for measure, region in preference.regions.items():
        edges = " / ".join(_typed(edge) for edge in region.edges) if region.edges else ""
        own = f"own ease {_typed(region.own)}" if region.own else ""
        said = ", ".join(part for part in (region.band, own, edges, region.role, region.liked) if part)
        if said:
            parts.append(f"{measures.name(measure)}: {said}")
    return "; ".join(parts)


def _pattern_lines(pattern: Pattern) -> dict[str, str]:
    return {
        "Title": pattern.title,
        "Publisher": pattern.publisher,
        "Garment": pattern.garment,
        "Fabric": pattern.fabric,
        "Stretch": f"{pattern.stretch:.0%}" if pattern.stretch else "",
        "Seam allowance": _typed(pattern.seam_allowance),
        "Drafted cup difference": _typed(pattern.drafted_difference),
        "Drafted height": _typed(pattern.drafted_height),
        "Views": ", ".join(pattern.views),
        "Unit": pattern.unit,
        "For a child": _yes(pattern.child),
        "Notes": pattern.notes,
        "Hidden": _yes(pattern.hidden),
    }


def _chart_lines(chart: Chart, measures: Measures) -> dict[str, str]:
    lines = {
        "Name": chart.name,
        "Unit": chart.unit,
        "Sizes": "   ".join(" / ".join(size.names) for size in chart.sizes),
    }
    for row in chart.rows:
        figures = "   ".join(cell.text or "–" for cell in row.cells)
        written = "" if row.written_as == "full" else f" ({row.written_as} width)"
        lines[row.label or measures.name(row.measure)] = figures + written
    return lines
