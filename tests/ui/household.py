"""A household for tests of the Fit page: people, patterns and charts put into a session in one line."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sizekeeper.core.pattern import Pattern
from tests.build import chart, person
from tests.fits import BODY_CHART, FINISHED

if TYPE_CHECKING:
    from sizekeeper.core.chart import Chart
    from sizekeeper.core.person import Person
    from sizekeeper.store.codec import Value
    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Session

ADA = person("in", bust="38", waist="28", hip="43")
DRESS = Pattern("pattern", "Wrap dress", garment="dress")
LONG = chart(
    "finished", " ".join(str(size) for size in range(2, 62, 2)), bust=", ".join(str(80 + 3 * i) for i in range(30))
)
"""Thirty sizes."""


def settle(
    session: Session,
    selection: Selection,
    *charts: Chart,
    who: Person = ADA,
    what: Pattern = DRESS,
) -> None:
    """Put a person, a pattern and its charts into the library and select them; by default the dress and its charts."""
    shown = charts or (BODY_CHART, FINISHED)
    values: list[Value] = [who, what, *(replace(c, pattern=what.id) for c in shown)]
    session.apply_all("Set up", [(None, value) for value in values])
    session.undo_stack.clear()
    selection.choose_person(who.id)
    selection.choose_pattern(what.id)
