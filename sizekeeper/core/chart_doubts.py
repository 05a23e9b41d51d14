"""What looks odd in a chart: said beside it, never in the way of typing.

Every doubt is a whole sentence; where one thing would mend it, the doubt carries that as a `Remedy`.
"""

from __future__ import annotations

import itertools
import statistics
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from sizekeeper.core.cells import parse_cell
from sizekeeper.core.chart import TIMES, Chart, ChartRow

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sizekeeper.core.measure import Dimension, Measures

Code = Literal["unreadable", "turned", "slip", "falls", "uneven_step", "half_width", "range", "pair"]
_Run = list[tuple[int, float]]

UNEVEN = 0.5
"""How far off the row's median step a step is uneven, as a share of it (the program's design)."""
SAME = 1e-6
"""Figures and steps this near each other are equal; cm."""
SLIP_TIMES = 3
"""How many times the row's usual step an end figure must be off to be taken for a slip (coined)."""
HALF_SPAN = (0.4, 0.6)
"""The share of the body's girth between which a finished girth is probably printed flat (coined)."""


@dataclass(frozen=True, slots=True)
class Remedy:
    """The one thing that would mend a doubt: what the button says, and a cell's new text or a row's way of writing."""

    text: str
    kind: Literal["cell", "half", "full", "turn"]
    cell: str = ""


@dataclass(frozen=True, slots=True)
class Doubt:
    """One thing that looks odd, where it is, and what would mend it. Row and column are None for the whole chart."""

    code: Code
    says: str
    row: int | None = None
    column: int | None = None
    remedies: tuple[Remedy, ...] = ()


def doubts(chart: Chart, measures: Measures, body: Chart | None = None) -> list[Doubt]:
    """What looks odd in a chart by itself, from the top down.

    Args:
        chart: the chart to look at.
        measures: the known measures, for their names and dimensions.
        body: the pattern's body chart, where the chart is the finished one: girths printed flat show against it.
    """
    if _turned(chart):
        remedy = Remedy("Turn the sizes round", "turn")
        return [Doubt("turned", "The figures fall from size to size: the smallest size comes first.", None, None,
                      (remedy,))]  # fmt: skip
    found: list[Doubt] = []
    for index, row in enumerate(chart.rows):
        name = row_name(row, measures)
        found += _unreadable(chart, index, name)
        found += _ranges_in_finished(chart, index, name)
        flat = _printed_flat(chart, index, name, dimension(row, measures), body)
        found += flat or _out_of_line(chart, index, name)
    return found


def row_name(row: ChartRow, measures: Measures) -> str:
    """What a row is called: the measure's trade name, or the label of a measure of the user's own."""
    return measures.name(row.measure) if row.measure in measures or not row.label else row.label


def dimension(row: ChartRow, measures: Measures) -> Dimension | None:
    """Whether a row is a girth, a length or a width; None for a measure of the user's own."""
    return measures[row.measure].dimension if row.measure in measures else None


def _figures(row: ChartRow) -> _Run:
    """The middle of each given figure in cm as written, with its column."""
    found = []
    for column, cell in enumerate(row.cells):
        if cell.low is not None and cell.high is not None:
            middle = cell.low.cm if cell.low == cell.high else (cell.low.cm + cell.high.cm) / 2
            found.append((column, middle))
    return found


def _unreadable(chart: Chart, index: int, name: str) -> list[Doubt]:
    bad = [i for i, cell in enumerate(chart.rows[index].cells) if cell.bad]
    if not bad:
        return []
    where = _listed([chart.sizes[i].label for i in bad])
    counts = "counts" if len(bad) == 1 else "count"
    return [Doubt("unreadable", f"{name} {where}: no figure, {counts} as missing.", index, bad[0])]


def _ranges_in_finished(chart: Chart, index: int, name: str) -> list[Doubt]:
    if chart.kind != "finished":
        return []
    for column, cell in enumerate(chart.rows[index].cells):
        if cell.low != cell.high:
            says = f"{name} {chart.sizes[column].label}: a finished garment has one figure, not a range."
            return [Doubt("range", says, index, column)]
    return []


