"""Writes many sheets, one file each: what each is called, what is there already, and the work itself."""

from __future__ import annotations

import datetime as dt
import os
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING, Literal

from sizekeeper import assets
from sizekeeper.core.notation import Notation
from sizekeeper.core.plan import PER_CHANGE_CM
from sizekeeper.errors import ReportError, SizekeeperError
from sizekeeper.reports.export import Format, written
from sizekeeper.reports.file_names import free_name, same_name
from sizekeeper.reports.filing import write_file
from sizekeeper.reports.household_export import Gathering, household_written
from sizekeeper.reports.sheet import Paper
from sizekeeper.reports.snapshot import Pairing, Snapshot

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sizekeeper.reports.sheet import Sheet
    from sizekeeper.ui.import_reading import Reading
    from sizekeeper.ui.sheet_questions import Existing

UNITS: tuple[Literal["cm", "in"], ...] = ("cm", "in")

_GIVE_UP = 3
"""After so many files in a row that could not be written the rest is not tried: the disk is full, or gone (coined)."""


@dataclass(frozen=True)
class Batch:
    """What is to be made and how.

    `hers` tells by the unit she is measured in how her lengths are written, `printed` by its own unit how a pattern's.
    """

    snapshot: Snapshot
    folder: Path
    form: Format
    paper: Paper
    today: dt.date
    hers: Mapping[Literal["cm", "in"], Notation]
    printed: Mapping[Literal["cm", "in"], Notation]
    private: bool = False
    per_change_cm: float = PER_CHANGE_CM


@dataclass(frozen=True, slots=True)
class Entry:
    """A sheet to write: of whom and what, under which name, and whether a file of that name is written over.

    The job is a decision sheet's person and pattern, or a household sheet's people and pattern.
    """

    job: Pairing | Gathering
    name: str
    replace: bool = False


@dataclass(slots=True)
class Outcome:
    """What became of the sheets so far. The thread that writes adds to it; it is read when that has ended."""

    total: int
    folder: Path
    written: int = 0
    skipped: int = 0
    left_out: list[str] = field(default_factory=list)
    gave_up: bool = False

    def words(self, *, stopped: bool) -> str:
        """What became of them in one or two sentences."""
        sheets = {0: "no sheet was", 1: "1 sheet was"}.get(self.written, f"{self.written} sheets were")
        done = f"{sheets} written into “{self.folder}”."
        said = f"Stopped: {done}" if stopped else f"{done[:1].upper()}{done[1:]}"
        if self.skipped:
            said += f" {self.skipped} {'was' if self.skipped == 1 else 'were'} there already and left alone."
        if self.left_out:
            said += f" {len(self.left_out)} could not be made."
        if self.gave_up:
            said += " The rest was not tried."
        return said


def entries_of(jobs: Sequence[Pairing | Gathering], form: Format, *, private: bool) -> list[Entry]:
    """A file name for each sheet; two of one name get numbers."""
    found: list[Entry] = []
    taken: list[str] = []
    for job in jobs:
        suffix = f".{form}"
        wanted = job.file_name(suffix, private=private) if isinstance(job, Pairing) else job.file_name(suffix)
        name = free_name(wanted, taken)
        taken.append(name)
        found.append(Entry(job, name))
    return found


def names_in(folder: Path) -> list[str]:
    """What is in a folder.

    Raises:
        ReportError: it cannot be looked into; the sentence names it.
    """
    try:
        return os.listdir(folder)  # noqa: PTH208 - names are wanted, not paths
    except OSError as error:
        why = "there is no such folder" if not folder.exists() else (error.strerror or str(error)).lower()
        raise ReportError(f"The sheets cannot go into “{folder}”: {why}.") from error


def there_already(entries: Sequence[Entry], names: Sequence[str]) -> list[str]:
    """The names of entries for which there is a file."""
    known = {same_name(name) for name in names}
    return [entry.name for entry in entries if same_name(entry.name) in known]


def settled(entries: Sequence[Entry], names: Sequence[str], existing: Existing) -> list[Entry]:
    """The entries as they are written once it is known what becomes of the files that are there."""
    there = set(there_already(entries, names))
    if existing == "skip":
        return [entry for entry in entries if entry.name not in there]
    if existing == "replace":
        return [Entry(entry.job, entry.name, entry.name in there) for entry in entries]
    taken = [*names, *(entry.name for entry in entries if entry.name not in there)]
    found = []
    for entry in entries:
        name = free_name(entry.name, taken) if entry.name in there else entry.name
        taken.append(name)
        found.append(Entry(entry.job, name))
    return found


def write_all(batch: Batch, entries: Sequence[Entry], outcome: Outcome, reading: Reading) -> Outcome:
    """Write them one after another; what cannot be made or written is told in the outcome, and the others go on."""
    failed = 0
    for number, entry in enumerate(entries):
        reading.progress(number, len(entries))
        try:
            data = _made(batch, entry.job)
        except SizekeeperError as error:
            outcome.left_out.append(str(error))
            continue
        reading.check(number, len(entries))
        try:
            write_file(batch.folder / entry.name, data, replace=entry.replace)
        except ReportError as error:
            outcome.left_out.append(str(error))
            failed += 1
            if failed == _GIVE_UP and number + 1 < len(entries):
                outcome.gave_up = True
                return outcome
        else:
            outcome.written += 1
            failed = 0
    return outcome


def _made(batch: Batch, job: Pairing | Gathering) -> bytes:
    if isinstance(job, Pairing):
        return written(_sheet(batch, job), batch.form, batch.paper)
    return household_written(
        batch.snapshot, job, batch.form, notations=batch.hers, today=batch.today, paper=batch.paper
    )


def _sheet(batch: Batch, pairing: Pairing) -> Sheet:
    from sizekeeper.reports.sheet_making import decision_sheet  # noqa: PLC0415 - loaded in the thread that needs it

    found = batch.snapshot.found(pairing)
    return decision_sheet(
        found,
        batch.snapshot.planned(found, batch.per_change_cm),
        today=batch.today,
        names=assets.measures().name,
        private=batch.private,
        notation=batch.hers[found.person.unit],
        envelope=batch.printed[found.printed_in],
        view_words=pairing.view_words,
        next_time=batch.snapshot.next_time(found),
    )
