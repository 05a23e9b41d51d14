"""Finished girths summed up from the pieces, for patterns that print none, and their way into the finished chart."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction
from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from sizekeeper.assets import measures
from sizekeeper.core import chart_edit
from sizekeeper.core.flat import MEASURE_AT, Girth, girth, measured_row
from sizekeeper.core.notation import Notation, show
from sizekeeper.core.piece import Level
from sizekeeper.core.piece_words import LEVEL_NAMES
from sizekeeper.errors import PlanError
from sizekeeper.ui import theme
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.pattern_link import Link
from sizekeeper.ui.pattern_views import ALL_VIEWS
from sizekeeper.ui.person_fields import CalmCombo
from sizekeeper.ui.selection import Place

if TYPE_CHECKING:
    from PySide6.QtCore import QEvent

    from sizekeeper.core.chart import Chart, Size
    from sizekeeper.core.piece import Piece
    from sizekeeper.ui.pieces_desk import PiecesDesk

GIRTHS: tuple[Level, ...] = ("bust", "waist", "high_hip", "hip", "thigh", "sleeve", "wrist", "hem")
"""The levels at which a finished girth is worth knowing; the neck is judged as an opening."""
EXPLAINED = "Net widths times how often each piece goes round. Measure all pieces along the lines of one size."
NOTHING = "Type the widths of the pieces that lie beside each other at a level; here they become the finished girth."


@dataclass(frozen=True, slots=True)
class GirthLine:
    """One level: the girth, or why there is none, and whether the chart can take it."""

    level: Level
    girth: Girth | None
    says: str
    offer: str = ""


class GirthsPart(QWidget):
    """A line for each level at which a piece was measured.

    Signals:
        view_wanted(str): the girths of another view are wanted, "" for those that share one finished chart.
    """

    view_wanted = Signal(str)

    def __init__(self, desk: PiecesDesk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._finished: Chart | None = None
        self._body: Chart | None = None
        self._pieces: tuple[Piece, ...] = ()
        self.lines: tuple[GirthLine, ...] = ()
        self.size_box = CalmCombo("Size along whose lines the pieces were measured", self)
        self.size_box.activated.connect(self._on_size)
        self.view_box = CalmCombo("View whose pieces are counted", self)
        self.view_box.activated.connect(self._on_view)
        self._of = Lettering("measured in size", "plain", self)
        self.says = Lettering(EXPLAINED, "muted", self)
        self.rows: list[tuple[Level, Lettering, Lettering, Link]] = []
        self._lay()

    def _lay(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(theme.spacing(1))
        head = QHBoxLayout()
        head.setSpacing(theme.spacing(1))
        head.addWidget(Lettering("Finished girths from the pieces", "small heading", self))
        head.addStretch(1)
        self._of.setWordWrap(False)
        head.addWidget(self.view_box)
        head.addWidget(self._of)
        head.addWidget(self.size_box)
        column.addLayout(head)
        column.addWidget(self.says)
        self._grid = QGridLayout()
        self._grid.setHorizontalSpacing(theme.spacing(1.5))
        self._grid.setVerticalSpacing(theme.spacing(0.25))
        self._grid.setColumnStretch(1, 1)
        for number, level in enumerate(GIRTHS):
            name, words, link = Lettering("", "plain", self), Lettering("", "plain", self), Link("Add", "", self)
            name.setWordWrap(False)
            name.setText(f"{LEVEL_NAMES[level][0].upper()}{LEVEL_NAMES[level][1:]}")
            link.setProperty("level", level)
            link.clicked.connect(self._on_add)
            self.rows.append((level, name, words, link))
            for at, widget in enumerate((name, words, link)):
                self._grid.addWidget(widget, number, at)
        column.addLayout(self._grid)

    @property
    def chosen_size(self) -> str:
        """The label of the size whose lines were measured, the middle one until it is said; "" where there is none."""
        target = self._target()
        if target is None or not target.sizes:
            return ""
        said = self._desk.committed.measured_in
        at = chart_edit.size_named(target, said) if said else None
        return target.sizes[len(target.sizes) // 2 if at is None else at].label

    def _sizes(self) -> tuple[Size, ...]:
        target = self._target()
        return () if target is None else target.sizes

    def _target(self) -> Chart | None:
        """The finished chart, with the body chart's sizes where it has none of its own."""
        if self._finished is None or self._finished.sizes or self._body is None or not self._body.sizes:
            return self._finished
        return chart_edit.with_sizes_of(self._finished, self._body)

    def show_charts(self, finished: Chart, body: Chart) -> None:
        """Take the charts that girths can be added to; shown with the next `refresh`."""
        self._finished, self._body = finished, body

    def refresh(self) -> None:
        """Show the girths of the pieces as they are now."""
        labels = [size.label for size in self._sizes()]
        if [self.size_box.itemText(i) for i in range(self.size_box.count())] != labels:
            self.size_box.clear()
            self.size_box.addItems(labels)
        self.size_box.setCurrentText(self.chosen_size)
        self.size_box.setEnabled(self._desk.writable)
        self._pieces = self._desk.pieces_of(self._view)
        self._show_views()
        self.lines = tuple(self._line(level) for level in GIRTHS if self._measured(level))
        for widget in (self.size_box, self._of):
            widget.setVisible(bool(labels) and bool(self.lines))
        self.says.setText(f"{EXPLAINED} {self._counted()}".strip() if self.lines else NOTHING)
        found = {line.level: line for line in self.lines}
        for level, name, words, link in self.rows:
            line = found.get(level)
            name.setVisible(line is not None)
            words.setVisible(line is not None)
            link.setVisible(line is not None)
            if line is not None:
                words.speak(line.says, "plain" if line.girth is not None else "muted")
                link.setVisible(bool(line.offer) and self._desk.writable)
                link.setText(line.offer)
                link.setAccessibleName(f"{line.offer}: {LEVEL_NAMES[level]}")
                link.updateGeometry()

    @property
    def _view(self) -> str:
        return self._finished.view if self._finished is not None else ""

    def _show_views(self) -> None:
        """Offer the views where the pieces differ by them."""
        pattern = self._desk.pattern
        views = ("", *pattern.views) if pattern is not None else ("",)
        if tuple(self.view_box.itemData(at) for at in range(self.view_box.count())) != views:
            self.view_box.clear()
            for view in views:
                self.view_box.addItem(f"view {view}" if view else ALL_VIEWS, view)
        self.view_box.setCurrentIndex(self.view_box.findData(self._view))
        self.view_box.setVisible(any(piece.view for piece in self._desk.pieces.pieces) and len(views) > 1)

    def _counted(self) -> str:
        """Which pieces are counted where they differ by the view."""
        if self.view_box.isHidden():
            return ""
        own = dict.fromkeys(piece.view for piece in self._pieces if piece.view)
        if own:
            return f"Counted: the pieces of all views and those of view {' and '.join(own)}."
        return "Counted: only the pieces of all views. Choose a view to count its own too."

    def _measured(self, level: Level) -> bool:
        return any(piece.width(level) is not None and piece.times(level) for piece in self._pieces)

    def _line(self, level: Level) -> GirthLine:
        pieces, pattern = self._pieces, self._desk.pattern
        allowance = pattern.seam_allowance.exact_cm if pattern is not None and pattern.seam_allowance else None
        try:
            found = girth(pieces, level, allowance)
        except PlanError as error:
            return GirthLine(level, None, str(error))
        total = show(found.cm, self._desk.notation)
        names = {piece.id: piece for piece in pieces}
        parts = ", ".join(f"{_short(names[one])} × {times}" for one, times in found.of)
        return GirthLine(level, found, *self._printed(level, found, f"{total}   ({parts})"))

    def _printed(self, level: Level, found: Girth, says: str) -> tuple[str, str]:
        """What the chart says of it already, and what can be done."""
        chart = self._target()
        if chart is None or not chart.sizes:
            return says, ""
        row, at = chart.row(_measure(level)), chart_edit.size_named(chart, self.chosen_size) or 0
        printed = row.lows()[at] if row is not None else None
        if row is not None and not row.measured and any(cell.text for cell in row.cells):
            if printed is None:
                return f"{says}. The chart prints this measure for other sizes.", ""
            return f"{says}. The chart prints {show(printed, self._desk.notation)} for {self.chosen_size}.", ""
        if row is not None and row.measured and printed is not None:
            if abs(printed - float(found.cm)) < 1e-6:  # noqa: PLR2004 - equal, as everywhere in the arithmetic
                return f"{says}. It stands in the finished chart.", ""
            return says, f"Bring {self.chosen_size} up to date"
        return says, "Add to the finished chart"

    def _on_size(self) -> None:
        size = self.size_box.currentText()
        after = replace(self._desk.committed, measured_in=size)
        self._desk.apply(f"Pieces measured in size {size}", after, "measured_in")

    def _on_view(self) -> None:
        self.view_wanted.emit(str(self.view_box.currentData()))

    def _on_add(self) -> None:
        level: Level = self.sender().property("level")
        line = next((one for one in self.lines if one.level == level), None)
        if line is not None and line.girth is not None:
            self.add_to_chart(line.girth)

    def add_to_chart(self, found: Girth) -> None:
        """Put a girth into the finished chart, in a row that is marked as measured."""
        chart = self._target()
        if chart is None or self._finished is None:
            return
        size = chart_edit.size_named(chart, self.chosen_size)
        if size is None:
            return
        row = measured_row(chart, found, size, _text(found.cm, chart))
        measure = row.measure
        if not row.label and measure not in measures():
            row = replace(row, label=f"{LEVEL_NAMES[found.level].capitalize()}")
        rows = [row if one.measure == measure else one for one in chart.rows]
        after = replace(chart, rows=tuple(rows if chart.row(measure) else [*rows, row]))
        session = self._desk.session
        text = f"Add {LEVEL_NAMES[found.level]} to the finished chart"
        place = Place("pattern", chart.pattern, f"finished|{chart.view}|{measure}|{self.chosen_size}")
        session.apply(text, session.committed(chart.id), after, place=place)

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if theme.font_changed(event) and hasattr(self, "_grid"):
            self._grid.setHorizontalSpacing(theme.spacing(1.5))


def _measure(level: Level) -> str:
    return MEASURE_AT.get(level, level)


def _short(piece: Piece) -> str:
    return piece.name or "a piece without a name"


def _text(cm: Fraction, chart: Chart) -> str:
    """The girth as it is written in the chart, in its unit."""
    if chart.unit == "mm":
        return str(round(cm * 10))
    step = Fraction(1, 8) if chart.unit == "in" else Fraction(1, 10)
    return show(cm, Notation(chart.unit, step), unit=False)
