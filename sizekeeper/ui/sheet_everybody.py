"""Save sheets for everybody: which sheets, whose, for which patterns, in which format, and where."""

from __future__ import annotations

import datetime as dt
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, cast

from PySide6.QtCore import QSignalBlocker, Signal
from PySide6.QtWidgets import QComboBox, QLineEdit, QPlainTextEdit, QProgressBar, QPushButton

from sizekeeper.errors import SizekeeperError
from sizekeeper.reports.export import FORMAT_WORDS, FORMATS, Format
from sizekeeper.reports.household_export import HOUSEHOLD_FORMATS, Gathering, gatherings
from sizekeeper.reports.snapshot import Snapshot
from sizekeeper.ui.import_reading import Reading
from sizekeeper.ui.lettering import Lettering, say
from sizekeeper.ui.paper_dialog import PaperDialog
from sizekeeper.ui.sheet_bar import paper_box, private_box
from sizekeeper.ui.sheet_batch import UNITS, Batch, Outcome, entries_of, names_in, settled, there_already, write_all
from sizekeeper.ui.sheet_everybody_form import arrange
from sizekeeper.ui.sheet_questions import ExistingQuestion, FolderQuestion
from sizekeeper.ui.sheet_ticks import TickList

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from PySide6.QtGui import QCloseEvent
    from PySide6.QtWidgets import QWidget

    from sizekeeper.reports.sheet import Paper
    from sizekeeper.reports.snapshot import Pairing
    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Change, Session
    from sizekeeper.ui.settings import Settings


