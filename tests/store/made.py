"""What the tests of the store are made of: values in one line, a clock, and looks at the raw file."""

from __future__ import annotations

import datetime as dt
import sqlite3
from contextlib import closing
from typing import TYPE_CHECKING, Any

from sizekeeper.core.pattern import Pattern
from sizekeeper.core.person import Person

if TYPE_CHECKING:
    from pathlib import Path

    from sizekeeper.store.library import Library

ILSE = Person("p1", "Ilse")
BERTA = Person("p2", "Berta")
DRESS = Pattern("d1", "Summer dress")


class Clock:
    """A clock that stands still until it is moved."""

    def __init__(self) -> None:
        self.now = dt.datetime(2026, 11, 25, 9, 30, tzinfo=dt.UTC)

    def __call__(self) -> dt.datetime:
        return self.now

    def move(self, **by: float) -> None:
        """Move on, `move(minutes=10)`, or back."""
        self.now += dt.timedelta(**by)


def noted(notes: str, person: Person = ILSE) -> Person:
    """The person with other notes."""
    return Person(person.id, person.name, notes=notes)


def sql(path: Path, *statements: str) -> list[tuple[Any, ...]]:
    """Run statements on a file behind the program's back; the rows of the last one."""
    with closing(sqlite3.connect(path)) as connection:
        rows: list[tuple[Any, ...]] = []
        for statement in statements:
            rows = connection.execute(statement).fetchall()
        connection.commit()
        return rows


def fill_disk(library: Library) -> None:
    """Let the file grow no more, as on a full disk."""
    pages = library._connection.execute("PRAGMA page_count").fetchone()[0]
    library._connection.execute(f"PRAGMA max_page_count = {pages}")


def make_room(library: Library) -> None:
    """Let the file grow again."""
    library._connection.execute("PRAGMA max_page_count = 1000000")


def spoil(path: Path) -> None:
    """Damage the last page of a file, which is part of a long text, so that it still opens."""
    size = sql(path, "PRAGMA page_size")[0][0]
    data = path.read_bytes()
    path.write_bytes(data[:-size] + b"\xff" * size)


LONG = "so many words " * 2000
"""A text that fills pages of its own; more than fits on a full disk."""
