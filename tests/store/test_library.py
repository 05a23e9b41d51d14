from __future__ import annotations

import datetime as dt
import os
import sqlite3
import stat
import threading
from contextlib import closing
from typing import TYPE_CHECKING

import pytest

from sizekeeper.core.chart import Chart
from sizekeeper.core.person import Person
from sizekeeper.errors import StaleEntryError, StoreError
from sizekeeper.store import schema
from sizekeeper.store.backup import save_copy
from sizekeeper.store.library import Library
from sizekeeper.store.trouble import EntryError
from tests.store.made import BERTA, DRESS, ILSE, LONG, Clock, fill_disk, make_room, noted

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from sizekeeper.store.codec import Value


def test_a_new_library_is_empty_and_can_be_written(library: Library) -> None:
    assert (library.values(), library.read_only, library.generation) == ([], False, 0)


def test_what_was_saved_is_found_after_reopening(place: Path, clock: Clock) -> None:
    chart = Chart("c1", "d1", "body")
    with Library.open(place, now=clock) as library:
        library.save("Add", [(None, ILSE), (None, DRESS), (None, chart)])
    with Library.open(place, now=clock) as library:
        assert library.values() == [ILSE, DRESS, chart]


def test_entries_keep_the_order_in_which_they_were_made(library: Library) -> None:
    library.save("Add", [(None, BERTA), (None, ILSE)])
    library.save("Change", [(BERTA, noted("x", BERTA))])
    assert [value.id for value in library.values()] == ["p2", "p1"]


def test_a_missing_folder_is_made_for_the_library(tmp_path: Path, clock: Clock) -> None:
    with Library.open(tmp_path / "a" / "b" / "home.sizekeeper", now=clock) as library:
        assert library.path.parent == tmp_path / "a" / "b"


@pytest.mark.parametrize("name", ["Größen?mode=ro#1.sizekeeper", "100 %41.sizekeeper", "a'b;c.sizekeeper"])
def test_any_file_name_will_do(tmp_path: Path, clock: Clock, name: str) -> None:
    with Library.open(tmp_path / name, now=clock) as library:
        library.save("Add", [(None, ILSE)])
    assert (tmp_path / name).is_file()


@pytest.mark.skipif(os.name == "nt", reason="Windows has no such modes")
def test_only_the_owner_can_read_the_library_its_lock_and_its_backups(place: Path, clock: Clock) -> None:
    with Library.open(place, now=clock) as library:
        library.save("Add", [(None, ILSE)])
        clock.move(days=1)
        library.save("Add", [(None, BERTA)])
    modes = {path.name: stat.S_IMODE(path.stat().st_mode) for path in place.parent.rglob("*")}
    assert modes == {
        "home.sizekeeper": 0o600,
        "home.sizekeeper.lock": 0o600,
        "home.sizekeeper.backups": 0o700,
        "2026-11-26T093000+0000.sizekeeper": 0o600,
    }


def test_one_file_is_left_at_rest_and_every_commit_goes_to_the_disk(library: Library) -> None:
    pragmas = ("journal_mode", "synchronous", "foreign_keys", "secure_delete")
    found = [library._connection.execute(f"PRAGMA {name}").fetchone()[0] for name in pragmas]
    assert found == ["delete", 2, 1, 1]  # 2 is FULL: https://www.sqlite.org/pragma.html#pragma_synchronous


def test_an_edit_of_something_that_is_not_current_is_refused(library: Library) -> None:
    library.save("Add", [(None, ILSE)])
    library.save("Change", [(ILSE, noted("new"))])
    with pytest.raises(StaleEntryError, match=r"“Ilse” was changed .* “Change again”"):
        library.save("Change again", [(ILSE, noted("other"))])
    assert library.values() == [noted("new")]


def test_making_an_entry_that_is_there_is_refused(library: Library) -> None:
    library.save("Add", [(None, ILSE)])
    with pytest.raises(StaleEntryError):
        library.save("Add", [(None, noted("again"))])


def test_taking_away_an_entry_that_never_was_is_refused(library: Library) -> None:
    with pytest.raises(StaleEntryError):
        library.save("Delete", [(ILSE, None)])


def test_all_pairs_of_an_edit_are_saved_or_none(library: Library) -> None:
    with pytest.raises(StaleEntryError):
        library.save("Add", [(None, ILSE), (BERTA, None)])
    assert library.values() == []


