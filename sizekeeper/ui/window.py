"""The main window: it wires the list at the left, the pages, the menus and the line at the foot; it does not think."""

from __future__ import annotations

from typing import TYPE_CHECKING, Protocol, cast

from PySide6.QtCore import QEvent, QPoint, Qt, Signal
from PySide6.QtWidgets import QApplication, QMainWindow, QMessageBox, QStackedWidget, QVBoxLayout, QWidget

from sizekeeper.core.pattern import Pattern
from sizekeeper.core.person import Person
from sizekeeper.errors import SizekeeperError
from sizekeeper.ui.comparison_actions import ComparisonActions
from sizekeeper.ui.entry_actions import EntryActions
from sizekeeper.ui.import_actions import ImportActions
from sizekeeper.ui.lettering import Rule
from sizekeeper.ui.library_actions import LibraryActions
from sizekeeper.ui.menus import Menus
from sizekeeper.ui.notice import Notice
from sizekeeper.ui.pages import PAGES, PageKind, Pages
from sizekeeper.ui.people_actions import PeopleActions
from sizekeeper.ui.saving import Saving
from sizekeeper.ui.selection import Place, Selection
from sizekeeper.ui.sheet_actions import SheetActions
from sizekeeper.ui.sidebar import Sidebar
from sizekeeper.ui.status import StatusLine
from sizekeeper.ui.thin_splitter import ThinSplitter
from sizekeeper.ui.undo_keys import UndoKeys
from sizekeeper.ui.window_place import keep_place, restore_place

if TYPE_CHECKING:
    from collections.abc import Sequence

    from PySide6.QtGui import QCloseEvent, QPaintEvent

    from sizekeeper.ui.selection import PageName
    from sizekeeper.ui.session import Change, Session
    from sizekeeper.ui.settings import Settings
    from sizekeeper.ui.welcome import Welcome


class _Copying(Protocol):
    """A page with a table that can be copied."""

    def copy_table(self) -> None:
        """Put the table on the clipboard."""


