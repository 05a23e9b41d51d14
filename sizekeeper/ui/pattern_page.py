"""The Pattern page: what the envelope says, its two charts typed like spreadsheets, and its pieces."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, Qt
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QScrollArea,
    QStackedLayout,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from sizekeeper import assets
from sizekeeper.core import chart_edit as edit
from sizekeeper.core.chart import Chart
from sizekeeper.core.pattern import Pattern
from sizekeeper.core.starting_rows import with_starting_rows
from sizekeeper.store.codec import new_id
from sizekeeper.ui import theme
from sizekeeper.ui.chart_model import SIZE_ROW
from sizekeeper.ui.chart_panel import ChartPanel
from sizekeeper.ui.empty_page import EmptyPage
from sizekeeper.ui.lettering import Lettering, Rule
from sizekeeper.ui.pattern_form import PatternForm
from sizekeeper.ui.pattern_template_link import TemplateLink
from sizekeeper.ui.pattern_templates import Template, with_template
from sizekeeper.ui.pattern_view_edits import ViewEdits
from sizekeeper.ui.pattern_views import ViewStrip
from sizekeeper.ui.pieces_desk import FIELD
from sizekeeper.ui.pieces_switch import CHARTS, PIECES, PiecesSwitch
from sizekeeper.ui.pieces_view import PiecesView
from sizekeeper.ui.selection import Place

if TYPE_CHECKING:
    from PySide6.QtGui import QShowEvent

    from sizekeeper.core.chart import ChartKind
    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Change, Session
    from sizekeeper.ui.settings import Settings

_WIDEST_FORM = 140
"""Steps of spacing; wider fields would lie too far apart."""


class PatternPage(QWidget):
    """One pattern. Typing the figures of the two or three sizes she might cut is the main job here."""

    def __init__(
        self, session: Session, selection: Selection, settings: Settings, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._session = session
        self._selection = selection
        self._settings = settings
        self._entry = selection.pattern
        self.view = ""
        self._behind = True
        self._unsaved: dict[tuple[str, str, str], Chart] = {}
        measures = assets.measures()
        self.switch = PiecesSwitch(self)  # first, so that Tab comes to it before the charts
        self.form = PatternForm(session)
        self.body = ChartPanel(session, Chart("", "", "body"), measures)
        self.finished = ChartPanel(session, Chart("", "", "finished"), measures)
        self.views = ViewStrip(after=self.finished.more)
        self.finished.top.addWidget(self.views)
        self.templates = TemplateLink(session)
        self.pieces = PiecesView(session, settings)
        self._lay()
        self._connect()

    def _lay(self) -> None:
        self._content = QWidget()
        self._column = QVBoxLayout(self._content)
        for part in (self.form, Rule(), self.body, Rule(), self.finished, Rule()):
            self._column.addWidget(part)
        self._column.addWidget(Lettering("Notes", "small heading"))
        self._column.addWidget(self.form.notes)
        self._column.addStretch(1)
        self.area = QScrollArea()
        self.area.setWidgetResizable(True)
        self.area.setFrameShape(QFrame.Shape.NoFrame)
        self.area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.area.setWidget(self._content)
        self.body.links.addWidget(self.templates)
        QWidget.setTabOrder(self.body.more, self.templates)
        self._stack = QStackedLayout(self)
        self._stack.addWidget(self._both_sides())
        empty = EmptyPage(
            "Which pattern?",
            "Choose a pattern on the left, or add one and type the two or three sizes you might cut.",
            "&Add a pattern",
            self,
        )
        self.add = empty.button
        self._stack.addWidget(empty)
        self._space()

    def _both_sides(self) -> QWidget:
        """The switch above the charts and the pieces."""
        both = QWidget(self)
        self._bar = QHBoxLayout()
        self._bar.addWidget(self.switch)
        self._bar.addStretch(1)
        self._sides = QStackedWidget(both)
        self._sides.addWidget(self.area)
        self._sides.addWidget(self.pieces)
        column = QVBoxLayout(both)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addLayout(self._bar)
        column.addWidget(self._sides, 1)
        return both

    def _space(self) -> None:
        margin = theme.spacing(3)
        self._bar.setContentsMargins(theme.spacing(1.75), theme.spacing(1), margin, 0)
        self._column.setContentsMargins(margin, theme.spacing(2), margin, margin)
        self._column.setSpacing(theme.spacing(2))
        self.form.setMaximumWidth(theme.spacing(_WIDEST_FORM))

    def _connect(self) -> None:
        self._selection.pattern_changed.connect(self._on_chosen)
        self._selection.page_wanted.connect(self._on_page_wanted)
        self._session.changed.connect(self._on_changed)
        self.add.clicked.connect(self.add_pattern)
        self.form.done.connect(self.start)
        self.finished.sizes_wanted.connect(self._on_sizes_wanted)
        self.views.chosen.connect(self.show_view)
        self.switch.currentChanged.connect(self._on_switched)
        self.pieces.allowance_wanted.connect(self._on_allowance_wanted)
        self.pieces.view_wanted.connect(self.show_view)
        self.templates.start_wanted.connect(self.use_template)
        self.templates.said.connect(self.body.line.speak)
        ViewEdits(self, self._session)
        for panel in (self.body, self.finished):
            panel.grid.cell_changed.connect(self._keep_cell_in_view)
            panel.grid.naming.connect(self._keep_field_in_view)

    @property
    def pattern(self) -> Pattern | None:
        """The pattern shown, as last edited."""
        value = self._session.committed(self._entry)
        return value if isinstance(value, Pattern) else None

    def chart(self, kind: ChartKind, view: str = "") -> Chart:
        """A chart of the pattern as last edited, or the one that will be when something is typed."""
        for drafted in self._session.charts(self._entry):
            committed = self._session.committed(drafted.id)
            if isinstance(committed, Chart) and committed.kind == kind and committed.view == view:
                return committed
        return self._chart_to_be(kind, view)

    def _chart_to_be(self, kind: ChartKind, view: str) -> Chart:
        """An empty chart with the measures that envelopes usually print for the garment."""
        pattern = self.pattern
        key = (self._entry, kind, view)
        entry = self._unsaved[key].id if key in self._unsaved else new_id()
        chart = Chart(entry, self._entry, kind, unit=pattern.unit if pattern else "cm", view=view)
        if pattern is not None:
            chart = with_starting_rows(chart, pattern.garment, child=pattern.child)
        self._unsaved[key] = chart
        return chart

    def start(self) -> None:
        """Put the cursor where typing goes on: the body chart's first size, or its first empty figure."""
        chart, grid = self.body.chart, self.body.grid
        holes = [(r, c) for r, row in enumerate(chart.rows) for c, cell in enumerate(row.cells) if not cell.text]
        row, column = (holes[0][0] + 1, holes[0][1]) if holes else (SIZE_ROW, 0)
        grid.setFocus(Qt.FocusReason.OtherFocusReason)
        grid.go_to(self.body.model.index(row, column))

    def add_pattern(self) -> None:
        """Add a pattern and go to its title."""
        pattern = Pattern(new_id(), "New pattern", unit=self._settings.unit)
        self._session.apply("Add pattern", None, pattern, place=Place("pattern", pattern.id, "title"))
        self._selection.choose_pattern(pattern.id)
        self.reveal(Place("pattern", pattern.id, "title"))

    def reveal(self, place: Place) -> None:
        """Put the cursor in the field or the cell in which an edit happened."""
        if self._behind:
            self._refresh()
        kind, _, rest = place.field.partition("|")
        self.switch.setCurrentIndex(PIECES if kind == FIELD else CHARTS)
        if kind == FIELD:
            self.pieces.reveal(rest)
            return
        if (field := self.form.field(place.field)) is not None:
            field.setFocus(Qt.FocusReason.OtherFocusReason)
            self.area.ensureWidgetVisible(field)
            if field is self.form.title:
                self.form.title.selectAll()
            return
        kind, view, measure, size = (place.field.split("|") + [""] * 4)[:4]
        panel = {"body": self.body, "finished": self.finished}.get(kind)
        if panel is not None:
            self.show_view(view if kind == "finished" else self.view)
            panel.grid.setFocus(Qt.FocusReason.OtherFocusReason)
            panel.grid.go_to(panel.model.index_of(measure, size))

    def finish(self) -> None:
        """Make the edit of whatever is being typed on this page."""
        self.form.finish()
        self.pieces.finish()
        for panel in (self.body, self.finished):
            panel.grid.finish()

    def show_view(self, view: str) -> None:
        """Show the finished figures of a view, "" for those of all views."""
        self.view = view
        self._refresh()

    def _on_chosen(self, entry: str) -> None:
        self.finish()
        self._entry = entry
        self.view = ""
        self._refresh()

    def _on_switched(self, side: int) -> None:
        """Show the charts, or the pieces."""
        self._sides.setCurrentIndex(side)
        self._refresh()

    def _on_allowance_wanted(self) -> None:
        self.reveal(Place("pattern", self._entry, "seam_allowance"))

    def _on_page_wanted(self, place: Place) -> None:
        if place.page == "pattern" and place.field and self._selection.pattern == self._entry:
            self.reveal(place)

    def _on_changed(self, change: Change) -> None:
        charts = {chart.id for chart in self._session.charts(self._entry)}
        shown = {self._entry, self.body.chart.id, self.finished.chart.id, self.pieces.desk.committed.id} | charts
        if change.ids & shown:
            self._refresh()

    def _refresh(self) -> None:
        """Show the pattern as it is now; while the page is not in front it waits."""
        if not self.isVisible():
            self._behind = True
            return
        self._behind = False
        pattern = self.pattern
        self._stack.setCurrentIndex(0 if pattern is not None else 1)
        self.add.setEnabled(not self._session.read_only)
        if pattern is None:
            return
        self.view = self.view if self.view in pattern.views else ""
        self.form.show_pattern(pattern)
        body = self.chart("body")
        self.body.show_chart(body)
        self.views.show_views(pattern.views, self.view, editable=not self._session.read_only)
        finished = self.chart("finished", self.view)
        self.finished.show_chart(finished, body, knit=pattern.knit)
        self.pieces.show_pattern(pattern.id, finished, body)
        self.switch.show_count(len(self.pieces.desk.committed.pieces))

    def _keep_cell_in_view(self) -> None:
        grid = self.body.grid if self.body.grid.hasFocus() else self.finished.grid
        if grid.hasFocus():
            rect = grid.visualRect(grid.current())
            at = grid.viewport().mapTo(self._content, rect.center())
            self.area.ensureVisible(at.x(), at.y(), 0, rect.height() * 2)

    def _keep_field_in_view(self, field: QWidget) -> None:
        self.area.ensureWidgetVisible(field, 0, field.height() * 2)

    def _on_sizes_wanted(self) -> None:
        """Take over the body chart's sizes in the finished chart."""
        after = edit.with_sizes_of(self.finished.chart, self.body.chart)
        self.finished.apply("Take over the body chart’s sizes", after, f"finished|{self.view}||")
        self.finished.grid.setFocus(Qt.FocusReason.OtherFocusReason)
        self.finished.grid.go_to(self.finished.model.index(1, 0))

    def saved(self, chart: Chart) -> Chart | None:
        """A chart as it stands in the library, None while it is not there yet."""
        value = self._session.committed(chart.id)
        return value if isinstance(value, Chart) else None

    def use_template(self, template: Template) -> None:
        """Give both charts the measures of a template, as one step."""
        pairs = []
        for panel in (self.body, self.finished):
            after = with_template(panel.chart, template, panel.model.measures)
            pairs.append((self.saved(panel.chart), after))
        place = Place("pattern", self._entry, "body|||")
        self._session.apply_all(f"Start from the template {template.title}", pairs, place=place)
        self.start()

    def showEvent(self, event: QShowEvent) -> None:
        """Catch up with what happened while the page was not in front."""
        super().showEvent(event)
        if self._behind:
            self._refresh()

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if theme.font_changed(event) and hasattr(self, "_column"):
            self._space()
