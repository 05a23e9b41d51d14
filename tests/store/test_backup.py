from __future__ import annotations

import sqlite3
from typing import TYPE_CHECKING

import pytest

from sizekeeper.errors import StoreError
from sizekeeper.store.backup import backups, restore, save_copy
from sizekeeper.store.library import Library
from sizekeeper.store.shelf import folder_of
from sizekeeper.store.trouble import DamagedError
from tests.store.made import BERTA, ILSE, LONG, Clock, noted, spoil, sql

if TYPE_CHECKING:
    from pathlib import Path


def notes_in(path: Path, clock: Clock) -> list[str]:
    with Library.open(path, now=clock, read_only=True) as library:
        return [value.notes for value in library.values() if isinstance(value, type(ILSE))]


def test_the_first_change_of_a_day_is_preceded_by_a_backup(library: Library, clock: Clock) -> None:
    library.save("Add", [(None, noted("yesterday"))])
    assert backups(library.path) == []
    clock.move(days=1)
    library.save("Change", [(noted("yesterday"), noted("today"))])
    library.save("Change", [(noted("today"), noted("later today"))])
    [backup] = backups(library.path)
    assert (backup.when, backup.size) == (clock.now, backup.path.stat().st_size)
    assert notes_in(backup.path, clock) == ["yesterday"]


def test_a_day_that_has_its_backup_gets_no_second_one_after_reopening(place: Path, clock: Clock) -> None:
    with Library.open(place, now=clock) as library:
        library.save("Add", [(None, ILSE)])
    clock.move(days=1)
    for notes in ("a", "b"):
        with Library.open(place, now=clock) as library:
            library.save("Change", [(library.values()[0], noted(notes))])
        clock.move(hours=1)
    assert len(backups(place)) == 1


def test_six_weeks_of_daily_use_leave_seven_days_and_four_sundays(library: Library, clock: Clock) -> None:
    clock.move(days=-45)
    library.save("Add", [(None, noted("0"))])
    for day in range(45):
        clock.move(days=1)
        library.save("Change", [(noted(str(day)), noted(str(day + 1)))])
    days = [f"{backup.when:%m-%d}" for backup in backups(library.path)]
    week = ["11-25", "11-24", "11-23", "11-22", "11-21", "11-20", "11-19"]
    assert days == [*week, "11-15", "11-08", "11-01", "10-25"]


def test_a_damaged_library_leaves_the_good_backups_alone_and_takes_no_edit(place: Path, clock: Clock) -> None:
    with Library.open(place, now=clock) as library:
        library.save("Add", [(None, noted(LONG)), (None, BERTA)])
        clock.move(days=1)
        library.save("Change", [(BERTA, noted("a", BERTA))])
    before = {backup.path: backup.path.read_bytes() for backup in backups(place)}
    spoil(place)
    clock.move(days=1)
    with Library.open(place, now=clock) as library:
        with pytest.raises(DamagedError, match="is damaged; its newest backup is of 2026-11-26 09:30"):
            library.save("Change", [(noted("a", BERTA), noted("b", BERTA))])
        with pytest.raises(DamagedError, match="is damaged"):
            save_copy(library, place.with_name("copy"))
    assert {path: path.read_bytes() for path in folder_of(place).iterdir()} == before
    assert not place.with_name("copy").exists()


def test_a_backup_that_cannot_be_made_is_said_but_keeps_nothing_from_being_saved(
    library: Library, clock: Clock
) -> None:
    library.save("Add", [(None, ILSE)])
    folder_of(library.path).write_text("in the way")
    clock.move(days=1)
    library.save("Change", [(ILSE, noted("a"))])
    assert library.backup_trouble.startswith("There is no backup of today: “")
    assert library.values() == [noted("a")]
    folder_of(library.path).unlink()
    library.save("Change", [(noted("a"), noted("b"))])
    assert (library.backup_trouble, len(backups(library.path))) == ("", 1)


def test_what_an_interrupted_backup_left_is_swept_up(library: Library, clock: Clock) -> None:
    library.save("Add", [(None, ILSE)])
    folder_of(library.path).mkdir()
    (folder_of(library.path) / ".unfinished-1").touch()
    (folder_of(library.path) / "letter.txt").touch()
    clock.move(days=1)
    library.save("Change", [(ILSE, noted("a"))])
    names = sorted(path.name for path in folder_of(library.path).iterdir())
    assert names == ["2026-11-26T093000+0000.sizekeeper", "letter.txt"]


