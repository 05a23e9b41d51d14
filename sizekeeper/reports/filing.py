"""Writing a file so that it is either wholly there or as it was before.

It is written under another name in the same folder, sent to the disk, and only then given its name.
"""

from __future__ import annotations

import contextlib
import errno
import os
import shutil
from pathlib import Path
from typing import TYPE_CHECKING

from sizekeeper.errors import ReportError
from sizekeeper.reports.file_names import file_name, free_name

if TYPE_CHECKING:
    from collections.abc import Iterator

__all__ = ["ExistsError", "file_name", "free_name", "is_there", "write_file"]

_UNFINISHED = ".unfinished-"
_FULL = {errno.ENOSPC, errno.EDQUOT}
_NOT_ALLOWED = {errno.EACCES, errno.EPERM, errno.EROFS}
_BUSY = {errno.EBUSY, errno.ETXTBSY}
_HELD_ON_WINDOWS = {32, 33}
"""Windows' own numbers for a file that another program holds, or holds a part of."""

_NO_FOLDER = {errno.ENOENT, errno.ENOTDIR}
_NO_LINKS = {errno.EPERM, errno.ENOTSUP, errno.EOPNOTSUPP, errno.ENOSYS, errno.EMLINK, errno.EINVAL}


class ExistsError(ReportError):
    """There is a file of that name already, and it was not to be replaced."""


def is_there(path: Path) -> bool:
    """Whether there is something of that name; not where the system takes no such name, which writing then tells."""
    try:
        return path.exists()
    except (OSError, ValueError):
        return False


def write_file(path: Path, data: bytes, *, replace: bool) -> None:
    """Write a file as a whole. Whatever goes wrong, a file that was there stays as it was, and nothing else is left.

    Args:
        path: the file; through a link the file that it names.
        data: what shall stand in it.
        replace: whether a file that is there already may be written over; whoever calls has asked.

    Raises:
        ExistsError: there is a file already and it is not to be replaced.
        ReportError: it cannot be written; the sentence names the file and says why.
    """
    with _told(path):
        target = Path(os.path.realpath(path.expanduser()))
        _refuse(path, target, replace=replace)
        temporary = target.with_name(f"{_UNFINISHED}{os.urandom(8).hex()}")
        try:
            _write(temporary, data)
            if replace:
                _keep_mode(target, temporary)
                os.replace(temporary, target)  # noqa: PTH105 - the call that a test puts an error into
            else:
                _name_new(temporary, target)
        finally:
            with contextlib.suppress(OSError):
                temporary.unlink(missing_ok=True)
        _to_disk(target.parent)


def _refuse(path: Path, target: Path, *, replace: bool) -> None:
    """Refuse what can be seen beforehand. Replacing asks for the folder only, so a protected file has to be looked at.

    Raises:
        ReportError: the file may not be written.
    """
    if not target.parent.is_dir():
        raise ReportError(f"“{path}” cannot be written: there is no folder “{target.parent}”.")
    if target.is_dir():
        raise ReportError(f"“{path}” cannot be written: it is a folder.")
    if not target.exists():
        return
    if not target.is_file():
        raise ReportError(f"“{path}” cannot be written: it is not an ordinary file.")
    if not replace:
        raise _exists(path)
    if not os.access(target, os.W_OK):
        raise PermissionError(errno.EACCES, os.strerror(errno.EACCES))


def _exists(path: Path) -> ExistsError:
    return ExistsError(f"“{path}” exists already and was left as it is.")


def _write(temporary: Path, data: bytes) -> None:
    with temporary.open("xb") as file:
        file.write(data)
        file.flush()
        os.fsync(file.fileno())


def _keep_mode(target: Path, temporary: Path) -> None:
    """Who may read the old file may read the new one."""
    with contextlib.suppress(OSError):
        shutil.copymode(target, temporary)


def _name_new(temporary: Path, target: Path) -> None:
    """Give a finished file its name, unless somebody took the name meanwhile.

    Raises:
        ExistsError: there is a file of that name now.
    """
    try:
        os.link(temporary, target)  # fails where the name is taken, which renaming does not on every system
    except FileExistsError:
        raise _exists(target) from None
    except OSError as error:
        if error.errno not in _NO_LINKS:
            raise
        if target.exists():
            raise _exists(target) from None
        os.replace(temporary, target)  # noqa: PTH105 - as above


def _to_disk(folder: Path) -> None:
    """Have the system keep the file's name too; where it cannot, the file is there all the same."""
    if os.name == "nt":
        return  # Windows has no such call for a folder
    with contextlib.suppress(OSError):
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)


@contextlib.contextmanager
def _told(path: Path) -> Iterator[None]:
    """Turn an error of the file system into a sentence about one file."""
    try:
        yield
    except OSError as error:
        stays = " The file that was there is as it was." if _there(path) else ""
        raise ReportError(f"“{path}” cannot be written: {_why(error, path)}.{stays}") from error
    except ValueError as error:  # a name with a zero byte or half a character in it
        raise ReportError(f"“{path!s}” cannot be written: that is no name for a file.".replace("\0", "")) from error


def _there(path: Path) -> bool:
    try:
        return path.expanduser().is_file()
    except OSError:
        return False


def _why(error: OSError, path: Path) -> str:
    if error.errno in _FULL:
        return "the disk is full"
    if error.errno in _BUSY or getattr(error, "winerror", None) in _HELD_ON_WINDOWS:
        return "another program holds it; close it there and try again"
    if error.errno in _NOT_ALLOWED:
        return "the file or its folder is write-protected, or open in another program"
    if error.errno in _NO_FOLDER:
        return f"there is no folder “{path.parent}”"
    if error.errno == errno.ENAMETOOLONG:
        return "its name is too long"
    return error.strerror or str(error)
