"""What was read from a file, as a proposal: tables with figures in cm, and flags for everything that was inferred."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal

from sizekeeper.core.chart import TIMES, ChartKind, WrittenAs
from sizekeeper.core.length import CM_PER
from sizekeeper.core.measure import Dimension
from sizekeeper.importing.grid import Sheet
from sizekeeper.importing.raw import Orientation

ChartUnit = Literal["cm", "in", "mm"]


@dataclass(frozen=True, slots=True)
class Flag:
    """Something to know or to answer about what was read. `at` is the cell it is about, empty for the whole table."""

    code: str
    at: str = ""
    note: str = ""
    sheet: str = ""


@dataclass(frozen=True, slots=True)
class DraftSize:
    """A size of a table: its label, other names printed for it, and the cell of the label."""

    label: str
    at: str = ""
    aliases: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class DraftCell:
    """One figure as printed, in the row's unit, halves not yet multiplied out; `low` is None where none is given."""

    at: str
    text: str = ""
    low: Fraction | None = None
    high: Fraction | None = None
    step: Fraction = Fraction(1)


def _middle(cell: DraftCell) -> Fraction | None:
    if cell.low is None or cell.high is None:
        return None
    return cell.low if cell.low == cell.high else (cell.low + cell.high) / 2


@dataclass(frozen=True, slots=True)
class DraftRow:
    """One measure over all sizes of its table.

    `label_at` is the cell of the label. `doubt` is "half_width_suspected" where the figures may be half of a girth.
    `sure` is 1 where the label names the measure exactly, less where its spelling was only close.
    """

    measure: str
    label: str
    label_at: str
    dimension: Dimension
    unit_in_file: ChartUnit
    cells: tuple[DraftCell, ...]
    written_as: WrittenAs = "full"
    doubt: Literal["", "half_width_suspected"] = ""
    view: str | None = None
    variant: str | None = None
    same_for_all_sizes: bool = False
    sure: float = 1.0

    def _cm(self, values: Iterable[Fraction | None]) -> tuple[float | None, ...]:
        per_cm = CM_PER[self.unit_in_file] * TIMES[self.written_as]
        return tuple(None if value is None else float(value * per_cm) for value in values)

    @property
    def cm_low(self) -> tuple[float | None, ...]:
        """The lower ends in cm, full girth; None where no figure is given."""
        return self._cm(cell.low for cell in self.cells)

    @property
    def cm_high(self) -> tuple[float | None, ...]:
        """The upper ends in cm, full girth; None where no figure is given."""
        return self._cm(cell.high for cell in self.cells)

    @property
    def cm(self) -> tuple[float | None, ...]:
        """The figures in cm, full girth, the middle of a range; None where no figure is given."""
        return self._cm(_middle(cell) for cell in self.cells)

    @property
    def ranged(self) -> bool:
        """Whether a cell of the row holds a range."""
        return any(cell.low != cell.high for cell in self.cells)


@dataclass(frozen=True, slots=True)
class DraftTable:
    """A table of sizes and measures. `key` names it for corrections; `title` is the line printed above it."""

    kind: ChartKind
    sheet: str
    title: str
    unit: Literal["cm", "in", "mm", "mixed"]
    orientation: Orientation
    sizes: tuple[DraftSize, ...]
    rows: tuple[DraftRow, ...]
    key: str = ""

    @property
    def labels(self) -> tuple[str, ...]:
        """The labels of the sizes in order."""
        return tuple(size.label for size in self.sizes)


@dataclass(frozen=True, slots=True)
class Draft:
    """Everything read from one source. `roles` says for each sheet what each cell was taken for."""

    source: str
    tables: tuple[DraftTable, ...]
    flags: tuple[Flag, ...]
    sheets: tuple[Sheet, ...] = ()
    roles: Mapping[str, Mapping[str, str]] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Corrections:
    """What was set by hand before reading again. Cells are named by (sheet, address).

    `cells` replaces the text of a cell. `areas` are the areas of a sheet that hold tables, each (area, orientation);
    an orientation of None is found. `kinds` and `units` go by a table's key; `measures` and `written_as` by the
    cell of a row's label; `sizes` by the cell of a size's label. `ignored` are cells left out.
    """

    cells: Mapping[tuple[str, str], str] = field(default_factory=dict)
    areas: Mapping[str, tuple[tuple[str, Orientation | None], ...]] = field(default_factory=dict)
    kinds: Mapping[str, ChartKind] = field(default_factory=dict)
    units: Mapping[str, ChartUnit] = field(default_factory=dict)
    measures: Mapping[tuple[str, str], str] = field(default_factory=dict)
    written_as: Mapping[tuple[str, str], WrittenAs] = field(default_factory=dict)
    sizes: Mapping[tuple[str, str], str] = field(default_factory=dict)
    ignored: frozenset[tuple[str, str]] = frozenset()


NO_CORRECTIONS = Corrections()
