"""From cells to figures in one unit a row: which unit counts, which was inferred, and where two units disagree."""

from __future__ import annotations

import math
from dataclasses import dataclass, field, replace
from fractions import Fraction
from typing import TYPE_CHECKING, cast

from sizekeeper import assets
from sizekeeper.core.chart import TIMES
from sizekeeper.core.length import CM_PER
from sizekeeper.importing.bands import figure
from sizekeeper.importing.draft import ChartUnit
from sizekeeper.importing.figures import Amount, Figure, figure_in
from sizekeeper.importing.grid import GridCell
from sizekeeper.importing.raw import RawFigure, RawRow, RawTable
from sizekeeper.importing.sizes import recovered_date
from sizekeeper.importing.units import CHART_UNIT

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from sizekeeper.core.measure import Measures

UNITS: tuple[ChartUnit, ...] = ("cm", "in", "mm")
_INCH_LOW, _INCH_HIGH = Fraction(235, 100), Fraction(275, 100)
_OUTSIDE = 4.0
_GARMENT_MIDDLE_CM = 75.0
_EIGHTHS = (2, 4, 8, 16, 32)


@dataclass(slots=True)
class Reading:
    """What one cell of a row says: the amounts in chart units (None where it names no unit), the cell, and remarks."""

    cell: GridCell
    amounts: list[Amount]
    figure: Figure
    date: bool = False


@dataclass(slots=True)
class RowReading:
    """The readings of a row by size, and the unit that was settled on."""

    row: RawRow
    measure: str | None
    readings: dict[int, list[Reading]] = field(default_factory=dict)
    unit: ChartUnit = "cm"
    inferred: bool = False


def read_row(row: RawRow, measure: str | None) -> RowReading:
    """The figures of a row, in the chart's units, where cell, label or column name one."""
    read = RowReading(row, measure)
    for place, figures in row.cells.items():
        found = [reading for figure_ in figures if (reading := _reading(figure_, row)) is not None]
        if found:
            read.readings[place] = found
    return read


def _reading(raw: RawFigure, row: RawRow) -> Reading | None:
    found, date = figure(raw.cell), False
    if found is None:
        recovered = recovered_date(raw.cell)
        found, date = (figure_in(recovered), True) if recovered else (None, False)
    if found is None:
        return None
    default = raw.unit or (row.units[0] if len(row.units) == 1 else None)
    amounts = [_in_chart_unit(a, a.unit or default) for a in found.amounts]
    return Reading(raw.cell, amounts, found, date)


def _in_chart_unit(amount: Amount, unit: str | None) -> Amount:
    if unit is None:
        return amount
    name, factor = CHART_UNIT[unit]
    return replace(amount.times(factor), unit=name)


def settle_units(rows: Sequence[RowReading], stated: tuple[str, ...], beside: str | None) -> bool:
    """Give every amount its unit and every row the one it is kept in.

    Args:
        rows: the rows of one table.
        stated: the units that the table's title and corner state, in order.
        beside: the unit of the tables beside this one, used where this one is silent and the figures allow it.

    Returns:
        Whether a unit had to be inferred.
    """
    known = tuple(dict.fromkeys(CHART_UNIT[u][0] for u in stated))
    _pair_unnamed(rows)
    for row in rows:
        _name_by_last(row)
    unnamed = [r for r in rows if any(a.unit is None for a in _amounts(r))]
    inferred = False
    if unnamed:
        if len(known) == 1:
            unit = cast("ChartUnit", known[0])
        else:
            inferred = True
            choices = cast("tuple[ChartUnit, ...]", known) or UNITS
            unit = likeliest_unit(unnamed, choices, beside)
        for row in unnamed:
            row.inferred = inferred
            _name(row, unit)
    for row in rows:
        row.unit = _kept_unit(row, known)
    return inferred


def _amounts(row: RowReading) -> Iterable[Amount]:
    return (a for readings in row.readings.values() for reading in readings for a in reading.amounts)


def _name(row: RowReading, unit: ChartUnit) -> None:
    for readings in row.readings.values():
        for reading in readings:
            reading.amounts = [a if a.unit else replace(a, unit=unit) for a in reading.amounts]


def _name_by_last(row: RowReading) -> None:
    """A unit behind the last figure of a row is that of all: `84 88 92 cm`."""
    amounts = list(_amounts(row))
    if len(amounts) > 1 and amounts[-1].unit and not any(a.unit for a in amounts[:-1]):
        _name(row, cast("ChartUnit", amounts[-1].unit))