class MainWindow(QMainWindow):
    """One library in one window.

    Signals:
        painted(): the first picture of the window is on the screen.
        unreadable(str): after the first picture it turned out that the file cannot be read; the sentence says why.
        closed(): the window was closed, and everything that could be saved is saved.
    """

    painted = Signal()
    unreadable = Signal(str)
    closed = Signal()

    def __init__(
        self,
        session: Session,
        settings: Settings,
        kinds: Sequence[PageKind] = PAGES,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.session = session
        self.settings = settings
        self.selection = Selection(self)
        self.entries = EntryActions(session, self.selection, settings, self)
        self.library = LibraryActions(session, self)
        self.charts = ImportActions(session, self.selection, settings, self)
        self.sheets = SheetActions(session, self.selection, settings, self, self._view_in_front)
        self.comparisons = ComparisonActions(session, self.selection, settings, self)
        self.people = PeopleActions(session, self.selection, settings, self)
        self.sidebar = Sidebar(session, self.selection, self.entries.new_person, self.entries.new_pattern, self)
        self.notice = Notice(self)
        self.pages = Pages(session, self.selection, settings, kinds, self)
        self.status = StatusLine(session, self)
        self._front = QStackedWidget(self)
        self._welcome: Welcome | None = None
        self._splitter = ThinSplitter(self)
        self._was_painted = False
        self._was_closed = False
        self._arrange()
        self.menus = Menus(self, session, self.pages, self.entries, self.library)
        self.saving = Saving(session, self.notice, self.library, self)
        self._undo_keys = UndoKeys(session, self.pages, self)
        self._connect()
        self._restore()

    @property
    def pages_in_front(self) -> bool:
        """Whether the pages are shown, not the welcome to an empty library."""
        return self._front.currentWidget() is self.pages

    @property
    def welcome(self) -> Welcome:
        """What is shown while the library is empty; made when it is first asked for."""
        if self._welcome is None:
            from sizekeeper.ui.welcome import Welcome  # noqa: PLC0415 - not wanted where there is something to show

            self._welcome = Welcome(self.entries.new_person, self.entries.new_pattern, self.library.demo, self)
            self._front.addWidget(self._welcome)
        return self._welcome

    def _arrange(self) -> None:
        self._front.addWidget(self.pages)
        right = QWidget(self)
        column = QVBoxLayout(right)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.notice)
        column.addWidget(self._front, 1)
        self._splitter.addWidget(self.sidebar)
        self._splitter.addWidget(right)
        self._splitter.setStretchFactor(1, 1)
        whole = QWidget(self)
        rows = QVBoxLayout(whole)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(0)
        for widget in (self._splitter, Rule(whole), self.status):
            rows.addWidget(widget, 1 if widget is self._splitter else 0)
        self.setCentralWidget(whole)

    def _connect(self) -> None:
        self.painted.connect(self._catch_up, Qt.ConnectionType.QueuedConnection)
        self.session.changed.connect(self._follow)
        self.session.revisited.connect(self._revisited)
        self.selection.page_wanted.connect(self._go)
        self.selection.sheet_wanted.connect(self.sheets.show_sheet)
        self.sidebar.chosen.connect(self._chosen)
        self.sidebar.opened.connect(self.open_entry)
        self.sidebar.menu_wanted.connect(self._show_menu)
        self.entries.told.connect(self.status.tell)
        self.library.told.connect(self.status.tell)
        self.library.trouble.connect(self.notice.say)
        self.charts.told.connect(self.status.tell)
        self.charts.trouble.connect(self._say_trouble)
        self.charts.people_chosen.connect(self.people.read_source)
        self.people.told.connect(self.status.tell)
        self.people.trouble.connect(self._say_trouble)
        self.sheets.told.connect(self.status.tell)

    def _restore(self) -> None:
        """Begin where it was left: place, page, person and pattern."""
        path = self.session.writer.library.path
        stored = self.settings.stored
        self.setWindowTitle(f"{path.stem} – Sizekeeper")
        restore_place(self, self._splitter, stored)
        if stored.value("window/library") == str(path):
            self.selection.choose_person(str(stored.value("window/person", "")))
            self.selection.choose_pattern(str(stored.value("window/pattern", "")))
        self._settle()
        if self.session.empty:
            self._front.setCurrentWidget(self.welcome)
            self.welcome.take_focus()
        else:
            self._front.setCurrentWidget(self.pages)
            self.pages.begin_with(str(stored.value("window/page", "")))
            self.sidebar.take_focus()
        self.menus.refresh()

    def _settle(self) -> None:
        """Choose somebody and something else when what was chosen is not there any more."""
        if self.session.person(self.selection.person) is None:
            self.selection.choose_person(next((p.id for p in self.session.people()), ""))
        if self.session.pattern(self.selection.pattern) is None:
            self.selection.choose_pattern(next((p.id for p in self.session.patterns()), ""))

    def _show_front(self) -> None:
        """The welcome while the library is empty, else the pages."""
        wanted = self.welcome if self.session.empty else self.pages
        if wanted is self.pages:
            self.pages.turn_to(self.pages.front)
        self._front.setCurrentWidget(wanted)
        self.menus.refresh()

    def _catch_up(self) -> None:
        """After the first picture: read what it could do without, and make the page in front, if that was left."""
        try:
            self.session.complete()
        except SizekeeperError as error:
            self.unreadable.emit(str(error))
            return
        if self.pages_in_front:
            self.pages.catch_up()

    def _follow(self, change: Change) -> None:
        if change.kinds & {"person", "pattern"}:
            self._settle()
            self._show_front()

    def turn_to(self, name: PageName) -> None:
        """Bring a page to the front."""
        self.pages.turn_to(name)

    def show_plans(self) -> None:
        """Bring the plans of the person and the pattern in front to the front."""
        self.selection.go(Place("fit", self.selection.person, f"{self.selection.pattern}/plan:plans"))

    def _go(self, place: Place) -> None:
        """Show the entry of a place and bring its page and field to the front."""
        value = self.session.committed(place.entry)
        if isinstance(value, Person):
            self.selection.choose_person(value.id)
        elif isinstance(value, Pattern):
            self.selection.choose_pattern(value.id)
        elif value is not None:  # what belongs to a pattern, or to a person's work on it
            self.selection.choose_person(getattr(value, "person", self.selection.person))
            self.selection.choose_pattern(getattr(value, "pattern", self.selection.pattern))
        if not self.session.empty:
            self.pages.reveal(place)

    def _revisited(self, place: Place | None, _sentence: str) -> None:
        """Go where undo or redo changed something."""
        if place is not None:
            self.selection.go(place)

    def _chosen(self, entry: str) -> None:
        """Show what was picked at the left; on the pages that compare, the comparison follows by itself."""
        if self.pages.front not in ("fit", "household"):
            self.pages.turn_to("person" if self.session.person(entry) else "pattern")

    def open_entry(self, entry: str) -> None:
        """Bring a person's or a pattern's own page to the front."""
        self.selection.go(Place("person" if self.session.person(entry) else "pattern", entry))

    def _show_menu(self, entry: str, where: QPoint) -> None:
        menu = self.menus.person_menu if self.session.person(entry) else self.menus.pattern_menu
        menu.popup(where)

    def find_entry(self) -> None:
        """Put the cursor into the search box."""
        self.show_sidebar(True)
        self.sidebar.start_search()

    def show_sidebar(self, shown: bool) -> None:  # noqa: FBT001 - a slot of a menu entry that is ticked
        """Show the people and the patterns at the left, or give the page the whole width."""
        self.menus.side.setChecked(shown)
        self.sidebar.setVisible(shown)

    def show_preferences(self) -> None:
        """Open the preferences."""
        from sizekeeper.ui.preferences_dialog import PreferencesDialog  # noqa: PLC0415 - seldom wanted

        PreferencesDialog(self.settings, self).open()

    def show_about(self) -> None:
        """Say what the program is and where it keeps things."""
        from sizekeeper.ui.about_dialog import AboutDialog  # noqa: PLC0415 - seldom wanted

        AboutDialog(self.session.writer.library.path, self).open()

    def _say_trouble(self, sentence: str) -> None:
        """Say that a file cannot be read, until it is put away."""
        self.notice.say(sentence, closable=True)

    def copy_table(self) -> None:
        """Put the ease table, or on the Household page the comparison, on the clipboard."""
        name: PageName = "household" if self.pages.front == "household" else "fit"
        cast("_Copying", self.pages.page(name)).copy_table()
        self.status.tell(f"The {'comparison' if name == 'household' else 'ease table'} was copied.")

    def _view_in_front(self) -> str:
        """The view of the pattern that the Fit page shows; empty while it was not looked at."""
        return str(getattr(self.pages.page("fit"), "view", "")) if self.pages.is_made("fit") else ""

    def leave(self) -> bool:
        """Finish what is being typed and save everything; False when something could not be saved."""
        field = QApplication.focusWidget()
        if field is not None and self.isAncestorOf(field):
            field.clearFocus()
        return self.session.writer.flush(_PATIENCE_S)

    def remember(self) -> None:
        """Keep where the window stands and what is in front for the next time."""
        stored = self.settings.stored
        keep_place(self, self._splitter, stored)
        stored.setValue("window/library", str(self.session.writer.library.path))
        stored.setValue("window/person", self.selection.person)
        stored.setValue("window/pattern", self.selection.pattern)
        stored.setValue("window/page", self.pages.front)

    @classmethod
    def ask_to_lose(cls, parent: QWidget) -> bool:
        """Whether to close although some edits are not in the file; a test puts its own answer here."""
        buttons = QMessageBox.StandardButton.Discard | QMessageBox.StandardButton.Cancel
        answer = QMessageBox.warning(
            parent,
            "Not everything is saved",
            "Some edits could not be saved in the library. Cancel and save a copy to keep them.",
            buttons,
            QMessageBox.StandardButton.Cancel,
        )
        return answer == QMessageBox.StandardButton.Discard

    def changeEvent(self, event: QEvent) -> None:
        """Look at the file again when the window comes back to the front."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.ActivationChange and self._was_painted and self.isActiveWindow():
            self.saving.look_outside()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Say once that the first picture is there."""
        super().paintEvent(event)
        if not self._was_painted:
            self._was_painted = True
            self.painted.emit()

    def closeEvent(self, event: QCloseEvent) -> None:
        """Save everything, or ask before anything is lost; a window that was closed stays closed."""
        if self._was_closed:
            return
        if not (self.charts.leave() and self.people.leave()):
            event.ignore()
            return
        if not self.session.read_only and not self.leave() and not self.ask_to_lose(self):
            event.ignore()
            return
        self._was_closed = True
        self.sheets.finish()
        self.people.finish()
        self.charts.finish()
        self.remember()
        self.closed.emit()


_PATIENCE_S = 5.0
"""How long closing waits for the disk before it asks; coined."""
