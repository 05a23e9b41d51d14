"""Edits of the envelope's table of fabric, each from its lines to new lines."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from sizekeeper.core.length import Length
from sizekeeper.core.piece import FabricLine

if TYPE_CHECKING:
    from collections.abc import Sequence

Lines = tuple[FabricLine, ...]


@dataclass(frozen=True, slots=True)
class Cloth:
    """A row of the table: a fabric's width, and whether the figures reckon with a nap."""

    width: Length
    nap: bool = False

    def holds(self, line: FabricLine) -> bool:
        """Whether a line belongs to this row, however its width was written."""
        return line.width.exact_cm == self.width.exact_cm and line.nap == self.nap


def cloths(lines: Sequence[FabricLine], view: str) -> tuple[Cloth, ...]:
    """The rows of a view's table, in the order they were typed."""
    found: list[Cloth] = []
    for line in lines:
        if line.view == view and not any(cloth.holds(line) for cloth in found):
            found.append(Cloth(line.width, line.nap))
    return tuple(found)


def length_of(lines: Sequence[FabricLine], cloth: Cloth, size: str, view: str) -> Length | None:
    """The length for a size, None where the table has none."""
    found = (line.length for line in lines if line.view == view and line.size == size and cloth.holds(line))
    return next(found, None)


def with_length(lines: Lines, cloth: Cloth, size: str, view: str, length: Length | None) -> Lines:
    """The lines with the length for a size, None for none."""

    def here(line: FabricLine) -> bool:
        return line.view == view and line.size == size and cloth.holds(line)

    if length is None:
        return tuple(line for line in lines if not here(line))
    if any(here(line) for line in lines):
        return tuple(replace(line, length=length) if here(line) else line for line in lines)
    return (*lines, FabricLine(cloth.width, length, size, view, cloth.nap))


def with_cloth(lines: Lines, before: Cloth, view: str, after: Cloth | None) -> Lines:
    """The lines with another width or nap in a row; None takes the row out."""
    if after is None:
        return tuple(line for line in lines if not (line.view == view and before.holds(line)))
    return tuple(
        replace(line, width=after.width, nap=after.nap) if line.view == view and before.holds(line) else line
        for line in lines
    )
