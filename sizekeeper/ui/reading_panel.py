"""Beside the list: where the tape goes for the measure in hand, how to take it, and all its readings."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtWidgets import QBoxLayout, QHBoxLayout, QLabel, QScrollArea, QVBoxLayout, QWidget

from sizekeeper.assets import measures
from sizekeeper.core.notation import show
from sizekeeper.core.reading_edit import figure_of, read_text, with_further
from sizekeeper.ui import reading_words as words
from sizekeeper.ui import theme
from sizekeeper.ui.figure_view import FigureView
from sizekeeper.ui.lettering import Lettering, Rule
from sizekeeper.ui.person_fields import DraftField
from sizekeeper.ui.reading_form import ReadingForm
from sizekeeper.ui.reading_model import ReadingModel
from sizekeeper.ui.reading_table import ReadingTable

if TYPE_CHECKING:
    from PySide6.QtGui import QKeyEvent, QResizeEvent

    from sizekeeper.core.measure import Measure
    from sizekeeper.core.person import Reading
    from sizekeeper.ui.person_desk import PersonDesk

_FIGURE_BESIDE_HELP = 52
_TABLE_BESIDE_FORM = 74
"""Steps of spacing from which two parts stand side by side; the table's columns need more room than the figure."""


class ReadingPanel(QScrollArea):
    """Help and history for the measure in hand.

    Signals:
        left(str): Esc asks to go back to a measure's field in the list.
    """

    left = Signal(str)

    def __init__(self, desk: PersonDesk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._page = QWidget()
        self.figure = FigureView(self._page)
        self.title = Lettering("", "part", self._page)
        self.how = Lettering("", "plain", self._page)
        self.iso = Lettering("", "note", self._page)
        self.typing = Lettering("", "muted", self._page)
        self.model = ReadingModel(desk, self)
        self.table = ReadingTable(self.model, self._page)
        self.median = Lettering("", "plain", self._page)
        self.further = DraftField("Another figure of the same day", self._page)
        self.further_says = Lettering("", "muted", self._page)
        self.form = ReadingForm(desk, self._page)
        self._lay()
        self._connect()

    def _lay(self) -> None:
        self.setWidgetResizable(True)
        self.setFrameShape(QScrollArea.Shape.NoFrame)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        help_column = QVBoxLayout()
        for label in (self.title, self.how, self.iso, self.typing):
            help_column.addWidget(label)
            help_column.setSpacing(theme.spacing())
        help_column.addStretch(1)
        self._upper = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        self._upper.addWidget(self.figure, 3)
        self._upper.addLayout(help_column, 2)
        self._lower = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        self._lower.addLayout(self._history(), 5)
        self._lower.addWidget(self.form, 4, Qt.AlignmentFlag.AlignTop)
        for part in (self._upper, self._lower):
            part.setSpacing(theme.spacing(3))
        column = QVBoxLayout(self._page)
        column.setContentsMargins(0, 0, theme.spacing(), 0)
        column.setSpacing(theme.spacing(1.5))
        column.addLayout(self._upper)
        self._line = Rule(self._page)
        column.addWidget(self._line)
        column.addLayout(self._lower)
        column.addStretch(1)
        self.setWidget(self._page)
        self._page.setAutoFillBackground(False)
        self.viewport().setAutoFillBackground(False)

    def _history(self) -> QVBoxLayout:
        """The table of readings, their median, and the field for one more."""
        column = QVBoxLayout()
        column.setSpacing(theme.spacing())
        self._again = QLabel("Measure a&gain:", self._page)
        self._again.setBuddy(self.further)
        self.further.setFixedWidth(self.further.fontMetrics().averageCharWidth() * 13)
        row = QHBoxLayout()
        row.setSpacing(theme.spacing())
        for widget in (self._again, self.further, self.further_says):
            row.addWidget(widget)
        row.setStretch(2, 1)
        column.addWidget(self.table)
        column.addWidget(self.median)
        column.addLayout(row)
        column.addStretch(1)
        return column

    def _connect(self) -> None:
        self._desk.measure_chosen.connect(self.show_measure)
        self._desk.taking_changed.connect(self.refresh)
        self.table.row_chosen.connect(self._on_row)
        self.table.unwanted.connect(self.form.take_away)
        self.table.left.connect(self._on_left)
        self.form.reading_changed.connect(self._on_reading_changed)
        self.further.typed.connect(self._on_further_typed)
        self.further.entered.connect(self._on_further)
        self.further.restored.connect(self._on_further_restored)

    @property
    def measure(self) -> Measure | None:
        """The measure in hand."""
        known = measures()
        return next((m for m in known if m.id == self._desk.measure), None)

    def show_measure(self, _measure: str = "") -> None:
        """Show the help and the readings of the measure in hand."""
        measure = self.measure
        self.figure.show_measure(measure.id if measure else "")
        self.title.setText(measure.name if measure else "")
        self.how.setText(measure.how if measure else "")
        self.iso.setText(words.iso_words(measure) if measure else "")
        self.iso.setVisible(bool(self.iso.text()))
        self.further.put_text("")
        self.further_says.setText("")
        self.refresh()
        self.table.choose_row(0)
        self._on_row(self.table.currentIndex().row())

    def refresh(self) -> None:
        """Show the readings as they are now; the chosen one stays chosen."""
        person, measure = self._desk.person, self.measure
        if person is None or measure is None:
            return
        row = self.table.currentIndex().row()
        self.model.show_measure(measure.id)
        figure = figure_of(person, measure.id)
        for part in (self.table, self.form, self._again, self.further, self.further_says, self._line):
            part.setVisible(figure is not None)
        self.table.updateGeometry()
        if figure is not None and not self.table.currentIndex().isValid():
            self.table.choose_row(min(max(row, 0), self.model.rowCount() - 1))
        self.median.setText(words.median_sentence(figure, self._desk) if figure else "")
        self.median.setVisible(bool(self.median.text()))
        by = figure.last.by if figure else self._desk.taking.by
        said = (words.typing_sentence(person, measure.id, self._desk), words.tolerance_words(measure, by, self._desk))
        self.typing.setText(" ".join(s for s in said if s))
        self.further.setReadOnly(self._desk.read_only)
        self._on_row(self.table.currentIndex().row())

    def finish(self) -> None:
        """Make the edit of what is being typed."""
        self.further.finish()
        self.form.finish()

    def _on_row(self, row: int) -> None:
        self.form.show_reading(self.model.reading(row))

    def _on_reading_changed(self, reading: Reading) -> None:
        """A reading may stand in another row after its day was changed: it stays the chosen one."""
        self.table.choose_row(self.model.row_of(reading))

    def _on_further_typed(self, text: str) -> None:
        person, measure = self._desk.person, self.measure
        if person is not None and measure is not None:
            self._desk.draft(with_further(person, measure.id, text, self._desk.taking))
            length, _ = read_text(text, person.unit)
            self.further_says.speak(
                show(length.exact_cm, self._desk.other_notation(length.unit)) if length else "", "muted"
            )

    def _on_further(self, text: str) -> None:
        person, measure = self._desk.person, self.measure
        if person is None or measure is None:
            return
        if text.strip():
            after = with_further(person, measure.id, text, self._desk.taking)
            self._desk.edit(f"Measure {measure.name.lower()} again", after, measure.id)
            self.table.choose_row(self.model.row_of(after.readings[-1]))
            length, why = read_text(text, person.unit)
            self.further_says.speak("" if length else f"{why}. {words.MENDED}", "warning")
        self.further.put_text("")

    def _on_further_restored(self) -> None:
        self._desk.restore()
        self.further_says.setText("")

    def _on_left(self) -> None:
        self.left.emit(self._desk.measure)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Esc goes back to the list."""
        if event.key() == Qt.Key.Key_Escape:
            self._on_left()
        else:
            super().keyPressEvent(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Stand side by side where there is room, else one below the other."""
        super().resizeEvent(event)
        for part, needed in ((self._upper, _FIGURE_BESIDE_HELP), (self._lower, _TABLE_BESIDE_FORM)):
            wide = self.viewport().width() >= theme.spacing(needed)
            part.setDirection(QBoxLayout.Direction.LeftToRight if wide else QBoxLayout.Direction.TopToBottom)

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if theme.font_changed(event) and hasattr(self, "further"):
            self.further.setFixedWidth(self.further.fontMetrics().averageCharWidth() * 13)
