"""One chart of a pattern: its heading and unit, the grid, and below it what is to know of the current cell."""

from __future__ import annotations

from typing import TYPE_CHECKING, cast

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QMenu, QVBoxLayout, QWidget

from sizekeeper.core import chart_edit as edit
from sizekeeper.core.chart_doubts import Doubt, Remedy, doubts, pair_doubts
from sizekeeper.errors import ChartError
from sizekeeper.ui import theme
from sizekeeper.ui.chart_actions import ChartActions
from sizekeeper.ui.chart_doubt_list import DoubtList
from sizekeeper.ui.chart_grid import ChartGrid
from sizekeeper.ui.chart_model import ChartModel
from sizekeeper.ui.chart_unit_question import UNITS, UnitQuestion
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.pattern_link import Link
from sizekeeper.ui.person_fields import CalmCombo
from sizekeeper.ui.selection import Place

if TYPE_CHECKING:
    from typing import Literal

    from sizekeeper.core.chart import Chart
    from sizekeeper.core.measure import Measures
    from sizekeeper.ui.session import Session

HEADINGS = {"body": "Body chart", "finished": "Finished measurements"}
NOTES = {
    "body": "The body each size is drafted for, as the envelope prints it.",
    "finished": "The garment itself, measured all round; on the envelope, the instructions or the pieces.",
}
FIRST_STEPS = {
    "body": "Type the two or three sizes you might cut in the first row; Tab goes on. Then type the figures.",
    "finished": "Type the sizes in the first row, then the garment's figures. Leave empty what is not printed.",
}


