"""The ways a chart comes in: files picked or dropped on the window, and what is on the clipboard."""

from __future__ import annotations

from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, cast

from PySide6.QtCore import QEvent, QMimeData, QObject, Signal
from PySide6.QtGui import QAction, QDragEnterEvent, QDropEvent, QGuiApplication, QKeySequence
from PySide6.QtWidgets import QFileDialog, QWidget

from sizekeeper.core.learned import LEARNED, Learned
from sizekeeper.ui.import_waiting import Waiting

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from sizekeeper.importing.opened import Opened
    from sizekeeper.importing.people_seen import Seen
    from sizekeeper.ui.import_list import ImportList
    from sizekeeper.ui.import_reading import Reading
    from sizekeeper.ui.import_window import ImportWindow
    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Session
    from sizekeeper.ui.settings import Settings

KINDS = "*.xlsx *.xlsm *.xlsb *.xls *.ods *.csv *.tsv *.tab *.txt *.html *.htm *.mht *.pdf"


class ChartFiles:
    """The question which files to import. A test puts its own answer here."""

    @classmethod
    def ask(cls, parent: QWidget, folder: Path) -> list[Path]:
        """The chosen files, none when the question was put away."""
        kinds = f"Charts ({KINDS});;All files (*)"
        short = QFileDialog.Option.HideNameFilterDetails
        names, _ = QFileDialog.getOpenFileNames(parent, "Import charts", str(folder), kinds, options=short)
        return [Path(name) for name in names]


class ImportActions(Waiting):
    """The actions that bring charts in, and what may be dropped on the main window.

    Signals:
        people_chosen(object): a source holds people, not sizes, and is to be read so: a path, or HTML and text.
    """

    people_chosen = Signal(object)

    def __init__(self, session: Session, selection: Selection, settings: Settings, window: QWidget) -> None:
        super().__init__(window)
        self._session, self._selection, self._settings = session, selection, settings
        self.files = self._action("&Import charts…", self._ask_for_files, "Ctrl+I")
        self.paste = self._action("&Paste a chart", self._paste, "Ctrl+Shift+V")
        window.setAcceptDrops(True)
        window.installEventFilter(self)

    def _action(self, text: str, run: Callable[[], object], keys: str) -> QAction:
        action = QAction(text, self)
        action.setShortcut(QKeySequence(keys))
        action.triggered.connect(run)
        return action

    @property
    def _learned(self) -> Learned:
        value = self._session.committed(LEARNED)
        return value if isinstance(value, Learned) else Learned()

    def _ask_for_files(self) -> None:
        stored = self._settings.stored
        folder = Path(str(stored.value("import/folder", str(Path.home()))))
        paths = ChartFiles.ask(self._window, folder)
        if paths:
            stored.setValue("import/folder", str(paths[0].parent))
            self.read_files(paths)

    def read_files(self, paths: Sequence[Path]) -> None:
        """Read files in the background: one opens in the import window, several in a list."""
        if len(paths) == 1:
            work = partial(_open_one, paths[0], self._learned)
            self._read(f"Reading “{paths[0].name}”…", work)
        elif paths:
            self._show_list(paths)

    def _paste(self) -> None:
        mime = cast("QMimeData | None", QGuiApplication.clipboard().mimeData())  # None when nothing was ever copied
        self._read_mime(QMimeData() if mime is None else mime)

    def _read_mime(self, mime: QMimeData) -> None:
        if paths := _files_in(mime):
            self.read_files(paths)
            return
        html, text = (mime.html() if mime.hasHtml() else ""), (mime.text() if mime.hasText() else "")
        self._read("Reading what was pasted…", partial(_open_pasted, html, text, self._learned))

    def accepts(self, mime: QMimeData) -> bool:
        """Whether something can be dropped: files, or a table from a web page or a spreadsheet."""
        return bool(_files_in(mime)) or (mime.hasHtml() and "<table" in mime.html().casefold())

    def accept_drop(self, mime: QMimeData) -> bool:
        """Read what was dropped; whether it was something to read."""
        if not self.accepts(mime):
            return False
        self._read_mime(mime)
        return True

    def show_read(self, found: object) -> None:
        """Show the charts of a source; ask first where it looks like a table of people."""
        from sizekeeper.importing.people_seen import Seen  # noqa: PLC0415 - the reader is not loaded at start-up

        if not isinstance(found, Seen):
            self._show_opened(cast("Opened", found))
            return
        from sizekeeper.ui.people_question import PeopleQuestion  # noqa: PLC0415 - seldom wanted

        answer = PeopleQuestion.ask(self._window, found.name, chart=found.opened is not None)
        if answer == "people":
            self.people_chosen.emit(found.source)
        elif answer == "chart" and found.opened is not None:
            self._show_opened(found.opened)

    def _show_opened(self, opened: Opened) -> None:
        from sizekeeper.ui.import_window import ImportWindow  # noqa: PLC0415 - seldom wanted

        self._show_charts(ImportWindow(opened, self._session, self._selection, self._window))

    def _show_list(self, paths: Sequence[Path]) -> None:
        from sizekeeper.ui.import_list import ImportList  # noqa: PLC0415 - seldom wanted

        self._show_charts(ImportList(paths, self._session, self._selection, self._window))

    def _show_charts(self, window: ImportWindow | ImportList) -> None:
        window.saved.connect(self.told)
        self._show(window)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Take what is dropped on the main window."""
        if event.type() in (QEvent.Type.DragEnter, QEvent.Type.DragMove) and isinstance(event, QDragEnterEvent):
            if self.accepts(event.mimeData()):
                event.acceptProposedAction()
                return True
        elif event.type() == QEvent.Type.Drop and isinstance(event, QDropEvent) and self.accept_drop(event.mimeData()):
            event.acceptProposedAction()
            return True
        return super().eventFilter(watched, event)


def _files_in(mime: QMimeData) -> list[Path]:
    """The files of this machine among what is dropped or pasted."""
    urls = mime.urls() if mime.hasUrls() else []
    return [Path(url.toLocalFile()) for url in urls if url.isLocalFile()]


def _open_one(path: Path, learned: Learned, reading: Reading) -> Opened | Seen:
    from sizekeeper.importing.opened import open_file  # noqa: PLC0415 - the reader of charts is not loaded at start-up
    from sizekeeper.importing.people_open import open_people_file  # noqa: PLC0415 - as above
    from sizekeeper.importing.people_seen import chart_or_people  # noqa: PLC0415 - as above

    look = partial(open_people_file, path, reading.progress)
    return chart_or_people(partial(open_file, path, learned, reading.progress), look, path)


def _open_pasted(html: str, text: str, learned: Learned, _reading: Reading) -> Opened | Seen:
    from sizekeeper.importing.opened import open_pasted  # noqa: PLC0415 - as above
    from sizekeeper.importing.people_open import open_people_pasted  # noqa: PLC0415 - as above
    from sizekeeper.importing.people_seen import chart_or_people  # noqa: PLC0415 - as above

    look = partial(open_people_pasted, html, text)
    return chart_or_people(partial(open_pasted, html, text, learned), look, (html, text))
