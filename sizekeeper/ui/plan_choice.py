"""Any size against advice: where she would rather cut, and her reason, which is kept."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QLineEdit, QPushButton, QVBoxLayout, QWidget

from sizekeeper.core.places import place_words
from sizekeeper.ui import theme
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.person_fields import CalmCombo

if TYPE_CHECKING:
    from sizekeeper.core.planned import Planned


class OwnChoice(QWidget):
    """A place on the size range and a reason.

    Signals:
        decided(float, str): a position was decided on, and why.
    """

    decided = Signal(float, str)

    def __init__(self, parent: QWidget | None = None) -> None:
        """Nothing to choose yet."""
        super().__init__(parent)
        self._positions: list[float] = []
        self.place = CalmCombo("Size to cut against advice", self)
        self.place.setSizeAdjustPolicy(CalmCombo.SizeAdjustPolicy.AdjustToContents)
        self.reason = QLineEdit(self)
        self.reason.setPlaceholderText("my reason, kept with the decision")
        self.reason.setAccessibleName("My reason for another size")
        self.button = QPushButton("Decide on this", self)
        row = QHBoxLayout()
        row.setSpacing(theme.spacing())
        row.addWidget(self.place)
        row.addWidget(self.reason, 1)
        row.addWidget(self.button)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(theme.spacing())
        column.addWidget(Lettering("Another size, against advice", "small heading", self))
        column.addLayout(row)
        self.button.clicked.connect(self._on_decided)
        self.reason.returnPressed.connect(self._on_decided)

    def show_planned(self, planned: Planned, *, read_only: bool) -> None:
        """Offer every listed size, the lines between them, and one step past either end."""
        labels = planned.plans.labels
        drawable = {c.position for c in planned.fit.candidates}
        found = sorted(drawable | {-1.0, -0.5, len(labels) - 0.5, float(len(labels))})
        texts = [place_words(position, labels) for position in found]
        if texts != [self.place.itemText(i) for i in range(self.place.count())]:
            self.place.clear()
            self.place.addItems(texts)
            self._positions = found
            self.place.setCurrentIndex(found.index(planned.fit.verdict.position))
        for widget in (self.place, self.reason, self.button):
            widget.setEnabled(not read_only)

    def _on_decided(self) -> None:
        position = self._positions[self.place.currentIndex()]
        self.decided.emit(position, self.reason.text().strip())
        self.reason.clear()
