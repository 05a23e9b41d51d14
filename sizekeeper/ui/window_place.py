"""Where the window stood, and what was in front, from one time to the next."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QByteArray, QRect, QSize
from PySide6.QtGui import QGuiApplication

if TYPE_CHECKING:
    from PySide6.QtCore import QSettings
    from PySide6.QtWidgets import QMainWindow, QSplitter, QWidget

FIRST_SIZE = QSize(1240, 760)
"""The window's size the first time, less where the screen is smaller."""

_SHARE = 0.94
"""How much of a small screen the window takes the first time, so that its frame fits too; coined."""

_LEFT_SHARE = 0.2
"""How much of the window's width the list at the left takes at most the first time; coined."""

_REACHABLE = 80
"""So many pixels of the window's upper edge must be on a screen for it to be reached with the mouse; coined."""


def restore_place(window: QMainWindow, splitter: QSplitter, stored: QSettings) -> None:
    """Put the window where it stood, on a screen that is there."""
    geometry, parts = stored.value("window/geometry"), stored.value("window/parts")
    if not (isinstance(geometry, QByteArray) and window.restoreGeometry(geometry)):
        window.resize(FIRST_SIZE.boundedTo(_main_screen().size() * _SHARE))
    if not (isinstance(parts, QByteArray) and splitter.restoreState(parts)):
        wanted = splitter.widget(0)
        left = min(wanted.sizeHint().width() if wanted else 0, round(window.width() * _LEFT_SHARE))
        splitter.setSizes([left, window.width() - left])
    bring_back(window)


def keep_place(window: QMainWindow, splitter: QSplitter, stored: QSettings) -> None:
    """Remember where the window stands."""
    stored.setValue("window/geometry", window.saveGeometry())
    stored.setValue("window/parts", splitter.saveState())


def bring_back(window: QWidget) -> None:
    """Move a window whose upper edge is off every screen onto the main one, made smaller if it has to be."""
    place = window.geometry()
    edge = QRect(place.left(), place.top(), place.width(), min(place.height(), _REACHABLE))
    screens = (screen.availableGeometry() for screen in QGuiApplication.screens())
    if any(_reached(screen.intersected(edge)) for screen in screens):
        return
    free = _main_screen()
    size = place.size().boundedTo(free.size())
    window.setGeometry(QRect(free.topLeft(), size).translated(free.center() - QRect(free.topLeft(), size).center()))


def _reached(seen: QRect) -> bool:
    return seen.width() >= _REACHABLE and seen.height() >= _REACHABLE // 2


def _main_screen() -> QRect:
    return QGuiApplication.primaryScreen().availableGeometry()
