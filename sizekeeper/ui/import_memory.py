"""The names of measures that will be remembered or were learned before, each with the way to forget it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from sizekeeper.importing.learned import corrected, name_key, rows_of
from sizekeeper.ui import theme
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.pattern_link import Link

if TYPE_CHECKING:
    from sizekeeper.core.measure import Measures
    from sizekeeper.importing.opened import Opened


class Memory(QWidget):
    """What is remembered of names. Hidden while there is nothing of the kind.

    Signals:
        keep_wanted(str, bool): the label of a corrected measure, and whether it shall be remembered on saving.
        forget_wanted(str): a label that was learned before and shall be forgotten now.
    """

    keep_wanted = Signal(str, bool)
    forget_wanted = Signal(str)

    def __init__(self, measures: Measures, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._measures = measures
        self._shown: list[tuple[str, str, str]] = []
        self._lines: list[QWidget] = []
        self._layout = QVBoxLayout(self)
        self._layout.setContentsMargins(0, 0, 0, 0)
        self._layout.setSpacing(theme.spacing(0.25))
        self.setVisible(False)

    def show_names(self, opened: Opened) -> None:
        """Show the names of a reading, each once."""
        found = [*self._corrected(opened), *self._heard(opened)]
        lines = list(dict.fromkeys(found))
        if lines != self._shown:
            self._shown = lines
            self._fill()

    def sentences(self) -> list[str]:
        """Every sentence shown."""
        return [says for says, _, _ in self._shown]

    def links(self) -> list[Link]:
        """The links behind the sentences."""
        return [link for line in self._lines for link in line.findChildren(Link)]

    def _corrected(self, opened: Opened) -> list[tuple[str, str, str]]:
        found = []
        for _, label, measure in corrected(opened.draft, opened.answers.corrections):
            name = self._name(measure)
            if name_key(label) in opened.answers.unlearned:
                found.append((f"“{label}” is read as {name} in this chart only.", "Remember it", label))
            else:
                says = f"“{label}” is read as {name}. Saving remembers it for the next chart."
                found.append((says, "Only here", label))
        return found

    def _heard(self, opened: Opened) -> list[tuple[str, str, str]]:
        found = []
        for sheet, row in rows_of(opened.draft):
            if (sheet, row.label_at) in opened.heard:
                name = self._name(opened.heard[sheet, row.label_at])
                found.append((f"“{row.label}” is read as {name}, as you said before.", "Forget it", row.label))
        return found

    def _name(self, measure: str) -> str:
        return self._measures.name(measure).lower()

    def _fill(self) -> None:
        for line in self._lines:
            self._layout.removeWidget(line)
            line.hide()
            line.deleteLater()
        self._lines = [self._line(*shown) for shown in self._shown]
        for line in self._lines:
            self._layout.addWidget(line)
        self.setVisible(bool(self._lines))

    def _line(self, says: str, does: str, label: str) -> QWidget:
        line = QWidget(self)
        row = QHBoxLayout(line)
        row.setContentsMargins(0, 0, 0, 0)
        link = Link(does, f"{does}: {says}", line)
        link.setProperty("label", label)
        link.clicked.connect(self._on_link)
        row.addWidget(Lettering(says, "muted", line), 1)
        row.addWidget(link, 0, Qt.AlignmentFlag.AlignTop)
        return line

    def _on_link(self) -> None:
        link = self.sender()
        if isinstance(link, Link):
            label, does = str(link.property("label")), link.text()
            if does == "Forget it":
                self.forget_wanted.emit(label)
            else:
                self.keep_wanted.emit(label, does == "Remember it")
