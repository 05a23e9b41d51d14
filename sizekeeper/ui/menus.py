"""The menu bar: every action of the window in its place, with the platform's standard keys."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Slot
from PySide6.QtGui import QAction, QActionGroup, QKeySequence
from PySide6.QtWidgets import QMenu, QMenuBar

from sizekeeper.ui.undo_keys import redo_keys

if TYPE_CHECKING:
    from collections.abc import Callable

    from sizekeeper.ui.entry_actions import EntryActions
    from sizekeeper.ui.import_actions import ImportActions
    from sizekeeper.ui.library_actions import LibraryActions
    from sizekeeper.ui.pages import Pages
    from sizekeeper.ui.session import Session
    from sizekeeper.ui.window import MainWindow

Keys = QKeySequence.StandardKey | str


class Menus(QObject):
    """Fills the window's menu bar and keeps what can be done enabled."""

    def __init__(
        self, window: MainWindow, session: Session, pages: Pages, entries: EntryActions, library: LibraryActions
    ) -> None:
        super().__init__(window)
        self._window = window
        self._session = session
        self._pages = pages
        self.undo = self._history_action("undo")
        self.redo = self._history_action("redo")
        self.find = self._action("&Find a person or a pattern", window.find_entry, QKeySequence.StandardKey.Find)
        self.copy_table = self._action("&Copy the ease table", self._copy_table, "Ctrl+Shift+C")
        self.preferences = self._action("&Preferences…", window.show_preferences, QKeySequence.StandardKey.Preferences)
        if not self.preferences.shortcuts():
            self.preferences.setShortcut(QKeySequence("Ctrl+,"))  # where the platform has no key for it
        self.quit = self._action("&Quit", window.close, QKeySequence.StandardKey.Quit)
        self.about = self._action("&About Sizekeeper…", window.show_about)
        self.side = self._action("People and patterns at the &left", window.show_sidebar, "F9")
        self.side.setCheckable(True)
        self.side.setChecked(True)
        self.preferences.setMenuRole(QAction.MenuRole.PreferencesRole)
        self.quit.setMenuRole(QAction.MenuRole.QuitRole)
        self.about.setMenuRole(QAction.MenuRole.AboutRole)
        self.turns = self._page_actions()
        self.plans = self._action("&Plans on the Fit page", window.show_plans, f"Ctrl+{len(self.turns) + 1}")
        self.person_menu, self.pattern_menu = QMenu("&Person", window), QMenu("P&attern", window)
        self._fill(window.menuBar(), entries, library, window.charts)
        pages.turned.connect(self._turned)
        self._turned(pages.front)

    def _action(self, text: str, run: Callable[..., object], keys: Keys | None = None) -> QAction:
        action = QAction(text, self)
        action.triggered.connect(run)
        if isinstance(keys, str):
            action.setShortcut(QKeySequence(keys))
        elif keys is not None:
            action.setShortcuts(keys)
        return action

    def _history_action(self, which: str) -> QAction:
        """Undo or redo, with the name of the edit; the text of the menu stays short where there is none."""
        stack = self._session.undo_stack
        make = stack.createUndoAction if which == "undo" else stack.createRedoAction
        action = make(self, f"&{which.capitalize()}")
        if which == "undo":
            action.setShortcuts(QKeySequence.StandardKey.Undo)
        else:
            action.setShortcuts(redo_keys())
        return action

    def _page_actions(self) -> list[QAction]:
        group = QActionGroup(self)
        actions = []
        for number, kind in enumerate(self._pages.kinds, start=1):
            action = QAction(f"&{number}  {kind.title}", group)
            action.setCheckable(True)
            action.setData(kind.name)
            action.setShortcut(QKeySequence(f"Ctrl+{number}"))
            actions.append(action)
        group.triggered.connect(self._turn)
        return actions

    def _fill(self, bar: QMenuBar, entries: EntryActions, library: LibraryActions, charts: ImportActions) -> None:
        """Menus by what they are about; None is a line between."""
        file, edit, view, aid = (QMenu(title, self._window) for title in ("&File", "&Edit", "&View", "&Help"))
        opening = (library.new, library.open, library.own, library.demo)
        people = self._window.people
        person_items = (
            entries.new_person, None, people.file, people.paste, people.export, None, entries.copy_person,
            entries.hide_person, entries.history_of_person, None, entries.erase_person,
        )  # fmt: skip
        pattern_items = (
            entries.new_pattern, None, entries.copy_pattern, entries.hide_pattern, entries.history_of_pattern,
        )  # fmt: skip
        compare = self._window.comparisons
        comparisons = (compare.overview, None, compare.people, compare.patterns, None, compare.drafting)
        sheets = (self._window.sheets.sheet, self._window.sheets.print, self._window.sheets.everybody)
        file_items = (
            *opening, None, charts.files, charts.paste, None, *sheets, None, library.copy, library.restore, None,
            self.quit,
        )  # fmt: skip
        whole: tuple[tuple[QMenu, tuple[QAction | None, ...]], ...] = (
            (file, file_items),
            (edit, (self.undo, self.redo, None, self.copy_table, self.find, None, self.preferences)),
            (self.person_menu, person_items),
            (self.pattern_menu, pattern_items),
            (QMenu("&Compare", self._window), comparisons),
            (view, (*self.turns, self.plans, None, self.side)),
            (aid, (self.about,)),
        )
        for menu, actions in whole:
            for action in actions:
                if action is None:
                    menu.addSeparator()
                else:
                    menu.addAction(action)
            bar.addMenu(menu)

    @Slot(QAction)
    def _turn(self, action: QAction) -> None:
        self._window.turn_to(action.data())

    def _turned(self, name: str) -> None:
        """Mark the page in front; the ease table, or the comparison of many, can be copied where there is one."""
        for action in self.turns:
            action.setChecked(action.data() == name)
        self.copy_table.setText("&Copy the comparison" if name == "household" else "&Copy the ease table")
        self.copy_table.setEnabled(name in ("fit", "household") and self._window.pages_in_front)

    def refresh(self) -> None:
        """Offer the pages only when they are in front of the welcome."""
        for action in self.turns:
            action.setEnabled(self._window.pages_in_front)
        self.plans.setEnabled(self._window.pages_in_front)
        self._turned(self._pages.front)

    def _copy_table(self) -> None:
        self._window.copy_table()
