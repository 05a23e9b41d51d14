"""The question before a person is erased for good, and what is erased."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QCheckBox, QDialogButtonBox, QPushButton, QVBoxLayout, QWidget

from sizekeeper.errors import StoreError
from sizekeeper.ui import theme
from sizekeeper.ui.entry_words import entry_name
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.paper_dialog import PaperDialog

if TYPE_CHECKING:
    from sizekeeper.core.person import Person
    from sizekeeper.ui.session import Session


class EraseDialog(PaperDialog):
    """Says what goes and what stays; nothing is erased until the box is ticked and the button pressed.

    Signals:
        erased(str): the person is gone; the sentence says so.
    """

    erased = Signal(str)

    def __init__(self, session: Session, person: Person, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._person = person
        name = entry_name(person)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle("Erase a person for good")
        self.sure = QCheckBox(f"Erase {name} and all that was ever measured or set for them", self)
        self.backups = QCheckBox("Erase from the backups of this library too", self)
        self.backups.setChecked(True)
        self.erase = QPushButton("Erase for good", self)
        self.erase.setEnabled(False)
        self.trouble = Lettering("", "warning", self)
        self.trouble.hide()
        self._arrange(name)
        self.sure.toggled.connect(self.erase.setEnabled)
        self.erase.clicked.connect(self._erase)

    def _arrange(self, name: str) -> None:
        buttons = QDialogButtonBox(self)
        keep = buttons.addButton(f"Keep {name}", QDialogButtonBox.ButtonRole.RejectRole)
        keep.setDefault(True)
        buttons.addButton(self.erase, QDialogButtonBox.ButtonRole.DestructiveRole)
        buttons.rejected.connect(self.reject)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(*(theme.spacing(3),) * 4)
        layout.setSpacing(theme.spacing(1.5))
        words = (
            "This cannot be undone. Every earlier version goes too, and the steps that could be undone so far are "
            "let go. Copies of the library that you saved elsewhere, and printed sheets, are not touched. "
            "To keep the figures and only shorten the list, hide the person instead."
        )
        layout.addWidget(Lettering(f"Erase {name} for good?", "part", self))
        layout.addWidget(Lettering(words, "plain", self))
        layout.addWidget(self.sure)
        layout.addWidget(self.backups)
        layout.addWidget(self.trouble)
        layout.addStretch(1)
        layout.addWidget(buttons)
        self.resize(theme.spacing(64), self.sizeHint().height())

    def _erase(self) -> None:
        name = entry_name(self._person)
        try:
            self._session.writer.erase(self._person.id, backups=self.backups.isChecked())
        except StoreError as error:
            self.trouble.setText(str(error))
            self.trouble.show()
            self._session.reload()
            return
        self._session.reload()
        self.erased.emit(f"{name} was erased for good.")
        self.accept()
