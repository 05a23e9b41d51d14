"""The make in front: the newest of a person from a pattern, or a new one that is not saved yet."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sizekeeper.core.make import Make
from sizekeeper.core.views import shares_chart

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
    standing = standing_make(session, person, pattern, view, fresh)
    kept = session.value(standing.id)
    return kept if isinstance(kept, Make) and _same(kept, person, pattern, view) else standing


def standing_make(session: Session, person: str, pattern: str, view: str, fresh: str) -> Make:
    """The make in front as last edited, without what is being typed.

    A view that shares its chart with others begins with what was decided while they were one choice.
    """
    makes = [value for value in session.belonging(pattern) if isinstance(value, Make) and not value.hidden]
    own = [make for make in makes if _same(make, person, pattern, view)]
    if own:
        return own[-1]
    if shares_chart(session.charts(pattern), view):
        shared = [make for make in makes if _same(make, person, pattern, "")]
        if shared:
            return replace(shared[-1], id=fresh, view=view)
    what = session.pattern(pattern)
    return Make(fresh, person, pattern, view, what.title if what is not None else "")


def _same(make: Make, person: str, pattern: str, view: str) -> bool:
    return (make.person, make.pattern, make.view) == (person, pattern, view)
