"""A chart: the body sizes a pattern is drafted for, or its finished garment measurements."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from sizekeeper.core.length import Length

ChartKind = Literal["body", "finished"]
WrittenAs = Literal["full", "half", "quarter"]
TIMES: dict[WrittenAs, int] = {"full": 1, "half": 2, "quarter": 4}


@dataclass(frozen=True, slots=True)
class Size:
    """A listed size: the label on the pattern and the other names it goes by."""

    label: str
    aliases: tuple[str, ...] = ()

    @property
    def names(self) -> tuple[str, ...]:
        """Every name of the size, the label first."""
        return (self.label, *self.aliases)


@dataclass(frozen=True, slots=True)
class Cell:
    """One figure of a chart, as typed. A range has `low` below `high`; both are None while the text is no figure."""

    text: str = ""
    low: Length | None = None
    high: Length | None = None

    @property
    def bad(self) -> bool:
        """Whether something is written here that is not a figure."""
        return bool(self.text.strip()) and self.low is None


@dataclass(frozen=True, slots=True)
class ChartRow:
    """One measure over all sizes. Girths written as half or quarter widths are multiplied out; nothing else is.

    `doubt` is "half_width_suspected" while a girth may be printed flat: fit leaves it out until told.
    """

    measure: str
    cells: tuple[Cell, ...]
    label: str = ""
    written_as: WrittenAs = "full"
    doubt: Literal["", "half_width_suspected"] = ""
    measured: bool = False

    def lows(self) -> list[float | None]:
        """The lower end of each figure in cm, full girth; None where none is given."""
        return [_times(cell.low, self.written_as) for cell in self.cells]

    def highs(self) -> list[float | None]:
        """The upper end of each figure in cm, full girth; None where none is given."""
        return [_times(cell.high, self.written_as) for cell in self.cells]


def _times(length: Length | None, written_as: WrittenAs) -> float | None:
    return None if length is None else length.times_cm(TIMES[written_as])


@dataclass(frozen=True, slots=True)
class Chart:
    """A table of sizes and measures that belongs to a pattern. `view` is empty for the chart that serves all views."""

    id: str
    pattern: str
    kind: ChartKind
    sizes: tuple[Size, ...] = ()
    rows: tuple[ChartRow, ...] = ()
    unit: Literal["cm", "in", "mm"] = "cm"
    view: str = ""
    name: str = ""

    def row(self, measure: str) -> ChartRow | None:
        """The row of a measure, None where the chart has none."""
        return next((row for row in self.rows if row.measure == measure), None)
