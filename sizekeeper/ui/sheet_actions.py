"""The decision sheet in the File menu: look at it, print it, and save sheets for everybody."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtGui import QAction, QKeySequence

from sizekeeper.ui.import_reading import Reading

if TYPE_CHECKING:
    from collections.abc import Callable

    from PySide6.QtWidgets import QWidget

    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Session
    from sizekeeper.ui.settings import Settings
    from sizekeeper.ui.sheet_everybody import SheetsForEverybody
    from sizekeeper.ui.sheet_window import SheetWindow


class SheetActions(QObject):
    """One window of the sheet in front, and one for many sheets; both are made when first wanted.

    Signals:
        told(str): a sheet was saved or printed; the sentence says where.
    """

    told = Signal(str)

    def __init__(
        self,
        session: Session,
        selection: Selection,
        settings: Settings,
        window: QWidget,
        view_in_front: Callable[[], str] = str,
    ) -> None:
        """Offer the actions; `view_in_front` tells which view of the pattern the main window shows."""
        super().__init__(window)
        self._with = (session, selection, settings)
        self._window = window
        self._view_in_front = view_in_front
        self.window: SheetWindow | None = None
        self.many: SheetsForEverybody | None = None
        self.sheet = self._action("&Decision sheet…", self.show_sheet, "Ctrl+Shift+P")
        self.print = self._action("&Print…", self._print, QKeySequence.StandardKey.Print)
        self.everybody = self._action("Save sheets for &everybody…", self.show_everybody)
        session.changed.connect(self._refresh)
        selection.person_changed.connect(self._refresh)
        selection.pattern_changed.connect(self._refresh)
        self._refresh()

    def _action(
        self, text: str, run: Callable[[], object], keys: QKeySequence.StandardKey | str | None = None
    ) -> QAction:
        action = QAction(text, self)
        action.triggered.connect(run)
        if isinstance(keys, str):
            action.setShortcut(QKeySequence(keys))
        elif keys is not None:
            action.setShortcuts(keys)
        return action

    def _refresh(self, _what: object = None) -> None:
        """A sheet needs a person and a pattern; what else is missing its window says."""
        session, selection, _ = self._with
        both = session.person(selection.person) is not None and session.pattern(selection.pattern) is not None
        for action in (self.sheet, self.print, self.everybody):
            action.setEnabled(both)

    def show_sheet(self) -> SheetWindow:
        """Bring the sheet of what is in front to the front."""
        if self.window is None:
            from sizekeeper.ui.sheet_window import SheetWindow  # noqa: PLC0415 - seldom wanted

            self.window = SheetWindow(*self._with, self._window, view_in_front=self._view_in_front)
            self.window.setWindowFlag(_own_window())
            self.window.told.connect(self.told)
        self.window.show()
        self.window.raise_()
        self.window.activateWindow()
        return self.window

    def _print(self) -> None:
        self.show_sheet().start_printing()

    def show_everybody(self) -> None:
        """Bring the window for many sheets to the front."""
        if self.many is None:
            from sizekeeper.ui.sheet_everybody import SheetsForEverybody  # noqa: PLC0415 - seldom wanted

            self.many = SheetsForEverybody(*self._with, self._window)
            self.many.setWindowFlag(_own_window())
            self.many.told.connect(self.told)
        self.many.show()
        self.many.raise_()
        self.many.activateWindow()

    def finish(self) -> None:
        """The main window closes: close these, stop what they do, and wait for the threads."""
        for window in (self.window, self.many):
            if window is not None:
                window.close()
        Reading.finish_all()


def _own_window() -> Qt.WindowType:
    return Qt.WindowType.Window
