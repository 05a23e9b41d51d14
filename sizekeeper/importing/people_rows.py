"""From the rows of a table to people: what each cell says of whom, and which rows are one person's."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass, field, replace
from functools import partial
from typing import TYPE_CHECKING, cast

from sizekeeper.core.groups import groups_in, tidy
from sizekeeper.core.measure import MeasuredBy
from sizekeeper.core.people_headings import HEADINGS, cleaned
from sizekeeper.importing.figures import is_missing
from sizekeeper.importing.grid import GridCell, address
from sizekeeper.importing.limits import Progress, no_progress
from sizekeeper.importing.people_columns import is_measure
from sizekeeper.importing.people_days import day_in, order_of
from sizekeeper.importing.people_draft import Notes, PeopleAnswers, Table, pick, put
from sizekeeper.importing.people_figures import Figure, figure_at
from sizekeeper.importing.people_words import hand, yes_or_no
from sizekeeper.importing.units import unit_of
from sizekeeper.importing.vocabulary import folded

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from sizekeeper.importing.grid import Row
    from sizekeeper.importing.people_days import Order
    from sizekeeper.importing.people_draft import Column

_LONGEST_NAME = 200


@dataclass(slots=True)
class Told:
    """What a row says of one measure's figures alone."""

    on: dt.date | None = None
    by: MeasuredBy | None = None
    over: str = ""
    note: str = ""


@dataclass(slots=True)
class Line:
    """What one row says. `at` is the cell of the name, or where it would stand."""

    at: str
    name: str
    groups: tuple[str, ...] = ()
    born: dt.date | None = None
    child: bool | None = None
    unit: str = ""
    on: dt.date | None = None
    by: MeasuredBy | None = None
    over: str = ""
    notes: str = ""
    figures: list[Figure] = field(default_factory=list)
    told: dict[str, Told] = field(default_factory=dict)
    cells: dict[str, str] = field(default_factory=dict)


def lines_of(
    table: Table, answers: PeopleAnswers, notes: Notes, today: dt.date, progress: Progress = no_progress
) -> list[Line]:
    """The rows of a table, each taken apart; unclear words and days are asked about."""
    order = answers.order or order_of(_day_cells(table))
    reader = _Reader(table, answers, notes, today, order)
    lines = []
    for i, (r, row) in enumerate(table.rows):
        progress(i, len(table.rows))
        lines.append(reader.line(r, row))
    return lines


def _day_cells(table: Table) -> Iterable[GridCell]:
    for column in table.columns:
        if column.role in ("born", "on") or column.role.endswith(":on"):
            yield from (cell for _, row in table.rows if (cell := row[column.place]) is not None)


