"""The thread that commits edits in order, so that the window never waits for the disk.

An edit that cannot be saved is never dropped. If the file is at fault (a full disk), it and all later edits wait, and
are tried again, in order, with the next edit or on `retry`. If the edit is at fault (its entry was changed elsewhere),
it is put aside and the others go on. Both can be saved as a copy.
"""

from __future__ import annotations

import itertools
import logging
import threading
from collections.abc import Callable, Sequence
from contextlib import closing
from dataclasses import dataclass
from typing import TYPE_CHECKING, Self, TypeVar

from sizekeeper.errors import StaleEntryError, StoreError
from sizekeeper.store import erase
from sizekeeper.store.backup import save_copy
from sizekeeper.store.codec import kind_of
from sizekeeper.store.connection import connect, make_safe, transaction
from sizekeeper.store.schema import raise_mark
from sizekeeper.store.trouble import EntryError, told
from sizekeeper.store.versions import Edit, lay_over

if TYPE_CHECKING:
    from pathlib import Path

    from sizekeeper.store.library import Library
    from sizekeeper.store.versions import Pair

_log = logging.getLogger(__name__)
_T = TypeVar("_T")


@dataclass(frozen=True, slots=True, eq=False)
class _Submitted:
    """An edit on its way to the file, and who wants to know."""

    edit: Edit
    on_saved: Callable[[int], object]
    on_refused: Callable[[str], object]


