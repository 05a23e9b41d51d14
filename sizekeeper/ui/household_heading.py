"""The line over the Household page: what is compared, which view, and the words that turn the comparison round."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtWidgets import QComboBox, QHBoxLayout, QWidget

from sizekeeper.ui import theme
from sizekeeper.ui.fit_panel import PartButton
from sizekeeper.ui.lettering import Lettering

if TYPE_CHECKING:
    from collections.abc import Mapping

Way = Literal["people", "patterns"]
WAYS: dict[Way, str] = {"people": "One pattern, everybody", "patterns": "One person, every pattern"}


class HouseholdHeading(QWidget):
    """What is compared and its view at the left, the two ways to compare at the right.

    Signals:
        turned(str): the other way to compare was picked.
        view_chosen(str): a view of the pattern was picked.
    """

    turned = Signal(str)
    view_chosen = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        """Start silent."""
        super().__init__(parent)
        self.what = Lettering("", "title", self)
        self.what.setWordWrap(True)
        self.view = QComboBox(self)
        self.view.setAccessibleName("View of the pattern")
        self.view.hide()
        self.buttons: dict[Way, PartButton] = {}
        self._row = QHBoxLayout(self)
        self._row.addWidget(self.what, 1)
        self._row.addWidget(self.view, 0, Qt.AlignmentFlag.AlignVCenter)
        for way, words in WAYS.items():
            button = PartButton(words, self)
            button.clicked.connect(self._on_clicked)
            self.buttons[way] = button
            self._row.addWidget(button, 0, Qt.AlignmentFlag.AlignVCenter)
        self.view.activated.connect(self._on_view)
        self._space()

    def show_way(self, way: Way) -> None:
        """Mark the way that is in front."""
        for each, button in self.buttons.items():
            button.setChecked(each == way)

    def show_what(self, what: str, views: Mapping[str, str], view: str) -> None:
        """Say what is compared, and offer views of the pattern by what each is called."""
        if self.what.text() != what:
            self.what.setText(what)
        if {self.view.itemData(i): self.view.itemText(i) for i in range(self.view.count())} != views:
            self.view.clear()
            for each, says in views.items():
                self.view.addItem(says, each)
        self.view.setCurrentIndex(max(0, self.view.findData(view)))
        self.view.setVisible(bool(views))

    def _on_clicked(self) -> None:
        way = next(way for way, button in self.buttons.items() if button is self.sender())
        self.show_way(way)
        self.turned.emit(way)

    def _on_view(self) -> None:
        self.view_chosen.emit(str(self.view.currentData()))

    def _space(self) -> None:
        self._row.setContentsMargins(theme.spacing(4), theme.spacing(1.5), theme.spacing(2), theme.spacing(0.5))
        self._row.setSpacing(theme.spacing(1.5))

    # Qt's own names from here on.

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if hasattr(self, "_row") and theme.font_changed(event):
            self._space()
