"""What the program is, where it keeps things, and what it must not be used for."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialogButtonBox, QVBoxLayout, QWidget

from sizekeeper import __version__
from sizekeeper.store.shelf import folder_of
from sizekeeper.ui import theme
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.mishap import log_file
from sizekeeper.ui.paper_dialog import PaperDialog

if TYPE_CHECKING:
    from pathlib import Path

CAUTIONS = """\
Not for compression or medical garments, protective clothing or harnesses: follow the clinician \
or the product’s standard.

Children’s clothes: cords, small parts and the flammability of nightwear follow local rules (EN 14682 and local law).

A figure past the chart’s range is an extrapolation: make a toile first."""


class AboutDialog(PaperDialog):
    """One page of plain words."""

    def __init__(self, library: Path, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle("About Sizekeeper")
        layout = QVBoxLayout(self)
        layout.setContentsMargins(*(theme.spacing(3),) * 4)
        layout.setSpacing(theme.spacing(1.5))
        layout.addWidget(Lettering("Sizekeeper", "title", self))
        layout.addWidget(Lettering(f"Version {__version__}. Chooses the size to cut by the ease you like.", "muted"))
        layout.addWidget(Lettering("Where things are kept", "small heading", self))
        for text in (
            f"This library: {library}",
            f"Its backups: {folder_of(library)}",
            f"The program’s log: {log_file()}",
        ):
            line = Lettering(text, "plain", self)
            line.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
            layout.addWidget(line)
        layout.addWidget(Lettering("Cautions", "small heading", self))
        layout.addWidget(Lettering(CAUTIONS, "plain", self))
        layout.addWidget(Lettering("Free software under the MIT licence. It never uses the network.", "note", self))
        layout.addStretch(1)
        buttons = QDialogButtonBox(self)
        buttons.addButton("Close", QDialogButtonBox.ButtonRole.RejectRole)
        buttons.rejected.connect(self.reject)
        layout.addWidget(buttons)
        self.resize(theme.spacing(76), self.sizeHint().height())