class Writer:
    """Commits edits to one library from a thread of its own. `close` ends the thread; the library stays open.

    The callbacks are called from that thread.
    """

    def __init__(self, library: Library) -> None:
        """Start the thread."""
        self.library = library
        self._changed = threading.Condition()
        self._queue: list[_Submitted] = []
        self._waiting: list[_Submitted] = []
        self._aside: list[_Submitted] = []
        self._busy = False
        self._again = False
        self._ending = False
        # a daemon, so that a program that breaks down without `close` still ends
        self._thread = threading.Thread(target=self._run, name="library writer", daemon=True)
        self._thread.start()

    @property
    def refused(self) -> list[Edit]:
        """The edits that are not in the file: those put aside, then those that will be tried again."""
        with self._changed:
            return [submitted.edit for submitted in (*self._aside, *self._waiting)]

    def submit(
        self,
        text: str,
        pairs: Sequence[Pair],
        on_saved: Callable[[int], object],
        on_refused: Callable[[str], object],
    ) -> None:
        """Hand over an edit and return at once.

        Args:
            text: the edit's name.
            pairs: each entry before and after.
            on_saved: called after a commit with the number of submitted edits it covered.
            on_refused: called with a sentence when the edit could not be saved; it is kept in `refused`.

        Raises:
            RuntimeError: the writer was closed.
        """
        with self._changed:
            if self._ending:
                raise RuntimeError("the writer is closed")
            self._queue.append(_Submitted(Edit(text, tuple(pairs)), on_saved, on_refused))
            self._changed.notify_all()

    def retry(self) -> None:
        """Try the waiting edits again, for instance after making room on the disk; refusals are told again."""
        with self._changed:
            self._again = True
            self._changed.notify_all()

    def give_up(self) -> list[Edit]:
        """Let go of the refused edits, so that they are neither tried again nor put into a copy.

        Returns:
            the edits, as `refused` told them.
        """
        with self._changed:
            given_up = self.refused
            self._aside, self._waiting = [], []
        return given_up

    def flush(self, timeout: float | None = None) -> bool:
        """Wait until all edits have been tried: whether every one of them is in the file now.

        Args:
            timeout: how many seconds to wait at most, None for as long as it takes.
        """
        with self._changed:
            idle = self._changed.wait_for(lambda: not (self._queue or self._busy or self._again), timeout)
            return idle and not (self._aside or self._waiting)

    def close(self) -> None:
        """Try all edits that are left and end the thread. Closing twice does no harm."""
        with self._changed:
            self._again = self._again or (bool(self._waiting) and not self._ending)
            self._ending = True
            self._changed.notify_all()
        self._thread.join()

    def save_copy(self, into: Path) -> list[str]:
        """Write the library, with every refused edit laid over it, into a new file.

        Returns:
            a sentence for each refused edit that no file can hold; the copy is without it.

        Raises:
            StoreError: there is a file already, or it cannot be written.
        """
        save_copy(self.library, into)
        left_out: list[str] = []
        try:
            with told(into), closing(connect(into, "rw")) as copy:
                make_safe(copy)
                for edit in self.refused:
                    try:
                        with transaction(copy):
                            lay_over(copy, edit, self.library.moment())
                            raise_mark(copy)
                    except EntryError as error:
                        left_out.append(str(error))
        except BaseException:
            into.unlink(missing_ok=True)
            raise
        return left_out

    def erase(self, person: str, *, backups: bool) -> None:
        """Remove a person for good, after all edits so far, and from the refused edits too.

        Raises:
            StoreError: see `Library.erase`.
        """
        self.flush()
        self.library.erase(person, backups=False)
        with self._changed:
            self._aside = [s for s in self._aside if not _touches(s.edit, person)]
            self._waiting = [s for s in self._waiting if not _touches(s.edit, person)]
        if backups:
            self.library.erase(person, backups=True)

    def _run(self) -> None:
        while True:
            with self._changed:
                self._changed.wait_for(lambda: self._queue or self._again or self._ending)
                if not (self._queue or self._again):
                    return
                edits = [*self._waiting, *self._queue]
                aloud = edits if self._again else self._queue
                self._queue = []
                self._busy, self._again = True, False
            waiting, aside = self._commit(edits, aloud)
            with self._changed:
                self._waiting = waiting
                self._aside += aside
                self._busy = False
                self._changed.notify_all()

    def _commit(self, edits: list[_Submitted], aloud: list[_Submitted]) -> tuple[list[_Submitted], list[_Submitted]]:
        """Save edits in one transaction or, where that fails, one by one: those that wait, and those put aside.

        Refusals are told for the edits in `aloud`.
        """
        if len(edits) > 1 and self._try(edits) is None:
            for on_saved, group in itertools.groupby(edits, key=lambda submitted: submitted.on_saved):
                _tell(on_saved, len(list(group)))
            return [], []
        aside: list[_Submitted] = []
        for place, submitted in enumerate(edits):
            error = self._try([submitted])
            if error is None:
                _tell(submitted.on_saved, 1)
                continue
            of_the_file = isinstance(error, StoreError) and not isinstance(error, StaleEntryError | EntryError)
            refused = edits[place:] if of_the_file else [submitted]
            for each in refused:
                if each in aloud:
                    _tell(each.on_refused, _sentence(error))
            if of_the_file:
                return refused, aside
            aside.append(submitted)
        return [], aside

    def _try(self, edits: list[_Submitted]) -> Exception | None:
        try:
            self.library.save_all([submitted.edit for submitted in edits])
        except Exception as error:  # noqa: BLE001 - whatever it is, the edits are kept and the thread goes on
            if not isinstance(error, StoreError):
                _log.exception("an edit could not be saved")
            return error
        return None

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_: object) -> None:
        self.close()


def _sentence(error: Exception) -> str:
    if isinstance(error, StoreError):
        return str(error)
    return f"The edit is not saved, but kept, because of a fault in the program ({error}); it can be saved as a copy."


def _tell(callback: Callable[[_T], object], what: _T) -> None:
    """Call back. A listener that fails, or is gone, must not keep later edits from being saved."""
    try:
        callback(what)
    except Exception:  # noqa: BLE001 - see above
        _log.exception("a listener of the library writer failed")


def _touches(edit: Edit, person: str) -> bool:
    return any(
        erase.belongs(value, kind_of(value), person) for pair in edit.pairs for value in pair if value is not None
    )
