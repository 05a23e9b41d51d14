"""A figure's field: typing drafts, Enter means it, Esc restores."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QWidget

from sizekeeper.ui.fit_field import FigureField

if TYPE_CHECKING:
    from pytestqt.qtbot import QtBot


@pytest.fixture
def field(qtbot: QtBot) -> FigureField:
    """A field with a figure in it, in front."""
    field = FigureField("Waist")
    field.set_figure("28")
    qtbot.addWidget(field)
    with qtbot.waitActive(field):
        field.show()
    field.setFocus(Qt.FocusReason.TabFocusReason)
    field.selectAll()
    return field


def test_each_keystroke_is_told(field: FigureField, qtbot: QtBot) -> None:
    told: list[str] = []
    field.typed.connect(told.append)
    QTest.keyClicks(field, "30")
    assert told == ["3", "30"]


def test_enter_means_the_text_and_asks_for_the_next_field(field: FigureField, qtbot: QtBot) -> None:
    told: list[object] = []
    field.entered.connect(told.append)
    field.step_wanted.connect(told.append)
    QTest.keyClicks(field, "30")
    QTest.keyClick(field, Qt.Key.Key_Return)
    assert told == ["30", 1]


def test_enter_without_typing_only_goes_on(field: FigureField, qtbot: QtBot) -> None:
    with qtbot.assertNotEmitted(field.entered):
        QTest.keyClick(field, Qt.Key.Key_Return)


def test_escape_restores_what_stood_there_whatever_was_shown_meanwhile(field: FigureField, qtbot: QtBot) -> None:
    QTest.keyClicks(field, "30")
    field.set_figure("30")
    with qtbot.waitSignal(field.restored):
        QTest.keyClick(field, Qt.Key.Key_Escape)
    assert field.text() == "28"


def test_after_escape_typing_replaces_the_figure(field: FigureField, qtbot: QtBot) -> None:
    QTest.keyClicks(field, "30")
    QTest.keyClick(field, Qt.Key.Key_Escape)
    QTest.keyClicks(field, "29")
    assert field.text() == "29"


def test_escape_without_typing_is_left_to_others(field: FigureField, qtbot: QtBot) -> None:
    with qtbot.assertNotEmitted(field.restored):
        QTest.keyClick(field, Qt.Key.Key_Escape)


def test_leaving_the_field_means_the_text(qtbot: QtBot) -> None:
    box = QWidget()
    first, second = FigureField("Bust", box), FigureField("Waist", box)
    qtbot.addWidget(box)
    with qtbot.waitActive(box):
        box.show()
    first.setFocus()
    QTest.keyClicks(first, "38")
    with qtbot.waitSignal(first.entered):
        second.setFocus()


def test_a_value_set_from_outside_does_not_disturb_typing(field: FigureField, qtbot: QtBot) -> None:
    QTest.keyClicks(field, "30 1")
    field.set_figure("35")
    assert field.text() == "30 1"


@pytest.mark.parametrize(("key", "way"), [(Qt.Key.Key_Up, -1), (Qt.Key.Key_Down, 1)])
def test_the_arrows_ask_for_the_fields_above_and_below(field: FigureField, qtbot: QtBot, key: Qt.Key, way: int) -> None:
    with qtbot.waitSignal(field.step_wanted) as told:
        QTest.keyClick(field, key)
    assert told.args == [way]


def test_f2_puts_the_cursor_behind_the_figure(field: FigureField, qtbot: QtBot) -> None:
    QTest.keyClick(field, Qt.Key.Key_F2)
    QTest.keyClicks(field, " 1/2")
    assert field.text() == "28 1/2"


def test_a_refused_text_stays_and_says_why_to_a_screen_reader(field: FigureField, qtbot: QtBot) -> None:
    QTest.keyClicks(field, "x")
    field.refuse("“x” is not a length")
    field.set_figure("28")
    assert (field.text(), field.accessibleDescription()) == ("x", "“x” is not a length")


def test_a_field_for_something_else_forgets_what_was_typed(field: FigureField, qtbot: QtBot) -> None:
    QTest.keyClicks(field, "x")
    field.refuse("no")
    field.forget()
    assert (field.text(), field.problem, field.typing) == ("28", "", False)
