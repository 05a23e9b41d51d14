"""The ruler slides to any place on the size range."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QAccessible
from PySide6.QtTest import QTest

from sizekeeper.ui.ruler import Ruler

if TYPE_CHECKING:
    from pytestqt.qtbot import QtBot


@pytest.fixture
def ruler(qtbot: QtBot) -> Ruler:
    """Four sizes with a line halfway in the middle gap, standing at the second size."""
    ruler = Ruler()
    qtbot.addWidget(ruler)
    ruler.resize(600, ruler.sizeHint().height())
    ruler.set_sizes(("36", "38", "40", "42"), (1.5,), 1.0)
    ruler.go(1)
    ruler.show()
    return ruler


@pytest.mark.parametrize(
    ("key", "place"),
    [
        (Qt.Key.Key_Right, 1.05),
        (Qt.Key.Key_Left, 0.95),
        (Qt.Key.Key_Home, 0),
        (Qt.Key.Key_End, 3),
        (Qt.Key.Key_PageUp, 2),
        (Qt.Key.Key_PageDown, 0),
    ],
)
def test_every_key_of_a_slider_moves_it(ruler: Ruler, qtbot: QtBot, key: Qt.Key, place: float) -> None:
    QTest.keyClick(ruler, key)
    assert ruler.position == pytest.approx(place)


def test_it_goes_one_step_past_the_listed_sizes_and_no_further(ruler: Ruler) -> None:
    ruler.go(9)
    assert ruler.position == 4
    ruler.go(-9)
    assert ruler.position == -1


def test_a_click_slides_to_the_mouse(ruler: Ruler, qtbot: QtBot) -> None:
    QTest.mouseClick(ruler, Qt.MouseButton.LeftButton, pos=QPoint(round(ruler.x_of(0.3)), 20))
    assert ruler.position == pytest.approx(0.3, abs=0.01)


@pytest.mark.parametrize("mark", [1.5, 2.0])
def test_the_mouse_falls_on_listed_sizes_and_drawable_lines(ruler: Ruler, mark: float) -> None:
    assert ruler.place_at(ruler.x_of(mark) + 3) == mark


def test_dragging_follows_the_mouse_until_it_is_let_go(ruler: Ruler, qtbot: QtBot) -> None:
    y = 20
    QTest.mousePress(ruler, Qt.MouseButton.LeftButton, pos=QPoint(round(ruler.x_of(0.3)), y))
    QTest.mouseMove(ruler, QPoint(round(ruler.x_of(2.3)), y))
    QTest.mouseRelease(ruler, Qt.MouseButton.LeftButton, pos=QPoint(round(ruler.x_of(2.3)), y))
    assert ruler.position == pytest.approx(2.3, abs=0.01)
    QTest.mouseMove(ruler, QPoint(round(ruler.x_of(0.3)), y))
    assert ruler.position == pytest.approx(2.3, abs=0.01)


def test_a_screen_reader_hears_the_place_in_words(ruler: Ruler) -> None:
    ruler.go(1.5)
    interface = QAccessible.queryAccessibleInterface(ruler)
    assert interface.text(QAccessible.Text.Name) == "Place on the size range"
    assert interface.text(QAccessible.Text.Description) == "between 38 and 40, halfway"


def test_places_and_pixels_are_each_others_inverse(ruler: Ruler) -> None:
    assert ruler.place_at(ruler.x_of(2.7)) == pytest.approx(2.7)


def test_what_it_shows_can_change_without_moving_it(ruler: Ruler) -> None:
    ruler.set_sizes(("36", "38", "40", "42"), (0.5, 1.5), 2.0)
    assert ruler.position == 1
