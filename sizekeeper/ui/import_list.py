"""Many files at once: what was read of each, what is open, and the way to save those without questions together."""

from __future__ import annotations

from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING, cast

from PySide6.QtCore import QEvent, QSize, Qt, Signal
from PySide6.QtGui import QPalette
from PySide6.QtWidgets import (
    QApplication,
    QHBoxLayout,
    QHeaderView,
    QProgressBar,
    QPushButton,
    QTreeWidget,
    QTreeWidgetItem,
    QVBoxLayout,
    QWidget,
)

from sizekeeper import assets
from sizekeeper.core.learned import LEARNED, Learned
from sizekeeper.importing.opened import headings, likely_title
from sizekeeper.importing.saving import likely_child, likely_garment, new_pattern, plan_new
from sizekeeper.store.codec import new_id
from sizekeeper.ui import theme
from sizekeeper.ui.entry_actions import free_name
from sizekeeper.ui.import_leave_question import LeaveQuestion
from sizekeeper.ui.import_reading import Reading
from sizekeeper.ui.import_source import Source, read_all, source_read
from sizekeeper.ui.import_window import ImportWindow
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.paper_dialog import PaperDialog
from sizekeeper.ui.selection import Place

if TYPE_CHECKING:
    from collections.abc import Sequence
    from pathlib import Path

    from PySide6.QtGui import QCloseEvent

    from sizekeeper.importing.opened import Opened
    from sizekeeper.store.codec import Value
    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Session


