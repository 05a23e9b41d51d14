"""What looks odd in a chart, listed below it: each sentence leads to its cell, and what would mend it is one click."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from sizekeeper.ui import theme
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.pattern_link import Link

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sizekeeper.core.chart_doubts import Doubt, Remedy

FIRST = 5
"""How many sentences stand there before the rest is asked for."""


class Sentence(Lettering):
    """A sentence that stands on one line where there is room, and goes on in a second one where there is not."""

    def sizeHint(self) -> QSize:
        """The whole sentence on one line."""
        metrics = self.fontMetrics()
        return QSize(metrics.horizontalAdvance(self.text()) + 2, metrics.height())

    def minimumSizeHint(self) -> QSize:
        """A few words."""
        return QSize(min(theme.spacing(24), self.sizeHint().width()), self.fontMetrics().height())


class DoubtLine(QWidget):
    """One sentence with its buttons.

    Signals:
        shown(object): the `Doubt` whose cell should come into view.
        mended(object, object): the `Doubt` and the `Remedy` chosen for it.
    """

    shown = Signal(object)
    mended = Signal(object, object)

    def __init__(self, doubt: Doubt, *, mendable: bool, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._doubt = doubt
        self._row = layout = QHBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(theme.spacing(1))
        layout.addWidget(Sentence(doubt.says))
        self.buttons: list[QPushButton] = []
        if doubt.row is not None:
            self._add("Show", f"Show the cell: {doubt.says}").clicked.connect(self._on_show)
        for remedy in doubt.remedies if mendable else ():
            button = self._add(remedy.text, f"{remedy.text}: {doubt.says}")
            button.setProperty("remedy", doubt.remedies.index(remedy))
            button.clicked.connect(self._on_mend)
        layout.addStretch(1)

    def _add(self, text: str, name: str) -> QPushButton:
        button = Link(text, name)
        self._row.addWidget(button)
        self.buttons.append(button)
        return button

    def _on_show(self) -> None:
        self.shown.emit(self._doubt)

    def _on_mend(self) -> None:
        button = self.sender()
        if button is not None:
            remedy: Remedy = self._doubt.remedies[button.property("remedy")]
            self.mended.emit(self._doubt, remedy)


class DoubtList(QWidget):
    """The doubts of a chart. Hidden while there are none.

    Signals:
        shown(object): as `DoubtLine.shown`.
        mended(object, object): as `DoubtLine.mended`.
    """

    shown = Signal(object)
    mended = Signal(object, object)

    def __init__(self, heading: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._doubts: list[Doubt] = []
        self._mendable = True
        self._all = False
        self._lines: list[QWidget] = []
        self._layout = QVBoxLayout(self)
        self._layout.setContentsMargins(0, 0, 0, 0)
        self._layout.setSpacing(theme.spacing(0.25))
        self._heading = Lettering(heading, "warning")
        self._layout.addWidget(self._heading)
        self._more = Link("", "Show all that looks odd")
        self._more.clicked.connect(self._on_more)
        self._layout.addWidget(self._more, 0, Qt.AlignmentFlag.AlignLeft)
        self.setVisible(False)

    def show_doubts(self, doubts: Sequence[Doubt], *, mendable: bool) -> None:
        """Show other doubts; lines are made anew only when something is different."""
        if list(doubts) != self._doubts or mendable != self._mendable:
            self._doubts, self._mendable = list(doubts), mendable
            self._fill()

    def sentences(self) -> list[str]:
        """Every sentence, shown or not."""
        return [doubt.says for doubt in self._doubts]

    def lines(self) -> list[DoubtLine]:
        """The lines shown."""
        return [line for line in self._lines if isinstance(line, DoubtLine)]

    def _fill(self) -> None:
        for line in self._lines:
            self._layout.removeWidget(line)
            line.hide()
            line.deleteLater()
        shown = self._doubts if self._all else self._doubts[:FIRST]
        self._lines = []
        for place, doubt in enumerate(shown, start=1):
            line = DoubtLine(doubt, mendable=self._mendable)
            line.shown.connect(self.shown)
            line.mended.connect(self.mended)
            self._layout.insertWidget(place, line)
            self._lines.append(line)
        rest = len(self._doubts) - len(shown)
        self._more.setText(f"{rest} more")
        self._more.setVisible(rest > 0)
        self.setVisible(bool(self._doubts))

    def _on_more(self) -> None:
        self._all = True
        self._fill()
