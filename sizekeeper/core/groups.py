"""Groups of people: a household, a class, a cast. Free words; capitals and spaces do not make another group."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from sizekeeper.core.person import Person

_ONE = re.compile(r'\s*(?:"(?P<quoted>(?:[^"]|"")*)"\s*(?=[,;\n]|$)|(?P<plain>[^,;\n]*))(?:[,;\n]|$)')
_NEEDS_MARKS = re.compile(r'[,;\n"]')


def same(one: str, other: str) -> bool:
    """Whether two texts name the same group."""
    return _plain(one) == _plain(other)


def _plain(group: str) -> str:
    return " ".join(group.split()).casefold()


def tidy(groups: Iterable[str]) -> tuple[str, ...]:
    """Groups with single spaces, each once, as first written; empty ones are left out."""
    found: dict[str, str] = {}
    for group in groups:
        shown = " ".join(group.split())
        if shown:
            found.setdefault(shown.casefold(), shown)
    return tuple(found.values())


def groups_in(text: str) -> tuple[str, ...]:
    """The groups that a text lists with commas, semicolons or line ends between; quotation marks hold one together."""
    return tidy(
        match["plain"] if match["quoted"] is None else match["quoted"].replace('""', '"')
        for match in _ONE.finditer(text)
    )


def groups_text(groups: Iterable[str]) -> str:
    """Groups as one text, which `groups_in` takes apart again."""
    return ", ".join(f'"{g.replace(chr(34), chr(34) * 2)}"' if _NEEDS_MARKS.search(g) else g for g in groups)


def known_groups(people: Iterable[Person]) -> tuple[str, ...]:
    """Every group that somebody belongs to, in the order of the alphabet."""
    return tuple(sorted(tidy(group for person in people for group in person.groups), key=_plain))


def belongs(person: Person, group: str) -> bool:
    """Whether a person belongs to a group."""
    return any(same(one, group) for one in person.groups)


def members(people: Iterable[Person], group: str) -> tuple[Person, ...]:
    """Those who belong to a group, in the order given."""
    return tuple(person for person in people if belongs(person, group))


def as_known(groups: Sequence[str], known: Iterable[str]) -> tuple[str, ...]:
    """Groups as others have written them: `household` becomes `Household` where somebody belongs to that."""
    spelt = {_plain(group): group for group in known}
    return tidy(spelt.get(_plain(group), group) for group in groups)


def renamed(people: Iterable[Person], group: str, name: str) -> list[tuple[Person, Person]]:
    """Everybody of a group before and after it gets another name; with the name of another group both become one."""
    return [
        (person, replace(person, groups=tidy(name if same(one, group) else one for one in person.groups)))
        for person in members(people, group)
    ]


def dissolved(people: Iterable[Person], group: str) -> list[tuple[Person, Person]]:
    """Everybody of a group before and after it is no more."""
    return [
        (person, replace(person, groups=tuple(one for one in person.groups if not same(one, group))))
        for person in members(people, group)
    ]
