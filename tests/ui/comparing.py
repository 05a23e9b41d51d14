"""A small household for tests of the windows of the Compare menu, put into a session in one line."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sizekeeper.core.pattern import Pattern
from tests.build import chart, person

if TYPE_CHECKING:
    from sizekeeper.core.chart import Chart
    from sizekeeper.core.person import Person
    from sizekeeper.store.codec import Value
    from sizekeeper.ui.overview_sizes import OverviewSizes
    from sizekeeper.ui.session import Session


def who(name: str, bust: str, *groups: str, **figures: str) -> Person:
    """Somebody with a bust, in cm; the id is the name in small letters."""
    return replace(person("cm", bust=bust, **figures), id=name.casefold(), name=name, groups=groups)


ADA, BEA, CLEO = who("Ada", "88", "Cast"), who("Bea", "96", "Class"), who("Cleo", "120", "Cast")
"""For a close top with 5 cm of ease: one in 38, one in 42, and one past every chart here."""

TOP = Pattern("top", "Aster top", "Moorhen", garment="top")
SHIRT = Pattern("shirt", "Bryony shirt", "Tarn", garment="top")
BODY = chart("body", "38 40 42", bust="88, 92, 96", waist="70, 74, 78", hip="94, 98, 102")
FINISHED = chart("finished", "38 40 42", bust="93, 97, 101")
LOOSE = chart("finished", "38 40 42", bust="95, 99, 103")


def charts(pattern: Pattern, *shown: Chart) -> list[Value]:
    """A pattern with charts of its own."""
    return [pattern, *(replace(c, id=f"{pattern.id}-{c.kind}-{c.view}", pattern=pattern.id) for c in shown)]


def put(session: Session, *values: Value) -> None:
    """Put entries into the library; nothing to undo is left."""
    session.apply_all("Set up", [(None, value) for value in values])
    session.undo_stack.clear()


ROOMY = replace(chart("finished", "38 40 42", bust="90, 94, 112"), view="B")
"""A view that only fits a bust of about 107, else it is far off or will not close."""


def put_views(session: Session, *people: Person) -> None:
    """One pattern with views: A and the rest by the chart that serves all, B by one of its own."""
    put(session, *people, *charts(replace(TOP, views=("A", "B")), FINISHED, ROOMY))


def put_household(session: Session) -> None:
    """Three people and two patterns with all their charts."""
    put(session, ADA, BEA, CLEO, *charts(TOP, BODY, FINISHED), *charts(SHIRT, BODY, LOOSE))


def work_out(sizes: OverviewSizes) -> None:
    """Work out every cell that is asked for."""
    while sizes.progress[0] < sizes.progress[1]:
        sizes.work()
