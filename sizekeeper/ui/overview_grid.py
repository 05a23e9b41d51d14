"""The grid of everybody and every pattern: names and titles stay in view, a click or Enter opens the comparison."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QModelIndex, QObject, QPersistentModelIndex, QRect, QSize, Qt, Signal
from PySide6.QtGui import QColor, QFontMetrics, QKeyEvent, QPainter, QPalette, QPen
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QApplication,
    QFrame,
    QHeaderView,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTableView,
    QWidget,
)

from sizekeeper.ui import theme
from sizekeeper.ui.overview_cell import OverviewCell
from sizekeeper.ui.overview_model import CELL, WAITING, OverviewModel

if TYPE_CHECKING:
    from collections.abc import Iterable

    from PySide6.QtGui import QMouseEvent, QPaintEvent

    from sizekeeper.ui.overview_sizes import Pair

Index = QModelIndex | QPersistentModelIndex
_ACROSS, _DOWN = Qt.Orientation.Horizontal, Qt.Orientation.Vertical
_TITLE_LINES = 3
_WIDEST = 24
"""How wide a column is at most, in steps of distance (coined); the tip says the whole of a longer cell."""
_GRAVE = "×!≠"
"""The marks that speak against a size; they are set in the colour of warnings."""


class OverviewDelegate(QStyledItemDelegate):
    """Paints a cell: the size, its marks beside it, and a thin rule below."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.dress(parent.palette())

    def dress(self, palette: QPalette) -> None:
        """Take the colours anew."""
        self._text = palette.color(QPalette.ColorRole.WindowText)
        self._muted = theme.muted_text(palette)
        self._warning = theme.warning_text(palette)
        self._rule = theme.rule_colour(palette)
        self._chosen = (palette.color(QPalette.ColorRole.Highlight), palette.color(QPalette.ColorRole.HighlightedText))

    # Qt's own names from here on.

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Paint one cell."""
        cell = index.data(CELL)
        rect, chosen = option.rect, bool(option.state & QStyle.StateFlag.State_Selected)
        painter.save()
        if chosen:
            painter.fillRect(rect, self._chosen[0])
        painter.setPen(self._rule)
        painter.drawLine(rect.bottomLeft(), rect.bottomRight())
        size, marks = (cell.size, cell.marks) if isinstance(cell, OverviewCell) else (WAITING, "")
        known = isinstance(cell, OverviewCell) and cell.position is not None
        self._paint_words(painter, rect, (size, marks), self._chosen[1] if chosen else None, known=known)
        if option.state & QStyle.StateFlag.State_HasFocus:
            painter.setPen(QPen(self._chosen[1], 1, Qt.PenStyle.DashLine))
            painter.drawRect(rect.adjusted(2, 2, -3, -3))
        painter.restore()

    def _paint_words(
        self, painter: QPainter, rect: QRect, words: tuple[str, str], ink: QColor | None, *, known: bool
    ) -> None:
        """The size in the middle, the marks behind it."""
        size, marks = words
        metrics = painter.fontMetrics()
        gap = metrics.horizontalAdvance(" ") if marks else 0
        width = metrics.horizontalAdvance(size) + gap + metrics.horizontalAdvance(marks)
        left = rect.left() + max(2, (rect.width() - width) // 2)
        middle = Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft
        room = rect.right() - left
        painter.setPen(ink or (self._text if known else self._muted))
        painter.drawText(
            QRect(left, rect.top(), room, rect.height()),
            middle,
            metrics.elidedText(size, Qt.TextElideMode.ElideRight, room - gap - metrics.horizontalAdvance(marks)),
        )
        if marks:
            left = min(left + width, rect.right() - 1) - metrics.horizontalAdvance(marks)
            painter.setPen(ink or (self._warning if set(marks) & set(_GRAVE) else self._muted))
            painter.drawText(QRect(left, rect.top(), rect.right() - left + 1, rect.height()), middle, marks)


class OverviewHeading(QHeaderView):
    """Names over or beside the cells, on as many as three lines; the one that sorts has an arrow."""

    def __init__(self, orientation: Qt.Orientation, parent: QWidget) -> None:
        super().__init__(orientation, parent)
        self.sorts: tuple[int, bool] | None = None
        self.setSectionsClickable(True)
        self.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self.setHighlightSections(False)
        self.viewport().setAutoFillBackground(False)

    def show_sorted(self, section: int, *, down: bool) -> None:
        """Mark the heading that sorts; -1 for none."""
        self.sorts = (section, down) if section >= 0 else None
        self.viewport().update()

    # Qt's own names from here on.

    def paintEvent(self, event: QPaintEvent) -> None:
        """The headings; behind the last one there is paper."""
        super().paintEvent(event)
        end, area = self.length() - self.offset(), self.viewport().rect()
        rest = area.adjusted(end, 0, 0, 0) if self.orientation() == _ACROSS else area.adjusted(0, end, 0, 0)
        if rest.isValid():
            QPainter(self.viewport()).fillRect(rest, theme.paper(QApplication.palette()))

    def paintSection(self, painter: QPainter, rect: QRect, section: int) -> None:
        """Paint one heading."""
        words = str(self.model().headerData(section, self.orientation()) or "")
        palette = self.palette()
        painter.save()
        if self.parentWidget() is not None and self._holds_current(section):
            painter.fillRect(rect, theme.accent_wash(palette))
        painter.setFont(theme.heading_font(3) if self._holds_current(section) else self.font())
        painter.setPen(palette.color(QPalette.ColorRole.WindowText))
        pad = theme.spacing(0.5)
        room = rect.adjusted(pad, 0, -pad, -3 if self.orientation() == _ACROSS else -1)
        if self.sorts is not None and self.sorts[0] == section:
            arrow = "▾" if self.sorts[1] else "▴"
            painter.drawText(room, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignBottom, arrow)
            room.adjust(0, 0, -painter.fontMetrics().horizontalAdvance(arrow) - 2, 0)
        self._paint_words(painter, room, words)
        painter.setPen(theme.rule_colour(palette))
        painter.drawLine(rect.bottomLeft(), rect.bottomRight())
        painter.restore()

    def _holds_current(self, section: int) -> bool:
        view = self.parentWidget()
        if not isinstance(view, QTableView) or not view.currentIndex().isValid():
            return False
        current = view.currentIndex()
        return section == (current.column() if self.orientation() == _ACROSS else current.row())

    def _paint_words(self, painter: QPainter, room: QRect, words: str) -> None:
        side = Qt.AlignmentFlag.AlignHCenter if self.orientation() == _ACROSS else Qt.AlignmentFlag.AlignLeft
        if self.orientation() == _DOWN:
            elided = painter.fontMetrics().elidedText(words, Qt.TextElideMode.ElideRight, room.width())
            painter.drawText(room, side | Qt.AlignmentFlag.AlignVCenter, elided)
            return
        lines = wrapped(words, painter.fontMetrics(), room.width(), _TITLE_LINES)
        painter.drawText(room, side | Qt.AlignmentFlag.AlignBottom, "\n".join(lines))


def wrapped(words: str, metrics: QFontMetrics, width: int, most: int) -> list[str]:
    """Words on lines of a width; the last line that there is room for ends in an ellipsis if more would follow."""
    lines: list[str] = []
    for word in words.split():
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and metrics.horizontalAdvance(longer) < width - 1:  # a text's width is rounded
            lines[-1] = longer
        else:
            lines.append(word)
    kept = lines[:most]
    if len(lines) > most:
        kept[-1] = " ".join(lines[most - 1 :])
    return [metrics.elidedText(line, Qt.TextElideMode.ElideRight, width) for line in kept]


class OverviewGrid(QTableView):
    """The grid.

    Signals:
        opened(QModelIndex): the index of a cell that was clicked or entered.
    """

    opened = Signal(QModelIndex)

    def __init__(self, model: OverviewModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setModel(model)
        self.grid_model = model
        self.headings = (OverviewHeading(_ACROSS, self), OverviewHeading(_DOWN, self))
        self.setHorizontalHeader(self.headings[0])
        self.setVerticalHeader(self.headings[1])
        self._delegate = OverviewDelegate(self)
        self.setItemDelegate(self._delegate)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setShowGrid(False)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setTabKeyNavigation(False)
        self.setCornerButtonEnabled(False)
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.viewport().setAutoFillBackground(False)
        self.setAccessibleName("Sizes of everybody in every pattern")
        self.clicked.connect(self.opened)
        corner = self.findChild(QAbstractButton)
        if corner is not None:
            corner.installEventFilter(self)
        self.dress()
        model.modelReset.connect(self.dress)
        self.selectionModel().currentChanged.connect(self._on_current)

    def _on_current(self, _now: QModelIndex, _before: QModelIndex) -> None:
        for heading in self.headings:
            heading.viewport().update()

    def dress(self) -> None:
        """Take fonts, colours and distances anew."""
        self._delegate.dress(self.palette())
        metrics = QFontMetrics(self.font())
        across, down = self.headings
        across.setDefaultSectionSize(theme.spacing(12))
        across.setFixedHeight(metrics.lineSpacing() * _TITLE_LINES + theme.spacing(0.75))
        down.setDefaultSectionSize(theme.spacing(3.25))
        down.setFixedWidth(theme.spacing(32 if self.grid_model.turned else 22))  # titles are longer than names
        self.viewport().update()

    def widen(self) -> None:
        """Make the columns whose sizes are long as wide as these, up to a width."""
        model, metrics, across = self.grid_model, QFontMetrics(self.font()), self.headings[0]
        least, most = across.defaultSectionSize(), theme.spacing(_WIDEST)
        short = least // max(metrics.averageCharWidth() * 2, 1)
        for column in range(model.columnCount()):
            texts = {str(model.index(row, column).data()) for row in range(model.rowCount())}
            long = (metrics.horizontalAdvance(text) for text in texts if len(text) > short)
            width = min(max(least, max(long, default=0) + theme.spacing(1)), most)
            if across.sectionSize(column) != width:
                across.resizeSection(column, width)

    def in_view(self) -> Iterable[Pair]:
        """The pairs whose cells are on the screen."""
        model, area = self.grid_model, self.viewport().rect()
        if not self.isVisible() or not model.rowCount() or not model.columnCount():
            return
        top, left = max(self.rowAt(area.top()), 0), max(self.columnAt(area.left()), 0)
        bottom, right = self.rowAt(area.bottom()), self.columnAt(area.right())
        for row in range(top, (model.rowCount() - 1 if bottom < 0 else bottom) + 1):
            for column in range(left, (model.columnCount() - 1 if right < 0 else right) + 1):
                person, pattern = model.pair(model.index(row, column))
                yield person.id, pattern.id

    # Qt's own names from here on.

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size and light or dark."""
        super().changeEvent(event)
        if hasattr(self, "headings") and (theme.font_changed(event) or theme.palette_changed(event)):
            self.dress()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """The corner between the headings is paper."""
        if event.type() == QEvent.Type.Paint and isinstance(watched, QAbstractButton):
            QPainter(watched).fillRect(watched.rect(), theme.paper(QApplication.palette()))
            return True
        return super().eventFilter(watched, event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter opens the comparison."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self.currentIndex().isValid():
            self.opened.emit(self.currentIndex())
            return
        super().keyPressEvent(event)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """A drag does not choose one cell after the other."""
        event.accept()

    def minimumSizeHint(self) -> QSize:
        """A few cells."""
        return QSize(theme.spacing(50), theme.spacing(20))