def test_a_pair_of_nothing_changes_nothing(library: Library) -> None:
    library.save("Nothing", [(None, None)])
    assert library.values() == []


def test_an_edit_cannot_turn_one_entry_into_another(library: Library) -> None:
    library.save("Add", [(None, ILSE)])
    with pytest.raises(EntryError, match="“Mix” mixes up two entries: “Ilse” and “Berta”"):
        library.save("Mix", [(ILSE, BERTA)])


def test_an_edit_cannot_turn_a_person_into_a_pattern(library: Library) -> None:
    library.save("Add", [(None, ILSE)])
    with pytest.raises(EntryError, match="“Summer dress” cannot be saved: its id belongs to a person"):
        library.save("Mix", [(None, type(DRESS)("p1", "Summer dress"))])


def test_every_save_raises_the_generation(library: Library) -> None:
    library.save("Add", [(None, ILSE)])
    library.save("Change", [(ILSE, noted("new"))])
    assert library.generation == 2


def test_a_full_disk_is_said_and_nothing_is_lost(library: Library) -> None:
    library.save("Add", [(None, ILSE)])
    fill_disk(library)
    with pytest.raises(StoreError, match="sizekeeper” cannot be written: the disk is full"):
        library.save("Change", [(ILSE, noted(LONG))])
    assert library.values() == [ILSE]
    make_room(library)
    library.save("Change", [(ILSE, noted(LONG))])
    assert library.values() == [noted(LONG)]


def test_a_file_held_by_another_program_is_said(library: Library, place: Path) -> None:
    library._connection.execute("PRAGMA busy_timeout = 0")
    with closing(sqlite3.connect(place)) as other:
        other.execute("BEGIN EXCLUSIVE")
        with pytest.raises(StoreError, match="another program holds it"):
            library.save("Add", [(None, ILSE)])
        other.rollback()
    library.save("Add", [(None, ILSE)])
    assert library.values() == [ILSE]


def test_a_file_that_turned_write_protected_is_said(library: Library) -> None:
    library.save("Add", [(None, BERTA)])
    library._connection.execute("PRAGMA query_only = ON")
    with pytest.raises(StoreError, match="the file is write-protected"):
        library.save("Add", [(None, ILSE)])


def test_a_write_protected_file_is_opened_to_be_looked_at(
    place: Path, clock: Clock, monkeypatch: pytest.MonkeyPatch
) -> None:
    with Library.open(place, now=clock) as library:
        library.save("Add", [(None, ILSE)])
    monkeypatch.setattr(os, "access", lambda *_: False)
    with Library.open(place, now=clock) as library:
        assert (library.read_only, library.read_only_reason) == (True, "the file is write-protected")
        assert library.values() == [ILSE]


def read_again(place: Path, clock: Clock) -> list[Value]:
    with Library.open(place, now=clock) as library:
        return library.values()


def test_a_library_opened_to_be_looked_at_shows_everything_and_takes_nothing(place: Path, clock: Clock) -> None:
    with Library.open(place, now=clock) as library:
        library.save("Add", [(None, ILSE)])
    with Library.open(place, now=clock, read_only=True) as looked_at:
        assert (looked_at.values(), looked_at.read_only) == ([ILSE], True)
        with pytest.raises(StoreError, match="can only be looked at: it was opened to be looked at only"):
            looked_at.save("Delete", [(ILSE, None)])
        with pytest.raises(StoreError, match="can only be looked at"):
            looked_at.erase("p1", backups=True)
    assert read_again(place, clock) == [ILSE]


def test_looking_at_a_file_that_is_not_there_makes_none(place: Path, clock: Clock) -> None:
    with pytest.raises(StoreError, match="does not exist"):
        Library.open(place, now=clock, read_only=True)
    assert list(place.parent.iterdir()) == []


def test_a_second_window_sees_what_the_first_saved(library: Library, place: Path, clock: Clock) -> None:
    with Library.open(place, now=clock) as second:
        library.save("Add", [(None, ILSE)])
        assert second.changed_outside()
        assert second.values() == [ILSE]
        assert not second.changed_outside()


def test_own_saves_are_no_change_from_outside(library: Library) -> None:
    library.save("Add", [(None, ILSE)])
    assert not library.changed_outside()


