"""Many makes: the one that is worked on, those of a pattern that are finished, and which of them to learn from."""

from __future__ import annotations

import datetime as dt
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from sizekeeper.core.make import Make

_LONG_AGO = dt.date.min


def is_of(make: Make, person: str, pattern: str, view: str) -> bool:
    """Whether a make is of a person, a pattern and a view."""
    return (make.person, make.pattern, make.view) == (person, pattern, view)


def in_front(makes: Sequence[Make], taken: str = "") -> Make | None:
    """The make that is worked on: the one taken up, else the newest that is neither finished nor given up.

    Args:
        makes: those of one person, pattern and view, the newest last.
        taken: the id of a make that was asked for.
    """
    asked = next((make for make in makes if make.id == taken), None)
    return asked or next((make for make in reversed(makes) if make.open), None)


def finished(makes: Iterable[Make]) -> list[Make]:
    """The finished makes that are not hidden, the newest first."""
    found = [make for make in makes if make.progress == "finished" and not make.hidden]
    return sorted(found, key=lambda make: make.finished_on or _LONG_AGO, reverse=True)


def hers_before(makes: Iterable[Make], make: Make) -> Make | None:
    """Her own finished make of the pattern that tells most for another; None without one."""
    hers = (one for one in makes if one.person == make.person)
    return made_before(hers, make.person, make.pattern, make.view, make.id)


def made_before(makes: Iterable[Make], person: str, pattern: str, view: str, besides: str = "") -> Make | None:
    """The finished make of a pattern that tells most: her own before another's, of this view before another, newest.

    Args:
        makes: every make.
        person: whose next make it is.
        pattern: the pattern's id.
        view: the view that is looked at.
        besides: a make that is left out.
    """
    found = [make for make in finished(makes) if make.pattern == pattern and make.id != besides]
    return min(found, key=lambda make: (make.person != person, make.view != view), default=None)
