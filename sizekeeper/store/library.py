"""The library file: what the household has entered, with every version of it.

One window writes; a second one looks on. Every save is one transaction and puts the file into a new state, so that a
file that was changed by somebody else, or replaced by a synced one, is noticed. A library may be used from several
threads: its methods wait for each other.
"""

from __future__ import annotations

import os
import threading
from contextlib import closing, contextmanager, suppress
from typing import TYPE_CHECKING, Self

from sizekeeper.errors import StoreError
from sizekeeper.store import erase, schema, versions
from sizekeeper.store.backup import back_up
from sizekeeper.store.connection import connect, create, make_safe, sight, transaction
from sizekeeper.store.lock import Lock, take
from sizekeeper.store.shelf import backups
from sizekeeper.store.trouble import DamagedError, EntryError, damaged, told
from sizekeeper.store.versions import Edit, Version

if TYPE_CHECKING:
    import datetime as dt
    import sqlite3
    from collections.abc import Callable, Collection, Iterator, Sequence
    from pathlib import Path

    from sizekeeper.store.codec import Value
    from sizekeeper.store.versions import Pair

__all__ = ["Edit", "Library", "Version"]

_ASKED = "it was opened to be looked at only"


class Library:
    """An open library file. `backup_trouble` says why today's backup could not be made, "" while all is well.

    Made by `Library.open`; `close` lets the next window write. Usable in a `with` statement.
    """

    def __init__(self, path: Path, now: Callable[[], dt.datetime], lock: Lock | None, reason: str) -> None:
        """Open the file itself; `reason` says why it may not be written, "" if it may."""
        self.path = path
        self.backup_trouble = ""
        self._now = now
        self._lock = lock
        self._reason = reason
        self._mutex = threading.RLock()
        self._backed_up: dt.date | None = None
        self._outside = False
        self._sight = sight(path)
        self._connection = self._connected()
        self._mark = schema.read_mark(self._connection)

    @classmethod
    def open(cls, path: Path, *, now: Callable[[], dt.datetime], read_only: bool = False) -> Self:
        """Open a library, making it if there is none.

        Args:
            path: the file; backups and the lock lie beside it.
            now: the clock.
            read_only: look only, and make nothing.

        Raises:
            StoreError: the file cannot be opened, is damaged, not a library, or of a newer program.
        """
        path = path.expanduser().resolve()
        with told(path):
            if read_only and not path.exists():
                raise StoreError(f"“{path}” does not exist.")
            if not read_only:
                with suppress(FileExistsError):
                    create(path)
                _recognise(path)
            lock, reason = (None, _ASKED) if read_only else take(path)
            try:
                return cls(path, now, lock, reason)
            except BaseException:
                if lock is not None:
                    lock.release()
                raise

    @property
    def read_only(self) -> bool:
        """Whether this window may only look."""
        return bool(self._reason)

    @property
    def read_only_reason(self) -> str:
        """Why this window may only look, in words that follow "the library can only be looked at:"."""
        return self._reason

    @property
    def generation(self) -> int:
        """The number of the file's state that this window knows; every save raises it."""
        return self._mark.generation

    def values(self, only: Collection[str] = ()) -> list[Value]:
        """Every current value, in the order in which entries were made; afterwards nothing is "changed outside".

        Args:
            only: the kinds that are wanted; none for all. `rest` has the others.

        Raises:
            StoreError: the file cannot be read; an entry that cannot be read is named.
        """
        with self._reading() as connection:
            found = self._current(connection, only=only)
            self._mark = schema.read_mark(connection)
            self._outside = False
        return found

    def rest(self, without: Collection[str]) -> list[Value]:
        """The current values of all kinds but those that `values` has told already.

        Raises:
            StoreError: as for `values`.
        """
        with self._reading() as connection:
            return self._current(connection, without=without)

    def _current(
        self, connection: sqlite3.Connection, *, only: Collection[str] = (), without: Collection[str] = ()
    ) -> list[Value]:
        try:
            return versions.current(connection, only=only, without=without)
        except EntryError as error:
            raise damaged(self.path, f"cannot be read: {error}") from error

    def taken_away(self) -> list[Value]:
        """The last value of every entry that was taken away, the latest first; saving one brings it back."""
        with self._reading() as connection:
            return versions.taken_away(connection)

    def history(self, entry: str) -> list[Version]:
        """The versions of an entry, the newest first. To put one back, save its value."""
        with self._reading() as connection:
            return versions.history(connection, entry, self.moment())

    def changed_outside(self) -> bool:
        """Whether the file holds changes by somebody else that `values` has not told yet.

        Raises:
            StoreError: the file was moved or deleted, or cannot be read.
        """
        with self._reading() as connection:
            return self._outside or schema.read_mark(connection) != self._mark

    def save(self, text: str, pairs: Sequence[Pair]) -> None:
        """Replace entries, in one transaction: all pairs or none.

        Args:
            text: the edit's name.
            pairs: each entry before and after; None before makes it, None after takes it away (its versions stay).

        Raises:
            StaleEntryError: an entry is not what it was before the edit. A file that somebody else changed is no reason
                by itself: the edit is saved if its own entries did not change, and `changed_outside` then says so.
            EntryError: the edit cannot be carried out on any file.
            StoreError: the file cannot be written.
        """
        self.save_all([Edit(text, tuple(pairs))])

    def save_all(self, edits: Sequence[Edit]) -> None:
        """Carry out several edits in order, in one transaction: all of them or none. Raises what `save` raises."""
        with self._mutex, told(self.path):
            self._refuse_looking()
            connection = self._fresh()
            moment = self.moment()
            self._back_up_once_a_day(connection, moment)
            with transaction(connection):
                outside = schema.read_mark(connection) != self._mark
                versions.replace_all(connection, edits, moment)
                mark = schema.raise_mark(connection)
            self._wrote(mark, outside=outside)

    def erase(self, person: str, *, backups: bool) -> None:
        """Remove a person for good, with all versions of all that is hers; from the backups too when asked.

        Raises:
            StoreError: the file cannot be written, or some backups could not be erased from; the message names them.
        """
        with self._mutex, told(self.path):
            self._refuse_looking()
            connection = self._fresh()
            outside = schema.read_mark(connection) != self._mark
            mark = erase.erase_from(connection, person)
            self._wrote(mark, outside=outside)
            if backups:
                erase.erase_from_backups(self.path, person)

    def quick_check(self) -> str | None:
        """Look the whole file over for damage: a sentence if there is any, else None. Needs time."""
        try:
            with told(self.path), closing(connect(self.path, "ro")) as connection:
                sound = [row[0] for row in connection.execute("PRAGMA quick_check(1)")] == ["ok"]
        except StoreError as error:
            return str(error)
        return None if sound else str(damaged(self.path))

    def moment(self) -> dt.datetime:
        """The time by the library's clock, with its zone."""
        moment = self._now()
        return moment if moment.tzinfo else moment.astimezone()

    @contextmanager
    def lent(self) -> Iterator[sqlite3.Connection]:
        """The connection, for a copy of the whole file; everything else waits."""
        with self._mutex, told(self.path):
            yield self._connection

    def close(self) -> None:
        """Close the file and let another window write. Closing twice does no harm."""
        with self._mutex:
            self._connection.close()
            if self._lock is not None:
                self._lock.release()

    def _connected(self) -> sqlite3.Connection:
        """A connection to the file as it is now, recognised and brought up to the present format."""
        connection = connect(self.path, "ro" if self.read_only else "rw")
        try:
            self._bring_up(connection, schema.format_of(connection, self.path))
            schema.check_content(connection, self.path)
        except BaseException:
            connection.close()
            raise
        return connection

    def _bring_up(self, connection: sqlite3.Connection, start: int) -> None:
        """Make the tables of an empty file, or take an older one to the present format."""
        if not start and (self.read_only or backups(self.path)):
            raise damaged(self.path, "is empty")
        if not self.read_only:
            make_safe(connection)
            moment = self.moment()
            schema.migrate(
                connection, start, moment.isoformat(), lambda number: back_up(connection, self.path, moment, number)
            )
        elif start < schema.newest_format():
            raise StoreError(f"“{self.path}” is of an older format and cannot be brought up to date: {self._reason}.")

    def _fresh(self) -> sqlite3.Connection:
        """The connection, opened again if the file is not the one last seen: SQLite keeps to the one it opened."""
        try:
            seen = sight(self.path)
        except FileNotFoundError:
            raise StoreError(f"“{self.path}” was moved or deleted while it was open.") from None
        if seen != self._sight:
            connection = self._connected()
            self._connection.close()
            self._connection = connection
            self._sight = seen
        return self._connection

    @contextmanager
    def _reading(self) -> Iterator[sqlite3.Connection]:
        """The connection within one state of the file."""
        with self._mutex, told(self.path):
            connection = self._fresh()
            connection.execute("BEGIN")
            try:
                yield connection
            finally:
                if connection.in_transaction:
                    connection.execute("ROLLBACK")

    def _wrote(self, mark: schema.Mark, *, outside: bool) -> None:
        """Take note of the state that this window put the file into."""
        self._outside = self._outside or outside
        seen = sight(self.path)
        if seen[:2] != self._sight[:2]:
            raise StoreError(f"“{self.path}” was replaced by another program while it was written; try again.")
        self._sight = seen
        self._mark = mark

    def _refuse_looking(self) -> None:
        if self._reason:
            raise StoreError(f"“{self.path}” can only be looked at: {self._reason}.")

    def _back_up_once_a_day(self, connection: sqlite3.Connection, moment: dt.datetime) -> None:
        """A backup before the first change of a day. Only a damaged library keeps the change from being saved."""
        day = moment.date()
        if self._backed_up == day or not self._mark.generation:
            return
        if not any(b.when.date() == day and not b.before_format for b in backups(self.path)):
            try:
                back_up(connection, self.path, moment)
            except DamagedError:
                raise
            except StoreError as error:
                self.backup_trouble = f"There is no backup of today: {error}"
                return
        self.backup_trouble = ""
        self._backed_up = day

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_: object) -> None:
        self.close()


def _recognise(path: Path) -> None:
    """Make sure that a file is a library before anything is laid beside it. Raises what `format_of` raises."""
    with closing(connect(path, "rw" if os.access(path, os.W_OK) else "ro")) as connection:
        schema.format_of(connection, path)
