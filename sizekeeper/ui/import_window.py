"""The import window: the file at the left, the chart as it will be and what is to answer at the right."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from sizekeeper import assets
from sizekeeper.core.learned import LEARNED, Learned
from sizekeeper.importing.asking import asks
from sizekeeper.importing.learned import corrected, forgotten, name_key, taught
from sizekeeper.importing.read import PASTED
from sizekeeper.ui import theme
from sizekeeper.ui.import_chart_panel import ChartSide
from sizekeeper.ui.import_correcting import Correcting
from sizekeeper.ui.import_leave_question import LeaveQuestion
from sizekeeper.ui.import_save_bar import SaveBar
from sizekeeper.ui.import_sheet_panel import SheetPanel
from sizekeeper.ui.lettering import Lettering, Rule
from sizekeeper.ui.paper_dialog import PaperDialog
from sizekeeper.ui.pattern_link import Link
from sizekeeper.ui.selection import Place
from sizekeeper.ui.thin_splitter import ThinSplitter
from sizekeeper.ui.undo_keys import redo_keys

if TYPE_CHECKING:
    from PySide6.QtGui import QCloseEvent

    from sizekeeper.importing.opened import Opened
    from sizekeeper.importing.question import Ask
    from sizekeeper.store.codec import Value
    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Change, Session

_NO_TABLE = "No table was found. Mark its cells, sizes and measures included, and choose “This is the table”."


class ImportWindow(PaperDialog):
    """One source, corrected until it is right. Nothing comes into the library before Save.

    Signals:
        saved(str): the charts were saved; the sentence says where.
        left(object): the window was closed without saving; the reading as it was answered so far.
    """

    saved = Signal(str)
    left = Signal(object)
    keeps_answers = False
    """Whether whoever opened the window keeps the answers when it is closed, so that closing loses nothing."""

    def __init__(self, opened: Opened, session: Session, selection: Selection, parent: QWidget | None = None) -> None:
        super().__init__(parent, Qt.WindowType.Window)
        self._session, self._selection = session, selection
        self._is_saved = False
        self._source = "a pasted chart" if opened.name == PASTED else f"“{opened.name}”"
        measures = assets.measures()
        self.correcting = Correcting(opened, self._learned, self)
        self.sheet = SheetPanel(self)
        self.side = ChartSide(measures, self)
        self.bar = SaveBar(session, measures, self)
        self.summary = Lettering("", "muted", self)
        self.trouble = Lettering("", "warning", self)
        self.stop = QPushButton("Stop reading", self)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle(f"Import {self._source} – Sizekeeper")
        self._make_actions()
        self._arrange()
        self._connect()
        self.bar.begin(opened)
        self.bar.propose(selection.pattern)
        self._show()
        if not opened.draft.tables:
            self.sheet.grid.setFocus()
        elif not self.side.questions.take_focus():
            self.bar.title.setFocus()

    @property
    def opened(self) -> Opened:
        """The reading that is shown."""
        return self.correcting.opened

    def _learned(self) -> Learned:
        """The names learned so far."""
        value = self._session.committed(LEARNED)
        return value if isinstance(value, Learned) else Learned()

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
        title = Lettering(f"Import {self._source}", "title", self)
        title.setTextInteractionFlags(Qt.TextInteractionFlag.NoTextInteraction)
        head.addWidget(title, 1)
        for widget in (self.stop, self.back, self.forth):
            head.addWidget(widget)
        self._top = QVBoxLayout()
        self._top.addLayout(head)
        self._top.addWidget(self.summary)
        self._top.addWidget(self.trouble)
        self.splitter = ThinSplitter(self)
        self.splitter.addWidget(self.sheet)
        self.splitter.addWidget(self.side)
        self.splitter.setStretchFactor(0, 1)
        self.splitter.setStretchFactor(1, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addLayout(self._top)
        column.addWidget(self.splitter, 1)
        column.addWidget(Rule(self))
        column.addWidget(self.bar)
        self.stop.setAutoDefault(False)
        self.stop.hide()
        self._top.setContentsMargins(theme.spacing(3), theme.spacing(2), theme.spacing(3), theme.spacing(1.5))
        self._top.setSpacing(theme.spacing(0.5))
        self.resize(theme.spacing(150), theme.spacing(92))
        self.splitter.setSizes([theme.spacing(77), theme.spacing(73)])

    def _connect(self) -> None:
        correcting, sheet, side = self.correcting, self.sheet, self.side
        sheet.area_wanted.connect(self._on_area)
        sheet.look_wanted.connect(self._on_look)
        sheet.typed.connect(correcting.type_cell)
        sheet.leave_wanted.connect(correcting.leave_out)
        sheet.back_wanted.connect(correcting.take_back)
        sheet.sheet_shown.connect(side.show_sheet)
        side.questions.answered.connect(correcting.answer)
        side.questions.edit_wanted.connect(self._on_edit)
        side.questions.place_wanted.connect(sheet.go_to)
        side.corrected.connect(correcting.correct)
        side.chosen.connect(correcting.choose)
        side.ticked.connect(correcting.tick)
        side.looked_at.connect(sheet.go_to)
        side.leave_wanted.connect(correcting.leave_out)
        side.memory.keep_wanted.connect(correcting.remember)
        side.memory.forget_wanted.connect(self._on_forget)
        correcting.read_again.connect(self._show)
        correcting.failed.connect(self._on_failed)
        correcting.slow.connect(self.stop.setVisible)
        self.stop.clicked.connect(correcting.stop)
        self.bar.save_wanted.connect(self._save)
        self.bar.cancel_wanted.connect(self.close)
        self._session.changed.connect(self._follow)

    def _show(self) -> None:
        asked = asks(self.opened)
        self.sheet.show_reading(self.opened, asked)
        self.side.show_reading(self.opened, asked)
        self.bar.follow(self.opened)
        self.summary.setText(self._summary(len(asked)))
        self.trouble.setText(_NO_TABLE)
        self.trouble.setVisible(not self.opened.draft.tables)

    def _summary(self, asked: int) -> str:
        tables = len(self.opened.tables)
        if not tables:
            return "Nothing is saved before you choose Save."
        found = "One table" if tables == 1 else f"{tables} tables"
        if not asked:
            return f"{found}, no questions. Nothing is saved before you choose Save."
        words = "one question" if asked == 1 else f"{asked} questions"
        return f"{found}, {words}. What stays open is saved as it was read."

    def _on_failed(self, sentence: str) -> None:
        self.trouble.setText(sentence)
        self.trouble.show()

    def _on_edit(self, ask: Ask) -> None:
        """Open the field in which a question's answer is typed."""
        self.sheet.go_to(ask.sheet, ask.at)
        if ask.edit == "cell" or not self.side.edit(ask.sheet, ask.at):
            self.sheet.edit(ask.sheet, ask.at)

    def _on_area(self, beside_others: bool) -> None:  # noqa: FBT001 - a slot
        box = self.sheet.grid.marked_box()
        if box is not None:
            self.correcting.set_area(self.sheet.sheet, box, beside_others=beside_others)

    def _on_look(self) -> None:
        self.correcting.look_everywhere(self.sheet.sheet)

    def _on_forget(self, label: str) -> None:
        """Forgetting is an edit of the library, which the main window can undo."""
        self._session.apply(f"Forget the name “{label}”", self._learned(), forgotten(self._learned(), label))

    def _follow(self, change: Change) -> None:
        """The library was edited elsewhere."""
        if self._is_saved:
            return
        if "learned" in change.kinds:
            self.correcting.read()
        elif change.kinds & {"pattern", "chart"}:
            self.bar.follow(self.opened)

    def _save(self) -> None:
        plan = self.bar.plan()
        if plan is None or self.correcting.busy:
            return
        self._is_saved = True
        names = self._new_names()
        pairs: list[tuple[Value | None, Value | None]] = [*plan.pairs, *self._lessons(names)]
        place = Place("pattern", plan.pattern.id, "title")
        self._session.apply_all(plan.text, pairs, place=place)
        self._selection.choose_pattern(plan.pattern.id)
        self._selection.go(place)
        known = f" Remembered for the next chart: {', '.join(f'“{label}”' for label in names)}." if names else ""
        self.saved.emit(f"The charts of {self._source} are in “{plan.pattern.title}”.{known}")
        self.close()

    def _new_names(self) -> dict[str, str]:
        """The labels that shall be remembered, each with its measure."""
        answers = self.opened.answers
        found = corrected(self.opened.taken, answers.corrections)
        return {label: measure for _, label, measure in found if name_key(label) not in answers.unlearned}

    def _lessons(self, names: dict[str, str]) -> list[tuple[Value | None, Value | None]]:
        after = self._learned()
        for label, measure in names.items():
            after = taught(after, label, measure)
        return [(self._session.committed(LEARNED), after)] if after != self._learned() else []

    def reject(self) -> None:
        """Escape closes like the button does."""
        self.close()

    def closeEvent(self, event: QCloseEvent) -> None:
        """Ask before corrections are lost."""
        lost = self.correcting.touched and not self._is_saved and not self.keeps_answers
        if lost and not LeaveQuestion.ask(self):
            event.ignore()
            return
        self.correcting.drop()
        if not self._is_saved:
            self.left.emit(self.opened)
        event.accept()
