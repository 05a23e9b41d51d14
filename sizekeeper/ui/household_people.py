"""One pattern on everybody: the table, the bands at a region, and the sizes to trace."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, Qt, QTimer, Signal
from PySide6.QtWidgets import QComboBox, QHBoxLayout, QLabel, QVBoxLayout, QWidget

from sizekeeper.core.groups import belongs, known_groups
from sizekeeper.core.household import Household, household_of
from sizekeeper.core.sharing import share
from sizekeeper.ui import theme
from sizekeeper.ui.household_left_out import LeftOut
from sizekeeper.ui.household_rows import people_headings, person_row
from sizekeeper.ui.household_sharing import SharingPart
from sizekeeper.ui.household_table import HouseTable
from sizekeeper.ui.household_work import Pair
from sizekeeper.ui.lettering import Lettering, say
from sizekeeper.ui.thin_splitter import ThinSplitter

if TYPE_CHECKING:
    from collections.abc import Sequence

    from PySide6.QtCore import QSettings
    from PySide6.QtGui import QResizeEvent

    from sizekeeper.core.household import Envelope, Standing
    from sizekeeper.core.person import Person
    from sizekeeper.core.wording import Wording
    from sizekeeper.ui.household_cells import HouseRow
    from sizekeeper.ui.household_work import Standings

_FEW = 8
"""For so many people the sizes to trace follow each keystroke; for more, when the hand rests (coined)."""
_REST_MS = 120
"""How long the hand must rest; coined."""
_WIDEST_GROUP = 32
"""How wide the choice of a group is at most, in steps of distance (coined); its list is as wide as its names."""
_MOST_OF_HEIGHT = 0.6
"""The share of the height that the table takes at most by itself (coined)."""


class PeoplePart(QWidget):
    """Everybody who is not hidden against one pattern, by group, with those left out unticked.

    Signals:
        opened(str): a person is to be shown on the Fit page; her id.
    """

    opened = Signal(str)

    def __init__(self, standings: Standings, stored: QSettings, parent: QWidget | None = None) -> None:
        """Start without a pattern."""
        super().__init__(parent)
        self._standings, self.left_out = standings, LeftOut(stored)
        self._envelope: Envelope | None = None
        self._people: list[Person] = []
        self._words: Wording | None = None
        self._household: Household | None = None
        self._region = ""
        self._moved = False
        self._rows: dict[str, tuple[tuple[object, ...], HouseRow]] = {}
        self.group, self.region = QComboBox(self), QComboBox(self)
        self.kind, self.progress = Lettering("", "muted", self), Lettering("", "note", self)
        for label in (self.kind, self.progress):
            label.setWordWrap(False)
        self.table = HouseTable("Everybody in this pattern", "Ease in each size", self)
        self.sharing = SharingPart(self)
        self.resting = QTimer(self)
        self.resting.setSingleShot(True)
        self.resting.setInterval(_REST_MS)
        self._lay_out()
        self._connect()

    def _lay_out(self) -> None:
        self.group_name, region_name = QLabel("&Group", self), QLabel("&Bands at", self)
        for label, box, name in ((self.group_name, self.group, "Group"), (region_name, self.region, "Bands at")):
            label.setBuddy(box)
            box.setAccessibleName(name)
            box.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToContents)
        self._row = QHBoxLayout()
        self._row.addWidget(self.kind)
        self._row.addWidget(self.progress)
        self._row.addStretch(1)
        for widget in (self.group_name, self.group, region_name, self.region):
            self._row.addWidget(widget)
        upper = QWidget(self)
        self._upper = QVBoxLayout(upper)
        self._upper.addLayout(self._row)
        self._upper.addWidget(self.table, 1)
        self._split = ThinSplitter(self)
        self._split.setOrientation(Qt.Orientation.Vertical)
        self._split.addWidget(upper)
        self._split.addWidget(self.sharing)
        self._split.setStretchFactor(0, 3)
        self._split.setStretchFactor(1, 2)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self._split)
        self._space()

    def _connect(self) -> None:
        self.table.opened.connect(self.opened)
        self.table.rows.ticked.connect(self._on_ticked)
        self.group.activated.connect(self._on_group)
        self.region.activated.connect(self._on_region)
        self.sharing.between_chosen.connect(self._share)
        self._split.splitterMoved.connect(self._on_moved)
        self.resting.timeout.connect(self._share)

    @property
    def household(self) -> Household | None:
        """What is compared, in the order shown; None before a pattern was shown."""
        if self._household is None or self._envelope is None:
            return None
        keys = [str(row.key) for row in self._shown_rows()]
        by_id = {standing.person.id: standing for standing in self._household.standings}
        return household_of(self._envelope, [by_id[key] for key in keys if key in by_id])

    @property
    def measure(self) -> str:
        """The region whose bands are shown: the one chosen, else the one that leads."""
        if self._household is None:
            return ""
        return self._region if self._region in self._household.measures else self._household.lead

    def show_people(self, envelope: Envelope, people: Sequence[Person], words: Wording) -> None:
        """Compare these people with a pattern; what no edit has touched is not compared again."""
        self._envelope, self._words, self._people = envelope, words, list(people)
        say(self.kind, f"{'knit' if envelope.pattern.knit else 'woven'} {envelope.pattern.garment}")
        self._offer_groups()
        self._standings.ask([Pair(person, envelope) for person in self._members() if person.id not in self.left_out])
        self.show_come()

    def show_come(self) -> None:
        """Show the comparisons that are there."""
        if self._envelope is None or self._words is None:
            return
        found = {person.id: self._standing(person) for person in self._members()}
        self._household = household_of(self._envelope, [s for s in found.values() if s is not None])
        self._offer_regions()
        headings = people_headings(self._household.labels, self._household.measures, self.measure, self._words)
        self.table.show_rows(headings, [self._row_of(person, found[person.id]) for person in self._members()])
        self._share_room()
        waiting = self._standings.waiting
        say(self.progress, f"Comparing: {waiting} to go" if waiting else "")
        if not waiting and len(found) <= _FEW:
            self._share()
        elif not waiting:
            self.resting.start()

    def _standing(self, person: Person) -> Standing | None:
        if self._envelope is None or person.id in self.left_out:
            return None
        return self._standings.get(Pair(person, self._envelope).key)

    def _members(self) -> list[Person]:
        """Those of the group that is chosen."""
        group = str(self.group.currentData() or "")
        return [person for person in self._people if not group or belongs(person, group)]

    def _row_of(self, person: Person, standing: Standing | None) -> HouseRow:
        """The row of a person, made anew only when something it shows is different."""
        assert self._household is not None and self._words is not None  # noqa: S101, PT018 - set before rows are made
        ticked, labels, measures = person.id not in self.left_out, self._household.labels, self._household.measures
        now = (person.name, person.groups, labels, measures, self.measure, self._words.notation, ticked)
        known = self._rows.get(person.id)
        if known is not None and known[0][0] is standing and known[0][1:] == now:
            return known[1]
        row = person_row(person, standing, labels, measures, self.measure, self._words, ticked=ticked)
        self._rows[person.id] = ((standing, *now), row)
        return row

    def _shown_rows(self) -> list[HouseRow]:
        rows, shown = self.table.rows.rows, self.table.filter
        return [rows[shown.mapToSource(shown.index(i, 0)).row()] for i in range(shown.rowCount())]

    def _offer_groups(self) -> None:
        """Offer the groups there are; without any there is nothing to choose."""
        groups, chosen = known_groups(self._people), self.group.currentData()
        if [self.group.itemData(i) for i in range(self.group.count())] != ["", *groups]:
            self.group.clear()
            self.group.addItem("Everybody", "")
            for group in groups:
                self.group.addItem(group, group)
            self.group.setCurrentIndex(max(0, self.group.findData(chosen)))
        self.group_name.setVisible(bool(groups))
        self.group.setVisible(bool(groups))

    def _offer_regions(self) -> None:
        """Offer the regions that anybody is judged at."""
        assert self._household is not None and self._words is not None  # noqa: S101, PT018 - set before regions are offered
        measures = self._household.measures
        if [self.region.itemData(i) for i in range(self.region.count())] != list(measures):
            self.region.clear()
            for measure in measures:
                self.region.addItem(self._words.name(measure), measure)
        self.region.setCurrentIndex(self.region.findData(self.measure))
        self.region.setEnabled(bool(measures))

    def _on_group(self) -> None:
        if self._envelope is not None and self._words is not None:
            self.show_people(self._envelope, self._people, self._words)

    def _on_region(self) -> None:
        self._region = str(self.region.currentData() or "")
        self.show_come()

    def _on_ticked(self, person: str, ticked: bool) -> None:  # noqa: FBT001 - a slot
        self.left_out.leave_out(person, out=not ticked)
        self._on_group()

    def _share(self) -> None:
        """Work out who can share a line."""
        self.resting.stop()
        if self._household is not None and self._words is not None:
            between = self.sharing.between.isChecked()
            found = share(self._household.standings, self._household.labels, between=between)
            self.sharing.show_sharing(found, self._words)

    def _share_room(self) -> None:
        """Give the table the height it needs, up to a share, until somebody moves the rule between."""
        if not self._moved:
            needed = (
                self._upper.minimumSize().height() - self.table.minimumSizeHint().height() + self.table.needed_height
            )
            upper = min(needed, round(self.height() * _MOST_OF_HEIGHT))
            self._split.setSizes([upper, self.height() - upper])

    def _on_moved(self) -> None:
        self._moved = True

    def _space(self) -> None:
        self._upper.setContentsMargins(theme.spacing(4), theme.spacing(0.5), theme.spacing(2), theme.spacing(0.5))
        self._upper.setSpacing(theme.spacing(1))
        self._row.setSpacing(theme.spacing(1))
        self.group.setMaximumWidth(theme.spacing(_WIDEST_GROUP))

    # Qt's own names from here on.

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Share the height anew."""
        super().resizeEvent(event)
        self._share_room()

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if hasattr(self, "_upper") and theme.font_changed(event):
            self._space()
