"""Two people in one pattern, or one person in two patterns, next to each other."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING, Literal

from PySide6.QtWidgets import QHBoxLayout, QPushButton, QScrollArea, QVBoxLayout, QWidget

from sizekeeper import assets
from sizekeeper.core.found import Found
from sizekeeper.core.wording import Wording
from sizekeeper.ui import theme
from sizekeeper.ui.beside_choice import Choice, EntryChoice, pattern_choices, people_choices
from sizekeeper.ui.beside_lines import shared_measures
from sizekeeper.ui.beside_side import BesideSide, fit_in
from sizekeeper.ui.comparison_window import ComparisonWindow
from sizekeeper.ui.fit_source import look_up
from sizekeeper.ui.lettering import Lettering, Rule

if TYPE_CHECKING:
    from PySide6.QtGui import QResizeEvent

    from sizekeeper.ui.fit_source import Missing
    from sizekeeper.ui.session import Session
    from sizekeeper.ui.settings import Settings

_LEAST = 56
"""The least width of a side, in steps of `theme.spacing`: all columns, with room for a name."""


class BesideWindow(ComparisonWindow):
    """Two comparisons whose regions stand next to each other. `both` is what the two have in common."""

    def __init__(
        self, kind: tuple[str, str], labels: tuple[str, str, str], session: Session, settings: Settings
    ) -> None:
        """A window of a kind (its name in the settings, its title); `labels` name the left, right and common list."""
        super().__init__(kind[0], kind[1], session, settings, (150, 84))
        self.left, self.right, self.both = (EntryChoice(label, self) for label in labels)
        self.swap = QPushButton("S&wap", self)
        self.swap.setAutoDefault(False)
        self.swap.setAccessibleName("Swap left and right")
        self.sides = (BesideSide("left", self), BesideSide("right", self))
        self._arrange(kind[1], labels[2])

    def _arrange(self, title: str, common: str) -> None:
        row = QHBoxLayout()
        row.setSpacing(theme.spacing(1))
        label = Lettering(f"&{common}", "plain", self)
        label.setWordWrap(False)
        label.setBuddy(self.both)
        for widget, stretch in ((self.left, 3), (self.swap, 0), (self.right, 3)):
            row.addWidget(widget, stretch)
        row.addSpacing(theme.spacing(2))
        row.addWidget(label)
        row.addWidget(self.both, 3)
        holder = QWidget(self)
        sides = QHBoxLayout(holder)
        sides.setContentsMargins(0, 0, 0, 0)
        sides.setSpacing(theme.spacing(3))
        for side in self.sides:
            side.setMinimumWidth(theme.spacing(_LEAST))
            sides.addWidget(side, 1)
        self._area = QScrollArea(self)
        self._area.setWidgetResizable(True)
        self._area.setFrameShape(QScrollArea.Shape.NoFrame)
        self._area.viewport().setAutoFillBackground(False)
        self._area.setWidget(holder)
        holder.setAutoFillBackground(False)
        self._area.setAccessibleName("Both comparisons")
        column = QVBoxLayout(self)
        column.setContentsMargins(*(theme.spacing(2),) * 4)
        column.setSpacing(theme.spacing(1.5))
        column.addWidget(Lettering(title, "title", self))
        column.addLayout(row)
        column.addWidget(Rule(self))
        column.addWidget(self._area, 1)
        for one, other in pairwise((self.left, self.swap, self.right, self.both)):
            QWidget.setTabOrder(one, other)

    def _begin(self, chosen: tuple[Choice, Choice, Choice]) -> None:
        """Show two that are not the same; everything follows from here."""
        self._offer()
        left, right, both = chosen
        for box, choice in ((self.left, left), (self.both, both)):
            box.choose(choice)
        self.right.choose(right)
        if self.right.chosen == self.left.chosen:
            self.right.setCurrentIndex(1 if self.left.currentIndex() == 0 else 0)
        for box in (self.left, self.right, self.both):
            box.currentIndexChanged.connect(self.compare)
        self.swap.clicked.connect(self._swap)
        for one, other in (self.sides, self.sides[::-1]):
            one.picked.connect(other.pick)
        self.compare()
        self.left.setFocus()

    def _offer(self) -> None:
        """Fill the lists."""
        raise NotImplementedError

    def _pairs(self) -> tuple[tuple[Choice, Choice, str], tuple[Choice, Choice, str]]:
        """Person, pattern and title of each side."""
        raise NotImplementedError

    def _swap(self) -> None:
        left, right = self.left.chosen, self.right.chosen
        for box, choice in ((self.left, right), (self.right, left)):
            blocked = box.blockSignals(True)
            box.choose(choice)
            box.blockSignals(blocked)
        self.compare()

    def follow(self) -> None:
        """Compare again, with the lists as they are now."""
        self._offer()
        self.compare()

    def compare(self, _what: object = None) -> None:
        """Compare both sides and show them."""
        pairs = self._pairs()
        found = [look_up(self._session, who[0], what[0], view=what[1]) for who, what, _ in pairs]
        measures = shared_measures(fit_in(one) for one in found)
        unit = next((one.person.unit for one in found if isinstance(one, Found)), self._settings.unit)
        for side, one, (_, _, title) in zip(self.sides, found, pairs, strict=True):
            side.show_found(title, one, measures, self._words(one, unit))
        self._level()

    def _words(self, found: Found | Missing, unit: Literal["cm", "in"]) -> Wording:
        """How figures are said: both sides in one unit, the pattern's own figures as its envelope has them."""
        notation, names = self._settings.notation_for(unit), assets.measures().name
        if not isinstance(found, Found):
            return Wording(notation, names)
        return Wording(notation, names, self._settings.notation_in(found.printed_in))

    def _level(self) -> None:
        """Let both tables begin at one height."""
        width = max((self.width() - theme.spacing(7)) // 2, theme.spacing(_LEAST))
        height = max(side.height_above(width) for side in self.sides)
        for side in self.sides:
            side.above.setFixedHeight(height)

    # Qt's own names from here on.

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Texts wrap differently."""
        super().resizeEvent(event)
        self._level()


class TwoPeople(BesideWindow):
    """Two people in one pattern."""

    def __init__(self, session: Session, settings: Settings, chosen: tuple[str, str]) -> None:
        """Begin with a person and a pattern, by id."""
        labels = ("Person at the left", "Person at the right", "Pattern")
        super().__init__(("two people", "Two people"), labels, session, settings)
        self._begin(((chosen[0], ""), ("", ""), (chosen[1], "")))

    def _offer(self) -> None:
        people = people_choices(self._session.people())
        self.left.offer(people)
        self.right.offer(people)
        self.both.offer(pattern_choices(self._session, self._session.patterns()))

    def _pairs(self) -> tuple[tuple[Choice, Choice, str], tuple[Choice, Choice, str]]:
        pattern = self.both.chosen
        left, right = ((box.chosen, pattern, box.currentText()) for box in (self.left, self.right))
        return left, right


class TwoPatterns(BesideWindow):
    """One person in two patterns."""

    def __init__(self, session: Session, settings: Settings, chosen: tuple[str, str]) -> None:
        """Begin with a person and a pattern, by id."""
        labels = ("Pattern at the left", "Pattern at the right", "Person")
        super().__init__(("two patterns", "Two patterns"), labels, session, settings)
        self._begin(((chosen[1], ""), ("", ""), (chosen[0], "")))

    def _offer(self) -> None:
        patterns = pattern_choices(self._session, self._session.patterns())
        self.left.offer(patterns)
        self.right.offer(patterns)
        self.both.offer(people_choices(self._session.people()))

    def _pairs(self) -> tuple[tuple[Choice, Choice, str], tuple[Choice, Choice, str]]:
        person = self.both.chosen
        left, right = ((person, box.chosen, box.currentText()) for box in (self.left, self.right))
        return left, right
