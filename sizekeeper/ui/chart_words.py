"""What a chart's cells and rows are in words: spoken, in a tip, and in the line below the grid."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from sizekeeper.core.chart import TIMES, Cell, ChartRow
from sizekeeper.core.notation import Notation, show, spoken

if TYPE_CHECKING:
    from sizekeeper.core.length import Length

_INCHES = Notation("in", Fraction(1, 16))
_CENTIMETRES = Notation("cm", Fraction(1, 10))


def _own(length: Length) -> Notation:
    """The notation of the unit a length was typed in, at its finest step."""
    return _INCHES if length.unit in ("in", "ft", "yd") else _CENTIMETRES


def cell_words(cell: Cell | None) -> str:
    """A figure in words: `86 to 90 centimetres`, `empty`, or that it is no figure."""
    if cell is None or not cell.text:
        return "empty"
    if cell.low is None or cell.high is None:
        return f"no figure: {cell.text}"
    if cell.low == cell.high:
        return spoken(cell.low.exact_cm, _own(cell.low))
    return f"{spoken(cell.low.exact_cm, _own(cell.low))} to {spoken(cell.high.exact_cm, _own(cell.high))}"


def cell_says(cell: Cell, row: ChartRow, name: str, size: str) -> str:
    """A figure in the other unit, and multiplied out; empty where it is none: `Bust 40: 34 1/2 = 87.6 cm`."""
    if cell.low is None or cell.high is None:
        return ""
    times = TIMES[row.written_as]
    own = _own(cell.low)
    other = _CENTIMETRES if own is _INCHES else _INCHES
    ends = list(dict.fromkeys((cell.low.exact_cm * times, cell.high.exact_cm * times)))
    both = [" to ".join(show(end, notation) for end in ends) for notation in (own, other)]
    if times == 1:
        return f"{name} {size}: {cell.text} is {both[0]}, {both[1]}"
    return f"{name} {size}: {times} times {cell.text} is {both[0]} around, {both[1]}"


def row_tip(row: ChartRow, name: str) -> str:
    """What is to know of a row: how it was printed, and how its figures count."""
    printed = f"Printed as “{row.label}”. " if row.label and row.label != name else ""
    if row.measured:
        return f"{printed}{name}: measured on the pieces, not printed."
    if row.written_as == "full":
        return f"{printed}{name}."
    return f"{printed}{name}: the figures are {row.written_as} the girth and count {TIMES[row.written_as]} times."
