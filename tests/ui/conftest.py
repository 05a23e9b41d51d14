"""What every test of the window starts from: an application, an empty library, a selection and preferences."""

from __future__ import annotations

import datetime as dt
import os
from typing import TYPE_CHECKING

import pytest

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QEvent, QSettings, QTimer
from PySide6.QtGui import QColor, QPalette
from PySide6.QtWidgets import QApplication, QLineEdit, QVBoxLayout, QWidget
from shiboken6 import isValid

from sizekeeper.store.library import Library
from sizekeeper.store.writer import Writer
from sizekeeper.ui import theme
from sizekeeper.ui.pages import PageKind
from sizekeeper.ui.selection import Selection
from sizekeeper.ui.session import Session
from sizekeeper.ui.settings import Settings
from sizekeeper.ui.window import MainWindow
from tests.ui.household import in_front

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator
    from pathlib import Path

    from pytestqt.qtbot import QtBot

    from sizekeeper.ui.fit_page import FitPage
    from sizekeeper.ui.selection import Place

NOW = dt.datetime(2026, 11, 25, 10, 0, tzinfo=dt.UTC)


@pytest.fixture(scope="session")
def qapp_args() -> list[str]:
    """The words with which the program makes its application."""
    return ["sizekeeper", *theme.STYLE]


@pytest.fixture(autouse=True)
def _dressed(qapp: QApplication) -> Iterator[None]:
    """The program's own style, and the application's palette and font as they were when the test is over."""
    theme.dress(qapp)
    palette, font = QPalette(qapp.palette()), qapp.font()
    yield
    qapp.setPalette(palette)
    qapp.setFont(font)


@pytest.fixture(autouse=True)
def _nothing_left_behind(qapp: QApplication, monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """Fail a test that leaves a top-level widget or a running timer."""
    started: list[QTimer] = []
    start = QTimer.start

    def start_and_remember(timer: QTimer, *args: int) -> None:
        started.append(timer)
        start(timer, *args)

    monkeypatch.setattr(QTimer, "start", start_and_remember)
    known = set(map(id, QApplication.topLevelWidgets()))
    yield
    qapp.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    tops = [w for w in QApplication.topLevelWidgets() if id(w) not in known and w.parent() is None and w.isVisible()]
    assert not tops, f"widgets still on the screen: {tops}; hand every top-level widget to qtbot.addWidget"
    timers = [timer for timer in started if isValid(timer) and timer.isActive()]
    assert not timers, f"timers still running: {timers}; give each a parent that goes with the test, or stop it"


@pytest.fixture
def now() -> Callable[[], dt.datetime]:
    """The clock of the test's library: always ten in the morning, Universal Time, on 25 November 2026."""
    return lambda: NOW


@pytest.fixture
def today() -> Callable[[], dt.date]:
    """The test's calendar: 25 November 2026."""
    return NOW.date


@pytest.fixture
def page(
    qtbot: QtBot, session: Session, selection: Selection, settings: Settings, today: Callable[[], dt.date]
) -> FitPage:
    """The Fit page in front with nothing selected; the tests of another page have one of their own."""
    return in_front(qtbot, session, selection, settings, today)


@pytest.fixture
def library_file(tmp_path: Path) -> Path:
    """Where the test's library lies."""
    return tmp_path / "household.sizekeeper"


@pytest.fixture
def writer(library_file: Path, now: Callable[[], dt.datetime]) -> Iterator[Writer]:
    """The writer of an empty library, flushed and closed at the end."""
    writer = Writer(Library.open(library_file, now=now))
    yield writer
    writer.close()
    writer.library.close()


@pytest.fixture
def session(writer: Writer) -> Session:
    """An open, empty library as the window sees it."""
    return Session(writer)


@pytest.fixture
def selection() -> Selection:
    """Nothing selected yet."""
    return Selection()


@pytest.fixture
def settings(tmp_path: Path) -> Settings:
    """Preferences in a file of the test's own."""
    return Settings(QSettings(str(tmp_path / "settings.ini"), QSettings.Format.IniFormat))


@pytest.fixture
def dark_palette() -> QPalette:
    """Light text on a dark ground, in the greys that Fusion uses."""
    palette = QPalette(QColor("#323232"))
    palette.setColor(QPalette.ColorRole.Base, QColor("#242424"))
    for role in (QPalette.ColorRole.WindowText, QPalette.ColorRole.Text, QPalette.ColorRole.ButtonText):
        palette.setColor(role, QColor("white"))
    return palette


@pytest.fixture
def dark(qapp: QApplication, dark_palette: QPalette) -> QPalette:
    """The application in the dark while the test runs."""
    qapp.setPalette(dark_palette)
    return dark_palette


class PlainPage(QWidget):
    """A page with one field, in place of a real one: it keeps what it was asked to show."""

    def __init__(self, _session: Session, _selection: Selection, _settings: Settings, parent: QWidget) -> None:
        super().__init__(parent)
        self.asked: list[Place] = []
        self.copied = 0
        self.field = QLineEdit(self)
        self.field.setAccessibleName("Field")
        QVBoxLayout(self).addWidget(self.field)

    def reveal(self, place: Place) -> None:
        """Keep what was asked for."""
        self.asked.append(place)

    def copy_table(self) -> None:
        """Count how often the table was copied."""
        self.copied += 1


@pytest.fixture
def plain_pages() -> tuple[PageKind, ...]:
    """Three pages with one field each, so that tests of the window do not need the real ones."""
    return (
        PageKind("person", "Person", PlainPage),
        PageKind("pattern", "Pattern", PlainPage),
        PageKind("fit", "Fit", PlainPage),
    )


@pytest.fixture
def window(
    session: Session,
    settings: Settings,
    plain_pages: tuple[PageKind, ...],
    qtbot: QtBot,
    monkeypatch: pytest.MonkeyPatch,
) -> MainWindow:
    """The main window on the test's library, with plain pages; closing it asks nobody."""
    monkeypatch.setattr(MainWindow, "ask_to_lose", lambda *_: True)
    window = MainWindow(session, settings, plain_pages)
    qtbot.addWidget(window)
    return window
