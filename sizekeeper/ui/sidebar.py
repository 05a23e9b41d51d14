"""The people and the patterns at the left, with a search box above and the hidden ones on request."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QObject, QPoint, QSize, Qt, Signal
from PySide6.QtGui import QAction, QKeyEvent
from PySide6.QtWidgets import QCheckBox, QHBoxLayout, QLineEdit, QVBoxLayout, QWidget

from sizekeeper.core.groups import known_groups
from sizekeeper.ui import theme
from sizekeeper.ui.entry_list import EntryList

if TYPE_CHECKING:
    from sizekeeper.ui.people_group_filter import GroupFilter
    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Change, Session


class Sidebar(QWidget):
    """Search box, people, patterns, and a box to tick for those that are hidden.

    Signals:
        chosen(str): the user went to an entry, by mouse or by arrow keys; it is selected already.
        opened(str): the user opened an entry: Enter, a double click, or Enter in the search box.
        menu_wanted(str, QPoint): the menu of an entry is asked for, at a place on the screen.
    """

    chosen = Signal(str)
    opened = Signal(str)
    menu_wanted = Signal(str, QPoint)

    def __init__(
        self,
        session: Session,
        selection: Selection,
        new_person: QAction,
        new_pattern: QAction,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._session = session
        self._selection = selection
        self.search = self._search_box()
        self.people = EntryList(session, "person", new_person, self)
        self.patterns = EntryList(session, "pattern", new_pattern, self)
        self.group: GroupFilter | None = None
        self.hidden_too = QCheckBox(self)
        self._arrange()
        self._connect()
        self._count_hidden()
        self._follow_groups()

    def _search_box(self) -> QLineEdit:
        search = QLineEdit(self)
        search.setPlaceholderText("Find a person or a pattern")
        search.setAccessibleName("Find a person or a pattern")
        search.textEdited.connect(self._offer_to_clear)
        search.installEventFilter(self)
        return search

    def _offer_to_clear(self) -> None:
        """Put a button to clear it into the box with the first letter: its icon would slow down the start."""
        self.search.setClearButtonEnabled(True)

    def _arrange(self) -> None:
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, theme.spacing(1.5), 0, theme.spacing(1))
        layout.setSpacing(theme.spacing(2))
        for widget in (self.search, self.hidden_too):
            row = QHBoxLayout()
            row.setContentsMargins(theme.spacing(1.5), 0, theme.spacing(1), 0)
            row.addWidget(widget)
            if widget is self.search:
                layout.addLayout(row)
                self._people_place = layout
                layout.addWidget(self.people, 2)
                layout.addWidget(self.patterns, 3)
                layout.addStretch(0)
            else:
                layout.addLayout(row)

    def _connect(self) -> None:
        self.search.textChanged.connect(self.people.look_for)
        self.search.textChanged.connect(self.patterns.look_for)
        self.hidden_too.toggled.connect(self.people.filter.show_hidden)
        self.hidden_too.toggled.connect(self.patterns.filter.show_hidden)
        self._session.changed.connect(self._follow)
        for entries in (self.people, self.patterns):
            entries.opened.connect(self.opened)
            entries.menu_wanted.connect(self.menu_wanted)
        self.people.chosen.connect(self._choose_person)
        self.patterns.chosen.connect(self._choose_pattern)
        self._selection.person_changed.connect(self.people.show_chosen)
        self._selection.pattern_changed.connect(self.patterns.show_chosen)
        self.people.show_chosen(self._selection.person)
        self.patterns.show_chosen(self._selection.pattern)

    def start_search(self) -> None:
        """Put the cursor into the search box, with what stands there selected."""
        self.search.setFocus(Qt.FocusReason.ShortcutFocusReason)
        self.search.selectAll()

    def take_focus(self) -> None:
        """Put the focus into the first list that shows something."""
        first = next((entries for entries in (self.people, self.patterns) if entries.filter.rowCount()), None)
        if first is not None:
            first.view.setFocus(Qt.FocusReason.TabFocusReason)

    def _choose_person(self, entry: str) -> None:
        self._selection.choose_person(entry)
        self.chosen.emit(entry)

    def _choose_pattern(self, entry: str) -> None:
        self._selection.choose_pattern(entry)
        self.chosen.emit(entry)

    def _follow(self, change: Change) -> None:
        if change.kinds & {"person", "pattern"}:
            self._count_hidden()
        if "person" in change.kinds:
            self._follow_groups()

    def _follow_groups(self) -> None:
        """Offer the groups when somebody belongs to one; the choice is made when it is first wanted."""
        groups = known_groups(self._session.people(hidden=True))
        if groups and self.group is None:
            self.group = self._group_filter()
        if self.group is not None:
            self.group.offer(groups)

    def _group_filter(self) -> GroupFilter:
        from sizekeeper.ui.people_group_filter import GroupFilter  # noqa: PLC0415 - only where there are groups

        group = GroupFilter(self._session, self)
        self._people_place.insertWidget(self._people_place.indexOf(self.people), group)
        group.chosen.connect(self.people.filter_group)
        self.setTabOrder(self.search, group.choice)
        self.setTabOrder(group.choice, group.more)
        return group

    def _count_hidden(self) -> None:
        """Offer the hidden entries only when there are some."""
        people, patterns = self._session.people(hidden=True), self._session.patterns(hidden=True)
        count = sum(person.hidden for person in people) + sum(pattern.hidden for pattern in patterns)
        self.hidden_too.setText(f"Show {count} hidden")
        self.hidden_too.setVisible(count > 0)
        if not count:
            self.hidden_too.setChecked(False)

    def _open_first(self) -> None:
        if self.search.text().strip() and (self.people.open_first() or self.patterns.open_first()):
            self.search.clear()

    def _key_in_search(self, key: int) -> bool:
        """Enter opens the first entry found, Down goes into the lists, Esc empties the box."""
        if key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self._open_first()
        elif key == Qt.Key.Key_Escape and self.search.text():
            self.search.clear()
        elif key == Qt.Key.Key_Down:
            self.take_focus()
        else:
            return False
        return True

    def sizeHint(self) -> QSize:
        """Wide enough for most names."""
        return QSize(theme.spacing(30), super().sizeHint().height())

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Give the search box its own keys."""
        if watched is self.search and event.type() == QEvent.Type.KeyPress and isinstance(event, QKeyEvent):
            return self._key_in_search(event.key())
        return super().eventFilter(watched, event)
