"""The tables of a library file, the small steps that made them, and the marks by which a file is recognised.

To change the tables, add a `Migration` at the end: it runs once, in a transaction together with the record that it ran,
after a backup. The number of the last one is the file's format number (`user_version`). Erasing a person works on
backups of every format: a migration that changes the tables must leave the columns that `erase` and `read_mark` use.
"""

from __future__ import annotations

import os
import sqlite3
from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from sizekeeper.errors import StoreError
from sizekeeper.store.codec import SHAPES
from sizekeeper.store.connection import transaction
from sizekeeper.store.trouble import damaged

if TYPE_CHECKING:
    from pathlib import Path

APPLICATION_ID = int.from_bytes(b"SzKp")
"""Written into the header of every library file, so that another program's database is not taken for one."""


@dataclass(frozen=True, slots=True)
class Migration:
    """One step of the tables: the format number it leads to, its name, and what it does."""

    number: int
    name: str
    run: Callable[[sqlite3.Connection], object]


@dataclass(frozen=True, slots=True)
class Mark:
    """The state of a library: a number that every save raises, and a random word that no other save has.

    Two copies of one library, each saved once, have the same number but not the same word.
    """

    generation: int
    word: str


_FIRST_TABLES = (
    "CREATE TABLE migration (number INTEGER PRIMARY KEY, name TEXT NOT NULL, ran TEXT NOT NULL) STRICT",
    """CREATE TABLE library (
        only INTEGER PRIMARY KEY CHECK (only = 1),
        generation INTEGER NOT NULL,
        word TEXT NOT NULL
    ) STRICT""",
    "INSERT INTO library VALUES (1, 0, '')",
    # `place` keeps the order in which entries were made
    "CREATE TABLE entry (place INTEGER PRIMARY KEY, id TEXT NOT NULL UNIQUE, kind TEXT NOT NULL) STRICT",
    # a version without a value says that the entry was taken away
    """CREATE TABLE version (
        entry TEXT NOT NULL REFERENCES entry (id),
        number INTEGER NOT NULL,
        shape INTEGER NOT NULL,
        opened TEXT NOT NULL,
        edited TEXT NOT NULL,
        text TEXT NOT NULL,
        value TEXT,
        PRIMARY KEY (entry, number)
    ) STRICT""",
    """CREATE TRIGGER closed_version_stays
        BEFORE UPDATE OF entry, number, shape, opened, edited, value ON version
        WHEN EXISTS (SELECT 1 FROM version AS later WHERE later.entry = OLD.entry AND later.number > OLD.number)
        BEGIN SELECT RAISE(ABORT, 'a closed version is never rewritten'); END""",
)


def _first_tables(connection: sqlite3.Connection) -> None:
    for statement in _FIRST_TABLES:
        connection.execute(statement)


MIGRATIONS: tuple[Migration, ...] = (Migration(1, "the first tables", _first_tables),)
"""Every step, in order."""


def newest_format() -> int:
    """The format number that this program writes."""
    return MIGRATIONS[-1].number


def format_of(connection: sqlite3.Connection, path: Path) -> int:
    """The format number of a file, 0 for an empty one.

    Raises:
        StoreError: the file is not a library, or a newer program wrote it.
    """
    application, version, pages = (
        connection.execute(f"PRAGMA {name}").fetchone()[0] for name in ("application_id", "user_version", "page_count")
    )
    if pages == 0:
        return 0
    if application != APPLICATION_ID:
        raise StoreError(f"“{path}” is not a Sizekeeper library; it was left as it is.")
    if version > newest_format():
        raise _newer(path)
    if version < 1:
        raise damaged(path)
    return int(version)


def check_content(connection: sqlite3.Connection, path: Path) -> None:
    """Make sure that the file says which state it is in, and that every entry is of a kind and shape known here.

    Raises:
        StoreError: it does not say, or a newer program wrote some of the entries.
    """
    if connection.execute("SELECT count(*) FROM library").fetchone() != (1,):
        raise damaged(path)
    rows = connection.execute("SELECT kind, max(shape) FROM entry JOIN version ON entry = id GROUP BY kind")
    if any(shape > SHAPES.get(kind, 0) for kind, shape in rows):
        raise _newer(path)


def _newer(path: Path) -> StoreError:
    return StoreError(f"“{path}” was written by a newer Sizekeeper: open it with that one; it was left as it is.")


def migrate(connection: sqlite3.Connection, start: int, ran: str, before_each: Callable[[int], object]) -> None:
    """Run the steps that a file lacks.

    Args:
        connection: the file.
        start: its format number, 0 for an empty file.
        ran: the time, kept with the record of each step.
        before_each: called with the number of a step before it runs on a file that has something in it.
    """
    for step in MIGRATIONS:
        if step.number <= start:
            continue
        if start:
            before_each(step.number)
        with transaction(connection):
            step.run(connection)
            connection.execute("INSERT INTO migration VALUES (?, ?, ?)", (step.number, step.name, ran))
            connection.execute(f"PRAGMA application_id = {APPLICATION_ID}")
            connection.execute(f"PRAGMA user_version = {step.number}")


def read_mark(connection: sqlite3.Connection) -> Mark:
    """The state that the file is in."""
    return Mark(*connection.execute("SELECT generation, word FROM library").fetchone())


def raise_mark(connection: sqlite3.Connection) -> Mark:
    """Put the file into a new state, within the transaction that makes it one."""
    connection.execute("UPDATE library SET generation = generation + 1, word = ?", (os.urandom(8).hex(),))
    return read_mark(connection)
