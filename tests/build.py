"""Values for tests, built in one line: charts, bodies and people."""

from __future__ import annotations

import datetime as dt
from typing import TYPE_CHECKING

from sizekeeper.core.chart import Cell, Chart, ChartRow, Size
from sizekeeper.core.notation import parse_length
from sizekeeper.core.person import Person, Reading
from sizekeeper.core.result import BodyFigure

if TYPE_CHECKING:
    from sizekeeper.core.chart import ChartKind
    from sizekeeper.core.length import Length, Unit

DAY = dt.date(2026, 11, 20)


def cell(text: str, unit: Unit = "cm") -> Cell:
    """A cell with one figure, a range `86..90`, or nothing."""
    if not text.strip("-– "):
        return Cell(text)
    low, _, high = text.partition("..")
    return Cell(text, parse_length(low, unit), parse_length(high or low, unit))


def chart(kind: ChartKind, sizes: str, unit: Unit = "cm", **rows: str) -> Chart:
    """A chart from texts: `chart("body", "38 40", bust="88, 92")`."""
    return Chart(
        id=f"{kind}-chart",
        pattern="pattern",
        kind=kind,
        sizes=tuple(Size(label) for label in sizes.split()),
        rows=tuple(ChartRow(m, tuple(cell(t.strip(), unit) for t in row.split(","))) for m, row in rows.items()),
        unit="in" if unit == "in" else "cm",
    )


def body(*unit: Unit, **figures: str | float) -> dict[str, BodyFigure]:
    """A body from figures, each to the centimetre: `body("in", bust=38, waist="28 1/2")`."""
    return {m: BodyFigure(parse_length(str(f), unit[0] if unit else "cm").cm, 1.0) for m, f in figures.items()}


def person(unit: Unit = "cm", **figures: str) -> Person:
    """A person whose figures were all measured on one day."""
    readings = tuple(Reading(m, text, parse_length(text, unit), DAY) for m, text in figures.items())
    return Person(id="person", name="Ilse", unit="in" if unit == "in" else "cm", readings=readings)


def length(text: str) -> Length:
    """A length from a text with its unit."""
    return parse_length(text)
