"""Reads a table of people with everything set by hand so far: the people as they will be, and the open questions."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Literal

from sizekeeper.core.staleness import grows
from sizekeeper.importing.limits import Progress, no_progress
from sizekeeper.importing.people_column_asks import as_role, ask_about_columns
from sizekeeper.importing.people_columns import is_measure, names_inferred
from sizekeeper.importing.people_draft import (
    Notes,
    PeopleAnswers,
    PeopleDraft,
    Table,
)
from sizekeeper.importing.people_figures import (
    Figure,
    ask_about_spans,
    ask_about_texts,
    with_lengths,
)
from sizekeeper.importing.people_making import PeopleMaker
from sizekeeper.importing.people_rows import Line, lines_of
from sizekeeper.importing.people_table import find_table, table_at, with_answers
from sizekeeper.importing.people_together import together, with_fates, without_sums

if TYPE_CHECKING:
    import datetime as dt
    from collections.abc import Iterable, Sequence

    from sizekeeper.core.person import Person
    from sizekeeper.importing.grid import Sheet


def read_people(
    name: str,
    sheets: tuple[Sheet, ...],
    answers: PeopleAnswers,
    known: Sequence[Person],
    today: dt.date,
    unit: Literal["cm", "in"] = "cm",
    progress: Progress = no_progress,
) -> PeopleDraft:
    """The people on some grids.

    Args:
        name: the file, as messages name it.
        sheets: the grids as they came.
        answers: everything set by hand.
        known: the people in the library, hidden ones too.
        today: the day of figures that name none, unless another was set by hand.
        unit: the unit of people without figures.
        progress: told how far the reading is; may raise to stop it.
    """
    corrected = [with_answers(sheet, answers) for sheet in sheets]
    found = find_table(corrected, answers, progress)
    if found is None:
        shown = next((sheet for sheet in sheets if sheet.name == answers.sheet), sheets[0])
        return PeopleDraft(name, sheets, shown, answers)
    sheet, turned, head = found
    notes = Notes(sheet.name, answers)
    table = ask_about_columns(_with_names(table_at(sheet, answers, turned, head), answers, notes), notes)
    shown = next(one for one in sheets if one.name == sheet.name)
    draft = PeopleDraft(name, sheets, shown, answers, table)
    if not any(column.role in ("name", "given", "family") for column in table.columns):
        notes.ask("names", "Which column holds the names? Stand on it and choose “Name” below.", "", must=True)
        return replace(draft, asks=tuple(notes.asks), roles=_roles(table, []))
    return _with_people(draft, table, notes, known, today, unit, progress)


def _with_names(table: Table, answers: PeopleAnswers, notes: Notes) -> Table:
    """The table with a column of names, if need be one that only looks like it."""
    if any(column.role in ("name", "given", "family") for column in table.columns):
        return table
    place = names_inferred(table.columns, table.rows, answers.roles)
    if place is None:
        return table
    column = table.columns[place]
    says = f"No heading says “Name”; {f'“{column.label}”' if column.label else 'this'} was taken for the names. Is it?"
    notes.ask("names_inferred", says, column.at, as_role("Yes, names", column, "name"))
    columns = tuple(replace(c, role="name") if c.place == place else c for c in table.columns)
    return replace(table, columns=columns)


def _with_people(
    draft: PeopleDraft,
    table: Table,
    notes: Notes,
    known: Sequence[Person],
    today: dt.date,
    unit: Literal["cm", "in"],
    progress: Progress,
) -> PeopleDraft:
    lines = without_sums(lines_of(table, draft.answers, notes, today, _part(progress, 0)), draft.answers, notes)
    figures = with_lengths([f for line in lines for f in line.figures], draft.answers, notes, _part(progress, 1))
    read = iter(figures)
    for line in lines:
        line.figures = [next(read) for _ in line.figures]
    ask_about_texts(figures, notes)
    spans = [(f, _child(line, today)) for line in lines for f in line.figures]
    ask_about_spans(spans, notes, _part(progress, 2))
    maker = PeopleMaker(draft.answers, today, unit, known)
    people = [maker.person(some) for some in together(lines, draft.answers, notes)]
    people = with_fates(people, known, draft.answers, notes)
    return replace(
        draft,
        people=tuple(people),
        asks=tuple(sorted(notes.asks, key=lambda ask: not (ask.must or ask.code == "all_known"))),
        remarks=tuple(notes.remarks),
        roles=_roles(table, figures),
        undated=maker.undated,
        unsigned=maker.unsigned,
    )


def _part(progress: Progress, part: int) -> Progress:
    """Progress within one of the three parts of the reading."""

    def told(done: int, total: int) -> None:
        progress(part * total + done, 3 * total)

    return told


def _child(line: Line, today: dt.date) -> bool:
    return grows(line.born, today, child=bool(line.child))


def _roles(table: Table, figures: Iterable[Figure]) -> dict[str, str]:
    """What each cell was taken for, by its address."""
    roles = {}
    for column in table.columns:
        role = "name" if column.role in ("name", "given", "family") else "detail"
        below = "" if not column.role else "missing" if is_measure(column.role) else role
        for _, row in table.rows:
            if (cell := row[column.place]) is not None and below:
                roles[cell.at] = below
        if column.role:
            roles[column.at] = "measure" if is_measure(column.role) else "heading"
    return roles | {f.at: "value" if f.length is not None else "text" for f in figures}
