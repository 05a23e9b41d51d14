"""The versions of entries: which one is current, which edits run together, and what is kept for good.

Edits of one entry within ten minutes of a version's first edit form one version. A version is closed when it is older
or has a later one; a closed version is never rewritten. Taking an entry away adds a version without a value.
"""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from typing import TYPE_CHECKING

from sizekeeper.errors import StaleEntryError
from sizekeeper.store.codec import SHAPES, Value, called, decode, encode, kind_of
from sizekeeper.store.trouble import EntryError

if TYPE_CHECKING:
    import sqlite3
    from collections.abc import Collection, Sequence

    Pair = tuple[Value | None, Value | None]
    """An entry before and after an edit: None before makes it, None after takes it away."""

OPEN_FOR = dt.timedelta(minutes=10)
"""How long edits go into a version, counted from its first one."""


@dataclass(frozen=True, slots=True)
class Edit:
    """One edit as the user knows it: its name and the entries it replaces."""

    text: str
    pairs: tuple[Pair, ...]


@dataclass(frozen=True, slots=True)
class Version:
    """One version of an entry: its number from 1, its first and its last edit, and the name of the last one.

    `value` is None where the entry was taken away. `closed` says that it will not change any more.
    """

    number: int
    opened: dt.datetime
    edited: dt.datetime
    text: str
    value: Value | None
    closed: bool


@dataclass(frozen=True, slots=True)
class _Row:
    """The newest version of an entry as it stands in the file."""

    kind: str
    number: int
    shape: int
    opened: dt.datetime
    value: Value | None

    def takes(self, moment: dt.datetime) -> bool:
        """Whether an edit at this moment goes into this version. A clock set back opens a new one."""
        young = dt.timedelta(0) <= moment - self.opened < OPEN_FOR
        return young and self.value is not None and self.shape == SHAPES[self.kind]


def current(
    connection: sqlite3.Connection, *, only: Collection[str] = (), without: Collection[str] = ()
) -> list[Value]:
    """Every entry that is not taken away, in the order in which they were made.

    Args:
        connection: the library file.
        only: the kinds that are wanted; none for all.
        without: the kinds that are not.
    """
    rows = connection.execute(
        "SELECT id, kind, shape, value FROM entry JOIN version ON entry = id"
        " WHERE value IS NOT NULL AND number = (SELECT max(number) FROM version WHERE entry = id) ORDER BY place"
    )
    return [
        decode(kind, shape, value, entry)
        for entry, kind, shape, value in rows
        if (kind in only or not only) and kind not in without
    ]


def taken_away(connection: sqlite3.Connection) -> list[Value]:
    """The last value of every entry that is taken away, the latest to go first."""
    rows = connection.execute(
        "SELECT id, kind, last.shape, last.value, version.edited FROM entry JOIN version ON version.entry = id"
        " JOIN version AS last ON last.entry = id AND last.number = version.number - 1"
        " WHERE version.value IS NULL AND version.number = (SELECT max(number) FROM version WHERE entry = id)"
        " ORDER BY place DESC"
    )
    latest = sorted(rows, key=lambda row: dt.datetime.fromisoformat(row[4]), reverse=True)
    return [decode(kind, shape, value, entry) for entry, kind, shape, value, _ in latest]


def history(connection: sqlite3.Connection, entry: str, moment: dt.datetime) -> list[Version]:
    """The versions of one entry, the newest first; none for an entry that never was."""
    rows = connection.execute(
        "SELECT kind, number, shape, opened, edited, text, value FROM entry JOIN version ON entry = id"
        " WHERE id = ? ORDER BY number DESC",
        (entry,),
    )
    found: list[Version] = []
    for kind, number, shape, opened, edited, text, raw in rows:
        value = None if raw is None else decode(kind, shape, raw, entry)
        row = _Row(kind, number, shape, dt.datetime.fromisoformat(opened), value)
        closed = bool(found) or not row.takes(moment)
        found.append(Version(number, row.opened, dt.datetime.fromisoformat(edited), text, value, closed))
    return found


def replace_all(connection: sqlite3.Connection, edits: Sequence[Edit], moment: dt.datetime) -> None:
    """Carry out edits in order, within the caller's transaction.

    Raises:
        StaleEntryError: what an edit found before it is not what stands in the file.
        EntryError: an edit cannot be carried out on any file.
    """
    for edit in edits:
        text = edit.text.encode(errors="replace").decode()
        for before, after in edit.pairs:
            _replace(connection, text, before, after, moment)


def lay_over(connection: sqlite3.Connection, edit: Edit, moment: dt.datetime) -> None:
    """Carry out an edit whatever stands in the file, for a copy that keeps what could not be saved.

    Raises:
        EntryError: the edit cannot be carried out on any file.
    """
    for before, after in edit.pairs:
        if (value := after or before) is not None:
            row = _newest(connection, value.id)
            replace_all(connection, [Edit(edit.text, ((row.value if row else None, after),))], moment)


def _replace(
    connection: sqlite3.Connection, text: str, before: Value | None, after: Value | None, moment: dt.datetime
) -> None:
    value = after or before
    if value is None:
        return
    row = _newest(connection, value.id)
    _check(value, row, text, before, after)
    time = moment.isoformat()
    if after is not None and row is not None and row.takes(moment):
        connection.execute(
            "UPDATE version SET edited = ?, text = ?, value = ? WHERE entry = ? AND number = ?",
            (time, text, encode(after), value.id, row.number),
        )
        return
    kind = kind_of(value)
    if row is None:
        connection.execute("INSERT INTO entry (id, kind) VALUES (?, ?)", (value.id, kind))
    raw = None if after is None else encode(after)
    connection.execute(
        "INSERT INTO version (entry, number, shape, opened, edited, text, value) VALUES (?, ?, ?, ?, ?, ?, ?)",
        (value.id, row.number + 1 if row else 1, SHAPES[kind], time, time, text, raw),
    )


def _check(value: Value, row: _Row | None, text: str, before: Value | None, after: Value | None) -> None:
    """Refuse an edit of something that is not current, or that turns one entry into another."""
    if before is not None and after is not None and before.id != after.id:
        raise EntryError(f"the edit “{text}” mixes up two entries: {called(before)} and {called(after)}")
    if row is not None and row.kind != kind_of(value):
        raise EntryError(f"{called(value)} cannot be saved: its id belongs to a {row.kind}")
    if before != (row.value if row else None):
        raise StaleEntryError(
            f"{called(value)} was changed by another window or program since it was read; "
            f"the edit “{text}” is not saved, but kept, and can be saved as a copy."
        )


def _newest(connection: sqlite3.Connection, entry: str) -> _Row | None:
    found = connection.execute(
        "SELECT kind, number, shape, opened, value FROM entry JOIN version ON entry = id"
        " WHERE id = ? ORDER BY number DESC LIMIT 1",
        (entry,),
    ).fetchone()
    if found is None:
        return None
    kind, number, shape, opened, raw = found
    value = None if raw is None else decode(kind, shape, raw, entry)
    return _Row(kind, number, shape, dt.datetime.fromisoformat(opened), value)
