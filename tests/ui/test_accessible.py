from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from PySide6.QtWidgets import QLineEdit, QPushButton, QWidget

from sizekeeper.demo import demo_values
from sizekeeper.store.codec import new_id
from sizekeeper.ui.about_dialog import AboutDialog
from sizekeeper.ui.erase_dialog import EraseDialog
from sizekeeper.ui.history_dialog import HistoryDialog
from sizekeeper.ui.preferences_dialog import PreferencesDialog
from sizekeeper.ui.restore_dialog import RestoreDialog
from sizekeeper.ui.trouble_dialog import TroubleDialog
from sizekeeper.ui.window import MainWindow
from tests.ui.naming import nameless

if TYPE_CHECKING:
    from pytestqt.qtbot import QtBot

    from sizekeeper.ui.session import Session
    from sizekeeper.ui.settings import Settings


@pytest.fixture
def household(session: Session) -> Session:
    """The demo household, opened."""
    session.apply_all("Add all", [(None, value) for value in demo_values(new_id)])
    return session


@pytest.mark.parametrize("page", ["person", "pattern", "fit"])
def test_every_widget_that_takes_the_focus_has_a_name_on_every_page(
    household: Session, settings: Settings, qtbot: QtBot, page: str
) -> None:
    settings.stored.setValue("window/page", page)
    window = MainWindow(household, settings)
    qtbot.addWidget(window)
    window.show()
    window.pages.catch_up()
    assert window.pages.front == page
    assert nameless(window) == []


def test_the_welcome_has_a_name_for_everything(session: Session, settings: Settings, qtbot: QtBot) -> None:
    window = MainWindow(session, settings)
    qtbot.addWidget(window)
    window.show()
    assert nameless(window) == []


def test_every_dialog_has_a_name_for_everything(household: Session, settings: Settings, qtbot: QtBot) -> None:
    person, pattern, library = household.people()[0], household.patterns()[0], household.writer.library.path
    household.writer.flush()
    dialogs = (
        PreferencesDialog(settings),
        HistoryDialog(household, person),
        HistoryDialog(household, pattern),
        EraseDialog(household, person),
        RestoreDialog(library),
        TroubleDialog(),
        AboutDialog(library),
    )
    for dialog in dialogs:
        qtbot.addWidget(dialog)
    assert [found for dialog in dialogs for found in nameless(dialog)] == []


def test_a_nameless_widget_would_be_found(qtbot: QtBot) -> None:
    holder = QWidget()
    qtbot.addWidget(holder)
    QLineEdit(holder)
    QPushButton("Open", holder)
    assert nameless(holder) == ["QLineEdit  in QWidget"]
