"""The word on the Pattern page behind which the blank templates lie."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, cast

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QMenu

from sizekeeper.errors import SizekeeperError
from sizekeeper.ui.pattern_link import Link
from sizekeeper.ui.pattern_templates import KINDS, SaveTemplate, Template, templates

if TYPE_CHECKING:
    from PySide6.QtGui import QAction
    from PySide6.QtWidgets import QWidget

    from sizekeeper.ui.session import Session


class TemplateLink(Link):
    """Starts charts from a template, and saves blank ones to fill in elsewhere.

    Signals:
        start_wanted(object): the charts should start from a `Template`.
        said(str, str): what became of saving one, and the voice to say it in.
    """

    start_wanted = Signal(object)
    said = Signal(str, str)

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__("Templates", "Templates: start the charts from one, or save a blank one", parent)
        self._session = session
        self._saving: tuple[Template, str] | None = None
        menu = QMenu(self)
        menu.aboutToShow.connect(self._fill)
        self.setMenu(menu)

    def _fill(self) -> None:
        menu = self.menu()
        menu.clear()
        found = templates()
        if not self._session.read_only:
            start = menu.addMenu("Start from a template")
            for template in found:
                action = start.addAction(template.title)
                action.setData(template)
                action.triggered.connect(self._on_start)
        save = menu.addMenu("Save a blank template")
        for template in found:
            for kind, name in KINDS.items():
                action = save.addAction(f"{template.title}, as {name}…")
                action.setData((template, kind))
                action.triggered.connect(self._on_save)

    def _on_start(self) -> None:
        self.start_wanted.emit(cast("QAction", self.sender()).data())

    def _on_save(self) -> None:
        template, kind = cast("QAction", self.sender()).data()
        self._saving = (template, kind)
        dialog = SaveTemplate.ask(template, kind, parent=self.window())
        dialog.fileSelected.connect(self._on_file)

    def _on_file(self, path: str) -> None:
        if self._saving is None:
            return
        try:
            SaveTemplate.write(*self._saving, Path(path))
        except SizekeeperError as error:
            self.said.emit(str(error), "warning")
        else:
            self.said.emit(f"The blank template is in “{path}”.", "muted")
