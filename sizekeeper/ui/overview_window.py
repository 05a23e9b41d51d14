"""Everybody and every pattern: a grid of sizes, from which a click goes to the comparison."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QModelIndex, Signal
from PySide6.QtWidgets import QCheckBox, QComboBox, QHBoxLayout, QLineEdit, QStackedLayout, QVBoxLayout, QWidget

from sizekeeper.core.groups import belongs, known_groups
from sizekeeper.ui import theme
from sizekeeper.ui.comparison_window import ComparisonWindow
from sizekeeper.ui.entry_words import found_by
from sizekeeper.ui.lettering import Lettering, say
from sizekeeper.ui.overview_cell import LEGEND, SIZES
from sizekeeper.ui.overview_grid import OverviewGrid
from sizekeeper.ui.overview_model import OverviewModel
from sizekeeper.ui.overview_order import (
    PATTERN_ORDERS,
    PEOPLE_ORDERS,
    by_gravity,
    by_size,
    patterns_in_order,
    people_in_order,
)

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from sizekeeper.core.pattern import Pattern
    from sizekeeper.core.person import Person
    from sizekeeper.ui.overview_grid import OverviewHeading
    from sizekeeper.ui.overview_sizes import OverviewSizes, Pair
    from sizekeeper.ui.session import Session
    from sizekeeper.ui.settings import Settings

_EVERYBODY = "Everybody"
_WIDEST_GROUP, _NARROWEST_SEARCH = 22, 12
"""How wide the choice of a group is at most and a search at least, in steps of distance (coined)."""


class OverviewWindow(ComparisonWindow):
    """The grid with what it is searched, filtered and ordered by.

    Signals:
        wanted(str, str, str): the ids of a person and a pattern whose comparison is wanted, and the view.
    """

    wanted = Signal(str, str, str)

    def __init__(self, session: Session, settings: Settings, sizes: OverviewSizes) -> None:
        super().__init__("overview", "Everybody and every pattern", session, settings, (150, 92))
        self._sizes = sizes
        self._by_pattern: tuple[str, bool] | None = None
        self._by_person: tuple[str, bool] | None = None
        self.model = OverviewModel(sizes.cell, settings, self)
        self.grid = OverviewGrid(self.model, self)
        self.find_people = _search("Find people", self)
        self.find_patterns = _search("Find patterns", self)
        self.groups = _choice("Group of people", (("", _EVERYBODY),), self)
        self.people_by = _choice("Order of the people", PEOPLE_ORDERS.items(), self)
        self.patterns_by = _choice("Order of the patterns", PATTERN_ORDERS.items(), self)
        self.turn = QCheckBox("Patterns do&wn", self)
        self.progress = Lettering("", "note", self)
        self.nothing = Lettering("", "muted", self)
        self._arrange()
        self._connect()
        self.follow()
        self.grid.setFocus()

    def _arrange(self) -> None:
        row = QHBoxLayout()
        row.setSpacing(theme.spacing(1))
        for widget in (self.find_people, self.groups, self.find_patterns):
            row.addWidget(widget, 2 if isinstance(widget, QLineEdit) else 0)
        self.groups.setMaximumWidth(theme.spacing(_WIDEST_GROUP))
        row.addSpacing(theme.spacing(1))
        for text, box in (("&People by", self.people_by), ("Pa&tterns by", self.patterns_by)):
            label = Lettering(text, "plain", self)
            label.setWordWrap(False)
            label.setBuddy(box)
            row.addWidget(label)
            row.addWidget(box)
        row.addWidget(self.turn)
        holder = QWidget(self)
        self._stack = QStackedLayout(holder)
        self._stack.addWidget(self.grid)
        self._stack.addWidget(self.nothing)
        self.legend = Lettering("", "note", self)
        foot = QHBoxLayout()
        foot.addWidget(self.legend, 1)
        foot.addWidget(self.progress)
        self.progress.setWordWrap(False)
        column = QVBoxLayout(self)
        column.setContentsMargins(*(theme.spacing(2),) * 4)
        column.setSpacing(theme.spacing(1))
        column.addWidget(Lettering("Everybody and every pattern", "title", self))
        column.addLayout(row)
        column.addWidget(holder, 1)
        column.addLayout(foot)

    def _connect(self) -> None:
        for field in (self.find_people, self.find_patterns):
            field.textChanged.connect(self.show_entries)
        self.groups.currentIndexChanged.connect(self.show_entries)
        self.people_by.currentIndexChanged.connect(self._on_people_order)
        self.patterns_by.currentIndexChanged.connect(self._on_pattern_order)
        self.turn.toggled.connect(self.show_entries)
        self.grid.opened.connect(self._on_opened)
        self.grid.horizontalHeader().sectionClicked.connect(self._on_across)
        self.grid.verticalHeader().sectionClicked.connect(self._on_down)
        self._sizes.look_first(self.grid.in_view)
        self._sizes.found.connect(self._on_found)
        self._sizes.finished.connect(self._on_finished)

    def follow(self) -> None:
        """Show who and what there is now, and work out the sizes that are not true any more."""
        people, patterns = self._session.people(), self._session.patterns()
        self._fill_groups(people)
        self.show_entries()
        self._sizes.ask(people, patterns)
        self.legend.setText(_legend(views=self._sizes.has_views))
        self._say_progress()

    def _fill_groups(self, people: list[Person]) -> None:
        known = ["", *known_groups(people)]
        self.groups.setVisible(len(known) > 1)
        if known == [self.groups.itemData(i) for i in range(self.groups.count())]:
            return
        kept = self.groups.currentData()
        self.groups.blockSignals(True)
        self.groups.clear()
        for group in known:
            self.groups.addItem(group or _EVERYBODY, group)
        self.groups.setCurrentIndex(max(self.groups.findData(kept), 0))
        self.groups.blockSignals(False)

    def show_entries(self, _what: object = None) -> None:
        """Show who and what is looked for, in the order that is wanted; the current cell stays where it is."""
        current = self.grid.currentIndex()
        kept = tuple(entry.id for entry in self.model.pair(current)) if current.isValid() else None
        group = str(self.groups.currentData() or "")
        people = [
            p
            for p in self._session.people()
            if found_by(p, self.find_people.text()) and (not group or belongs(p, group))
        ]
        patterns = [q for q in self._session.patterns() if found_by(q, self.find_patterns.text())]
        self.model.set_entries(*self._ordered(people, patterns), turned=self.turn.isChecked())
        self.grid.widen()
        self._mark_order()
        self._say_nothing()
        if kept is not None and (index := self.model.index_of(*kept)).isValid():
            self.grid.setCurrentIndex(index)

    def _ordered(self, people: list[Person], patterns: list[Pattern]) -> tuple[list[Person], list[Pattern]]:
        cells = self._sizes.cell
        down = people_in_order(people, patterns, self.people_by.currentData(), cells)
        across = patterns_in_order(patterns, people, self.patterns_by.currentData(), cells)
        if self._by_pattern is not None:
            down = by_size(down, self._by_pattern[0], cells, largest_first=self._by_pattern[1])
        if self._by_person is not None:
            across = by_gravity(across, self._by_person[0], cells, gravest_first=self._by_person[1])
        return down, across

    def _mark_order(self) -> None:
        """Show the arrow in the headings that sort."""
        across, down = self.grid.headings
        over_patterns, over_people = (down, across) if self.model.turned else (across, down)
        _mark(over_patterns, [pattern.id for pattern in self.model.patterns], self._by_pattern)
        _mark(over_people, [person.id for person in self.model.people], self._by_person)

    def _say_nothing(self) -> None:
        """In place of an empty grid: what is missing."""
        text = ""
        if not self._session.people() or not self._session.patterns():
            text = "Add at least one person and one pattern in the main window: then their sizes stand here."
        elif not self.model.people or not self.model.patterns:
            text = "Nobody, or no pattern, is found by these words and this group."
        self.nothing.setText(text)
        self._stack.setCurrentIndex(1 if text else 0)

    def _say_progress(self) -> None:
        done, whole = self._sizes.progress
        say(self.progress, f"{done:,} of {whole:,} worked out" if done < whole else "")

    def _on_found(self, pairs: set[Pair]) -> None:
        self.model.tell(pairs)
        self._say_progress()

    def _on_finished(self) -> None:
        """Now the order by doubts or sizes is known, and how wide the columns have to be."""
        self._say_progress()
        self.grid.widen()
        if self._by_pattern or self._by_person or "doubts" in (self.people_by.currentData(), self._patterns_order):
            self.show_entries()

    @property
    def _patterns_order(self) -> str:
        return str(self.patterns_by.currentData())

    def _on_people_order(self) -> None:
        self._by_pattern = None
        self.show_entries()

    def _on_pattern_order(self) -> None:
        self._by_person = None
        self.show_entries()

    def _on_across(self, section: int) -> None:
        self._sort_by(section, of_pattern=not self.model.turned)

    def _on_down(self, section: int) -> None:
        self._sort_by(section, of_pattern=self.model.turned)

    def _sort_by(self, section: int, *, of_pattern: bool) -> None:
        """Order the people by their size in a pattern, or the patterns by the marks of a person; again turns it."""
        if of_pattern:
            entry, by = self.model.patterns[section].id, self._by_pattern
            self._by_pattern = (entry, by is not None and by == (entry, False))
        else:
            entry, by = self.model.people[section].id, self._by_person
            self._by_person = (entry, by is None or by != (entry, True))
        self.show_entries()

    def _on_opened(self, index: QModelIndex) -> None:
        person, pattern = self.model.pair(index)
        cell = self._sizes.cell(person.id, pattern.id)
        self.wanted.emit(person.id, pattern.id, "" if cell is None else cell.view)

    def stop(self) -> None:
        """Work out no more sizes; what was found is kept for the next time."""
        super().stop()
        self._sizes.stop()
        self._sizes.look_first(tuple)


def _mark(heading: OverviewHeading, entries: Sequence[str], by: tuple[str, bool] | None) -> None:
    at = entries.index(by[0]) if by is not None and by[0] in entries else -1
    heading.show_sorted(at, down=by is not None and by[1])


def _legend(*, views: bool) -> str:
    """What the signs in the cells mean; a sign and its words stay on one line. And which of several views is shown."""
    said = (f"{sign} {words}".replace(" ", "\N{NO-BREAK SPACE}") for sign, words in {**SIZES, **LEGEND}.items())
    return "   ".join([*said, *(["of several views the one that fits best"] if views else [])])


def _search(words: str, parent: QWidget) -> QLineEdit:
    field = QLineEdit(parent)
    field.setPlaceholderText(words)
    field.setAccessibleName(words)
    field.setClearButtonEnabled(True)
    field.setMinimumWidth(theme.spacing(_NARROWEST_SEARCH))
    return field


def _choice(name: str, choices: Iterable[tuple[str, str]], parent: QWidget) -> QComboBox:
    box = QComboBox(parent)
    box.setAccessibleName(name)
    for value, words in choices:
        box.addItem(words, value)
    return box
