"""Undo and redo by keyboard while a field has the focus.

A line edit takes Ctrl+Z for its own typing even when there is nothing of its own to take back, so that an edit made by
Enter could not be undone from the field. While somebody is in the middle of typing the keys belong to the field; else
they belong to the library's edits. A field beside the pages, as the search box, keeps them while a text stands in it,
and a number that is stepped keeps them while what is typed there is not its value yet.
"""

from __future__ import annotations

import sys
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

_ALSO_REDO = () if sys.platform == "darwin" else ("Ctrl+Y", "Ctrl+Shift+Z")
"""Qt knows one of them as the platform's; hands know the other. On a Mac there is one only."""
_FIELDS = (QLineEdit, QPlainTextEdit, QTextEdit, QAbstractSpinBox)


def redo_keys() -> list[QKeySequence]:
    """The keys that redo: the platform's own first, then those that hands know from elsewhere."""
    standard = QKeySequence.keyBindings(QKeySequence.StandardKey.Redo)
    return [*standard, *(key for key in map(QKeySequence, _ALSO_REDO) if key not in standard)]


def is_undo_or_redo(event: QKeyEvent) -> bool:
    """Whether keys ask for undo or redo."""
    return event.matches(QKeySequence.StandardKey.Undo) or _redoes(event)


def _redoes(event: QKeyEvent) -> bool:
    return event.matches(QKeySequence.StandardKey.Redo) or QKeySequence(event.keyCombination()) in redo_keys()


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

    def _is_typing(self, field: QObject) -> bool:
        return bool(self._session.drafting) or self._types_apart(field)

    def _types_apart(self, field: QObject) -> bool:
        """Whether a text stands in a field beside the pages, or one that is not yet the value of a number."""
        if isinstance(field, QSpinBox):
            return field.cleanText() != field.textFromValue(field.value())
        return isinstance(field, QLineEdit) and bool(field.text()) and not self._pages.isAncestorOf(field)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Keep the field from taking the keys while nobody is in the middle of typing; else let it take all of them."""
        if not isinstance(event, QKeyEvent) or not is_undo_or_redo(event):
            return False
        overrides, typing = event.type() == QEvent.Type.ShortcutOverride, self._is_typing(watched)
        if overrides and not typing:
            event.ignore()
            return True
        if not typing or not _redoes(event) or event.matches(QKeySequence.StandardKey.Redo):
            return False
        if overrides:
            event.accept()
        elif event.type() == QEvent.Type.KeyPress and isinstance(watched, QLineEdit | QPlainTextEdit | QTextEdit):
            watched.redo()
        return True
