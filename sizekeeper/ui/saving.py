"""What the strip above the page says about the file: read-only, an edit refused, changed by somebody else."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject

from sizekeeper.errors import StoreError

if TYPE_CHECKING:
    from sizekeeper.ui.library_actions import LibraryActions
    from sizekeeper.ui.notice import Notice
    from sizekeeper.ui.session import Session


class Saving(QObject):
    """Watches how the session's edits reach the file, and says so when they do not."""

    def __init__(
        self, session: Session, notice: Notice, library: LibraryActions, parent: QObject | None = None
    ) -> None:
        super().__init__(parent)
        self._session = session
        self._notice = notice
        self._actions = library
        self._refused = False
        session.failed.connect(self._failed)
        session.saved_changed.connect(self._saved_changed)
        if session.read_only:
            reason = session.writer.library.read_only_reason
            notice.say(f"This library can only be looked at here: {reason}.", library.copy)

    def _failed(self, sentence: str) -> None:
        """An edit could not be saved: it is kept, can be tried again, and can be saved as a copy."""
        self._refused = True
        actions = (self._actions.copy, self._actions.retry, self._actions.read_again)
        self._notice.say(f"{sentence} Your edits are kept here until they are saved.", *actions)

    def _saved_changed(self, saved: bool) -> None:  # noqa: FBT001 - a slot
        if not saved:
            return
        if self._refused:
            self._refused = False
            self._notice.put_away()
        if trouble := self._session.writer.library.backup_trouble:
            self._notice.say(trouble, closable=True)

    def look_outside(self) -> None:
        """Notice a file that somebody else changed: a window that only looks follows, another one offers to."""
        try:
            if not self._session.writer.library.changed_outside():
                return
            if self._session.read_only:
                self._session.reload()
                return
        except StoreError as error:
            self._notice.say(str(error), self._actions.copy)
            return
        self._notice.say(
            "The library was changed by another program. Reading it again shows that; the steps to undo are let go.",
            self._actions.read_again,
        )
