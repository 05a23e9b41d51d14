"""What is set by hand in the import window: each correction is a step that can be undone, and is read at once."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING, cast

from sizekeeper.importing import areas, setting
from sizekeeper.importing.learned import name_key
from sizekeeper.importing.opened import Answers, Opened, read
from sizekeeper.ui.import_roles import at_words
from sizekeeper.ui.import_steps import Steps

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from PySide6.QtCore import QObject

    from sizekeeper.core.chart import ChartKind, WrittenAs
    from sizekeeper.core.learned import Learned
    from sizekeeper.importing.areas import Box
    from sizekeeper.importing.draft import ChartUnit
    from sizekeeper.importing.grid import Sheet
    from sizekeeper.importing.question import Answer
    from sizekeeper.importing.raw import Orientation
    from sizekeeper.ui.import_reading import Reading


class Correcting(Steps[Answers]):
    """The reading of one source and everything set by hand about it; `opened` is the newest reading."""

    def __init__(self, opened: Opened, learned: Callable[[], Learned], parent: QObject | None = None) -> None:
        super().__init__(opened.answers, parent)
        self.opened = opened
        self._learned = learned

    def work(self) -> Callable[[Reading], object]:
        """Read with the answers and the names learned so far."""
        return partial(_read, self.opened.name, self.opened.sheets, self.answers, self._learned())

    def keep(self, found: object) -> Answers:
        """Keep the newest reading."""
        self.opened = cast("Opened", found)
        return self.opened.answers

    def answer(self, answer: Answer) -> None:
        """Answer a question."""
        self.set(f"“{answer.text}”", answer.change)

    def set_area(self, sheet: str, box: Box, *, beside_others: bool) -> None:
        """Take a rectangle of a sheet for a table."""
        self.set("Set the table", partial(setting.with_area, sheet=sheet, box=box, beside_others=beside_others))

    def look_everywhere(self, sheet: str) -> None:
        """Look for the tables of a sheet everywhere again."""
        self.set("Look everywhere", partial(setting.without_areas, sheet=sheet))

    def type_cell(self, sheet: str, at: str, text: str) -> None:
        """Read another text in a cell."""
        self.set(f"Correct {at_words(at)}", partial(setting.with_cell, cell=(sheet, at), text=text))

    def leave_out(self, sheet: str, cells: Sequence[str]) -> None:
        """Do not read some cells."""
        self.set("Leave out", partial(setting.with_cells_left_out, cells=[(sheet, at) for at in cells]))

    def take_back(self, sheet: str, cells: Sequence[str]) -> None:
        """Read some cells as they came."""
        self.set("Read as it came", partial(setting.with_cells_read, cells=[(sheet, at) for at in cells]))

    def correct(self, part: str, sheet: str, at: str, text: str) -> None:
        """Correct a size, a measure, how it was written, or a figure, by its cell."""
        cell = (sheet, at)
        changes: dict[str, Callable[[Answers], Answers]] = {
            "size": partial(setting.with_size, cell=cell, label=text),
            "measure": partial(setting.with_measure, row=cell, measure=text),
            "written": partial(setting.with_written, rows=[cell], written_as=cast("WrittenAs", text)),
            "figure": partial(setting.with_cell, cell=cell, text=text),
        }
        self.set(f"Correct the {part}", changes[part])

    def choose(self, which: str, key: str, value: str) -> None:
        """Set the kind, the unit or the direction of a table."""
        if which == "kind":
            self.set("Set the kind", partial(setting.with_kinds, tables=[key], kind=cast("ChartKind", value)))
        elif which == "unit":
            self.set("Set the unit", partial(setting.with_units, tables=[key], unit=cast("ChartUnit", value)))
        else:
            table = next(t for t in self.opened.draft.tables if t.key == key)
            turned = areas.with_orientation(self.opened, table, cast("Orientation", value))
            self.set("Turn the table", partial(setting.with_corrections, corrections=turned))

    def tick(self, key: str, taken: bool) -> None:  # noqa: FBT001 - a slot
        """Take a table in, or leave it out."""
        text = "Take the table in" if taken else "Leave the table out"
        self.set(text, partial(setting.with_table, table=key, taken=taken))

    def remember(self, label: str, kept: bool) -> None:  # noqa: FBT001 - a slot
        """Say whether the measure of a label shall be remembered on saving."""
        text = "Remember the name" if kept else "Do not remember the name"
        self.set(text, partial(setting.with_memory, name=name_key(label), kept=kept))


def _read(name: str, sheets: tuple[Sheet, ...], answers: Answers, learned: Learned, reading: Reading) -> Opened:
    return read(name, sheets, answers, learned, reading.progress)
