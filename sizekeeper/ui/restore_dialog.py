"""The backups of a library, one of which is restored into a new file."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QDialogButtonBox, QListWidget, QPushButton, QVBoxLayout, QWidget

from sizekeeper.errors import StoreError
from sizekeeper.store.backup import restore
from sizekeeper.store.shelf import SUFFIX, Backup, backups
from sizekeeper.ui import theme
from sizekeeper.ui.file_questions import FileQuestion
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.paper_dialog import PaperDialog
from sizekeeper.ui.version_words import moment_words

if TYPE_CHECKING:
    from pathlib import Path

_KB = 1024


def backup_words(backup: Backup) -> str:
    """When a backup was made, how large it is, and why it was made if not for the day."""
    why = ", before the file was brought up to date" if backup.before_format else ""
    return f"{moment_words(backup.when)}{why}  ({max(1, round(backup.size / _KB))} kB)"


class RestoreDialog(PaperDialog):
    """Pick a backup, then a place for the new file; the library that is open stays as it is.

    Signals:
        restored(object): the path of the new library.
    """

    restored = Signal(object)

    def __init__(self, library: Path, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._library = library
        self._backups = backups(library)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle("Restore from a backup")
        self.list = QListWidget(self)
        self.list.setAccessibleName("Backups, the newest first")
        self.list.addItems([backup_words(backup) for backup in self._backups])
        self.list.setCurrentRow(0)
        self.go = QPushButton("Restore into a new file…", self)
        self.go.setEnabled(bool(self._backups))
        self.go.setDefault(True)
        self.trouble = Lettering("", "warning", self)
        self.trouble.hide()
        self._arrange()
        self.go.clicked.connect(self._restore)
        self.list.itemActivated.connect(self._restore)

    def _arrange(self) -> None:
        buttons = QDialogButtonBox(self)
        buttons.addButton("Cancel", QDialogButtonBox.ButtonRole.RejectRole)
        buttons.addButton(self.go, QDialogButtonBox.ButtonRole.ActionRole)
        buttons.rejected.connect(self.reject)
        words = (
            "The backup is written into a new file, which then opens. The library that is open now stays as it is."
            if self._backups
            else "There are no backups of this library yet: one is made before the first change of each day."
        )
        layout = QVBoxLayout(self)
        layout.setContentsMargins(*(theme.spacing(3),) * 4)
        layout.setSpacing(theme.spacing(1.5))
        layout.addWidget(Lettering(f"Backups of {self._library.stem}", "part", self))
        layout.addWidget(Lettering(words, "plain", self))
        layout.addWidget(self.list, 1)
        layout.addWidget(self.trouble)
        layout.addWidget(buttons)
        self.resize(theme.spacing(64), theme.spacing(48))

    def _restore(self) -> None:
        backup = self._backups[self.list.currentRow()]
        name = f"{self._library.stem} of {backup.when:%Y-%m-%d}{SUFFIX}"
        into = FileQuestion.ask_new(self, "Restore into a new file", self._library.with_name(name))
        if into is None:
            return
        try:
            restore(backup, into)
        except StoreError as error:
            self.trouble.setText(str(error))
            self.trouble.show()
            return
        self.accept()
        self.restored.emit(into)
