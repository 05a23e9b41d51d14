"""The two sides whose drafting is compared: patterns with a view each, or all patterns of a publisher of one kind."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sizekeeper.core.draft import draft_of
from sizekeeper.core.drafting import Side
from sizekeeper.core.found import filled
from sizekeeper.core.preference import GARMENTS
from sizekeeper.ui.beside_choice import pattern_choices
from sizekeeper.ui.entry_words import entry_name
from sizekeeper.ui.fit_source import view_choices

if TYPE_CHECKING:
    from sizekeeper.core.chart import Chart, ChartKind
    from sizekeeper.core.draft import Draft
    from sizekeeper.core.pattern import Pattern
    from sizekeeper.ui.beside_choice import Choice
    from sizekeeper.ui.session import Session

_Kept = tuple[tuple[object, ...], "Draft"]


class DraftingSource:
    """What of the library can be compared; a draft is read off its charts once and kept while they stay the same."""

    def __init__(self, session: Session) -> None:
        """Read from a session."""
        self._session = session
        self._kept: dict[tuple[str, str], _Kept] = {}

    def patterns(self) -> list[tuple[Choice, str]]:
        """The patterns with figures in a chart."""
        return pattern_choices(self._session, self._charted())

    def kinds(self) -> list[tuple[Choice, str]]:
        """The kinds of garment that there are patterns of, knits and children's wear apart."""
        found = {kind_of(pattern) for pattern in self._charted()}
        order = sorted(found, key=lambda kind: (kind[1], GARMENTS.index(kind[0])))
        return [(kind, _kind_words(kind)) for kind in order]

    def publishers(self, kind: Choice) -> list[tuple[Choice, str]]:
        """The publishers with a pattern of a kind."""
        names = {_publisher(pattern) for pattern in self._charted() if kind_of(pattern) == kind}
        return [((name, ""), name) for name in sorted(names - {""}, key=str.casefold)]

    def pattern_side(self, choice: Choice, name: str) -> Side | None:
        """A pattern as a side; None where it is not there."""
        pattern = self._session.pattern(choice[0])
        return None if pattern is None else Side(name, (self._draft(pattern, choice[1]),))

    def publisher_side(self, choice: Choice, kind: Choice) -> Side | None:
        """All patterns of a publisher that are of one kind, each in its first view; None without any."""
        here = [p for p in self._charted() if kind_of(p) == kind and _publisher(p) == choice[0]]
        drafts = tuple(self._draft(p, next(iter(view_choices(self._session, p)), "")) for p in here)
        return Side(choice[0], drafts) if drafts else None

    def _charted(self) -> list[Pattern]:
        return [p for p in self._session.patterns() if any(filled(chart) for chart in self._session.charts(p.id))]

    def _draft(self, pattern: Pattern, view: str) -> Draft:
        charts = self._chart(pattern, "body", view), self._chart(pattern, "finished", view)
        rests = (pattern, *charts)
        kept = self._kept.get((pattern.id, view))
        if kept is not None and all(old is new for old, new in zip(kept[0], rests, strict=True)):
            return kept[1]
        draft = draft_of(pattern, *charts, title=entry_name(pattern))
        self._kept[(pattern.id, view)] = (rests, draft)
        return draft

    def _chart(self, pattern: Pattern, kind: ChartKind, view: str) -> Chart | None:
        return filled(self._session.chart(pattern.id, kind, view))


def _publisher(pattern: Pattern) -> str:
    return " ".join(pattern.publisher.split())


def kind_of(pattern: Pattern) -> Choice:
    """The garment, and by what its ease is of another order: `knit`, `child`."""
    return pattern.garment, " ".join(
        word for word, is_so in (("child", pattern.child), ("knit", pattern.knit)) if is_so
    )


def _kind_words(kind: Choice) -> str:
    before = {"child": "children’s", "knit": "knit"}
    said = " ".join([*(before[word] for word in kind[1].split()), kind[0]])
    return f"{said[0].upper()}{said[1:]}"
