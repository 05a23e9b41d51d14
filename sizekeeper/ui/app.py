"""Starts the window: the application, its preferences, the library, and what to do when something goes wrong."""

from __future__ import annotations

import gc
import sys
from typing import TYPE_CHECKING

from PySide6.QtCore import QSettings
from PySide6.QtWidgets import QApplication

from sizekeeper.ui import theme
from sizekeeper.ui.desk import Desk
from sizekeeper.ui.focus_frame import keep_frames
from sizekeeper.ui.mishap import Log, Mishap
from sizekeeper.ui.own_library import PROGRAM
from sizekeeper.ui.settings import Settings

if TYPE_CHECKING:
    from pathlib import Path


def application() -> QApplication:
    """The application, dressed and named, so that its preferences have a place of their own."""
    running = QApplication.instance()
    app = running if isinstance(running, QApplication) else QApplication([*sys.argv[:1], *theme.STYLE])
    app.setOrganizationName(PROGRAM)
    app.setApplicationName(PROGRAM)
    app.setApplicationDisplayName("Sizekeeper")
    app.setDesktopFileName("sizekeeper")
    theme.dress(app)
    keep_frames()
    return app


def run(library: Path | None, *, demo: bool = False) -> int:
    """Show the window until it is closed.

    Args:
        library: the library file to open; None for the user's own, which is made if there is none.
        demo: open the demo household instead, which works on a file of its own.

    Returns:
        The exit code: 0 when the window was closed, 1 when no library could be opened.
    """
    app = application()
    desk = Desk(Settings(QSettings()))
    log = Log()
    mishap = Mishap(log, desk.flush)
    mishap.install()
    desk.settled.connect(_put_on_icon)
    desk.settled.connect(log.start)
    desk.settled.connect(collect_again)
    gc.disable()  # nothing of what is made before the first picture can be let go
    try:
        opened = desk.open_demo() if demo else desk.open(library) if library is not None else desk.open_own()
        app.exec()
        opened = opened or desk.opened_once
        desk.close()
    finally:
        gc.enable()
        mishap.uninstall()
        log.stop()
    return 0 if opened else 1


def collect_again() -> None:
    """After the first picture: collect what is let go from now on, and leave the library that was read alone.

    Going through hundreds of charts again and again would cost some keystrokes several milliseconds.
    """
    gc.freeze()
    gc.enable()


def _put_on_icon() -> None:
    from PySide6.QtGui import QIcon  # noqa: PLC0415 - after the start, which it would slow down

    from sizekeeper import assets  # noqa: PLC0415 - after the start, which it would slow down

    QApplication.setWindowIcon(QIcon(str(assets.resource("icons", "sizekeeper.png"))))
