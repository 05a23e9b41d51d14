from __future__ import annotations

import sqlite3
from typing import TYPE_CHECKING

import pytest

from sizekeeper.errors import StoreError
from sizekeeper.store import schema
from sizekeeper.store.backup import backups, restore
from sizekeeper.store.library import Library
from sizekeeper.store.schema import Migration
from tests.store.made import BERTA, ILSE, Clock, sql

if TYPE_CHECKING:
    from pathlib import Path


def colour(connection: sqlite3.Connection) -> None:
    connection.execute("ALTER TABLE entry ADD COLUMN colour TEXT NOT NULL DEFAULT ''")


def drawer(connection: sqlite3.Connection) -> None:
    connection.execute("CREATE TABLE drawer (name TEXT) STRICT")


def breaks_down(connection: sqlite3.Connection) -> None:
    drawer(connection)
    raise sqlite3.IntegrityError("broken")


@pytest.fixture
def old(place: Path, clock: Clock) -> Path:
    """A library of format 1 with Ilse in it."""
    with Library.open(place, now=clock) as library:
        library.save("Add", [(None, ILSE)])
    return place


def add_steps(monkeypatch: pytest.MonkeyPatch, *steps: Migration) -> None:
    monkeypatch.setattr(schema, "MIGRATIONS", (*schema.MIGRATIONS, *steps))


TWO_STEPS = (Migration(2, "a colour", colour), Migration(3, "a drawer", drawer))


def test_a_file_says_whose_and_of_which_format_it_is(old: Path) -> None:
    marks = [sql(old, f"PRAGMA {name}")[0][0] for name in ("application_id", "user_version")]
    assert marks == [0x537A4B70, 1]  # "SzKp" in ASCII
    assert sql(old, "SELECT number, name, ran FROM migration") == [(1, "the first tables", "2026-11-25T09:30:00+00:00")]


def test_the_steps_that_a_file_lacks_run_once_and_are_recorded(
    old: Path, clock: Clock, monkeypatch: pytest.MonkeyPatch
) -> None:
    add_steps(monkeypatch, *TWO_STEPS)
    for _ in range(2):
        with Library.open(old, now=clock) as library:
            assert library.values() == [ILSE]
    assert sql(old, "SELECT number, name FROM migration WHERE number > 1") == [(2, "a colour"), (3, "a drawer")]
    assert sql(old, "PRAGMA user_version") == [(3,)]


def test_there_is_a_backup_from_before_each_step(old: Path, clock: Clock, monkeypatch: pytest.MonkeyPatch) -> None:
    add_steps(monkeypatch, *TWO_STEPS)
    with Library.open(old, now=clock):
        pass
    assert [b.before_format for b in backups(old)] == [3, 2]
    assert [sql(b.path, "PRAGMA user_version")[0][0] for b in backups(old)] == [2, 1]


def test_a_new_library_needs_no_backup_to_get_its_tables(
    place: Path, clock: Clock, monkeypatch: pytest.MonkeyPatch
) -> None:
    add_steps(monkeypatch, *TWO_STEPS)
    with Library.open(place, now=clock):
        assert backups(place) == []


def test_a_step_that_breaks_down_leaves_the_file_as_it_was(
    old: Path, clock: Clock, monkeypatch: pytest.MonkeyPatch
) -> None:
    with monkeypatch.context() as patch:
        add_steps(patch, Migration(2, "broken", breaks_down))
        with pytest.raises(sqlite3.IntegrityError, match="broken"):
            Library.open(old, now=clock)
    assert sql(old, "SELECT name FROM sqlite_schema WHERE name = 'drawer'") == []
    assert sql(old, "SELECT count(*) FROM migration") == [(1,)]
    with Library.open(old, now=clock) as library:
        assert (library.values(), library.read_only) == ([ILSE], False)


def test_without_a_backup_no_step_is_taken(old: Path, clock: Clock, monkeypatch: pytest.MonkeyPatch) -> None:
    old.with_name("home.sizekeeper.backups").write_text("in the way")
    add_steps(monkeypatch, *TWO_STEPS)
    with pytest.raises(StoreError, match="backups” cannot be used"):
        Library.open(old, now=clock)
    assert sql(old, "PRAGMA user_version") == [(1,)]


def test_an_older_format_that_may_not_be_written_is_refused_in_words(
    old: Path, clock: Clock, monkeypatch: pytest.MonkeyPatch
) -> None:
    add_steps(monkeypatch, *TWO_STEPS)
    with pytest.raises(StoreError, match="is of an older format and cannot be brought up to date: it was opened"):
        Library.open(old, now=clock, read_only=True)


def test_a_backup_of_an_older_format_restores_to_a_library_that_opens(
    old: Path, clock: Clock, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    add_steps(monkeypatch, *TWO_STEPS)
    with Library.open(old, now=clock):
        pass
    restore(backups(old)[-1], tmp_path / "restored")
    with Library.open(tmp_path / "restored", now=clock) as restored:
        assert restored.values() == [ILSE]


def test_a_person_is_erased_from_backups_of_an_older_format_too(
    old: Path, clock: Clock, monkeypatch: pytest.MonkeyPatch
) -> None:
    add_steps(monkeypatch, *TWO_STEPS)
    with Library.open(old, now=clock) as library:
        library.save("Add", [(None, BERTA)])
        library.erase("p1", backups=True)
    assert [path for path in old.parent.rglob("*") if path.is_file() and b"Ilse" in path.read_bytes()] == []


def test_the_steps_are_numbered_in_order() -> None:
    assert [step.number for step in schema.MIGRATIONS] == list(range(1, len(schema.MIGRATIONS) + 1))
