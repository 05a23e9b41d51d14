"""The regions' side of the ease table: one row under the other, and the heading over the body figures."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from sizekeeper.core.measure import REGION_ORDER
from sizekeeper.ui import theme
from sizekeeper.ui.ease_row import RegionRow, RegionText, field_width
from sizekeeper.ui.ease_type import EaseType

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sizekeeper.ui.fit_field import FigureField


class RegionColumn(QWidget):
    """All regions, one under the other, beside the table's rows.

    Signals:
        typed(str, str): a keystroke in the field of a measure.
        entered(str, str): a figure was entered for a measure.
        restored(str): the typing for a measure was taken back.
        picked(str): how a region should fit is wanted.
    """

    typed = Signal(str, str)
    entered = Signal(str, str)
    restored = Signal(str)
    picked = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        """Start without rows."""
        super().__init__(parent)
        self._type = EaseType.now()
        self._rows: list[RegionRow] = []
        self._shown = 0
        self._heading = ""
        self._narrow = False
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        for _ in REGION_ORDER:  # all at once, so that Tab goes from field to field and then on to the table
            self._add_row()

    @property
    def rows(self) -> Sequence[RegionRow]:
        """The rows shown, from the top."""
        return self._rows[: self._shown]

    def field(self, measure: str) -> FigureField | None:
        """The field of a measure, None where it has no row."""
        return next((row.field for row in self.rows if row.measure == measure), None)

    def show_regions(self, texts: Sequence[RegionText], heading: str) -> None:
        """Show regions, keeping rows, and what is being typed in them, as they are."""
        for row, text in zip(self._rows, texts, strict=False):
            row.show_text(text)
        if len(texts) != self._shown or heading != self._heading:
            self._shown, self._heading = len(texts), heading
            self._place()
        for index, row in enumerate(self._rows):
            row.setVisible(index < self._shown)

    def _add_row(self) -> None:
        row = RegionRow(self)
        row.dress(self._type)
        row.picked.connect(self.picked)
        row.field.typed.connect(self._on_typed)
        row.field.entered.connect(self._on_entered)
        row.field.restored.connect(self._on_restored)
        row.field.step_wanted.connect(self._on_step)
        row.hide()
        self._rows.append(row)

    def _row_of(self, sender: object) -> RegionRow:
        return next(row for row in self._rows if row.field is sender)

    def _on_typed(self, text: str) -> None:
        self.typed.emit(self._row_of(self.sender()).measure, text)

    def _on_entered(self, text: str) -> None:
        self.entered.emit(self._row_of(self.sender()).measure, text)

    def _on_restored(self) -> None:
        self.restored.emit(self._row_of(self.sender()).measure)

    def _on_step(self, way: int) -> None:
        index = self._rows.index(self._row_of(self.sender())) + way
        if 0 <= index < self._shown:
            self._rows[index].field.setFocus(Qt.FocusReason.TabFocusReason)

    def dress(self) -> None:
        """Take fonts anew."""
        self._type = EaseType.now()
        for row in self._rows:
            row.dress(self._type)
        self._place()
        self.update()

    def _place(self) -> None:
        kind = self._type
        self.setFixedSize(self._width(narrow=self._narrow), kind.header_height + kind.row_height * self._shown)
        for index, row in enumerate(self._rows):
            row.setGeometry(0, kind.header_height + index * kind.row_height, self.width(), kind.row_height)

    def set_narrow(self, *, narrow: bool) -> None:
        """Let names and notes make room for sizes, or give them theirs."""
        if narrow != self._narrow:
            self._narrow = narrow
            self._place()

    @property
    def roomy_width(self) -> int:
        """How wide the column is when it need not make room."""
        return self._width(narrow=False)

    def _width(self, *, narrow: bool) -> int:
        """Room for a name, a note and the field."""
        words = "hangs free, once" if narrow else "choose size by · asks −00.0 cm"
        label = QFontMetricsF(self._type.small).horizontalAdvance(words)
        return round(label + field_width() + theme.spacing(2))

    # Qt's own names from here on.

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size and light or dark."""
        super().changeEvent(event)
        if hasattr(self, "_rows") and (theme.font_changed(event) or theme.palette_changed(event)):
            self.dress()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the heading over the figures."""
        painter = QPainter(self)
        painter.setFont(self._type.small)
        painter.setPen(theme.muted_text(self.palette()))
        area = QRectF(0, 0, self.width() - theme.spacing(), self._type.header_height - self._type.pad)
        painter.drawText(area, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignBottom, self._heading)

    def sizeHint(self) -> QSize:
        """As set."""
        return self.size()