class SheetsForEverybody(PaperDialog):
    """Ticks people and patterns and writes a sheet each, in the background.

    Signals:
        told(str): the sheets were written, or it was stopped; the sentence says how many and where.
        ended(): nothing is being written any more.
    """

    told = Signal(str)
    ended = Signal()

    def __init__(
        self,
        session: Session,
        selection: Selection,
        settings: Settings,
        parent: QWidget | None = None,
        *,
        today: Callable[[], dt.date] = dt.date.today,
    ) -> None:
        """Everybody is ticked, and the pattern in front."""
        super().__init__(parent)
        self._session, self._settings, self._today = session, settings, today
        self._outcome: Outcome | None = None
        self.writing: Reading | None = None
        self.people, self.patterns = TickList("People", self), TickList("Patterns", self)
        self.kind_choice = QComboBox(self)
        self.format_choice = QComboBox(self)
        self.paper_choice = paper_box(settings, self)
        self.private_choice = private_box(self)
        self.folder = QLineEdit(self)
        self.browse = QPushButton("C&hoose…", self)
        self.summary = Lettering("", "muted", self)
        self.trouble = Lettering("", "warning", self)
        self.details = QPlainTextEdit(self)
        self.progress = QProgressBar(self)
        self.stop = QPushButton("S&top", self)
        self.save = QPushButton("&Save", self)
        self.put_away = QPushButton("Close", self)
        self._fill({p.id for p in session.people()}, {selection.pattern})
        self._dress()
        arrange(self)
        self._connect()
        self._refresh()
        self.people.list.setFocus()

    def _fill(self, people: set[str], patterns: set[str]) -> None:
        everybody, every = self._session.people(), self._session.patterns()
        names = {p.id: p.name or "Somebody without a name" for p in everybody}
        self.people.fill(names, {p.id: " ".join(p.groups) for p in everybody}, people)
        titles = {p.id: p.title or "A pattern without a title" for p in every}
        self.patterns.fill(titles, {p.id: p.publisher for p in every}, patterns)

    def _dress(self) -> None:
        stored = self._settings.stored
        self.setWindowTitle("Save sheets for everybody – Sizekeeper")
        self.kind_choice.addItem("A decision sheet for each person and pattern", "each")
        self.kind_choice.addItem("A household sheet for each pattern", "household")
        self.kind_choice.setAccessibleName("Sheets")
        self._offer_formats(str(stored.value("sheet/format", "pdf")))
        self.format_choice.setAccessibleName("Format")
        self.folder.setText(str(stored.value("sheet/folder", str(Path.home()))))
        self.folder.setAccessibleName("Folder for the sheets")
        self.browse.setAccessibleName("Choose the folder for the sheets")
        self.details.setReadOnly(True)
        self.details.setAccessibleName("What could not be made")
        self.details.hide()
        self.progress.setAccessibleName("How many sheets are written")
        self.progress.hide()
        self.stop.hide()
        say(self.trouble, "")
        for button in (self.browse, self.stop, self.put_away):
            button.setAutoDefault(False)
        self.save.setDefault(True)

    def _connect(self) -> None:
        for ticks in (self.people, self.patterns):
            ticks.changed.connect(self._refresh)
        self.kind_choice.currentIndexChanged.connect(self._on_kind)
        self.format_choice.currentIndexChanged.connect(self._refresh)
        self.folder.textChanged.connect(self._refresh)
        self.browse.clicked.connect(self._browse)
        self.save.clicked.connect(self.start)
        self.stop.clicked.connect(self.stop_writing)
        self.put_away.clicked.connect(self.close)
        self._session.changed.connect(self._follow)

    def _follow(self, change: Change) -> None:
        """Somebody or something was added, renamed or hidden; what is new is not ticked."""
        if change.kinds & {"person", "pattern"} and self.writing is None:
            self._fill(set(self.people.ticked), set(self.patterns.ticked))
        self._refresh()

    def _offer_formats(self, kept: str) -> None:
        """The formats of the chosen kind of sheet, the one that was chosen before if it is among them."""
        with QSignalBlocker(self.format_choice):
            self.format_choice.clear()
            for form in HOUSEHOLD_FORMATS if self.of_household else FORMATS:
                self.format_choice.addItem(FORMAT_WORDS[form], form)
            self.format_choice.setCurrentIndex(max(0, self.format_choice.findData(kept)))

    def _on_kind(self) -> None:
        self._offer_formats(self.form)
        self._refresh()

    @property
    def of_household(self) -> bool:
        """Whether it is one sheet for all people together."""
        return str(self.kind_choice.currentData()) == "household"

    @property
    def form(self) -> Format:
        """The format."""
        return cast("Format", self.format_choice.currentData())

    def _jobs(self) -> tuple[Snapshot, Sequence[Pairing | Gathering]]:
        """Those ticked as they are now, each view with figures of its own once."""
        snapshot = Snapshot(self._session.values())
        ticked = {*self.people.ticked, *self.patterns.ticked}
        people = [person for person in snapshot.people() if person.id in ticked]
        patterns = [pattern for pattern in snapshot.patterns() if pattern.id in ticked]
        if self.of_household:
            return snapshot, gatherings(snapshot, tuple(people), patterns)
        return snapshot, snapshot.pairings(people, patterns)

    def _refresh(self) -> None:
        """Say how many sheets it will be; only what can be done is offered."""
        people, patterns = len(self.people.ticked), len(self.patterns.ticked)
        self.paper_choice.setEnabled(self.form == "pdf" and self.writing is None)
        self.private_choice.setEnabled(not self.of_household and self.writing is None)
        self.save.setEnabled(bool(people and patterns and self.folder.text().strip()) and self.writing is None)
        if self.writing is not None:
            return
        sheets = len(self._jobs()[1]) if people and patterns else 0
        self.save.setText("&Save 1 sheet" if sheets == 1 else f"&Save {sheets} sheets" if sheets else "&Save")
        if not sheets:
            self.summary.setText("Tick at least one person and one pattern.")
        else:
            whose = "the pattern" if self.of_household else "the person and the pattern"
            self.summary.setText(f"A file each, named after {whose}.")

    def _browse(self) -> None:
        folder = FolderQuestion.ask(self, self._folder())
        if folder is not None:
            self.folder.setText(str(folder))

    def _folder(self) -> Path:
        return Path(self.folder.text().strip()).expanduser()

    # Writing.

    def start(self) -> None:
        """Ask about files that are there already, then write in the background."""
        if self.writing is not None:
            return
        say(self.trouble, "")
        self.details.hide()
        folder = self._folder()
        snapshot, jobs = self._jobs()
        entries = entries_of(jobs, self.form, private=self.private_choice.isChecked())
        try:
            names = names_in(folder)
        except SizekeeperError as error:
            say(self.trouble, str(error))
            self.folder.setFocus()
            return
        there = there_already(entries, names)
        answer = ExistingQuestion.ask(self, there, len(entries)) if there else "number"
        if answer is None:
            return
        kept = settled(entries, names, answer)
        self._outcome = Outcome(len(kept), folder, skipped=len(entries) - len(kept))
        self._begin(partial(write_all, self._batch(snapshot, folder), kept, self._outcome), len(kept))

    def _batch(self, snapshot: Snapshot, folder: Path) -> Batch:
        from sizekeeper.ui.plan_cards import per_change_cm  # noqa: PLC0415 - the window starts without plans

        return Batch(
            snapshot,
            folder,
            self.form,
            cast("Paper", self.paper_choice.currentData()),
            self._today(),
            {unit: self._settings.notation_for(unit) for unit in UNITS},
            {unit: self._settings.notation_in(unit) for unit in UNITS},
            private=self.private_choice.isChecked(),
            per_change_cm=per_change_cm(self._settings),
        )

    def _remember(self, folder: Path) -> None:
        self._settings.stored.setValue("sheet/folder", str(folder))
        self._settings.stored.setValue("sheet/format", self.form)

    def _begin(self, work: Callable[[Reading], object], total: int) -> None:
        self.writing = Reading(work)
        self.writing.progressed.connect(self._on_progress)
        self.writing.ended.connect(self._on_ended)
        self.progress.setRange(0, total)
        self.progress.setValue(0)
        self._show_writing(writing=True)
        self.summary.setText("Writing…")
        self.stop.setFocus()
        self.writing.start()

    def _show_writing(self, *, writing: bool) -> None:
        self.progress.setVisible(writing)
        self.stop.setVisible(writing)
        for widget in (self.people, self.patterns, self.kind_choice, self.format_choice, self.folder, self.browse):
            widget.setEnabled(not writing)
        self._refresh()

    def stop_writing(self) -> None:
        """Stop after the sheet that is being made; what is written stays."""
        if self.writing is not None:
            self.stop.setEnabled(False)
            self.summary.setText("Stopping…")
            self.writing.cancel()

    def _on_progress(self, done: int, total: int) -> None:
        self.progress.setValue(done)
        self.summary.setText(f"Writing sheet {min(done + 1, total)} of {total}…")

    def _on_ended(self) -> None:
        stopped = self.writing is not None and self.writing.cancelled
        self.writing = None
        self.stop.setEnabled(True)
        self._show_writing(writing=False)
        outcome = self._outcome
        if outcome is not None:
            if outcome.written:
                self._remember(outcome.folder)
            self.summary.setText(outcome.words(stopped=stopped))
            self.details.setPlainText("\n".join(outcome.left_out))
            self.details.setVisible(bool(outcome.left_out))
            self.told.emit(outcome.words(stopped=stopped))
        self.save.setFocus()
        self.ended.emit()

    # Qt's own names from here on.

    def reject(self) -> None:
        """Escape closes like the button does."""
        self.close()

    def closeEvent(self, event: QCloseEvent) -> None:
        """Stop writing; what is written stays."""
        self.stop_writing()
        event.accept()
