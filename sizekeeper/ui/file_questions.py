"""The questions for a library file: which one to open, and where a new one goes. A test puts its own answers here."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QFileDialog

from sizekeeper.store.shelf import SUFFIX

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget

_FILTER = f"Sizekeeper libraries (*{SUFFIX})"


class FileQuestion:
    """The platform's own file dialogs."""

    @classmethod
    def ask_existing(cls, parent: QWidget, title: str, folder: Path) -> Path | None:
        """Which library to open; None when the question was put away."""
        name, _ = QFileDialog.getOpenFileName(parent, title, str(folder), f"{_FILTER};;All files (*)")
        return Path(name) if name else None

    @classmethod
    def ask_new(cls, parent: QWidget, title: str, suggested: Path) -> Path | None:
        """Where a new library goes, with the library's suffix; None when the question was put away.

        The dialog does not offer to write over a file: whoever writes refuses one that is there, in words.
        """
        plain = QFileDialog.Option.DontConfirmOverwrite
        name, _ = QFileDialog.getSaveFileName(parent, title, str(suggested), _FILTER, options=plain)
        return with_suffix(Path(name)) if name else None


def with_suffix(path: Path) -> Path:
    """The path with the suffix of a library behind it, unless it has it already."""
    return path if path.suffix.casefold() == SUFFIX else path.with_name(path.name + SUFFIX)
