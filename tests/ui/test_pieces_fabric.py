from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget

from sizekeeper.core.notation import parse_length
from sizekeeper.core.piece import FabricLine
from tests.core.written import chart
from tests.ui.piecework import DRESS, FRONT, in_front, pieces_of, saved, settle
from tests.ui.walking import tab_from

if TYPE_CHECKING:
    from pytestqt.modeltest import ModelTester
    from pytestqt.qtbot import QtBot

    from sizekeeper.core.piece import FabricLine as Line
    from sizekeeper.ui.pattern_page import PatternPage
    from sizekeeper.ui.pieces_fabric import FabricPart
    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Session
    from sizekeeper.ui.settings import Settings

BODY = replace(chart("38, 40", bust="88, 92"), id="c", pattern="p")
M140 = parse_length("140", "cm")


@pytest.fixture
def page(qtbot: QtBot, session: Session, selection: Selection, settings: Settings) -> PatternPage:
    page = in_front(qtbot, session, selection, settings)
    settle(session, selection, DRESS, BODY, pieces_of(FRONT))
    return page


@pytest.fixture
def fabric(page: PatternPage) -> FabricPart:
    return page.pieces.fabric


def put(fabric: FabricPart, row: int, column: int, text: str) -> None:
    fabric.model.setData(fabric.model.index(row, column), text)


def cells(fabric: FabricPart) -> list[list[str]]:
    model = fabric.model
    return [
        [str(model.index(row, column).data() or "") for column in range(model.columnCount())]
        for row in range(model.rowCount())
    ]


def line(length: str, size: str = "", *, nap: bool = False) -> Line:
    return FabricLine(M140, parse_length(length, "m"), size, nap=nap)


def test_the_columns_are_the_sizes_of_the_chart(fabric: FabricPart) -> None:
    headings = [fabric.model.headerData(column, Qt.Orientation.Horizontal) for column in range(5)]
    assert headings == ["Fabric width, cm", "With nap", "All sizes, m", "38", "40"]


def test_a_width_and_its_lengths_are_typed_into_the_blank_row(
    fabric: FabricPart, session: Session, qtmodeltester: ModelTester
) -> None:
    qtmodeltester.check(fabric.model)  # type: ignore[no-untyped-call]
    put(fabric, 0, 0, "140")
    put(fabric, 0, 3, "2.1")
    put(fabric, 0, 4, "230 cm")
    qtmodeltester.check(fabric.model)  # type: ignore[no-untyped-call]
    assert saved(session).fabric == (line("2.1", "38"), line("230 cm", "40"))
    assert cells(fabric) == [["140", "", "", "2.1", "230 cm"], ["", "", "", "", ""]]
    assert session.undo_stack.undoText() == "Change the table of fabric"


def test_a_length_without_a_width_is_kept_and_explained(fabric: FabricPart, session: Session) -> None:
    put(fabric, 0, 2, "2")
    assert cells(fabric)[0][2] == "2"
    assert fabric.model.says(fabric.model.index(0, 2)) == (
        "Type the fabric’s width at the left first. The text is kept; the figure counts as missing.",
        True,
    )
    assert saved(session).fabric == ()


def test_a_bad_length_stays_in_its_cell_until_it_is_mended(fabric: FabricPart, session: Session) -> None:
    put(fabric, 0, 0, "140")
    put(fabric, 0, 2, "plenty")
    fabric.table.setCurrentIndex(fabric.model.index(0, 2))
    assert fabric.says.text().startswith("“plenty” is not a length.")
    put(fabric, 0, 2, "2")
    assert not fabric.says.isVisible()
    assert saved(session).fabric == (line("2"),)


def test_a_cleared_width_takes_its_row_out_and_undo_brings_it_back(fabric: FabricPart, session: Session) -> None:
    put(fabric, 0, 0, "140")
    put(fabric, 0, 2, "2")
    fabric.table.setCurrentIndex(fabric.model.index(0, 0))
    QTest.keyClick(fabric.table, Qt.Key.Key_Delete)
    assert (saved(session).fabric, fabric.model.rowCount()) == ((), 1)
    session.undo_stack.undo()
    assert cells(fabric)[0][:3] == ["140", "", "2"]


def test_the_nap_of_a_row_is_ticked(fabric: FabricPart, session: Session) -> None:
    put(fabric, 0, 0, "140")
    put(fabric, 0, 2, "2")
    index = fabric.model.index(0, 1)
    fabric.model.setData(index, Qt.CheckState.Checked, Qt.ItemDataRole.CheckStateRole)
    assert saved(session).fabric == (line("2", nap=True),)
    assert fabric.model.data(index, Qt.ItemDataRole.CheckStateRole) == Qt.CheckState.Checked


def test_a_block_is_pasted_as_one_step(fabric: FabricPart, session: Session) -> None:
    QApplication.clipboard().setText("140\t\t\t2.1\t2.3\n115\t\t\t2.6\t2.8\n")
    fabric.table.setCurrentIndex(fabric.model.index(0, 0))
    fabric.table.setFocus()
    QTest.keyClick(fabric.table, Qt.Key.Key_V, Qt.KeyboardModifier.ControlModifier)
    assert cells(fabric)[:2] == [["140", "", "", "2.1", "2.3"], ["115", "", "", "2.6", "2.8"]]
    assert (session.undo_stack.count(), session.undo_stack.undoText()) == (1, "Paste into the table of fabric")


