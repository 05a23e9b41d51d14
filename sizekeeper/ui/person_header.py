"""The head of the Person page: name, unit, birth date, child, groups and notes."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, Signal
from PySide6.QtWidgets import (
    QButtonGroup,
    QCheckBox,
    QHBoxLayout,
    QLabel,
    QRadioButton,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from sizekeeper.core.groups import as_known, groups_in, groups_text
from sizekeeper.core.staleness import grows, years_old
from sizekeeper.ui import theme
from sizekeeper.ui.day_text import read_day
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.people_groups_field import GroupsField
from sizekeeper.ui.person_fields import DraftField, DraftNotes, TitleField

if TYPE_CHECKING:
    from sizekeeper.core.person import Person
    from sizekeeper.ui.person_desk import PersonDesk

CHILD_CAUTION = (
    "Children’s clothes: cords, small parts and nightwear flammability follow local rules (EN 14682 and local law)."
)


class PersonHeader(QWidget):
    """Who is measured. Each change is an edit.

    Signals:
        done(): Enter in the name asks to go on to the measurements.
    """

    done = Signal()

    def __init__(self, desk: PersonDesk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.name = TitleField("Name", self)
        self.name.setPlaceholderText("Name")
        self.cm, self.inch = QRadioButton("cm", self), QRadioButton("in", self)
        self.cm.setAccessibleName("Figures typed in centimetres")
        self.inch.setAccessibleName("Figures typed in inches")
        self.units = QButtonGroup(self)
        self.units.addButton(self.cm)
        self.units.addButton(self.inch)
        self.born = DraftField("Born", self)
        self.born.setPlaceholderText("optional")
        self.age = Lettering("", "muted", self)
        self.child = QCheckBox("&Child", self)
        self.groups = GroupsField("Groups", desk.known_groups, self)
        self.groups.setPlaceholderText("household, friends")
        self.notes = DraftNotes("Notes", self)
        self.notes.setPlaceholderText("Notes: posture, one shoulder lower, likes and dislikes")
        self.says = Lettering("", "warning", self)
        self.caution = Lettering("", "note", self)
        self._lay()
        self._connect()

    def _lay(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(theme.spacing())
        column.addWidget(self.name)
        lines: tuple[tuple[tuple[str, tuple[QWidget, ...]], ...], ...] = (
            (("Figures in", (self.cm, self.inch)), ("&Born", (self.born, self.age, self.child))),
            (("Groups", (self.groups,)),),
        )
        for parts in lines:
            line = QHBoxLayout()
            line.setSpacing(theme.spacing())
            for label, widgets in parts:
                self._add_labelled(line, label, widgets)
            if len(parts) > 1:
                line.addStretch(1)
            column.addLayout(line)
        column.addWidget(self.says)
        column.addWidget(self.caution)
        self.age.setWordWrap(False)
        self.age.setSizePolicy(QSizePolicy.Policy.Maximum, QSizePolicy.Policy.Preferred)
        self._space()

    def _add_labelled(self, line: QHBoxLayout, label: str, widgets: tuple[QWidget, ...]) -> None:
        if line.count():
            line.addSpacing(theme.spacing(2))
        text = QLabel(label, self)
        text.setBuddy(widgets[0])
        for widget in (text, *widgets):
            line.addWidget(widget)

    def _space(self) -> None:
        self.name.dress()
        self.notes.setFixedHeight(theme.spacing(10))
        self.born.setFixedWidth(self.born.fontMetrics().averageCharWidth() * 14)

    def _connect(self) -> None:
        self.name.typed.connect(self._on_name_typed)
        self.name.entered.connect(self._on_name)
        self.name.restored.connect(self._desk.restore)
        self.name.stepped.connect(self._on_name_stepped)
        self.cm.clicked.connect(self._on_cm)
        self.inch.clicked.connect(self._on_inch)
        self.born.entered.connect(self._on_born)
        self.child.clicked.connect(self._on_child)
        self.groups.entered.connect(self._on_groups)
        self.groups.typed.connect(self._on_groups_typed)
        self.notes.typed.connect(self._on_notes_typed)
        self.notes.entered.connect(self._on_notes)
        self.notes.restored.connect(self._desk.restore)
        self.groups.restored.connect(self._desk.restore)

    def refresh(self) -> None:
        """Show the person as she is now."""
        desk, person = self._desk, self._desk.person
        if person is None:
            return
        today = desk.today()
        self.name.show_text(person.name)
        (self.inch if person.unit == "in" else self.cm).setChecked(True)
        self.born.show_text(desk.plain_day(person.born) if person.born else "")
        years = years_old(person.born, today) if person.born else None
        self.age.setText("" if years is None else f"{years} {'year' if years == 1 else 'years'} old")
        self.age.setVisible(years is not None)
        self.child.setChecked(desk.child)
        follows = person.born is not None and grows(person.born, today, child=False)
        self.child.setEnabled(not follows and not desk.read_only)
        self.child.setToolTip("By the date of birth" if follows else "Measurements count as old after 3 months, not 6")
        self.groups.show_text(groups_text(person.groups))
        self.notes.show_text(person.notes)
        self.caution.setText(CHILD_CAUTION)
        self.caution.setVisible(desk.child)
        for field in (self.name, self.born, self.groups, self.notes):
            field.setReadOnly(desk.read_only)
        for button in (self.cm, self.inch):
            button.setEnabled(not desk.read_only)

    def switched(self) -> None:
        """Another person: nothing typed for the one before stays."""
        for field in (self.name, self.born, self.groups):
            field.put_text("")
        self.say("")
        self.refresh()

    def say(self, sentence: str) -> None:
        """Explain what is wrong with a field, or nothing."""
        self.says.setText(sentence)
        self.says.setVisible(bool(sentence))

    def finish(self) -> None:
        """Make the edit of what is being typed."""
        for field in (self.name, self.born, self.groups, self.notes):
            field.finish()

    def _edit(self, text: str, after: Person, field: str) -> None:
        self.say("")
        self._desk.edit(text, after, field)

    def _on_name_typed(self, text: str) -> None:
        if (person := self._desk.person) is not None:
            self._desk.draft(replace(person, name=text.strip()))

    def _on_name(self, text: str) -> None:
        person = self._desk.person
        if person is None:
            return
        if text.strip():
            self.name.put_text(text.strip())
            self._edit("Change name", replace(person, name=text.strip()), "name")
        else:
            self._desk.restore()
            self.name.put_text(person.name)
            self.say("A person needs a name: the old one stays.")

    def _on_name_stepped(self, step: int) -> None:
        if step > 0:
            self.done.emit()

    def _on_cm(self) -> None:
        if (person := self._desk.person) is not None:
            self._edit("Type figures in cm", replace(person, unit="cm"), "unit")

    def _on_inch(self) -> None:
        if (person := self._desk.person) is not None:
            self._edit("Type figures in inches", replace(person, unit="in"), "unit")

    def _on_born(self, text: str) -> None:
        person = self._desk.person
        if person is None:
            return
        day, why = read_day(text, self._desk.today())
        if why:
            self.say(why)
        else:
            self._edit("Change birth date", replace(person, born=day), "born")
            self.refresh()

    def _on_child(self, checked: bool) -> None:  # noqa: FBT001 - Qt's own signal
        if (person := self._desk.person) is not None:
            self._edit("Mark as child" if checked else "Mark as grown", replace(person, child=checked), "child")

    def _on_groups_typed(self, text: str) -> None:
        if (person := self._desk.person) is not None:
            self._desk.draft(replace(person, groups=groups_in(text)))

    def _on_groups(self, text: str) -> None:
        if (person := self._desk.person) is not None:
            groups = as_known(groups_in(text), self._desk.known_groups())
            self.groups.put_text(groups_text(groups))
            self._edit("Change groups", replace(person, groups=groups), "groups")

    def _on_notes_typed(self, text: str) -> None:
        if (person := self._desk.person) is not None:
            self._desk.draft(replace(person, notes=text))

    def _on_notes(self, text: str) -> None:
        if (person := self._desk.person) is not None:
            self._edit("Change notes", replace(person, notes=text), "notes")

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if theme.font_changed(event) and hasattr(self, "caution"):
            self._space()
