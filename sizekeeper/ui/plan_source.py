"""The make in front: the newest of a person from a pattern, or a new one that is not saved yet."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sizekeeper.core.make import Make

if TYPE_CHECKING:
    from sizekeeper.ui.session import Session


def make_of(session: Session, person: str, pattern: str, view: str, fresh: str) -> Make:
    """The make in front: the newest of a person from a pattern, drafts laid over; else a new one, not yet saved.

    Args:
        session: the open library.
        person: her id.
        pattern: the pattern's id.
        view: the view looked at; a make of another view is another make.
        fresh: the id a new make gets.
    """
    found = [
        value
        for value in session.belonging(pattern)
        if isinstance(value, Make) and not value.hidden and _same(value, person, pattern, view)
    ]
    kept = session.value(found[-1].id if found else fresh)
    if isinstance(kept, Make) and _same(kept, person, pattern, view):
        return kept
    what = session.pattern(pattern)
    return Make(fresh, person, pattern, view, what.title if what is not None else "")


def _same(make: Make, person: str, pattern: str, view: str) -> bool:
    return (make.person, make.pattern, make.view) == (person, pattern, view)
