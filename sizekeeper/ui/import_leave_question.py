"""The question before corrections of an import are let go."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QMessageBox

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget


class LeaveQuestion:
    """Whether to close although something was corrected and not saved. A test puts its own answer here."""

    @classmethod
    def ask(cls, parent: QWidget) -> bool:
        """Whether it may be let go."""
        buttons = QMessageBox.StandardButton.Discard | QMessageBox.StandardButton.Cancel
        words = "What you corrected is not saved, and is let go when you close. The file itself stays as it is."
        answer = QMessageBox.question(parent, "Close without saving", words, buttons, QMessageBox.StandardButton.Cancel)
        return answer == QMessageBox.StandardButton.Discard
