"""A file is wholly written or as it was, whatever the disk does."""

from __future__ import annotations

import errno
import os
import stat
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from sizekeeper.errors import ReportError
from sizekeeper.reports import filing
from sizekeeper.reports.filing import ExistsError, is_there, write_file

if TYPE_CHECKING:
    from collections.abc import Callable

STEPS = ["open", "fsync", "replace"]


def failing(number: int, *, windows: int = 0) -> Callable[..., None]:
    """A call to the system that fails with an error of this number."""

    def fail(*_args: object, **_named: object) -> None:
        error = OSError(number, os.strerror(number))
        if windows:
            error.winerror = windows  # type: ignore[attr-defined, unused-ignore]  # what Windows adds
        raise error

    return fail


def names(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir())


def break_step(monkeypatch: pytest.MonkeyPatch, step: str, fail: Callable[..., None]) -> None:
    if step == "open":
        monkeypatch.setattr(Path, "open", fail)
    else:
        monkeypatch.setattr(os, step, fail)


def test_a_new_file_holds_what_was_given(tmp_path: Path) -> None:
    write_file(tmp_path / "sheet.pdf", b"new", replace=False)
    assert (tmp_path / "sheet.pdf").read_bytes() == b"new"
    assert names(tmp_path) == ["sheet.pdf"]


def test_a_file_that_is_there_is_left_alone_unless_it_may_be_replaced(tmp_path: Path) -> None:
    (tmp_path / "sheet.pdf").write_bytes(b"old")
    with pytest.raises(ExistsError, match=r"sheet\.pdf” exists already"):
        write_file(tmp_path / "sheet.pdf", b"new", replace=False)
    assert (tmp_path / "sheet.pdf").read_bytes() == b"old"
    write_file(tmp_path / "sheet.pdf", b"new", replace=True)
    assert (tmp_path / "sheet.pdf").read_bytes() == b"new"
    assert names(tmp_path) == ["sheet.pdf"]


@pytest.mark.parametrize("step", STEPS)
@pytest.mark.parametrize(
    ("number", "says"),
    [
        (errno.ENOSPC, "the disk is full"),
        (errno.EDQUOT, "the disk is full"),
        (errno.EROFS, "write-protected"),
        (errno.EACCES, "write-protected, or open in another program"),
        (errno.EBUSY, "another program holds it"),
        (errno.EIO, os.strerror(errno.EIO)),
    ],
)
def test_whatever_goes_wrong_the_old_file_stays_and_nothing_else_is_left(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, step: str, number: int, says: str
) -> None:
    path = tmp_path / "sheet.pdf"
    path.write_bytes(b"old")
    break_step(monkeypatch, step, failing(number))
    with pytest.raises(ReportError, match=says) as told:
        write_file(path, b"new", replace=True)
    monkeypatch.undo()
    assert str(path) in str(told.value)
    assert str(told.value).endswith("The file that was there is as it was.")
    assert (path.read_bytes(), names(tmp_path)) == (b"old", ["sheet.pdf"])


@pytest.mark.parametrize("step", ["open", "fsync", "link"])
def test_a_new_file_that_cannot_be_written_leaves_nothing(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, step: str
) -> None:
    break_step(monkeypatch, step, failing(errno.ENOSPC))
    with pytest.raises(ReportError, match=r"the disk is full\.$"):
        write_file(tmp_path / "sheet.pdf", b"new", replace=False)
    monkeypatch.undo()
    assert names(tmp_path) == []


def test_a_file_that_another_program_holds_on_windows_is_said_to_be_held(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "sheet.xlsx").write_bytes(b"old")
    break_step(monkeypatch, "replace", failing(errno.EACCES, windows=32))
    with pytest.raises(ReportError, match="another program holds it; close it there and try again"):
        write_file(tmp_path / "sheet.xlsx", b"new", replace=True)


def test_where_files_cannot_be_linked_a_new_file_is_renamed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    break_step(monkeypatch, "link", failing(errno.EPERM))
    write_file(tmp_path / "sheet.pdf", b"new", replace=False)
    assert names(tmp_path) == ["sheet.pdf"]


