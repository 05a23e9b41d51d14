"""What saving a table of people does to the library: people added, and readings added to people who are there."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from sizekeeper.core.groups import as_known, tidy
from sizekeeper.core.person import Person

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from sizekeeper.core.person import Reading
    from sizekeeper.importing.people_draft import PeopleDraft


@dataclass(frozen=True, slots=True)
class PeoplePlan:
    """The people before and after saving, what undo calls it, and what it does in a sentence."""

    text: str
    pairs: tuple[tuple[Person | None, Person], ...]
    says: str


def plan_people(draft: PeopleDraft, known: Sequence[Person], new_id: Callable[[], str]) -> PeoplePlan:
    """Saving everybody who is taken in: as somebody new, or into somebody in the library."""
    added: list[Person] = []
    changed: dict[str, tuple[Person, Person]] = {}
    there = {person.id: person for person in known}
    for one in draft.taken:
        before = there.get(one.fate.removeprefix("add:"))
        if before is None:
            added.append(replace(one.person, id=new_id()))
        else:
            first, now = changed.get(before.id, (before, before))
            changed[before.id] = (first, with_more(now, one.person))
    real = [(before, after) for before, after in changed.values() if before != after]
    pairs: tuple[tuple[Person | None, Person], ...] = (*((None, person) for person in added), *real)
    people = _counted(len(added) + len(real))
    return PeoplePlan(f"Import {people}", pairs, _says(len(added), real, len(changed) - len(real)))


def with_more(person: Person, found: Person) -> Person:
    """A person with the readings of another that she has not yet; what is known of her stays, what is not is filled in.

    A reading is there already when she has one of the same measure, day and length, or when it is the median of a day,
    as people are exported.
    """
    there = {_sameness(reading) for reading in person.readings} | _medians(person)
    fresh = tuple(reading for reading in found.readings if _sameness(reading) not in there)
    lines = [line for line in found.notes.split("\n") if line and line not in person.notes]
    return replace(
        person,
        readings=(*person.readings, *(_in_her_unit(reading, person) for reading in fresh)),
        born=person.born or found.born,
        child=person.child or found.child,
        groups=tidy([*person.groups, *as_known(found.groups, person.groups)]),
        notes="\n".join([*([person.notes] if person.notes else []), *lines]),
    )


def _medians(person: Person) -> set[tuple[object, ...]]:
    """The median of each measure and day that was measured several times."""
    from sizekeeper.core.reading_edit import median_cm  # noqa: PLC0415 - the notation loads the unit engine

    days: dict[tuple[str, object], list[Reading]] = {}
    for reading in person.readings:
        days.setdefault((reading.measure, reading.on), []).append(reading)
    return {(*day, median_cm(tuple(readings))) for day, readings in days.items() if len(readings) > 1}


def _in_her_unit(reading: Reading, person: Person) -> Reading:
    """The reading with its unit written where a bare number would be taken in another unit."""
    from sizekeeper.core.reading_edit import shown_text  # noqa: PLC0415 - the notation loads the unit engine

    text = shown_text(reading, person.unit)
    length = None if reading.length is None else replace(reading.length, text=text)
    return replace(reading, text=text, length=length)


def _sameness(reading: Reading) -> tuple[object, ...]:
    return reading.measure, reading.on, reading.text if reading.length is None else reading.length.exact_cm


def _counted(count: int) -> str:
    return "1 person" if count == 1 else f"{count} people"


def _says(added: int, changed: Sequence[tuple[Person, Person]], same: int) -> str:
    said = [f"{_counted(added)} {'is' if added == 1 else 'are'} added"] if added else []
    if changed:
        fresh = sum(len(after.readings) - len(before.readings) for before, after in changed)
        figures = "1 measurement" if fresh == 1 else f"{fresh} measurements"
        said.append(f"{_counted(len(changed))} of the library {'gets' if len(changed) == 1 else 'get'} {figures} more")
    if same:
        said.append(f"{_counted(same)} {'has' if same == 1 else 'have'} all of it already")
    return f"{'; '.join(said)}." if said else "Nobody is taken in."
