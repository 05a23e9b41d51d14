"""What can be done with the library as a file: a new one, another one, a copy, a backup, the demo household."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QMessageBox

from sizekeeper.errors import StoreError
from sizekeeper.store.shelf import SUFFIX
from sizekeeper.ui.file_questions import FileQuestion

if TYPE_CHECKING:
    from collections.abc import Callable

    from PySide6.QtWidgets import QWidget

    from sizekeeper.ui.session import Session


class LibraryActions(QObject):
    """The actions of the File menu. Whoever made the window opens the library that is wanted.

    Signals:
        library_wanted(object): the path of a library that should be opened instead of this one.
        demo_wanted(): the demo household should be opened.
        own_wanted(): the user's own library should be opened.
        told(str): something was done that has no place on a page to be seen.
        trouble(str): something could not be done; the sentence says why.
    """

    library_wanted = Signal(object)
    demo_wanted = Signal()
    own_wanted = Signal()
    told = Signal(str)
    trouble = Signal(str)

    def __init__(self, session: Session, window: QWidget) -> None:
        super().__init__(window)
        self._session = session
        self._window = window
        self._path = session.writer.library.path
        self.new = self._action("New &library…", self._ask_for_new)
        self.open = self._action("&Open library…", self._ask_for_existing, QKeySequence.StandardKey.Open)
        self.copy = self._action("Save a &copy…", self._ask_for_copy, QKeySequence.StandardKey.SaveAs)
        self.restore = self._action("&Restore from a backup…", self._ask_for_backup)
        self.demo = self._action("Open the &demo household", self.demo_wanted.emit)
        self.own = self._action("Open my o&wn library", self.own_wanted.emit)
        self.read_again = self._action("Read the file again", self._read_again)
        self.retry = self._action("Try again", session.writer.retry)

    def _action(self, text: str, run: Callable[[], object], keys: QKeySequence.StandardKey | None = None) -> QAction:
        action = QAction(text, self)
        action.triggered.connect(run)
        if keys is not None:
            action.setShortcuts(keys)
        return action

    def _ask_for_new(self) -> None:
        path = FileQuestion.ask_new(self._window, "New library", self._path.with_name(f"household{SUFFIX}"))
        if path is None:
            return
        if path.exists():
            self.trouble.emit(f"“{path}” exists already and was left as it is: open it, or choose another name.")
        else:
            self.library_wanted.emit(path)

    def _ask_for_existing(self) -> None:
        path = FileQuestion.ask_existing(self._window, "Open library", self._path.parent)
        if path is not None:
            self.library_wanted.emit(path)

    def _ask_for_copy(self) -> None:
        """Write a copy with everything in it, edits that could not be saved too."""
        name = f"{self._path.stem} (copy){SUFFIX}"
        path = FileQuestion.ask_new(self._window, "Save a copy", self._path.with_name(name))
        if path is None:
            return
        self._session.writer.flush(_PATIENCE_S)
        try:
            left_out = self._session.writer.save_copy(path)
        except StoreError as error:
            self.trouble.emit(str(error))
            return
        self.told.emit(f"A copy was saved as “{path}”.")
        if left_out:
            self.trouble.emit(f"The copy is without an edit: {'; '.join(left_out)}")

    def _ask_for_backup(self) -> None:
        from sizekeeper.ui.restore_dialog import RestoreDialog  # noqa: PLC0415 - seldom wanted

        dialog = RestoreDialog(self._path, self._window)
        dialog.restored.connect(self.library_wanted)
        dialog.open()

    @classmethod
    def ask_to_let_go(cls, parent: QWidget, edits: str) -> bool:
        """Whether edits that are not in the file may be let go; a test puts its own answer here."""
        buttons = QMessageBox.StandardButton.Discard | QMessageBox.StandardButton.Cancel
        answer = QMessageBox.warning(
            parent,
            "Read the file again",
            f"Not in the file, and let go if it is read again: {edits}. Cancel and save a copy to keep this.",
            buttons,
            QMessageBox.StandardButton.Cancel,
        )
        return answer == QMessageBox.StandardButton.Discard

    def _read_again(self) -> None:
        edits = ", ".join(f"“{edit.text}”" for edit in self._session.writer.refused)
        if edits and not self.ask_to_let_go(self._window, edits):
            return
        try:
            self._session.reload()
        except StoreError as error:
            self.trouble.emit(str(error))
        else:
            self.told.emit("The library was read again.")


_PATIENCE_S = 5.0
"""How long a copy waits for the edits that are still on their way to the file; coined."""
