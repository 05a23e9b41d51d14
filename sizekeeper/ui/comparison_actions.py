"""The Compare menu: windows that set many people, patterns or houses against each other."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject
from PySide6.QtGui import QAction
from shiboken6 import isValid

from sizekeeper.ui.selection import Place

if TYPE_CHECKING:
    from collections.abc import Callable

    from sizekeeper.ui.comparison_window import ComparisonWindow
    from sizekeeper.ui.overview_sizes import OverviewSizes
    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Session
    from sizekeeper.ui.settings import Settings
    from sizekeeper.ui.window import MainWindow

_TWO = 2


class ComparisonActions(QObject):
    """The actions of the Compare menu, and the windows they opened: one of each kind."""

    def __init__(self, session: Session, selection: Selection, settings: Settings, window: MainWindow) -> None:
        super().__init__(window)
        self._session, self._selection, self._settings, self._window = session, selection, settings, window
        self._shown: dict[str, ComparisonWindow] = {}
        self._sizes: OverviewSizes | None = None
        self.overview = self._action("&Everybody and every pattern…", self._show_overview)
        self.people = self._action("Two &people…", self._show_people)
        self.patterns = self._action("Two p&atterns…", self._show_patterns)
        self.drafting = self._action("How two &houses draft…", self._show_drafting)
        session.changed.connect(self._refresh)
        window.closed.connect(self.finish)
        self._refresh()

    def _action(self, text: str, run: Callable[[], object]) -> QAction:
        action = QAction(text, self)
        action.triggered.connect(run)
        return action

    def _refresh(self, _what: object = None) -> None:
        """Offer only what there are enough people and patterns for."""
        people, patterns = len(self._session.people()), len(self._session.patterns())
        self.overview.setEnabled(people > 0 and patterns > 0)
        self.people.setEnabled(people >= _TWO and patterns > 0)
        self.patterns.setEnabled(people > 0 and patterns >= _TWO)
        self.drafting.setEnabled(patterns >= _TWO)

    def shown(self, name: str) -> ComparisonWindow | None:
        """An open window by name; None while it is not open."""
        window = self._shown.get(name)
        return window if window is not None and isValid(window) and window.isVisible() else None

    def _show(self, name: str, make: Callable[[], ComparisonWindow]) -> None:
        """Bring a window to the front, opening it if it is not open."""
        window = self.shown(name)
        if window is None:
            window = self._shown[name] = make()
            window.show()
        window.raise_()
        window.activateWindow()

    def finish(self) -> None:
        """The main window closes, and these with it."""
        for name in tuple(self._shown):
            if (window := self.shown(name)) is not None:
                window.close()

    def _go_to_fit(self, person: str, pattern: str, view: str) -> None:
        """Show a person's comparison with a view of a pattern in the main window."""
        self._selection.choose_person(person)
        self._selection.choose_pattern(pattern)
        self._selection.go(Place("fit", person, f"{pattern}/view:{view}"))
        self._window.raise_()
        self._window.activateWindow()

    def _show_overview(self) -> None:
        self._show("overview", self._make_overview)

    def _make_overview(self) -> ComparisonWindow:
        from sizekeeper.ui.overview_sizes import OverviewSizes  # noqa: PLC0415 - seldom wanted
        from sizekeeper.ui.overview_window import OverviewWindow  # noqa: PLC0415 - seldom wanted

        self._sizes = self._sizes or OverviewSizes(self._session, self)
        window = OverviewWindow(self._session, self._settings, self._sizes)
        window.wanted.connect(self._go_to_fit)
        return window

    def _show_people(self) -> None:
        self._show("two people", self._make_people)

    def _make_people(self) -> ComparisonWindow:
        from sizekeeper.ui.beside_window import TwoPeople  # noqa: PLC0415 - seldom wanted

        return TwoPeople(self._session, self._settings, (self._selection.person, self._selection.pattern))

    def _show_patterns(self) -> None:
        self._show("two patterns", self._make_patterns)

    def _make_patterns(self) -> ComparisonWindow:
        from sizekeeper.ui.beside_window import TwoPatterns  # noqa: PLC0415 - seldom wanted

        return TwoPatterns(self._session, self._settings, (self._selection.person, self._selection.pattern))

    def _show_drafting(self) -> None:
        self._show("drafting", self._make_drafting)

    def _make_drafting(self) -> ComparisonWindow:
        from sizekeeper.ui.drafting_window import DraftingWindow  # noqa: PLC0415 - seldom wanted

        return DraftingWindow(self._session, self._settings, self._selection.pattern)
