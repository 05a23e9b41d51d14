"""The folder of backups beside a library: what lies in it, how it is named, and which ones are kept."""

from __future__ import annotations

import datetime as dt
import re
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable

SUFFIX = ".sizekeeper"
"""The ending of a library file, and of its backups."""

DAILY = 7
"""Of so many days the last backup is kept."""

WEEKLY = 4
"""Of so many weeks before these days the last backup is kept."""

_NAME = re.compile(r"(\d{4}-\d\d-\d\dT\d{6}[+-]\d{4})(?: before format (\d+))?" + re.escape(SUFFIX))


@dataclass(frozen=True, slots=True)
class Backup:
    """One backup: where it is, when it was made (in the time of that place), and its size in bytes.

    `before_format` is the format number of the migration it was made before, 0 for a day's backup.
    """

    path: Path
    when: dt.datetime
    size: int
    before_format: int = 0


def folder_of(library: Path) -> Path:
    """The folder in which a library's backups lie."""
    return library.with_name(library.name + ".backups")


def name_for(when: dt.datetime, before_format: int = 0) -> str:
    """The file name of a backup made now."""
    reason = f" before format {before_format}" if before_format else ""
    return f"{when:%Y-%m-%dT%H%M%S%z}{reason}{SUFFIX}"


def backups(library: Path) -> list[Backup]:
    """The backups of a library, the newest first. Files that the program did not name are left out."""
    folder = folder_of(library)
    if not folder.is_dir():
        return []
    found = [backup for path in folder.iterdir() if (backup := _read(path)) is not None]
    return sorted(found, key=lambda b: (b.when, b.before_format), reverse=True)


def _read(path: Path) -> Backup | None:
    match = _NAME.fullmatch(path.name)
    if match is None:
        return None
    try:
        when = dt.datetime.strptime(match[1], "%Y-%m-%dT%H%M%S%z")
        return Backup(path, when, path.stat().st_size, int(match[2] or 0))
    except (ValueError, OSError):
        return None


def superfluous(found: Iterable[Backup]) -> list[Backup]:
    """The backups that need not be kept.

    Kept are: the last of each of the seven newest days that have one, the last of each of the four newest weeks before
    those days, and every backup made before a migration.
    """
    daily = sorted((b for b in found if not b.before_format), key=lambda b: b.when, reverse=True)
    days: dict[dt.date, Backup] = {}
    weeks: dict[tuple[int, int], Backup] = {}
    for backup in daily:
        year, week, _ = backup.when.isocalendar()
        days.setdefault(backup.when.date(), backup)
        weeks.setdefault((year, week), backup)
    kept = list(days.values())[:DAILY]
    kept += [backup for backup in weeks.values() if backup not in kept][:WEEKLY]
    return [backup for backup in daily if backup not in kept]
