"""How cells and headings of the ease table are painted."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QModelIndex, QObject, QPersistentModelIndex, QRect, QRectF, QSize, Qt
from PySide6.QtGui import QBrush, QColor, QPainter, QPalette, QPen
from PySide6.QtWidgets import QHeaderView, QStyle, QStyledItemDelegate, QStyleOptionViewItem, QWidget

from sizekeeper.ui import bands, theme
from sizekeeper.ui.ease_model import BETWEEN, CELL, CHOSEN, CellText
from sizekeeper.ui.ease_type import EaseType

if TYPE_CHECKING:
    from sizekeeper.core.preference import Band

_FRAME = 3.0
"""The width of the line round what is chosen, in pixels at normal scale."""
_CENTRE = Qt.AlignmentFlag.AlignHCenter | Qt.AlignmentFlag.AlignVCenter


class EaseDelegate(QStyledItemDelegate):
    """Paints a cell: its band's cloth, the ease large, the printed figure and the band's word small."""

    def __init__(self, parent: QObject | None = None) -> None:
        """Take the colours of the palette when `dress` is called."""
        super().__init__(parent)
        self.dress(QPalette(), EaseType.now())

    def dress(self, palette: QPalette, kind: EaseType) -> None:
        """Take colours and fonts anew: text size or light and dark changed."""
        self._type = kind
        self._dark = theme.is_dark(palette)
        self._ground = theme.surface(palette)
        self._text = palette.color(QPalette.ColorRole.WindowText)
        self._frame = QPen(theme.accent(palette), _FRAME)
        self._rule = QPen(theme.rule_colour(palette), 1)
        self._ink = {band.band: QColor(band.text) for band in bands.looks(dark=self._dark)}
        self._brushes: dict[tuple[Band, float], QBrush] = {}

    def _cloth(self, band: Band, ratio: float) -> QBrush:
        key = (band, ratio)
        if key not in self._brushes:
            self._brushes[key] = bands.cloth(band, dark=self._dark, ratio=ratio)
        return self._brushes[key]

    def _paint_ground(self, painter: QPainter, rect: QRect, text: CellText) -> QColor:
        """Lay the cloth; gives the colour of text on it."""
        if text.band is None:
            painter.fillRect(rect, self._ground)
            painter.setPen(self._rule)
            painter.drawLine(rect.bottomLeft(), rect.bottomRight())
            return self._text
        painter.setBrushOrigin(rect.topLeft())
        painter.fillRect(rect, self._cloth(text.band, painter.device().devicePixelRatio()))
        return self._ink[text.band]

    def _paint_text(self, painter: QPainter, rect: QRect, text: CellText) -> None:
        kind = self._type
        top = float(rect.top() + kind.pad)
        painter.setFont(kind.chosen if text.chosen else kind.large)
        painter.drawText(QRectF(rect.left(), top, rect.width(), kind.large_height), _CENTRE, text.amount)
        painter.setFont(kind.small)
        top += kind.large_height
        for line in (text.printed, text.word):
            painter.drawText(QRectF(rect.left(), top, rect.width(), kind.small_height), _CENTRE, line)
            top += kind.small_height

    def _paint_frame(self, painter: QPainter, rect: QRect, index: QModelIndex | QPersistentModelIndex) -> None:
        """The line round what is chosen; it runs on through chosen cells above and below."""
        painter.setPen(self._frame)
        half = _FRAME / 2
        box = QRectF(rect).adjusted(half, half, -half, -half)
        painter.drawLine(box.topLeft(), box.bottomLeft())
        painter.drawLine(box.topRight(), box.bottomRight())
        if not _is_chosen(index, index.row() - 1) and not self._under_heading(index):
            painter.drawLine(box.topLeft(), box.topRight())
        if not _is_chosen(index, index.row() + 1):
            painter.drawLine(box.bottomLeft(), box.bottomRight())

    @staticmethod
    def _under_heading(index: QModelIndex | QPersistentModelIndex) -> bool:
        """Whether the cell hangs from a heading that is chosen too."""
        chosen = index.model().headerData(index.column(), Qt.Orientation.Horizontal, CHOSEN)
        return index.row() == 0 and bool(chosen)

    # Qt's own names from here on.

    def paint(
        self, painter: QPainter, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex
    ) -> None:
        """Paint one cell."""
        text = index.data(CELL)
        if not isinstance(text, CellText):
            return
        painter.save()
        rect = option.rect
        inner = rect.adjusted(1, 0, -1, -1)
        painter.setPen(self._paint_ground(painter, inner, text))
        ink = painter.pen()
        if text.band is None:
            painter.setPen(self._text)
        self._paint_text(painter, inner, text)
        if text.chosen:
            self._paint_frame(painter, rect, index)
        if option.state & QStyle.StateFlag.State_HasFocus:
            painter.setPen(QPen(ink.color(), 1.5, Qt.PenStyle.DashLine))
            painter.drawRect(QRectF(inner).adjusted(3, 3, -3, -3))
        painter.restore()

    def sizeHint(self, _option: QStyleOptionViewItem, _index: QModelIndex | QPersistentModelIndex) -> QSize:
        """As high as a row; the width is the column's."""
        return QSize(0, self._type.row_height)


