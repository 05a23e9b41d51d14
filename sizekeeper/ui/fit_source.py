"""What the Fit page shows: the chosen person against the chosen pattern, or what is missing first."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from sizekeeper import assets
from sizekeeper.core.found import filled, find
from sizekeeper.core.piece import Pieces
from sizekeeper.core.views import pieces_in, views_of
from sizekeeper.ui.selection import Place

if TYPE_CHECKING:
    from sizekeeper.core.found import Found
    from sizekeeper.core.pattern import Pattern
    from sizekeeper.core.person import Person
    from sizekeeper.ui.session import Session


@dataclass(frozen=True, slots=True)
class Missing:
    """What has to be done before a size can be compared: a heading, a sentence, and a button that leads there."""

    heading: str
    sentence: str
    button: str = ""
    place: Place | None = None


_NOBODY = Missing(
    "Whose size is it?",
    "Choose a person on the left, or add one and type the measurements. Bust, waist and hip are enough to start.",
    "Go to the measurements",
    Place("person"),
)
_NO_PATTERN = Missing(
    "Which pattern is it?",
    "Choose a pattern on the left, or add one and type what its envelope prints: the two or three sizes "
    "that come into question are enough.",
    "Go to the pattern",
    Place("pattern"),
)


def look_up(session: Session, person: str, pattern: str, *, view: str) -> Found | Missing:
    """Compare the chosen person with the chosen pattern, drafts laid over; or say what comes first."""
    who, what = session.person(person), session.pattern(pattern)
    if who is None:
        return _NOBODY
    if what is None:
        return _NO_PATTERN
    body, finished = (filled(session.chart(what.id, kind, view)) for kind in ("body", "finished"))
    if body is None and finished is None:
        return Missing(
            "What does the envelope say?",
            f"{what.title or 'This pattern'} has no figures yet. Type its body chart, its finished measurements, "
            "or both; two or three sizes are enough.",
            "Type the charts",
            Place("pattern", what.id),
        )
    pieces = pieces_in(pieces_of(session, what.id), what, session.charts(what.id), view)
    found = find(
        who, what, body, finished, pieces, view=view, measures=assets.measures(), defaults=assets.ease_defaults()
    )
    asked = found.illegible or found.preference.regions or found.preference.mode is not None
    if found.fit is None and not asked:
        return _nothing_in_common(who, found.problem)
    return replace(found, read_only=session.read_only)


def pieces_of(session: Session, pattern: str) -> Pieces | None:
    """What is known of a pattern's paper, drafts laid over; None while nothing is."""
    found = next((v.id for v in session.belonging(pattern) if isinstance(v, Pieces)), "")
    value = session.value(found)
    return value if isinstance(value, Pieces) else None


def view_choices(session: Session, pattern: Pattern) -> dict[str, str]:
    """The views to choose between and what each is called, by name; empty where there is nothing to choose.

    Views without finished figures of their own share the chart that serves all: they are one choice, named "", unless
    they have pieces of their own.
    """
    return views_of(pattern, session.charts(pattern.id), pieces_of(session, pattern.id))


def _nothing_in_common(person: Person, problem: str) -> Missing:
    if any(reading.length is not None for reading in person.readings):
        return Missing("Nothing to compare yet", problem, "Go to the measurements", Place("person", person.id))
    return Missing(
        f"Measure {person.name or 'the body'} first",
        "No measurements are typed yet. Bust, waist and hip are enough to see a size.",
        "Type the measurements",
        Place("person", person.id),
    )
