"""Opens the window, or says in one line why it cannot and shows the demo household in the terminal instead."""

from __future__ import annotations

import importlib.util
from typing import TYPE_CHECKING

from sizekeeper.cli.display import no_window_reason

if TYPE_CHECKING:
    from pathlib import Path


def run(library: Path | None, *, demo: bool = False) -> int:
    """Open the window on a library, None for the user's own, or on the demo household; returns the exit code."""
    reason = no_window_reason()
    if reason is None:
        try:
            from sizekeeper.ui.app import run as run_window  # noqa: PLC0415 - Qt, wanted only where it can open a window
        except ImportError as error:
            reason = _missing(error)
        else:
            return run_window(library, demo=demo)
    print(f"No window can be opened here: {reason}.")
    if demo:
        from sizekeeper.cli.demo_table import demo_table  # noqa: PLC0415 - the arithmetic, which no window waits for

        print("The demo household, ranked in the terminal instead:\n")
        print(demo_table())
    else:
        print("The terminal commands work all the same: see sizekeeper --help.")
    return 0


def _missing(error: ImportError) -> str:
    """Which system library Qt misses.

    Raises:
        ImportError: it is no system library but something of the program's own.
    """
    if importlib.util.find_spec("PySide6") is None:
        return "PySide6 is not installed"
    library = str(error).split(":")[0]
    if not library.startswith("lib"):
        raise error
    return f"a system library is missing ({library})"