def _is_chosen(index: QModelIndex | QPersistentModelIndex, row: int) -> bool:
    """Whether the cell of the same column in another row is chosen; no row beyond the ends is."""
    return bool(index.sibling(row, index.column()).data(CHOSEN))


class SizeHeading(QHeaderView):
    """The sizes over the columns; the chosen one is dressed in the accent."""

    def __init__(self, parent: QWidget | None = None) -> None:
        """A heading that neither moves nor resizes."""
        super().__init__(Qt.Orientation.Horizontal, parent)
        self._type = EaseType.now()
        self.setSectionsClickable(True)
        self.setHighlightSections(False)
        self.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self.setAccessibleName("Sizes")
        self.viewport().setAutoFillBackground(False)

    def dress(self, kind: EaseType) -> None:
        """Take fonts anew."""
        self._type = kind
        self.setFixedHeight(kind.header_height)
        self.viewport().update()

    # Qt's own names from here on.

    def paintSection(self, painter: QPainter, rect: QRect, section: int) -> None:
        """Paint one heading: the size, and under it which part of the way."""
        lines = self.model().headerData(section, Qt.Orientation.Horizontal, CELL)
        if lines is None:
            return
        chosen = self.model().headerData(section, Qt.Orientation.Horizontal, CHOSEN)
        between = self.model().headerData(section, Qt.Orientation.Horizontal, BETWEEN)
        palette, kind = self.palette(), self._type
        painter.save()
        colour = theme.muted_text(palette) if between else palette.color(QPalette.ColorRole.WindowText)
        if chosen:
            painter.fillRect(rect.adjusted(1, 0, 0, 0), theme.accent(palette))
            colour = theme.paper(palette)
        painter.setPen(colour)
        _paint_heading(painter, rect, lines, kind, large=not between)
        painter.restore()

    def sizeHint(self) -> QSize:
        """Two lines high."""
        return QSize(super().sizeHint().width(), self._type.header_height)


def _paint_heading(painter: QPainter, rect: QRect, lines: tuple[str, str], kind: EaseType, *, large: bool) -> None:
    """The two lines of a heading at the foot of its room; a single line stands in the middle."""
    first, second = lines
    painter.setFont(kind.large if large else kind.small)
    if not second:
        painter.drawText(rect, _CENTRE, first)
        return
    height = kind.large_height if large else kind.small_height
    top = rect.top() + (rect.height() - height - kind.small_height) / 2
    painter.drawText(QRectF(rect.left(), top, rect.width(), height), _CENTRE, first)
    painter.setFont(kind.small)
    painter.drawText(QRectF(rect.left(), top + height, rect.width(), kind.small_height), _CENTRE, second)
