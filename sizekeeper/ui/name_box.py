"""A tick box beside a name of any length."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QCheckBox, QStyle, QStyleOptionButton

if TYPE_CHECKING:
    from PySide6.QtGui import QResizeEvent
    from PySide6.QtWidgets import QWidget


class NameBox(QCheckBox):
    """A tick box with a name; of a name longer than there is room the middle is left out, and the tool tip tells it."""

    def __init__(self, name: str = "", parent: QWidget | None = None) -> None:
        """Not ticked."""
        super().__init__(parent)
        self._name = ""
        self.show_name(name)

    @property
    def name(self) -> str:
        """The whole name."""
        return self._name

    def show_name(self, name: str) -> None:
        """Show a name, which is also what a screen reader says."""
        self._name = name
        self.setAccessibleName(name)
        self._fit()

    def _fit(self) -> None:
        """As much of the name as there is room for; a mark in it that would make a key of a letter stays as it is."""
        option = QStyleOptionButton()
        self.initStyleOption(option)
        room = self.style().subElementRect(QStyle.SubElement.SE_CheckBoxContents, option, self).width()
        shown = self.fontMetrics().elidedText(self._name, Qt.TextElideMode.ElideMiddle, room)
        if self.text() != (text := shown.replace("&", "&&")):
            self.setText(text)
        self.setToolTip("" if shown == self._name else self._name)

    # Qt's own names from here on.

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Show more of the name, or less."""
        super().resizeEvent(event)
        self._fit()
