"""One person in every pattern: which size in each, by what it was judged, and what stands in the way."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, Signal
from PySide6.QtWidgets import QHBoxLayout, QLineEdit, QVBoxLayout, QWidget

from sizekeeper.ui import theme
from sizekeeper.ui.household_rows import pattern_headings, pattern_row
from sizekeeper.ui.household_table import HouseTable
from sizekeeper.ui.household_work import Pair
from sizekeeper.ui.lettering import Lettering, say

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sizekeeper.core.household import Envelope, Standing
    from sizekeeper.core.person import Person
    from sizekeeper.core.wording import Wording
    from sizekeeper.ui.household_cells import HouseRow
    from sizekeeper.ui.household_work import Key, Standings


class PatternsPart(QWidget):
    """A pattern a row, a view each where there are several; searched and sorted.

    Signals:
        opened(str, str): a pattern and its view are to be shown on the Fit page.
    """

    opened = Signal(str, str)

    def __init__(self, standings: Standings, parent: QWidget | None = None) -> None:
        """Start without a person."""
        super().__init__(parent)
        self._standings = standings
        self._person: Person | None = None
        self._envelopes: dict[str, tuple[str, Envelope]] = {}
        self._words: Wording | None = None
        self._rows: dict[str, tuple[tuple[object, ...], HouseRow]] = {}
        self.search = QLineEdit(self)
        self.search.setPlaceholderText("Find a pattern, a size, a problem")
        self.search.setAccessibleName("Find in every pattern")
        self.search.setClearButtonEnabled(True)
        self.progress = Lettering("", "note", self)
        self.table = HouseTable("Every pattern for this person", parent=self)
        self._row = QHBoxLayout()
        self._row.addWidget(self.search, 2)
        self._row.addWidget(self.progress, 3)
        self._column = QVBoxLayout(self)
        self._column.addLayout(self._row)
        self._column.addWidget(self.table, 1)
        self._space()
        self.search.textChanged.connect(self._on_search)
        self.table.opened.connect(self._on_opened)

    def show_patterns(self, person: Person, titled: Sequence[tuple[str, Envelope]], words: Wording) -> None:
        """Compare a person with patterns, each with what it is called."""
        self._person, self._words = person, words
        self._envelopes = {_key(envelope): (title, envelope) for title, envelope in titled}
        self._standings.ask([Pair(person, envelope) for _, envelope in titled])
        self._show_all()

    @property
    def standings(self) -> list[Standing]:
        """The comparisons that are there, in the order shown."""
        shown = self.table.filter
        keys = [self.table.rows.rows[shown.mapToSource(shown.index(i, 0)).row()].key for i in range(shown.rowCount())]
        found = (self._standing(self._envelopes[key][1]) for key in keys)
        return [standing for standing in found if standing is not None]

    def show_come(self, keys: list[Key]) -> None:
        """Show comparisons that came; widths are shared anew when all are there."""
        for _, pattern, view in keys:
            if (key := f"{pattern}/{view}") in self._envelopes:
                self.table.rows.change(self._row_of(key))
        if self._standings.waiting:
            self._say_progress()
        else:
            self._show_all()

    def _show_all(self) -> None:
        self.table.show_rows(pattern_headings(), [self._row_of(key) for key in self._envelopes])
        self._say_progress()

    def _say_progress(self) -> None:
        waiting, count, shown = self._standings.waiting, len(self._envelopes), self.table.filter.rowCount()
        if waiting:
            say(self.progress, f"Comparing: {waiting} of {count} to go")
        elif not shown and count:
            say(self.progress, "Nothing found; Esc empties the search.")
        else:
            known = len({envelope.pattern.id for _, envelope in self._envelopes.values()})
            all_of_them = f"{known} pattern{'' if known == 1 else 's'}"
            say(self.progress, all_of_them if shown == count else f"{shown} of {count}")

    def _standing(self, envelope: Envelope) -> Standing | None:
        return self._standings.get(Pair(self._person, envelope).key) if self._person is not None else None

    def _row_of(self, key: str) -> HouseRow:
        """The row of a pattern, made anew only when something it shows is different."""
        assert self._words is not None  # noqa: S101 - set before rows are made
        title, envelope = self._envelopes[key]
        pattern, standing = envelope.pattern, self._standing(envelope)
        now = (title, pattern.publisher, pattern.garment, pattern.fabric, self._words.notation)
        known = self._rows.get(key)
        if known is not None and known[0][0] is standing and known[0][1:] == now:
            return known[1]
        garment = f"knit {pattern.garment}" if pattern.knit else pattern.garment
        row = pattern_row(key, title, pattern.publisher.strip(), garment, standing, self._words)
        self._rows[key] = ((standing, *now), row)
        return row

    def _on_search(self, words: str) -> None:
        self.table.filter.look_for(words)
        self._say_progress()

    def _on_opened(self, key: str) -> None:
        envelope = self._envelopes[key][1]
        self.opened.emit(envelope.pattern.id, envelope.view)

    def _space(self) -> None:
        self._column.setContentsMargins(theme.spacing(4), theme.spacing(0.5), theme.spacing(2), theme.spacing(1.5))
        self._column.setSpacing(theme.spacing(1))
        self._row.setSpacing(theme.spacing(2))

    # Qt's own names from here on.

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if hasattr(self, "_column") and theme.font_changed(event):
            self._space()


def _key(envelope: Envelope) -> str:
    return f"{envelope.pattern.id}/{envelope.view}"
