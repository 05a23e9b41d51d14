"""A make to read: what was decided and why, what was changed, the toiles, and what it rested on."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from sizekeeper import assets
from sizekeeper.core.days import day_words
from sizekeeper.core.make_words import cut_words, kept_words
from sizekeeper.ui import theme
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.version_sewing import make_lines

if TYPE_CHECKING:
    from sizekeeper.core.make import Make
    from sizekeeper.core.wording import Wording

_ELSEWHERE = ("Name", "View", "Decision", "How far", "Finished on", "How it turned out", "Next time", "Hidden")
"""What stands in the heading or in the fields beside it."""
_USUAL = {"Lengths laid end to end": "2"}
"""What is not worth a line while it is as it comes."""


def reading_lines(make: Make, words: Wording) -> list[tuple[str, str]]:
    """Everything to read of a make, by label."""
    decision = make.decision
    lines = [("To cut" if make.open else "Cut", cut_words(make) or "Nothing is decided yet.")]
    if decision is not None and decision.on is not None:
        lines.append(("Decided", f"on {day_words(decision.on)}"))
    for label, text in make_lines(make, assets.measures()).items():
        told = label in _ELSEWHERE or label.startswith("Worn, ") or _USUAL.get(label) == text
        if text and not told:
            lines.append((label, text))
    if make.kept is not None:
        lines += [(words.name(at), kept_words(region, words)) for at, region in make.kept.regions.items()]
        if make.kept.regions:
            lines.append(("", f"Figures and ease as they were when it was finished, {day_words(make.kept.on)}."))
    return lines


class MakeReading(QWidget):
    """Labels at the left, what they say at the right."""

    def __init__(self, parent: QWidget | None = None) -> None:
        """Silent."""
        super().__init__(parent)
        self._rows: list[tuple[Lettering, Lettering]] = []
        self._grid = QGridLayout()
        self._grid.setColumnStretch(1, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(theme.spacing())
        column.addWidget(Lettering("What was made", "small heading", self))
        column.addLayout(self._grid)
        column.addStretch(1)
        self._grid.setHorizontalSpacing(theme.spacing(1.5))
        self._grid.setVerticalSpacing(theme.spacing(0.75))

    @property
    def text(self) -> str:
        """All that is said, a line each."""
        shown = (pair for pair in self._rows if not pair[1].isHidden())
        return "\n".join(f"{label.text()}: {said.text()}".removeprefix(": ") for label, said in shown)

    def show_make(self, make: Make, words: Wording) -> None:
        """Show a make."""
        lines = reading_lines(make, words)
        while len(self._rows) < len(lines):
            label, said = Lettering("", "muted", self), Lettering("", "plain", self)
            label.setMinimumWidth(theme.spacing(11))
            label.setMaximumWidth(theme.spacing(18))
            said.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
            said.setFocusPolicy(Qt.FocusPolicy.NoFocus)
            for column, widget in enumerate((label, said)):
                self._grid.addWidget(widget, len(self._rows), column, Qt.AlignmentFlag.AlignTop)
            self._rows.append((label, said))
        for number, (label, said) in enumerate(self._rows):
            shown = number < len(lines)
            for widget, text in zip((label, said), lines[number] if shown else ("", ""), strict=True):
                widget.setText(text)
                widget.setVisible(shown)
