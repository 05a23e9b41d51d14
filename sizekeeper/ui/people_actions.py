"""The ways people come in and go out as tables: a file, what is on the clipboard, and a file to be written."""

from __future__ import annotations

import datetime as dt
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Literal, cast

from PySide6.QtGui import QAction, QGuiApplication
from PySide6.QtWidgets import QFileDialog, QWidget

from sizekeeper.core.person import Person
from sizekeeper.ui.import_waiting import Waiting

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from PySide6.QtCore import QMimeData

    from sizekeeper.importing.people_draft import PeopleDraft
    from sizekeeper.ui.import_reading import Reading
    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Change, Session
    from sizekeeper.ui.settings import Settings

KINDS = "*.xlsx *.xlsm *.xlsb *.xls *.ods *.csv *.tsv *.tab *.txt *.html *.htm *.pdf"


class PeopleFile:
    """The question which file of people to import. A test puts its own answer here."""

    @classmethod
    def ask(cls, parent: QWidget, folder: Path) -> Path | None:
        """The chosen file, None when the question was put away."""
        kinds = f"Tables ({KINDS});;All files (*)"
        short = QFileDialog.Option.HideNameFilterDetails
        name, _ = QFileDialog.getOpenFileName(parent, "Import people", str(folder), kinds, options=short)
        return Path(name) if name else None


class PeopleActions(Waiting):
    """The actions that bring people in and out."""

    title = "Import people"

    def __init__(self, session: Session, selection: Selection, settings: Settings, window: QWidget) -> None:
        super().__init__(window)
        self._session, self._selection, self._settings = session, selection, settings
        self.file = self._action("I&mport people…", self._ask_for_file)
        self.paste = self._action("&Paste people", self._paste)
        self.export = self._action("E&xport people…", self._export)
        session.changed.connect(self._follow)
        self._enable()

    def _action(self, text: str, run: Callable[[], object]) -> QAction:
        action = QAction(text, self)
        action.triggered.connect(run)
        return action

    def _follow(self, change: Change) -> None:
        if "person" in change.kinds:
            self._enable()

    def _enable(self) -> None:
        """Export is offered when there is somebody."""
        self.export.setEnabled(bool(self._session.people(hidden=True)))

    def _ask_for_file(self) -> None:
        stored = self._settings.stored
        path = PeopleFile.ask(self._window, Path(str(stored.value("people/folder", str(Path.home())))))
        if path is not None:
            stored.setValue("people/folder", str(path.parent))
            self.read_file(path)

    def read_file(self, path: Path) -> None:
        """Read a file in the background and show what it holds."""
        self._read(f"Reading “{path.name}”…", partial(_open_file, path, *self._around()))

    def _paste(self) -> None:
        mime = cast("QMimeData | None", QGuiApplication.clipboard().mimeData())  # None when nothing was ever copied
        html = mime.html() if mime is not None and mime.hasHtml() else ""
        text = mime.text() if mime is not None and mime.hasText() else ""
        self.read_source((html, text))

    def read_source(self, source: object) -> None:
        """Read a file, or HTML and text, that turned out to hold people."""
        if isinstance(source, Path):
            self.read_file(source)
        else:
            html, text = cast("tuple[str, str]", source)
            self._read("Reading what was pasted…", partial(_open_pasted, html, text, *self._around()))

    def _around(self) -> tuple[list[Person], dt.date, Literal["cm", "in"]]:
        """What a reading needs to know besides the table: who is there, the day, and the unit of somebody new."""
        people = [value for value in self._session.values() if isinstance(value, Person)]
        return people, dt.datetime.now().astimezone().date(), self._settings.unit

    def _export(self) -> None:
        from sizekeeper.ui.people_export import ExportDialog  # noqa: PLC0415 - seldom wanted

        dialog = ExportDialog(self._session, self._settings, self._window)
        dialog.written.connect(self.told)
        dialog.open()

    def show_read(self, found: object) -> None:
        """Show the people of a table."""
        from sizekeeper.ui.people_window import PeopleWindow  # noqa: PLC0415 - seldom wanted

        window = PeopleWindow(
            cast("PeopleDraft", found), self._session, self._selection, self._settings.unit, self._window
        )
        window.saved.connect(self.told)
        self._show(window)


def _open_file(
    path: Path, known: Sequence[Person], today: dt.date, unit: Literal["cm", "in"], reading: Reading
) -> PeopleDraft:
    from sizekeeper.importing.people_draft import NOTHING_SAID  # noqa: PLC0415 - the reader is not loaded at start-up
    from sizekeeper.importing.people_open import open_people_file  # noqa: PLC0415 - as above
    from sizekeeper.importing.people_read import read_people  # noqa: PLC0415 - as above

    name, sheets = open_people_file(path, reading.progress)
    return read_people(name, sheets, NOTHING_SAID, known, today, unit, reading.progress)


def _open_pasted(
    html: str, text: str, known: Sequence[Person], today: dt.date, unit: Literal["cm", "in"], reading: Reading
) -> PeopleDraft:
    from sizekeeper.importing.people_draft import NOTHING_SAID  # noqa: PLC0415 - as above
    from sizekeeper.importing.people_open import open_people_pasted  # noqa: PLC0415 - as above
    from sizekeeper.importing.people_read import read_people  # noqa: PLC0415 - as above

    name, sheets = open_people_pasted(html, text)
    return read_people(name, sheets, NOTHING_SAID, known, today, unit, reading.progress)
