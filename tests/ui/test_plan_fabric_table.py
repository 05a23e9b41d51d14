"""The envelope's table of fabric, taken in where the fabric is reckoned with."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from PySide6.QtWidgets import QApplication

from sizekeeper.core.piece import Pieces
from sizekeeper.ui.plan_fabric_table import FabricQuestion
from tests.core.paper import inches
from tests.ui.planning import BODICE, open_desk, steps

if TYPE_CHECKING:
    from pathlib import Path

    from sizekeeper.ui.fit_page import FitPage
    from sizekeeper.ui.plan_alter import AlterPart
    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Session


@pytest.fixture
def alter(page: FitPage, session: Session, selection: Selection) -> AlterPart:
    """The alterations of a dress with its pieces."""
    return open_desk(page, session, selection, pieces=BODICE, part="alter").alter


def pieces_in(session: Session) -> Pieces:
    return next(value for value in session.values() if isinstance(value, Pieces))


def test_the_envelopes_table_can_be_pasted_where_the_fabric_is_reckoned(alter: AlterPart, session: Session) -> None:
    QApplication.clipboard().setText("Width\t38\t40\n45 in\t3\t3 1/4")
    alter.fabric.taking.paste.click()
    assert [(line.size, line.length.text) for line in pieces_in(session).fabric] == [("38", "3"), ("40", "3 1/4")]
    assert pieces_in(session).pieces == BODICE
    assert steps(session) == ["Take in the table of fabric"]
    session.undo_stack.undo()
    assert pieces_in(session).fabric == ()


def test_a_table_that_is_unclear_is_said_and_changes_nothing(alter: AlterPart, session: Session) -> None:
    QApplication.clipboard().setText("Width\t38\n45 in\tthree")
    alter.fabric.taking.paste.click()
    assert alter.fabric.problem.text() == "“The clipboard”, B2: “three” is not a length."
    assert pieces_in(session).fabric == ()


def test_the_envelopes_table_can_be_read_from_a_file(
    alter: AlterPart, session: Session, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "fabric.csv").write_text("Yards,38\n60 in,2\n", encoding="utf-8")
    monkeypatch.setattr(FabricQuestion, "ask_file", lambda _parent: tmp_path / "fabric.csv")
    alter.fabric.taking.read.click()
    assert [line.length.exact_cm for line in pieces_in(session).fabric] == [inches("72")]
