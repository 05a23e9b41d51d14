"""Lists from which a person, or a pattern with its view, is chosen; they follow what is edited."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QComboBox, QSizePolicy, QWidget

from sizekeeper.ui import theme
from sizekeeper.ui.entry_words import entry_name, place_in_list
from sizekeeper.ui.fit_source import view_choices

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sizekeeper.core.pattern import Pattern
    from sizekeeper.core.person import Person
    from sizekeeper.ui.session import Session

Choice = tuple[str, str]
"""An id, and of a pattern the view; "" where there is nothing to choose."""

_MOST_SHOWN = 24


class EntryChoice(QComboBox):
    """A list of entries that keeps what is chosen while the entries change."""

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self.setMaxVisibleItems(_MOST_SHOWN)
        self.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.setMinimumContentsLength(12)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setMinimumWidth(theme.spacing(14))

    @property
    def chosen(self) -> Choice:
        """What is chosen, with empty texts where nothing can be."""
        data = self.currentData()
        return (str(data[0]), str(data[1])) if data is not None else ("", "")

    def offer(self, choices: Sequence[tuple[Choice, str]]) -> None:
        """Offer other choices without telling; what was chosen stays where it is still there."""
        if choices == self._offered():
            return
        kept = self.chosen if self.count() else None
        blocked = self.blockSignals(True)
        self.clear()
        for choice, words in choices:
            self.addItem(words, choice)
        if kept is not None:
            self.choose(kept)
        self.blockSignals(blocked)

    def _offered(self) -> list[tuple[Choice, str]]:
        return [(tuple(self.itemData(i)), self.itemText(i)) for i in range(self.count())]

    def choose(self, choice: Choice) -> None:
        """Choose an entry; the same entry in another view where that view is not there."""
        known = [tuple(self.itemData(i)) for i in range(self.count())]
        same = next((i for i, one in enumerate(known) if one == choice), -1)
        near = next((i for i, one in enumerate(known) if one[0] == choice[0]), 0)
        self.setCurrentIndex(same if same >= 0 else near)


def people_choices(people: Sequence[Person]) -> list[tuple[Choice, str]]:
    """Everybody by name."""
    return [((person.id, ""), entry_name(person)) for person in sorted(people, key=place_in_list)]


def pattern_choices(session: Session, patterns: Sequence[Pattern]) -> list[tuple[Choice, str]]:
    """Every pattern by title, each view with figures of its own apart; the same title twice is told by publisher."""
    taken = Counter(entry_name(pattern) for pattern in patterns)
    found: list[tuple[Choice, str]] = []
    for pattern in sorted(patterns, key=place_in_list):
        title = entry_name(pattern)
        if taken[title] > 1 and pattern.publisher.strip():
            title = f"{title} ({pattern.publisher.strip()})"
        views = view_choices(session, pattern) or {"": ""}
        found += [((pattern.id, view), _with_view(title, called)) for view, called in views.items()]
    return found


def _with_view(title: str, called: str) -> str:
    return f"{title}, {called[:1].lower()}{called[1:]}" if called else title
