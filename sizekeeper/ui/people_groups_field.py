"""The field for a person's groups: several with commas between, each completed from those that are known."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from PySide6.QtCore import QStringListModel, Qt, Slot
from PySide6.QtWidgets import QCompleter, QWidget

from sizekeeper.core.groups import groups_in, groups_text, same
from sizekeeper.ui.person_fields import DraftField

if TYPE_CHECKING:
    from collections.abc import Callable

    from PySide6.QtGui import QKeyEvent

_LAST = re.compile(r"[^,;]*$")
_OF_LIST = (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Tab, Qt.Key.Key_Escape)


class GroupsField(DraftField):
    """Groups with commas between. The word being typed is completed: arrows choose, Enter takes, Escape goes on."""

    def __init__(self, name: str, known: Callable[[], tuple[str, ...]], parent: QWidget | None = None) -> None:
        super().__init__(name, parent)
        self._known = known
        self._names = QStringListModel(self)
        self.list = QCompleter(self._names, self)
        self.list.setWidget(self)
        self.list.setCaseSensitivity(Qt.CaseSensitivity.CaseInsensitive)
        self.list.setFilterMode(Qt.MatchFlag.MatchContains)
        self.list.activated.connect(self._on_picked)
        self.textEdited.connect(self._offer)

    def _offer(self, text: str) -> None:
        """Offer the groups that the word before the cursor may become, without those that stand there already."""
        before = text[: self.cursorPosition()]
        word = _LAST.findall(before)[0].strip(' "')
        rest = groups_in(_LAST.sub("", before, count=1) + text[self.cursorPosition() :])
        names = [group for group in self._known() if not any(same(group, one) for one in (*rest, word))]
        self._names.setStringList(names)
        self.list.setCompletionPrefix(word)
        if word and self.list.completionCount():
            self.list.complete()
        else:
            self._put_list_away()

    def _put_list_away(self) -> None:
        if (popup := self.list.popup()) is not None:
            popup.hide()

    @Slot(str)
    def _on_picked(self, group: str) -> None:
        """Put a group in place of the word before the cursor."""
        place = self.cursorPosition()
        start = _LAST.sub("", self.text()[:place], count=1).rstrip()
        taken = f"{start} {groups_text([group])}".strip()
        self.setText(f"{taken}{self.text()[place:]}")
        self.setCursorPosition(len(taken))
        self.typed.emit(self.text())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """While the list is open its keys are the list's."""
        popup = self.list.popup()
        if popup is not None and popup.isVisible() and event.key() in _OF_LIST:
            event.ignore()
            return
        super().keyPressEvent(event)
