"""By what a size is judged: the ease she likes, the designer's ease, or the body chart alone."""

from __future__ import annotations

from typing import TYPE_CHECKING, get_args

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QButtonGroup, QRadioButton, QVBoxLayout, QWidget

from sizekeeper.core.result import Mode
from sizekeeper.ui import theme

if TYPE_CHECKING:
    from PySide6.QtWidgets import QAbstractButton

MODE_WORDS: dict[Mode, tuple[str, str]] = {
    "my": ("The ease I like", "Finished measurements minus body, against the ease set below."),
    "designer": ("The ease it was drafted with", "The size whose chart body is nearest; its ease is shown."),
    "body": ("The body chart alone", "Body against body chart; nothing is said of ease."),
}
_NEEDS = {"my": (False, True), "designer": (True, True), "body": (True, False)}


class ModePart(QWidget):
    """Three ways to judge a size; those that lack a chart say so.

    Signals:
        chosen(str): a mode was picked.
    """

    chosen = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        """The three buttons."""
        super().__init__(parent)
        self._group = QButtonGroup(self)
        self.buttons: dict[Mode, QRadioButton] = {}
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(theme.spacing(0.5))
        for mode in get_args(Mode):
            button = QRadioButton(MODE_WORDS[mode][0], self)
            self.buttons[mode] = button
            self._group.addButton(button)
            column.addWidget(button)
        self._group.buttonClicked.connect(self._on_clicked)

    def show_mode(self, mode: Mode, charts: tuple[bool, bool]) -> None:
        """Show which mode acts; `charts` tells whether there are a body chart and finished measurements."""
        has_body, has_finished = charts
        for each, button in self.buttons.items():
            needs_body, needs_finished = _NEEDS[each]
            lacks = [
                *(["a body chart"] if needs_body and not has_body else []),
                *(["finished measurements"] if needs_finished and not has_finished else []),
            ]
            button.setEnabled(not lacks)
            tip = f"Needs {' and '.join(lacks)}." if lacks else MODE_WORDS[each][1]
            button.setToolTip(tip)
            button.setAccessibleDescription(tip)
        self.buttons[mode].setChecked(True)

    def _on_clicked(self, button: QAbstractButton) -> None:
        self.chosen.emit(next(mode for mode, each in self.buttons.items() if each is button))