@pytest.mark.parametrize("links", [True, False])
def test_a_file_made_by_somebody_else_meanwhile_is_not_written_over(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, *, links: bool
) -> None:
    path, write = tmp_path / "sheet.pdf", filing._write

    def interrupted(temporary: Path, data: bytes) -> None:
        write(temporary, data)
        path.write_bytes(b"theirs")

    monkeypatch.setattr(filing, "_write", interrupted)
    if not links:
        break_step(monkeypatch, "link", failing(errno.ENOTSUP))
    with pytest.raises(ExistsError):
        write_file(path, b"ours", replace=False)
    assert (path.read_bytes(), names(tmp_path)) == (b"theirs", ["sheet.pdf"])


def test_a_missing_folder_is_named(tmp_path: Path) -> None:
    with pytest.raises(ReportError, match=r"there is no folder “.*nowhere”"):
        write_file(tmp_path / "nowhere" / "sheet.pdf", b"new", replace=False)


def test_a_file_in_the_place_of_the_folder_is_named(tmp_path: Path) -> None:
    (tmp_path / "file").write_bytes(b"")
    with pytest.raises(ReportError, match=r"there is no folder “.*file”"):
        write_file(tmp_path / "file" / "sheet.pdf", b"new", replace=False)


def test_a_folder_is_not_replaced_by_a_file(tmp_path: Path) -> None:
    with pytest.raises(ReportError, match="it is a folder"):
        write_file(tmp_path, b"new", replace=True)


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="this system has no pipes among its files")
def test_what_is_no_ordinary_file_is_left_alone(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe")
    with pytest.raises(ReportError, match="not an ordinary file"):
        write_file(tmp_path / "pipe", b"new", replace=True)
    assert stat.S_ISFIFO((tmp_path / "pipe").stat().st_mode)


def test_a_protected_file_is_not_replaced(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "sheet.pdf").write_bytes(b"old")
    monkeypatch.setattr(os, "access", lambda *_: False)
    with pytest.raises(ReportError, match="write-protected"):
        write_file(tmp_path / "sheet.pdf", b"new", replace=True)
    assert (tmp_path / "sheet.pdf").read_bytes() == b"old"


@pytest.mark.skipif(os.name == "nt", reason="links need a right of their own there")
def test_a_link_stays_a_link_and_its_file_is_written(tmp_path: Path) -> None:
    (tmp_path / "real.pdf").write_bytes(b"old")
    (tmp_path / "link.pdf").symlink_to(tmp_path / "real.pdf")
    write_file(tmp_path / "link.pdf", b"new", replace=True)
    assert (tmp_path / "link.pdf").is_symlink()
    assert (tmp_path / "real.pdf").read_bytes() == b"new"


@pytest.mark.skipif(os.name == "nt", reason="such rights are of other systems")
def test_a_replaced_file_keeps_who_may_read_it(tmp_path: Path) -> None:
    (tmp_path / "sheet.pdf").write_bytes(b"old")
    (tmp_path / "sheet.pdf").chmod(0o600)
    write_file(tmp_path / "sheet.pdf", b"new", replace=True)
    assert stat.S_IMODE((tmp_path / "sheet.pdf").stat().st_mode) == 0o600


@pytest.mark.parametrize("name", ["zero\0byte.pdf", "x" * 300 + ".pdf"])
def test_a_name_that_no_file_can_have_is_said_to_be_one(tmp_path: Path, name: str) -> None:
    with pytest.raises(ReportError, match=r"no name for a file|its name is too long"):
        write_file(tmp_path / name, b"new", replace=False)
    assert names(tmp_path) == []


def test_a_disk_that_cannot_keep_the_folder_safe_still_has_the_file(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(os, "open", failing(errno.EINVAL))
    write_file(tmp_path / "sheet.pdf", b"new", replace=False)
    assert (tmp_path / "sheet.pdf").read_bytes() == b"new"


@pytest.mark.parametrize("name", ["n" * 300, "n/" * 3000])
def test_a_name_that_is_too_long_is_the_name_of_nothing(tmp_path: Path, name: str) -> None:
    assert not is_there(tmp_path / name)
