"""Where tables stand on a sheet: bands of columns, each with its labels at the left and its figures right of them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sizekeeper.importing.figures import Figure, figure_of, is_missing
from sizekeeper.importing.labels import Label, label_of
from sizekeeper.importing.sizes import recovered_date
from sizekeeper.importing.units import unit_of

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sizekeeper.importing.grid import GridCell, Sheet


@dataclass(frozen=True, slots=True)
class Band:
    """Columns `left` to `right`, both included, with labels up to `first` and figures from there on."""

    left: int
    first: int
    right: int


def is_figure(cell: GridCell | None) -> bool:
    """Whether a cell holds a figure, or a date that was one."""
    if cell is None or cell.number is not None:
        return cell is not None
    return figure(cell) is not None or recovered_date(cell) is not None


def figure(cell: GridCell) -> Figure | None:
    """The figure of a cell; None where it has none."""
    return figure_of(cell)


def is_blank(cell: GridCell | None) -> bool:
    """Whether a place holds neither text nor figure: empty, or one of the marks for no figure."""
    return cell is None or is_missing(cell.text)


def is_text(cell: GridCell | None) -> bool:
    """Whether a cell holds words."""
    return cell is not None and not is_missing(cell.text) and not is_figure(cell)


def label(cell: GridCell) -> Label:
    """The words of a cell taken apart."""
    return label_of(cell.text)


def distinct(cells: Sequence[GridCell | None]) -> list[tuple[int, GridCell]]:
    """The filled cells with their places; a merged cell counts once, at its first place."""
    seen: set[str] = set()
    found = []
    for i, cell in enumerate(cells):
        if cell is not None and cell.at not in seen:
            seen.add(cell.at)
            found.append((i, cell))
    return found


def bands(sheet: Sheet, top: int, bottom: int) -> list[Band]:
    """The bands of a run of rows (`bottom` not included), from the left; none where no row holds figures."""
    kinds = [_column_kind(column) for column in _columns(sheet, top, bottom)]
    return _cut("".join(kinds))


def _columns(sheet: Sheet, top: int, bottom: int) -> list[list[GridCell | None]]:
    """The columns over the rows that hold figures; labels merged over several columns count where they start."""
    rows: list[list[GridCell | None]] = []
    for row in sheet.rows[top:bottom]:
        if any(is_figure(cell) for cell in row):
            kept: list[GridCell | None] = [None] * len(row)
            for i, cell in distinct(row):
                kept[i] = cell
            rows.append(kept if len(distinct(row)) > 1 else list(row))
    return [list(column) for column in zip(*rows, strict=True)] if rows else []


def _column_kind(column: Sequence[GridCell | None]) -> str:
    """`t` a column of labels, `f` of figures, `u` of units or other words about figures, `.` empty."""
    figures = sum(map(is_figure, column))
    texts = [cell for cell in column if is_text(cell)]
    if figures and figures >= len(texts):
        return "f"
    if not texts:
        return "." if not any(column) else "f"
    if all(unit_of(c.text) or label(c).says_only_how for c in texts if c is not None):
        return "u"
    return "t" if figures * 2 <= len(texts) else "f"


def _cut(kinds: str) -> list[Band]:
    """A band starts at a column of labels that follows figures and has figures of its own."""
    starts = [0]
    for i in range(1, len(kinds)):
        before = kinds[starts[-1] : i]
        if kinds[i] == "t" and "f" in before and "f" in kinds[i:] and kinds[i - 1] in "f.u":
            starts.append(i)
    found: list[Band] = []
    for start, end in zip(starts, [*starts[1:], len(kinds)], strict=True):
        first, last = kinds.find("f", start, end), kinds.rfind("f", start, end)
        if first >= 0:
            left = found[-1].right + 1 if found else 0
            left += kinds[left] == "u" and left < start
            found.append(Band(left, first, last))
    return found


def zones(sheet: Sheet) -> list[tuple[int, int]]:
    """The runs of rows that belong together, as (first, last + 1): texts go with the figures below them."""
    found: list[tuple[int, int]] = []
    start: int | None = None
    figures = False
    for i, row in enumerate([*sheet.rows, ()]):
        if any(cell is not None for cell in row):
            start = i if start is None else start
            figures = figures or any(map(is_figure, row))
        elif start is not None and (figures or i == len(sheet.rows)):
            found.append((start, i))
            start, figures = None, False
    return found
