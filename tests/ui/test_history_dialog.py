from __future__ import annotations

import dataclasses
from typing import TYPE_CHECKING

import pytest

from sizekeeper.core.chart import Chart
from sizekeeper.core.make import Make
from sizekeeper.core.pattern import Pattern
from sizekeeper.core.person import Person
from sizekeeper.core.piece import Piece, Pieces
from sizekeeper.store.library import Library
from sizekeeper.store.writer import Writer
from sizekeeper.ui import theme
from sizekeeper.ui.history_dialog import HistoryDialog
from sizekeeper.ui.selection import Place
from sizekeeper.ui.session import Session
from tests.ui.conftest import NOW

if TYPE_CHECKING:
    import datetime as dt
    from collections.abc import Iterator
    from pathlib import Path

    from PySide6.QtWidgets import QTableWidgetItem
    from pytestqt.qtbot import QtBot

    from sizekeeper.store.codec import Value

ADA = Person("a", "Ada", notes="long arms")
LATER = dataclasses.replace(ADA, name="Adele")


class Clock:
    """A clock that the test moves."""

    def __init__(self) -> None:
        self.now = NOW

    def __call__(self) -> dt.datetime:
        return self.now


@pytest.fixture
def clock() -> Clock:
    return Clock()


@pytest.fixture
def moving(library_file: Path, clock: Clock) -> Iterator[Session]:
    """A session whose clock the test moves."""
    writer = Writer(Library.open(library_file, now=clock))
    yield Session(writer)
    writer.close()
    writer.library.close()


def edit(session: Session, clock: Clock, text: str, before: Value | None, after: Value | None) -> None:
    """One edit, half an hour after the last one, so that it makes a version of its own."""
    session.apply(text, before, after)
    session.writer.flush()
    clock.now = clock.now.replace(hour=clock.now.hour + 1)


def opened(session: Session, value: Value, qtbot: QtBot) -> HistoryDialog:
    dialog = HistoryDialog(session, value)
    qtbot.addWidget(dialog)
    dialog.open()
    return dialog


def cells(dialog: HistoryDialog, row: int) -> list[str]:
    return [item.text() for column in range(3) if (item := item_at(dialog, row, column)) is not None]


def item_at(dialog: HistoryDialog, row: int, column: int) -> QTableWidgetItem | None:
    return dialog.table.item(row, column)


def test_versions_stand_newest_first_with_the_name_of_the_edit(moving: Session, clock: Clock, qtbot: QtBot) -> None:
    edit(moving, clock, "Add person", None, ADA)
    edit(moving, clock, "Change name", ADA, LATER)
    dialog = opened(moving, LATER, qtbot)
    assert [dialog.list.item(row).text().splitlines()[1] for row in range(2)] == ["Change name", "Add person"]


def test_what_differs_from_now_comes_first_and_bold(moving: Session, clock: Clock, qtbot: QtBot) -> None:
    edit(moving, clock, "Add person", None, ADA)
    edit(moving, clock, "Change name", ADA, LATER)
    dialog = opened(moving, LATER, qtbot)
    dialog.list.setCurrentRow(1)
    assert cells(dialog, 0) == ["Name", "Ada", "Adele"]
    bold = [item.font().bold() for row in range(3) if (item := item_at(dialog, row, 1)) is not None]
    assert bold == [True, False, False]


def test_putting_back_is_an_edit_that_can_be_undone(moving: Session, clock: Clock, qtbot: QtBot) -> None:
    edit(moving, clock, "Add person", None, ADA)
    edit(moving, clock, "Change name", ADA, LATER)
    dialog = opened(moving, LATER, qtbot)
    dialog.list.setCurrentRow(1)
    dialog.back.click()
    assert moving.committed("a") == ADA
    moving.undo_stack.undo()
    assert moving.committed("a") == LATER


def test_what_stands_now_cannot_be_put_back(moving: Session, clock: Clock, qtbot: QtBot) -> None:
    edit(moving, clock, "Add person", None, ADA)
    assert not opened(moving, ADA, qtbot).back.isEnabled()


def test_a_patterns_charts_have_histories_of_their_own(moving: Session, clock: Clock, qtbot: QtBot) -> None:
    pattern, first = Pattern("p", "Skirt"), Chart("c", "p", "body", name="typed")
    edit(moving, clock, "Add pattern", None, pattern)
    edit(moving, clock, "Add chart", None, first)
    edit(moving, clock, "Rename chart", first, dataclasses.replace(first, name="retyped"))
    dialog = opened(moving, pattern, qtbot)
    assert [dialog.entries.itemText(i) for i in range(2)] == ["Pattern details", "Body chart"]
    dialog.entries.setCurrentIndex(1)
    dialog.list.setCurrentRow(1)
    places: list[Place] = []
    moving.revisited.connect(lambda place, _text: places.append(place))
    dialog.back.click()
    moving.undo_stack.undo()
    assert places == [Place("pattern", "p")]
    moving.undo_stack.redo()
    assert moving.committed("c") == first