def _pair_unnamed(rows: Sequence[RowReading]) -> None:
    """Two columns or rows for one size, without units, whose figures are an inch apart in scale, are cm and inches."""
    for row in rows:
        pairs = [r for r in row.readings.values() if len(r) == 2 and all(a.unit is None for x in r for a in x.amounts)]  # noqa: PLR2004
        if pairs and all(_scale(a.amounts[0], b.amounts[0]) for a, b in pairs):
            for a, b in pairs:
                first = _scale(a.amounts[0], b.amounts[0])
                a.amounts = [replace(a.amounts[0], unit=first)]
                b.amounts = [replace(b.amounts[0], unit="in" if first == "cm" else "cm")]


def _scale(first: Amount, second: Amount) -> str | None:
    if not first.low or not second.low:
        return None
    ratio = first.middle() / second.middle()
    if _INCH_LOW < ratio < _INCH_HIGH:
        return "cm"
    return "in" if _INCH_LOW < 1 / ratio < _INCH_HIGH else None


def _kept_unit(row: RowReading, known: tuple[str, ...]) -> ChartUnit:
    """The label's or header's unit where it is printed, else the first printed."""
    printed = list(dict.fromkeys(a.unit for a in _amounts(row) if a.unit))
    wanted = [CHART_UNIT[u][0] for u in row.row.units] + list(known)
    for unit in wanted:
        if unit in printed:
            return cast("ChartUnit", unit)
    return cast("ChartUnit", printed[0] if printed else (wanted or ["cm"])[0])


def likeliest_unit(rows: Sequence[RowReading], choices: Sequence[ChartUnit], beside: str | None) -> ChartUnit:
    """The unit in which the figures are most like those of people and their garments."""
    costs = {unit: _cost(rows, unit) for unit in choices}
    if beside in costs and costs[beside] < _OUTSIDE / 2:
        return beside
    return min(costs, key=lambda unit: (costs[unit], choices.index(unit)))


def _cost(rows: Sequence[RowReading], unit: ChartUnit) -> float:
    """How far the figures lie, on a log scale, from the middle of what people are; fractions speak for inches."""
    measures = assets.measures()
    costs = []
    for row in rows:
        span = measures[row.measure].human_cm if row.measure and row.measure in measures else None
        for amount in _amounts(row):
            cm = abs(float(amount.middle() * CM_PER[unit])) * _times(row, measures)
            if amount.unit is not None or not cm:
                continue
            middle = math.sqrt(span[0] * span[1]) if span else _GARMENT_MIDDLE_CM
            weight = 1.0 if span else 0.5 if row.measure in measures else 0.1
            outside = _OUTSIDE if span and not span[0] <= cm <= span[1] * 1.3 else 0.0
            costs.append(weight * (math.log(cm / middle) ** 2 + outside) + _fraction_cost(amount, unit))
    return sum(costs) / len(costs) if costs else 0.0


def _times(row: RowReading, measures: Measures) -> int:
    """By what a row's figures are multiplied to be those of a person."""
    written = row.row.label.written_as if row.row.label.written_as != "full" else row.row.written
    girth = row.measure is not None and row.measure in measures and measures[row.measure].dimension == "girth"
    return TIMES[written] if girth else 1


def _fraction_cost(amount: Amount, unit: ChartUnit) -> float:
    fraction = amount.step.denominator in _EIGHTHS
    return 2.0 if fraction and unit != "in" else 0.0


def kept(readings: Sequence[Reading], unit: ChartUnit) -> tuple[Reading, Amount] | None:
    """The reading and amount of a size in the unit that the row is kept in, else the first."""
    for reading in readings:
        for amount in reading.amounts:
            if amount.unit == unit:
                return reading, amount
    for reading in readings:
        for amount in reading.amounts:
            return reading, _converted(amount, unit)
    return None


def _converted(amount: Amount, unit: ChartUnit) -> Amount:
    return replace(amount.times(CM_PER[amount.unit or unit] / CM_PER[unit]), unit=unit)


def others(readings: Sequence[Reading], unit: ChartUnit) -> list[Amount]:
    """The amounts of a size that are printed in another unit than the row's."""
    return [a for reading in readings for a in reading.amounts if a.unit not in (None, unit)]


def disagree(first: Amount, second: Amount, step: Fraction) -> bool:
    """Whether two statements of one length differ by more than the rounding of both.

    `step` is the finest step printed for the second amount's unit in its row: 34 beside 34 1/4 is meant to an eighth.
    """
    a, b = CM_PER[first.unit or "cm"], CM_PER[second.unit or "cm"]
    room = (first.step * a + min(second.step, step) * b) / 2
    return abs(first.low * a - second.low * b) > room or abs(first.high * a - second.high * b) > room


def table_rows(table: RawTable, measures: Sequence[str | None]) -> list[RowReading]:
    """The readings of every row of a table."""
    return [read_row(row, measure) for row, measure in zip(table.rows, measures, strict=True)]
