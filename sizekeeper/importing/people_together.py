"""Which rows are one person's, and whether she is in the library already; nothing of it is decided without asking."""

from __future__ import annotations

import unicodedata
from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING

from sizekeeper.importing.people_draft import NEW, SKIP, Notes, PeopleAnswers, pick, put
from sizekeeper.importing.people_words import is_sum

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sizekeeper.core.person import Person
    from sizekeeper.importing.people_draft import FoundPerson
    from sizekeeper.importing.people_rows import Line

_MOST = 3
"""How many people of one name are offered to be added to (coined)."""


def name_key(name: str) -> str:
    """A name for comparing: without regard to capitals and spaces."""
    return " ".join(unicodedata.normalize("NFC", name).split()).casefold()


def without_sums(lines: Sequence[Line], answers: PeopleAnswers, notes: Notes) -> list[Line]:
    """The rows that are not sums or means of the others; nothing else is asked about those that are left out."""
    return [line for line in lines if not (is_sum(line.name) and _is_no_person(line, answers, notes))]


def together(lines: Sequence[Line], answers: PeopleAnswers, notes: Notes) -> list[list[Line]]:
    """The rows of each person, in the order of her first one. A row without a name counts only as it was answered."""
    found: dict[str, list[list[Line]]] = {}
    made: list[list[Line]] = []
    last: list[Line] | None = None
    for line in lines:
        if not line.name:
            _without_name(line, last, answers, notes)
            continue
        before = found.setdefault(name_key(line.name), [])
        how = answers.same.get(line.at, "one")
        if before:
            _ask_about_same(line, before[0][0], answers, notes)
        if before and how != "apart":
            if how == "one":
                before[0].append(line)
            last = before[0]
        else:
            last = [line]
            before.append(last)
            made.append(last)
    return made


def _without_name(line: Line, last: list[Line] | None, answers: PeopleAnswers, notes: Notes) -> None:
    if not (line.figures or line.cells):
        return
    answer = answers.nameless.get(line.at, "")
    if answer == "above" and last is not None:
        last.append(line)
    if answer:
        return
    skip = pick("Leave it out", partial(put, which="nameless", key=line.at, value="skip"))
    choices = [skip]
    if last is not None:
        choices.insert(
            0, pick(f"Of {_short(last[0].name)}", partial(put, which="nameless", key=line.at, value="above"))
        )
    notes.ask("nameless", "No name stands here. Whose figures are these?", line.at, *choices, edit="cell", must=True)


def _is_no_person(line: Line, answers: PeopleAnswers, notes: Notes) -> bool:
    """Whether a row of sums or means is left out; it is until somebody says that a person is called so."""
    if line.at not in answers.sums:
        choices = [
            pick(text, partial(put, which="sums", key=line.at, value=value))
            for text, value in (("Leave it out", "skip"), ("A person", "person"))
        ]
        notes.ask("sum", f"“{line.name}” looks like a sum or a mean, not like a person.", line.at, *choices)
    return answers.sums.get(line.at, "skip") == "skip"


def _ask_about_same(line: Line, first: Line, answers: PeopleAnswers, notes: Notes) -> None:
    if line.at in answers.same:
        return
    says = f"“{_short(line.name)}” stands at {first.at} already. Is it one person?"
    choices = [
        pick(text, partial(put, which="same", key=line.at, value=value))
        for text, value in (("One person", "one"), ("Two people", "apart"), ("Leave this row out", "first"))
    ]
    notes.ask("same_name", says, line.at, *choices, must=True)


def with_fates(
    people: Sequence[FoundPerson], known: Sequence[Person], answers: PeopleAnswers, notes: Notes
) -> list[FoundPerson]:
    """The people with what becomes of each; who has a name of the library is asked about."""
    named: dict[str, list[Person]] = {}
    for person in known:
        named.setdefault(name_key(person.name), []).append(person)
    found = [replace(one, known=tuple(named.get(name_key(one.person.name), ()))) for one in people]
    asked = [one for one in found if one.known and one.at not in answers.left_out and not _answered(one, answers)]
    _ask_about_all(asked, notes)
    for one in asked:
        _ask_about_known(one, notes)
    return [replace(one, fate=_fate(one, answers)) for one in found]


def _answered(one: FoundPerson, answers: PeopleAnswers) -> bool:
    """Whether it was said what becomes of somebody; one to be added to must still be there."""
    answer = answers.known.get(one.at, "")
    return answer in (NEW, SKIP) or answer in {f"add:{person.id}" for person in one.known}


def _fate(one: FoundPerson, answers: PeopleAnswers) -> str:
    if one.at in answers.left_out:
        return SKIP
    if not one.known:
        return NEW
    return answers.known.get(one.at, "") if _answered(one, answers) else ""


def _ask_about_known(one: FoundPerson, notes: Notes) -> None:
    name = _short(one.person.name)
    several = len(one.known) > 1
    hidden = " (hidden)" if all(person.hidden for person in one.known) else ""
    says = f"“{name}” is in the library{f' {len(one.known)} times' if several else ''} already{hidden}."
    choices = [
        pick(
            _told_apart(person) if several else "The same person",
            partial(put, which="known", key=one.at, value=f"add:{person.id}"),
        )
        for person in one.known[:_MOST]
    ]
    choices.append(pick("Another person", partial(put, which="known", key=one.at, value=NEW)))
    choices.append(pick("Leave out", partial(put, which="known", key=one.at, value=SKIP)))
    notes.ask("known", says, one.at, *choices, must=True)


def _ask_about_all(asked: Sequence[FoundPerson], notes: Notes) -> None:
    """One question for several who are known, before each of them is asked about."""
    plain = [one for one in asked if len(one.known) == 1]
    if len(plain) < 2:  # noqa: PLR2004 - several
        return
    says = f"{len(plain)} of these people have the name of somebody in the library."
    choices = [
        pick(text, partial(_with_known, values={one.at: value(one) for one in plain}))
        for text, value in (("All are the same people", _the_same), ("Leave them out", _left_out))
    ]
    notes.ask("all_known", says, plain[0].at, *choices)


def _the_same(one: FoundPerson) -> str:
    return f"add:{one.known[0].id}"


def _left_out(_one: FoundPerson) -> str:
    return SKIP


def _with_known(answers: PeopleAnswers, values: dict[str, str]) -> PeopleAnswers:
    return replace(answers, known={**answers.known, **values})


def _told_apart(person: Person) -> str:
    """A person of the library, told apart from others of her name by what is known of her."""
    if person.born:
        return f"The one born {person.born.isoformat()}"
    if person.groups:
        return f"The one of {_short(person.groups[0])}"
    return f"The one with {len(person.readings)} measurements"


def _short(name: str) -> str:
    return name if len(name) <= 22 else f"{name[:20]}…"  # noqa: PLR2004 - a button's room
