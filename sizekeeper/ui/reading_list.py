"""The list of measurements on the Person page: the eight that matter most, the filled ones, or all, in body order."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QRect, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QGridLayout, QPushButton, QScrollArea, QVBoxLayout, QWidget

from sizekeeper.assets import measures
from sizekeeper.ui import theme
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.reading_row import FIELD, NAME, OTHER, STATE, MeasureRow
from sizekeeper.ui.reading_words import PRIMARY

if TYPE_CHECKING:
    from sizekeeper.ui.person_desk import PersonDesk

_WIDEST = "100 7/8 in"


class _Sheet(QWidget):
    """The grid of rows, with thin rules between them and a wash behind the one in hand."""

    def __init__(self, desk: PersonDesk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.grid = QGridLayout(self)
        self.grid.setContentsMargins(0, 0, 0, 0)
        self.grid.setHorizontalSpacing(theme.spacing(1.25))
        self.grid.setVerticalSpacing(0)
        self.grid.setColumnStretch(STATE, 1)
        self.headings = {column: Lettering("", "note", self) for column in (NAME, FIELD, OTHER, STATE)}
        for column, heading in self.headings.items():
            heading.setWordWrap(False)
            self.grid.addWidget(heading, 0, column)
        self.headings[NAME].setText("Measurement")
        self.headings[STATE].setText("Measured")
        self.rows = [
            MeasureRow(measure, desk, self.grid, 1 + 2 * i, self)
            for i, measure in enumerate(m for m in measures() if m.use != "finished")
        ]
        self.more = QPushButton(self)
        self.more.setAutoDefault(True)  # Enter presses it, as it goes on through the fields
        last = 2 * len(self.rows) + 1
        self.grid.addWidget(self.more, last, NAME, 1, STATE - NAME + 1, Qt.AlignmentFlag.AlignLeft)
        self.grid.setRowStretch(last + 1, 1)
        self._space()

    def _space(self) -> None:
        for row in self.rows:
            row.space()
        self.grid.setColumnMinimumWidth(OTHER, self.fontMetrics().horizontalAdvance(_WIDEST))
        self.grid.setRowMinimumHeight(2 * len(self.rows) + 1, theme.spacing(5))

    def band(self, row: MeasureRow) -> QRect:
        """Where a row stands, across the whole sheet, with its message."""
        top, below = row.name.geometry().top(), row.name.geometry().bottom()
        if row.message.isVisibleTo(self):
            below = row.message.geometry().bottom()
        return QRect(0, top, self.width(), below - top + 1)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the rules, and the wash behind the row in hand."""
        painter = QPainter(self)
        rule = theme.rule_colour(self.palette())
        for row in self.rows:
            if not row.name.isVisibleTo(self):
                continue
            band = self.band(row)
            if row.measure.id == self._desk.measure:
                painter.fillRect(band, theme.accent_wash(self.palette()))
            painter.fillRect(QRect(0, band.top(), self.width(), 1), rule)

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if theme.font_changed(event) and hasattr(self, "rows"):
            self._space()


class ReadingList(QWidget):
    """All rows in a page that scrolls, and the way to the measures not shown.

    Signals:
        left_at_top(): the first row asks for the field before it.
    """

    left_at_top = Signal()

    def __init__(self, desk: PersonDesk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._all = False
        self.sheet = _Sheet(desk, self)
        self.rows = {row.measure.id: row for row in self.sheet.rows}
        self._visible: tuple[str, ...] = ()
        self.more = self.sheet.more
        self._area = QScrollArea(self)
        self._area.setWidgetResizable(True)
        self._area.setFrameShape(QScrollArea.Shape.NoFrame)
        self._area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._area.setWidget(self.sheet)
        self._area.viewport().setAutoFillBackground(False)
        self.sheet.setAutoFillBackground(False)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self._area, 1)
        self._connect()

    def _connect(self) -> None:
        self.more.clicked.connect(self.toggle)
        for row in self.sheet.rows:
            row.stepped.connect(self._on_stepped)
        self._desk.measure_chosen.connect(self._keep_in_view)
        self._area.verticalScrollBar().rangeChanged.connect(self._keep_in_view)

    @property
    def showing_all(self) -> bool:
        """Whether every measure of the body is listed."""
        return self._all

    def toggle(self) -> None:
        """List every measure of the body, or only those that matter most and the filled ones."""
        self._all = not self._all
        self._arrange(keep=False)
        if self.more.hasFocus() and self._desk.measure in self._visible:
            self.rows[self._desk.measure].field.setFocus(Qt.FocusReason.TabFocusReason)

    def refresh(self) -> None:
        """Show the person's figures as they are now."""
        person = self._desk.person
        if person is None:
            return
        for row in self.sheet.rows:
            row.refresh()
        self.sheet.headings[FIELD].setText(f"Figure, {person.unit}")
        self.sheet.headings[OTHER].setText("Also")
        self._arrange(keep=True)

    def switched(self) -> None:
        """Another person: list what matters most and what she has."""
        self._all = False
        self._visible = ()
        self.refresh()

    def finish(self) -> None:
        """Make the edit of a figure that is being typed."""
        for row in self.sheet.rows:
            row.field.finish()

    def go_to(self, measure: str) -> bool:
        """Bring a measure's field into view and put the cursor there; False for an unknown measure."""
        row = self.rows.get(measure)
        if row is None:
            return False
        if measure not in self._visible:
            self._all = True
            self._arrange(keep=True)
        row.field.setFocus(Qt.FocusReason.ShortcutFocusReason)
        return True

    def first(self) -> str:
        """The measure at which to start: the first shown without a figure, else the first."""
        empty = (m for m in self._visible if not self.rows[m].filled)
        return next(empty, self._visible[0] if self._visible else "")

    def _arrange(self, *, keep: bool) -> None:
        """Show the rows that belong in the list; with `keep`, none in the list leaves it while one types."""
        stays = set(self._visible) if keep else set()
        wanted = tuple(m for m, row in self.rows.items() if self._all or m in PRIMARY or row.filled or m in stays)
        if wanted != self._visible:
            self._visible = wanted
            for measure, row in self.rows.items():
                row.set_shown(shown=measure in wanted)
        hidden = len(self.rows) - len(wanted)
        self.more.setText(
            "Show only the &usual and the filled ones" if self._all else f"Show all {len(self.rows)} meas&urements"
        )
        self.more.setVisible(self._all or hidden > 0)
        self.sheet.update()

    def _on_stepped(self, row: MeasureRow, step: int) -> None:
        place = self._visible.index(row.measure.id) + step
        if place < 0:
            self.left_at_top.emit()
        elif place < len(self._visible):
            self.rows[self._visible[place]].field.setFocus(Qt.FocusReason.TabFocusReason)
        elif self.more.isVisible():
            self.more.setFocus(Qt.FocusReason.TabFocusReason)
        else:
            row.field.selectAll()

    def _keep_in_view(self) -> None:
        """Scroll to the row in hand, also when rows above it came or went."""
        row = self.rows.get(self._desk.measure)
        if row is not None and row.name.isVisibleTo(self.sheet):
            self._area.ensureWidgetVisible(row.field, 0, theme.spacing(5))
        self.sheet.update()
