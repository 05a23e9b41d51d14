"""In which order people and patterns stand in the grid."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal

from sizekeeper.ui.entry_words import place_in_list

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping, Sequence

    from sizekeeper.core.pattern import Pattern
    from sizekeeper.core.person import Person
    from sizekeeper.ui.overview_cell import OverviewCell

    Cells = Callable[[str, str], OverviewCell | None]

PeopleOrder = Literal["name", "group", "doubts"]
PatternOrder = Literal["title", "publisher", "garment", "doubts"]

PEOPLE_ORDERS: Mapping[PeopleOrder, str] = {"name": "Name", "group": "Group", "doubts": "Most doubts first"}
PATTERN_ORDERS: Mapping[PatternOrder, str] = {
    "title": "Title",
    "publisher": "Publisher",
    "garment": "Garment",
    "doubts": "Most doubts first",
}


def people_in_order(
    people: Sequence[Person], patterns: Sequence[Pattern], order: PeopleOrder, cells: Cells
) -> list[Person]:
    """The people by name, by their first group, or by how many cells are marked."""
    by_name = sorted(people, key=place_in_list)
    if order == "group":
        return sorted(by_name, key=lambda p: (not p.groups, p.groups[0].casefold() if p.groups else ""))
    if order == "doubts":
        return sorted(by_name, key=lambda p: -sum(_marked(cells(p.id, q.id)) for q in patterns))
    return by_name


def patterns_in_order(
    patterns: Sequence[Pattern], people: Sequence[Person], order: PatternOrder, cells: Cells
) -> list[Pattern]:
    """The patterns by title, publisher or kind of garment, or by how many cells are marked."""
    by_title = sorted(patterns, key=place_in_list)
    if order == "publisher":
        return sorted(by_title, key=lambda q: (not q.publisher.strip(), q.publisher.strip().casefold()))
    if order == "garment":
        return sorted(by_title, key=lambda q: q.garment)
    if order == "doubts":
        return sorted(by_title, key=lambda q: -sum(_marked(cells(p.id, q.id)) for p in people))
    return by_title


def by_size(people: Sequence[Person], pattern: str, cells: Cells, *, largest_first: bool) -> list[Person]:
    """The people by their size in one pattern; those without a size come last."""

    def key(person: Person) -> tuple[bool, float]:
        cell = cells(person.id, pattern)
        position = None if cell is None else cell.position
        at = position or 0.0
        return position is None, -at if largest_first else at

    return sorted(people, key=key)


def by_gravity(patterns: Sequence[Pattern], person: str, cells: Cells, *, gravest_first: bool) -> list[Pattern]:
    """The patterns by how grave the marks in one person's row are."""

    def key(pattern: Pattern) -> int:
        cell = cells(person, pattern.id)
        gravity = 0 if cell is None else cell.gravity
        return -gravity if gravest_first else gravity

    return sorted(patterns, key=key)


def _marked(cell: OverviewCell | None) -> bool:
    return cell is not None and cell.gravity > 0
