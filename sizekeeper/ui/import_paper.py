"""The ground of the import windows: the same paper as the pages of the main window."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtGui import QPalette
from PySide6.QtWidgets import QApplication

from sizekeeper.ui import theme

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget


def lay_paper(window: QWidget) -> None:
    """Give a window the ground of a page; to be called again when light and dark change."""
    palette = QPalette(QApplication.palette())
    palette.setColor(QPalette.ColorRole.Window, theme.paper(palette))
    if palette != window.palette():
        window.setPalette(palette)
