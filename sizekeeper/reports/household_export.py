"""A household sheet, everybody against one pattern, as the bytes of a file."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from sizekeeper import assets
from sizekeeper.core.household import Household, compare_household
from sizekeeper.core.pattern import Pattern
from sizekeeper.core.person import Person
from sizekeeper.core.sharing import share
from sizekeeper.core.wording import Wording
from sizekeeper.errors import ReportError
from sizekeeper.reports.file_names import file_name

if TYPE_CHECKING:
    import datetime as dt
    from collections.abc import Mapping

    from sizekeeper.core.notation import Notation
    from sizekeeper.reports.export import Format
    from sizekeeper.reports.sheet import Paper
    from sizekeeper.reports.snapshot import Snapshot

HOUSEHOLD_FORMATS: tuple[Format, ...] = ("pdf", "xlsx")
"""The formats of a household sheet."""


@dataclass(frozen=True)
class Gathering:
    """People and a pattern that a household sheet is made for; `view` is one that has figures of its own."""

    people: tuple[Person, ...]
    pattern: Pattern
    view: str = ""
    view_words: str = ""

    @property
    def words(self) -> str:
        """For what it is: `Wrap dress, View B`."""
        parts = (self.pattern.title or "A pattern without a title", self.view_words)
        return ", ".join(part for part in parts if part)

    def file_name(self, suffix: str) -> str:
        """What its file is called."""
        return file_name(self.pattern.title, self.view_words, "household", suffix=suffix)


def gatherings(snapshot: Snapshot, people: tuple[Person, ...], patterns: list[Pattern]) -> list[Gathering]:
    """The same people against each pattern, once for every view that has figures of its own."""
    return [
        Gathering(people, pattern, view, words)
        for pattern in patterns
        for view, words in (snapshot.views(pattern) or {"": ""}).items()
    ]


def household_written(
    snapshot: Snapshot,
    gathering: Gathering,
    form: Format,
    *,
    notations: Mapping[Literal["cm", "in"], Notation],
    today: dt.date,
    paper: Paper = "a4",
) -> bytes:
    """The household sheet of a pattern.

    Args:
        snapshot: the library.
        gathering: who, and which pattern.
        form: one of the formats of a household sheet.
        notations: how lengths are written, by the unit that most of the people are measured in.
        today: the day on the sheet.
        paper: what a PDF is laid out for.

    Raises:
        ReportError: nobody can be compared with the pattern, or a household sheet has no such format.
    """
    envelope = snapshot.envelope(gathering.pattern, gathering.view)
    if envelope.body is None and envelope.finished is None:
        raise ReportError(f"{gathering.words}: the pattern has no figures yet.")
    household = compare_household(
        gathering.people, envelope, measures=assets.measures(), defaults=assets.ease_defaults()
    )
    if not any(standing.fit is not None for standing in household.standings):
        raise ReportError(f"{gathering.words}: nobody can be compared with it yet.")
    unit = Counter(person.unit for person in gathering.people).most_common(1)[0][0]
    words = Wording(notations[unit], assets.measures().name)
    return _in(form, household, words, today, paper, gathering.view_words)


def _in(form: Format, household: Household, words: Wording, today: dt.date, paper: Paper, view: str) -> bytes:
    sharing = share(household.standings, household.labels)
    if form == "pdf":
        from sizekeeper.reports.household_sheet import household_sheet  # noqa: PLC0415 - each format loads what it needs
        from sizekeeper.reports.pdf_household import household_pdf  # noqa: PLC0415 - as above

        return household_pdf(household_sheet(household, sharing, words, on=today, view_words=view), paper)
    if form == "xlsx":
        from sizekeeper.reports.household_workbook import household_workbook  # noqa: PLC0415 - as above

        return household_workbook(household, sharing, words, on=today, view_words=view)
    raise ReportError(f"A household sheet cannot be written as {form}.")
