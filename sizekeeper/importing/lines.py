"""One row of a band: its words at the left, the cells above or among the figures, and remarks at the right."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from sizekeeper.importing.bands import Band, distinct, is_blank, is_figure, label
from sizekeeper.importing.grid import GridCell, Sheet

if TYPE_CHECKING:
    from sizekeeper.importing.labels import Label


@dataclass(slots=True)
class Line:
    """One row of a band: words left, cells above the figures, words right."""

    labels: dict[int, GridCell]
    data: list[tuple[int, GridCell]]
    tail: list[GridCell]
    spanned: dict[int, GridCell] = field(default_factory=dict)

    def words(self) -> dict[int, Label]:
        """The label cells taken apart, by column."""
        return {place: label(cell) for place, cell in self.labels.items()}

    def shown(self) -> list[tuple[int, GridCell]]:
        """The cells among the figures that say something."""
        return [(place, cell) for place, cell in self.data if not is_blank(cell)]


def line_at(sheet: Sheet, band: Band, r: int) -> Line:
    """A row of a sheet as a band sees it; a text alone in its row is a heading for every band."""
    row = sheet.rows[r]
    alone = distinct(row)
    if len(alone) == 1 and not is_figure(alone[0][1]):
        return Line({band.left: alone[0][1]}, [], [])
    cells = distinct(row[band.left : band.right + 1])
    labels = {band.left + i: c for i, c in cells if band.left + i < band.first and not is_blank(c)}
    ats = {c.at for c in labels.values()}
    data = [(band.left + i, c) for i, c in cells if band.left + i >= band.first and c.at not in ats]
    spanned = {p: c for p, c in enumerate(row) if band.first <= p <= band.right and c is not None and c.at not in ats}
    return Line(labels, data, _tail(sheet, band, r), spanned)


def _tail(sheet: Sheet, band: Band, r: int) -> list[GridCell]:
    """The cells right of the figures, up to the next empty place."""
    tail: list[GridCell] = []
    for cell in sheet.rows[r][band.right + 1 :]:
        if cell is None or is_figure(cell):
            break
        tail.append(cell)
    return tail[:2]
