"""The questions about files of sheets: where one goes, in which folder many go, and what about files that are there."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Literal

from PySide6.QtWidgets import QFileDialog, QMessageBox

from sizekeeper.reports.export import FORMAT_WORDS, FORMATS, format_of
from sizekeeper.reports.filing import is_there

if TYPE_CHECKING:
    from PySide6.QtWidgets import QPushButton, QWidget

    from sizekeeper.reports.export import Format

Existing = Literal["replace", "number", "skip"]
"""What happens to files that are there already: written over, kept beside new ones with a number, or left alone."""


class SheetFileQuestion:
    """Where a sheet goes. A test puts its own answer here."""

    @classmethod
    def ask(cls, parent: QWidget, suggested: Path) -> Path | None:
        """The chosen file with the suffix of a format; None when the question was put away.

        An existing file was then agreed to: by the platform's dialog, or here where the suffix was added to the name.
        """
        filters = {f"{words} (*.{form})": form for form, words in FORMAT_WORDS.items()}
        first = next(text for text, form in filters.items() if form == format_of(suggested))
        name, chosen = QFileDialog.getSaveFileName(
            parent, "Save the decision sheet", str(suggested), ";;".join(filters), first
        )
        if not name:
            return None
        path = with_format(Path(name), filters.get(chosen, "pdf"))
        asked_already = str(path) == name
        return path if asked_already or not is_there(path) or cls.ask_to_replace(parent, path) else None

    @classmethod
    def ask_to_replace(cls, parent: QWidget, path: Path) -> bool:
        """Whether a file that is there may be written over."""
        buttons = QMessageBox.StandardButton.Yes | QMessageBox.StandardButton.No
        text = f"“{path.name}” exists already. Write over it?"
        answer = QMessageBox.question(parent, "Save the decision sheet", text, buttons, QMessageBox.StandardButton.No)
        return answer == QMessageBox.StandardButton.Yes


class FolderQuestion:
    """In which folder many sheets go. A test puts its own answer here."""

    @classmethod
    def ask(cls, parent: QWidget, folder: Path) -> Path | None:
        """The chosen folder; None when the question was put away."""
        name = QFileDialog.getExistingDirectory(parent, "Folder for the sheets", str(folder))
        return Path(name) if name else None


class ExistingQuestion:
    """What about the files that are there already, asked once for all of them. A test puts its own answer here."""

    @classmethod
    def ask(cls, parent: QWidget, names: list[str], total: int) -> Existing | None:
        """What happens to them; None when nothing is to be written.

        Args:
            parent: the window that asks.
            names: the files that are there.
            total: how many sheets there are in all.
        """
        box = QMessageBox(QMessageBox.Icon.Question, "Save sheets", existing_words(names, total), parent=parent)
        box.setInformativeText("“Keep both” gives the new ones a number.")
        role = QMessageBox.ButtonRole
        answers: dict[Existing, QPushButton] = {
            "number": box.addButton("&Keep both", role.AcceptRole),
            "replace": box.addButton("&Replace all", role.DestructiveRole),
            "skip": box.addButton("&Skip them", role.ActionRole),
        }
        box.addButton(QMessageBox.StandardButton.Cancel)
        box.setDefaultButton(answers["number"])
        box.exec()
        return next((answer for answer, button in answers.items() if box.clickedButton() is button), None)


def existing_words(names: list[str], total: int) -> str:
    """Which files are there already, in one sentence."""
    if len(names) == 1:
        return f"One of the {total} files is there already: “{names[0]}”." if total > 1 else f"“{names[0]}” exists."
    return f"{len(names)} of the {total} files are there already, “{names[0]}” among them."


def with_format(path: Path, form: Format) -> Path:
    """The path with the suffix of a format behind it, unless it has that of one already."""
    return path if format_of(path) in FORMATS else path.with_name(f"{path.name}.{form}")
