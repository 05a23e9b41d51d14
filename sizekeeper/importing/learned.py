"""Names of measures that were corrected by hand once, and are read so from then on."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sizekeeper.importing.units import without_units
from sizekeeper.importing.vocabulary import folded

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from sizekeeper.core.learned import Learned
    from sizekeeper.importing.draft import Corrections, Draft, DraftRow

Cell = tuple[str, str]
"""A cell by its sheet and address."""


def name_key(label: str) -> str:
    """A printed label for comparing: `Busst (cm)` and `busst` are one name."""
    return folded(without_units(label))


def taught(learned: Learned, label: str, measure: str) -> Learned:
    """The names with one more, which goes before what was learned of it earlier; a name without a letter is nothing."""
    key = name_key(label)
    return replace(learned, names=learned.names | {key: measure}) if key else learned


def forgotten(learned: Learned, label: str) -> Learned:
    """The names without one; a name that was never learned changes nothing."""
    key = name_key(label)
    return replace(learned, names={name: measure for name, measure in learned.names.items() if name != key})


def remembered(learned: Learned, draft: Draft, corrections: Corrections) -> Mapping[Cell, str]:
    """The measures of rows whose label was corrected in an earlier chart, by the cell of the label.

    A row that is corrected in this chart is left as it was corrected.
    """
    return {
        (sheet, row.label_at): learned.names[name_key(row.label)]
        for sheet, row in rows_of(draft)
        if (sheet, row.label_at) not in corrections.measures and name_key(row.label) in learned.names
    }


def corrected(draft: Draft, corrections: Corrections) -> Iterator[tuple[Cell, str, str]]:
    """What can be learned from the corrections of a draft: the label's cell, the label as printed, and the measure."""
    told: set[Cell] = set()
    for sheet, row in rows_of(draft):
        cell = (sheet, row.label_at)
        if cell in corrections.measures and cell not in told and name_key(row.label):
            told.add(cell)
            yield cell, row.label, corrections.measures[cell]


def rows_of(draft: Draft) -> Iterator[tuple[str, DraftRow]]:
    """Every row of a draft with the name of its sheet."""
    return ((table.sheet, row) for table in draft.tables for row in table.rows)
