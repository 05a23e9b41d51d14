"""Which library is the user's own: the one opened or made last by choice, else the one in the default place."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QSettings

from sizekeeper.store.place import default_path

_OWN = "library/own"
PROGRAM = "sizekeeper"
"""The name under which the platform keeps the preferences, as organisation and as application."""


def own_path(stored: QSettings | None = None) -> Path:
    """The user's own library; `stored` are the preferences, the program's own if not given."""
    kept = str((stored if stored is not None else QSettings(PROGRAM, PROGRAM)).value(_OWN, ""))
    return Path(kept) if kept and Path(kept).exists() else default_path()


def keep_own(stored: QSettings, path: Path) -> None:
    """Take a library for the user's own from now on."""
    stored.setValue(_OWN, str(path.resolve()))
