"""One section of the sidebar: a heading with its New button, and the people or the patterns below it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QModelIndex, QPoint, QSize, Qt, Signal
from PySide6.QtGui import QAction, QPalette
from PySide6.QtWidgets import (
    QAbstractItemView,
    QFrame,
    QHBoxLayout,
    QListView,
    QSizePolicy,
    QStyleOptionViewItem,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from sizekeeper.ui import theme
from sizekeeper.ui.entry_delegate import EntryDelegate
from sizekeeper.ui.entry_model import ID_ROLE, EntryFilter, EntryKind, EntryModel
from sizekeeper.ui.lettering import Lettering

if TYPE_CHECKING:
    from sizekeeper.ui.session import Session

_WORDS: dict[EntryKind, tuple[str, str, str]] = {
    "person": ("People", "Nobody here yet.", "Nobody found."),
    "pattern": ("Patterns", "No patterns yet.", "No pattern found."),
}


class EntryView(QListView):
    """The list itself: as high as its rows where there is room, scrolling where there is not."""

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self.setItemDelegate(EntryDelegate(self))
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setUniformItemSizes(True)
        self.setMouseTracking(True)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setEditTriggers(QAbstractItemView.EditTrigger.EditKeyPressed)
        self.setContextMenuPolicy(Qt.ContextMenuPolicy.CustomContextMenu)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Maximum)
        self._lay_ground()

    def _lay_ground(self) -> None:
        """Let the window's ground go on below the rows: a viewport of our own, as Qt's is slow to ask for."""
        ground = QWidget(self)
        ground.setBackgroundRole(QPalette.ColorRole.Window)
        ground.setAutoFillBackground(True)
        ground.setMouseTracking(True)
        self.setViewport(ground)

    def _row_height(self) -> int:
        return self.itemDelegate().sizeHint(QStyleOptionViewItem(), QModelIndex()).height()

    def sizeHint(self) -> QSize:
        """As high as all rows together."""
        return QSize(theme.spacing(28), self.model().rowCount() * self._row_height() + 2)

    def minimumSizeHint(self) -> QSize:
        """At least one row and a half, so that it shows that there is more."""
        return QSize(theme.spacing(16), min(self.sizeHint().height(), self._row_height() * 3 // 2))


class EntryList(QWidget):
    """The people or the patterns, of which one is chosen.

    Signals:
        chosen(str): the user went to an entry, by mouse or by keyboard.
        opened(str): the user opened an entry: Enter or a double click.
        menu_wanted(str, QPoint): the menu of an entry is asked for, at a place on the screen.
    """

    chosen = Signal(str)
    opened = Signal(str)
    menu_wanted = Signal(str, QPoint)

    def __init__(self, session: Session, kind: EntryKind, new: QAction, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        heading, self._empty, self._nothing_found = _WORDS[kind]
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Maximum)
        self._entry = ""
        self._settling = False
        self.filter = EntryFilter(EntryModel(session, kind, self), self)
        self.filter.rowsAboutToBeRemoved.connect(self._begin_settling)  # before the view moves its current row
        self.view = EntryView(heading, self)
        self.view.setModel(self.filter)
        self.note = Lettering("", "note", self)
        self._arrange(heading, new)
        self._connect()
        self._settle()

    def _arrange(self, heading: str, new: QAction) -> None:
        title = Lettering(heading, "small heading", self)
        title.setBuddy(self.view)
        button = QToolButton(self)
        button.setDefaultAction(new)
        button.setText("New")
        button.setAccessibleName(new.text().replace("&", ""))
        button.setAutoRaise(True)
        button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        top = QHBoxLayout()
        top.setContentsMargins(theme.spacing(1.5), 0, theme.spacing(0.5), 0)
        top.addWidget(title, 1)
        top.addWidget(button)
        self.note.setContentsMargins(theme.spacing(1.5), 0, theme.spacing(1), 0)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(theme.spacing(0.5))
        layout.addLayout(top)
        layout.addWidget(self.note)
        layout.addWidget(self.view, 1)

    def _connect(self) -> None:
        self.filter.rowsRemoved.connect(self._settle)
        self.filter.rowsInserted.connect(self._settle)
        self.filter.layoutChanged.connect(self._settle)
        self.view.selectionModel().currentChanged.connect(self._went_to)
        self.view.activated.connect(self._opened)
        self.view.customContextMenuRequested.connect(self._menu_at)

    def show_chosen(self, entry: str) -> None:
        """Mark the entry that is chosen, "" for none."""
        self._entry = entry
        self._settle()

    def look_for(self, words: str) -> None:
        """Leave only the entries in which every word stands."""
        self.filter.look_for(words)
        self._settle()

    def filter_group(self, group: str) -> None:
        """Leave only the people of a group, or everybody."""
        self.filter.show_group(group)
        self._settle()

    def open_first(self) -> bool:
        """Open the first entry that is shown; False when there is none."""
        if self.filter.rowCount() == 0:
            return False
        self._opened(self.filter.index(0, 0))
        return True

    def _begin_settling(self) -> None:
        self._settling = True

    def _settle(self) -> None:
        """Put the mark where the chosen entry is now, and say so when there is nothing to show."""
        self._settling = True
        row = self.filter.row_of(self._entry)
        self.view.setCurrentIndex(self.filter.index(row, 0) if row >= 0 else QModelIndex())
        if row < 0:
            self.view.clearSelection()
        self._settling = False
        rows, known = self.filter.rowCount(), self.filter.sourceModel().rowCount()
        self.note.setText(self._nothing_found if known else self._empty)
        self.note.setVisible(rows == 0)
        self.view.setVisible(rows > 0)
        self.view.updateGeometry()

    def _went_to(self, index: QModelIndex) -> None:
        if not self._settling and index.isValid():
            self._entry = str(index.data(ID_ROLE))
            self.chosen.emit(self._entry)

    def _opened(self, index: QModelIndex) -> None:
        self._entry = str(index.data(ID_ROLE))
        self.opened.emit(self._entry)

    def _menu_at(self, where: QPoint) -> None:
        index = self.view.indexAt(where)
        if not index.isValid():
            index = self.view.currentIndex()
            where = self.view.visualRect(index).center()
        if index.isValid():
            self.menu_wanted.emit(str(index.data(ID_ROLE)), self.view.viewport().mapToGlobal(where))
