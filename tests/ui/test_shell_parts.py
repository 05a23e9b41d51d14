from __future__ import annotations

import threading
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtGui import QAction, QCursor, QFont, QImage, QPainter
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QListView, QPushButton, QStyleOptionViewItem

from sizekeeper.core.person import Person
from sizekeeper.ui import theme
from sizekeeper.ui.entry_delegate import EntryDelegate
from sizekeeper.ui.entry_model import EntryFilter, EntryModel
from sizekeeper.ui.notice import Notice
from sizekeeper.ui.status import StatusLine
from sizekeeper.ui.thin_splitter import ThinSplitter
from sizekeeper.ui.warm_up import WarmUp
from sizekeeper.ui.welcome import Welcome

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget
    from pytestqt.qtbot import QtBot

    from sizekeeper.ui.session import Session


def buttons(widget: QWidget) -> dict[str, QPushButton]:
    QApplication.processEvents()  # a button that was just added is shown by the layout
    return {button.text(): button for button in widget.findChildren(QPushButton) if not button.isHidden()}


@pytest.fixture
def notice(qtbot: QtBot) -> Notice:
    notice = Notice()
    qtbot.addWidget(notice)
    return notice


def test_a_notice_offers_what_helps(notice: Notice, qtbot: QtBot) -> None:
    action = QAction("Save a &copy…", notice)
    notice.say("It is not saved.", action)
    assert notice.text == "It is not saved."
    with qtbot.waitSignal(action.triggered):
        buttons(notice)["Save a copy…"].click()


def test_a_new_notice_takes_the_buttons_of_the_old_one_away(notice: Notice) -> None:
    notice.say("One", QAction("Try again", notice))
    notice.say("Two", closable=True)
    assert list(buttons(notice)) == ["Close"]
    buttons(notice)["Close"].click()
    assert notice.text == ""


@pytest.fixture
def steps() -> list[QAction]:
    return [QAction(name) for name in ("New person", "New pattern", "Open the demo household")]


@pytest.fixture
def welcome(steps: list[QAction], qtbot: QtBot) -> Welcome:
    person, pattern, demo = steps
    welcome = Welcome(person, pattern, demo)
    qtbot.addWidget(welcome)
    welcome.resize(1000, 600)
    return welcome


def test_the_welcome_leads_to_the_first_steps(welcome: Welcome, steps: list[QAction], qtbot: QtBot) -> None:
    for step in steps:
        with qtbot.waitSignal(step.triggered):
            buttons(welcome)[step.text()].click()


def test_the_welcome_can_be_walked_through_by_keyboard(welcome: Welcome, qtbot: QtBot) -> None:
    with qtbot.waitActive(welcome):
        welcome.show()
        welcome.activateWindow()
    welcome.take_focus()
    QTest.keyClick(buttons(welcome)["New person"], Qt.Key.Key_Tab)
    assert buttons(welcome)["New pattern"].hasFocus()


def test_no_line_of_the_welcome_is_cut_off_in_larger_text(welcome: Welcome, qapp: QApplication, qtbot: QtBot) -> None:
    font = QFont(qapp.font())
    font.setPointSizeF(font.pointSizeF() * 1.5)
    qapp.setFont(font)
    with qtbot.waitExposed(welcome):
        welcome.show()
    qapp.processEvents()
    short = [label.text() for label in welcome.letterings() if label.height() < label.heightForWidth(label.width())]
    assert short == []


def test_saving_is_mentioned_only_when_it_takes_a_while(session: Session, qtbot: QtBot) -> None:
    line = StatusLine(session)
    qtbot.addWidget(line)
    session.saved_changed.emit(False)
    assert line.mark.text() == "Saved"
    session.apply("Add person", None, Person("a", "Ada"))
    line.slow.timeout.emit()
    assert line.mark.text() == "Saving…"
    with qtbot.waitSignal(session.saved_changed, check_params_cb=bool):
        pass
    assert line.mark.text() == "Saved"


def warm_ups() -> list[str]:
    return [thread.name for thread in threading.enumerate() if thread.name == "warm-up"]


def test_a_finished_warm_up_has_ended_its_thread(session: Session, monkeypatch: pytest.MonkeyPatch) -> None:
    looked: list[str] = []
    monkeypatch.setattr(type(session.writer.library), "quick_check", lambda library: looked.append(library.path.name))
    warm_up = WarmUp(session.writer.library)
    warm_up.start()
    warm_up.finish()
    assert looked == ["household.sizekeeper"]
    assert warm_ups() == []


def test_a_warm_up_that_was_never_begun_can_be_finished(session: Session) -> None:
    WarmUp(session.writer.library).finish()
    assert warm_ups() == []


def test_neither_side_of_the_splitter_can_be_pushed_away(qtbot: QtBot) -> None:
    splitter = ThinSplitter()
    qtbot.addWidget(splitter)
    assert not splitter.childrenCollapsible()


@pytest.fixture
def ada(session: Session, qtbot: QtBot) -> QListView:
    """A list with one entry in it."""
    session.apply("Add person", None, Person("a", "Ada"))
    view = QListView()
    qtbot.addWidget(view)
    view.setModel(EntryFilter(EntryModel(session, "person", view), view))
    view.setItemDelegate(EntryDelegate(view))
    return view


def painted(view: QListView) -> QImage:
    """The first entry of a list as the delegate paints it."""
    delegate, model = view.itemDelegate(), view.model()
    option = QStyleOptionViewItem()
    option.rect = QRect(QPoint(0, 0), delegate.sizeHint(option, model.index(0, 0)))
    image = QImage(option.rect.size(), QImage.Format.Format_RGB32)
    image.fill(option.palette.window().color())
    painter = QPainter(image)
    delegate.paint(painter, option, model.index(0, 0))
    painter.end()
    return image


def test_the_chosen_entry_has_a_plum_bar_at_its_side(ada: QListView, qapp: QApplication) -> None:
    bar = theme.accent(qapp.palette()).name()
    assert painted(ada).pixelColor(0, 10).name() != bar
    ada.setCurrentIndex(ada.model().index(0, 0))
    assert painted(ada).pixelColor(0, 10).name() == bar


def test_the_focus_can_be_seen_on_the_entry(ada: QListView, qtbot: QtBot) -> None:
    ada.setCurrentIndex(ada.model().index(0, 0))
    chosen = painted(ada)
    with qtbot.waitActive(ada):
        ada.show()
        ada.activateWindow()
    ada.setFocus()
    assert painted(ada) != chosen


def test_an_entry_says_that_the_mouse_is_on_it(ada: QListView, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch) -> None:
    with qtbot.waitExposed(ada):
        ada.show()
    monkeypatch.setattr(QListView, "underMouse", lambda _view: True)
    monkeypatch.setattr(QCursor, "pos", lambda: ada.mapToGlobal(QPoint(5, 5000)))
    plain = painted(ada)
    monkeypatch.setattr(QCursor, "pos", lambda: ada.mapToGlobal(QPoint(5, 5)))
    assert painted(ada) != plain