def test_a_block_with_a_bad_figure_is_not_pasted_at_all(fabric: FabricPart, session: Session) -> None:
    QApplication.clipboard().setText("140\t\t2\tmuch")
    fabric.table.setCurrentIndex(fabric.model.index(0, 0))
    fabric.table.paste()
    assert fabric.says.text() == "Nothing was pasted: “much” is not a length."
    assert (saved(session).fabric, fabric.model.rowCount()) == ((), 1)


def test_a_length_in_the_wrong_unit_is_questioned(fabric: FabricPart) -> None:
    put(fabric, 0, 0, "140")
    put(fabric, 0, 2, "250")
    said, warned = fabric.model.says(fabric.model.index(0, 2))
    assert (said, warned) == ("250 m is a great deal of fabric; is the unit right?", True)


def test_each_view_has_a_table_of_its_own(fabric: FabricPart, session: Session) -> None:
    session.apply("Add view", DRESS, replace(DRESS, views=("B",)))
    put(fabric, 0, 0, "140")
    put(fabric, 0, 2, "2")
    fabric.view.setCurrentIndex(1)
    fabric.view.activated.emit(1)
    assert cells(fabric) == [["", "", "", "", ""]]
    put(fabric, 0, 0, "140")
    put(fabric, 0, 2, "3")
    assert [(one.view, one.length.text) for one in saved(session).fabric] == [("", "2"), ("B", "3")]


def test_a_cell_is_read_out_with_its_width_and_size(fabric: FabricPart) -> None:
    put(fabric, 0, 0, "140")
    put(fabric, 0, 3, "2.1")
    said = fabric.model.index(0, 3).data(Qt.ItemDataRole.AccessibleTextRole)
    assert said == "fabric 140 centimetres wide, 38: 2.1"


def test_a_size_that_only_the_table_knows_keeps_its_column(fabric: FabricPart, session: Session) -> None:
    before = saved(session)
    session.apply("Set", before, replace(before, fabric=(line("2", "44"),)))
    assert fabric.model.headerData(5, Qt.Orientation.Horizontal) == "44"


def test_a_table_is_typed_from_the_keyboard_without_losing_the_place(
    fabric: FabricPart, session: Session, qtmodeltester: ModelTester
) -> None:
    qtmodeltester.check(fabric.model)  # type: ignore[no-untyped-call]
    fabric.go_to_first()
    type_cell("140", Qt.Key.Key_Tab)
    fabric.table.setCurrentIndex(fabric.model.index(0, 2))
    type_cell("2", Qt.Key.Key_Tab)
    type_cell("2.1", Qt.Key.Key_Return)
    QApplication.processEvents()  # the delegate takes Enter in after the editor has seen it
    assert cells(fabric) == [["140", "", "2", "2.1", ""], ["", "", "", "", ""]]
    assert fabric.table.isAncestorOf(focused()) or focused() is fabric.table
    assert (fabric.table.currentIndex().row(), fabric.table.currentIndex().column()) == (0, 3)


def test_another_width_is_typed_over_the_old_one_in_its_place(fabric: FabricPart, session: Session) -> None:
    for row, width in enumerate(("115", "140")):
        put(fabric, row, 0, width)
        put(fabric, row, 2, "2")
    fabric.table.setCurrentIndex(fabric.model.index(0, 0))
    put(fabric, 0, 0, "150")
    assert [line[0] for line in cells(fabric)] == ["150", "140", ""]
    assert fabric.table.currentIndex().row() == 0
    session.undo_stack.undo()
    assert [line[0] for line in cells(fabric)] == ["115", "140", ""]


def focused() -> QWidget:
    widget = QApplication.focusWidget()
    assert widget is not None
    return widget


def type_cell(text: str, key: Qt.Key) -> None:
    """Type into the current cell, with the editor that Tab has opened there or the first letter opens."""
    QTest.keyClicks(focused(), text[0])
    QTest.keyClicks(focused(), text[1:])
    QTest.keyClick(focused(), key)


def test_tab_goes_through_the_cells_and_leaves_behind_the_last_one(page: PatternPage, fabric: FabricPart) -> None:
    columns = fabric.model.columnCount()
    walked = tab_from(page.pieces.openings.add, columns + 1)
    assert walked[:columns] == [fabric.table] * columns
    assert walked[columns] is not fabric.table
    assert fabric.table.selectedIndexes() == []


def test_shift_tab_leaves_before_the_first_cell(page: PatternPage, fabric: FabricPart) -> None:
    tab_from(page.pieces.openings.add, 2)
    for _ in range(2):
        QTest.keyClick(fabric.table, Qt.Key.Key_Tab, Qt.KeyboardModifier.ShiftModifier)
    assert page.pieces.openings.add.hasFocus()
