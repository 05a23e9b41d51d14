"""Measures that a table gives twice: told apart by the headings above them, else kept under a name of their own."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sizekeeper.importing.measure_names import slug
from sizekeeper.importing.units import without_units
from sizekeeper.importing.vocabulary import folded

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sizekeeper.importing.draft import DraftRow
    from sizekeeper.importing.raw import RawRow


def part_by_section(rows: Sequence[RawRow]) -> None:
    """Make views of the headings under which a name stands again: the lengths of `Mini` and of `Midi`."""
    groups: dict[tuple[str | None, ...], list[RawRow]] = {}
    for row in rows:
        groups.setdefault((folded(row.label.text), row.view, row.variant, row.bound, *row.units), []).append(row)
    for group in groups.values():
        sections = [row.section for row in group]
        if len(group) > 1 and len(set(sections)) == len(sections):
            for row in group:
                row.view = row.section or row.view


def unique(rows: Sequence[DraftRow]) -> Iterator[DraftRow]:
    """Each measure once for each view and variant: of two labels for it, the surer keeps the measure's name."""
    best: dict[tuple[str, str | None, str | None], int] = {}
    for i, row in enumerate(rows):
        key = (row.measure, row.view, row.variant)
        if key not in best or row.sure > rows[best[key]].sure:
            best[key] = i
    for i, row in enumerate(rows):
        if best[row.measure, row.view, row.variant] == i:
            yield row
        else:
            own = slug(without_units(row.label))
            yield replace(row, measure=own if own != row.measure else f"{own}_{row.label_at.lower().replace('#', '_')}")
