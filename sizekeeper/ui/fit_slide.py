"""The ruler with what it says: where the slide stands, where the line runs, and the ease there."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QPushButton, QVBoxLayout, QWidget

from sizekeeper.core.places import place_words
from sizekeeper.core.reasons import Reason, misfit_of, reasons
from sizekeeper.core.sentences import line_words
from sizekeeper.ui import theme
from sizekeeper.ui.fit_lines import Line
from sizekeeper.ui.fit_table import LineTable
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.ruler import Ruler

if TYPE_CHECKING:
    from collections.abc import Mapping

    from sizekeeper.core.comparison import Comparison
    from sizekeeper.core.result import Fit, RegionAt
    from sizekeeper.core.wording import Wording

_HEADING = ("Where", "Ease", "Asked", "Off", "Band")
_BODY_HEADING = ("Where", "Chart", "Body", "Off", "")


class SlidePart(QWidget):
    """Slides along the size range; every region's ease follows live."""

    def __init__(self, parent: QWidget | None = None) -> None:
        """Start without a fit."""
        super().__init__(parent)
        self._fit: Fit | None = None
        self._comparison: Comparison | None = None
        self._words: Wording | None = None
        self._moved = False
        self.ruler = Ruler(self)
        self.place = Lettering("", "small heading", self)
        self.place.setWordWrap(True)
        self.line = Lettering("", "muted", self)
        self.table = LineTable(_HEADING, "Ease at this place", self)
        self.table.lines.set_words_in(frozenset({0, 4}))
        self.off = Lettering("", "plain", self)
        self.back = QPushButton("Back to what is chosen", self)
        self._lay_out()
        self.ruler.valueChanged.connect(self._on_slide)
        self.back.clicked.connect(self.follow_choice)

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(theme.spacing())
        column.addWidget(Lettering("Slide to any place on the size range", "muted", self))
        for widget in (self.ruler, self.place, self.line, self.table, self.off, self.back):
            column.addWidget(widget)
        column.addStretch(1)

    def show_fit(self, fit: Fit, comparison: Comparison, words: Wording) -> None:
        """Show a fit; the slide stays where she put it, else it follows what is chosen."""
        if self._fit is not None and self._fit.labels != fit.labels:
            self._moved = False
        self._fit, self._comparison, self._words = fit, comparison, words
        lines = [c.position for c in fit.candidates if c.between is not None]
        blocked = self.ruler.blockSignals(True)
        self.ruler.set_sizes(fit.labels, sorted(lines), fit.verdict.position)
        if not self._moved:
            self.ruler.go(fit.verdict.position)
        self.ruler.blockSignals(blocked)
        self._refresh()

    def follow_choice(self) -> None:
        """Slide back to what is chosen, and follow it again."""
        if self._fit is not None:
            self.ruler.go(self._fit.verdict.position)
            self._moved = False
            self._refresh()

    def _on_slide(self) -> None:
        self._moved = True
        self._refresh()

    def _refresh(self) -> None:
        if self._fit is None or self._comparison is None or self._words is None:
            return
        place = self.ruler.position
        at = self._comparison.at(place)
        self.ruler.update()
        self.place.setText(_sentence(place_words(place, self._fit.labels)))
        self.line.setText(line_words(self._fit, place, self._words))
        self.table.lines.set_heading(_BODY_HEADING if self._fit.mode == "body" else _HEADING)
        self.table.show_lines([_line(reason) for reason in reasons(self._fit, at, self._words)])
        self.off.setText(_off_words(self._fit, at, self._words))
        self.back.setEnabled(self._moved)


def _line(reason: Reason) -> Line:
    texts = (reason.name, reason.given, reason.asked, reason.off, reason.band or "")
    said = f"{reason.name}: {reason.given} given, {reason.asked} asked, off {reason.off}, {reason.band or ''}"
    return Line(texts, said, reason.band)


def _off_words(fit: Fit, at: Mapping[str, RegionAt], words: Wording) -> str:
    misfit = misfit_of(fit, at)
    return "" if misfit is None else f"Off by {words.length(misfit)} over all regions."


def _sentence(words: str) -> str:
    return words[:1].upper() + words[1:]
