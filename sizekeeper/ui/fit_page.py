"""The Fit page: which size, and how sure."""

from __future__ import annotations

import datetime as dt
from typing import TYPE_CHECKING

from PySide6.QtCore import QMimeData, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QHBoxLayout, QStackedWidget, QVBoxLayout, QWidget

from sizekeeper import assets
from sizekeeper.core.found import Found
from sizekeeper.core.make import Make
from sizekeeper.core.person import Person
from sizekeeper.core.planned import plan_ahead
from sizekeeper.core.reading_edit import Taking, figure_of, with_figure
from sizekeeper.core.wording import Wording
from sizekeeper.reports.ease_table import as_html, as_text
from sizekeeper.ui import fit_rows
from sizekeeper.ui.fit_answer import FitAnswer
from sizekeeper.ui.fit_empty import FirstThings
from sizekeeper.ui.fit_heading import FitHeading
from sizekeeper.ui.fit_panel import FitPanel
from sizekeeper.ui.fit_source import look_up, view_choices
from sizekeeper.ui.made_before import earlier_of
from sizekeeper.ui.plan_cards import per_change_cm
from sizekeeper.ui.plan_desk import PlanDesk
from sizekeeper.ui.plan_edits import MakeEdits
from sizekeeper.ui.plan_source import standing_make
from sizekeeper.ui.selection import Place

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    from PySide6.QtGui import QKeyEvent, QShowEvent

    from sizekeeper.core.planned import Planned
    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Change, Session
    from sizekeeper.ui.settings import Settings


