"""What went wrong with a library file, said in one sentence that names it."""

from __future__ import annotations

import errno
import sqlite3
from contextlib import contextmanager
from typing import TYPE_CHECKING

from sizekeeper.errors import StoreError
from sizekeeper.store.shelf import backups

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

_WORDS = {
    sqlite3.SQLITE_FULL: "cannot be written: the disk is full",
    sqlite3.SQLITE_BUSY: "cannot be used at the moment: another program holds it; try again",
    sqlite3.SQLITE_LOCKED: "cannot be used at the moment: another program holds it; try again",
    sqlite3.SQLITE_READONLY: "cannot be written: the file is write-protected",
    sqlite3.SQLITE_CANTOPEN: "cannot be opened: the file or its folder is missing or protected",
    sqlite3.SQLITE_PERM: "cannot be opened: the file is protected",
    sqlite3.SQLITE_IOERR: "cannot be read or written: the disk reports an error",
    sqlite3.SQLITE_NOMEM: "cannot be read: the computer is out of memory",
}
_EXTENDED_WORDS = {
    sqlite3.SQLITE_READONLY_ROLLBACK: "was left in the middle of a change: open it in a window that may write, "
    "which puts it right",
    sqlite3.SQLITE_READONLY_DBMOVED: "was moved or replaced by another program while it was open; try again",
}
_DISK_FULL = {errno.ENOSPC, errno.EDQUOT}
_NOT_ALLOWED = {errno.EACCES, errno.EPERM, errno.EROFS}


class EntryError(StoreError):
    """One entry is at fault, not the file: the others can be saved."""


class DamagedError(StoreError):
    """The file is not a sound library; the message names the newest backup, if there is one."""


def damaged(path: Path, why: str = "is damaged") -> DamagedError:
    """The error for a file that is not a sound library; the sentence says why, and what to do."""
    found = backups(path)
    if found:
        newest = f"{found[0].when:%Y-%m-%d %H:%M}"
        return DamagedError(f"“{path}” {why}; its newest backup is of {newest}: restore that into a new file.")
    return DamagedError(f"“{path}” {why}; there is no backup of it.")


def is_damage(error: sqlite3.Error) -> bool:
    """Whether an error of SQLite says that the file itself is not sound."""
    return getattr(error, "sqlite_errorcode", 0) & 0xFF in {sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB}


def _from_sqlite(path: Path, error: sqlite3.Error) -> StoreError:
    code = getattr(error, "sqlite_errorcode", sqlite3.SQLITE_CORRUPT)  # it has none when a text is not UTF-8
    words = _EXTENDED_WORDS.get(code) or _WORDS.get(code & 0xFF)
    return StoreError(f"“{path}” {words}.") if words else damaged(path)


def _from_system(path: Path, error: OSError) -> StoreError:
    if error.errno in _DISK_FULL:
        return StoreError(f"“{path}” cannot be written: the disk is full.")
    if error.errno in _NOT_ALLOWED:
        return StoreError(f"“{path}” cannot be written: the file or its folder is write-protected.")
    return StoreError(f"“{path}” cannot be used: {error.strerror or error}.")


@contextmanager
def told(path: Path) -> Iterator[None]:
    """Turn the errors of SQLite and of the file system into a sentence about one file.

    Raises:
        StoreError: something went wrong; `DamagedError` where the file itself is at fault.
    """
    try:
        yield
    except sqlite3.Error as error:
        if not hasattr(error, "sqlite_errorcode") and not isinstance(error, sqlite3.OperationalError):
            raise  # a mistake of ours, such as using a closed connection
        raise _from_sqlite(path, error) from error
    except OSError as error:
        raise _from_system(path, error) from error
