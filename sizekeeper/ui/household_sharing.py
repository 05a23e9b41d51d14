"""Sizes to trace for these people: who takes which line, and what fewer lines would cost each of them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QItemSelectionModel, Signal
from PySide6.QtWidgets import QCheckBox, QHBoxLayout, QVBoxLayout, QWidget

from sizekeeper.core.household_words import (
    alteration_short,
    alterations_words,
    choice_words,
    line_words,
    name_of,
    name_short,
    number,
    off_words,
    shared_words,
    short,
    wearers_words,
)
from sizekeeper.core.places import join
from sizekeeper.ui import theme
from sizekeeper.ui.fit_lines import Line
from sizekeeper.ui.fit_table import LineTable
from sizekeeper.ui.lettering import Lettering, say

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sizekeeper.core.sharing import Choice, Shared, SharedLine, Sharing
    from sizekeeper.core.sharing import Line as OwnLine
    from sizekeeper.core.wording import Wording

_WHAT = (
    "Off by is the root mean square over the people who share, so that one far off counts more than two a little off."
)
_PAIR = 2
_ROW, _NAME = 26, 16
"""So many letters of names stand in a row of the first list, and in the last (coined)."""


class SharingPart(QWidget):
    """Three lists side by side: each her own line, the ways to share, and what each must alter on the one picked.

    Signals:
        between_chosen(bool): whether lines between two sizes may be shared.
    """

    between_chosen = Signal(bool)

    def __init__(self, parent: QWidget | None = None) -> None:
        """Start with nobody."""
        super().__init__(parent)
        self._ways: list[Choice] = []
        self._words: Wording | None = None
        self.title = Lettering("Sizes to trace for these people", "part", self)
        self.between = QCheckBox("Share lines between sizes too", self)
        self.between.setChecked(True)
        self.note = Lettering("", "note", self)
        self.note.setWordWrap(False)
        self.own = LineTable(("Line", "Who takes it"), "A line for each", self, words_in=1, choose=True)
        self.ways = LineTable(("Share", "Lines", "Off by"), "Ways to share lines", self, words_in=1, choose=True)
        self.alter = LineTable(("Who", "Off by", "To alter"), "What each must alter", self, words_in=2, choose=True)
        self._lay_out()
        self.own.lines.set_words_in(frozenset({0, 1}))
        self.ways.lines.set_words_in(frozenset({0, 1}))
        self.alter.lines.set_words_in(frozenset({0, 2}))
        self.ways.setToolTip(_WHAT)
        self.ways.selectionModel().currentRowChanged.connect(self._show_picked)
        self.between.toggled.connect(self.between_chosen)

    def _lay_out(self) -> None:
        head = QHBoxLayout()
        head.addWidget(self.title)
        head.addWidget(self.note)
        head.addStretch(1)
        head.addWidget(self.between)
        head.setSpacing(theme.spacing(2))
        across = QHBoxLayout()
        across.setSpacing(theme.spacing(3))
        titles = ("A line for each", "Fewer lines", "To alter on them")
        for words, table, share in zip(titles, (self.own, self.ways, self.alter), (9, 12, 13), strict=True):
            column = QVBoxLayout()
            column.setSpacing(theme.spacing(0.5))
            column.addWidget(Lettering(words, "muted", self))
            column.addWidget(table, 1)
            across.addLayout(column, share)
        self._column = QVBoxLayout(self)
        self._column.addLayout(head)
        self._column.addLayout(across, 1)
        self._space()

    @property
    def picked(self) -> Choice | None:
        """The way to share that is picked."""
        row = self.ways.currentIndex().row()
        return self._ways[row] if 0 <= row < len(self._ways) else None

    def show_sharing(self, sharing: Sharing, words: Wording) -> None:
        """Show who shares what; the way that was picked stays picked while it is there."""
        before = self.ways.currentIndex().row()
        self._words = words
        self._ways = [*sharing.choices, *sharing.groups]
        self.own.show_lines([one for line in sharing.own for one in _own_lines(line, words)])
        said = [_choice_line(choice, words) for choice in sharing.choices]
        self.ways.show_lines([*said, *(_group_line(group, words) for group in sharing.groups)])
        names = join([name_of(standing) for standing in sharing.left_out])
        say(self.note, f"No line serves {name_short(names, 60)}." if names else "")
        self.note.setToolTip(names)
        row = before if 0 <= before < len(self._ways) else 0
        flags = QItemSelectionModel.SelectionFlag.ClearAndSelect | QItemSelectionModel.SelectionFlag.Rows
        self.ways.selectionModel().setCurrentIndex(self.ways.lines.index(row, 0), flags)
        self._show_picked()

    def _show_picked(self) -> None:
        if self._words is None:
            return
        shared = self.picked.lines if self.picked is not None else ()
        self.alter.show_lines([line for one in shared for line in _alter_lines(one, self._words)])

    def _space(self) -> None:
        self._column.setContentsMargins(theme.spacing(4), theme.spacing(1), theme.spacing(2), theme.spacing(1.5))
        self._column.setSpacing(theme.spacing(1))

    # Qt's own names from here on.

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if hasattr(self, "_column") and theme.font_changed(event):
            self._space()


def _own_lines(line: OwnLine, words: Wording) -> list[Line]:
    """Who takes a line, on as many rows as the names need; the line is named once."""
    who = wearers_words(line, words)
    said = f"{line_words(line)}: {', '.join(who)}"
    rows: list[str] = []
    for name in who:
        if rows and len(rows[-1]) + len(name) < _ROW:
            rows[-1] = f"{rows[-1]}, {name}"
        else:
            rows.append(name_short(name, _ROW))
    first, *others = rows
    return [Line((short(line.place, line.labels), first), said), *(Line(("", other), said) for other in others)]


def _choice_line(choice: Choice, words: Wording) -> Line:
    """So many lines for everybody."""
    count = f"{number(choice.count)} line{'' if choice.count == 1 else 's'}"
    off = off_words(choice.misfit_cm, words)
    said = f"{count} for everybody: {'; '.join(shared_words(one) for one in choice.lines)}; off by {off}"
    return Line((count[:1].upper() + count[1:], choice_words(choice), off), said)


def _group_line(group: Choice, words: Wording) -> Line:
    """The two, three ... who share one line best."""
    people = group.lines[0].people
    who = "Closest pair" if len(people) == _PAIR else f"Closest {number(len(people))}"
    off = off_words(group.misfit_cm, words)
    line = group.lines[0].line
    names = ", ".join(name_of(person.standing) for person in people)
    return Line(
        (who, f"{short(line.place, line.labels)}: {names}", off), f"{who}: {shared_words(group.lines[0])}; off by {off}"
    )


def _alter_lines(shared: SharedLine, words: Wording) -> Sequence[Line]:
    """A line, who wears it, and a row for each thing to alter."""
    place = short(shared.line.place, shared.line.labels)
    heading = Line((place, "", ""), f"On {line_words(shared.line)}", strong=True)
    return [heading, *(line for person in shared.people for line in _person_lines(person, shared, words))]


def _person_lines(person: Shared, shared: SharedLine, words: Wording) -> Sequence[Line]:
    name, off = name_of(person.standing), off_words(person.misfit_cm, words)
    own = off_words(person.own_cm, words)
    said = f"{name} on {line_words(shared.line)}, off by {off}, where the best line is off by {own}"
    said = f"{said}: {alterations_words(person, words)}"
    first, *others = [alteration_short(one, words) for one in person.alterations] or ["nothing to alter"]
    rest = [Line(("", "", other), said) for other in others]
    return [Line((name_short(name, _NAME), off, first), said), *rest]
