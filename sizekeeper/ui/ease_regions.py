"""The regions' side of the ease table: names, how each counts, and the body figure to type in."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QPointF, QRect, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent, QPalette
from PySide6.QtWidgets import QSizePolicy, QWidget

from sizekeeper.ui import theme
from sizekeeper.ui.ease_type import EaseType
from sizekeeper.ui.fit_field import FigureField

if TYPE_CHECKING:
    from collections.abc import Sequence

    from PySide6.QtGui import QMouseEvent, QResizeEvent


_ROOMY = 7
"""How many fields wide the board must be to have room for long names beside the sizes."""


@dataclass(frozen=True, slots=True)
class RegionText:
    """What stands beside one row: the region, a note, the figure as typed, and whether it leads or is in doubt.

    `converted` is the figure in the unit shown, where it was typed in another. `locked` says why the figure cannot be typed here, empty when it can. `muted` rows do not count.
    """

    measure: str
    name: str
    note: str
    figure: str
    converted: str = ""
    leads: bool = False
    muted: bool = False
    doubtful: bool = False
    locked: str = ""
    tip: str = ""


class RegionRow(QWidget):
    """One region: its name, its note, and the field with the body figure.

    Signals:
        picked(str): the name was clicked: how this region should fit is wanted.
    """

    picked = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        """An empty row."""
        super().__init__(parent)
        self._text = RegionText("", "", "", "")
        self._type = EaseType.now()
        self.field = FigureField("", self)
        self.field.setAlignment(Qt.AlignmentFlag.AlignRight)
        self.setMouseTracking(True)

    @property
    def measure(self) -> str:
        """The region of this row."""
        return self._text.measure

    def show_text(self, text: RegionText) -> None:
        """Show a region, touching only what is different."""
        if text.measure != self._text.measure:
            self.field.setModified(False)
            self.field.setAccessibleName(f"{text.name}, body figure")
        self.field.set_figure(text.figure)
        self.field.setReadOnly(bool(text.locked))
        if text != self._text:
            self._text = text
            self.field.setToolTip(text.locked or text.tip)
            self.setToolTip(f"{text.name}: {text.note}")
            self.setAccessibleName(f"{text.name}, {text.note}")
            self._place()
            self.update()

    def dress(self, kind: EaseType) -> None:
        """Take fonts anew."""
        self._type = kind
        self._place()
        self.update()

    def _place(self) -> None:
        width, height = field_width(), self.field.sizeHint().height()
        free = self.height() - height - (self._type.small_height if self._text.converted else 0)
        self.field.setGeometry(self.width() - width - theme.spacing(), round(free / 2), width, height)

    def _label_rect(self) -> QRect:
        return QRect(0, 0, self.field.x() - theme.spacing(0.5), self.height())

    def _paint_label(self, painter: QPainter, palette: QPalette) -> None:
        kind, rect = self._type, self._label_rect()
        name, note = QFontMetricsF(kind.heading), QFontMetricsF(kind.small)
        text_colour = palette.color(QPalette.ColorRole.WindowText)
        top = (rect.height() - name.height() - note.height()) / 2
        painter.setFont(kind.heading)
        painter.setPen(theme.muted_text(palette) if self._text.muted else text_colour)
        if self._text.leads:
            painter.setPen(theme.accent(palette))
        shown = name.elidedText(self._text.name, Qt.TextElideMode.ElideRight, rect.width())
        painter.drawText(QPointF(rect.left(), top + name.ascent()), shown)
        painter.setFont(kind.small)
        painter.setPen(theme.warning_text(palette) if self._text.doubtful else theme.muted_text(palette))
        shown = note.elidedText(self._text.note, Qt.TextElideMode.ElideRight, rect.width())
        painter.drawText(QPointF(rect.left(), top + name.height() + note.ascent()), shown)
        field = self.field.geometry()
        painter.setPen(theme.muted_text(palette))
        below = QRectF(field.left(), field.bottom() + 1, field.width(), kind.small_height)
        painter.drawText(below, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter, self._text.converted)

    # Qt's own names from here on.

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint name, note and a thin rule beneath."""
        painter = QPainter(self)
        painter.setPen(theme.rule_colour(self.palette()))
        painter.drawLine(0, self.height() - 1, self.width(), self.height() - 1)
        self._paint_label(painter, self.palette())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the field at the right."""
        super().resizeEvent(event)
        self._place()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Show that the name can be clicked."""
        over = self._label_rect().contains(event.position().toPoint())
        self.setCursor(Qt.CursorShape.PointingHandCursor if over else Qt.CursorShape.ArrowCursor)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """A click on the name asks how this region should fit."""
        if self._label_rect().contains(event.position().toPoint()):
            self.picked.emit(self.measure)


def field_width() -> int:
    """How wide a field for a figure is: room for `37 15/16 in`."""
    return round(QFontMetricsF(theme.scaled_font(1)).horizontalAdvance("00 00/00 in") + theme.spacing(2))


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

    @property
    def rows(self) -> Sequence[RegionRow]:
        """The rows shown, from the top."""
        return self._rows[: self._shown]

    def field(self, measure: str) -> FigureField | None:
        """The field of a measure, None where it has no row."""
        return next((row.field for row in self.rows if row.measure == measure), None)

    def show_regions(self, texts: Sequence[RegionText], heading: str) -> None:
        """Show regions, keeping rows, and what is being typed in them, as they are."""
        while len(self._rows) < len(texts):
            self._add_row()
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
        self.setFixedSize(self._width(), kind.header_height + kind.row_height * self._shown)
        for index, row in enumerate(self._rows):
            row.setGeometry(0, kind.header_height + index * kind.row_height, self.width(), kind.row_height)

    def set_room(self, pixels: int) -> None:
        """How wide the board is: in a narrow one names and notes make room for sizes."""
        narrow = pixels < _ROOMY * field_width()
        if narrow != self._narrow:
            self._narrow = narrow
            self._place()

    def _width(self) -> int:
        """Room for a name, a short note and the field."""
        words = "Across back" if self._narrow else "gathers or elastic"
        air = 0.3 if self._narrow else 0.5
        return round(QFontMetricsF(self._type.heading).horizontalAdvance(words) + field_width() * (1 + air))

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
