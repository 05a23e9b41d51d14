"""What the Household page compares: patterns as their charts are now, drafts laid over."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sizekeeper.core.household import Envelope
from sizekeeper.core.views import chart_of, pieces_in, views_of
from sizekeeper.ui.fit_source import pieces_of

if TYPE_CHECKING:
    from sizekeeper.core.pattern import Pattern
    from sizekeeper.ui.session import Session


@dataclass(frozen=True)
class Offer:
    """A pattern's views with what each is called, and the envelope of each; one without a name where none differ."""

    views: dict[str, str]
    envelopes: dict[str, Envelope]

    def titled(self) -> list[tuple[str, Envelope]]:
        """The envelopes, each with the title of the pattern, and the view where there are several."""
        return [(_titled(envelope, self.views.get(view, "")), envelope) for view, envelope in self.envelopes.items()]


def offer_of(session: Session, pattern: Pattern) -> Offer:
    """A pattern with the charts of each of its views."""
    charts, pieces = session.charts(pattern.id), pieces_of(session, pattern.id)
    views = views_of(pattern, charts, pieces)
    found = {
        view: Envelope(
            pattern,
            chart_of(charts, "body", view),
            chart_of(charts, "finished", view),
            pieces_in(pieces, pattern, charts, view),
            view,
        )
        for view in views or {"": ""}
    }
    return Offer(views, found)


def title_of(pattern: Pattern) -> str:
    """The title of a pattern, or that it has none yet."""
    return pattern.title.strip() or "No title yet"


def _titled(envelope: Envelope, view: str) -> str:
    title = title_of(envelope.pattern)
    return f"{title}, {view[:1].lower()}{view[1:]}" if view else title
