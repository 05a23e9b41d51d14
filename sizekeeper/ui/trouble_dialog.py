"""What is shown instead of a window when no library can be opened: why, and the ways on."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QDialogButtonBox, QPushButton, QVBoxLayout, QWidget

from sizekeeper.store.shelf import backups
from sizekeeper.ui import theme
from sizekeeper.ui.file_questions import FileQuestion
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.paper_dialog import PaperDialog
from sizekeeper.ui.restore_dialog import RestoreDialog

if TYPE_CHECKING:
    from pathlib import Path


class TroubleDialog(PaperDialog):
    """Nothing is changed by it: the file that could not be opened stays as it is.

    Signals:
        library_wanted(object): the path of another library that should be opened.
        demo_wanted(): the demo household should be opened.
    """

    library_wanted = Signal(object)
    demo_wanted = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("Sizekeeper")
        self._path: Path | None = None
        self.words = Lettering("", "plain", self)
        self.restore = QPushButton("Restore from a backup…", self)
        self.other = QPushButton("Open another library…", self)
        self.demo = QPushButton("Open the demo household", self)
        self.restore.clicked.connect(self._ask_for_backup)
        self.other.clicked.connect(self._ask_for_library)
        self.demo.clicked.connect(self.demo_wanted)
        quit_box = QDialogButtonBox(self)
        quit_box.addButton("Quit", QDialogButtonBox.ButtonRole.RejectRole)
        quit_box.rejected.connect(self.reject)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(*(theme.spacing(3),) * 4)
        layout.setSpacing(theme.spacing(1.5))
        layout.addWidget(Lettering("The library could not be opened", "part", self))
        layout.addWidget(self.words)
        for button in (self.restore, self.other, self.demo):
            layout.addWidget(button)
        layout.addStretch(1)
        layout.addWidget(quit_box)
        self.resize(theme.spacing(64), self.sizeHint().height())

    def explain(self, sentence: str, path: Path) -> None:
        """Say why a library could not be opened."""
        self._path = path
        self.words.setText(sentence)
        self.restore.setVisible(bool(backups(path)))

    def _ask_for_backup(self) -> None:
        if self._path is not None:
            dialog = RestoreDialog(self._path, self)
            dialog.restored.connect(self.library_wanted)
            dialog.open()

    def _ask_for_library(self) -> None:
        if self._path is not None:
            path = FileQuestion.ask_existing(self, "Open library", self._path.parent)
            if path is not None:
                self.library_wanted.emit(path)
