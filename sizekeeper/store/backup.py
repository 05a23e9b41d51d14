"""Copies of a library: the backups beside it, a restored backup, and "Save a copy".

Each is written to a private temporary file, checked, brought to the disk and only then given its name, so that a good
file is never replaced by a bad one. Nothing is ever written over a file that is there.
"""

from __future__ import annotations

import contextlib
import os
import sqlite3
from typing import TYPE_CHECKING

from sizekeeper.errors import StoreError
from sizekeeper.store.connection import connect, create
from sizekeeper.store.schema import format_of
from sizekeeper.store.shelf import Backup, backups, folder_of, name_for, superfluous
from sizekeeper.store.trouble import damaged, is_damage, told

if TYPE_CHECKING:
    import datetime as dt
    from collections.abc import Iterator
    from pathlib import Path

    from sizekeeper.store.library import Library

__all__ = ["Backup", "back_up", "backups", "restore", "save_copy", "sweep"]

_UNFINISHED = ".unfinished-"


def back_up(connection: sqlite3.Connection, library: Path, when: dt.datetime, before_format: int = 0) -> None:
    """Put a checked copy of a library on its shelf, then take away the backups that need not be kept.

    Args:
        connection: the open library.
        library: its path.
        when: the time that the backup is named by.
        before_format: the migration that it is made before, 0 for a day's backup.

    Raises:
        DamagedError: the library is not sound; the backups on the shelf are left as they are.
        StoreError: the copy could not be written.
    """
    folder = folder_of(library)
    with told(folder):
        folder.mkdir(mode=0o700, exist_ok=True)
        sweep(library)
        with _checked_copy(connection, library, folder) as copy:
            copy.replace(folder / name_for(when, before_format))
        _to_disk(folder)
        for backup in superfluous(backups(library)):
            backup.path.unlink()


def restore(backup: Backup, into: Path) -> None:
    """Write a backup into a new file, which can then be opened.

    Raises:
        StoreError: there is a file already, the backup is not sound, or the file cannot be written.
    """
    with told(backup.path), contextlib.closing(connect(backup.path, "ro")) as connection:
        format_of(connection, backup.path)
        _into_new_file(connection, backup.path, into)


def save_copy(library: Library, into: Path) -> None:
    """Write everything that is in a library into a new file, also when the library itself was moved or deleted.

    Raises:
        StoreError: there is a file already, the library is not sound, or the file cannot be written.
    """
    with library.lent() as connection:
        _into_new_file(connection, library.path, into)


def sweep(library: Path) -> None:
    """Remove what an interrupted backup left. Only for the window that holds the lock."""
    for leftover in folder_of(library).glob(f"{_UNFINISHED}*"):
        leftover.unlink(missing_ok=True)


def _into_new_file(connection: sqlite3.Connection, source: Path, into: Path) -> None:
    with told(into):
        try:
            create(into)  # nobody else can take the name from here on
        except FileExistsError:
            raise StoreError(f"“{into}” exists already and was left as it is: choose another name.") from None
        try:
            with _checked_copy(connection, source, into.parent) as copy:
                copy.replace(into)
        except BaseException:
            into.unlink(missing_ok=True)
            raise
        _to_disk(into.parent)


@contextlib.contextmanager
def _checked_copy(connection: sqlite3.Connection, source: Path, folder: Path) -> Iterator[Path]:
    """A sound copy of a library under a temporary name, removed at the end unless it was given another."""
    copy = folder / f"{_UNFINISHED}{os.urandom(8).hex()}"
    create(copy)
    try:
        with contextlib.closing(connect(copy, "rw")) as target:
            _copy_pages(connection, target)
            if [row[0] for row in target.execute("PRAGMA integrity_check(1)")] != ["ok"]:
                raise damaged(source)
        _to_disk(copy)
        yield copy
    except sqlite3.DatabaseError as error:
        if is_damage(error):
            raise damaged(source) from error
        raise
    finally:
        for leftover in folder.glob(f"{copy.name}*"):
            leftover.unlink(missing_ok=True)


def _copy_pages(source: sqlite3.Connection, target: sqlite3.Connection) -> None:
    """Copy a database. The read transaction waits for another program once, where `backup` would wait for ever."""
    source.execute("BEGIN")
    try:
        source.execute("SELECT count(*) FROM sqlite_schema").fetchone()
        source.backup(target)
    finally:
        if source.in_transaction:
            source.execute("ROLLBACK")


def _to_disk(path: Path) -> None:
    """Have the system write a file, or the names in a folder, to the disk now."""
    folder = path.is_dir()
    if folder and os.name == "nt":
        return  # Windows has no such call for a folder
    handle = os.open(path, os.O_RDONLY if folder else os.O_RDWR)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)
