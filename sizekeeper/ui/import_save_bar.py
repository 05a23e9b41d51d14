"""Where a reading goes: a new pattern with its title and garment, or an existing one, and what that changes."""

from __future__ import annotations

from typing import TYPE_CHECKING, cast

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QButtonGroup,
    QCheckBox,
    QComboBox,
    QGridLayout,
    QHBoxLayout,
    QLineEdit,
    QListWidget,
    QPushButton,
    QRadioButton,
    QVBoxLayout,
    QWidget,
)

from sizekeeper.core.pattern import Pattern
from sizekeeper.core.preference import GARMENTS, Garment
from sizekeeper.importing.opened import headings, likely_title
from sizekeeper.importing.saving import likely_child, likely_garment, new_pattern, plan_into, plan_new
from sizekeeper.store.codec import new_id
from sizekeeper.ui import theme
from sizekeeper.ui.entry_words import entry_name
from sizekeeper.ui.lettering import Lettering

if TYPE_CHECKING:
    from PySide6.QtCore import QEvent

    from sizekeeper.core.measure import Measures
    from sizekeeper.importing.opened import Opened
    from sizekeeper.importing.saving import Plan
    from sizekeeper.ui.session import Session

_LINES = 4


class SaveBar(QWidget):
    """The foot of the import window.

    Signals:
        save_wanted(): Save was pressed, and there is something to save and a place for it.
        cancel_wanted(): Cancel was pressed.
    """

    save_wanted = Signal()
    cancel_wanted = Signal()

    def __init__(self, session: Session, measures: Measures, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._measures = measures
        self._opened: Opened | None = None
        self._entry = new_id()
        self.new = QRadioButton("&New pattern", self)
        self.into = QRadioButton("&Fill in a pattern", self)
        self.title = QLineEdit(self)
        self.garment = QComboBox(self)
        self.child = QCheckBox("For &children", self)
        self.patterns = QComboBox(self)
        self.changes = QListWidget(self)
        self.hint = Lettering("", "muted", self)
        self.cancel = QPushButton("Cancel", self)
        self.save = QPushButton("&Save", self)
        self._dress()
        self._arrange()
        self._connect()

    def _dress(self) -> None:
        self._targets = QButtonGroup(self)
        for target in (self.new, self.into):
            self._targets.addButton(target)
        self.new.setChecked(True)
        self.title.setAccessibleName("Title of the new pattern")
        self.garment.setAccessibleName("Garment of the new pattern")
        for garment in GARMENTS:
            self.garment.addItem(garment.capitalize(), garment)
        self.patterns.setAccessibleName("Pattern to fill in")
        self.patterns.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.changes.setAccessibleName("What saving changes")
        self.changes.setWordWrap(True)
        self.changes.setFrameShape(QListWidget.Shape.NoFrame)
        self.changes.setSelectionMode(QListWidget.SelectionMode.NoSelection)
        self.changes.viewport().setAutoFillBackground(False)
        self.save.setDefault(False)
        for button in (self.save, self.cancel):
            button.setAutoDefault(False)

    def _arrange(self) -> None:
        fields = QGridLayout()
        fields.addWidget(self.new, 0, 0)
        fields.addWidget(self.title, 0, 1)
        more = QHBoxLayout()
        more.setSpacing(theme.spacing(2))
        more.addWidget(self.garment)
        more.addWidget(self.child)
        more.addStretch(1)
        fields.addLayout(more, 1, 1)
        fields.addWidget(self.into, 2, 0)
        fields.addWidget(self.patterns, 2, 1)
        fields.setColumnStretch(1, 1)
        middle = QVBoxLayout()
        middle.setSpacing(theme.spacing(0.5))
        middle.addWidget(Lettering("What saving does", "small heading", self))
        middle.addWidget(self.changes)
        middle.addWidget(self.hint)
        middle.addStretch(1)
        buttons = QHBoxLayout()
        buttons.addWidget(self.cancel)
        buttons.addWidget(self.save)
        self._row = QHBoxLayout(self)
        self._row.addLayout(fields, 5)
        self._row.addLayout(middle, 6)
        self._row.addLayout(buttons)
        self._row.setAlignment(buttons, Qt.AlignmentFlag.AlignBottom)
        self._fields, self._buttons = fields, buttons
        self._space()

    def _connect(self) -> None:
        self._targets.buttonClicked.connect(self._refresh)
        self.title.textChanged.connect(self._refresh)
        self.garment.activated.connect(self._refresh)
        self.child.clicked.connect(self._refresh)
        self.patterns.activated.connect(self._on_pattern)
        self.title.textEdited.connect(self._on_title)
        self.cancel.clicked.connect(self.cancel_wanted)
        self.save.clicked.connect(self._on_save)

    def begin(self, opened: Opened) -> None:
        """Propose a title, a garment and whether it is for children."""
        self._opened = opened
        title = likely_title(opened)
        self.title.setText(title)
        words = " ".join([title, *headings(opened)])
        self.garment.setCurrentIndex(self.garment.findData(likely_garment(words)))
        self.child.setChecked(likely_child(opened.tables))
        self.follow(opened)

    def follow(self, opened: Opened) -> None:
        """Say what saving changes now: the reading, or the library, is another one."""
        self._opened = opened
        chosen = self.patterns.currentData()
        self.patterns.clear()
        for pattern in self._session.patterns():
            self.patterns.addItem(entry_name(pattern), pattern.id)
        self.patterns.setCurrentIndex(max(self.patterns.findData(chosen), 0))
        if not self.patterns.count():
            self.new.setChecked(True)
        self.into.setEnabled(bool(self.patterns.count()))
        self.patterns.setEnabled(bool(self.patterns.count()))
        self._refresh()

    def propose(self, pattern: str) -> None:
        """Name the pattern that would be filled in; a new one stays the choice."""
        self.patterns.setCurrentIndex(max(self.patterns.findData(pattern), 0))

    def plan(self) -> Plan | None:
        """What saving does now; None while there is nothing to save or no place for it."""
        if self._opened is None or not self._opened.tables:
            return None
        if self.into.isChecked():
            pattern = self._session.committed(str(self.patterns.currentData()))
            if not isinstance(pattern, Pattern):
                return None
            charts = self._session.charts(pattern.id)
            return plan_into(self._opened, pattern, charts, self._measures, new_id)
        title = " ".join(self.title.text().split())
        garment = cast("Garment", self.garment.currentData())
        pattern = new_pattern(self._opened, self._entry, title, garment, child=self.child.isChecked())
        return plan_new(self._opened, pattern, self._measures, new_id) if title else None

    def _refresh(self) -> None:
        plan = self.plan()
        self.changes.clear()
        self.changes.addItems(list(plan.changes) if plan else [])
        sentence, voice = self._says(plan)
        self.hint.speak(sentence, "warning" if voice else "muted")
        self.hint.setVisible(bool(sentence))
        self.save.setEnabled(plan is not None and not self._session.read_only)

    def _says(self, plan: Plan | None) -> tuple[str, bool]:
        """A sentence on what stands in the way or is worth knowing, and whether it warns."""
        if self._session.read_only:
            return "The library can only be looked at in this window, so nothing can be saved.", True
        if self._opened is None or not self._opened.tables:
            return "There is no table to save yet.", True
        if plan is None:
            return "Give the new pattern a title.", True
        titles = {pattern.title.casefold() for pattern in self._session.patterns(hidden=True)}
        if self.new.isChecked() and plan.pattern.title.casefold() in titles:
            return "There is a pattern with this title already; this makes a second one.", True
        return "", False

    def _on_pattern(self) -> None:
        self.into.setChecked(True)
        self._refresh()

    def _on_title(self) -> None:
        self.new.setChecked(True)
        self._refresh()

    def _on_save(self) -> None:
        if self.plan() is not None and self.save.isEnabled():
            self.save_wanted.emit()

    def _space(self) -> None:
        self._row.setContentsMargins(theme.spacing(3), theme.spacing(1.5), theme.spacing(3), theme.spacing(2))
        self._row.setSpacing(theme.spacing(4))
        self._fields.setHorizontalSpacing(theme.spacing(1.5))
        self._fields.setVerticalSpacing(theme.spacing(0.75))
        self._buttons.setSpacing(theme.spacing(1))
        self.changes.setFixedHeight(round(self.fontMetrics().lineSpacing() * (_LINES + 0.5)))

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if theme.font_changed(event):
            self._space()
