from __future__ import annotations

import datetime as dt
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QKeyEvent, QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from sizekeeper.ui.person_fields import CalmCombo, DayField, DraftField

if TYPE_CHECKING:
    from pytestqt.qtbot import QtBot

TODAY = dt.date(2026, 11, 25)


@pytest.fixture
def field(qtbot: QtBot) -> DraftField:
    field = DraftField("Waist")
    qtbot.addWidget(field)
    field.put_text("70")
    with qtbot.waitActive(field):
        field.show()
    field.clearFocus()
    field.setFocus(Qt.FocusReason.TabFocusReason)
    return field


def wants_undo(field: DraftField) -> bool:
    """Whether the field takes Ctrl+Z for itself instead of leaving it to the window."""
    event = QKeyEvent(QEvent.Type.ShortcutOverride, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    event.ignore()
    QApplication.sendEvent(field, event)
    return event.isAccepted()


def test_undo_belongs_to_the_field_only_while_something_is_typed(field: DraftField) -> None:
    assert not wants_undo(field)
    QTest.keyClicks(field, "72")
    assert wants_undo(field)
    QTest.keyClick(field, Qt.Key.Key_Return)
    assert not wants_undo(field)


def test_enter_without_typing_makes_no_edit_but_goes_on(field: DraftField, qtbot: QtBot) -> None:
    with qtbot.assertNotEmitted(field.entered), qtbot.waitSignal(field.stepped) as stepped:
        QTest.keyClick(field, Qt.Key.Key_Return)
    assert stepped.args == [1]


def test_typing_replaces_the_whole_text_and_f2_goes_into_it(field: DraftField) -> None:
    QTest.keyClicks(field, "8")
    assert field.text() == "8"
    QTest.keyClick(field, Qt.Key.Key_Escape)
    QTest.keyClick(field, Qt.Key.Key_F2)
    QTest.keyClicks(field, ".5")
    assert field.text() == "70.5"


def test_a_text_shown_from_elsewhere_does_not_take_away_what_is_typed(field: DraftField) -> None:
    QTest.keyClicks(field, "8")
    field.show_text("71")
    assert field.text() == "8"
    QTest.keyClick(field, Qt.Key.Key_Escape)
    assert field.text() == "71"


def test_a_long_text_shows_its_beginning_once_it_is_left(field: DraftField) -> None:
    QTest.keyClicks(field, "A very long text that does not fit into the field at all, not even by half of it")
    assert field.cursorPosition() > 0
    field.clearFocus()
    assert field.cursorPosition() == 0


def test_the_wheel_over_a_day_or_a_choice_changes_nothing(qtbot: QtBot) -> None:
    day, choice = DayField("Day"), CalmCombo("Who")
    choice.addItems(["one", "two"])
    day.show_day(dt.date(2026, 3, 3), TODAY)
    for widget in (day, choice):
        qtbot.addWidget(widget)
        widget.show()
        spot = QPointF(5, 5)
        wheel = QWheelEvent(
            spot, spot, QPoint(), QPoint(0, -120), Qt.MouseButton.NoButton, Qt.KeyboardModifier.NoModifier,
            Qt.ScrollPhase.NoScrollPhase, False,
        )  # fmt: skip
        QApplication.sendEvent(widget, wheel)
    assert (day.date().day(), choice.currentIndex()) == (3, 0)


def test_a_day_to_come_cannot_be_entered(qtbot: QtBot) -> None:
    day = DayField("Day")
    qtbot.addWidget(day)
    day.show_day(TODAY, TODAY)
    with qtbot.assertNotEmitted(day.day_entered):
        day.setDate(day.date().addDays(1))
    with qtbot.waitSignal(day.day_entered) as entered:
        day.setDate(day.date().addDays(-1))
    assert entered.args == [dt.date(2026, 11, 24)]
