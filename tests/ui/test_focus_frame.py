"""The frame of a field with the focus can be seen, in the light and in the dark."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from PySide6.QtGui import QColor, QPalette
from PySide6.QtWidgets import QApplication, QLineEdit, QListView, QSpinBox, QWidget

from sizekeeper.ui import theme
from sizekeeper.ui.focus_frame import FocusFrames
from sizekeeper.ui.paper_dialog import PaperDialog

if TYPE_CHECKING:
    from collections.abc import Iterator

    from pytestqt.qtbot import QtBot

SEEN = 3.0
"""The least contrast of what shows where the focus is (WCAG 2.1, success criterion 1.4.11)."""


@pytest.fixture
def frames(qapp: QApplication) -> Iterator[FocusFrames]:
    """What keeps the frames, while the test runs."""
    frames = FocusFrames()
    yield frames
    frames.deleteLater()
    qapp.setPalette(QPalette(qapp.palette()))


def frame_of(field: QWidget, qtbot: QtBot) -> list[QColor]:
    """The colours along a short line from the left into a focused field, from the ground to within."""
    page = PaperDialog()
    qtbot.addWidget(page)
    page.resize(300, 100)
    field.setParent(page)
    field.setGeometry(50, 30, 200, 32)
    with qtbot.waitActive(page):
        page.show()
    field.setFocus()
    picture = page.grab().toImage()
    return [picture.pixelColor(field.x() + x, field.y() + 16) for x in range(-2, 4)]


@pytest.mark.parametrize("kind", [QLineEdit, QSpinBox])
@pytest.mark.parametrize("shade", ["light", "dark"])
def test_the_frame_stands_out_from_the_paper_and_from_the_field(
    qapp: QApplication, qtbot: QtBot, frames: FocusFrames, dark_palette: QPalette, kind: type[QWidget], shade: str
) -> None:
    if shade == "dark":
        qapp.setPalette(dark_palette)
        frames.settle()
    colours = frame_of(kind(), qtbot)
    paper, base = theme.paper(qapp.palette()), qapp.palette().color(QPalette.ColorRole.Base)
    assert max(min(theme.contrast(colour, paper), theme.contrast(colour, base)) for colour in colours) >= SEEN


def test_chosen_text_in_a_field_can_be_read_in_the_dark(
    qapp: QApplication, qtbot: QtBot, frames: FocusFrames, dark_palette: QPalette
) -> None:
    qapp.setPalette(dark_palette)
    frames.settle()
    field = QLineEdit()
    qtbot.addWidget(field)
    field.ensurePolished()
    palette = field.palette()
    roles = (QPalette.ColorRole.Highlight, QPalette.ColorRole.HighlightedText)
    assert theme.contrast(*(palette.color(role) for role in roles)) >= theme.READABLE


def test_lists_keep_their_colours(
    qapp: QApplication, qtbot: QtBot, frames: FocusFrames, dark_palette: QPalette
) -> None:
    qapp.setPalette(dark_palette)
    frames.settle()
    view = QListView()
    qtbot.addWidget(view)
    assert view.palette().color(QPalette.ColorRole.Highlight) == qapp.palette().color(QPalette.ColorRole.Highlight)


@pytest.mark.usefixtures("frames")
def test_a_field_that_is_there_follows_to_the_dark_and_back(
    qapp: QApplication, qtbot: QtBot, dark_palette: QPalette
) -> None:
    field, light = QLineEdit(), QPalette(qapp.palette())
    qtbot.addWidget(field)
    field.ensurePolished()
    qapp.setPalette(dark_palette)
    qtbot.waitUntil(lambda: field.palette().color(QPalette.ColorRole.Highlight) == theme.PLUM_ON_DARK)
    assert field.palette().color(QPalette.ColorRole.Base) == dark_palette.color(QPalette.ColorRole.Base)
    qapp.setPalette(light)
    qtbot.waitUntil(lambda: field.palette() == light)


def test_the_ground_of_a_page_leaves_the_frame_alone(
    qapp: QApplication, qtbot: QtBot, frames: FocusFrames, dark_palette: QPalette
) -> None:
    dark_palette.setColor(QPalette.ColorRole.Highlight, QColor("purple"))  # as the program sets it
    qapp.setPalette(dark_palette)
    frames.settle()
    page = QWidget()
    qtbot.addWidget(page)
    page.setPalette(theme.with_ground(theme.paper(qapp.palette())))
    field = QLineEdit(page)
    field.ensurePolished()
    assert field.palette().color(QPalette.ColorRole.Highlight) == theme.PLUM_ON_DARK
