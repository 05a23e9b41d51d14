"""The process apart: takes a file on its standard input and prints JSON, within bounds of memory.

`python -m sizekeeper.importing.apart_process workbook` reads XLS, XLSB and ODS, with `pdf` a PDF.
"""

from __future__ import annotations

import contextlib
import json
import sys
from typing import Any

from sizekeeper.importing.apart import MEMORY, RefusedError


def main(kind: str) -> int:
    """Read, print, and say by the exit code how it went."""
    with contextlib.suppress(ImportError, ValueError, OSError):
        import resource  # noqa: PLC0415 - not every system has it

        resource.setrlimit(resource.RLIMIT_AS, (MEMORY[kind], MEMORY[kind]))
    try:
        if kind == "pdf":
            from sizekeeper.importing.pdf import pages  # noqa: PLC0415 - each kind loads its own libraries

            told: Any = pages(sys.stdin.buffer.read())
        else:
            from sizekeeper.importing.oldbook import sheets  # noqa: PLC0415 - as above

            told = sheets(sys.stdin.buffer.read())
    except RefusedError as refused:
        return refused.code
    json.dump(told, sys.stdout)
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
