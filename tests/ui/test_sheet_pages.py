"""Pages on the screen: how large, where, and how they are gone through."""

from __future__ import annotations

from typing import TYPE_CHECKING, cast

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QImage
from PySide6.QtTest import QTest

from sizekeeper.ui.sheet_drawing import Drawn
from sizekeeper.ui.sheet_pages import SheetPages

if TYPE_CHECKING:
    from PySide6.QtGui import QPalette
    from pytestqt.qtbot import QtBot

    from sizekeeper.reports.sheet import Paper
    from sizekeeper.ui.sheet_source import SheetSource


def drawn(*colours: str, paper: Paper = "a4") -> Drawn:
    images = []
    for colour in colours:
        image = QImage(210, 297, QImage.Format.Format_RGB32)
        image.fill(QColor(colour))
        images.append(image)
    return Drawn(cast("SheetSource", None), paper, 25.4, tuple(images), "Cut 40.")


@pytest.fixture
def pages(qtbot: QtBot) -> SheetPages:
    pages = SheetPages()
    qtbot.addWidget(pages)
    pages.resize(500, 400)
    pages.show_drawn(drawn("#ff0000", "#0000ff"))
    pages.show()
    return pages


def colour_at(pages: SheetPages, page: int) -> str:
    """The colour in the middle of a page on the screen."""
    image = pages.viewport().grab().toImage()
    at = pages.page_rects()[page].center() * image.devicePixelRatio()
    return image.pixelColor(at).name()


def test_a_page_is_as_wide_as_the_window_less_its_margin(pages: SheetPages) -> None:
    rect = pages.page_rects()[0]
    assert rect.left() == pages.viewport().width() - rect.right() - 1
    assert rect.width() == pages.viewport().width() - 2 * rect.left()
    assert rect.height() == pytest.approx(rect.width() * 297 / 210, abs=1)


def test_a_whole_page_fits_into_the_window(pages: SheetPages) -> None:
    pages.set_zoom("whole")
    assert pages.viewport().rect().contains(pages.page_rects()[0])


def test_the_actual_size_is_that_of_the_paper(pages: SheetPages) -> None:
    pages.set_zoom("actual")
    assert pages.page_size().width() == round(21 / 2.54 * pages.logicalDpiX())
    assert pages.horizontalScrollBar().maximum() > 0


def test_a_very_wide_window_has_margins_not_giant_letters(pages: SheetPages) -> None:
    pages.resize(3000, 400)
    assert pages.page_size().width() == round(21 / 2.54 * 144)


def test_letter_paper_has_its_own_shape(pages: SheetPages) -> None:
    pages.set_paper("us-letter")
    size = pages.page_size()
    assert size.height() / size.width() == pytest.approx(11 / 8.5, abs=0.01)


def test_every_page_is_painted_where_it_lies(pages: SheetPages) -> None:
    assert colour_at(pages, 0) == "#ff0000"
    pages.verticalScrollBar().setValue(pages.verticalScrollBar().maximum())
    assert colour_at(pages, 1) == "#0000ff"


def test_until_it_is_drawn_there_is_an_empty_sheet(pages: SheetPages, dark: QPalette) -> None:
    pages.show_drawn(None)
    assert len(pages.page_rects()) == 1
    assert colour_at(pages, 0) == "#ffffff"


@pytest.mark.parametrize(
    ("key", "share"),
    [(Qt.Key.Key_End, 1.0), (Qt.Key.Key_Home, 0.0), (Qt.Key.Key_Space, None), (Qt.Key.Key_PageDown, None)],
)
def test_pages_are_gone_through_by_keyboard(pages: SheetPages, key: Qt.Key, share: float | None) -> None:
    bar = pages.verticalScrollBar()
    bar.setValue(40)
    QTest.keyClick(pages, key)
    assert bar.value() == (40 + bar.pageStep() if share is None else round(share * bar.maximum()))


def test_other_pages_of_the_same_size_come_at_the_same_spot(pages: SheetPages) -> None:
    pages.verticalScrollBar().setValue(100)
    pages.show_drawn(drawn("#00ff00", "#0000ff"))
    assert pages.verticalScrollBar().value() == 100


def test_a_larger_window_keeps_the_share_that_was_read(pages: SheetPages) -> None:
    bar = pages.verticalScrollBar()
    bar.setValue(bar.maximum() // 2)
    pages.resize(900, 400)
    assert bar.value() / bar.maximum() == pytest.approx(0.5, abs=0.01)


def test_the_words_of_the_sheet_are_there_for_a_screen_reader(pages: SheetPages) -> None:
    assert pages.accessibleDescription() == "Cut 40."