class FitPage(QWidget):
    """Compares the selected person with the selected pattern, live, and lets her type and choose where it acts."""

    def __init__(
        self,
        session: Session,
        selection: Selection,
        settings: Settings,
        parent: QWidget | None = None,
        *,
        today: Callable[[], dt.date] = dt.date.today,
    ) -> None:
        """Show what is selected; `today` decides which measurements are old and dates those typed here."""
        super().__init__(parent)
        self._session, self._selection, self._settings, self._today = session, selection, settings, today
        self._found: Found | None = None
        self._planned: Planned | None = None
        self._views: dict[str, str] = {}
        self._typing: tuple[str, str] | None = None
        self._stale = True
        self.first = FirstThings(self)
        self.heading = FitHeading(self)
        self.answer = FitAnswer(self)
        self.panel = FitPanel(session, self)
        self.edits = MakeEdits(session, self)
        self.desk = PlanDesk(self.edits, settings, today, self)
        self.desk.hide()
        self._lay_out()
        self._connect()

    def _lay_out(self) -> None:
        both = QWidget(self)
        down = QVBoxLayout(both)
        down.setContentsMargins(0, 0, 0, 0)
        down.setSpacing(0)
        down.addWidget(self.heading)
        self._table = QWidget(both)
        across = QHBoxLayout(self._table)
        across.setContentsMargins(0, 0, 0, 0)
        across.setSpacing(0)
        across.addWidget(self.answer, 1)
        across.addWidget(self.panel)
        down.addWidget(self._table, 1)
        down.addWidget(self.desk, 1)
        self._stack = QStackedWidget(self)
        self._stack.addWidget(self.first)
        self._stack.addWidget(both)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self._stack)

    def _connect(self) -> None:
        self._session.changed.connect(self._on_change)
        self._session.drafted.connect(self._on_change)
        self._selection.person_changed.connect(self._on_selected)
        self._selection.pattern_changed.connect(self._on_selected)
        self._selection.make_changed.connect(self._on_make)
        self._settings.changed.connect(self.refresh)
        self.first.go.connect(self._selection.go)
        board = self.answer.board
        board.typed.connect(self._on_typed)
        board.entered.connect(self._on_entered)
        board.restored.connect(self._on_restored)
        board.picked.connect(self._on_region_picked)
        board.explain.connect(self._on_explain)
        self.heading.parts.wanted.connect(self.open_part)
        self.heading.view_chosen.connect(self._on_view)
        self.desk.left.connect(self._on_desk_left)
        self.desk.before.followed.connect(self._on_earlier)

    @property
    def found(self) -> Found | None:
        """What is shown; None while something is missing first."""
        return self._found

    @property
    def view(self) -> str:
        """The view of the chosen pattern that is shown."""
        pattern = self._selection.pattern
        return self._view_of(pattern, self._choices(pattern))

    @property
    def words(self) -> Wording:
        """How figures and measures are said now."""
        names = assets.measures().name
        if self._found is None:
            return Wording(self._settings.notation_in(self._settings.unit), names)
        notation = self._settings.notation_for(self._found.person.unit)
        return Wording(notation, names, self._settings.notation_in(self._found.printed_in))

    def open_part(self, part: str) -> None:
        """Open the plans, or a part of the side panel: "slide", "sizes", "likes"; "" folds either away."""
        planning = part == "plans"
        self._table.setHidden(planning)
        self.desk.setVisible(planning)
        self.panel.open(part)
        if planning:
            self._show_plans()
        self.heading.parts.show_open(part)

    def refresh(self) -> None:
        """Compare again and show it; a page that is not in front does so when it comes to the front."""
        if not self.isVisible():
            self._stale = True
            return
        self._stale = False
        pattern = self._selection.pattern
        views = self._choices(pattern)
        view = self._view_of(pattern, views)
        found = look_up(self._session, self._selection.person, pattern, view=view)
        if not isinstance(found, Found):
            self._found = self._planned = None
            self.first.show_missing(found)
            self._stack.setCurrentIndex(0)
            return
        self._found = found
        words = self.words
        self.heading.show_found(found, views, view)
        self.edits.taken = self._selection.make
        self._planned = plan_ahead(found, self.edits.look_up(found), per_change_cm(self._settings))
        self.answer.show_found(found, words, self._today(), self._planned)
        self._say_problems()
        if not self.desk.isHidden():
            self._show_plans()
        self.panel.show_found(found, words)
        self._stack.setCurrentIndex(1)

    def _show_plans(self) -> None:
        words, planned = self.words, self._planned
        earlier = earlier_of(self._session, planned, words) if planned is not None else None
        self.desk.show_planned(planned, words, earlier)

    def _on_desk_left(self) -> None:
        self.open_part("")
        self.heading.parts.buttons["plans"].setFocus()

    def _on_earlier(self, make: str) -> None:
        """Go to an earlier make, or on from a finished one to the next."""
        if make:
            self._selection.go(Place("makes", make))
        else:
            self._selection.take_up("")

    def _on_make(self, _make: str) -> None:
        self.refresh()

    def _take_up(self, entry: str) -> None:
        """Plan with the make that an edit was made in, or that was asked for."""
        make = self._session.committed(entry)
        if isinstance(make, Make):
            usual = standing_make(self._session, make.person, make.pattern, make.view, "")
            self._selection.take_up("" if usual.id == make.id else make.id)

    def _view_of(self, pattern: str, views: Mapping[str, str]) -> str:
        """The view chosen for a pattern, else its first one; empty without views."""
        kept = self._views.get(pattern, "")
        return kept if kept in views else next(iter(views), "")

    def _choices(self, pattern: str) -> dict[str, str]:
        value = self._session.pattern(pattern)
        return view_choices(self._session, value) if value is not None else {}

    def _on_change(self, change: Change) -> None:
        """Refresh when the person, the pattern, its charts or pieces, or a make is touched."""
        shown = {self._selection.person, self._selection.pattern}
        if shown & change.ids or change.kinds & {"chart", "pieces", "make"}:
            self.refresh()

    def _on_selected(self) -> None:
        """Show another person or pattern; what was being typed for the one before is meant."""
        for row in self.answer.board.regions.rows:
            row.field.enter()
        self._typing = None
        self.refresh()

    def _show_view(self, pattern: str, view: str) -> None:
        """Come back to the view that an edit was made for, unless it has no figures of its own any more."""
        if view in self._choices(pattern) and view != self._view_of(pattern, self._choices(pattern)):
            self._views[pattern] = view
            self.refresh()

    def _on_view(self, view: str) -> None:
        self._views[self._selection.pattern] = view
        self.refresh()

    def _on_region_picked(self, measure: str) -> None:
        self.open_part("likes")
        self.panel.likes.pick(measure)

    def _on_explain(self, column: int) -> None:
        table = self.answer.board.model.table
        if 0 <= column < len(table.columns):
            self.open_part("sizes")
            self.panel.sizes.pick(table.columns[column].label)

    # Typing a body figure.

    def _person(self) -> Person | None:
        """The person shown, as last edited."""
        value = self._session.committed(self._found.person.id) if self._found is not None else None
        return value if isinstance(value, Person) else None

    def _with(self, person: Person, measure: str, text: str) -> Person:
        figure = figure_of(person, measure)
        by = figure.last.by if figure is not None else "helped"
        return with_figure(person, measure, text, Taking(self._today(), by))

    def _on_typed(self, measure: str, text: str) -> None:
        """Draft a figure that can be read; what cannot be read yet is only said, and the table stays."""
        person = self._person()
        if person is None:
            return
        self._typing = (measure, text)
        after = self._with(person, measure, text)
        figure = figure_of(after, measure)
        if text.strip() and figure is not None and figure.last.length is not None:
            self._session.draft(after)
        self._say_problems()

    def _on_entered(self, measure: str, text: str) -> None:
        """Make the edit."""
        self._typing = None
        before = self._person()
        if before is None:
            return
        after = self._with(before, measure, text)
        name = assets.measures().name(measure).lower()
        verb = "Change" if text.strip() else "Take away"
        place = Place("fit", before.id, measure)
        self._session.apply(f"{verb} {name}", before, after, place=place)
        self._session.drop_draft(before.id)
        self.refresh()

    def _on_restored(self, _measure: str) -> None:
        self._typing = None
        if self._found is not None:
            self._session.drop_draft(self._found.person.id)
        self._say_problems()

    def _say_problems(self) -> None:
        """Say under the table what is doubtful about the figures, and mark their fields."""
        if self._found is None:
            return
        said = fit_rows.questions(self._found)
        if self._typing is not None:
            measure, text = self._typing
            name = assets.measures().name(measure)
            doubt = fit_rows.doubt_about(self._found.person, measure, text)
            said[measure] = doubt if text.strip() else f"{name}: empty. Enter takes this measurement away."
        for row in self.answer.board.regions.rows:
            row.field.set_problem(said.get(row.measure, ""))
        self.answer.board.say("\n".join(sentence for sentence in said.values() if sentence))

    # What the window asks of a page.

    def reveal(self, place: Place) -> None:
        """Go to the field or the region where an edit happened."""
        pattern, _, region = place.field.partition("/")
        if region.startswith("plan:"):
            part, _, view = region.removeprefix("plan:").partition("/")
            self._selection.choose_pattern(pattern)
            self._take_up(place.entry)
            self._show_view(pattern, view)
            self.open_part("plans")
            self.desk.come_to(part)
        elif region.startswith("view:"):
            self._selection.choose_pattern(pattern)
            self._show_view(pattern, region.removeprefix("view:"))
        elif region and pattern == self._selection.pattern:
            self._on_region_picked(region)
        elif (field := self.answer.board.regions.field(place.field)) is not None:
            field.setFocus()

    def copy_table(self) -> None:
        """Put the verdict and the ease table on the clipboard, as text and as HTML."""
        if self._found is None or self._found.fit is None:
            return
        title = f"{self._found.person.name}: {self._found.pattern.title}"
        data = QMimeData()
        data.setText(as_text(self._found.fit, title, self.words))
        data.setHtml(as_html(self._found.fit, title, self.words))
        QGuiApplication.clipboard().setMimeData(data)

    # Qt's own names from here on.

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Esc folds away the plans or the part of the panel that is open."""
        opened = [button for button in self.heading.parts.buttons.values() if button.isChecked()]
        if event.key() == Qt.Key.Key_Escape and opened:
            self.open_part("")
            opened[0].setFocus(Qt.FocusReason.OtherFocusReason)
        else:
            super().keyPressEvent(event)

    def showEvent(self, event: QShowEvent) -> None:
        """Catch up with what changed while another page was in front."""
        super().showEvent(event)
        if self._stale:
            self.refresh()
