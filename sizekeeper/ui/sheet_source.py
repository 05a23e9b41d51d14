"""What the sheet window shows: the person and the pattern in front as one sheet, or what has to be done first."""

from __future__ import annotations

import datetime as dt
import threading
from dataclasses import dataclass
from typing import TYPE_CHECKING

from sizekeeper import assets
from sizekeeper.core.found import Found
from sizekeeper.core.make import Make
from sizekeeper.core.make_words import next_time_words
from sizekeeper.core.makes import hers_before
from sizekeeper.core.notation import Notation
from sizekeeper.core.plan import PER_CHANGE_CM
from sizekeeper.reports.file_names import file_name
from sizekeeper.ui.fit_source import Missing, look_up, view_choices
from sizekeeper.ui.plan_source import make_of
from sizekeeper.ui.selection import Place

if TYPE_CHECKING:
    from sizekeeper.reports.sheet import Sheet
    from sizekeeper.ui.session import Session
    from sizekeeper.ui.settings import Settings


@dataclass(frozen=True, slots=True)
class SheetStyle:
    """How a sheet is made: how lengths are written, the day, whether it is private, and what the view is called.

    `next_time` is what was noted after an earlier make of hers.
    """

    today: dt.date
    notation: Notation
    envelope: Notation
    private: bool = False
    per_change_cm: float = PER_CHANGE_CM
    view_words: str = ""
    next_time: str = ""


class SheetSource:
    """A comparison of which a sheet can be made, once, in whichever thread first wants it."""

    def __init__(self, found: Found, make: Make, style: SheetStyle) -> None:
        """Take frozen values only, so that edits which follow leave this sheet as it is."""
        self.found, self._make, self.style = found, make, style
        self._sheet: Sheet | None = None
        self._mutex = threading.Lock()

    def file_name(self, suffix: str) -> str:
        """What a file of it is called; a private sheet never takes the name of the whole one."""
        mark = "private" if self.style.private else ""
        return file_name(self.found.person.name, self.found.pattern.title, self.style.view_words, mark, suffix=suffix)

    def sheet(self) -> Sheet:
        """The sheet; the first call takes a moment.

        Raises:
            SizekeeperError: a plan cannot be worked out.
        """
        from sizekeeper.core.planned import plan_ahead  # noqa: PLC0415 - the window starts without plans
        from sizekeeper.reports.sheet_making import decision_sheet  # noqa: PLC0415 - as above

        with self._mutex:
            if self._sheet is None:
                style = self.style
                self._sheet = decision_sheet(
                    self.found,
                    plan_ahead(self.found, self._make, style.per_change_cm),
                    today=style.today,
                    names=assets.measures().name,
                    private=style.private,
                    notation=style.notation,
                    envelope=style.envelope,
                    view_words=style.view_words,
                    next_time=style.next_time,
                )
        return self._sheet


def source_of(
    session: Session,
    settings: Settings,
    entries: tuple[str, str, str],
    today: dt.date,
    *,
    private: bool,
    make: str = "",
) -> SheetSource | Missing:
    """The sheet of a person, a pattern and a view, drafts laid over; or what comes first.

    Args:
        session: the open library.
        settings: the preferences: how lengths are written, and what a change weighs.
        entries: the person's id, the pattern's id and the view.
        today: the date on the sheet.
        private: leave her measurements out.
        make: the id of the make that was taken up, "" for the one that is worked on.
    """
    from sizekeeper.ui.plan_cards import per_change_cm  # noqa: PLC0415 - the window starts without plans

    person, pattern, view = entries
    found = look_up(session, person, pattern, view=view)
    if not isinstance(found, Found):
        return found
    if found.fit is None:
        return Missing("Nothing to compare yet", found.problem, "Go to the comparison", Place("fit", person))
    notation, envelope = settings.notation_for(found.person.unit), settings.notation_in(found.printed_in)
    called = view_choices(session, found.pattern).get(view, "")
    front = make_of(session, person, pattern, view, "", make)
    makes = [value for value in session.belonging(pattern) if isinstance(value, Make)]
    noted = next_time_words(hers_before(makes, front)) if front.open else ""
    style = SheetStyle(today, notation, envelope, private, per_change_cm(settings), called, noted)
    return SheetSource(found, front, style)
