"""The questions about columns: what an unclear heading means, two columns of one thing, and what is not read."""

from __future__ import annotations

from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING

from sizekeeper import assets
from sizekeeper.importing.measure_names import CLOSE
from sizekeeper.importing.people_columns import NAMES, SEVERAL, is_measure, role_words
from sizekeeper.importing.people_draft import IGNORED, Notes, PeopleAnswers, confirm, pick, put

if TYPE_CHECKING:
    from collections.abc import Iterable

    from sizekeeper.importing.people_draft import Column, Table
    from sizekeeper.importing.question import Answer

_NOT_READ = "Leave it out"


def as_role(text: str, column: Column, role: str) -> Answer:
    """The answer that a column holds this or that."""
    return pick(text, partial(put, which="roles", key=column.at, value=role))


def ask_about_columns(table: Table, notes: Notes) -> Table:
    """The table as its columns are read so far, with the questions that leaves."""
    table = replace(table, columns=tuple(_settled(table, notes)))
    columns = _once_each(table.columns, notes)
    asked = {ask.at for ask in notes.asks}
    for column in columns:
        if column.role == IGNORED and column.label and not column.choices:
            if column.at not in asked and column.at not in notes.answers.roles:
                _ask_unknown(column, notes)
        elif column.choices:
            _ask_unclear(column, notes)
        elif is_measure(column.role):
            _ask_about_measure(column, notes)
    return replace(table, columns=tuple(columns))


def _settled(table: Table, notes: Notes) -> Iterable[Column]:
    """A heading such as Date means what no other column is headed with; where both are free, it is asked."""
    taken = {column.role for column in table.columns}
    for column in table.columns:
        left = [choice for choice in column.choices if choice not in taken]
        days = column.choices == ("born", "on")
        if days and len(left) == 1:
            notes.remark(f"“{column.label}” was read as {role_words(left[0]).lower()}.", column.at)
            yield replace(column, role=left[0], choices=())
        else:
            yield column


def _once_each(columns: Iterable[Column], notes: Notes) -> list[Column]:
    """The columns, of which each tells something else; what is told twice is asked about, and read once so far."""
    kept: dict[str, Column] = {}
    found = []
    for column in columns:
        first = kept.setdefault(column.role, column)
        if column.role != IGNORED and first is not column and column.role not in SEVERAL:
            if is_measure(column.role) and ("twice", column.at) in notes.answers.confirmed:
                found.append(column)
                continue
            _ask_twice(first, column, notes)
            found.append(replace(column, role=IGNORED, choices=()))
        else:
            found.append(column)
    return found


def _ask_twice(first: Column, column: Column, notes: Notes) -> None:
    what = role_words(column.role)
    says = f"“{first.label}” and “{column.label}” both hold {what.lower()}. Which is read?"
    choices = [
        as_role(f"“{first.label}”", column, IGNORED),
        pick(f"“{column.label}”", partial(_instead, first=first.at, second=column.at, role=column.role)),
    ]
    if is_measure(column.role):
        choices.append(pick("Both: measured twice", partial(confirm_one, doubt=("twice", column.at))))
    notes.ask("twice", says, column.at, *choices, must=column.role not in NAMES)


def confirm_one(answers: PeopleAnswers, doubt: tuple[str, str]) -> PeopleAnswers:
    """The answers with one doubt that was looked at."""
    return confirm(answers, doubt)


def _instead(answers: PeopleAnswers, first: str, second: str, role: str) -> PeopleAnswers:
    return put(put(answers, "roles", first, IGNORED), "roles", second, role)


def _ask_unknown(column: Column, notes: Notes) -> None:
    says = f"“{column.label}” is not known, and not read."
    notes.ask("unknown", says, column.at, as_role(_NOT_READ, column, IGNORED), edit="measure")


def _ask_unclear(column: Column, notes: Notes) -> None:
    choices = [as_role(role_words(choice), column, choice) for choice in column.choices]
    says = f"“{column.label}” can mean several things. What stands here?"
    leave = as_role(_NOT_READ, column, IGNORED)
    notes.ask("unclear", says, column.at, *choices, leave, edit="measure", must=True)


def _ask_about_measure(column: Column, notes: Notes) -> None:
    name = assets.measures().name(column.role).lower()
    if column.sure <= CLOSE:
        yes, leave = as_role(f"Yes, {name}", column, column.role), as_role(_NOT_READ, column, IGNORED)
        notes.ask(
            "inferred", f"“{column.label}” was read as {name}. Is it that?", column.at, yes, leave, edit="measure"
        )
    if column.times > 1 and column.at not in notes.answers.times:
        part = "half" if column.times == 2 else "a quarter"  # noqa: PLR2004 - a half
        says = f"“{column.label}” seems to be {part} of the girth, and was counted {column.times} times. Is it?"
        whole = pick("No, all around", partial(put, which="times", key=column.at, value=1))
        yes = pick(f"Yes, {part}", partial(put, which="times", key=column.at, value=column.times))
        notes.ask("half", says, column.at, yes, whole, must=True)
