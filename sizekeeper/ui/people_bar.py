"""The foot of the window that imports people: what holds where the table says nothing, what saving does, and Save."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from sizekeeper.core.found_words import HANDS
from sizekeeper.core.groups import groups_in, groups_text, known_groups
from sizekeeper.importing.people_saving import plan_people
from sizekeeper.store.codec import new_id
from sizekeeper.ui import theme
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.people_groups_field import GroupsField
from sizekeeper.ui.person_fields import CalmCombo, DayField

if TYPE_CHECKING:
    from PySide6.QtCore import QEvent

    from sizekeeper.importing.people_saving import PeoplePlan
    from sizekeeper.ui.people_correcting import PeopleCorrecting


class PeopleBar(QWidget):
    """Day, hand and groups for what names none; then Cancel and Save.

    Signals:
        save_wanted(): Save was pressed, and there is something to save.
        cancel_wanted(): Cancel was pressed.
    """

    save_wanted = Signal()
    cancel_wanted = Signal()

    def __init__(self, correcting: PeopleCorrecting, *, read_only: bool, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._correcting, self._read_only = correcting, read_only
        self.on = DayField("Day of figures that name none", self)
        self.by = CalmCombo("Who measured, where nothing says so", self)
        self.by.addItems(list(HANDS.values()))
        self.groups = GroupsField("Groups for all of them", self._known_groups, self)
        self.groups.setPlaceholderText("household, class")
        self.undated = Lettering("", "note", self)
        self.says = Lettering("", "muted", self)
        self.cancel = QPushButton("Cancel", self)
        self.save = QPushButton("&Save", self)
        for button in (self.save, self.cancel):
            button.setAutoDefault(False)
        self._arrange()
        self._connect()

    def _known_groups(self) -> tuple[str, ...]:
        return known_groups(self._correcting.known)

    def _arrange(self) -> None:
        fields = QHBoxLayout()
        for text, widgets in (
            ("Where it says nothing: measured &on", (self.on, self.by)),
            ("All belong &to", (self.groups,)),
        ):
            label = QLabel(text, self)
            label.setBuddy(widgets[0])
            fields.addWidget(label)
            for widget in widgets:
                fields.addWidget(widget)
            fields.addSpacing(theme.spacing(1))
        fields.setStretch(fields.count() - 2, 1)
        self._fields = fields
        foot = QHBoxLayout()
        foot.addWidget(self.says, 1)
        foot.addWidget(self.cancel)
        foot.addWidget(self.save)
        self._foot = foot
        self._column = QVBoxLayout(self)
        self._column.addLayout(fields)
        self._column.addWidget(self.undated)
        self._column.addLayout(foot)
        self._space()

    def _connect(self) -> None:
        self.on.day_entered.connect(self._on_day)
        self.by.activated.connect(self._on_hand)
        self.groups.entered.connect(self._on_groups)
        self.cancel.clicked.connect(self.cancel_wanted)
        self.save.clicked.connect(self._on_save)

    def follow(self) -> None:
        """Show what holds now, and what saving would do."""
        draft, answers = self._correcting.draft, self._correcting.answers
        self.on.blockSignals(True)
        self.on.show_day(answers.on or self._correcting.today, self._correcting.today)
        self.on.blockSignals(False)
        self.by.setCurrentIndex(list(HANDS).index(answers.by))
        self.groups.show_text(groups_text(answers.groups))
        self.on.setEnabled(draft.undated > 0)
        self.by.setEnabled(draft.unsigned > 0)
        self.undated.setText(_undated_words(draft.undated, draft.unsigned))
        self.undated.setVisible(any(one.readings for one in draft.people))
        sentence, stops = self._sentence()
        self.says.speak(sentence, "warning" if stops else "muted")
        self.save.setEnabled(not stops)

    def plan(self) -> PeoplePlan:
        """What saving does now."""
        return plan_people(self._correcting.draft, self._correcting.known, new_id)

    def _sentence(self) -> tuple[str, bool]:
        """What saving does, or what stands in its way."""
        draft = self._correcting.draft
        if self._read_only:
            return "The library can only be looked at in this window, so nothing can be saved.", True
        if draft.table is None or not (draft.people or draft.open):
            return "There is nobody to save yet.", True
        if draft.open:
            count = len(draft.open)
            words = "One question has" if count == 1 else f"{count} questions have"
            return f"{words} to be answered before these people can be saved.", True
        plan = self.plan()
        return plan.says, not plan.pairs

    def _on_day(self, day: object) -> None:
        self._correcting.fill_in(on=day)

    def _on_hand(self, row: int) -> None:
        self._correcting.fill_in(by=list(HANDS)[row])

    def _on_groups(self, text: str) -> None:
        self._correcting.fill_in(groups=groups_in(text))

    def _on_save(self) -> None:
        self.groups.finish()
        if not self._correcting.busy and self.save.isEnabled():
            self.save_wanted.emit()

    def _space(self) -> None:
        self._column.setContentsMargins(theme.spacing(3), theme.spacing(1.25), theme.spacing(3), theme.spacing(1.5))
        self._column.setSpacing(theme.spacing(0.5))
        for line in (self._fields, self._foot):
            line.setSpacing(theme.spacing(1))

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if theme.font_changed(event):
            self._space()


def _undated_words(undated: int, unsigned: int) -> str:
    """How many figures these fields are about."""
    if not undated and not unsigned:
        return "Every figure names its day and who measured."
    if undated == unsigned:
        return f"{_figures(undated)} neither the day nor who measured."
    told = [f"{_figures(undated)} no day"] if undated else []
    told += [f"{_figures(unsigned)} nobody who measured"] if unsigned else []
    return f"{'; '.join(told)}."


def _figures(count: int) -> str:
    return "One figure names" if count == 1 else f"{count} figures name"
