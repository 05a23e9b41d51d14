"""The printed test square: how large it came out, and what follows for printed figures."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from sizekeeper.core.notation import parse_length
from sizekeeper.core.piece import PrintedSquare
from sizekeeper.core.print_scale import print_scale
from sizekeeper.ui import theme
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.piece_length_field import LengthField

if TYPE_CHECKING:
    from fractions import Fraction

    from sizekeeper.core.length import Length
    from sizekeeper.ui.pieces_desk import PiecesDesk

USUAL = {"cm": "10 cm", "in": "4 in"}
"""The usual side of a test square (common practice, no source); shown, and changed where another is printed."""


class SquarePart(QWidget):
    """Two figures and what they come to."""

    def __init__(self, desk: PiecesDesk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._of = ""
        self._nominal: Length | None = None
        self.measured = LengthField("Test square as measured", self, zero=False)
        self.nominal = LengthField("Test square as it should be", self, zero=False)
        self.says = Lettering("", "muted", self)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(theme.spacing(1))
        column.addWidget(Lettering("Printed test square", "small heading", self))
        line = QHBoxLayout()
        line.setSpacing(theme.spacing(1))
        for words, field in (("It measures", self.measured), ("and should be", self.nominal)):
            label = Lettering(words, "plain", self)
            label.setWordWrap(False)
            line.addWidget(label)
            line.addWidget(field)
            field.setFixedWidth(theme.spacing(12))
        line.addStretch(1)
        column.addLayout(line)
        column.addWidget(self.says)
        self._connect()

    def _connect(self) -> None:
        self.measured.length_typed.connect(self._on_typed)
        self.measured.length_entered.connect(self._on_measured)
        self.nominal.length_entered.connect(self._on_nominal)
        for field in (self.measured, self.nominal):
            field.restored.connect(self._desk.drop_draft)
            field.problem_changed.connect(self._say)

    @property
    def _usual(self) -> Length:
        return parse_length(USUAL[self._desk.notation.unit])

    def refresh(self) -> None:
        """Show the square of the pattern in hand."""
        committed, unit = self._desk.committed, self._desk.notation.unit
        square = committed.square
        if committed.pattern != self._of:
            self._of, self._nominal = committed.pattern, None
            self.measured.turn_to(committed.pattern)
            self.nominal.turn_to(committed.pattern)
        self.measured.show_length(square.measured if square else None, unit)
        self.nominal.show_length(square.nominal if square else self._nominal or self._usual, unit)
        for field in (self.measured, self.nominal):
            field.setReadOnly(not self._desk.writable)
        self._say()

    def _say(self) -> None:
        if problem := self.measured.problem or self.nominal.problem:
            self.says.speak(problem, "warning")
            return
        square = self._desk.pieces.square
        if square is None:
            self.says.speak(
                "Printed at home? Measure the test square: a millimetre off there is a centimetre at the hip.", "muted"
            )
            return
        scale = print_scale(square)
        self.says.speak(scale_words(scale.factor, off=scale.off), "warning" if scale.off else "muted")

    def finish(self) -> None:
        """Make the edit of what is being typed."""
        self.measured.finish()
        self.nominal.finish()

    def _with(self, measured: Length | None) -> PrintedSquare | None:
        square = self._desk.committed.square
        if measured is None:
            return None
        usual = parse_length(USUAL["in" if measured.unit in ("in", "ft", "yd") else "cm"])
        return PrintedSquare(measured, square.nominal if square is not None else self._nominal or usual)

    def _on_typed(self, measured: Length | None) -> None:
        committed = self._desk.committed
        if self._desk.session.committed(committed.id) is not None:
            self._desk.session.draft(replace(committed, square=self._with(measured)))

    def _on_measured(self, measured: Length | None) -> None:
        committed = self._desk.committed
        self._desk.apply("Change test square", replace(committed, square=self._with(measured)), "square")

    def _on_nominal(self, nominal: Length | None) -> None:
        committed = self._desk.committed
        self._nominal = nominal or self._usual
        if committed.square is not None:
            square = PrintedSquare(committed.square.measured, self._nominal)
            self._desk.apply("Change test square", replace(committed, square=square), "square")
        self.refresh()


def scale_words(factor: Fraction, *, off: bool) -> str:
    """What a factor of print means, and what it is applied to."""
    if factor == 1:
        return "True to size: printed figures hold as they are."
    percent = f"{abs(float(factor) - 1) * 100:.1f}".removesuffix(".0")
    way = "larger" if factor > 1 else "smaller"
    said = (
        f"It came out {percent} % {way}: printed figures are multiplied by {float(factor):.4g}. "
        "What you measure on the paper has it in it already."
    )
    return f"{said} More than 1 % off: better print it again at full size." if off else said
