"""What is set by hand about a table of people: each step can be undone, and is read at once in the background."""

from __future__ import annotations

from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING, cast

from sizekeeper.core.person import Person
from sizekeeper.importing.people_draft import PeopleAnswers, PeopleDraft, put
from sizekeeper.importing.people_read import read_people
from sizekeeper.ui.import_roles import at_words
from sizekeeper.ui.import_steps import Steps

if TYPE_CHECKING:
    import datetime as dt
    from collections.abc import Callable, Collection, Sequence
    from typing import Literal

    from PySide6.QtCore import QObject

    from sizekeeper.importing.grid import Sheet
    from sizekeeper.importing.question import Answer
    from sizekeeper.ui.import_reading import Reading
    from sizekeeper.ui.session import Session


class PeopleCorrecting(Steps[PeopleAnswers]):
    """The reading of one table of people and everything set by hand about it; `draft` is the newest reading."""

    def __init__(
        self,
        draft: PeopleDraft,
        session: Session,
        today: dt.date,
        unit: Literal["cm", "in"],
        parent: QObject | None = None,
    ) -> None:
        super().__init__(draft.answers, parent)
        self.draft = draft
        self.today = today
        self._session, self._unit = session, unit

    @property
    def known(self) -> list[Person]:
        """The people of the library, hidden ones too, as last edited."""
        return known_people(self._session)

    def work(self) -> Callable[[Reading], object]:
        """Read with the answers so far and the people of now."""
        draft = self.draft
        return partial(read_in_background, draft.name, draft.sheets, self.answers, self.known, self.today, self._unit)

    def keep(self, found: object) -> PeopleAnswers:
        """Keep the newest draft."""
        self.draft = cast("PeopleDraft", found)
        return self.draft.answers

    def answer(self, answer: Answer) -> None:
        """Answer a question."""
        self.set(f"“{answer.text}”", cast("Callable[[PeopleAnswers], PeopleAnswers]", answer.change))

    def type_cell(self, at: str, text: str) -> None:
        """Read another text in a cell."""
        cell = (self.draft.sheet.name, at)
        self.set(f"Correct {at_words(at)}", partial(_with_cell, cell=cell, text=text))

    def leave_out(self, cells: Sequence[str]) -> None:
        """Do not read some cells."""
        self.set("Leave out", partial(_with_ignored, cells={(self.draft.sheet.name, at) for at in cells}))

    def take_back(self, cells: Sequence[str]) -> None:
        """Read some cells as they came."""
        self.set("Read as it came", partial(_as_they_came, cells={(self.draft.sheet.name, at) for at in cells}))

    def choose_table(self, sheet: str, *, turned: bool | None = None, head: int | None = None) -> None:
        """Look for the people on a sheet, in rows or columns, below a row of headings; what is not said is found."""
        self.set("Set the table", partial(_with_table, sheet=sheet, turned=turned, head=head))

    def choose_role(self, column: str, role: str) -> None:
        """Say what stands in a column, by the address of its heading."""
        self.set("Set the column", partial(put, which="roles", key=column, value=role))

    def choose_unit(self, column: str, unit: str) -> None:
        """Say in which unit a column's bare figures are; an empty one as its heading says."""
        self.set("Set the unit", partial(put, which="units", key=column, value=unit))

    def tick(self, name: str, *, taken: bool) -> None:
        """Take somebody in, or leave her out, by the cell of her name."""
        self.set("Take in" if taken else "Leave out", partial(_with_tick, name=name, taken=taken))

    def ask_again(self, name: str) -> None:
        """Ask again who somebody is."""
        self.set("Ask again", partial(_unanswered, name=name))

    def fill_in(self, **said: object) -> None:
        """Say the day, the hand or the groups where the table does not."""
        self.set("Fill in", partial(_with_rest, said=said))


def read_in_background(
    name: str,
    sheets: tuple[Sheet, ...],
    answers: PeopleAnswers,
    known: Sequence[Person],
    today: dt.date,
    unit: Literal["cm", "in"],
    reading: Reading,
) -> PeopleDraft:
    """`read_people` as the work of a thread."""
    return read_people(name, sheets, answers, known, today, unit, reading.progress)


def known_people(session: Session) -> list[Person]:
    """The people of the library, hidden ones too, as last edited."""
    return [value for value in session.values() if isinstance(value, Person)]


def _with_cell(answers: PeopleAnswers, cell: tuple[str, str], text: str) -> PeopleAnswers:
    return replace(answers, cells={**answers.cells, cell: text}, ignored=answers.ignored - {cell})


def _with_ignored(answers: PeopleAnswers, cells: Collection[tuple[str, str]]) -> PeopleAnswers:
    return replace(answers, ignored=answers.ignored | set(cells))


def _as_they_came(answers: PeopleAnswers, cells: Collection[tuple[str, str]]) -> PeopleAnswers:
    texts = {cell: text for cell, text in answers.cells.items() if cell not in cells}
    return replace(answers, cells=texts, ignored=answers.ignored - set(cells))


def _with_table(answers: PeopleAnswers, sheet: str, turned: bool | None, head: int | None) -> PeopleAnswers:  # noqa: FBT001 - by name
    """Another table: what was said of the columns and people of the one before does not hold for it."""
    kept = PeopleAnswers(
        cells=answers.cells, ignored=answers.ignored, on=answers.on, by=answers.by, groups=answers.groups
    )
    return replace(kept, sheet=sheet, turned=turned, head=head)


def _with_tick(answers: PeopleAnswers, name: str, taken: bool) -> PeopleAnswers:  # noqa: FBT001 - by name
    return replace(answers, left_out=answers.left_out - {name} if taken else answers.left_out | {name})


def _unanswered(answers: PeopleAnswers, name: str) -> PeopleAnswers:
    kept = [{at: said for at, said in said_of.items() if at != name} for said_of in (answers.same, answers.known)]
    return replace(answers, same=kept[0], known=kept[1], left_out=answers.left_out - {name})


def _with_rest(answers: PeopleAnswers, said: dict[str, object]) -> PeopleAnswers:
    return replace(answers, **said)  # type: ignore[arg-type]  # the fields of the answers, each of its own type
