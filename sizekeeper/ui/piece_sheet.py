"""The figures measured on one piece: lengths along the grain, and widths at the levels it crosses."""

from __future__ import annotations

from typing import TYPE_CHECKING, Generic, TypeVar

from PySide6.QtCore import QEvent, Qt
from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from sizekeeper.core.piece import CHAINS, LEVEL_ORDER
from sizekeeper.ui import theme
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.piece_edit import chains_shown
from sizekeeper.ui.piece_rows import AcrossRow, AlongRow, FigureRow, first_problem

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sizekeeper.core.piece import Piece
    from sizekeeper.ui.pieces_desk import PiecesDesk

ALONG_HEADINGS = ("Along the grain", "On the paper", "Allowances", "Hem in it", "Tucks", "Figure is", "Net")
ACROSS_HEADINGS = ("Width at", "On the paper", "Allowances", "Darts", "Pleats", "Overlap", "Gathered", "Net")
_NAME, _FIGURE, _NET = 12, 8.5, 8
"""Steps of spacing: the width of names, of fields, and of what is left."""
_INCLUDES = "How many seam allowances the figure includes; they are taken off, with all else at its right"

Row = TypeVar("Row", bound=FigureRow)


class FigureSheet(QWidget, Generic[Row]):
    """A table of figure rows under its headings, with what is wrong below it."""

    def __init__(self, headings: Sequence[str], rows: Sequence[Row], parent: QWidget | None = None) -> None:
        """Lay out rows that lie on no sheet yet."""
        super().__init__(parent)
        self.rows = tuple(rows)
        self.grid = QGridLayout()
        self.headings = [Lettering(text, "note", self) for text in headings]
        for column, heading in enumerate(self.headings):
            heading.setWordWrap(False)
            if heading.text() == "Allowances":
                heading.setToolTip(_INCLUDES)
            self.grid.addWidget(heading, 0, column)
        for number, row in enumerate(self.rows):
            for widget in row.widgets:
                widget.setParent(self)
            row.place(self.grid, number + 1)
            row.said.connect(self._say)
            for field in (row.figure, *row.lengths.values()):
                field.stepped.connect(self._on_stepped)
        self.grid.setColumnStretch(len(headings), 1)
        self.problem = Lettering("", "warning", self)
        self.problem.hide()
        column_ = QVBoxLayout(self)
        column_.setContentsMargins(0, 0, 0, 0)
        column_.addLayout(self.grid)
        column_.addWidget(self.problem)
        self._space()

    def _space(self) -> None:
        self.grid.setHorizontalSpacing(theme.spacing(1))
        self.grid.setVerticalSpacing(theme.spacing(0.5))
        self.grid.setColumnMinimumWidth(0, theme.spacing(_NAME))
        last = len(self.headings) - 1
        self.grid.setColumnMinimumWidth(last, theme.spacing(_NET))
        self.headings[last].setAlignment(Qt.AlignmentFlag.AlignRight)
        for row in self.rows:
            for field in (row.figure, *row.lengths.values()):
                field.setFixedWidth(theme.spacing(_FIGURE))

    def _on_stepped(self, step: int) -> None:
        """Enter and the arrows go up and down a column of the rows that are shown."""
        shown = [row for row in self.rows if row.figure.isVisible()]
        at = next(i for i, row in enumerate(shown) if self.sender() in (row.figure, *row.lengths.values()))
        if 0 <= at + step < len(shown):
            key = next((key for key, field in shown[at].lengths.items() if field is self.sender()), "")
            beside = shown[at + step].lengths.get(key)
            target = beside if beside is not None and beside.isEnabled() else shown[at + step].figure
            target.setFocus(Qt.FocusReason.TabFocusReason)

    def _say(self) -> None:
        said = first_problem(self.rows)
        if said != self.problem.text():
            self.problem.setText(said)
        self.problem.setVisible(bool(said))

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if theme.font_changed(event) and hasattr(self, "problem"):
            self._space()


class PieceSheet(QWidget):
    """Both tables of the piece in hand."""

    def __init__(self, desk: PiecesDesk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._piece = ""
        self.along = FigureSheet(ALONG_HEADINGS, [AlongRow(chain, desk, self) for chain in CHAINS], self)
        self.across = FigureSheet(ACROSS_HEADINGS, [AcrossRow(level, desk, self) for level in LEVEL_ORDER], self)
        self.no_level = Lettering(
            "Tick the heights it crosses above; each gets a row for its width here.", "muted", self
        )
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(theme.spacing(1.5))
        for part in (self.along, self.across, self.no_level):
            column.addWidget(part)

    @property
    def all_rows(self) -> tuple[FigureRow, ...]:
        """Every row, shown or not."""
        return (*self.along.rows, *self.across.rows)

    def row(self, where: str, *, along: bool) -> FigureRow:
        """The row of a chain or of a level."""
        if along:
            return next(row for row in self.along.rows if row.chain == where)
        return next(row for row in self.across.rows if row.level == where)

    def refresh(self, piece: Piece, drafted: Piece) -> None:
        """Show the figures of a piece."""
        if piece.id != self._piece:
            self._piece = piece.id
            for row in self.all_rows:
                row.turn_to(piece.id)
        chains = chains_shown(piece)
        for along in self.along.rows:
            along.set_shown(shown=along.chain in chains)
            along.refresh(piece, drafted)
        for across in self.across.rows:
            across.set_shown(shown=across.level in piece.levels or piece.width(across.level) is not None)
            across.refresh(piece, drafted)
        self.along.setVisible(bool(chains))
        self.across.setVisible(bool(piece.levels or piece.across))
        self.no_level.setVisible(not (piece.levels or piece.across))

    def refresh_nets(self, drafted: Piece) -> None:
        """Show what is left of each figure while one is being typed."""
        for along in self.along.rows:
            along.refresh_net(drafted)
        for across in self.across.rows:
            across.refresh_net(drafted)

    def start(self) -> None:
        """Put the cursor into the first figure that is not typed yet, else into the first."""
        shown = [row for row in self.all_rows if row.figure.isVisible()]
        empty = [row for row in shown if not row.figure.text()]
        for row in (empty or shown)[:1]:
            row.figure.setFocus(Qt.FocusReason.TabFocusReason)

    def finish(self) -> None:
        """Make the edit of what is being typed."""
        for row in self.all_rows:
            row.finish()
