"""The window of the decision sheet: its pages as they will be on paper, to be saved and printed."""

from __future__ import annotations

import datetime as dt
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, cast

from PySide6.QtCore import QByteArray, QSize, QTimer, Signal
from PySide6.QtGui import QFontDatabase, QKeySequence, QShortcut
from PySide6.QtWidgets import QPlainTextEdit, QPushButton, QStackedWidget, QWidget

from sizekeeper.reports.export import format_of
from sizekeeper.ui import theme
from sizekeeper.ui.fit_empty import FirstThings
from sizekeeper.ui.fit_source import Missing, view_choices
from sizekeeper.ui.import_reading import Reading
from sizekeeper.ui.lettering import Lettering, say
from sizekeeper.ui.paper_dialog import PaperDialog
from sizekeeper.ui.sheet_bar import SheetBar, arrange
from sizekeeper.ui.sheet_drawing import Drawing
from sizekeeper.ui.sheet_pages import SheetPages
from sizekeeper.ui.sheet_printing import Printing
from sizekeeper.ui.sheet_questions import SheetFileQuestion
from sizekeeper.ui.sheet_source import SheetSource, source_of

if TYPE_CHECKING:
    from collections.abc import Callable

    from PySide6.QtCore import QEvent
    from PySide6.QtGui import QCloseEvent, QShowEvent

    from sizekeeper.reports.export import Format
    from sizekeeper.reports.sheet import Paper
    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Change, Session
    from sizekeeper.ui.settings import Settings
    from sizekeeper.ui.sheet_drawing import Drawn

_SETTLE_MS = 250
"""How long typing or resizing has to rest before the pages are drawn again; coined."""

_SHARE = 0.88
"""How much of the screen the window takes at most the first time, so that its frame fits too; coined."""


