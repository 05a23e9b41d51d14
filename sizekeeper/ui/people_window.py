"""The window that imports people: the table as found at the left, the people as they will be at the right."""

from __future__ import annotations

import datetime as dt
from typing import TYPE_CHECKING, Literal

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from sizekeeper import assets
from sizekeeper.importing.people_open import PASTED
from sizekeeper.ui import theme
from sizekeeper.ui.import_leave_question import LeaveQuestion
from sizekeeper.ui.lettering import Lettering, Rule
from sizekeeper.ui.paper_dialog import PaperDialog
from sizekeeper.ui.pattern_link import Link
from sizekeeper.ui.people_bar import PeopleBar
from sizekeeper.ui.people_correcting import PeopleCorrecting
from sizekeeper.ui.people_sheet import PeopleSheet
from sizekeeper.ui.people_side import PeopleSide
from sizekeeper.ui.selection import Place
from sizekeeper.ui.thin_splitter import ThinSplitter
from sizekeeper.ui.undo_keys import redo_keys

if TYPE_CHECKING:
    from PySide6.QtGui import QCloseEvent

    from sizekeeper.importing.people_draft import PeopleDraft
    from sizekeeper.importing.question import Ask
    from sizekeeper.store.codec import Value
    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Change, Session

_NO_TABLE = (
    "No headings such as Name and Bust were found. Stand on them in the table and choose “These are the headings”."
)