@pytest.fixture
def shelved(library: Library, clock: Clock) -> Library:
    """A library with one backup, in which Ilse has no notes yet."""
    library.save("Add", [(None, ILSE)])
    clock.move(days=1)
    library.save("Change", [(ILSE, noted("changed"))])
    return library


def test_a_backup_is_restored_into_a_new_file_and_the_library_stays(
    shelved: Library, tmp_path: Path, clock: Clock
) -> None:
    restore(backups(shelved.path)[0], tmp_path / "new" / "restored.sizekeeper")
    assert notes_in(tmp_path / "new" / "restored.sizekeeper", clock) == [""]
    assert shelved.values() == [noted("changed")]
    assert [path.name for path in (tmp_path / "new").iterdir()] == ["restored.sizekeeper"]


def test_nothing_is_ever_restored_or_copied_over_a_file(shelved: Library, tmp_path: Path) -> None:
    (tmp_path / "letter").write_text("Dear Berta")
    [backup] = backups(shelved.path)
    for name in ("letter", "home.sizekeeper"):
        with pytest.raises(StoreError, match=f"{name}” exists already and was left as it is"):
            restore(backup, tmp_path / name)
        with pytest.raises(StoreError, match=f"{name}” exists already and was left as it is"):
            save_copy(shelved, tmp_path / name)
    assert (tmp_path / "letter").read_text() == "Dear Berta"
    assert shelved.values() == [noted("changed")]


def test_a_damaged_backup_is_not_restored(shelved: Library, tmp_path: Path) -> None:
    [backup] = backups(shelved.path)
    backup.path.write_bytes(backup.path.read_bytes()[:-4096])
    with pytest.raises(DamagedError, match="sizekeeper” is damaged"):
        restore(backup, tmp_path / "restored")
    assert not (tmp_path / "restored").exists()


def test_a_file_that_only_has_the_name_of_a_backup_is_not_restored(shelved: Library, tmp_path: Path) -> None:
    [backup] = backups(shelved.path)
    backup.path.unlink()
    sql(backup.path, "CREATE TABLE t (x)")
    with pytest.raises(StoreError, match="is not a Sizekeeper library"):
        restore(backup, tmp_path / "restored")
    assert not (tmp_path / "restored").exists()


def test_a_library_cut_short_under_an_open_window_is_not_copied(shelved: Library, tmp_path: Path) -> None:
    shelved.path.write_bytes(shelved.path.read_bytes()[:-4096])
    with pytest.raises(DamagedError, match="its newest backup is of 2026-11-26"):
        save_copy(shelved, tmp_path / "copy")
    assert not (tmp_path / "copy").exists()


def test_a_disk_too_full_for_a_backup_still_takes_the_edit(
    library: Library, clock: Clock, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(*_: object) -> None:
        error = sqlite3.OperationalError("database or disk is full")
        error.sqlite_errorcode = sqlite3.SQLITE_FULL
        raise error

    library.save("Add", [(None, ILSE)])
    clock.move(days=1)
    monkeypatch.setattr("sizekeeper.store.backup._copy_pages", full)
    library.save("Change", [(ILSE, noted("a"))])
    assert library.backup_trouble.endswith("home.sizekeeper.backups” cannot be written: the disk is full.")
    assert (library.values(), list(folder_of(library.path).iterdir())) == ([noted("a")], [])


def test_a_copy_holds_everything_with_its_history(shelved: Library, tmp_path: Path, clock: Clock) -> None:
    save_copy(shelved, tmp_path / "copy")
    with Library.open(tmp_path / "copy", now=clock) as copy:
        assert (copy.values(), copy.history("p1")) == (shelved.values(), shelved.history("p1"))


def test_a_copy_to_a_place_that_cannot_be_written_is_refused_in_words(shelved: Library, tmp_path: Path) -> None:
    (tmp_path / "letter").write_text("Dear Berta")
    with pytest.raises(StoreError, match="copy” cannot be used: Not a directory"):
        save_copy(shelved, tmp_path / "letter" / "copy")
