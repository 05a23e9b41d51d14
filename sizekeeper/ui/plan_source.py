"""The make in front: the one a person works on from a pattern, or a new one that is not saved yet."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sizekeeper.core.make import Make
from sizekeeper.core.makes import in_front, is_of
from sizekeeper.core.views import shares_chart

if TYPE_CHECKING:
    from sizekeeper.ui.session import Session


def make_of(session: Session, person: str, pattern: str, view: str, fresh: str, taken: str = "") -> Make:
    """The make in front: the one that is worked on, drafts laid over; else a new one, not yet saved.

    Args:
        session: the open library.
        person: her id.
        pattern: the pattern's id.
        view: the view looked at; a make of another view is another make.
        fresh: the id a new make gets.
        taken: the id of a make that was asked for, finished or not; it is in front where it is of these.
    """
    standing = standing_make(session, person, pattern, view, fresh, taken)
    kept = session.value(standing.id)
    return kept if isinstance(kept, Make) and is_of(kept, person, pattern, view) else standing


def standing_make(session: Session, person: str, pattern: str, view: str, fresh: str, taken: str = "") -> Make:
    """The make in front as last edited, without what is being typed.

    A view that shares its chart with others begins with what was decided while they were one choice.
    """
    makes = [value for value in session.belonging(pattern) if isinstance(value, Make) and not value.hidden]
    if (own := in_front([make for make in makes if is_of(make, person, pattern, view)], taken)) is not None:
        return own
    if shares_chart(session.charts(pattern), view):
        shared = in_front([make for make in makes if is_of(make, person, pattern, "")])
        if shared is not None:
            return replace(shared, id=fresh, view=view)
    what = session.pattern(pattern)
    return Make(fresh, person, pattern, view, what.title if what is not None else "")
