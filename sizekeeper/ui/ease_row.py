"""One region beside the ease table: its name, how it counts, and the body figure to type in."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, QRect, QRectF, Qt, Signal
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent, QPalette
from PySide6.QtWidgets import QWidget

from sizekeeper.ui import theme
from sizekeeper.ui.ease_type import EaseType
from sizekeeper.ui.fit_field import FigureField

if TYPE_CHECKING:
    from PySide6.QtGui import QMouseEvent, QResizeEvent


@dataclass(frozen=True, slots=True)
class RegionText:
    """What stands beside one row: the region, a note, the figure as typed, and whether it leads or is in doubt.

    `converted` is the figure in the unit shown, where it was typed in another. `locked` says why the figure cannot be
    typed here, empty when it can. `muted` rows do not count.
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
