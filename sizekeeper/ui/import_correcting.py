"""What is set by hand in the import window: each correction is a step that can be undone, and is read at once."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING, cast

from PySide6.QtCore import QObject, QTimer, Signal
from PySide6.QtGui import QUndoCommand, QUndoStack

from sizekeeper.importing import areas, setting
from sizekeeper.importing.learned import name_key
from sizekeeper.importing.opened import Answers, Opened, read
from sizekeeper.ui.import_reading import Reading
from sizekeeper.ui.import_roles import at_words

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from sizekeeper.core.chart import ChartKind, WrittenAs
    from sizekeeper.core.learned import Learned
    from sizekeeper.importing.areas import Box
    from sizekeeper.importing.draft import ChartUnit
    from sizekeeper.importing.grid import Sheet
    from sizekeeper.importing.question import Answer
    from sizekeeper.importing.raw import Orientation

_PATIENCE_MS = 500
"""After how long a reading is said to take long (the program's design: anything over half a second)."""


class _Set(QUndoCommand):
    """One correction: everything set by hand before and after."""

    def __init__(self, correcting: Correcting, text: str, before: Answers, after: Answers) -> None:
        super().__init__(text)
        self._correcting, self._before, self._after = correcting, before, after

    def redo(self) -> None:
        self._correcting.take(self._after)

    def undo(self) -> None:
        self._correcting.take(self._before)


class Correcting(QObject):
    """The reading of one source and everything set by hand about it.

    Signals:
        read_again(): the source was read with the newest answers; `opened` is the new reading.
        failed(str): it could not be read so; the sentence says why.
        slow(bool): whether reading takes so long that it should be said.
    """

    read_again = Signal()
    failed = Signal(str)
    slow = Signal(bool)

    def __init__(self, opened: Opened, learned: Callable[[], Learned], parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.opened = opened
        self.answers = opened.answers
        self.undo_stack = QUndoStack(self)
        self._learned = learned
        self._reading: Reading | None = None
        self._patience = QTimer(self)
        self._patience.setSingleShot(True)
        self._patience.setInterval(_PATIENCE_MS)
        self._patience.timeout.connect(self._on_slow)

    @property
    def busy(self) -> bool:
        """Whether a correction is still being read."""
        return self._reading is not None

    @property
    def touched(self) -> bool:
        """Whether there is a correction that could be undone."""
        return self.undo_stack.canUndo()

    def set(self, text: str, change: Callable[[Answers], Answers]) -> None:
        """Correct the reading, as one step; `text` names it. Nothing happens when nothing is different."""
        after = change(self.answers)
        if after != self.answers:
            self.undo_stack.push(_Set(self, text, self.answers, after))

    def take(self, answers: Answers) -> None:
        """Read with other answers."""
        self.answers = answers
        self.read()

    def read(self) -> None:
        """Read in the background with the answers and the names learned so far; the newest reading wins."""
        if self._reading is not None:
            self._reading.cancel()
        work = partial(_read, self.opened.name, self.opened.sheets, self.answers, self._learned())
        self._reading = Reading(work)
        self._reading.done.connect(self._on_done)
        self._reading.failed.connect(self._on_failed)
        self._patience.start()
        self._reading.start()

    def stop(self) -> None:
        """Give up a reading that takes long: the step that asked for it is taken back."""
        self.drop()
        if self.answers != self.opened.answers and self.undo_stack.canUndo():
            self.undo_stack.undo()

    def drop(self) -> None:
        """Let a running reading go."""
        if self._reading is not None:
            self._reading.cancel()
        self._end()

    def _end(self) -> None:
        self._patience.stop()
        self._reading = None
        self.slow.emit(False)

    def _on_slow(self) -> None:
        self.slow.emit(True)

    def _on_done(self, opened: object) -> None:
        self._end()
        self.opened = cast("Opened", opened)
        self.read_again.emit()

    def _on_failed(self, sentence: str) -> None:
        self._end()
        self.failed.emit(sentence)

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
