"""Reads old workbooks and PDFs in a process of its own, which may not take all memory: crafted files make readers try.

What that process does stands in `apart_process`.
"""

from __future__ import annotations

import json
import subprocess
import sys
import time
from typing import TYPE_CHECKING, Any, Literal

from sizekeeper.errors import ReadError

if TYPE_CHECKING:
    from sizekeeper.importing.limits import Progress

MEMORY = {"workbook": 480_000_000, "pdf": 490_000_000}
"""The most memory, in bytes, that a process may map, where the system can hold it to that."""

PATIENCE = 60.0
"""Seconds after which a file is given up; the largest one that is let in takes a few."""

PROTECTED, DAMAGED, LARGE = 3, 4, 5
"""Exit codes: a password is needed, the file is broken, it is larger than any chart."""

_TICK = 0.2
_WHAT = {"workbook": "a spreadsheet", "pdf": "a PDF"}


class RefusedError(Exception):
    """Raised by the readers within the process; `code` is how it then ends."""

    def __init__(self, code: int) -> None:
        """Keep the code."""
        super().__init__(code)
        self.code = code


def read_apart(kind: Literal["workbook", "pdf"], data: bytes, name: str, progress: Progress) -> Any:  # noqa: ANN401 - JSON
    """What the process read from a file's content, as JSON values.

    Raises:
        ReadError: it is protected, broken, larger than any chart, or takes too long; the sentence names the file.
    """
    command = [sys.executable, "-P", "-m", "sizekeeper.importing.apart_process", kind]
    with subprocess.Popen(  # noqa: S603 - our own module, in the Python that runs
        command,
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.DEVNULL,
        creationflags=getattr(subprocess, "CREATE_NO_WINDOW", 0),
    ) as process:
        try:
            code, told = _waited(process, data, name, progress)
        finally:
            process.kill()
    if code == PROTECTED:
        raise ReadError(f"“{name}” is protected by a password: save it without one.")
    if code == LARGE:
        raise ReadError(f"“{name}” has more pages or a larger sheet than any chart: copy the chart alone.")
    if code != 0:
        raise ReadError(f"“{name}” is damaged and cannot be read as {_WHAT[kind]}.")
    return json.loads(told)


def _waited(process: subprocess.Popen[bytes], data: bytes, name: str, progress: Progress) -> tuple[int, bytes]:
    """The exit code and what was printed; progress is told all the while."""
    given: bytes | None = data
    end = time.monotonic() + PATIENCE
    while time.monotonic() < end:
        progress(0, 1)
        try:
            told, _ = process.communicate(given, timeout=_TICK)
        except subprocess.TimeoutExpired:
            given = None  # it was handed over; asking again goes on waiting
        else:
            return process.returncode, told
    raise ReadError(f"“{name}” takes too long to read: save it as XLSX or copy the chart alone.")
