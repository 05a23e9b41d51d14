"""A household for tests of the Fit page: people, patterns and charts put into a session in one line."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sizekeeper.core.pattern import Pattern
from sizekeeper.ui.fit_page import FitPage
from tests.build import chart, person
from tests.fits import BODY_CHART, FINISHED

if TYPE_CHECKING:
    import datetime as dt
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from sizekeeper.core.chart import Chart
    from sizekeeper.core.person import Person
    from sizekeeper.store.codec import Value
    from sizekeeper.ui.fit_field import FigureField
    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Session
    from sizekeeper.ui.settings import Settings

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


def in_front(
    qtbot: QtBot, session: Session, selection: Selection, settings: Settings, today: Callable[[], dt.date]
) -> FitPage:
    """The Fit page in front, in inches, as large as it is in a window of 1280 by 800."""
    settings.choose(unit="in")
    page = FitPage(session, selection, settings, today=today)
    qtbot.addWidget(page)
    page.resize(1040, 740)
    with qtbot.waitActive(page):
        page.show()
    return page


def field(page: FitPage, measure: str) -> FigureField:
    """The field of a measure's body figure."""
    found = page.answer.board.regions.field(measure)
    assert found is not None
    return found


def headline(page: FitPage) -> str:
    """The verdict as shown."""
    return page.answer.verdict.shown.headline


def amounts(page: FitPage, measure: str) -> dict[str, str]:
    """The ease shown for a measure, by size."""
    model = page.answer.board.model
    row = model.measures.index(measure)
    return {column.label: str(model.index(row, i).data()) for i, column in enumerate(model.table.columns)}
