"""The pages of the window, each made when it is first shown."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Protocol, cast

from PySide6.QtCore import QEvent, QSignalBlocker, Signal
from PySide6.QtWidgets import QApplication, QStackedWidget, QVBoxLayout, QWidget

from sizekeeper.ui import theme
from sizekeeper.ui.lettering import Rule
from sizekeeper.ui.page_bar import PageBar
from sizekeeper.ui.selection import PageName

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from sizekeeper.ui.selection import Place, Selection
    from sizekeeper.ui.session import Session
    from sizekeeper.ui.settings import Settings

    PageMaker = Callable[[Session, Selection, Settings, QWidget], QWidget]


class Revealing(Protocol):
    """What a page has that can put the cursor where an edit happened."""

    def reveal(self, place: Place) -> None:
        """Bring a field or a cell of the page into view and into focus."""


@dataclass(frozen=True, slots=True)
class PageKind:
    """A page that the window can show: its name in `Place`, its title, and how it is made."""

    name: PageName
    title: str
    make: PageMaker


def _person_page(session: Session, selection: Selection, settings: Settings, parent: QWidget) -> QWidget:
    from sizekeeper.ui.person_page import PersonPage  # noqa: PLC0415 - made when first shown, to start fast

    return PersonPage(session, selection, settings, parent)


def _pattern_page(session: Session, selection: Selection, settings: Settings, parent: QWidget) -> QWidget:
    from sizekeeper.ui.pattern_page import PatternPage  # noqa: PLC0415 - made when first shown, to start fast

    return PatternPage(session, selection, settings, parent)


def _fit_page(session: Session, selection: Selection, settings: Settings, parent: QWidget) -> QWidget:
    from sizekeeper.ui.fit_page import FitPage  # noqa: PLC0415 - made when first shown, to start fast

    return FitPage(session, selection, settings, parent)


def _household_page(session: Session, selection: Selection, settings: Settings, parent: QWidget) -> QWidget:
    from sizekeeper.ui.household_page import HouseholdPage  # noqa: PLC0415 - made when first shown, to start fast

    return HouseholdPage(session, selection, settings, parent)


def _makes_page(session: Session, selection: Selection, settings: Settings, parent: QWidget) -> QWidget:
    from sizekeeper.ui.makes_page import MakesPage  # noqa: PLC0415 - made when first shown, to start fast

    return MakesPage(session, selection, settings, parent)


PAGES: tuple[PageKind, ...] = (
    PageKind("person", "Person", _person_page),
    PageKind("pattern", "Pattern", _pattern_page),
    PageKind("fit", "Fit", _fit_page),
    PageKind("household", "Household", _household_page),
    PageKind("makes", "Makes", _makes_page),
)
"""The pages in the order of the work. A further page is a further line here."""


class Pages(QWidget):
    """The row of names and the page in front.

    Signals:
        turned(str): the name of the page now in front.
    """

    turned = Signal(str)

    def __init__(
        self,
        session: Session,
        selection: Selection,
        settings: Settings,
        kinds: Sequence[PageKind] = PAGES,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._make_with = (session, selection, settings)
        self.kinds = tuple(kinds)
        self._made: dict[str, QWidget] = {}
        self._front = ""
        self.bar = PageBar(self)
        self._stack = QStackedWidget(self)
        self._stack.setAutoFillBackground(True)
        for kind in self.kinds:
            self.bar.addTab(kind.title)
        self._above = QVBoxLayout()
        self._above.addWidget(self.bar)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(0)
        layout.addLayout(self._above)
        layout.addWidget(Rule(self))
        layout.addWidget(self._stack, 1)
        self._space()
        self._lay_paper()
        self.bar.currentChanged.connect(self._turned_to)

    @property
    def front(self) -> PageName:
        """The name of the page in front, or the one that will be when the first is shown."""
        return self.kinds[max(self.bar.currentIndex(), 0)].name

    def is_made(self, name: str) -> bool:
        """Whether a page was made already."""
        return name in self._made

    def page(self, name: str) -> QWidget:
        """A page by name, made now if it was not yet."""
        if name not in self._made:
            kind = next(kind for kind in self.kinds if kind.name == name)
            page = kind.make(*self._make_with, self._stack)
            page.setAccessibleName(kind.title)
            self._made[name] = page
            self._stack.addWidget(page)
        return self._made[name]

    def prepare_one(self) -> bool:
        """Make one page that was not shown yet, so that turning to it later is quick; False when all are made."""
        missing = next((kind.name for kind in self.kinds if kind.name not in self._made), None)
        if missing is not None:
            self.page(missing)
        return missing is not None

    def turn_to(self, name: str) -> None:
        """Bring a page to the front."""
        row = next(row for row, kind in enumerate(self.kinds) if kind.name == name)
        if self.bar.currentIndex() != row:
            self.bar.setCurrentIndex(row)
        elif self._front != name:
            self._turned_to(row)

    def begin_with(self, name: str) -> None:
        """Name the page to be in front before the window is shown; `catch_up` makes it, after the first picture."""
        row = next((row for row, kind in enumerate(self.kinds) if kind.name == name), 0)
        with QSignalBlocker(self.bar):
            self.bar.setCurrentIndex(row)

    def catch_up(self) -> None:
        """Make the page in front, if that was left until the window's first picture was on the screen."""
        self.turn_to(self.front)

    def reveal(self, place: Place) -> None:
        """Bring a page to the front, and on it the field or the cell of a place."""
        self.turn_to(place.page)
        cast("Revealing", self.page(place.page)).reveal(place)

    def _turned_to(self, row: int) -> None:
        self._front = self.kinds[row].name
        self._stack.setCurrentWidget(self.page(self._front))
        self.turned.emit(self._front)

    def _space(self) -> None:
        """The first name stands above the left edge of the page's text."""
        self._above.setContentsMargins(theme.spacing(1.5), 0, 0, 0)

    def _lay_paper(self) -> None:
        """Pages lie on paper that is a little lighter than the window's frame."""
        palette = theme.with_ground(theme.paper(QApplication.palette()))
        if palette != self._stack.palette():
            self._stack.setPalette(palette)

    def changeEvent(self, event: QEvent) -> None:
        """Follow light and dark."""
        super().changeEvent(event)
        if theme.font_changed(event):
            self._space()
        if theme.palette_changed(event):
            self._lay_paper()
