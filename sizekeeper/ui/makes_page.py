"""The Makes page: every garment made or begun, how it turned out, and what to do next time."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace
from typing import TYPE_CHECKING, cast

from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QHBoxLayout, QMenu, QStackedWidget, QVBoxLayout, QWidget

from sizekeeper import assets
from sizekeeper.core.found import Found
from sizekeeper.core.kept import kept_of, with_progress
from sizekeeper.core.make import Make
from sizekeeper.core.measure import REGION_ORDER
from sizekeeper.core.planned import plan_ahead
from sizekeeper.core.wording import Wording
from sizekeeper.ui import theme
from sizekeeper.ui.empty_page import EmptyPage
from sizekeeper.ui.fit_source import look_up, view_choices
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.make_detail import MakeDetail
from sizekeeper.ui.makes_bar import MakesBar
from sizekeeper.ui.makes_rows import Listed, listed_makes, make_row
from sizekeeper.ui.makes_table import MakesTable
from sizekeeper.ui.plan_cards import per_change_cm
from sizekeeper.ui.selection import Place
from sizekeeper.ui.thin_splitter import ThinSplitter

if TYPE_CHECKING:
    from collections.abc import Callable

    from PySide6.QtGui import QResizeEvent, QShowEvent

    from sizekeeper.core.make import Kept, Progress
    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Change, Session
    from sizekeeper.ui.settings import Settings

_KINDS = {"make", "person", "pattern", "chart", "pieces"}
_PATIENCE_S = 2.0
"""How long the history waits for the edits that are still on their way to the file; coined."""
_SHARE_OF_LIST = 0.42
"""The share of the height that the list has at most by itself (coined)."""
_QUESTION, _FIRST = "Nothing was made yet", "Plan a garment"
_HOW = "A make begins when you decide on a plan on Fit. Here you note how it turned out, and what to do next time."


class MakesPage(QWidget):
    """The list of makes above, the one in front below."""

    def __init__(
        self,
        session: Session,
        selection: Selection,
        settings: Settings,
        parent: QWidget | None = None,
        *,
        today: Callable[[], dt.date] = dt.date.today,
    ) -> None:
        """Show every make; `today` is the day on which one counts as finished."""
        super().__init__(parent)
        self._session, self._selection, self._settings, self._today = session, selection, settings, today
        self._listed: dict[str, Listed] = {}
        self._shown, self._stale, self._moved = "", True, False
        self._chosen = ("", "")
        self.empty = EmptyPage(_QUESTION, _HOW, _FIRST, self)
        self.bar = MakesBar(self)
        self.table = MakesTable(self)
        self.nothing = Lettering("No make found.", "muted", self)
        self.detail = MakeDetail(self)
        self.menu = QMenu(self)
        self._stack = QStackedWidget(self)
        self._lay_out()
        self._connect()

    def _lay_out(self) -> None:
        upper = QWidget(self)
        above = QVBoxLayout(upper)
        above.setContentsMargins(0, 0, 0, 0)
        above.setSpacing(0)
        for widget in (self.bar, self.nothing):
            above.addWidget(widget)
        beside = QHBoxLayout()
        beside.setContentsMargins(theme.spacing(3.5), 0, 0, 0)
        beside.addWidget(self.table)
        above.addLayout(beside, 1)
        self.nothing.setIndent(theme.spacing(4))
        self._split = ThinSplitter(self)
        self._split.setOrientation(Qt.Orientation.Vertical)
        for part in (upper, self.detail):
            self._split.addWidget(part)
        self._stack.addWidget(self.empty)
        self._stack.addWidget(self._split)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self._stack)

    def _connect(self) -> None:
        self._session.changed.connect(self._on_change)
        self._session.drafted.connect(self._on_change)
        self._settings.changed.connect(self.refresh)
        self._split.splitterMoved.connect(self._on_moved)
        self.empty.button.clicked.connect(self._on_plan)
        self.bar.changed.connect(self.refresh)
        self.table.picked.connect(self._on_picked)
        self.table.opened.connect(self._open)
        self.table.customContextMenuRequested.connect(self._show_menu)
        detail, outcome = self.detail, self.detail.outcome
        detail.fit.clicked.connect(self._on_fit)
        detail.sheet.clicked.connect(self._on_sheet)
        detail.history.clicked.connect(self._on_history)
        detail.hide_it.clicked.connect(self._on_hide)
        outcome.progress_chosen.connect(self._on_progress)
        outcome.edited.connect(self._on_edited)
        outcome.drafted.connect(self._session.draft)
        outcome.restored.connect(self._on_restored)
        away = QShortcut(QKeySequence(Qt.Key.Key_Delete), self.table)
        away.setContext(Qt.ShortcutContext.WidgetShortcut)
        away.activated.connect(self._on_delete)

    @property
    def make(self) -> Make | None:
        """The make in front as last edited; None while there is none."""
        value = self._session.committed(self._shown)
        return value if isinstance(value, Make) else None

    def refresh(self) -> None:
        """Show what stands; a page that is not in front does so when it comes to the front."""
        if not self.isVisible():
            self._stale = True
            return
        self._stale = False
        known = listed_makes(self._session)
        self._stack.setCurrentIndex(1 if known else 0)
        self.bar.offer(self._session.people())
        sieve = self.bar.sieve
        shown = [one for one in known if sieve.lets_through(one)]
        self._listed = {one.make.id: one for one in shown}
        words = Wording(self._settings.notation_in(self._settings.unit), assets.measures().name)
        self.table.show_rows([make_row(one, words) for one in shown])
        self.bar.say_count(len(shown), sum(sieve.hidden or not one.make.hidden for one in known))
        self.nothing.setVisible(not shown)
        self._share_height()
        self._show_make(self.table.key)

    def _show_make(self, key: str) -> None:
        if key != self._shown:
            self.detail.outcome.finish()
            self._shown = key
        one, make = self._listed.get(key), self.make
        self.detail.setVisible(one is not None and make is not None)
        if one is None or make is None:
            return
        words = self._words(one)
        read_only = self._session.read_only
        self.detail.show_heading(one, self._why_not(one), read_only=read_only)
        self.detail.reading.show_make(make, words)
        self.detail.outcome.show_make(make, _regions(one), words, self._today(), read_only=read_only)

    def _pick_newest_of(self, person: str, pattern: str) -> None:
        """Bring what is made of a pattern for a person to the front: what is worked on, else the newest."""
        theirs = [one for one in self._listed.values() if (one.make.person, one.make.pattern) == (person, pattern)]
        if theirs:
            newest = max(theirs, key=lambda one: (one.make.open, one.day or dt.date.min))
            self.table.pick(newest.make.id)

    def _words(self, one: Listed) -> Wording:
        unit = one.person.unit if one.person is not None else self._settings.unit
        return Wording(self._settings.notation_for(unit), assets.measures().name)

    def _why_not(self, one: Listed) -> str:
        """Why a make cannot be shown on Fit; empty where it can."""
        pattern = self._session.pattern(one.make.pattern)
        if pattern is None or one.person is None:
            return "The person or the pattern is no longer in the library, so that it can only be read here."
        views = view_choices(self._session, pattern)
        if one.make.view not in views and (views or one.make.view):
            which = f"view {one.make.view}" if one.make.view else "one choice for all views"
            return f"The pattern no longer has {which}, so that this make can only be read here."
        return ""

    # What is done with a make.

    def _apply(self, text: str, field: str, after: Make) -> None:
        before = self._session.committed(after.id)
        if isinstance(before, Make):
            self._session.apply(text, before, after, place=Place("makes", after.id, field))

    def _on_edited(self, text: str, field: str, after: Make) -> None:
        self._apply(text, field, after)

    def _on_restored(self) -> None:
        self._session.drop_draft(self._shown)

    def _on_progress(self, progress: str) -> None:
        """Note how far it is; a finished make keeps what it rests on, and Fit goes on with the next one."""
        make, far = self.make, cast("Progress", progress)
        if make is None or make.progress == far:
            return
        kept = self._kept(make) if far == "finished" else None
        after = with_progress(make, far, kept, self._today())
        if not after.open and self._selection.make == make.id:
            self._selection.take_up("")
        names = {"finished": "Finish the make", "given_up": "Give the make up"}
        self._apply(names.get(far, "Change how far the make is"), "progress", after)

    def _kept(self, make: Make) -> Kept | None:
        """What a make rests on now; None where there is nothing to compare."""
        found = look_up(self._session, make.person, make.pattern, view=make.view)
        if not isinstance(found, Found):
            return None
        planned = plan_ahead(found, make, per_change_cm(self._settings))
        words = Wording(self._settings.notation_for(found.person.unit), assets.measures().name)
        return kept_of(found, planned, words, self._today())

    def _on_hide(self) -> None:
        if (make := self.make) is not None:
            self._apply(
                f"{'Bring back' if make.hidden else 'Hide'} the make", "", replace(make, hidden=not make.hidden)
            )

    def _on_delete(self) -> None:
        if (make := self.make) is not None and not make.hidden and not self._session.read_only:
            self._on_hide()

    def _open(self, key: str) -> None:
        """Show a make on Fit, its plans in front."""
        one = self._listed.get(key)
        if one is not None and not self._why_not(one):
            self._selection.go(Place("fit", key, f"{one.make.pattern}/plan:plans/{one.make.view}"))

    def _on_fit(self) -> None:
        self._open(self._shown)

    def _on_sheet(self) -> None:
        make = self.make
        if make is not None:
            self._selection.choose_person(make.person)
            self._selection.choose_pattern(make.pattern)
            self._selection.take_up(make.id)
            self._selection.sheet_wanted.emit()

    def _on_history(self) -> None:
        from sizekeeper.ui.history_dialog import HistoryDialog  # noqa: PLC0415 - seldom wanted

        if (make := self.make) is not None:
            self._session.writer.flush(_PATIENCE_S)
            HistoryDialog(self._session, make, self).open()

    def _on_plan(self) -> None:
        person, pattern = self._selection.person, self._selection.pattern
        self._selection.go(Place("fit", person, f"{pattern}/plan:plans"))

    def _show_menu(self, where: QPoint) -> None:
        """What the buttons do, in a menu on the row."""
        if self.make is None:
            return
        self.menu.clear()
        for button in self.detail.buttons:
            action = self.menu.addAction(button.text())
            action.setEnabled(button.isEnabled())
            action.triggered.connect(button.click)
        self.menu.popup(self.table.viewport().mapToGlobal(where))

    def _on_picked(self, key: str) -> None:
        self._show_make(key)

    def _share_height(self) -> None:
        """Give the list the height it needs, up to a share, until somebody moves the rule below it."""
        if not self._moved:
            most, needed = (
                round(self.height() * _SHARE_OF_LIST),
                self.bar.sizeHint().height() + self.table.needed_height,
            )
            upper = min(most, needed)
            self._split.setSizes([upper, self.height() - upper])

    def _on_moved(self) -> None:
        self._moved = True

    def _on_change(self, change: Change) -> None:
        if change.kinds & _KINDS:
            self.refresh()

    # What the window asks of a page.

    def reveal(self, place: Place) -> None:
        """Show a make, and put the cursor into the field where an edit happened."""
        self.refresh()
        if place.entry and place.entry not in self._listed and self._session.committed(place.entry) is not None:
            self.bar.let_everything_through()
        if self.table.pick(place.entry):
            field = self.detail.outcome.field(place.field) or self.table
            field.setFocus(Qt.FocusReason.OtherFocusReason)

    # Qt's own names from here on.

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Share the height anew."""
        super().resizeEvent(event)
        self._share_height()

    def showEvent(self, event: QShowEvent) -> None:
        """Catch up with what changed, and with who and what was chosen, while another page was in front."""
        super().showEvent(event)
        chosen = (self._selection.person, self._selection.pattern)
        changed = self._stale or chosen != self._chosen
        self._chosen = chosen
        if self._stale:
            self.refresh()
        if changed:
            self._pick_newest_of(*chosen)


def _regions(one: Listed) -> tuple[str, ...]:
    """The regions that can have been worn well or badly: those the cut was judged at, else those she is measured at."""
    kept = one.make.kept
    if kept is not None and kept.regions:
        return tuple(kept.regions)
    measured = {reading.measure for reading in one.person.readings} if one.person is not None else set()
    return tuple(measure for measure in REGION_ORDER if measure in measured)