class PeopleWindow(PaperDialog):
    """One table of people, corrected until it is right. Nothing comes into the library before Save.

    Signals:
        saved(str): the people were saved; the sentence says what that did.
    """

    saved = Signal(str)

    def __init__(
        self,
        draft: PeopleDraft,
        session: Session,
        selection: Selection,
        unit: Literal["cm", "in"] = "cm",
        parent: QWidget | None = None,
        *,
        today: dt.date | None = None,
    ) -> None:
        super().__init__(parent, Qt.WindowType.Window)
        self._session, self._selection = session, selection
        self._is_saved = False
        self._source = draft.name if draft.name == PASTED else f"“{draft.name}”"
        measures = assets.measures()
        day = today or dt.datetime.now().astimezone().date()
        self.correcting = PeopleCorrecting(draft, session, day, unit, self)
        self.sheet = PeopleSheet(measures, self)
        self.side = PeopleSide(measures, self)
        self.bar = PeopleBar(self.correcting, read_only=session.read_only, parent=self)
        self.summary = Lettering("", "muted", self)
        self.trouble = Lettering("", "warning", self)
        self.stop = QPushButton("Stop reading", self)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle(f"Import people from {self._source} – Sizekeeper")
        self._make_actions()
        self._arrange()
        self._connect()
        self._show()
        if draft.table is None or not self.side.questions.take_focus():
            self.sheet.grid.setFocus()

    @property
    def draft(self) -> PeopleDraft:
        """The reading that is shown."""
        return self.correcting.draft

    def _make_actions(self) -> None:
        stack = self.correcting.undo_stack
        self.undo, self.redo = stack.createUndoAction(self, "Undo"), stack.createRedoAction(self, "Redo")
        self.undo.setShortcuts(QKeySequence.StandardKey.Undo)
        self.redo.setShortcuts(redo_keys())
        self.save = QAction("Save", self)
        self.save.setShortcuts(QKeySequence.StandardKey.Save)
        self.save.triggered.connect(self.bar.save.click)
        self.addActions([self.undo, self.redo, self.save])
        self.back, self.forth = Link("Undo", parent=self), Link("Redo", parent=self)
        self.back.clicked.connect(self.undo.trigger)
        self.forth.clicked.connect(self.redo.trigger)
        stack.indexChanged.connect(self._on_step)
        self._on_step()

    def _on_step(self) -> None:
        """Undo and redo say what they would do."""
        stack = self.correcting.undo_stack
        for link, can, text in (
            (self.back, stack.canUndo(), stack.undoText()),
            (self.forth, stack.canRedo(), stack.redoText()),
        ):
            link.setEnabled(can)
            link.setToolTip(text)
            link.setAccessibleName(f"{link.text()}: {text}" if text else link.text())

    def _arrange(self) -> None:
        head = QHBoxLayout()
        title = Lettering(f"Import people from {self._source}", "title", self)
        title.setTextInteractionFlags(Qt.TextInteractionFlag.NoTextInteraction)
        title.setMinimumWidth(theme.spacing(20))
        head.addWidget(title, 1)
        for widget in (self.stop, self.back, self.forth):
            head.addWidget(widget)
        top = QVBoxLayout()
        for line in (self.summary, self.trouble):
            top.addWidget(line)
        top.insertLayout(0, head)
        top.setContentsMargins(theme.spacing(3), theme.spacing(2), theme.spacing(3), theme.spacing(1.5))
        top.setSpacing(theme.spacing(0.5))
        self.splitter = ThinSplitter(self)
        for stretch, part in ((1, self.sheet), (1, self.side)):
            self.splitter.addWidget(part)
            self.splitter.setStretchFactor(self.splitter.count() - 1, stretch)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addLayout(top)
        column.addWidget(self.splitter, 1)
        column.addWidget(Rule(self))
        column.addWidget(self.bar)
        self.stop.setAutoDefault(False)
        self.stop.hide()
        self.resize(theme.spacing(150), theme.spacing(92))
        self.splitter.setSizes([theme.spacing(76), theme.spacing(74)])

    def _connect(self) -> None:
        correcting, sheet, side = self.correcting, self.sheet, self.side
        sheet.typed.connect(correcting.type_cell)
        sheet.leave_wanted.connect(correcting.leave_out)
        sheet.back_wanted.connect(correcting.take_back)
        sheet.table_wanted.connect(self._on_table)
        sheet.role_wanted.connect(correcting.choose_role)
        sheet.unit_wanted.connect(correcting.choose_unit)
        side.questions.answered.connect(correcting.answer)
        side.questions.edit_wanted.connect(self._on_edit)
        side.questions.place_wanted.connect(self._on_place)
        side.model.typed.connect(correcting.type_cell)
        side.model.ticked.connect(self._on_ticked)
        side.view.looked_at.connect(sheet.go_to)
        side.again_wanted.connect(correcting.ask_again)
        correcting.read_again.connect(self._show)
        correcting.failed.connect(self._on_failed)
        correcting.slow.connect(self.stop.setVisible)
        self.stop.clicked.connect(correcting.stop)
        self.bar.save_wanted.connect(self._save)
        self.bar.cancel_wanted.connect(self.close)
        self._session.changed.connect(self._follow)

    def _show(self) -> None:
        draft = self.draft
        self.sheet.show_reading(draft)
        self.side.show_reading(draft)
        self.bar.follow()
        self.summary.setText(self._summary())
        self.trouble.setText(_NO_TABLE)
        self.trouble.setVisible(draft.table is None)

    def _summary(self) -> str:
        if self.draft.table is None:
            return "Nothing is saved before you choose Save."
        asks, must = len(self.draft.asks), len(self.draft.open)
        count = len(self.draft.people)
        found = "One person" if count == 1 else f"{count} people"
        if not asks:
            return f"{found}, no questions. Nothing is saved before you choose Save."
        words = "one question" if asks == 1 else f"{asks} questions"
        if must == asks:
            return f"{found}, {words}. Nothing is saved before you choose Save."
        return f"{found}, {words}. What may stay open is saved as it is shown here."

    def _on_table(self, sheet: str, turned: object, head: object) -> None:
        way = turned if isinstance(turned, bool) else None
        self.correcting.choose_table(sheet, turned=way, head=head if isinstance(head, int) else None)

    def _on_ticked(self, name: str, taken: bool) -> None:  # noqa: FBT001 - a slot
        self.correcting.tick(name, taken=taken)

    def _on_place(self, _sheet: str, at: str) -> None:
        self.sheet.go_to(at)

    def _on_edit(self, ask: Ask) -> None:
        """Go where a question's answer is typed or chosen."""
        if ask.edit == "measure":
            self.sheet.name_column(ask.at)
        else:
            self.sheet.edit(ask.at)

    def _on_failed(self, sentence: str) -> None:
        self.trouble.setText(sentence)
        self.trouble.show()

    def _follow(self, change: Change) -> None:
        """The people of the library were edited elsewhere."""
        if "person" in change.kinds and not self._is_saved:
            self.correcting.read()

    def _save(self) -> None:
        plan = self.bar.plan()
        if not plan.pairs:
            return
        self._is_saved = True
        pairs: list[tuple[Value | None, Value | None]] = list(plan.pairs)
        first = plan.pairs[0][1]
        place = Place("person", first.id)
        self._session.apply_all(plan.text, pairs, place=place)
        self._selection.choose_person(first.id)
        self._selection.go(place)
        self.saved.emit(f"Saved: {plan.says}")
        self.close()

    def reject(self) -> None:
        """Escape closes like the button does."""
        self.close()

    def closeEvent(self, event: QCloseEvent) -> None:
        """Ask before answers are lost."""
        if self.correcting.touched and not self._is_saved and not LeaveQuestion.ask(self):
            event.ignore()
            return
        self.correcting.drop()
        event.accept()
