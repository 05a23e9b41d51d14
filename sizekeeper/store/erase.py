"""Erasing a person for good: her entries, all their versions, and her name in the names of other edits.

What other entries say in their own words, such as the notes on a pattern, stays.
"""

from __future__ import annotations

import re
from contextlib import closing
from typing import TYPE_CHECKING

from sizekeeper.errors import StoreError
from sizekeeper.store.backup import sweep
from sizekeeper.store.codec import decode
from sizekeeper.store.connection import connect, make_safe, transaction
from sizekeeper.store.schema import Mark, format_of, raise_mark
from sizekeeper.store.shelf import backups
from sizekeeper.store.trouble import told

if TYPE_CHECKING:
    import sqlite3
    from collections.abc import Callable
    from pathlib import Path

    from sizekeeper.store.codec import Value

    Owner = Callable[[Value], str]


def _maker(value: Value) -> str:
    return str(getattr(value, "person", ""))


OWNERS: dict[str, Owner] = {"person": lambda value: value.id, "make": _maker}
"""How to tell from a value whose it is, by kind; the kinds that are not named are nobody's."""


def belongs(value: Value | None, kind: str, person: str) -> bool:
    """Whether an entry's value is a person or something of hers."""
    owner = OWNERS.get(kind)
    return value is not None and owner is not None and owner(value) == person


def erase_from(connection: sqlite3.Connection, person: str) -> Mark:
    """Remove a person from one file so that none of her bytes stay in it; returns the state it is in then.

    Raises:
        EntryError: an entry cannot be read, so that it is unknown whose it is; nothing is erased.
    """
    with transaction(connection):
        entries, names = _found(connection, person)
        for entry in entries:
            connection.execute("DELETE FROM version WHERE entry = ?", (entry,))
            connection.execute("DELETE FROM entry WHERE id = ?", (entry,))
        _forget(connection, names)
        mark = raise_mark(connection)
    connection.execute("VACUUM")
    return mark


def erase_from_backups(library: Path, person: str) -> None:
    """Remove a person from every backup of a library. Those that can be done are done, whatever happens to others.

    Raises:
        StoreError: she could not be erased from some of them; the message names them.
    """
    failed: list[str] = []
    sweep(library)
    for backup in backups(library):
        try:
            with told(backup.path), closing(connect(backup.path, "rw")) as connection:
                format_of(connection, backup.path)
                make_safe(connection)
                erase_from(connection, person)
        except StoreError:
            failed.append(f"“{backup.path.name}”")
    if failed:
        raise StoreError(f"these backups of “{library}” could not be erased from: {', '.join(failed)}.")


def _found(connection: sqlite3.Connection, person: str) -> tuple[set[str], set[str]]:
    """The ids of a person's entries, judged by all their versions, and every name she ever had."""
    entries: set[str] = set()
    names: set[str] = set()
    rows = connection.execute("SELECT id, kind, shape, value FROM entry JOIN version ON entry = id")
    for entry, kind, shape, raw in rows:
        if raw is None or kind not in OWNERS:
            continue
        value = decode(kind, shape, raw, entry)
        if belongs(value, kind, person):
            entries.add(entry)
            if kind == "person":
                names.add(str(getattr(value, "name", "")).strip())
    return entries, names - {""}


def _forget(connection: sqlite3.Connection, names: set[str]) -> None:
    """Empty the names of edits, left on other entries, in which a name stands as a word."""
    if not names:
        return
    said = re.compile(rf"(?<!\w)(?:{'|'.join(map(re.escape, sorted(names)))})(?!\w)", re.IGNORECASE)
    rows = connection.execute("SELECT entry, number, text FROM version").fetchall()
    spoken = [(entry, number) for entry, number, text in rows if said.search(text)]
    connection.executemany("UPDATE version SET text = '' WHERE entry = ? AND number = ?", spoken)
