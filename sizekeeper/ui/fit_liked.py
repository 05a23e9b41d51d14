"""Take the ease from a garment she likes: type its flat width or its girth."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QComboBox, QFormLayout, QLineEdit, QPushButton, QVBoxLayout, QWidget

from sizekeeper.core.notation import show
from sizekeeper.core.reading_edit import read_text
from sizekeeper.ui import theme
from sizekeeper.ui.fit_edits import ease_of_liked
from sizekeeper.ui.lettering import Lettering

if TYPE_CHECKING:
    from fractions import Fraction

    from sizekeeper.core.length import Length
    from sizekeeper.core.person import Person
    from sizekeeper.core.wording import Wording

WIDTHS = frozenset({"across_back"})
"""Regions that are widths, never doubled."""


class LikedGarment(QWidget):
    """Works out own ease from a garment: girth, or flat width times two, minus her body.

    Signals:
        taken(object, str): the ease as a `Length`, and which garment it was taken from.
    """

    taken = Signal(object, str)

    def __init__(self, parent: QWidget | None = None) -> None:
        """Empty fields."""
        super().__init__(parent)
        self._ease: Length | None = None
        self._person: Person | None = None
        self._body: Fraction | None = None
        self._words: Wording | None = None
        self.garment = QLineEdit(self)
        self.garment.setPlaceholderText("the blue linen dress")
        self.how = QComboBox(self)
        self.how.addItem("laid flat, side to side", 2)
        self.how.addItem("all the way round", 1)
        self.figure = QLineEdit(self)
        self.result = Lettering("", "muted", self)
        self.use = QPushButton("Use as the ease I like", self)
        self.use.setEnabled(False)
        self._lay_out()
        self.figure.textEdited.connect(self._work_out)
        self.figure.returnPressed.connect(self._on_use)
        self.how.currentIndexChanged.connect(self._work_out)
        self.use.clicked.connect(self._on_use)

    def _lay_out(self) -> None:
        form = QFormLayout()
        form.setContentsMargins(0, 0, 0, 0)
        for label, widget in (("Garment", self.garment), ("Measured", self.how), ("Figure", self.figure)):
            form.addRow(label, widget)
            widget.setAccessibleName(f"{label} of the garment I like" if widget is not self.garment else "Garment")
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(theme.spacing())
        column.addLayout(form)
        column.addWidget(self.result)
        column.addWidget(self.use)

    def show_region(self, person: Person, measure: str, body: Fraction | None, words: Wording) -> None:
        """Work for a region of a person; a width is never doubled."""
        self._person, self._body, self._words = person, body, words
        width = measure in WIDTHS
        self.how.setItemText(0, "straight across" if width else "laid flat, side to side")
        self.how.setItemData(0, 1 if width else 2)
        self._work_out()

    def clear(self) -> None:
        """Empty the fields: another region is looked at."""
        self.figure.clear()
        self.garment.clear()
        self._work_out()

    def _work_out(self) -> None:
        self._ease, said = None, ""
        if self._person is not None and self._body is not None and self._words is not None and self.figure.text():
            length, said = read_text(self.figure.text(), self._person.unit)
            if length is not None:
                times = int(self.how.currentData())
                self._ease = ease_of_liked(length, times, self._body, self._person.unit)
                shown = self._words.notation
                around = show(length.exact_cm * times, shown)
                said = f"{around} − {show(self._body, shown)} body = {show(self._ease.exact_cm, shown)} of ease"
        self.result.speak(said, "muted" if self._ease is not None else "warning")
        self.result.setVisible(bool(said))
        self.use.setEnabled(self._ease is not None)

    def _on_use(self) -> None:
        if self._ease is not None:
            self.taken.emit(self._ease, self.garment.text().strip())
            self.clear()
