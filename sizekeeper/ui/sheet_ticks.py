"""A list of entries to tick, with a search and with all or none of them at once."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QSignalBlocker, Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QLineEdit, QListWidget, QListWidgetItem, QVBoxLayout, QWidget

from sizekeeper.ui import theme
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.pattern_link import Link

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

_ENTRY = Qt.ItemDataRole.UserRole
_WORDS = Qt.ItemDataRole.UserRole + 1


class TickList(QWidget):
    """Entries by name, each with a box.

    Signals:
        changed(): other entries are ticked now.
    """

    changed = Signal()

    def __init__(self, title: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._title = title
        self.heading = Lettering(title, "small heading", self)
        self.all = Link("All", f"Tick all {title.lower()} that are listed", self)
        self.none = Link("None", f"Tick none of the {title.lower()} that are listed", self)
        self.search = QLineEdit(self)
        self.list = QListWidget(self)
        self.search.setPlaceholderText("Search")
        self.search.setClearButtonEnabled(True)
        self.search.setAccessibleName(f"Search {title.lower()}")
        self.list.setAccessibleName(title)
        self.list.setSpacing(1)
        self.list.setWordWrap(True)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._arrange()
        self.search.textChanged.connect(self._filter)
        self.list.itemChanged.connect(self._on_ticked)
        self.all.clicked.connect(self._tick_all)
        self.none.clicked.connect(self._tick_none)

    def _arrange(self) -> None:
        head = QHBoxLayout()
        head.addWidget(self.heading, 1)
        head.addWidget(self.all)
        head.addWidget(self.none)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(theme.spacing(0.75))
        column.addLayout(head)
        column.addWidget(self.search)
        column.addWidget(self.list, 1)

    def fill(self, entries: Mapping[str, str], words: Mapping[str, str], ticked: Iterable[str]) -> None:
        """List entries: names by id, further words to find them by, and those that are ticked."""
        chosen = set(ticked)
        with QSignalBlocker(self.list):
            self.list.clear()
            for entry, name in entries.items():
                item = QListWidgetItem(name, self.list)
                item.setToolTip(name)
                item.setData(_ENTRY, entry)
                item.setData(_WORDS, f"{name} {words.get(entry, '')}".casefold())
                item.setFlags(item.flags() | Qt.ItemFlag.ItemIsUserCheckable)
                item.setCheckState(_state(entry in chosen))
            self.list.setCurrentRow(0)
        self.search.setVisible(len(entries) > _MANY)
        self._filter(self.search.text())
        self._show_count()

    @property
    def ticked(self) -> list[str]:
        """The ids of the entries that are ticked, in the order of the list; those that the search hides too."""
        return [str(item.data(_ENTRY)) for item in self._items() if item.checkState() == Qt.CheckState.Checked]

    def _items(self) -> list[QListWidgetItem]:
        return [self.list.item(row) for row in range(self.list.count())]

    def _filter(self, text: str) -> None:
        """List only what holds every word of the search."""
        words = text.casefold().split()
        for item in self._items():
            item.setHidden(not all(word in str(item.data(_WORDS)) for word in words))

    def _tick_all(self) -> None:
        self._tick(ticked=True)

    def _tick_none(self) -> None:
        self._tick(ticked=False)

    def _tick(self, *, ticked: bool) -> None:
        with QSignalBlocker(self.list):
            for item in self._items():
                if not item.isHidden():
                    item.setCheckState(_state(ticked))
        self.list.viewport().update()
        self._on_ticked()

    def _on_ticked(self, _item: QListWidgetItem | None = None) -> None:
        self._show_count()
        self.changed.emit()

    def _show_count(self) -> None:
        self.heading.setText(f"{self._title}: {len(self.ticked)} of {self.list.count()}")


_MANY = 8
"""From so many entries on there is a search; coined."""


def _state(ticked: bool) -> Qt.CheckState:  # noqa: FBT001 - the state of a box
    return Qt.CheckState.Checked if ticked else Qt.CheckState.Unchecked
