from __future__ import annotations

import datetime as dt
from pathlib import Path

import pytest

from sizekeeper.store.shelf import Backup, backups, folder_of, name_for, superfluous

LAST = dt.datetime(2026, 11, 25, 9, 30, tzinfo=dt.UTC)  # a Wednesday


def daily(*days_ago: int) -> list[Backup]:
    return [Backup(Path(str(ago)), LAST - dt.timedelta(days=ago), 1) for ago in days_ago]


def kept(found: list[Backup]) -> list[str]:
    gone = superfluous(found)
    return [backup.path.name for backup in found if backup not in gone]


def test_of_two_months_a_week_of_days_and_four_sundays_are_kept() -> None:
    sundays = ["10", "17", "24", "31"]  # 15, 8, 1 November, 25 October; 22 November is among the seven days
    assert kept(daily(*range(60))) == [*"0123456", *sundays]


def test_days_without_a_backup_do_not_count_against_the_seven() -> None:
    assert kept(daily(0, 100, 200, 300, 400, 500, 600)) == ["0", "100", "200", "300", "400", "500", "600"]


def test_the_last_backup_of_a_day_is_the_one_kept() -> None:
    morning, noon = Backup(Path("morning"), LAST, 1), Backup(Path("noon"), LAST + dt.timedelta(hours=3), 1)
    assert superfluous([morning, noon]) == [morning]


def test_a_backup_from_before_a_migration_is_always_kept() -> None:
    before = Backup(Path("before"), LAST - dt.timedelta(days=3000), 1, before_format=2)
    assert before not in superfluous([before, *daily(*range(60))])


@pytest.mark.parametrize("before_format", [0, 2])
def test_a_name_tells_when_and_before_what_a_backup_was_made(tmp_path: Path, before_format: int) -> None:
    library = tmp_path / "home.sizekeeper"
    folder_of(library).mkdir()
    when = dt.datetime(2026, 11, 25, 9, 30, tzinfo=dt.timezone(dt.timedelta(hours=-3, minutes=-30)))
    path = folder_of(library) / name_for(when, before_format)
    path.write_bytes(b"12345")
    assert backups(library) == [Backup(path, when, 5, before_format)]


@pytest.mark.parametrize(
    "name", ["letter.txt", "2026-13-25T093000+0000.sizekeeper", "2026-11-25.sizekeeper", ".unfinished-1"]
)
def test_other_files_in_the_folder_are_no_backups(tmp_path: Path, name: str) -> None:
    library = tmp_path / "home.sizekeeper"
    folder_of(library).mkdir()
    (folder_of(library) / name).touch()
    assert backups(library) == []


def test_a_library_without_a_folder_of_backups_has_none(tmp_path: Path) -> None:
    assert backups(tmp_path / "home.sizekeeper") == []
