from __future__ import annotations

import sqlite3
import subprocess
import sys
from contextlib import closing
from typing import TYPE_CHECKING

import pytest

from sizekeeper.core.person import Person
from sizekeeper.errors import StoreError
from sizekeeper.store.connection import connect, make_safe, transaction
from sizekeeper.store.library import Library
from tests.store.made import LONG, Clock, noted, sql

if TYPE_CHECKING:
    from pathlib import Path

SAVES_WITHOUT_END = """
import datetime as dt, sys
from pathlib import Path
from sizekeeper.core.person import Person
from sizekeeper.store.library import Library
library = Library.open(Path(sys.argv[1]), now=lambda: dt.datetime.now(dt.UTC))
[before] = library.values() or [None]
count = int(before.notes.split()[0]) if before else 0
while True:
    count += 1
    after = Person("p1", "Ilse", notes=f"{count} " + "x" * (count * 997 % 60000))
    library.save("Count", [(before, after)])
    before = after
    print(count, flush=True)
"""


def test_a_program_killed_while_it_writes_leaves_a_sound_file_with_all_that_it_called_saved(
    place: Path, clock: Clock
) -> None:
    for saves in (1, 7, 20, 33):
        with subprocess.Popen(  # noqa: S603 - our own program
            [sys.executable, "-c", SAVES_WITHOUT_END, str(place)], stdout=subprocess.PIPE, text=True
        ) as program:
            assert program.stdout is not None
            for _ in range(saves):
                program.stdout.readline()
            program.kill()
            promised = [int(line) for line in program.stdout.read().split()]
        with Library.open(place, now=clock) as library:
            assert (library.quick_check(), library.read_only) == (None, False)
            [person] = library.values()
        assert isinstance(person, Person)
        assert int(person.notes.split()[0]) >= max(promised, default=saves)


STOPS_HALFWAY = """
import datetime as dt, sys
from pathlib import Path
from sizekeeper.store.library import Library
with Library.open(Path(sys.argv[1]), now=lambda: dt.datetime.now(dt.UTC)) as library, library.lent() as connection:
    connection.execute("PRAGMA cache_size = 1")  # so that the change reaches the file before it is committed
    connection.execute("BEGIN IMMEDIATE")
    connection.execute("UPDATE version SET value = replace(value, 'words', 'WORDS')")
    print("halfway", flush=True)
    sys.stdin.read()
"""


def test_a_change_cut_off_halfway_is_undone_by_the_next_window_that_may_write(place: Path, clock: Clock) -> None:
    with Library.open(place, now=clock) as library:
        library.save("Add", [(None, noted(LONG))])
    before = place.read_bytes()
    with subprocess.Popen(  # noqa: S603 - our own program
        [sys.executable, "-c", STOPS_HALFWAY, str(place)], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
    ) as program:
        assert program.stdout is not None
        program.stdout.readline()
        program.kill()
    assert place.read_bytes() != before
    with pytest.raises(StoreError, match="was left in the middle of a change: open it in a window that may write"):
        Library.open(place, now=clock, read_only=True)
    with Library.open(place, now=clock) as library:
        assert (library.values(), library.quick_check()) == ([noted(LONG)], None)


def test_deleted_text_is_overwritten_whatever_this_sqlite_does_by_itself(place: Path) -> None:
    sql(place, "CREATE TABLE t (x)")
    with closing(connect(place, "rw")) as connection:
        connection.execute("PRAGMA secure_delete = OFF")
        make_safe(connection)
        assert connection.execute("PRAGMA secure_delete").fetchone() == (1,)


def test_a_transaction_that_fails_leaves_nothing_behind(place: Path) -> None:
    sql(place, "CREATE TABLE t (x)")
    connection = connect(place, "rw")
    with pytest.raises(sqlite3.OperationalError, match="no such table"), transaction(connection):
        [connection.execute(insert) for insert in ("INSERT INTO t VALUES (1)", "INSERT INTO u VALUES (1)")]
    connection.close()
    assert sql(place, "SELECT * FROM t") == []


def test_a_transaction_that_the_database_ended_itself_tells_the_first_error(place: Path) -> None:
    sql(place, "CREATE TABLE t (x UNIQUE)", "INSERT INTO t VALUES (1)")
    connection = connect(place, "rw")
    with pytest.raises(Exception, match="UNIQUE"), transaction(connection):
        connection.execute("INSERT OR ROLLBACK INTO t VALUES (1)")
    connection.close()


def test_a_file_that_is_no_database_leaves_no_connection_open(place: Path) -> None:
    place.mkdir()
    with pytest.raises(Exception, match="unable to open"):
        connect(place, "rw")
