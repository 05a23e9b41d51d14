"""The question what a table is that was read as a chart and looks like a table of people."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal

from PySide6.QtWidgets import QMessageBox

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget


class PeopleQuestion:
    """Whether the rows of a table are people or sizes. A test puts its own answer here."""

    @classmethod
    def ask(cls, parent: QWidget, name: str, *, chart: bool) -> Literal["people", "chart", ""]:
        """What the table is to be read as; empty when the question was put away.

        Args:
            parent: the window to ask over.
            name: what the source is called.
            chart: whether it could be a chart at all.
        """
        box = QMessageBox(parent)
        box.setIcon(QMessageBox.Icon.Question)
        box.setWindowTitle("People or sizes")
        box.setText(f"“{name}” looks like a table of people: names, with their measurements.")
        box.setInformativeText("Nothing is saved before you have seen it.")
        people = box.addButton("Import &people", QMessageBox.ButtonRole.AcceptRole)
        sizes = box.addButton("Read as a size &chart", QMessageBox.ButtonRole.ActionRole) if chart else None
        box.addButton(QMessageBox.StandardButton.Cancel)
        box.setDefaultButton(people)
        box.exec()
        if box.clickedButton() is people:
            return "people"
        return "chart" if sizes is not None and box.clickedButton() is sizes else ""
