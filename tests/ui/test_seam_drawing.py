"""The side seam as it is drawn."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sizekeeper.core.seam_line import SeamPoint
from sizekeeper.ui.seam_drawing import SeamDrawing, point_words
from tests.fits import CM

if TYPE_CHECKING:
    from pytestqt.qtbot import QtBot

BUST = SeamPoint("bust", {"38": 0.0, "40": 1.0}, 0.5, "38", "40", 0.5)
WAIST = SeamPoint("waist", {"38": 0.0, "40": 1.0}, 1.0, "40", "40", 0.0)


def test_a_level_says_how_far_outside_which_line_the_traced_one_runs() -> None:
    assert [point_words(point, CM) for point in (BUST, WAIST)] == ["5 mm outside 38", "on 40"]


def test_a_screen_reader_hears_every_level(qtbot: QtBot) -> None:
    drawing = SeamDrawing()
    qtbot.addWidget(drawing)
    drawing.show_points((BUST, WAIST), CM)
    assert drawing.accessibleDescription() == "Bust: 5 mm outside 38; Waist: on 40"


def test_the_traced_line_lies_between_the_printed_ones(qtbot: QtBot) -> None:
    drawing = SeamDrawing()
    qtbot.addWidget(drawing)
    drawing.resize(400, 300)
    drawing.show_points((BUST, WAIST), CM)
    assert drawing._x("bust", 0.0) < drawing._x("bust", 0.5) < drawing._x("bust", 1.0)
    assert not drawing.grab().isNull()
