"""Undo and redo by keyboard while a field has the focus.

A line edit takes Ctrl+Z for its own typing even when there is nothing of its own to take back, so that an edit made by
Enter could not be undone from the field. While somebody is in the middle of typing the keys belong to the field; else
they belong to the library's edits. A field beside the pages, as the search box, keeps them while a text stands in it,
and a number that is stepped keeps them while what is typed there is not its value yet.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QObject
from PySide6.QtGui import QKeyEvent, QKeySequence
from PySide6.QtWidgets import (
    QAbstractSpinBox,
    QApplication,
    QLineEdit,
    QPlainTextEdit,
    QSpinBox,
    QTextEdit,
    QWidget,
)

if TYPE_CHECKING:
    from sizekeeper.ui.session import Session

_FIELDS = (QLineEdit, QPlainTextEdit, QTextEdit, QAbstractSpinBox)


class UndoKeys(QObject):
    """Hands undo and redo on to the menu: a filter over the field that has the focus, and over nothing else."""

    def __init__(self, session: Session, pages: QWidget, window: QWidget) -> None:
        """Look after the fields of the pages, and those of the window beside them."""
        super().__init__(pages)
        self._session = session
        self._pages, self._window = pages, window
        app = QApplication.instance()
        if isinstance(app, QApplication):
            app.focusChanged.connect(self._focus_moved)

    def _focus_moved(self, old: QWidget | None, new: QWidget | None) -> None:
        if old is not None:
            old.removeEventFilter(self)
        if isinstance(new, _FIELDS) and self._window.isAncestorOf(new):
            new.installEventFilter(self)

    def _types_apart(self, field: QObject) -> bool:
        """Whether a text stands in a field beside the pages, or one that is not yet the value of a number."""
        if isinstance(field, QSpinBox):
            return field.cleanText() != field.textFromValue(field.value())
        return isinstance(field, QLineEdit) and bool(field.text()) and not self._pages.isAncestorOf(field)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Keep the field from taking the keys while nobody is in the middle of typing."""
        if event.type() != QEvent.Type.ShortcutOverride or not isinstance(event, QKeyEvent):
            return False
        undoes = event.matches(QKeySequence.StandardKey.Undo) or event.matches(QKeySequence.StandardKey.Redo)
        if undoes and not self._session.drafting and not self._types_apart(watched):
            event.ignore()
            return True
        return False
