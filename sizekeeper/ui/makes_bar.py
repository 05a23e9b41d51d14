"""What stands over the list of makes: the search box, whose they are, how far they are, and the hidden ones."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QSignalBlocker, Signal
from PySide6.QtWidgets import QCheckBox, QComboBox, QHBoxLayout, QLineEdit, QWidget

from sizekeeper.core.groups import known_groups
from sizekeeper.core.make_words import PROGRESS_WORDS
from sizekeeper.ui import theme
from sizekeeper.ui.entry_words import entry_name
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.makes_rows import Sieve
from sizekeeper.ui.person_fields import CalmCombo

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sizekeeper.core.person import Person

_EVERYBODY, _GROUP, _PERSON = "", "group ", "person "


class MakesBar(QWidget):
    """The choices that say which makes are listed.

    Signals:
        changed(): something else is chosen.
    """

    changed = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        """Everything but what is hidden."""
        super().__init__(parent)
        self.search = QLineEdit(self)
        self.search.setPlaceholderText("Find a make")
        self.search.setAccessibleName("Find a make")
        self.search.setClearButtonEnabled(True)
        self.whose = CalmCombo("Makes for", self)
        self.whose.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.whose.setMinimumContentsLength(14)
        self.whose.addItem("Everybody", _EVERYBODY)
        self.far = CalmCombo("How far they are", self)
        self.far.addItem("At any stage", "")
        for progress, words in PROGRESS_WORDS.items():
            self.far.addItem(words.capitalize(), progress)
        self.hidden = QCheckBox("Show hidden", self)
        self.count = Lettering("", "note", self)
        self.count.setWordWrap(False)
        self._row = QHBoxLayout(self)
        self._row.addWidget(self.search, 1)
        for widget in (self.whose, self.far, self.hidden, self.count):
            self._row.addWidget(widget)
        self._space()
        self.search.textChanged.connect(self.changed)
        self.whose.currentIndexChanged.connect(self.changed)
        self.far.currentIndexChanged.connect(self.changed)
        self.hidden.toggled.connect(self.changed)

    @property
    def sieve(self) -> Sieve:
        """What is chosen."""
        whose = str(self.whose.currentData() or "")
        return Sieve(
            group=whose.removeprefix(_GROUP) if whose.startswith(_GROUP) else "",
            person=whose.removeprefix(_PERSON) if whose.startswith(_PERSON) else "",
            progress=str(self.far.currentData() or ""),
            words=self.search.text(),
            hidden=self.hidden.isChecked(),
        )

    def offer(self, people: Sequence[Person]) -> None:
        """Offer the groups and the people there are; the one chosen stays while it is there."""
        wanted = [("Everybody", _EVERYBODY)]
        wanted += [(group, f"{_GROUP}{group}") for group in known_groups(people)]
        wanted += [(entry_name(person), f"{_PERSON}{person.id}") for person in people]
        shown = [(self.whose.itemText(i), self.whose.itemData(i)) for i in range(self.whose.count())]
        if shown != wanted:
            before = self.whose.currentData()
            with QSignalBlocker(self.whose):
                self.whose.clear()
                for text, data in wanted:
                    self.whose.addItem(text, data)
                self.whose.setCurrentIndex(max(0, self.whose.findData(before)))

    def say_count(self, shown: int, known: int) -> None:
        """Say how many makes are listed."""
        makes = "1 make" if known == 1 else f"{known} makes"
        self.count.setText(makes if shown == known else f"{shown} of {makes}")

    def let_everything_through(self) -> None:
        """List every make, hidden ones too, so that one of them can be shown."""
        with QSignalBlocker(self):
            self.search.clear()
            self.whose.setCurrentIndex(0)
            self.far.setCurrentIndex(0)
            self.hidden.setChecked(True)
        self.changed.emit()

    def _space(self) -> None:
        self._row.setContentsMargins(theme.spacing(4), theme.spacing(1.5), theme.spacing(3), theme.spacing(0.5))
        self._row.setSpacing(theme.spacing(1.5))

    # Qt's own names from here on.

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if hasattr(self, "_row") and theme.font_changed(event):
            self._space()
