"""Makes a person of the rows that are hers."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from typing import Literal

from sizekeeper.core.groups import as_known, known_groups, tidy
from sizekeeper.core.person import Person, Reading
from sizekeeper.importing.people_draft import FoundPerson, FoundReading, PeopleAnswers
from sizekeeper.importing.people_figures import Figure, usual_unit
from sizekeeper.importing.people_rows import Line, Told


@dataclass(slots=True)
class PeopleMaker:
    """Makes people of lines; counts the figures that name no day, and those that name nobody who held the tape.

    `today` is the day of those, unless another was set by hand; `unit` is that of people without figures; `known` are
    the people whose groups are spelt as theirs.
    """

    answers: PeopleAnswers
    today: dt.date
    unit: Literal["cm", "in"]
    known: Sequence[Person]
    undated: int = 0
    unsigned: int = 0
    _groups: tuple[str, ...] = field(init=False)

    def __post_init__(self) -> None:
        """Look up the groups once."""
        self._groups = known_groups(self.known)

    def person(self, lines: Sequence[Line]) -> FoundPerson:
        """The person of one row or of several."""
        figures = [figure for line in lines for figure in line.figures]
        said = next((line.unit for line in lines if line.unit), "")
        unit: Literal["cm", "in"] = (
            ("in" if said in ("in", "ft", "yd") else "cm") if said else usual_unit(figures, self.unit)
        )
        found = [self._reading(figure, line, unit) for line in lines for figure in line.figures]
        readings = tuple({_sameness(one.reading): one for one in reversed(found)}.values())[::-1]
        first = lines[0]
        person = Person(
            id="",
            name=first.name,
            unit=unit,
            readings=tuple(one.reading for one in readings),
            born=next((line.born for line in lines if line.born), None),
            child=any(line.child for line in lines),
            groups=as_known(tidy([*(g for line in lines for g in line.groups), *self.answers.groups]), self._groups),
            notes="\n".join(dict.fromkeys(line.notes for line in lines if line.notes)),
        )
        cells = {role: at for line in reversed(lines) for role, at in line.cells.items()}
        return FoundPerson(first.at, person, readings, cells)

    def _reading(self, figure: Figure, line: Line, unit: str) -> FoundReading:
        told = line.told.get(figure.column.role, Told())
        on, by = told.on or line.on, told.by or line.by
        self.undated += on is None
        self.unsigned += by is None
        bare = figure.own or figure.length is None or figure.unit == unit
        reading = Reading(
            measure=figure.column.role,
            text=figure.text if bare else f"{figure.text} {figure.unit}",
            length=figure.length,
            on=on or self.answers.on or self.today,
            by=by or self.answers.by,
            over=told.over or line.over,
            note=told.note,
        )
        if reading.length is not None:
            reading = replace(reading, length=replace(reading.length, text=reading.text))
        return FoundReading(figure.at, reading, figure.guessed)


def _sameness(reading: Reading) -> tuple[object, ...]:
    """What makes two figures of a person one: the same measure on the same day, written alike."""
    cm = reading.length.exact_cm if reading.length is not None else reading.text
    return reading.measure, reading.on, cm
