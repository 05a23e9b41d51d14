"""Fabric: the envelope's table plus what is lengthened, against what she has; exact cm."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING, Literal

from sizekeeper.core.length import exactly
from sizekeeper.core.piece import FabricLine
from sizekeeper.errors import PlanError

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sizekeeper.core.make import FabricHad

FabricNote = Literal["narrower", "nap", "shrinkage", "wider_than_table"]


@dataclass(frozen=True, slots=True)
class FabricNeed:
    """What is needed of a fabric and what is left; exact cm.

    `table` is the envelope's figure, `added` what the lengthening takes, `needed` both, before washing where the
    fabric shrinks. `left` is negative where it does not suffice. Notes: `narrower` than any width in the table, so
    that its figure does not hold; `wider_than_table`: the figure of the widest width was taken; `nap`: all pieces lie
    one way, and the table does not say that it reckons with it; `shrinkage`: wash it first, it was reckoned in.
    """

    line: FabricLine
    table: Fraction
    added: Fraction
    needed: Fraction
    had: Fraction
    notes: tuple[FabricNote, ...]

    @property
    def left(self) -> Fraction:
        """What is left over."""
        return self.had - self.needed


def line_for(lines: Sequence[FabricLine], had: FabricHad, size: str, view: str = "") -> FabricLine | None:
    """The line of the envelope's table that counts: of the size and view, with nap if the fabric has one.

    Of several widths the widest that the fabric reaches, else the narrowest.
    """
    fitting = [line for line in lines if line.size in ("", size) and line.view in ("", view)]
    with_nap = [line for line in fitting if line.nap == had.nap]
    fitting = with_nap or fitting
    width = had.width.exact_cm
    within = [line for line in fitting if line.width.exact_cm <= width]
    if within:
        return max(within, key=lambda line: line.width.exact_cm)
    return min(fitting, key=lambda line: line.width.exact_cm, default=None)


def fabric_need(
    lines: Sequence[FabricLine],
    had: FabricHad,
    size: str,
    view: str = "",
    *,
    longer: Fraction = Fraction(0),
    lengths_end_to_end: int = 1,
) -> FabricNeed | None:
    """What a garment needs of the fabric she has; None where the table has no line for it.

    Args:
        lines: the envelope's table.
        had: what she has.
        size: the label of the size that is cut; the larger of two where it lies between.
        view: the view.
        longer: the length added to a piece; shortening is not taken off, the envelope's lay may not save it.
        lengths_end_to_end: how many pieces that are lengthened lie behind each other along the fabric.

    Raises:
        PlanError: the share lost in washing is not one.
    """
    if not 0 <= had.shrinks < 1:
        raise PlanError("What a fabric loses in washing is a share below the whole, like 5 %.")
    line = line_for(lines, had, size, view)
    if line is None:
        return None
    added = max(Fraction(0), longer) * lengths_end_to_end
    needed = (line.length.exact_cm + added) / (1 - exactly(had.shrinks))
    return FabricNeed(line, line.length.exact_cm, added, needed, had.length.exact_cm, _notes(line, had))


def _notes(line: FabricLine, had: FabricHad) -> tuple[FabricNote, ...]:
    notes: list[FabricNote] = []
    if had.width.exact_cm < line.width.exact_cm:
        notes.append("narrower")
    if had.width.exact_cm > line.width.exact_cm:
        notes.append("wider_than_table")
    if had.nap and not line.nap:
        notes.append("nap")
    if had.shrinks:
        notes.append("shrinkage")
    return tuple(notes)
