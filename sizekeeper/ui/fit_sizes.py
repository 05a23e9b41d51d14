"""The candidates in order, and the reasons for the one picked: every number of the ranking."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QItemSelectionModel
from PySide6.QtWidgets import QVBoxLayout, QWidget

from sizekeeper.core.places import place_words, short_place
from sizekeeper.core.reasons import Reason, passed_over, reasons, standing, sum_words
from sizekeeper.ui import theme
from sizekeeper.ui.fit_lines import Line
from sizekeeper.ui.fit_table import LineTable
from sizekeeper.ui.lettering import Lettering

if TYPE_CHECKING:
    from sizekeeper.core.result import Candidate, Fit
    from sizekeeper.core.wording import Wording

_REASONS = ("Where", "Ease", "Asked", "Off", "Adds")
_BODY_REASONS = ("Where", "Chart", "Body", "Off", "Adds")
_ROWS = 8
"""How many candidates are in view before the list scrolls."""


class SizesPart(QWidget):
    """All candidates, best first; picking one explains it."""

    def __init__(self, parent: QWidget | None = None) -> None:
        """Start without a fit."""
        super().__init__(parent)
        self._fit: Fit | None = None
        self._words: Wording | None = None
        self._picked = ""
        self.ranking = LineTable(("", "Size", "Off by"), "Sizes, best first", self, words_in=1, choose=True)
        self.ranking.lines.set_words_in(frozenset({1}))
        self.why = Lettering("", "small heading", self)
        self.why.setWordWrap(True)
        self.notes = Lettering("", "warning", self)
        self.reasons = LineTable(_REASONS, "Reasons", self)
        self.reasons.lines.set_words_in(frozenset({0}))
        self.sum = Lettering("", "note", self)
        self._lay_out()
        self.ranking.selectionModel().currentRowChanged.connect(self._on_row)

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(theme.spacing())
        column.addWidget(Lettering("Sizes and drawable lines between them, best first", "muted", self))
        for widget in (self.ranking, self.why, self.notes, self.reasons, self.sum):
            column.addWidget(widget)
        column.addStretch(1)

    def show_fit(self, fit: Fit, words: Wording) -> None:
        """Show a fit; the candidate picked stays picked while it is there."""
        self._fit, self._words = fit, words
        self.ranking.show_lines([_ranked(candidate, fit, words) for candidate in fit.candidates])
        rows = min(len(fit.candidates), _ROWS) * self.ranking.verticalHeader().defaultSectionSize()
        self.ranking.setFixedHeight(self.ranking.horizontalHeader().sizeHint().height() + rows + 2)
        if fit.candidate(self._picked) is None:
            self._picked = fit.candidates[0].label
        self._select(self._picked)
        self._explain()

    def pick(self, label: str) -> None:
        """Explain a candidate."""
        if self._fit is not None and self._fit.candidate(label) is not None:
            self._picked = label
            self._select(label)
            self._explain()

    def _select(self, label: str) -> None:
        assert self._fit is not None  # noqa: S101 - both callers have a fit
        row = next(i for i, c in enumerate(self._fit.candidates) if c.label == label)
        flags = QItemSelectionModel.SelectionFlag.ClearAndSelect | QItemSelectionModel.SelectionFlag.Rows
        if self.ranking.currentIndex().row() != row:
            self.ranking.selectionModel().setCurrentIndex(self.ranking.lines.index(row, 0), flags)

    def _on_row(self) -> None:
        row = self.ranking.currentIndex().row()
        if self._fit is not None and 0 <= row < len(self._fit.candidates):
            self._picked = self._fit.candidates[row].label
            self._explain()

    def _explain(self) -> None:
        assert self._fit is not None and self._words is not None  # noqa: S101, PT018 - set together
        candidate = self._fit.candidate(self._picked)
        if candidate is None:
            return
        place = place_words(candidate.position, self._fit.labels)
        self.why.setText(f"Number {candidate.rank}: {place}")
        known = standing(self._fit, candidate, self._words)
        sentence = f"{known[:1].upper()}{known[1:]}." if known else ""
        notes = "\n".join(said for said in (sentence, passed_over(self._fit, candidate, self._words)) if said)
        self.notes.setText(notes)
        self.notes.setVisible(bool(notes))
        self.reasons.lines.set_heading(_BODY_REASONS if self._fit.mode == "body" else _REASONS)
        self.reasons.show_lines([_line(reason) for reason in reasons(self._fit, candidate.regions, self._words)])
        self.sum.setText(sum_words(self._fit, candidate, self._words))


def _ranked(candidate: Candidate, fit: Fit, words: Wording) -> Line:
    place = place_words(candidate.position, fit.labels)
    notes = standing(fit, candidate, words)
    off = "–" if candidate.misfit_cm is None else words.length(candidate.misfit_cm)
    said = f"Number {candidate.rank}: {place}, off by {off}{f', {notes}' if notes else ''}"
    short = ", ".join(short_place(candidate.position, fit.labels)) if candidate.between is not None else place
    mark = f"{short} · {notes}" if notes else short
    strong = fit.verdict.kind != "blend" and candidate.position == fit.verdict.position
    return Line((str(candidate.rank), mark, off), said, strong=strong)


def _line(reason: Reason) -> Line:
    texts = (reason.name + reason.mark, reason.given, reason.asked, reason.off, reason.adds)
    said = (
        f"{reason.name}: {reason.given} given, {reason.asked} asked, off {reason.off}, "
        f"counts {reason.counts}, adds {reason.adds}"
    )
    return Line(texts, said, reason.band)
