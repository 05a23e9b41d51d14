"""A calm strip above the page that says something about the library: read-only, or an edit that could not be saved."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QWidget

from sizekeeper.ui import theme
from sizekeeper.ui.lettering import Lettering

if TYPE_CHECKING:
    from PySide6.QtGui import QAction


class Notice(QWidget):
    """A sentence with the actions that help; hidden while there is nothing to say."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._words = Lettering("", "plain", self)
        self._words.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self._words.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._buttons: list[QPushButton] = []
        self._layout = QHBoxLayout(self)
        self._space()
        self._layout.addWidget(self._words, 1)
        self.setVisible(False)

    @property
    def text(self) -> str:
        """What is said now, "" for nothing."""
        return self._words.text() if not self.isHidden() else ""

    def say(self, sentence: str, *actions: QAction, closable: bool = False) -> None:
        """Say a sentence and offer actions beside it; it stays until something else is said or it is put away.

        Args:
            sentence: what is said.
            actions: what helps, each as a button.
            closable: whether the reader may put it away.
        """
        self._clear()
        self._words.setText(sentence)
        self.setAccessibleName(sentence)
        for action in actions:
            self._add_button(action.text().replace("&", "")).clicked.connect(action.trigger)
        if closable:
            self._add_button("Close").clicked.connect(self.put_away)
        self.setVisible(True)

    def put_away(self) -> None:
        """Say nothing any more."""
        self._clear()
        self.setVisible(False)

    def _add_button(self, text: str) -> QPushButton:
        button = QPushButton(text, self)
        self._layout.addWidget(button)
        self._buttons.append(button)
        return button

    def _clear(self) -> None:
        for button in self._buttons:
            self._layout.removeWidget(button)
            button.hide()
            button.deleteLater()
        self._buttons.clear()

    def _space(self) -> None:
        self._layout.setContentsMargins(theme.spacing(2), theme.spacing(1), theme.spacing(2), theme.spacing(1))
        self._layout.setSpacing(theme.spacing(1))

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if theme.font_changed(event):
            self._space()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """A pale ground with a bar in the accent at its side."""
        painter = QPainter(self)
        painter.fillRect(self.rect(), theme.accent_wash(self.palette()))
        painter.fillRect(0, 0, theme.spacing(0.4), self.height(), theme.accent(self.palette()))
