"""The Person page: who she is, her measurements as typed, and how to take them."""

from __future__ import annotations

import datetime as dt
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QStackedLayout, QVBoxLayout, QWidget

from sizekeeper.core.person import Person
from sizekeeper.store.codec import new_id
from sizekeeper.ui import theme
from sizekeeper.ui.empty_page import EmptyPage
from sizekeeper.ui.person_desk import PersonDesk, Today
from sizekeeper.ui.person_header import PersonHeader
from sizekeeper.ui.person_taking import TakingBar
from sizekeeper.ui.reading_list import ReadingList
from sizekeeper.ui.reading_panel import ReadingPanel
from sizekeeper.ui.selection import Place

if TYPE_CHECKING:
    from PySide6.QtGui import QShowEvent

    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Session
    from sizekeeper.ui.settings import Settings

NEW_NAME = "New person"
_WIDEST_LIST = 84
"""Steps of spacing; in a wider list the eye would lose the line."""


class PersonPage(QWidget):
    """One person's measurements. Typing them with Enter or Tab between is the main job here."""

    def __init__(
        self,
        session: Session,
        selection: Selection,
        settings: Settings,
        parent: QWidget | None = None,
        *,
        today: Today = dt.date.today,
    ) -> None:
        super().__init__(parent)
        self._selection = selection
        self._behind = True
        self.desk = PersonDesk(session, selection, settings, today, self)
        self.header = PersonHeader(self.desk)
        self.taking = TakingBar(self.desk)
        self.list = ReadingList(self.desk)
        self.panel = ReadingPanel(self.desk)
        self._lay()
        self._connect()
        self._on_switched()

    def _lay(self) -> None:
        full = QWidget(self)
        left, right = QVBoxLayout(), QVBoxLayout()
        for column, parts in ((left, (self.header, self.taking, self.list)), (right, (self.header.notes, self.panel))):
            column.setSpacing(theme.spacing(2))
            for part in parts:
                column.addWidget(part)
            column.setStretch(column.count() - 1, 1)
        measured = QWidget(full)
        measured.setLayout(left)
        left.setContentsMargins(0, 0, 0, 0)
        measured.setMaximumWidth(theme.spacing(_WIDEST_LIST))
        page = QHBoxLayout(full)
        margin = theme.spacing(3)
        page.setContentsMargins(margin, theme.spacing(2), margin, theme.spacing(1.5))
        page.setSpacing(theme.spacing(4))
        page.addWidget(measured, 1)
        page.addLayout(right, 1)
        self._stack = QStackedLayout(self)
        self._stack.addWidget(full)
        empty = EmptyPage(
            "Whose measurements?",
            "Choose a person on the left, or add one and type the eight figures that matter most.",
            "&Add a person",
            self,
        )
        self.add = empty.button
        self._stack.addWidget(empty)

    def _connect(self) -> None:
        self.desk.leaving.connect(self.finish)
        self.desk.switched.connect(self._on_switched)
        self.desk.refreshed.connect(self._on_refreshed)
        self.header.done.connect(self.start)
        self.list.left_at_top.connect(self._on_left_at_top)
        self.panel.left.connect(self.list.go_to)
        self.add.clicked.connect(self.add_person)

    def start(self) -> None:
        """Put the cursor where typing goes on: the first measurement that is missing."""
        self.list.go_to(self.list.first())

    def name_person(self) -> None:
        """Put the cursor in the name, chosen whole: for a person just added."""
        self.header.name.setFocus(Qt.FocusReason.OtherFocusReason)
        self.header.name.selectAll()

    def add_person(self) -> None:
        """Add a person and go to her name."""
        person = Person(id=new_id(), name=NEW_NAME, unit=self.desk.settings.unit)
        self.desk.session.apply("Add person", None, person, place=Place("person", person.id, "name"))
        self._selection.choose_person(person.id)
        self.name_person()

    def reveal(self, place: Place) -> None:
        """Put the cursor in the field in which an edit happened."""
        if self._behind:
            self._on_switched()
        header = self.header
        fields: dict[str, QWidget] = {"name": header.name, "born": header.born, "groups": header.groups}
        fields |= {
            "notes": header.notes,
            "unit": header.inch if header.inch.isChecked() else header.cm,
            "child": header.child,
        }
        if (field := fields.get(place.field)) is not None:
            field.setFocus(Qt.FocusReason.OtherFocusReason)
        elif place.field:
            self.list.go_to(place.field)

    def finish(self) -> None:
        """Make the edit of whatever is being typed on this page."""
        for part in (self.header, self.taking, self.list, self.panel):
            part.finish()

    def _on_switched(self) -> None:
        if not self.isVisible():
            self._behind = True
            return
        self._behind = False
        there = self.desk.person is not None
        self._stack.setCurrentIndex(0 if there else 1)
        self.add.setEnabled(not self.desk.read_only)
        if there:
            self.header.switched()
            self.taking.refresh()
            self.list.switched()
            self.desk.measure = ""
            self.desk.choose(self.list.first())

    def _on_refreshed(self) -> None:
        if not self.isVisible():
            self._behind = True
            return
        if (self.desk.person is not None) != (self._stack.currentIndex() == 0):
            self._on_switched()
            return
        for part in (self.header, self.taking, self.list, self.panel):
            part.refresh()

    def _on_left_at_top(self) -> None:
        self.header.name.setFocus(Qt.FocusReason.BacktabFocusReason)

    def showEvent(self, event: QShowEvent) -> None:
        """Catch up with what changed while another page was in front."""
        super().showEvent(event)
        if self._behind:
            self._on_switched()
