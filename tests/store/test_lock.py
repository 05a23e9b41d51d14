from __future__ import annotations

import subprocess
import sys
from typing import TYPE_CHECKING

import pytest

from sizekeeper.store import lock
from sizekeeper.store.library import Library
from tests.store.made import ILSE, Clock

if TYPE_CHECKING:
    from pathlib import Path

HOLDER = """
import datetime as dt, sys
from pathlib import Path
from sizekeeper.store.library import Library
with Library.open(Path(sys.argv[1]), now=lambda: dt.datetime.now(dt.UTC)) as library:
    print(library.read_only, flush=True)
    sys.stdin.read()
"""


def holder(place: Path) -> subprocess.Popen[str]:
    """Another process that opens the library, says whether it may only look, and waits."""
    return subprocess.Popen(  # noqa: S603 - our own program
        [sys.executable, "-c", HOLDER, str(place)], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
    )


def said(process: subprocess.Popen[str]) -> str:
    assert process.stdout is not None
    return process.stdout.readline().strip()


def test_a_library_open_in_another_process_can_only_be_looked_at(place: Path, clock: Clock) -> None:
    with holder(place) as other:
        assert said(other) == "False"
        with Library.open(place, now=clock) as library:
            assert (library.read_only, library.read_only_reason) == (True, "another window has it open")
        other.communicate("")


def test_another_process_can_only_look_at_a_library_open_here(library: Library, place: Path) -> None:
    with holder(place) as other:
        assert said(other) == "True"
        other.communicate("")


@pytest.mark.parametrize("end", ["terminate", "kill"])
def test_the_lock_ends_with_its_process_however_that_ends(place: Path, clock: Clock, end: str) -> None:
    with holder(place) as other:
        said(other)
        getattr(other, end)()
        other.wait()
        with Library.open(place, now=clock) as library:
            assert not library.read_only


def test_a_second_window_of_the_same_process_can_only_look(library: Library, place: Path, clock: Clock) -> None:
    library.save("Add", [(None, ILSE)])
    with Library.open(place, now=clock) as second:
        assert (second.read_only, second.values()) == (True, [ILSE])


def test_a_library_that_cannot_be_locked_can_only_be_looked_at(place: Path, clock: Clock) -> None:
    with Library.open(place, now=clock):
        pass
    place.with_name("home.sizekeeper.lock").unlink()
    place.with_name("home.sizekeeper.lock").mkdir()
    with Library.open(place, now=clock) as library:
        assert (library.read_only, library.read_only_reason) == (True, "it cannot be locked (Is a directory)")


def test_a_disk_without_locks_is_not_taken_for_another_window(
    place: Path, clock: Clock, monkeypatch: pytest.MonkeyPatch
) -> None:
    def no_locks(handle: int) -> None:
        raise OSError(37, "No locks available")

    with Library.open(place, now=clock):
        pass
    monkeypatch.setattr(lock, "_try", no_locks)
    with Library.open(place, now=clock) as library:
        assert library.read_only_reason == "it cannot be locked (No locks available)"
