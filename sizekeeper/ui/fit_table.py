"""A quiet table of texts for the side panel: reasons, ranking, the ease at the ruler's place."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import (
    QEvent,
    QRect,
    QSize,
    Qt,
)
from PySide6.QtGui import QFontMetricsF, QPainter
from PySide6.QtWidgets import QAbstractItemView, QFrame, QHeaderView, QTableView, QWidget

from sizekeeper.ui import theme
from sizekeeper.ui.fit_lines import Line, LineModel

if TYPE_CHECKING:
    from collections.abc import Sequence

    from PySide6.QtGui import QKeyEvent

_PAD = 3
"""The space Qt leaves beside the text of a cell, in pixels."""


class QuietHeading(QHeaderView):
    """Headings in small, muted letters over a thin rule."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(Qt.Orientation.Horizontal, parent)
        self.setHighlightSections(False)
        self.viewport().setAutoFillBackground(False)

    # Qt's own names from here on.

    def paintSection(self, painter: QPainter, rect: QRect, section: int) -> None:
        """Paint one heading."""
        model, across = self.model(), Qt.Orientation.Horizontal
        words = model.headerData(section, across, Qt.ItemDataRole.DisplayRole)
        side = model.headerData(section, across, Qt.ItemDataRole.TextAlignmentRole)
        painter.setFont(theme.small_font())
        painter.setPen(theme.muted_text(self.palette()))
        painter.drawText(rect.adjusted(_PAD, 0, -_PAD, 0), side or Qt.AlignmentFlag.AlignCenter, words or "")
        painter.setPen(theme.rule_colour(self.palette()))
        painter.drawLine(rect.bottomLeft(), rect.bottomRight())


class LineTable(QTableView):
    """Shows lines without a grid or a frame, as high as they are unless told otherwise."""

    def __init__(
        self,
        heading: Sequence[str],
        name: str,
        parent: QWidget | None = None,
        *,
        words_in: int = 0,
        choose: bool = False,
    ) -> None:
        """A table with a heading and a name for screen readers; `choose` lets one line be picked.

        The column `words_in` takes what room is left; the others are as wide as their texts.
        """
        super().__init__(parent)
        self._words_in = words_in
        self.lines = LineModel(heading, self)
        self.setModel(self.lines)
        self.setAccessibleName(name)
        self._choose = choose
        self._plain_looks()
        self.dress()

    def _plain_looks(self) -> None:
        picks = QAbstractItemView.SelectionMode
        self.setSelectionMode(picks.SingleSelection if self._choose else picks.NoSelection)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setShowGrid(False)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setTabKeyNavigation(False)
        self.setWordWrap(False)
        self.verticalHeader().hide()
        self.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self.setHorizontalHeader(QuietHeading(self))
        self.viewport().setAutoFillBackground(False)
        self.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self.horizontalHeader().setSectionResizeMode(self._words_in, QHeaderView.ResizeMode.Stretch)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        if not self._choose:
            self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)

    def show_lines(self, lines: Sequence[Line]) -> None:
        """Show other lines."""
        before = self.lines.rowCount()
        self.lines.set_lines(lines)
        self._span_headings()
        self._fit_columns()
        if not self._choose and before != len(lines):
            self.fit_height()

    def _span_headings(self) -> None:
        """A line that is a heading for those below it runs over all columns."""
        self.clearSpans()
        for row, line in enumerate(self.lines.lines):
            if _is_heading(line):
                self.setSpan(row, 0, 1, self.lines.columnCount())

    def _fit_columns(self) -> None:
        """Make each column as wide as its texts; measuring these few is quicker than asking the view."""
        plain, small = QFontMetricsF(theme.heading_font(3)), QFontMetricsF(theme.small_font())
        for column in range(self.lines.columnCount()):
            if column == self._words_in:
                continue
            texts = {line.texts[column] for line in self.lines.lines if not _is_heading(line)}
            heading = str(self.lines.headerData(column, Qt.Orientation.Horizontal))
            widest = max([small.horizontalAdvance(heading), *(plain.horizontalAdvance(text) for text in texts)])
            width = round(widest + 4 * _PAD)
            if self.columnWidth(column) != width:
                self.setColumnWidth(column, width)

    def fit_height(self) -> None:
        """As high as the lines."""
        rows = self.lines.rowCount() * self.verticalHeader().defaultSectionSize()
        self.setFixedHeight(self.horizontalHeader().sizeHint().height() + rows + 2)

    def dress(self) -> None:
        """Take fonts and colours anew."""
        self.lines.set_dark(dark=theme.is_dark(self.palette()))
        self._fit_columns()
        self.verticalHeader().setDefaultSectionSize(theme.spacing(3.25))
        if not self._choose:
            self.fit_height()
        self.viewport().update()

    # Qt's own names from here on.

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size and light or dark."""
        super().changeEvent(event)
        if hasattr(self, "lines") and (theme.font_changed(event) or theme.palette_changed(event)):
            self.dress()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Left and right have nothing to do where a whole line is picked; the page may scroll."""
        if self._choose and event.key() in (Qt.Key.Key_Left, Qt.Key.Key_Right):
            event.ignore()
            return
        super().keyPressEvent(event)

    def minimumSizeHint(self) -> QSize:
        """A few lines."""
        return QSize(theme.spacing(20), theme.spacing(8))


def _is_heading(line: Line) -> bool:
    """Whether a line says something in its first column alone, in strong letters."""
    return line.strong and len(line.texts) > 1 and not any(line.texts[1:])
