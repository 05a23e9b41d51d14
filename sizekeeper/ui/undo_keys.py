"""Undo and redo by keyboard while a field has the focus.

A line edit takes Ctrl+Z for its own typing even when there is nothing of its own to take back, so that an edit made by
Enter could not be undone from the field. While somebody is in the middle of typing the keys belong to the field; else
they belong to the library's edits.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QObject
from PySide6.QtGui import QKeyEvent, QKeySequence
from PySide6.QtWidgets import QLineEdit, QPlainTextEdit, QTextEdit, QWidget

if TYPE_CHECKING:
    from sizekeeper.ui.session import Session


class UndoKeys(QObject):
    """Hands undo and redo on to the menu; lies as an event filter over the application."""

    def __init__(self, session: Session, pages: QWidget) -> None:
        super().__init__(pages)
        self._session = session
        self._pages = pages

    def _library_undoes(self, field: QObject) -> bool:
        """Whether the keys, pressed in this field, mean the library's edits."""
        if not isinstance(field, QLineEdit | QPlainTextEdit | QTextEdit) or not self._pages.isAncestorOf(field):
            return False
        return not self._session.drafting

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Keep the field from taking the keys."""
        if event.type() != QEvent.Type.ShortcutOverride or not isinstance(event, QKeyEvent):
            return False
        undoes = event.matches(QKeySequence.StandardKey.Undo) or event.matches(QKeySequence.StandardKey.Redo)
        if undoes and self._library_undoes(watched):
            event.ignore()
            return True
        return False
