"""What is set by hand about something that is read: each step can be undone, and is read at once in the background."""

from __future__ import annotations

from typing import TYPE_CHECKING, Generic, TypeVar

from PySide6.QtCore import QObject, QTimer, Signal
from PySide6.QtGui import QUndoCommand, QUndoStack

from sizekeeper.ui.import_reading import Reading

if TYPE_CHECKING:
    from collections.abc import Callable

A = TypeVar("A")
"""Everything set by hand: a frozen value."""

_PATIENCE_MS = 500
"""After how long a reading is said to take long (the program's design: anything over half a second)."""


class _Set(QUndoCommand, Generic[A]):
    """One step: everything set by hand before and after."""

    def __init__(self, steps: Steps[A], text: str, before: A, after: A) -> None:
        super().__init__(text)
        self._steps, self._before, self._after = steps, before, after

    def redo(self) -> None:
        self._steps.take(self._after)

    def undo(self) -> None:
        self._steps.take(self._before)


class Steps(QObject, Generic[A]):
    """The steps, and the reading that follows each; a kind of thing that is read says how it is, and keeps what came.

    Signals:
        read_again(): it was read with the newest answers.
        failed(str): it could not be read so; the sentence says why.
        slow(bool): whether reading takes so long that it should be said.
    """

    read_again = Signal()
    failed = Signal(str)
    slow = Signal(bool)

    def __init__(self, answers: A, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.answers = answers
        self.undo_stack = QUndoStack(self)
        self._answers_read = answers
        self._reading: Reading | None = None
        self._patience = QTimer(self)
        self._patience.setSingleShot(True)
        self._patience.setInterval(_PATIENCE_MS)
        self._patience.timeout.connect(self._on_slow)

    def work(self) -> Callable[[Reading], object]:
        """What reads it with the answers so far, in a thread."""
        raise NotImplementedError

    def keep(self, found: object) -> A:
        """Keep what was read; gives the answers it was read with."""
        raise NotImplementedError

    @property
    def busy(self) -> bool:
        """Whether a step is still being read."""
        return self._reading is not None

    @property
    def touched(self) -> bool:
        """Whether there is a step that could be undone."""
        return self.undo_stack.canUndo()

    def set(self, text: str, change: Callable[[A], A]) -> None:
        """Set something by hand, as one step; `text` names it. Nothing happens when nothing is different."""
        after = change(self.answers)
        if after != self.answers:
            self.undo_stack.push(_Set(self, text, self.answers, after))

    def take(self, answers: A) -> None:
        """Read with other answers."""
        self.answers = answers
        self.read()

    def read(self) -> None:
        """Read in the background with the answers so far; the newest reading wins."""
        if self._reading is not None:
            self._reading.cancel()
        self._reading = Reading(self.work())
        self._reading.done.connect(self._on_done)
        self._reading.failed.connect(self._on_failed)
        self._patience.start()
        self._reading.start()

    def stop(self) -> None:
        """Give up a reading that takes long: the step that asked for it is taken back."""
        self.drop()
        if self.answers != self._answers_read and self.undo_stack.canUndo():
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

    def _on_done(self, found: object) -> None:
        self._end()
        self._answers_read = self.keep(found)
        self.read_again.emit()

    def _on_failed(self, sentence: str) -> None:
        self._end()
        self.failed.emit(sentence)
