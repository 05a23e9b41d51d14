"""What came of a make: how far it is, how it turned out, how it was worn region by region, and what to do next time."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, get_args

from PySide6.QtCore import QEvent, Signal
from PySide6.QtGui import QFontMetricsF
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from sizekeeper.core.make import Felt
from sizekeeper.core.make_words import FELT_WORDS, PROGRESS_WORDS
from sizekeeper.core.measure import REGION_ORDER
from sizekeeper.ui import theme
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.person_fields import CalmCombo, DayField, DraftNotes
from sizekeeper.ui.tab_order import one_after_the_other

if TYPE_CHECKING:
    import datetime as dt
    from collections.abc import Collection

    from sizekeeper.core.make import Make
    from sizekeeper.core.wording import Wording

_LINES = 3


class MakeOutcome(QWidget):
    """The fields of a make. What they do to it comes out as an edit.

    Signals:
        progress_chosen(str): how far it is.
        edited(str, str, object): the name of an edit, its field, and the make after it.
        drafted(object): the make while somebody types.
        restored(): Esc put a text back.
    """

    progress_chosen = Signal(str)
    edited = Signal(str, str, object)
    drafted = Signal(object)
    restored = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        """Without a make."""
        super().__init__(parent)
        self._make: Make | None = None
        self.progress = CalmCombo("How far it is", self)
        for progress, words in PROGRESS_WORDS.items():
            self.progress.addItem(words.capitalize(), progress)
        self.day = DayField("Finished on", self)
        self._day_name = Lettering("on", "plain", self)
        self.outcome = DraftNotes("How it turned out", self)
        self.next_time = DraftNotes("Next time", self)
        self.worn = {measure: self._felt(measure) for measure in REGION_ORDER}
        self._worn_heading = Lettering("How it was worn", "muted", self)
        self._worn_names = {measure: Lettering("", "plain", self) for measure in REGION_ORDER}
        self._lay_out()
        self._connect()
        self._space()

    def _felt(self, measure: str) -> CalmCombo:
        box = CalmCombo(measure, self)
        box.addItem("not said", "")
        for felt, words in FELT_WORDS.items():
            box.addItem(words, felt)
        box.activated.connect(self._on_felt)
        return box

    def _lay_out(self) -> None:
        column = self._column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        first = QHBoxLayout()
        for widget in (self.progress, self._day_name, self.day):
            first.addWidget(widget)
        first.addStretch(1)
        column.addWidget(Lettering("What came of it", "small heading", self))
        column.addLayout(first)
        column.addWidget(Lettering("How it turned out", "muted", self))
        column.addWidget(self.outcome)
        column.addWidget(self._worn_heading)
        self._grid = QGridLayout()
        for row, measure in enumerate(REGION_ORDER):
            self._grid.addWidget(self._worn_names[measure], row, 0)
            self._grid.addWidget(self.worn[measure], row, 1)
        self._grid.setColumnStretch(2, 1)
        column.addLayout(self._grid)
        column.addWidget(Lettering("Next time", "muted", self))
        column.addWidget(self.next_time)
        column.addStretch(1)
        one_after_the_other(self.progress, self.day, self.outcome, *self.worn.values(), self.next_time)

    def _connect(self) -> None:
        self.progress.activated.connect(self._on_progress)
        self.day.day_entered.connect(self._on_day)
        self.outcome.typed.connect(self._on_outcome_typed)
        self.outcome.entered.connect(self._on_outcome)
        self.next_time.typed.connect(self._on_next_typed)
        self.next_time.entered.connect(self._on_next)
        for notes in (self.outcome, self.next_time):
            notes.restored.connect(self.restored)

    def field(self, name: str) -> QWidget | None:
        """The field of a name that an edit carries; None where there is none such."""
        fields = {"progress": self.progress, "outcome": self.outcome, "next_time": self.next_time, "day": self.day}
        return fields.get(name) or self.worn.get(name.removeprefix("worn "))

    def finish(self) -> None:
        """Make the edit of what is being typed, before another make is shown."""
        for notes in (self.outcome, self.next_time):
            notes.finish()

    def show_make(
        self, make: Make, measures: Collection[str], words: Wording, today: dt.date, *, read_only: bool
    ) -> None:
        """Show a make.

        Args:
            make: the make as last edited.
            measures: the regions that can have been worn well or badly.
            words: how figures and measures are said.
            today: the last day that can be chosen.
            read_only: whether nothing can be edited.
        """
        self._make = make
        self.progress.setCurrentIndex(self.progress.findData(make.progress))
        finished = make.finished_on is not None
        self.day.setVisible(finished)
        self._day_name.setVisible(finished)
        if make.finished_on is not None:
            self.day.show_day(make.finished_on, today)
        self.outcome.show_text(make.outcome)
        self.next_time.show_text(make.next_time)
        asked = () if make.open else measures  # what is not sewn was not worn either
        for measure, box in self.worn.items():
            self._show_felt(measure, box, make, words, shown=measure in make.worn or measure in asked)
        self._worn_heading.setVisible(bool(make.worn or asked))
        for widget in (self.progress, self.day, *self.worn.values()):
            widget.setEnabled(not read_only)
        for notes in (self.outcome, self.next_time):
            notes.setReadOnly(read_only)

    def _show_felt(self, measure: str, box: CalmCombo, make: Make, words: Wording, *, shown: bool) -> None:
        label, region = self._worn_names[measure], make.kept.regions.get(measure) if make.kept is not None else None
        ease = f", {words.length(region.worn_cm)} of ease" if region is not None and region.worn_cm is not None else ""
        label.setText(f"{words.name(measure)}{ease}")
        label.setWordWrap(False)
        box.setAccessibleName(f"How it was worn at {words.the(measure)}")
        box.setCurrentIndex(max(0, box.findData(make.worn.get(measure, ""))))
        for widget in (box, label):
            widget.setVisible(shown)

    def _on_progress(self) -> None:
        self.progress_chosen.emit(str(self.progress.currentData()))

    def _on_day(self, day: dt.date) -> None:
        if self._make is not None:
            self.edited.emit("Change the day it was finished", "day", replace(self._make, finished_on=day))

    def _on_felt(self) -> None:
        measure = next(at for at, box in self.worn.items() if box is self.sender())
        if self._make is not None:
            said = str(self.worn[measure].currentData())
            felt: Felt | None = next((each for each in get_args(Felt) if each == said), None)
            kept = {at: how for at, how in self._make.worn.items() if at != measure}
            now = kept if felt is None else {**kept, measure: felt}
            worn = {at: now[at] for at in REGION_ORDER if at in now}
            self.edited.emit("Say how it was worn", f"worn {measure}", replace(self._make, worn=worn))

    def _on_outcome_typed(self, text: str) -> None:
        if self._make is not None:
            self.drafted.emit(replace(self._make, outcome=text))

    def _on_outcome(self, text: str) -> None:
        if self._make is not None:
            self.edited.emit("Say how it turned out", "outcome", replace(self._make, outcome=text))

    def _on_next_typed(self, text: str) -> None:
        if self._make is not None:
            self.drafted.emit(replace(self._make, next_time=text))

    def _on_next(self, text: str) -> None:
        if self._make is not None:
            self.edited.emit("Note for next time", "next_time", replace(self._make, next_time=text))

    def _space(self) -> None:
        self._column.setSpacing(theme.spacing(0.75))
        self._grid.setHorizontalSpacing(theme.spacing(1.5))
        self._grid.setVerticalSpacing(theme.spacing(0.5))
        for notes in (self.outcome, self.next_time):
            notes.setFixedHeight(round(QFontMetricsF(notes.font()).lineSpacing() * _LINES + theme.spacing(1.5)))

    # Qt's own names from here on.

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if hasattr(self, "_grid") and theme.font_changed(event):
            self._space()
