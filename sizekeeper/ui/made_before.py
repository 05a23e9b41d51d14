"""The quiet line over the plans: what an earlier make of this pattern tells, and the way to it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QWidget

from sizekeeper.core.make import Make
from sizekeeper.core.make_words import PROGRESS_WORDS, made_before_words
from sizekeeper.core.makes import made_before
from sizekeeper.ui import theme
from sizekeeper.ui.entry_words import entry_name
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.pattern_link import Link

if TYPE_CHECKING:
    from sizekeeper.core.planned import Planned
    from sizekeeper.core.wording import Wording
    from sizekeeper.ui.session import Session


@dataclass(frozen=True, slots=True)
class Earlier:
    """What is said, and where the link leads: to a make on the Makes page, or with "" to the next one to plan."""

    text: str
    link: str
    make: str = ""


def earlier_of(session: Session, planned: Planned, words: Wording) -> Earlier | None:
    """What earlier makes tell here; None where there is none. A make that is finished says so itself."""
    make = planned.make
    if not make.open:
        said = f"This make is {PROGRESS_WORDS[make.progress]} and stays as it is; what came of it stands on Makes."
        return Earlier(said, "Plan the next one")
    makes = [value for value in session.belonging(make.pattern) if isinstance(value, Make)]
    found = made_before(makes, make.person, make.pattern, make.view, make.id)
    if found is None:
        return None
    other = session.person(found.person) if found.person != make.person else None
    return Earlier(made_before_words(found, words, entry_name(other) if other is not None else ""), "Look", found.id)


class MadeBefore(QWidget):
    """The line and its link; hidden while there is nothing to say.

    Signals:
        followed(str): the link was pressed: the id of a make, "" for the next one to plan.
    """

    followed = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        """Silent."""
        super().__init__(parent)
        self._make = ""
        self.said = Lettering("", "muted", self)
        self.link = Link("Look", parent=self)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(theme.spacing())
        row.addWidget(self.said, 1)
        row.addWidget(self.link, 0, Qt.AlignmentFlag.AlignTop)
        self.link.clicked.connect(self._on_link)
        self.hide()

    def show_earlier(self, earlier: Earlier | None) -> None:
        """Say it, or nothing."""
        self.setVisible(earlier is not None)
        if earlier is not None:
            self._make = earlier.make
            self.said.setText(earlier.text)
            self.link.setText(earlier.link)
            self.link.setAccessibleName("Look at the earlier make" if earlier.make else earlier.link)

    def _on_link(self) -> None:
        self.followed.emit(self._make)
