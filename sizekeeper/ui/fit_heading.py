"""The line over the Fit page: whose fit it is, which view, and the words that open the side panel."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtWidgets import QComboBox, QHBoxLayout, QWidget

from sizekeeper.ui import theme
from sizekeeper.ui.fit_panel import PartButtons
from sizekeeper.ui.lettering import Lettering

if TYPE_CHECKING:
    from collections.abc import Mapping

    from sizekeeper.core.found import Found


class FitHeading(QWidget):
    """Person, pattern and view at the left, the panel's parts at the right.

    Signals:
        view_chosen(str): a view of the pattern was picked.
    """

    view_chosen = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        """Start silent."""
        super().__init__(parent)
        self.whose = Lettering("", "muted", self)
        self.view = QComboBox(self)
        self.view.setAccessibleName("View of the pattern")
        self.parts = PartButtons(self)
        self._row = QHBoxLayout(self)
        self._row.addWidget(self.whose, 1)
        self._row.addWidget(self.view, 0, Qt.AlignmentFlag.AlignTop)
        self._row.addWidget(self.parts, 0, Qt.AlignmentFlag.AlignTop)
        self.view.activated.connect(self._on_view)
        self._space()

    def show_found(self, found: Found, views: Mapping[str, str], view: str) -> None:
        """Say whose fit it is, and offer views of the pattern by what each is called."""
        pattern = found.pattern
        kind = f"{'knit' if pattern.knit else 'woven'} {pattern.garment}"
        whose = f"{found.person.name} · {pattern.title} · {kind}"
        if self.whose.text() != whose:
            self.whose.setText(whose)
        if {self.view.itemData(i): self.view.itemText(i) for i in range(self.view.count())} != views:
            self.view.clear()
            for each, says in views.items():
                self.view.addItem(says, each)
        self.view.setCurrentIndex(max(0, self.view.findData(view)))
        self.view.setVisible(bool(views))

    def _on_view(self) -> None:
        self.view_chosen.emit(str(self.view.currentData()))

    def _space(self) -> None:
        side = theme.spacing(4)
        self._row.setContentsMargins(side, theme.spacing(1.5), theme.spacing(2), theme.spacing(0.5))
        self._row.setSpacing(theme.spacing(2))

    # Qt's own names from here on.

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if hasattr(self, "_row") and theme.font_changed(event):
            self._space()