class SheetWindow(PaperDialog):
    """The sheet of the person and the pattern in front; it follows what is chosen and edited there.

    Signals:
        told(str): the sheet was saved or printed; the sentence says where.
        shown_again(): the pages were drawn, or it was said why there are none.
    """

    told = Signal(str)
    shown_again = Signal()

    def __init__(
        self,
        session: Session,
        selection: Selection,
        settings: Settings,
        parent: QWidget | None = None,
        *,
        view_in_front: Callable[[], str] = str,
        today: Callable[[], dt.date] = dt.date.today,
    ) -> None:
        """Show what is selected; `view_in_front` tells which view of the pattern the main window shows."""
        super().__init__(parent)
        self._session, self._selection, self._settings = session, selection, settings
        self._view_in_front, self._today = view_in_front, today
        self._source: SheetSource | None = None
        self._shown_for = ("", "", "")
        self._saving: Reading | None = None
        self._undrawn = False
        self.bar = SheetBar(settings, self)
        self.pages = SheetPages(self)
        self.text = QPlainTextEdit(self)
        self.first = FirstThings(self)
        self.front = QStackedWidget(self)
        self.heading = Lettering("Decision sheet", "title", self)
        self.whose = Lettering("", "muted", self)
        self.said = Lettering("", "muted", self)
        self.trouble = Lettering("", "warning", self)
        self.print = QPushButton("&Print…", self)
        self.save = QPushButton("&Save as…", self)
        self.drawing = Drawing(self)
        self.printing = Printing(self)
        self._settle = QTimer(self, singleShot=True, interval=_SETTLE_MS)
        self._resettle = QTimer(self, singleShot=True, interval=_SETTLE_MS)
        self._dress()
        arrange(self)
        self._connect()

    def _dress(self) -> None:
        self.text.setReadOnly(True)
        self.text.setAccessibleName("The sheet as text")
        self.text.setFont(QFontDatabase.systemFont(QFontDatabase.SystemFont.GeneralFont))
        self.text.setFrameShape(QPlainTextEdit.Shape.NoFrame)
        self.text.document().setDocumentMargin(theme.spacing(3))
        for widget in (self.first, self.pages, self.text):
            self.front.addWidget(widget)
        for button in (self.print, self.save):
            button.setAutoDefault(False)
        say(self.said, "")
        say(self.trouble, "")
        stored = self._settings.stored.value("sheet/geometry")
        if not (isinstance(stored, QByteArray) and self.restoreGeometry(stored)):
            free = self.screen().availableSize() * _SHARE
            self.resize(QSize(theme.spacing(112), theme.spacing(140)).boundedTo(free))
        for key in QKeySequence.keyBindings(QKeySequence.StandardKey.Print):
            QShortcut(key, self, self.print.click)
        for key in QKeySequence.keyBindings(QKeySequence.StandardKey.Save):
            QShortcut(key, self, self.save.click)

    def _connect(self) -> None:
        self._session.changed.connect(self._on_change)
        self._session.drafted.connect(self._on_change)
        self._selection.person_changed.connect(self._on_selected)
        self._selection.pattern_changed.connect(self._on_selected)
        self._selection.make_changed.connect(self._on_selected)
        self._settings.changed.connect(self._later)
        self._settle.timeout.connect(self.refresh)
        self._resettle.timeout.connect(self._draw)
        self.pages.size_changed.connect(self._on_size)
        self.bar.changed.connect(self.refresh)
        self.bar.size_chosen.connect(self._on_size_chosen)
        self.first.go.connect(self._selection.go)
        self.drawing.drawn.connect(self._on_drawn)
        self.drawing.failed.connect(self._on_undrawn)
        self.drawing.busy_changed.connect(self._show_busy)
        self.print.clicked.connect(self.start_printing)
        self.save.clicked.connect(self.ask_to_save)
        self.printing.printed.connect(self._tell)
        self.printing.failed.connect(self._on_failed)

    @property
    def source(self) -> SheetSource | None:
        """The sheet that is shown, None while something is missing first."""
        return self._source

    # What is shown.

    def refresh(self) -> None:
        """Make the sheet of what is in front now, and draw it."""
        self._settle.stop()
        entries, make = (self._selection.person, self._selection.pattern), self._selection.make
        pattern = self._session.pattern(entries[1])
        views = view_choices(self._session, pattern) if pattern is not None else {}
        start = self._first_view(make) if (*entries, make) != self._shown_for else self.bar.view
        self._shown_for = (*entries, make)
        self.bar.show_views(views, start)
        found = source_of(
            self._session, self._settings, (*entries, self.bar.view), self._today(), private=self.bar.private, make=make
        )
        self._source = found if isinstance(found, SheetSource) else None
        for widget in (self.print, self.save, self.bar):
            widget.setEnabled(self._source is not None)
        if isinstance(found, Missing):
            self._show_missing(found)
        else:
            self._show_whose(found)
            self._show_part()
            self._draw()

    def _first_view(self, make: str) -> str:
        """The view to begin with: that of a make that was taken up, else the one the main window shows."""
        taken = self._session.committed(make)
        return str(getattr(taken, "view", "")) if taken is not None else self._view_in_front()

    def refresh_now(self) -> None:
        """Catch up with edits that the pages have not followed yet."""
        if self._settle.isActive() or self._source is None:
            self.refresh()

    def _show_missing(self, missing: Missing) -> None:
        self.drawing.drop()
        self.pages.show_drawn(None)
        self.text.setPlainText("")
        self.whose.setText("")
        say(self.trouble, "")
        self.setWindowTitle("Decision sheet – Sizekeeper")
        self.first.show_missing(missing)
        self.front.setCurrentWidget(self.first)
        self.shown_again.emit()

    def _show_whose(self, source: SheetSource) -> None:
        found = source.found
        names = (
            found.person.name or "Somebody",
            found.pattern.title or "A pattern without a title",
            self.bar.view_words,
        )
        self.whose.setText(" · ".join(name for name in names if name))
        self.setWindowTitle(f"{names[0]} – {names[1]} – Sizekeeper")

    def _show_part(self) -> None:
        """The pages, or the same as text."""
        self.front.setCurrentWidget(self.text if self.bar.as_text else self.pages)

    def _draw(self) -> None:
        self._resettle.stop()
        if self._source is not None:
            self.pages.set_paper(self.bar.paper)
            self.drawing.want(self._source, self.bar.paper, self.pages.ppi)

    def _on_size(self) -> None:
        """What was drawn is stretched until the size rests; then it is drawn as finely as that size needs."""
        shown = self.pages.shown
        if shown is not None and self._source is not None and self.isVisible():
            self._resettle.start()

    def _on_size_chosen(self) -> None:
        if self._source is not None:
            self._show_part()
        if not self.bar.as_text:
            self.pages.set_zoom(self.bar.zoom)

    def _on_drawn(self, drawn: object) -> None:
        pages = cast("Drawn", drawn)
        self.pages.show_drawn(pages)
        if self.text.toPlainText() != pages.text:
            at = self.text.verticalScrollBar().value()
            self.text.setPlainText(pages.text)
            self.text.verticalScrollBar().setValue(at)
        count = len(pages.pages)
        self.bar.say_pages(f"{count} page{'s' if count != 1 else ''}")
        if self._undrawn:  # a sentence about a file or a printer stays
            self._undrawn = False
            say(self.trouble, "")
        self.shown_again.emit()

    def _on_undrawn(self, sentence: str) -> None:
        self._undrawn = True
        self._on_failed(sentence)

    def _on_failed(self, sentence: str) -> None:
        say(self.said, "")
        say(self.trouble, sentence)
        self.shown_again.emit()

    def _show_busy(self, busy: bool) -> None:  # noqa: FBT001 - a slot
        if busy and self.pages.shown is None:
            self.bar.say_pages("Drawing the pages…")

    # Following the main window.

    def _later(self) -> None:
        """Follow when typing rests; a window that is not shown catches up when it is."""
        if self.isVisible():
            self._settle.start()

    def _on_change(self, change: Change) -> None:
        shown = {self._selection.person, self._selection.pattern}
        if shown & change.ids or change.kinds & {"chart", "pieces", "make"}:
            say(self.said, "")
            self._later()

    def _on_selected(self, _entry: str) -> None:
        say(self.said, "")
        say(self.trouble, "")
        self._later()

    # Saving and printing.

    def start_printing(self) -> None:
        """Ask for a printer and print what is shown; nothing happens while nothing can be compared."""
        self.refresh_now()
        if self._source is not None:
            self.printing.start(self._source, self.bar.paper)

    def ask_to_save(self) -> None:
        """Ask where the sheet goes, and write it there in the background."""
        self.refresh_now()
        if self._source is None or self._saving is not None:
            return
        path = SheetFileQuestion.ask(self, self._suggested(self._source))
        form = format_of(path) if path is not None else None
        if path is None or form is None or self._source is None:
            return
        self._saving = Reading(partial(_write, self._source, form, self.bar.paper, path))
        self._saving.done.connect(self._on_saved)
        self._saving.failed.connect(self._on_failed)
        self._saving.ended.connect(self._on_saving_ended)
        self.save.setEnabled(False)
        say(self.trouble, "")
        say(self.said, f"Saving “{path.name}”…")
        self._saving.start()

    def _suggested(self, source: SheetSource) -> Path:
        stored = self._settings.stored
        folder = Path(str(stored.value("sheet/folder", str(Path.home()))))
        form = format_of(Path(f"x.{stored.value('sheet/format', 'pdf')}")) or "pdf"
        return (folder if folder.is_dir() else Path.home()) / source.file_name(f".{form}")

    def _on_saved(self, saved: object) -> None:
        path, stored = cast("Path", saved), self._settings.stored
        stored.setValue("sheet/folder", str(path.parent))
        stored.setValue("sheet/format", format_of(path))
        self._tell(f"Saved as “{path}”.")

    def _on_saving_ended(self) -> None:
        self._saving = None
        self.save.setEnabled(self._source is not None)

    def _tell(self, sentence: str) -> None:
        say(self.trouble, "")
        say(self.said, sentence)
        self.told.emit(sentence)

    # Qt's own names from here on.

    def showEvent(self, event: QShowEvent) -> None:
        """Catch up with what changed while the window was put away."""
        super().showEvent(event)
        self.refresh()
        self.pages.setFocus()

    def reject(self) -> None:
        """Escape closes like the frame's button does."""
        self.close()

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if theme.font_changed(event) and hasattr(self, "text"):
            self.text.setFont(QFontDatabase.systemFont(QFontDatabase.SystemFont.GeneralFont))

    def closeEvent(self, event: QCloseEvent) -> None:
        """Draw nothing more; a file that is being written is finished."""
        self._settle.stop()
        self._resettle.stop()
        self.drawing.drop()
        self.printing.drop()
        self._settings.stored.setValue("sheet/geometry", self.saveGeometry())
        event.accept()


def _write(source: SheetSource, form: Format, paper: Paper, path: Path, _reading: Reading) -> Path:
    from sizekeeper.reports.export import written  # noqa: PLC0415 - each format loads what it needs
    from sizekeeper.reports.filing import write_file  # noqa: PLC0415 - as above

    write_file(path, written(source.sheet(), form, paper), replace=True)
    return path
