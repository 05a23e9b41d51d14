"""What a page shows while nobody and nothing is chosen: a question, a sentence, and a button that begins."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QPushButton, QVBoxLayout, QWidget

from sizekeeper.ui import theme
from sizekeeper.ui.lettering import Lettering


class EmptyPage(QWidget):
    """The question in the middle of an empty page; `button` is what to press first."""

    def __init__(self, question: str, sentence: str, button: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.button = QPushButton(button, self)
        self.button.setAutoDefault(True)  # Enter presses it, as it does everywhere on a page
        column = QVBoxLayout(self)
        column.setSpacing(theme.spacing(2))
        column.addStretch(2)
        for label in (Lettering(question, "title", self), Lettering(sentence, "muted", self)):
            label.setAlignment(Qt.AlignmentFlag.AlignHCenter)
            column.addWidget(label)
        column.addWidget(self.button, 0, Qt.AlignmentFlag.AlignHCenter)
        column.addStretch(3)
