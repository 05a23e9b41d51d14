"""The rows of a piece's figures: one for each length along the grain, one for each width at a level."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtWidgets import QCheckBox

from sizekeeper.core.flat import net_width
from sizekeeper.core.lengths import net_length
from sizekeeper.core.notation import show
from sizekeeper.core.piece import Across, Along
from sizekeeper.core.piece_words import CHAIN_NAMES, LEVEL_NAMES
from sizekeeper.core.print_scale import print_scale
from sizekeeper.errors import PlanError
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.person_fields import CalmCombo
from sizekeeper.ui.piece_edit import usual_allowances, with_across, with_along
from sizekeeper.ui.piece_length_field import LengthField

if TYPE_CHECKING:
    from collections.abc import Sequence
    from fractions import Fraction

    from PySide6.QtWidgets import QGridLayout, QWidget

    from sizekeeper.core.length import Length
    from sizekeeper.core.piece import Chain, Level, Piece
    from sizekeeper.ui.pieces_desk import PiecesDesk

ALLOWANCES = ("none", "1", "2")


class FigureRow(QObject):
    """What both kinds of rows have: a figure, what it includes, and what is left without that.

    Signals:
        said(): what is wrong with the row is another thing now.
    """

    said = Signal()

    def __init__(self, name: str, figure: str, desk: PiecesDesk, sheet: QWidget) -> None:
        """Make the fields; `figure` names the first, the others are about it."""
        super().__init__(sheet)
        self._desk = desk
        self._sheet = sheet
        self._refused = ""
        self.name = Lettering(name, "plain", sheet)
        self.name.setWordWrap(False)
        self.figure = LengthField(figure, sheet, zero=False)
        self.allowances = CalmCombo(f"Seam allowances in the {figure[0].lower()}{figure[1:]}", sheet)
        self.allowances.addItems(ALLOWANCES)
        self.net = Lettering("", "plain", sheet)
        self.net.setWordWrap(False)
        self.net.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        self.lengths: dict[str, LengthField] = {}
        self.figure.length_typed.connect(self._on_typed)
        self.figure.length_entered.connect(self._on_entered)
        self.figure.restored.connect(desk.drop_draft)
        self.figure.problem_changed.connect(self.said)
        self.allowances.activated.connect(self._on_allowances)

    def _length(self, key: str, name: str) -> LengthField:
        """A further length of the row."""
        field = LengthField(name, self._sheet)
        self.lengths[key] = field
        field.length_typed.connect(self._on_typed)
        field.length_entered.connect(self._on_entered)
        field.restored.connect(self._desk.drop_draft)
        field.problem_changed.connect(self.said)
        return field

    @property
    def widgets(self) -> list[QWidget]:
        """All widgets of the row, from left to right."""
        raise NotImplementedError

    @property
    def problem(self) -> str:
        """What is wrong with the row, empty when nothing is."""
        fields = (self.figure, *self.lengths.values())
        return next((field.problem for field in fields if field.problem), self._refused)

    def place(self, grid: QGridLayout, row: int) -> None:
        """Lay the widgets into a row of a grid."""
        for column, widget in enumerate(self.widgets):
            grid.addWidget(widget, row, column)

    def set_shown(self, *, shown: bool) -> None:
        """Show the row or hide it; the texts of a hidden one are let go."""
        for widget in self.widgets:
            widget.setVisible(shown)
        if not shown:
            self._refused = ""
            for field in (self.figure, *self.lengths.values()):
                field.forget()

    def turn_to(self, piece: str) -> None:
        """The row is for another piece now."""
        for field in (self.figure, *self.lengths.values()):
            field.turn_to(piece)

    def finish(self) -> None:
        """Make the edit of what is being typed."""
        for field in (self.figure, *self.lengths.values()):
            field.finish()

    def _key(self, field: QObject) -> str:
        return next((key for key, one in self.lengths.items() if one is field), "figure")

    def _on_typed(self, length: Length | None) -> None:
        piece = self._desk.piece
        key = self._key(self.sender())
        if key == "figure":
            self._set_writable(filled=length is not None)
        if piece is not None:
            self._desk.draft_piece(self._changed(piece, key, length))

    def _on_entered(self, length: Length | None) -> None:
        key = self._key(self.sender())
        self._edit(key, length)

    def _on_allowances(self, count: int) -> None:
        self._edit("allowances", count)

    def _edit(self, key: str, value: object) -> None:
        piece = self._desk.piece
        if piece is None:
            return
        after = self._changed(piece, key, value)
        self._desk.apply_piece(f"{self._what()} of {piece.name}", after, self._field(key))

    def _show_net(self, cm: Fraction | None, error: str = "") -> None:
        self._refused = error
        self.net.setText(show(cm, self._desk.notation) if cm is not None else "–" if error else "")
        self.said.emit()

    def _set_writable(self, *, filled: bool) -> None:
        """What a figure includes can be said once there is one."""
        writable = self._desk.writable
        self.figure.setReadOnly(not writable)
        for field in self.lengths.values():
            field.setEnabled(filled)
            field.setReadOnly(not writable)
        self.allowances.setEnabled(filled and writable)

    def _changed(self, piece: Piece, key: str, value: Any) -> Piece:  # noqa: ANN401 - a field's value
        raise NotImplementedError

    def _what(self) -> str:
        raise NotImplementedError

    def _field(self, key: str) -> str:
        raise NotImplementedError


class AlongRow(FigureRow):
    """A length along the grain in one chain."""

    def __init__(self, chain: Chain, desk: PiecesDesk, sheet: QWidget) -> None:
        """Make the row, hidden until it is wanted."""
        self.chain: Chain = chain
        name = f"{CHAIN_NAMES[chain][0].upper()}{CHAIN_NAMES[chain][1:]}"
        super().__init__(name, f"{name} length", desk, sheet)
        self.hem = self._length("hem", f"Hem in the {CHAIN_NAMES[chain]} length")
        self.taken = self._length("taken", f"Tucks in the {CHAIN_NAMES[chain]} length")
        self.source = CalmCombo(f"Where the {CHAIN_NAMES[chain]} length comes from", sheet)
        self.source.addItems(("measured", "printed"))
        self.source.setToolTip("Measured on the paper, or listed in the pattern’s text: only that is scaled")
        self.source.activated.connect(self._on_source)

    @property
    def widgets(self) -> list[QWidget]:
        """All widgets of the row, from left to right."""
        return [self.name, self.figure, self.allowances, self.hem, self.taken, self.source, self.net]

    def refresh(self, piece: Piece, drafted: Piece) -> None:
        """Show the length of a piece; what is left of it with what is being typed."""
        along = piece.length(self.chain)
        unit = self._desk.notation.unit
        self.figure.show_length(along.length if along else None, unit)
        self.hem.show_length(along.hem if along else None, unit)
        self.taken.show_length(along.taken if along else None, unit)
        self.source.setCurrentIndex(1 if along is not None and along.printed else 0)
        self.refresh_net(drafted)

    def refresh_net(self, drafted: Piece) -> None:
        """Show what is left of the length."""
        along = drafted.length(self.chain)
        self.allowances.setCurrentIndex(min(along.allowances, 2) if along else 0)
        self._set_writable(filled=along is not None)
        self.source.setEnabled(along is not None and self._desk.writable)
        if along is None:
            self._show_net(None)
            return
        try:
            scale = print_scale(self._desk.pieces.square).factor
            self._show_net(net_length(along, self._desk.allowance(drafted), scale, drafted.name))
        except PlanError as error:
            self._show_net(None, str(error))

    def _on_source(self, index: int) -> None:
        self._edit("printed", index == 1)

    def _changed(self, piece: Piece, key: str, value: Any) -> Piece:  # noqa: ANN401 - a field's value
        before = piece.length(self.chain)
        if key == "figure" and value is None:
            return with_along(piece, self.chain, None)
        if before is None:
            pattern = self._desk.pattern
            count = usual_allowances(piece, pattern, along=True) if pattern is not None else 0
            return with_along(piece, self.chain, Along(self.chain, value, count)) if key == "figure" else piece
        changed = {"length" if key == "figure" else key: value}
        return with_along(piece, self.chain, replace(before, **changed))

    def _what(self) -> str:
        return f"Change {CHAIN_NAMES[self.chain]} length"

    def _field(self, key: str) -> str:
        return f"along:{self.chain}:{key}"


class AcrossRow(FigureRow):
    """A width at one level."""

    def __init__(self, level: Level, desk: PiecesDesk, sheet: QWidget) -> None:
        """Make the row, hidden until it is wanted."""
        self.level: Level = level
        said = LEVEL_NAMES[level]
        name = f"{said[0].upper()}{said[1:]}"
        super().__init__(name, f"{name} width", desk, sheet)
        for key, words in (("darts", "Darts"), ("pleats", "Pleats"), ("overlap", "Overlap")):
            self._length(key, f"{words} at the {said}")
        self.gathered = QCheckBox(sheet)
        self.gathered.setAccessibleName(f"Gathered at the {said}")
        self.gathered.setToolTip("This edge is gathered or eased onto a shorter one")
        self.gathered.clicked.connect(self._on_gathered)

    @property
    def widgets(self) -> list[QWidget]:
        """All widgets of the row, from left to right."""
        return [self.name, self.figure, self.allowances, *self.lengths.values(), self.gathered, self.net]

    def refresh(self, piece: Piece, drafted: Piece) -> None:
        """Show the width of a piece; what is left of it with what is being typed."""
        across = piece.width(self.level)
        unit = self._desk.notation.unit
        self.figure.show_length(across.width if across else None, unit)
        for key, field in self.lengths.items():
            field.show_length(getattr(across, key) if across else None, unit)
        self.gathered.setChecked(across is not None and across.gathered)
        self.refresh_net(drafted)

    def refresh_net(self, drafted: Piece) -> None:
        """Show what is left of the width."""
        across = drafted.width(self.level)
        self.allowances.setCurrentIndex(min(across.allowances, 2) if across else 0)
        self._set_writable(filled=across is not None)
        self.gathered.setEnabled(across is not None and self._desk.writable)
        if across is None:
            self._show_net(None)
            return
        try:
            self._show_net(net_width(across, self._desk.allowance(drafted), drafted.name))
        except PlanError as error:
            self._show_net(None, str(error))

    def _on_gathered(self) -> None:
        self._edit("gathered", self.gathered.isChecked())

    def _changed(self, piece: Piece, key: str, value: Any) -> Piece:  # noqa: ANN401 - a field's value
        before = piece.width(self.level)
        if key == "figure" and value is None:
            return with_across(piece, self.level, None)
        if before is None:
            pattern = self._desk.pattern
            count = usual_allowances(piece, pattern, along=False) if pattern is not None else 0
            return with_across(piece, self.level, Across(self.level, value, count)) if key == "figure" else piece
        changed = {"width" if key == "figure" else key: value}
        return with_across(piece, self.level, replace(before, **changed))

    def _what(self) -> str:
        return f"Change {LEVEL_NAMES[self.level]} width"

    def _field(self, key: str) -> str:
        return f"across:{self.level}:{key}"


def first_problem(rows: Sequence[FigureRow]) -> str:
    """What is wrong with the first row that has something wrong."""
    return next((row.problem for row in rows if row.problem), "")
