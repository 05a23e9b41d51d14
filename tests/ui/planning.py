"""The plans on the Fit page for tests: a dress with its pieces in front, opened in one line."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from sizekeeper.core.make import Make
from sizekeeper.core.piece import Pieces
from tests.core.paper import across, along, piece
from tests.ui.household import ADA, DRESS, settle

if TYPE_CHECKING:
    from PySide6.QtWidgets import QLineEdit

    from sizekeeper.core.chart import Chart
    from sizekeeper.core.pattern import Pattern
    from sizekeeper.core.person import Person
    from sizekeeper.core.piece import Piece
    from sizekeeper.ui.fit_page import FitPage
    from sizekeeper.ui.plan_desk import PlanDesk
    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Session

BODICE = (
    piece("Front", "neck bust waist", "front", on_fold=True, line=True, dart=True),
    piece("Back", "neck bust waist", "back", cut=2, line=True, along=along("back_waist", "14 3/8 in", 2)),
    piece("Midriff", "waist", "band", cut=2, along=along("back_waist", "3 in", 2)),
    piece("Facing", "neck bust waist", "facing", cut=2),
)
"""Back and midriff net of two allowances of 5/8 in: 13 1/8 and 1 3/4 in."""
WAISTBAND = (
    piece("Band front", "waist", "waistband", cut=2, across=across("waist", "8 in")),
    piece("Band back", "waist", "waistband", on_fold=True, across=across("waist", "8 in")),
)


def open_desk(
    page: FitPage,
    session: Session,
    selection: Selection,
    *charts: Chart,
    pieces: tuple[Piece, ...] | Pieces = (),
    who: Person = ADA,
    what: Pattern = DRESS,
    part: str = "plans",
) -> PlanDesk:
    """The plans of a person and a pattern in front, with its pieces."""
    settle(session, selection, *charts, who=who, what=what)
    listed = pieces if isinstance(pieces, Pieces) else Pieces("pieces", what.id, pieces)
    session.apply("Set up", None, replace(listed, pattern=what.id))
    session.undo_stack.clear()
    page.heading.parts.buttons["plans"].click()
    page.desk.turn_to(part)
    return page.desk


def make_in(session: Session) -> Make | None:
    """The make that is saved, None while there is none."""
    return next((value for value in session.values() if isinstance(value, Make)), None)


def saved_make(session: Session) -> Make:
    """The make that is saved."""
    made = make_in(session)
    assert made is not None
    return made


def type_in(field: QLineEdit, text: str, key: Qt.Key = Qt.Key.Key_Return) -> None:
    """Type a text in place of what stands in a field, and a key behind it."""
    field.setFocus()
    field.selectAll()
    QTest.keyClick(field, Qt.Key.Key_Delete)
    QTest.keyClicks(field, text)
    QTest.keyClick(field, key)


def steps(session: Session) -> list[str]:
    """The names of the steps that can be undone."""
    return [session.undo_stack.text(i) for i in range(session.undo_stack.index())]