def _turned(chart: Chart) -> bool:
    """Whether the figures of every row fall all along: the table runs from large to small."""
    runs = [[v for _, v in _figures(row)] for row in chart.rows]
    falling = [all(a > b + SAME for a, b in itertools.pairwise(run)) for run in runs if len(run) > 1]
    return len(falling) > 1 and all(falling) and max(len(run) for run in runs) > 2  # noqa: PLR2004 - two may be a slip


def _printed_flat(chart: Chart, index: int, name: str, dimension: Dimension | None, body: Chart | None) -> list[Doubt]:
    """A girth that may be half a girth: marked so when it was read, or about half of the body's."""
    row = chart.rows[index]
    suspected = bool(row.doubt)
    if not suspected and body is not None and row.written_as == "full" and dimension == "girth":
        other = body.row(row.measure)
        pairs = _paired(chart, row, body, other) if other else []
        suspected = bool(pairs) and all(HALF_SPAN[0] <= mine / theirs <= HALF_SPAN[1] for _, mine, theirs in pairs)
    if not suspected:
        return []
    remedies = (Remedy("It is half the girth", "half"), Remedy("It is the whole girth", "full"))
    says = f"{name}: these look like widths measured flat, half of the girth."
    return [Doubt("half_width", says, index, None, remedies if row.doubt else remedies[:1])]


def _out_of_line(chart: Chart, index: int, name: str) -> list[Doubt]:
    """Typing slips, falls and uneven steps of one row; a slip explains the steps beside it."""
    run = _figures(chart.rows[index])
    slip = _slip(run)
    if slip is not None:
        return [_slip_doubt(chart, index, name, run, slip)]
    steps = [(a, b, (after - before) / (b - a)) for (a, before), (b, after) in itertools.pairwise(run)]
    usual = statistics.median(step for *_, step in steps) if steps else 0.0
    falls = [(a, b) for a, b, step in steps if step < -SAME]
    uneven = [(a, b) for a, b, step in steps if abs(step - usual) > UNEVEN * abs(usual) + SAME]
    if falls:
        return [_steps_doubt(chart, index, "falls", f"{name} falls", falls)]
    return [_steps_doubt(chart, index, "uneven_step", f"{name}: the step is uneven", uneven)] if uneven else []


def _steps_doubt(chart: Chart, index: int, code: Code, start: str, pairs: list[tuple[int, int]]) -> Doubt:
    """One sentence for all steps of a row that fall, or are uneven."""
    where = _listed([f"from {chart.sizes[before].label} to {chart.sizes[after].label}" for before, after in pairs])
    return Doubt(code, f"{start} {where}.", index, pairs[0][1])


def _slip(run: _Run) -> int | None:
    """The one figure that is out of step while all others are in order; None when there is no such figure."""
    values = [v for _, v in run]
    if len(values) < 3:  # noqa: PLR2004 - with two figures nobody knows which is wrong
        return None
    if _in_order(values):
        return _end_slip(values)
    odd = [i for i in range(len(values)) if _in_order(values[:i] + values[i + 1 :])]
    if len(odd) == 2:  # noqa: PLR2004 - either of two neighbours could be it; the one further off is
        return max(odd, key=lambda i: abs(values[i] - _expected(values, i)))
    return odd[0] if len(odd) == 1 else None


def _in_order(values: list[float]) -> bool:
    return all(a <= b + SAME for a, b in itertools.pairwise(values))


def _end_slip(values: list[float]) -> int | None:
    """The first or last figure, where its step is far larger than all others."""
    steps = [b - a for a, b in itertools.pairwise(values)]
    for end, step, others in ((0, steps[0], steps[1:]), (len(values) - 1, steps[-1], steps[:-1])):
        if step > SLIP_TIMES * max(others) + SAME and max(others) > SAME:
            return end
    return None


def _expected(values: list[float], at: int) -> float:
    """What a figure would be in step with the others: midway between its neighbours, or one step beyond the end."""
    if 0 < at < len(values) - 1:
        return (values[at - 1] + values[at + 1]) / 2
    first, second = (values[1], values[2]) if at == 0 else (values[-2], values[-3])
    return first + (first - second)