def copied(library: Library, name: str, clock: Clock) -> Library:
    save_copy(library, library.path.with_name(name))
    return Library.open(library.path.with_name(name), now=clock)


def by_rename(source: Path, target: Path) -> None:
    source.replace(target)


def by_writing_over(source: Path, target: Path) -> None:
    target.write_bytes(source.read_bytes())


@pytest.mark.parametrize("put", [by_rename, by_writing_over])
@pytest.mark.parametrize("own_save", [False, True])
def test_a_synced_file_is_noticed_even_when_it_was_saved_as_often(
    library: Library, clock: Clock, put: Callable[[Path, Path], None], own_save: bool
) -> None:
    library.save("Add", [(None, ILSE), (None, BERTA)])
    with copied(library, "elsewhere", clock) as elsewhere:
        elsewhere.save("Change", [(ILSE, noted("elsewhere"))])
    if own_save:
        library.save("Change", [(BERTA, noted("mine", BERTA))])
    put(elsewhere.path, library.path)
    assert library.changed_outside()
    with pytest.raises(StaleEntryError):
        library.save("Change", [(ILSE, noted("here"))])
    library.save("Change", [(BERTA, noted("here", BERTA))])
    assert library.changed_outside()
    assert library.values() == [noted("elsewhere"), noted("here", BERTA)]
    assert not library.changed_outside()


def test_a_file_that_was_deleted_while_open_takes_no_edit_but_can_be_copied(library: Library, clock: Clock) -> None:
    library.save("Add", [(None, ILSE)])
    library.path.unlink()
    for use in (library.values, library.changed_outside, lambda: library.save("X", [(ILSE, None)])):
        with pytest.raises(StoreError, match="was moved or deleted while it was open"):
            use()
    with copied(library, "rescued", clock) as rescued:
        assert rescued.values() == [ILSE]


@pytest.mark.parametrize("moment", ["read_mark", "raise_mark"])
def test_a_file_replaced_in_the_middle_of_a_save_leaves_the_edit_to_be_tried_again(
    library: Library, clock: Clock, monkeypatch: pytest.MonkeyPatch, moment: str
) -> None:
    library.save("Add", [(None, ILSE)])
    with copied(library, "elsewhere", clock) as elsewhere:
        pass

    original: Callable[[sqlite3.Connection], schema.Mark] = getattr(schema, moment)

    def replacing(connection: sqlite3.Connection) -> schema.Mark:
        elsewhere.path.replace(library.path)
        return original(connection)

    with monkeypatch.context() as patch:
        patch.setattr(schema, moment, replacing)
        with pytest.raises(StoreError, match="replaced by another program while"):
            library.save("Change", [(ILSE, noted("new"))])
    library.save("Change", [(ILSE, noted("new"))])
    assert library.values() == [noted("new")]


def test_reading_and_writing_from_two_threads_never_meet(library: Library) -> None:
    library.save("Add", [(None, noted("0"))])

    def write() -> None:
        for count in range(40):
            library.save("Count", [(noted(str(count)), noted(str(count + 1)))])

    thread = threading.Thread(target=write)
    thread.start()
    seen = [int(value.notes) for _ in range(40) for value in library.values() if isinstance(value, Person)]
    thread.join()
    assert seen == sorted(seen)
    assert library.values() == [noted("40")]


def test_a_clock_without_a_zone_is_taken_for_local_time(place: Path) -> None:
    with Library.open(place, now=lambda: dt.datetime(2026, 11, 25, 9, 30)) as library:  # noqa: DTZ001 - the point
        library.save("Add", [(None, ILSE)])
        assert library.history("p1")[0].opened == dt.datetime(2026, 11, 25, 9, 30).astimezone()


def test_a_link_leads_to_the_one_library_and_its_one_lock(library: Library, clock: Clock, tmp_path: Path) -> None:
    (tmp_path / "link").symlink_to(library.path)
    with Library.open(tmp_path / "link", now=clock) as second:
        assert (second.path, second.read_only) == (library.path, True)


def test_closing_twice_does_no_harm_and_lets_the_next_window_write(place: Path, clock: Clock) -> None:
    library = Library.open(place, now=clock)
    library.close()
    library.close()
    with Library.open(place, now=clock) as second:
        assert not second.read_only