def test_a_pattern_tells_of_its_pieces_and_makes_and_a_person_of_her_makes(
    moving: Session, clock: Clock, qtbot: QtBot
) -> None:
    pattern = Pattern("p", "Skirt")
    other = Make("m2", "b", "q", name="Another")
    for value in (ADA, pattern, Pieces("x", "p"), Make("m", "a", "p", name="Sundays"), other):
        edit(moving, clock, "Add", None, value)
    said = {}
    for owner in (pattern, ADA):
        dialog = opened(moving, owner, qtbot)
        said[owner.id] = [dialog.entries.itemText(i) for i in range(dialog.entries.count())]
    assert said == {"p": ["Pattern details", "Pieces", "Make: Sundays, for Ada"], "a": ["Ada", "Make: Sundays"]}


def test_ticks_that_no_line_tells_of_are_still_a_difference(moving: Session, clock: Clock, qtbot: QtBot) -> None:
    make = Make("m", "a", "p", ticks=("one",))
    edit(moving, clock, "Add", None, ADA)
    edit(moving, clock, "Tick", None, make)
    edit(moving, clock, "Tick", make, dataclasses.replace(make, ticks=("other",)))
    dialog = opened(moving, ADA, qtbot)
    dialog.entries.setCurrentIndex(1)
    dialog.list.setCurrentRow(1)
    assert dialog._say.text().startswith("It differs from what stands now")
    assert dialog.back.isEnabled()


def test_lines_are_as_high_as_their_text_and_no_higher(qtbot: QtBot, moving: Session) -> None:
    moving.apply("Add Ada", None, ADA)
    dialog = HistoryDialog(moving, ADA)
    qtbot.addWidget(dialog)
    dialog.show()
    dialog.resize(2 * dialog.width(), dialog.height())
    heights = {dialog.table.rowHeight(row) for row in range(dialog.table.rowCount())}
    assert len(heights) == 1  # every line has room for its text beside its label


def test_the_long_name_of_a_piece_leaves_room_for_what_it_says(moving: Session, clock: Clock, qtbot: QtBot) -> None:
    edit(moving, clock, "Add", None, Pattern("p", "Skirt"))
    edit(moving, clock, "Add", None, Pieces("x", "p", (Piece("f", "Front " * 40),)))
    dialog = opened(moving, Pattern("p", "Skirt"), qtbot)
    dialog.show()
    dialog.entries.setCurrentIndex(1)
    assert dialog.table.columnWidth(0) <= dialog.table.width() / 3


def test_undo_of_what_was_put_back_leads_to_the_pieces_and_to_the_plans(
    moving: Session, clock: Clock, qtbot: QtBot
) -> None:
    made = Make("m", "a", "p", "B")
    for value in (ADA, Pattern("p", "Skirt"), Pieces("x", "p"), made):
        edit(moving, clock, "Add", None, value)
    edit(moving, clock, "Add a piece", Pieces("x", "p"), Pieces("x", "p", (Piece("f", "Front"),)))
    edit(moving, clock, "Rename", made, dataclasses.replace(made, name="Sundays"))
    places: list[Place] = []
    moving.revisited.connect(lambda place, _said: places.append(place))
    for entry in (1, 2):
        dialog = opened(moving, Pattern("p", "Skirt"), qtbot)
        dialog.entries.setCurrentIndex(entry)
        dialog.list.setCurrentRow(1)
        dialog.back.click()
        moving.undo_stack.undo()
    assert places == [Place("pattern", "p", "pieces||list"), Place("fit", "a", "p/plan:plans/B")]


def test_long_names_leave_the_versions_their_room(session: Session, qtbot: QtBot) -> None:
    pattern = Pattern("p", "A very long title with many words " * 6)
    session.apply_all("Set up", [(None, pattern), (None, ADA), (None, Make("m", ADA.id, "p", name=pattern.title))])
    dialog = opened(session, pattern, qtbot)
    dialog.entries.setCurrentIndex(dialog.entries.count() - 1)
    assert dialog.width() == theme.spacing(110)
    assert dialog.table.width() > dialog.list.width()
    assert dialog.entries.toolTip().endswith(", for Ada")
