from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from sizekeeper.ui import theme
from sizekeeper.ui.pages import PageKind, Pages

if TYPE_CHECKING:
    from PySide6.QtGui import QPalette
    from PySide6.QtWidgets import QApplication
    from pytestqt.qtbot import QtBot

    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Session
    from sizekeeper.ui.settings import Settings


@pytest.fixture
def pages(
    session: Session, selection: Selection, settings: Settings, plain_pages: tuple[PageKind, ...], qtbot: QtBot
) -> Pages:
    pages = Pages(session, selection, settings, plain_pages)
    qtbot.addWidget(pages)
    pages.resize(800, 500)
    pages.show()
    return pages


def test_a_page_is_made_when_it_is_first_shown(pages: Pages) -> None:
    pages.turn_to("pattern")
    assert [pages.is_made(name) for name in ("person", "pattern", "fit")] == [False, True, False]


def test_turning_to_a_page_says_so_once(pages: Pages, qtbot: QtBot) -> None:
    heard: list[str] = []
    pages.turned.connect(heard.append)
    pages.turn_to("fit")
    pages.turn_to("fit")
    assert heard == ["fit"]
    assert pages.front == "fit"
    assert pages.page("fit").isVisible()


def test_the_page_a_window_begins_with_is_made_after_the_first_picture(pages: Pages) -> None:
    pages.begin_with("fit")
    assert (pages.front, pages.is_made("fit")) == ("fit", False)
    pages.catch_up()
    assert (pages.front, pages.is_made("fit"), pages.is_made("person")) == ("fit", True, False)


@pytest.mark.parametrize(("name", "front"), [("pattern", "pattern"), ("", "person"), ("of another version", "person")])
def test_a_window_begins_with_the_page_it_was_left_on(pages: Pages, name: str, front: str) -> None:
    pages.begin_with(name)
    pages.catch_up()
    assert pages.front == front
    assert pages.page(front).isVisible()


def test_the_first_page_can_be_turned_to_at_the_start(pages: Pages) -> None:
    pages.turn_to("person")
    assert pages.page("person").isVisible()


def test_arrow_keys_turn_the_pages(pages: Pages) -> None:
    pages.turn_to("person")
    QTest.keyClick(pages.bar, Qt.Key.Key_Right)
    assert pages.front == "pattern"


def test_pages_not_shown_yet_are_prepared_one_by_one(pages: Pages) -> None:
    pages.turn_to("person")
    assert [pages.prepare_one() for _ in range(3)] == [True, True, False]
    assert pages.front == "person"
    assert pages.page("person").isVisible()


def test_pages_lie_on_paper_in_light_and_dark(pages: Pages, qapp: QApplication, dark_palette: QPalette) -> None:
    pages.turn_to("person")
    page = pages.page("person")
    assert page.palette().window().color().name() == theme.paper(qapp.palette()).name()
    qapp.setPalette(dark_palette)
    qapp.processEvents()
    assert page.palette().window().color().name() == theme.paper(dark_palette).name()


def test_the_name_in_front_is_underlined_in_plum(pages: Pages) -> None:
    pages.turn_to("pattern")
    image, rect = pages.bar.grab().toImage(), pages.bar.tabRect(1)
    assert image.pixelColor(rect.center().x(), rect.bottom()).name() == theme.accent(pages.palette()).name()
    other = pages.bar.tabRect(0)
    assert image.pixelColor(other.center().x(), other.bottom()).name() != theme.accent(pages.palette()).name()
