"""The choice above the people: everybody or one group; a group can be given another name there, or be dissolved."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QComboBox, QHBoxLayout, QInputDialog, QMenu, QToolButton, QWidget

from sizekeeper.core.groups import dissolved, renamed, same, tidy
from sizekeeper.core.person import Person
from sizekeeper.ui import theme
from sizekeeper.ui.person_fields import CalmCombo
from sizekeeper.ui.selection import Place

if TYPE_CHECKING:
    from PySide6.QtCore import QEvent

    from sizekeeper.ui.session import Session

_EVERYBODY = "Everybody"


class GroupName:
    """The question for a group's new name. A test puts its own answer here."""

    @classmethod
    def ask(cls, parent: QWidget, group: str) -> str:
        """The new name, empty when the question was put away."""
        words = f"Another name for the group “{group}”. With the name of another group, both become one."
        name, taken = QInputDialog.getText(parent, "Rename the group", words, text=group)
        return name if taken else ""


class GroupFilter(QWidget):
    """Everybody, or the people of one group. Hidden while nobody belongs to one.

    Signals:
        chosen(str): the group whose people are shown, "" for everybody.
    """

    chosen = Signal(str)

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self.choice = CalmCombo("Show the people of", self)
        self.choice.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.choice.addItem(_EVERYBODY, "")
        self.more = QToolButton(self)
        self.more.setText("…")
        self.more.setAccessibleName("Change the group")
        self.more.setToolTip("Rename or dissolve the group")
        self.more.setAutoRaise(True)
        self.more.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.menu = QMenu(self.more)
        self.rename, self.dissolve = QAction("", self), QAction("", self)
        self.menu.addActions([self.rename, self.dissolve])
        self.more.clicked.connect(self._show_menu)
        self._row = QHBoxLayout(self)
        self._row.addWidget(self.choice, 1)
        self._row.addWidget(self.more)
        self._space()
        self.choice.currentIndexChanged.connect(self._on_choice)
        self.rename.triggered.connect(self._rename)
        self.dissolve.triggered.connect(self._dissolve)
        self._on_choice()

    @property
    def group(self) -> str:
        """The group that is chosen, empty for everybody."""
        return str(self.choice.currentData() or "")

    def offer(self, groups: tuple[str, ...]) -> None:
        """Offer these groups. The chosen one stays while somebody belongs to it."""
        self.setVisible(bool(groups))
        shown = [str(self.choice.itemData(i)) for i in range(1, self.choice.count())]
        if shown == list(groups):
            return
        before = self.group
        self.choice.blockSignals(True)
        while self.choice.count() > 1:
            self.choice.removeItem(1)
        for group in groups:
            self.choice.addItem(group, group)
        place = next((i for i, group in enumerate(groups, 1) if same(group, before)), 0) if before else 0
        self.choice.setCurrentIndex(place)
        self.choice.blockSignals(False)
        self._on_choice()

    def choose(self, group: str) -> None:
        """Show the people of a group."""
        self.choice.setCurrentIndex(max(self.choice.findData(group), 0))

    def _on_choice(self) -> None:
        group = self.group
        self.choice.setToolTip(group)
        self.more.setVisible(bool(group) and not self._session.read_only)
        self.rename.setText(f"&Rename “{_in_menu(group)}”…")
        self.dissolve.setText(f"&Dissolve “{_in_menu(group)}”")
        self.chosen.emit(group)

    def _show_menu(self) -> None:
        self.menu.popup(self.more.mapToGlobal(self.more.rect().bottomLeft()))

    def _people(self) -> list[Person]:
        return [value for value in self._session.values() if isinstance(value, Person)]

    def _rename(self) -> None:
        group = self.group
        name = next(iter(tidy([GroupName.ask(self, group)])), "")
        if not name or name == group:
            return
        pairs = renamed(self._people(), group, name)
        self._session.apply_all(f"Rename the group {group}", pairs, place=Place("person", pairs[0][0].id, "groups"))
        self.choose(
            next(
                (
                    str(self.choice.itemData(i))
                    for i in range(self.choice.count())
                    if same(self.choice.itemData(i), name)
                ),
                "",
            )
        )

    def _dissolve(self) -> None:
        group = self.group
        pairs = dissolved(self._people(), group)
        self._session.apply_all(f"Dissolve the group {group}", pairs, place=Place("person", pairs[0][0].id, "groups"))

    def _space(self) -> None:
        self._row.setContentsMargins(theme.spacing(1.5), 0, theme.spacing(1), 0)
        self._row.setSpacing(theme.spacing(0.5))

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if theme.font_changed(event):
            self._space()


def _in_menu(group: str) -> str:
    """A group's name in a menu: short, and its ampersands are no keys."""
    short = group if len(group) <= 30 else f"{group[:28]}…"  # noqa: PLR2004 - a menu's width
    return short.replace("&", "&&")