class ChartPanel(QWidget):
    """A chart that is typed, with its edits sent to the session.

    Signals:
        sizes_wanted(): the sizes of the other chart should be taken over.
    """

    sizes_wanted = Signal()

    def __init__(self, session: Session, chart: Chart, measures: Measures, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._kind = chart.kind
        self._asked: Literal["cm", "in", "mm"] = "cm"
        self.model = ChartModel(chart, measures, self)
        self.grid = ChartGrid(self.model)
        self.grid.setAccessibleName(HEADINGS[chart.kind])
        self.actions_ = ChartActions(self.grid)
        self._body: Chart | None = None
        self._build()
        self.model.edited.connect(self.apply)
        self.model.typed.connect(self._on_typed)
        self.model.refused.connect(self._on_refused)
        self.grid.said.connect(self.line.speak)
        self.grid.measure_named.connect(self._on_measure_named)
        self.grid.cell_changed.connect(self._on_cell)
        self.doubts.shown.connect(self._on_doubt_shown)
        self.doubts.mended.connect(self._on_mended)

    def _build(self) -> None:
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(theme.spacing(0.5))
        layout.addLayout(self._heading_row())
        layout.addLayout(self._links_row())
        self.top = QVBoxLayout()
        layout.addLayout(self.top)
        layout.addLayout(self._first_row())
        layout.addWidget(self.grid)
        self.line = Lettering("", "muted")
        layout.addWidget(self.line)
        self.doubts = DoubtList("Worth a second look")
        layout.addWidget(self.doubts)

    def _heading_row(self) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setSpacing(theme.spacing(2))
        row.addWidget(Lettering(HEADINGS[self._kind], "part"))
        row.addWidget(Lettering(NOTES[self._kind], "muted"), 1)
        self.unit = CalmCombo(f"Unit of the {HEADINGS[self._kind].lower()}")
        self.unit.setToolTip("The unit of figures typed without one")
        for unit, name in UNITS.items():
            self.unit.addItem(f"in {name}", unit)
        self.unit.activated.connect(self._on_unit)
        row.addWidget(self.unit)
        return row

    def _links_row(self) -> QHBoxLayout:
        self.links = QHBoxLayout()
        self.links.setSpacing(theme.spacing(1))
        name = HEADINGS[self._kind].lower()
        self.add_size = Link("Add size", f"Add size to the {name}")
        self.add_size.clicked.connect(self.actions_.add_size.trigger)
        self.add_measure = Link("Add measure", f"Add measure to the {name}")
        self.add_measure.clicked.connect(self.actions_.add_measure.trigger)
        self.fill = Link("Fill right…", f"Fill right in the {name}")
        self.fill.clicked.connect(self.actions_.fill.trigger)
        self.more = Link("More", f"More for the {name}")
        menu = QMenu(self.more)
        menu.aboutToShow.connect(self._on_menu)
        self.more.setMenu(menu)
        for widget in (self.add_size, self.add_measure, self.fill, self.more):
            self.links.addWidget(widget)
        self.links.addStretch(1)
        return self.links

    def _first_row(self) -> QVBoxLayout:
        """What to do first, while the chart has no sizes."""
        rows = QVBoxLayout()
        rows.setSpacing(theme.spacing(0.5))
        self.first_steps = Lettering(FIRST_STEPS[self._kind], "plain")
        self.same_sizes = Link("Same sizes as the body chart")
        self.same_sizes.clicked.connect(self.sizes_wanted)
        rows.addWidget(self.first_steps)
        rows.addWidget(self.same_sizes, 0, Qt.AlignmentFlag.AlignLeft)
        return rows

    @property
    def chart(self) -> Chart:
        """The chart shown, without what is being typed."""
        return self.model.chart

    def show_chart(self, chart: Chart, body: Chart | None = None, *, knit: bool = False) -> None:
        """Show a chart.

        Args:
            chart: the chart.
            body: the pattern's body chart, where the chart is the finished one and is compared with it.
            knit: whether the fabric stretches, so that the garment may be smaller than the body.
        """
        self._body = body
        self.model.set_editable(not self._session.read_only)
        self.model.show(chart)
        self.unit.setCurrentIndex(self.unit.findData(chart.unit))
        writable = self.model.editable
        for widget in (self.add_size, self.add_measure, self.unit):
            widget.setEnabled(writable)
        self.first_steps.setVisible(writable and not chart.sizes)
        self.same_sizes.setVisible(writable and not chart.sizes and body is not None and bool(body.sizes))
        self._look_over(chart, body, knit=knit)
        self._on_cell()

    def _look_over(self, chart: Chart, body: Chart | None, *, knit: bool) -> None:
        found = doubts(chart, self.model.measures, body)
        if body is not None and not edit.is_blank(chart):
            found += [Doubt("pair", says) for says in pair_doubts(body, chart, self.model.measures, knit=knit)]
        self.doubts.show_doubts(found, mendable=self.model.editable)

    def apply(self, text: str, after: Chart, field: str) -> None:
        """Make an edit of the chart; a chart that is not in the library yet comes into it."""
        before = self._session.committed(after.id)
        self._session.apply(text, before, after, place=Place("pattern", after.pattern, field))

    def _on_typed(self, drafted: Chart | None) -> None:
        if self._session.committed(self.chart.id) is None:
            return
        if drafted is None:
            self._session.drop_draft(self.chart.id)
        else:
            self._session.draft(drafted)

    def _on_refused(self, sentence: str) -> None:
        self.line.speak(sentence, "warning")

    def _on_cell(self) -> None:
        """Say what is wrong with the current cell, or what its figure is in the other unit."""
        index = self.grid.current()
        problem = self.model.problem(index)
        if problem:
            self.line.speak(f"{problem} The text is kept; the figure counts as missing.", "warning")
        else:
            self.line.speak(self.model.says(index), "muted")
        self.actions_.enable()
        self.fill.setEnabled(self.actions_.fill.isEnabled())

    def _on_menu(self) -> None:
        self.actions_.put_into(self.more.menu())

    def _on_measure_named(self, row: int, measure: str, label: str) -> None:
        """Give a row its measure, or add one."""
        chart, name = self.chart, label or self.model.measures.name(measure)
        try:
            if row >= len(chart.rows):
                text, after = f"Add {name.lower()}", edit.with_row_added(chart, measure, label)
            else:
                text = f"Rename {self.model.row_name(row).lower()}"
                after = edit.with_row_renamed(chart, row, measure, label)
        except ChartError as error:
            self.grid.refuse_name(str(error))
            return
        if after != chart:
            self.apply(text, after, f"{chart.kind}|{chart.view}|{measure}|")
        self.grid.take_name(row)

    def _on_unit(self, index: int) -> None:
        """Read the figures in another unit, after asking where there are any."""
        unit = cast("Literal['cm', 'in', 'mm']", self.unit.itemData(index))
        if unit == self.chart.unit:
            return
        self._asked = unit
        if edit.is_blank(self.chart):
            self._read_in_unit()
            return
        self.unit.setCurrentIndex(self.unit.findData(self.chart.unit))
        question = UnitQuestion.ask(self.chart, unit, parent=self.window())
        question.agreed.connect(self._read_in_unit)

    def _read_in_unit(self) -> None:
        text = f"Read the figures as {UNITS[self._asked]}"
        self.apply(text, edit.with_unit(self.chart, self._asked), f"{self.chart.kind}|{self.chart.view}||")
        if not edit.is_blank(self.chart):
            self.line.speak(f"The figures are now read as {UNITS[self._asked]}.", "muted")

    def _on_doubt_shown(self, doubt: Doubt) -> None:
        self.grid.setFocus(Qt.FocusReason.OtherFocusReason)
        self.grid.go_to(self.model.index((doubt.row or 0) + 1, doubt.column or 0))

    def _on_mended(self, doubt: Doubt, remedy: Remedy) -> None:
        chart = self.chart
        if remedy.kind == "turn":
            self.apply("Turn the sizes round", edit.with_sizes_turned(chart), f"{chart.kind}|{chart.view}||")
            return
        row = doubt.row or 0
        field = self.model.field(self.model.index(row + 1, doubt.column or 0))
        name = self.model.row_name(row).lower()
        if remedy.kind == "cell":
            after = edit.with_cell(chart, row, doubt.column or 0, remedy.cell)
            self.apply(f"Change {name} {chart.sizes[doubt.column or 0].label}", after, field)
        else:
            words = "half the girth" if remedy.kind == "half" else "the whole girth"
            self.apply(f"Read {name} as {words}", edit.with_written_as(chart, row, remedy.kind), field)