class _Reader:
    """Reads one row after the other; asks about each word once, and about the order of days once."""

    def __init__(self, table: Table, answers: PeopleAnswers, notes: Notes, today: dt.date, order: Order) -> None:
        self.table, self.answers, self.notes, self.today, self.order = table, answers, notes, today, order
        self.asked: set[tuple[str, str]] = set()

    def line(self, r: int, row: Row) -> Line:
        cells = {c: cell for c in self.table.columns if (cell := row[c.place]) is not None}
        line = Line(self._name_at(r), _name(cells))
        for column, cell in cells.items():
            self._take(line, column, cell)
        for column, cell in cells.items():
            if is_measure(column.role):
                figure = figure_at(column, cell, line.unit, self.table.unit)
                if figure is not None:
                    line.figures.append(figure)
                elif cell.note:
                    self._tell(cell)
        return line

    def _name_at(self, r: int) -> str:
        place = next((c.place for c in self.table.columns if c.role in ("name", "given", "family")), 0)
        return address(place, r) if self.table.turned else address(r, place)

    def _tell(self, cell: GridCell) -> None:
        formula = "is a formula without a figure: open the file in a spreadsheet and save it there"
        self.notes.remark(f"This cell {formula if cell.note == 'formula' else 'holds an error'}.", cell.at)

    def _take(self, line: Line, column: Column, cell: GridCell) -> None:
        text, role = cleaned(cell.text).strip(), column.role
        if role in ("name", "given", "family"):
            line.cells.setdefault("name", cell.at)
            return
        if ":" in role:
            measure, _, part = role.partition(":")
            self._take_told(line.told.setdefault(measure, Told()), part, cell)
            return
        if role in HEADINGS:
            line.cells.setdefault(role, cell.at)
        if role in ("groups", "notes", "over"):
            _take_text(line, role, text)
        elif role in ("born", "on"):
            self._take_day(line, role, cell)
        elif role == "child":
            line.child = self._word("child", cell, yes_or_no(text), {"Yes": "yes", "No": "no"}) == "yes"
        elif role == "by":
            line.by = self.by(cell)
        elif role == "unit":
            line.unit = self._unit(cell)

    def _take_told(self, told: Told, part: str, cell: GridCell) -> None:
        text = cleaned(cell.text).strip()
        match part:
            case "on":
                told.on = self.day(cell, recent=True)
            case "by":
                told.by = self.by(cell)
            case "over":
                told.over = text
            case "note":
                told.note = text

    def _take_day(self, line: Line, role: str, cell: GridCell) -> None:
        if role == "born":
            line.born = self.day(cell)
        else:
            line.on = self.day(cell, recent=True)

    def day(self, cell: GridCell, *, recent: bool = False) -> dt.date | None:
        """The day in a cell; one that is unclear, or still to come, is asked about and not taken."""
        if cell.date is None and is_missing(cell.text):
            return None
        day, unclear = day_in(cell, self.order, recent=recent)
        if unclear:
            if ("order", "") not in self.asked:
                self.asked.add(("order", ""))
                self._ask_order(cell)
        elif day is None or day > self.today:
            why = "is still to come" if day else "is not a day: write it as 2014-05-17 or 17 May 2014"
            leave = pick("Leave it out", partial(_left, cell=(self.notes.sheet, cell.at)))
            self.notes.ask("day", f"“{cell.text[:40]}” {why}; it is not taken in.", cell.at, leave, edit="cell")
            return None
        return day

    def _ask_order(self, cell: GridCell) -> None:
        says = f"“{cell.text}” can be two days. Which number is the day, here and in the other cells like it?"
        choices = [
            pick("The first", partial(_with_order, order="dmy")),
            pick("The second", partial(_with_order, order="mdy")),
        ]
        self.notes.ask("order", says, cell.at, *choices, must=True)

    def by(self, cell: GridCell) -> MeasuredBy | None:
        """Who held the tape."""
        choices = {"Trained": "trained", "Helped": "helped", "Alone": "alone"}
        found = self._word("by", cell, hand(cell.text), choices)
        return cast("MeasuredBy", found) if found in choices.values() else None

    def _unit(self, cell: GridCell) -> str:
        choices = {"Centimetres": "cm", "Inches": "in", "Millimetres": "mm"}
        return self._word("unit", cell, unit_of(cell.text), choices)

    def _word(self, about: str, cell: GridCell, meaning: str | bool | None, choices: Mapping[str, str]) -> str:  # noqa: FBT001 - as read
        """What a word means: as known, or as told by hand; an unknown one is asked about once, for all its cells."""
        if isinstance(meaning, bool):
            return "yes" if meaning else "no"
        key = (about, folded(cell.text))
        if meaning is not None or key in self.answers.words or is_missing(cell.text):
            return meaning or self.answers.words.get(key, "")
        if key not in self.asked:
            self.asked.add(key)
            says = _WORD_ASKS[about].format(cell.text[:40])
            answers = [pick(text, partial(put, which="words", key=key, value=value)) for text, value in choices.items()]
            self.notes.ask("word", says, cell.at, *answers, edit="cell")
        return ""


def _take_text(line: Line, role: str, text: str) -> None:
    """Keep what is told in free words; groups and notes may come from several columns."""
    if role == "groups":
        line.groups = tidy([*line.groups, *groups_in(text)])
    elif role == "notes":
        line.notes = f"{line.notes}\n{text}".strip()
    else:
        line.over = text


_WORD_ASKS = {
    "child": "“{}” under Child says neither yes nor no. Is it a child?",
    "by": "“{}” does not say how well the tape was held. Was it somebody trained, a helper, or the person alone?",
    "unit": "“{}” is not a unit. Which one is meant?",
}


def _left(answers: PeopleAnswers, cell: tuple[str, str]) -> PeopleAnswers:
    return replace(answers, ignored=answers.ignored | {cell})


def _with_order(answers: PeopleAnswers, order: Order) -> PeopleAnswers:
    return replace(answers, order=order)


def _name(cells: Mapping[Column, GridCell]) -> str:
    """A name from one column or from two; a family name is not said twice."""
    parts = {c.role: " ".join(cleaned(cell.text).split()) for c, cell in cells.items()}
    given, name, family = (parts.get(role, "") for role in ("given", "name", "family"))
    if given and folded(name).startswith(folded(given)):
        given = ""
    if family and folded(name).endswith(folded(family)):
        family = ""
    return " ".join(part for part in (given, name, family) if part)[:_LONGEST_NAME]
