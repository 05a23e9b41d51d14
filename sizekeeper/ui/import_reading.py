"""Reading in the background: one piece of work in a thread of its own, which can be watched and stopped."""

from __future__ import annotations

import sys
import threading
import time
from typing import TYPE_CHECKING, ClassVar

from PySide6.QtCore import QObject, Qt, Signal, Slot

from sizekeeper.errors import ReadError, SizekeeperError

if TYPE_CHECKING:
    from collections.abc import Callable


_EVERY_S = 0.05
"""How often progress is told at most: each telling makes the window's thread wait for its turn (coined)."""


_USUAL_S = sys.getswitchinterval()
_BRISK_S = 0.0003
"""How soon the window's thread gets its turn while something is read. Painting asks for it hundreds of times, and at
the usual five milliseconds each time one picture of the grid would take a second (measured; the figure is coined)."""


class Cancelled(ReadError):  # noqa: N818 - nothing went wrong: the reader was told to stop
    """Reading was stopped by the user; nothing of it is kept."""


class Reading(QObject):
    """A piece of work that begins with `start`. Its signals arrive in the thread of the window.

    After `cancel` nothing is announced any more, whatever the thread still does before it notices.

    Signals:
        progressed(int, int): how much is done and how much there is.
        stepped(object): a part of the work is done, whatever the work tells.
        done(object): what the work returned.
        failed(str): the work met an error of the user's world; the sentence says which.
        ended(): nothing more comes, whichever way it ended.
    """

    progressed = Signal(int, int)
    stepped = Signal(object)
    done = Signal(object)
    failed = Signal(str)
    ended = Signal()
    _told = Signal(str, object)
    _running: ClassVar[set[Reading]] = set()

    def __init__(self, work: Callable[[Reading], object]) -> None:
        super().__init__()
        self._work = work
        self._stop = threading.Event()
        self._said = 0.0
        self._thread = threading.Thread(target=self._run, name="reading", daemon=True)
        self._told.connect(self._on_told, Qt.ConnectionType.QueuedConnection)

    def start(self) -> Reading:
        """Begin."""
        Reading._running.add(self)
        sys.setswitchinterval(_BRISK_S)
        self._thread.start()
        return self

    def cancel(self) -> None:
        """Stop as soon as can be; nothing is announced from now on but that it ended."""
        self._stop.set()

    @property
    def cancelled(self) -> bool:
        """Whether it was told to stop."""
        return self._stop.is_set()

    def progress(self, done: int, total: int) -> None:
        """Called by the work now and then.

        Raises:
            Cancelled: it was told to stop.
        """
        self.check(done, total)
        now = time.monotonic()
        if now - self._said >= _EVERY_S or done >= total > 0:
            self._said = now
            self._told.emit("progressed", (done, total))

    def check(self, _done: int, _total: int) -> None:
        """The same without announcing it, for parts of the work whose progress says little.

        Raises:
            Cancelled: it was told to stop.
        """
        if self._stop.is_set():
            raise Cancelled("Reading was stopped.")

    def tell(self, part: object) -> None:
        """Called by the work when a part of it is done."""
        self._told.emit("stepped", part)

    @classmethod
    def finish_all(cls) -> None:
        """Stop everything that still runs and wait for it."""
        for reading in list(cls._running):
            reading.cancel()
            reading._thread.join()  # noqa: SLF001 - its own class
            cls._over(reading)

    @classmethod
    def _over(cls, reading: Reading) -> None:
        """Forget a reading whose thread has ended; with the last one threads take turns as they did before."""
        cls._running.discard(reading)
        if not cls._running:
            sys.setswitchinterval(_USUAL_S)

    def _run(self) -> None:
        try:
            result = self._work(self)
        except SizekeeperError as error:
            self._told.emit("failed", str(error))
        except Exception as error:  # noqa: BLE001 - a mistake of ours: raised again in the window's thread
            self._told.emit("crashed", error)
        else:
            self._told.emit("done", result)

    @Slot(str, object)
    def _on_told(self, what: str, value: object) -> None:
        """Pass on what the thread told; the last word ends the reading."""
        last = what in ("done", "failed", "crashed")
        if last:
            self._thread.join()
            Reading._over(self)
        if not self.cancelled:
            self._announce(what, value)
        if last:
            self.ended.emit()
        if isinstance(value, Exception):
            raise value

    def _announce(self, what: str, value: object) -> None:
        if what == "progressed" and isinstance(value, tuple):
            self.progressed.emit(*value)
        elif what == "stepped":
            self.stepped.emit(value)
        elif what == "done":
            self.done.emit(value)
        elif what == "failed":
            self.failed.emit(str(value))
