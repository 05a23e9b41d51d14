"""Says what a paste beyond the chart's edge would add, before it does."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QAbstractButton, QMessageBox, QWidget

if TYPE_CHECKING:
    from sizekeeper.core.chart_paste import Paste


class PasteQuestion(QMessageBox):
    """Add what is lacking, paste only what fits, or leave it.

    Signals:
        add_chosen(): add the sizes and measures.
        fit_chosen(): paste only what fits.
    """

    add_chosen = Signal()
    fit_chosen = Signal()

    def __init__(self, paste: Paste, *, fits: bool, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setIcon(QMessageBox.Icon.NoIcon)
        self.setWindowTitle("Paste")
        self.setText("What you paste is larger than the chart from here on.")
        self.setInformativeText(f"It would add {added(paste)}.")
        self.add = self.addButton("Add and paste", QMessageBox.ButtonRole.AcceptRole)
        self.fit = self.addButton("Paste only what fits", QMessageBox.ButtonRole.ActionRole) if fits else None
        self.setEscapeButton(self.addButton("Cancel", QMessageBox.ButtonRole.RejectRole))
        self.setDefaultButton(self.add)
        self.buttonClicked.connect(self._on_clicked)

    @classmethod
    def ask(cls, paste: Paste, *, fits: bool, parent: QWidget) -> PasteQuestion:
        """Open the question over a window; its signals answer."""
        question = cls(paste, fits=fits, parent=parent)
        question.open()
        return question

    def _on_clicked(self, button: QAbstractButton) -> None:
        if button is self.add:
            self.add_chosen.emit()
        elif self.fit is not None and button is self.fit:
            self.fit_chosen.emit()


def added(paste: Paste) -> str:
    """The sizes and measures a paste adds, in words: `the sizes 42 and 44, and the measure Cuff`."""
    parts = []
    for one, many, names in (("size", "sizes", paste.sizes), ("measure", "measures", paste.measures)):
        if names:
            parts.append(f"the {one if len(names) == 1 else many} {_listed(names)}")
    return ", and ".join(parts)


def _listed(names: tuple[str, ...]) -> str:
    if len(names) == 1:
        return names[0]
    if len(names) > 8:  # noqa: PLR2004 - more names than that are not read
        return f"{', '.join(names[:6])} and {len(names) - 6} more"
    return f"{', '.join(names[:-1])} and {names[-1]}"