class ImportList(PaperDialog):
    """The files that are being imported.

    Signals:
        saved(str): something was saved; the sentence says what.
    """

    saved = Signal(str)

    def __init__(
        self,
        paths: Sequence[Path],
        session: Session,
        selection: Selection,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent, Qt.WindowType.Window)
        self._with = (session, selection)
        self.sources = [Source(path) for path in paths]
        self._windows: dict[int, ImportWindow] = {}
        self.list = QTreeWidget(self)
        self.progress = QProgressBar(self)
        self.stop = QPushButton("Stop", self)
        self.look = QPushButton("&Open…", self)
        self.save = QPushButton("&Save those without questions", self)
        self.put_away = QPushButton("Close", self)
        self.summary = Lettering("", "muted", self)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle(f"Import {len(paths)} files – Sizekeeper")
        self._fill()
        self._arrange()
        self._connect()
        self.reading = Reading(partial(read_all, list(paths), self._learned))
        self.reading.progressed.connect(self._on_progress)
        self.reading.stepped.connect(self._on_step)
        self.reading.ended.connect(self._on_end)
        self.reading.start()
        self._refresh()

    @property
    def _session(self) -> Session:
        return self._with[0]

    @property
    def _learned(self) -> Learned:
        value = self._session.committed(LEARNED)
        return value if isinstance(value, Learned) else Learned()

    def _fill(self) -> None:
        self.list.setAccessibleName("Files")
        self.list.setHeaderLabels(["File", "To answer", "What was read"])
        self.list.setRootIsDecorated(False)
        self.list.setUniformRowHeights(True)
        self.list.setAllColumnsShowFocus(True)
        for source in self.sources:
            item = QTreeWidgetItem([source.path.name, "", source.says])
            item.setSizeHint(0, QSize(0, theme.spacing(3)))
            item.setTextAlignment(1, Qt.AlignmentFlag.AlignCenter)
            item.setToolTip(0, str(source.path))
            self.list.addTopLevelItem(item)
        header = self.list.header()
        header.setStretchLastSection(True)
        header.setSectionResizeMode(1, QHeaderView.ResizeMode.ResizeToContents)
        self.list.setColumnWidth(0, theme.spacing(36))
        self.list.setCurrentIndex(self.list.model().index(0, 0))

    def _arrange(self) -> None:
        reading = QHBoxLayout()
        reading.addWidget(self.progress, 1)
        reading.addWidget(self.stop)
        buttons = QHBoxLayout()
        buttons.setSpacing(theme.spacing(1))
        buttons.addWidget(self.look)
        buttons.addStretch(1)
        buttons.addWidget(self.put_away)
        buttons.addWidget(self.save)
        for button in (self.look, self.save, self.stop, self.put_away):
            button.setAutoDefault(False)
        self.progress.setAccessibleName("How many files are read")
        self.progress.setRange(0, len(self.sources))
        self.progress.setTextVisible(False)
        column = QVBoxLayout(self)
        column.setContentsMargins(*(theme.spacing(3),) * 4)
        column.setSpacing(theme.spacing(1.5))
        column.addWidget(Lettering(f"Import {len(self.sources)} files", "title", self))
        column.addWidget(self.summary)
        column.addWidget(self.list, 1)
        column.addLayout(reading)
        column.addLayout(buttons)
        self.resize(theme.spacing(120), theme.spacing(72))

    def _connect(self) -> None:
        self.list.currentItemChanged.connect(self._refresh)
        self.list.itemActivated.connect(self._open_current)
        self.look.clicked.connect(self._open_current)
        self.save.clicked.connect(self._save_ready)
        self.stop.clicked.connect(self._on_stop)
        self.put_away.clicked.connect(self.close)

    def _on_progress(self, done: int, _total: int) -> None:
        self.progress.setValue(done)

    def _on_step(self, told: object) -> None:
        place, source = cast("tuple[int, Source]", told)
        self._put(place, source)

    def _on_stop(self) -> None:
        self.reading.cancel()
        self._on_end()

    def _on_end(self) -> None:
        """Nothing more is read: what was not, says so."""
        self.progress.hide()
        self.stop.hide()
        for i, source in enumerate(self.sources):
            if source.state == "waiting":
                self._put(i, replace(source, state="stopped", says="Not read: reading was stopped."))
        self._refresh()

    def _put(self, place: int, source: Source) -> None:
        self.sources[place] = source
        item = self.list.topLevelItem(place)
        if item is not None:
            item.setText(1, str(source.questions or "") if source.state == "read" else "")
            item.setText(2, source.says)
            item.setToolTip(2, source.says)
            self._colour(item, source)
        self._refresh()

    def _colour(self, item: QTreeWidgetItem, source: Source) -> None:
        """What cannot be read stands out; what is done steps back."""
        palette = QApplication.palette()
        colours = {"failed": theme.warning_text, "saved": theme.muted_text, "stopped": theme.muted_text}
        of = colours.get(source.state)
        item.setForeground(2, of(palette) if of else palette.color(QPalette.ColorRole.Text))

    def _refresh(self) -> None:
        ready = sum(source.ready for source in self.sources)
        self.save.setEnabled(ready > 0 and not self._session.read_only)
        self.save.setText(f"&Save the {ready} without questions" if ready > 1 else "&Save the one without questions")
        if not ready:
            self.save.setText("&Save those without questions")
        current = self._current()
        self.look.setEnabled(current is not None and self.sources[current].state == "read")
        self.summary.setText(self._summary())

    def _summary(self) -> str:
        count = {state: sum(s.state == state for s in self.sources) for state in ("read", "failed", "saved", "waiting")}
        asked = sum(s.state == "read" and bool(s.questions) for s in self.sources)
        parts = [
            (count["waiting"], "to be read"),
            (count["read"] - asked, "ready to save"),
            (asked, "with questions"),
            (count["failed"], "that cannot be read"),
            (count["saved"], "saved"),
        ]
        return ", ".join(f"{n} {words}" for n, words in parts if n) + "."

    def _current(self) -> int | None:
        item = self.list.currentItem()
        return self.list.indexOfTopLevelItem(item) if item is not None else None

    def _open_current(self) -> None:
        place = self._current()
        if place is None or self.sources[place].state != "read":
            return
        if place not in self._windows:
            opened = cast("Opened", self.sources[place].opened)
            window = ImportWindow(opened, *self._with, self)
            window.keeps_answers = True
            window.saved.connect(self._on_saved)
            window.left.connect(self._on_left)
            self._windows[place] = window
        self._windows[place].show()
        self._windows[place].activateWindow()

    def _place_of_sender(self) -> int:
        sender = self.sender()
        return next(place for place, window in self._windows.items() if window is sender)

    def _on_saved(self, sentence: str) -> None:
        """A file was saved from its own window."""
        place = self._place_of_sender()
        self._windows.pop(place)
        self._put(place, replace(self.sources[place], state="saved", says=sentence))
        self.saved.emit(sentence)

    def _on_left(self, opened: object) -> None:
        """A file's own window was closed; what was answered there stays."""
        place = self._place_of_sender()
        self._windows.pop(place)
        self._put(place, source_read(self.sources[place].path, cast("Opened", opened)))

    def _save_ready(self) -> None:
        """Save every file without a question as a pattern of its own, as one undo step."""
        pairs: list[tuple[Value | None, Value | None]] = []
        taken = [pattern.title for pattern in self._session.patterns(hidden=True)]
        last = ""
        ready = [i for i, source in enumerate(self.sources) if source.ready and i not in self._windows]
        for i in ready:
            opened = cast("Opened", self.sources[i].opened)
            title = free_name(likely_title(opened), taken)
            taken.append(title)
            garment = likely_garment(" ".join([title, *headings(opened)]))
            pattern = new_pattern(opened, new_id(), title, garment, child=likely_child(opened.tables))
            pairs += plan_new(opened, pattern, assets.measures(), new_id).pairs
            last = pattern.id
            self._put(i, replace(self.sources[i], state="saved", says=f"Saved as “{title}”, {garment}."))
        if not pairs:
            return
        words = "1 chart file" if len(ready) == 1 else f"{len(ready)} chart files"
        self._session.apply_all(f"Import {words}", pairs, place=Place("pattern", last, "title"))
        self._with[1].choose_pattern(last)
        self.saved.emit(f"{words.capitalize()} saved as new patterns.")

    def reject(self) -> None:
        """Escape closes like the button does."""
        self.close()

    def changeEvent(self, event: QEvent) -> None:
        """Follow light and dark."""
        super().changeEvent(event)
        if theme.palette_changed(event):
            for i, source in enumerate(self.sources):
                self._put(i, source)

    def closeEvent(self, event: QCloseEvent) -> None:
        """Ask before answers are lost; then stop reading, and close the windows of single files."""
        for window in list(self._windows.values()):
            window.close()
        if any(source.answered for source in self.sources) and not LeaveQuestion.ask(self):
            event.ignore()
            return
        self.reading.cancel()
        event.accept()
