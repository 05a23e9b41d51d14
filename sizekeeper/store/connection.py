"""One connection to a library file: how it is opened, its transactions, and how a changed file is noticed.

The file is never opened by anything but SQLite while a connection may be in use: on POSIX, closing another handle of
the same file would drop SQLite's own locks (https://www.sqlite.org/howtocorrupt.html, section 2.2).
"""

from __future__ import annotations

import errno
import os
import sqlite3
from contextlib import contextmanager
from typing import TYPE_CHECKING, Literal
from urllib.parse import quote

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

BUSY_SECONDS = 5.0
"""How long SQLite waits while another program reads or writes the file."""

Sight = tuple[int, int, int, int]


def connect(path: Path, mode: Literal["ro", "rw"]) -> sqlite3.Connection:
    """Open an existing file for reading or for writing, never creating it.

    The connection may go from thread to thread; whoever shares it sees to it that only one uses it at a time.
    """
    connection = sqlite3.connect(
        _address(path, mode), uri=True, timeout=BUSY_SECONDS, isolation_level=None, check_same_thread=False
    )
    for pragma in ("trusted_schema = OFF", "foreign_keys = ON", "cell_size_check = ON"):
        connection.execute(f"PRAGMA {pragma}")  # these do not touch the file, so they cannot fail
    return connection


def make_safe(connection: sqlite3.Connection) -> None:
    """Ask for one file at rest, commits that reach the disk and deleted text overwritten. Only for a file of ours."""
    connection.execute("PRAGMA journal_mode = DELETE")
    connection.execute("PRAGMA secure_delete = ON")
    connection.execute("PRAGMA synchronous = FULL")


def _address(path: Path, mode: str) -> str:
    """The file as a URI for SQLite: any name that the system allows, on a Windows share too."""
    place = os.fsencode(path.absolute().as_posix())
    return f"file://{'' if place.startswith(b'/') else '/'}{quote(place)}?mode={mode}"


def create(path: Path) -> None:
    """Make an empty file that only its owner can read; its folder too, if it is missing.

    Raises:
        FileExistsError: there is a file already.
        NotADirectoryError: what should be its folder is a file.
    """
    try:
        path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
    except FileExistsError:
        raise NotADirectoryError(errno.ENOTDIR, os.strerror(errno.ENOTDIR)) from None
    os.close(os.open(path, os.O_CREAT | os.O_EXCL | os.O_WRONLY, 0o600))


@contextmanager
def transaction(connection: sqlite3.Connection) -> Iterator[None]:
    """All or nothing: committed at the end, undone when anything is raised."""
    connection.execute("BEGIN IMMEDIATE")
    try:
        yield
        connection.execute("COMMIT")
    except BaseException:
        if connection.in_transaction:
            connection.execute("ROLLBACK")
        raise


def sight(path: Path) -> Sight:
    """What tells one state of a file from another without opening it: which file it is, its size and its time.

    Raises:
        FileNotFoundError: it is gone.
    """
    seen = path.stat()
    return (seen.st_dev, seen.st_ino, seen.st_size, seen.st_mtime_ns)
