from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from sizekeeper.errors import StoreError
from sizekeeper.store.library import Library
from sizekeeper.store.trouble import DamagedError
from tests.store.made import BERTA, ILSE, LONG, Clock, noted, spoil, sql

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path


def not_ours(place: Path) -> None:
    sql(place, "CREATE TABLE t (x)")


def some_text(place: Path) -> None:
    place.write_text("Dear diary,\n" * 100)


def cut_short(place: Path) -> None:
    place.write_bytes(place.read_bytes()[:-5000])


def without_tables(place: Path) -> None:
    sql(place, "DROP TABLE version", "DROP TABLE entry")


def without_state(place: Path) -> None:
    sql(place, "DELETE FROM library")


def without_format(place: Path) -> None:
    sql(place, "PRAGMA user_version = 0")


def of_a_newer_format(place: Path) -> None:
    sql(place, "PRAGMA user_version = 99")


def with_a_newer_shape(place: Path) -> None:
    sql(place, "UPDATE version SET shape = 99")


def with_a_newer_kind(place: Path) -> None:
    sql(place, "UPDATE entry SET kind = 'shoe'")


@pytest.mark.parametrize(
    ("spoilt", "sentence"),
    [
        (some_text, "is damaged; there is no backup of it"),
        (cut_short, "is damaged; there is no backup of it"),
        (without_tables, "is damaged; there is no backup of it"),
        (without_state, "is damaged; there is no backup of it"),
        (without_format, "is damaged; there is no backup of it"),
        (of_a_newer_format, "was written by a newer Sizekeeper"),
        (with_a_newer_shape, "was written by a newer Sizekeeper"),
        (with_a_newer_kind, "was written by a newer Sizekeeper"),
    ],
)
def test_a_file_that_cannot_be_used_is_refused_in_words_and_left_as_it_is(
    place: Path, clock: Clock, spoilt: Callable[[Path], None], sentence: str
) -> None:
    with Library.open(place, now=clock) as library:
        library.save("Add", [(None, ILSE)])
    spoilt(place)
    before = place.read_bytes()
    for read_only in (True, False):
        with pytest.raises(StoreError, match=f"home.sizekeeper” {sentence}"):
            Library.open(place, now=clock, read_only=read_only)
    assert place.read_bytes() == before


def test_a_file_of_another_program_is_left_alone_and_nothing_is_laid_beside_it(place: Path, clock: Clock) -> None:
    not_ours(place)
    with pytest.raises(StoreError, match="is not a Sizekeeper library"):
        Library.open(place, now=clock)
    assert [path.name for path in place.parent.iterdir()] == ["home.sizekeeper"]


def test_a_folder_is_not_a_library(place: Path, clock: Clock) -> None:
    place.mkdir()
    with pytest.raises(StoreError, match="cannot be opened"):
        Library.open(place, now=clock)


def test_a_place_below_a_file_is_no_place(place: Path, clock: Clock) -> None:
    place.write_text("x")
    with pytest.raises(StoreError, match="cannot be used: Not a directory"):
        Library.open(place / "home.sizekeeper", now=clock)


def test_the_newest_backup_is_named_when_the_library_is_damaged(place: Path, clock: Clock) -> None:
    with Library.open(place, now=clock) as library:
        library.save("Add", [(None, ILSE)])
        clock.move(days=1)
        library.save("Add", [(None, BERTA)])
    cut_short(place)
    with pytest.raises(DamagedError, match="its newest backup is of 2026-11-26 09:30: restore that"):
        Library.open(place, now=clock)


def test_an_empty_file_with_backups_beside_it_is_a_loss_and_not_a_new_library(place: Path, clock: Clock) -> None:
    with Library.open(place, now=clock) as library:
        library.save("Add", [(None, ILSE)])
        clock.move(days=1)
        library.save("Add", [(None, BERTA)])
    place.write_bytes(b"")
    with pytest.raises(DamagedError, match="is empty; its newest backup"):
        Library.open(place, now=clock)


def test_an_empty_file_without_backups_becomes_a_library(place: Path, clock: Clock) -> None:
    place.touch()
    with Library.open(place, now=clock) as library:
        assert library.values() == []


def test_an_entry_that_cannot_be_read_is_named_with_the_file(place: Path, clock: Clock) -> None:
    with Library.open(place, now=clock) as library:
        library.save("Add", [(None, ILSE)])
        sql(place, """UPDATE version SET value = '{"id": "p1", "name": "Ilse", "unit": 3}'""")
        with pytest.raises(DamagedError, match="sizekeeper” cannot be read: the person “Ilse” is damaged"):
            library.values()


def test_a_sound_library_passes_the_quick_check(library: Library) -> None:
    library.save("Add", [(None, noted(LONG))])
    assert library.quick_check() is None


def test_the_quick_check_finds_a_damaged_page(place: Path, clock: Clock) -> None:
    with Library.open(place, now=clock) as library:
        library.save("Add", [(None, noted(LONG))])
    spoil(place)
    with Library.open(place, now=clock) as library:
        assert library.quick_check() == f"“{place}” is damaged; there is no backup of it."


def test_the_quick_check_says_when_the_file_cannot_be_read(library: Library, place: Path) -> None:
    place.unlink()
    assert library.quick_check() == f"“{place}” cannot be opened: the file or its folder is missing or protected."


def test_a_failed_opening_keeps_no_lock(place: Path, clock: Clock) -> None:
    with Library.open(place, now=clock):
        pass
    good = place.read_bytes()
    without_state(place)
    with pytest.raises(DamagedError):
        Library.open(place, now=clock)
    place.write_bytes(good)
    with Library.open(place, now=clock) as library:
        assert not library.read_only
