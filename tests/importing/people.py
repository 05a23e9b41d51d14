"""Tables of people for tests, read from a text as it would be pasted."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace
from typing import TYPE_CHECKING, Literal, cast

from sizekeeper.importing.people_draft import NOTHING_SAID, PeopleAnswers, PeopleDraft
from sizekeeper.importing.people_open import open_people_bytes, open_people_pasted
from sizekeeper.importing.people_read import read_people

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from sizekeeper.core.person import Person

TODAY = dt.date(2026, 11, 25)


def pasted(
    text: str,
    answers: PeopleAnswers = NOTHING_SAID,
    known: Sequence[Person] = (),
    unit: Literal["cm", "in"] = "cm",
    *,
    html: str = "",
) -> PeopleDraft:
    """The people of a pasted text."""
    name, sheets = open_people_pasted(html, text)
    return read_people(name, sheets, answers, known, TODAY, unit)


def of_file(data: bytes, name: str = "people.csv", known: Sequence[Person] = ()) -> PeopleDraft:
    """The people of a file's content."""
    return read_people(name, open_people_bytes(data, name), NOTHING_SAID, known, TODAY)


def figures(draft: PeopleDraft) -> dict[str, dict[str, str]]:
    """What was measured of whom, exact, as `151/4 in`; a text that is no length stands in brackets."""
    return {
        one.person.name: {
            r.measure: f"{r.length.value} {r.length.unit}" if r.length else f"({r.text})" for r in one.person.readings
        }
        for one in draft.people
    }


def codes(draft: PeopleDraft) -> list[tuple[str, str]]:
    """The questions by code and cell."""
    return sorted((ask.code, ask.at) for ask in draft.asks)


def answered(draft: PeopleDraft, text: str, known: Sequence[Person] = (), *, at: str = "") -> PeopleDraft:
    """The draft after the first answer of this text, to a question about a cell if one is named, was chosen."""
    answer = next(a for ask in draft.asks if at in ("", ask.at) for a in ask.answers if a.text == text)
    change = cast("Callable[[PeopleAnswers], PeopleAnswers]", answer.change)
    return read_people(draft.name, draft.sheets, change(draft.answers), known, TODAY)


def said(draft: PeopleDraft, known: Sequence[Person] = (), **changes: object) -> PeopleDraft:
    """The draft with something set by hand."""
    answers = replace(draft.answers, **changes)  # type: ignore[arg-type]  # the fields of the answers
    return read_people(draft.name, draft.sheets, answers, known, TODAY)
