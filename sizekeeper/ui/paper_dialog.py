"""The ground of every window beside the main one."""

from __future__ import annotations

from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QDialog

from sizekeeper.ui import theme


class PaperDialog(QDialog):
    """A window on the same paper as the pages of the main window, on which fields and empty boxes stand out."""

    # Qt's own names from here on.

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Lay the paper."""
        QPainter(self).fillRect(self.rect(), theme.paper(self.palette()))
