"""The lock that one window holds on a library: an operating system lock on a small file beside it.

The system drops the lock when the program ends, however it ends; the file itself stays, because removing it would let
two windows lock two different files.
"""

from __future__ import annotations

import os
import sys
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from pathlib import Path

if sys.platform == "win32":
    import msvcrt

    def _try(handle: int) -> None:
        msvcrt.locking(handle, msvcrt.LK_NBLCK, 1)

else:
    import fcntl

    def _try(handle: int) -> None:
        # flock, not lockf: two windows of one process are told apart, too
        fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)


class Lock:
    """The lock on one library, held or not. `held` is False while another window has it."""

    def __init__(self, library: Path) -> None:
        """Try to take the lock, without waiting.

        Raises:
            OSError: the file for the lock cannot be made, or this disk has no locks.
        """
        path = library.with_name(library.name + ".lock")
        self._handle: int | None = os.open(path, os.O_CREAT | os.O_RDWR, 0o600)
        try:
            _try(self._handle)
        except (BlockingIOError, PermissionError):
            self.release()
        except BaseException:
            self.release()
            raise

    @property
    def held(self) -> bool:
        """Whether this window is the one that may write."""
        return self._handle is not None

    def release(self) -> None:
        """Let another window write."""
        if self._handle is not None:
            os.close(self._handle)
            self._handle = None


def take(library: Path) -> tuple[Lock | None, str]:
    """The lock on an existing library and "", or None and why this window may only look."""
    if not os.access(library, os.W_OK):
        return None, "the file is write-protected"
    try:
        lock = Lock(library)
    except OSError as error:
        return None, f"it cannot be locked ({error.strerror})"
    return (lock, "") if lock.held else (None, "another window has it open")