def _slip_doubt(chart: Chart, index: int, name: str, run: _Run, at: int) -> Doubt:
    column = run[at][0]
    cell = chart.rows[index].cells[column]
    meant = _meant(chart, cell.text, [v for _, v in run], at)
    asks = f" Was {meant} meant?" if meant else ""
    says = f"{name} {chart.sizes[column].label}: {cell.text} is out of step with its neighbours.{asks}"
    return Doubt("slip", says, index, column, (Remedy(f"Put {meant}", "cell", meant),) if meant else ())


def _meant(chart: Chart, text: str, values: list[float], at: int) -> str:
    """The text with two neighbouring digits changed over, where that puts the figure in step; else empty."""
    tries = []
    for i in range(len(text) - 1):
        if text[i].isdecimal() and text[i + 1].isdecimal() and text[i] != text[i + 1]:
            swapped = text[:i] + text[i + 1] + text[i] + text[i + 2 :]
            cell = parse_cell(swapped, chart.unit)
            if cell.low and _fits(values, at, cell.low.cm):
                tries.append((abs(cell.low.cm - _expected(values, at)), swapped))
    return min(tries, default=(0, ""))[1]


def _fits(values: list[float], at: int, value: float) -> bool:
    """Whether a figure in a place lies between its neighbours, or at an end within the usual steps of the next."""
    mended = [*values[:at], value, *values[at + 1 :]]
    return _in_order(mended) and _end_slip(mended) is None


def pair_doubts(body: Chart, finished: Chart, measures: Measures, *, knit: bool) -> list[str]:
    """What does not go together in the two charts of a pattern, as sentences."""
    if not body.sizes or not finished.sizes:
        return []
    says = []
    for one, other, name in ((body, finished, "finished measurements"), (finished, body, "body chart")):
        lacking = [s.label for s in one.sizes if _same_size(other, s.names) is None]
        if lacking:
            verb = "is" if len(lacking) == 1 else "are"
            says.append(f"{_sizes(lacking)} {verb} not in the {name}.")
    return says if knit else says + list(_too_small(body, finished, measures))


def _too_small(body: Chart, finished: Chart, measures: Measures) -> Iterator[str]:
    """Girths of a woven garment that are smaller than the body they are meant for."""
    for row in finished.rows:
        other = body.row(row.measure)
        if other is None or row.doubt or dimension(row, measures) != "girth":
            continue
        pairs = _paired(finished, row, body, other)
        small = [label for label, mine, theirs in pairs if mine < theirs - SAME]
        flat = pairs and all(HALF_SPAN[0] <= mine / theirs <= HALF_SPAN[1] for _, mine, theirs in pairs)
        if small and not flat:
            where = "in every size" if len(small) == len(pairs) > 1 else f"in {_listed(small)}"
            name = row_name(row, measures).lower()
            yield f"Finished {name} is smaller than the body {where}; a woven would not close."


def _paired(mine: Chart, row: ChartRow, theirs: Chart, other: ChartRow) -> list[tuple[str, float, float]]:
    """Size, this chart's figure and the other's at the same size, multiplied out; cm. Ranges count by their middle."""
    own, others = dict(_figures(row)), dict(_figures(other))
    pairs = []
    for column, value in own.items():
        match = _same_size(theirs, mine.sizes[column].names)
        if match is not None and match in others:
            pairs.append((
                mine.sizes[column].label, value * TIMES[row.written_as], others[match] * TIMES[other.written_as]
            ))  # fmt: skip
    return pairs


def _same_size(chart: Chart, names: tuple[str, ...]) -> int | None:
    wanted = {name.casefold() for name in names}
    return next((i for i, s in enumerate(chart.sizes) if wanted & {n.casefold() for n in s.names}), None)


def _sizes(labels: list[str]) -> str:
    return f"Size {labels[0]}" if len(labels) == 1 else f"Sizes {_listed(labels)}"


def _listed(labels: list[str]) -> str:
    """`38, 40 and 42`; a long list is cut short."""
    if len(labels) == 1:
        return labels[0]
    if len(labels) > 5:  # noqa: PLR2004 - more names than that are not read
        return f"{', '.join(labels[:4])} and {len(labels) - 4} more"
    return f"{', '.join(labels[:-1])} and {labels[-1]}"
