"""How the household's tables are painted: two lines a cell, bands as cloth, a strip of regions, quiet headings."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QModelIndex, QObject, QPersistentModelIndex, QRect, QRectF, QSize, Qt
from PySide6.QtGui import QBrush, QColor, QFont, QFontMetricsF, QPainter, QPalette, QPen
from PySide6.QtWidgets import QStyle, QStyledItemDelegate, QStyleOptionViewItem

from sizekeeper.ui import bands, theme
from sizekeeper.ui.household_cells import Heading, HouseCell
from sizekeeper.ui.household_model import CELL, LEFT_OUT
from sizekeeper.ui.household_type import HouseType

if TYPE_CHECKING:
    from sizekeeper.core.preference import Band

Index = QModelIndex | QPersistentModelIndex
_LEFT = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
_CENTRE = Qt.AlignmentFlag.AlignCenter
_WRAPPED = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter | Qt.TextFlag.TextWordWrap
_TOGETHER = "\N{NO-BREAK SPACE}"
_FRAME = 3.0
"""The width of the line round what is to be cut, in pixels at normal scale; the same as in the ease table."""


class HouseDelegate(QStyledItemDelegate):
    """Paints a cell; the first column keeps its box to tick."""

    def __init__(self, parent: QObject | None = None) -> None:
        """Take the colours of the palette when `dress` is called."""
        super().__init__(parent)
        self.dress(QPalette(), HouseType.now())

    def dress(self, palette: QPalette, kind: HouseType) -> None:
        """Take colours and fonts anew: text size or light and dark changed."""
        self._type = kind
        self._dark = theme.is_dark(palette)
        self._text = palette.color(QPalette.ColorRole.WindowText)
        self._muted = theme.muted_text(palette)
        self._rule = theme.rule_colour(palette)
        self._accent = theme.accent(palette)
        self._wash = theme.accent_wash(palette)

    def _ink(self, band: Band | None) -> QColor:
        return self._text if band is None else QColor(bands.look(band, dark=self._dark).text)

    def _cloth(self, painter: QPainter, rect: QRect, band: Band) -> None:
        painter.setBrushOrigin(rect.topLeft())
        painter.fillRect(rect, QBrush(bands.cloth(band, dark=self._dark, ratio=painter.device().devicePixelRatio())))

    def _paint_two_lines(self, painter: QPainter, rect: QRect, cell: HouseCell, ink: QColor) -> None:
        """The text over its note; a text that is too long is set small, over both lines."""
        kind = self._type
        inner = rect.adjusted(kind.pad, 0, -kind.pad, 0)
        font = kind.strong if cell.strong else kind.plain
        painter.setPen(ink)
        if QFontMetricsF(font).horizontalAdvance(cell.text) > inner.width():
            text = f"{cell.text} · {cell.note.replace(' ', _TOGETHER)}" if cell.note else cell.text
            self._paint_small(painter, inner, text, strong=cell.strong)
            return
        painter.setFont(font)
        if not cell.note:
            painter.drawText(inner, _LEFT, cell.text)
            return
        height, small = QFontMetricsF(font).height(), QFontMetricsF(kind.small)
        top = inner.top() + (inner.height() - height - small.height()) / 2
        painter.drawText(QRectF(inner.left(), top, inner.width(), height), _LEFT, cell.text)
        painter.setFont(kind.small)
        painter.setPen(self._muted)
        note = small.elidedText(cell.note, Qt.TextElideMode.ElideRight, inner.width())
        painter.drawText(QRectF(inner.left(), top + height, inner.width(), small.height()), _LEFT, note)

    def _paint_small(self, painter: QPainter, rect: QRect, text: str, *, strong: bool) -> None:
        """A long text in small letters, on as many lines as the cell has; what is left over ends in dots."""
        font = QFont(self._type.small)
        font.setBold(strong)
        painter.setFont(font)
        metrics = QFontMetricsF(font)
        lines = max(1, int(rect.height() / metrics.height()))
        fits = metrics.boundingRect(QRectF(0, 0, rect.width(), 9999), int(_WRAPPED), text).height()
        if fits > lines * metrics.height() + 1:
            text = _shortened(text, metrics, rect.width(), lines)
        painter.drawText(rect, int(_WRAPPED), text)

    def _paint_band(self, painter: QPainter, rect: QRect, cell: HouseCell) -> None:
        """A size at a region: its cloth, the ease, the band's word, and the line round what is to be cut."""
        kind = self._type
        inner = rect.adjusted(1, 0, 0, -1)
        if cell.band is not None:
            self._cloth(painter, inner, cell.band)
        painter.setPen(self._ink(cell.band))
        font = kind.strong if cell.strong else kind.plain
        height, small = QFontMetricsF(font).height(), QFontMetricsF(kind.small).height()
        top = inner.top() + (inner.height() - height - (small if cell.note else 0)) / 2
        painter.setFont(font)
        painter.drawText(QRectF(inner.left(), top, inner.width(), height), _CENTRE, cell.text)
        painter.setFont(kind.small)
        painter.drawText(QRectF(inner.left(), top + height, inner.width(), small), _CENTRE, cell.note)
        self._paint_mark(painter, QRectF(inner), cell.mark)

    def _paint_mark(self, painter: QPainter, box: QRectF, mark: str) -> None:
        """A frame round the size to cut; a line on the edge towards a place between two."""
        if mark == "cut":
            painter.setPen(QPen(self._accent, _FRAME))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(box.adjusted(_FRAME / 2, _FRAME / 2, -_FRAME / 2, -_FRAME / 2))
        elif mark == "from":
            painter.fillRect(QRectF(box.right() - _FRAME, box.top(), _FRAME, box.height()), self._accent)
        elif mark == "to":
            painter.fillRect(QRectF(box.left() - 1, box.top(), _FRAME, box.height()), self._accent)

    def _paint_strip(self, painter: QPainter, rect: QRect, cell: HouseCell) -> None:
        """One piece of cloth for each region with the band's letter on it; the tip says which is which."""
        kind = self._type
        width = kind.swatch_width(tuple(swatch.name for swatch in cell.strip))
        box = QRect(rect.left() + kind.pad, rect.top() + kind.pad, width - 2, rect.height() - 2 * kind.pad)
        painter.setFont(kind.plain)
        for swatch in cell.strip:
            if swatch.band is not None:
                self._cloth(painter, box, swatch.band)
                painter.setPen(QColor(bands.look(swatch.band, dark=self._dark).thread))
                painter.drawRect(QRectF(box).adjusted(0.5, 0.5, -0.5, -0.5))
            painter.setPen(self._ink(swatch.band))
            painter.drawText(box, _CENTRE, swatch.band[0].upper() if swatch.band is not None else "–")
            box.translate(width, 0)

    # Qt's own names from here on.

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Paint one cell."""
        cell = index.data(CELL)
        if not isinstance(cell, HouseCell):
            return
        painter.save()
        heading = index.model().headerData(index.column(), Qt.Orientation.Horizontal, CELL)
        if option.state & QStyle.StateFlag.State_Selected:
            painter.fillRect(option.rect, self._wash)
        if isinstance(heading, Heading) and heading.matrix:
            self._paint_band(painter, option.rect, cell)
        elif cell.strip:
            self._paint_strip(painter, option.rect, cell)
        else:
            rect = self._after_box(painter, option, index)
            link = self._accent if index.column() == 0 else self._text
            self._paint_two_lines(painter, rect, cell, self._muted if index.data(LEFT_OUT) else link)
        if not (isinstance(heading, Heading) and heading.matrix):
            painter.fillRect(QRect(option.rect.left(), option.rect.bottom(), option.rect.width(), 1), self._rule)
        if option.state & QStyle.StateFlag.State_HasFocus:
            painter.setPen(QPen(self._ink(cell.band), 1.5, Qt.PenStyle.DashLine))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(QRectF(option.rect).adjusted(3, 3, -4, -4))
        painter.restore()

    def _after_box(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> QRect:
        """Paint the box to tick where there is one; gives the room behind it."""
        state = index.data(Qt.ItemDataRole.CheckStateRole)
        if state is None:
            return QRect(option.rect)
        box = QStyleOptionViewItem(option)
        self.initStyleOption(box, index)
        style = option.widget.style()
        box.rect = style.subElementRect(QStyle.SubElement.SE_ItemViewItemCheckIndicator, box, option.widget)
        box.state = box.state & ~QStyle.StateFlag.State_HasFocus
        ticked = Qt.CheckState(state) == Qt.CheckState.Checked
        box.state |= QStyle.StateFlag.State_On if ticked else QStyle.StateFlag.State_Off
        style.drawPrimitive(QStyle.PrimitiveElement.PE_IndicatorItemViewItemCheck, box, painter, option.widget)
        return option.rect.adjusted(box.rect.right() - option.rect.left(), 0, 0, 0)

    def sizeHint(self, _option: QStyleOptionViewItem, _index: Index) -> QSize:
        """As high as a row; the width is the column's."""
        return QSize(0, self._type.row_height)


def _shortened(text: str, metrics: QFontMetricsF, width: float, lines: int) -> str:
    """A text cut off at the end so that it takes so many lines."""
    low, high = 0, len(text)
    while low < high:
        middle = (low + high + 1) // 2
        tried = f"{text[:middle].rstrip()}…"
        height = metrics.boundingRect(QRectF(0, 0, width, 9999), int(_WRAPPED), tried).height()
        low, high = (middle, high) if height <= lines * metrics.height() + 1 else (low, middle - 1)
    return f"{text[:low].rstrip()}…"
