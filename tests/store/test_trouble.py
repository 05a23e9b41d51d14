from __future__ import annotations

import errno
import sqlite3
from pathlib import Path

import pytest

from sizekeeper.errors import StoreError
from sizekeeper.store.trouble import DamagedError, told

PLACE = Path("nowhere") / "home.sizekeeper"


def trouble(code: int) -> sqlite3.OperationalError:
    error = sqlite3.OperationalError("words of the machine")
    error.sqlite_errorcode = code
    return error


@pytest.mark.parametrize(
    ("error", "words"),
    [
        (trouble(sqlite3.SQLITE_IOERR_FSYNC), "cannot be read or written: the disk reports an error"),
        (trouble(sqlite3.SQLITE_NOMEM), "cannot be read: the computer is out of memory"),
        (trouble(sqlite3.SQLITE_PERM), "cannot be opened: the file is protected"),
        (trouble(sqlite3.SQLITE_LOCKED), "another program holds it"),
        (trouble(sqlite3.SQLITE_READONLY_ROLLBACK), "was left in the middle of a change: open it in a window"),
        (trouble(sqlite3.SQLITE_READONLY_DIRECTORY), "cannot be written: the file is write-protected"),
        (trouble(sqlite3.SQLITE_FULL), "cannot be written: the disk is full"),
        (OSError(errno.ENOSPC, "full"), "cannot be written: the disk is full"),
        (OSError(errno.EROFS, "protected"), "cannot be written: the file or its folder is write-protected"),
        (OSError(errno.EIO, "Input/output error"), "cannot be used: Input/output error"),
        (OSError("odd"), "cannot be used: odd"),
    ],
)
def test_every_trouble_is_one_sentence_that_names_the_file(error: Exception, words: str) -> None:
    with pytest.raises(StoreError, match=f"home.sizekeeper” .*{words}.*\\.$"), told(PLACE):
        raise error


@pytest.mark.parametrize("code", [sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB, sqlite3.SQLITE_ERROR])
def test_a_file_that_is_at_fault_itself_is_damaged(code: int) -> None:
    with pytest.raises(DamagedError, match="is damaged; there is no backup of it"), told(PLACE):
        raise trouble(code)


def test_a_mistake_of_ours_is_not_blamed_on_the_file() -> None:
    with pytest.raises(sqlite3.ProgrammingError), told(PLACE):
        raise sqlite3.ProgrammingError("Cannot operate on a closed database.")
