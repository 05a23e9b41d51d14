"""What can be set by hand about a source, each a pure function from the answers so far to new ones."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sizekeeper.importing import areas

if TYPE_CHECKING:
    from collections.abc import Collection, Iterable

    from sizekeeper.core.chart import ChartKind, WrittenAs
    from sizekeeper.importing.areas import Box
    from sizekeeper.importing.draft import ChartUnit, Corrections
    from sizekeeper.importing.learned import Cell
    from sizekeeper.importing.opened import Answers


def with_units(answers: Answers, tables: Iterable[str], unit: ChartUnit) -> Answers:
    """The answers with the unit of some tables set, each by its key."""
    corrections = answers.corrections
    return replace(
        answers, corrections=replace(corrections, units={**corrections.units, **dict.fromkeys(tables, unit)})
    )


def with_kinds(answers: Answers, tables: Iterable[str], kind: ChartKind) -> Answers:
    """The answers with the kind of some tables set, each by its key."""
    corrections = answers.corrections
    return replace(
        answers, corrections=replace(corrections, kinds={**corrections.kinds, **dict.fromkeys(tables, kind)})
    )


def with_written(answers: Answers, rows: list[tuple[str, str]], written_as: WrittenAs) -> Answers:
    """The answers with how some rows were written set, each row by the cell of its label."""
    corrections = answers.corrections
    written = {**corrections.written_as, **dict.fromkeys(rows, written_as)}
    return replace(answers, corrections=replace(corrections, written_as=written))


def with_measure(answers: Answers, row: tuple[str, str], measure: str) -> Answers:
    """The answers with a row's measure set, the row by the cell of its label."""
    corrections = answers.corrections
    return replace(answers, corrections=replace(corrections, measures={**corrections.measures, row: measure}))


def with_size(answers: Answers, cell: tuple[str, str], label: str) -> Answers:
    """The answers with a size's label set."""
    corrections = answers.corrections
    return replace(answers, corrections=replace(corrections, sizes={**corrections.sizes, cell: label}))


def with_cell(answers: Answers, cell: tuple[str, str], text: str) -> Answers:
    """The answers with a cell's text set, and read again even if it was left out before."""
    corrections = answers.corrections
    cells = {**corrections.cells, cell: text}
    return replace(answers, corrections=replace(corrections, cells=cells, ignored=corrections.ignored - {cell}))


def with_cells_left_out(answers: Answers, cells: Collection[Cell]) -> Answers:
    """The answers with some cells not read."""
    corrections = answers.corrections
    return replace(answers, corrections=replace(corrections, ignored=corrections.ignored | set(cells)))


def with_cells_read(answers: Answers, cells: Iterable[Cell]) -> Answers:
    """The answers with some cells read as they came: neither left out nor with another text."""
    corrections, back = answers.corrections, set(cells)
    texts = {cell: text for cell, text in corrections.cells.items() if cell not in back}
    return replace(answers, corrections=replace(corrections, cells=texts, ignored=corrections.ignored - back))


def with_table(answers: Answers, table: str, *, taken: bool) -> Answers:
    """The answers with a table, by its key, taken in or left out."""
    left_out = answers.left_out - {table} if taken else answers.left_out | {table}
    return replace(answers, left_out=left_out)


def with_corrections(answers: Answers, corrections: Corrections) -> Answers:
    """The answers with other corrections."""
    return replace(answers, corrections=corrections)


def with_memory(answers: Answers, name: str, *, kept: bool) -> Answers:
    """The answers with whether the measure of a name, as it is compared, shall be remembered."""
    return replace(answers, unlearned=answers.unlearned - {name} if kept else answers.unlearned | {name})


def with_area(answers: Answers, sheet: str, box: Box, *, beside_others: bool) -> Answers:
    """The answers with a rectangle of a sheet that holds a table, alone or beside those set before."""
    return with_corrections(answers, areas.with_area(answers.corrections, sheet, box, beside_others=beside_others))


def without_areas(answers: Answers, sheet: str) -> Answers:
    """The answers with the tables of a sheet looked for everywhere again."""
    return with_corrections(answers, areas.without_areas(answers.corrections, sheet))
