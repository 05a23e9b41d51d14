"""Takes the envelope's table of fabric in, from the clipboard or a file, where the fabric is reckoned with."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QApplication, QFileDialog, QHBoxLayout, QPushButton, QWidget

from sizekeeper.errors import ReadError
from sizekeeper.ui import theme
from sizekeeper.ui.lettering import say

if TYPE_CHECKING:
    from collections.abc import Callable

    from sizekeeper.core.piece import FabricLine
    from sizekeeper.core.planned import Planned
    from sizekeeper.importing.fabric_table import FabricTable
    from sizekeeper.ui.lettering import Lettering
    from sizekeeper.ui.plan_edits import MakeEdits

_KINDS = "Tables (*.csv *.tsv *.txt *.xlsx *.xls *.ods *.html);;All files (*)"


class FabricQuestion:
    """The platform's own file dialog; a test puts its own answer here."""

    @classmethod
    def ask_file(cls, parent: QWidget) -> Path | None:
        """Which file holds the table; None when the question was put away."""
        name, _ = QFileDialog.getOpenFileName(parent, "Table of fabric", "", _KINDS)
        return Path(name) if name else None


class FabricTaking(QWidget):
    """Two buttons: paste the table, or read it from a file. What was unclear is said, and nothing is taken then."""

    def __init__(self, edits: MakeEdits, problem: Lettering, parent: QWidget | None = None) -> None:
        """Nothing to add to yet."""
        super().__init__(parent)
        self._edits, self._problem = edits, problem
        self._planned: Planned | None = None
        self.paste = QPushButton("Paste the envelope’s table", self)
        self.read = QPushButton("Read it from a file…", self)
        self.read.setAccessibleName("Read the envelope’s table of fabric from a file")
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(theme.spacing())
        row.addWidget(self.paste)
        row.addWidget(self.read)
        row.addStretch(1)
        self.paste.clicked.connect(self._on_paste)
        self.read.clicked.connect(self._on_read)

    def show_planned(self, planned: Planned) -> None:
        """Take tables for another pattern from now on."""
        self._planned = planned
        lengths = "yards" if planned.found.pattern.unit == "in" else "metres"
        widths = "inches" if planned.found.pattern.unit == "in" else "centimetres"
        hint = (
            "Sizes across the top, widths of fabric down the left side. Figures without a unit are taken for "
            f"{widths} wide and {lengths} long."
        )
        for button in (self.paste, self.read):
            button.setToolTip(hint)
            button.setEnabled(not self._edits.read_only)

    def _on_paste(self) -> None:
        from sizekeeper.importing.fabric_table import read_fabric_text  # noqa: PLC0415 - seldom wanted, slow to load

        text = QApplication.clipboard().text()
        self._take("The clipboard", lambda table: read_fabric_text(text, table))

    def _on_read(self) -> None:
        from sizekeeper.importing.fabric_table import read_fabric_file  # noqa: PLC0415 - seldom wanted, slow to load

        path = FabricQuestion.ask_file(self)
        if path is not None:
            self._take(path.name, lambda table: read_fabric_file(path, table))

    def _take(self, name: str, read: Callable[[FabricTable], tuple[FabricLine, ...]]) -> None:
        from sizekeeper.importing.fabric_table import FabricTable, merged  # noqa: PLC0415 - the same

        planned = self._planned
        if planned is None:
            return
        pattern = planned.found.pattern
        try:
            lines = read(FabricTable(name, pattern.unit, planned.plans.labels, pattern.views))
        except ReadError as error:
            say(self._problem, str(error))
            return
        say(self._problem, "")
        fabric = merged(self._edits.pieces.fabric, lines)
        self._edits.apply_fabric("Take in the table of fabric", fabric)
