"""Charts written in one line, for tests."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sizekeeper.core.cells import parse_cell
from sizekeeper.core.chart import Chart, ChartKind, ChartRow
from sizekeeper.core.chart_edit import size_from_text
from sizekeeper.core.measure import Measure, Measures

if TYPE_CHECKING:
    from typing import Literal

    from sizekeeper.core.measure import Dimension, Use


def chart(sizes: str, kind: ChartKind = "body", unit: Literal["cm", "in", "mm"] = "cm", **rows: str) -> Chart:
    """A chart from its sizes and rows; names and figures stand between commas: `chart("38, 40", bust="88, 92")`."""
    return Chart(
        id=kind,
        pattern="pattern",
        kind=kind,
        unit=unit,
        sizes=tuple(size_from_text(name) for name in split(sizes)),
        rows=tuple(
            ChartRow(name, tuple(parse_cell(text, unit) for text in split(texts))) for name, texts in rows.items()
        ),
    )


def split(line: str) -> list[str]:
    """The texts between the commas of a line."""
    return [text.strip() for text in line.split(",")] if line else []


def texts(chart: Chart) -> dict[str, str]:
    """What is written in each row of a chart, by measure, with commas between."""
    return {row.measure: ", ".join(cell.text for cell in row.cells) for row in chart.rows}


def sizes(chart: Chart) -> str:
    """The sizes of a chart as typed, with commas between."""
    return ", ".join(" / ".join(size.names) for size in chart.sizes)


def measure(key: str, dimension: Dimension = "girth", use: Use = "both", **synonyms: str) -> Measure:
    """A measure with as little as it needs."""
    named = {language: (name,) for language, name in synonyms.items()}
    return Measure(key, key.replace("_", " ").capitalize(), dimension, use, 1, "", named)


MEASURES = Measures(
    [
        measure("bust", en="Full bust", de="Brustumfang", fr="Tour de poitrine"),
        measure("waist", en="To fit waist", de="Taille"),
        measure("hip", en="Seat"),
        measure("back_waist_length", "length", "body", en="Back length"),
        measure("garment_back_length", "length", "finished", en="Back length"),
        measure("across_back", "width"),
    ],
)
