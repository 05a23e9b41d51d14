"""Paints a chart's cells, and the field in which one is typed."""

from __future__ import annotations

from typing import TYPE_CHECKING, cast

from PySide6.QtCore import (
    QAbstractItemModel,
    QEvent,
    QObject,
    QPersistentModelIndex,
    QPointF,
    QRect,
    Qt,
    Signal,
)
from PySide6.QtGui import QColor, QKeyEvent, QPainter, QPaintEvent, QPalette, QPen
from PySide6.QtWidgets import QLineEdit, QStyle, QStyledItemDelegate, QStyleOptionViewItem, QWidget

from sizekeeper.ui import theme
from sizekeeper.ui.chart_model import BAD, PLACEHOLDER, SIZE_ROW, ChartModel

if TYPE_CHECKING:
    from sizekeeper.ui.chart_model import Index

MOVES = {
    Qt.Key.Key_Return: "enter",
    Qt.Key.Key_Enter: "enter",
    Qt.Key.Key_Tab: "next",
    Qt.Key.Key_Backtab: "previous",
    Qt.Key.Key_Up: "up",
    Qt.Key.Key_Down: "down",
}
"""Keys that end the typing and go on to another cell."""
SIDEWAYS = {Qt.Key.Key_Left: "left", Qt.Key.Key_Right: "right"}
"""Keys that do so as long as the cell was typed over; in a cell that was opened they move the cursor in its text."""


class CellField(QLineEdit):
    """The open cell, framed like the current one."""

    def paintEvent(self, event: QPaintEvent) -> None:
        """The text, and the frame."""
        super().paintEvent(event)
        painter = QPainter(self)
        painter.setPen(QPen(theme.accent(self.palette()), 2))
        painter.drawRect(self.rect().adjusted(1, 1, -1, -1))


class ChartDelegate(QStyledItemDelegate):
    """The look of a cell and the manners of typing in it.

    Signals:
        moved(str, bool): the typing ended with a key that goes "up", "down", "left", "right", "next", "previous" or
            "enter", and whether there was any text.
        refused(str): what is typed cannot be taken, in one sentence; the cell stays open.
    """

    moved = Signal(str, bool)
    refused = Signal(str)

    def __init__(self, model: ChartModel, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._model = model
        self._open: QPersistentModelIndex | None = None
        self._editor: QLineEdit | None = None
        self.typed_over = False

    def type_over(self, text: str) -> None:
        """Put a text in the open cell in place of what it holds."""
        if self._editor is not None:
            self._editor.selectAll()
            self._editor.insert(text)

    def finish_open(self) -> None:
        """Take what is typed in the open cell, where it can be taken, and close it."""
        if self._editor is not None:
            editor = self._editor
            self.commitData.emit(editor)
            self.closeEditor.emit(editor, QStyledItemDelegate.EndEditHint.NoHint)

    def _on_typed(self, text: str) -> None:
        if self._open is not None and self._open.isValid():
            self._model.draft(self._open, text)

    def _finish(self, editor: QLineEdit, move: str) -> None:
        """End the typing, unless the text cannot be taken."""
        refusal = self._model.refusal(self._open, editor.text()) if self._open is not None else ""
        if refusal:
            self.refused.emit(refusal)
            editor.selectAll()
            return
        written = bool(editor.text().strip())
        self.commitData.emit(editor)
        self.closeEditor.emit(editor, QStyledItemDelegate.EndEditHint.NoHint)
        self.moved.emit(move, written)

    def _paint_text(self, painter: QPainter, option: QStyleOptionViewItem, index: Index, area: QRect) -> None:
        palette = option.palette
        text = str(index.data() or "")
        colour = palette.color(QPalette.ColorRole.Text)
        if index.data(BAD):
            colour = theme.warning_text(palette)
        elif not text:
            text, colour = str(index.data(PLACEHOLDER) or ""), theme.muted_text(palette)
        font = option.font
        if index.row() == SIZE_ROW and index.data():
            font = theme.heading_font(3)
        painter.setFont(font)
        painter.setPen(colour)
        shown = painter.fontMetrics().elidedText(text, Qt.TextElideMode.ElideRight, area.width())
        painter.drawText(area, int(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter), shown)
        if index.data(BAD):
            metrics = painter.fontMetrics()
            left = area.right() - min(metrics.horizontalAdvance(shown), area.width())
            _underline(painter, left, area.right(), area.center().y() + metrics.height() / 2, colour)

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Draw a cell: its text, the thin rule below it, and whether it is chosen or current."""
        rect: QRect = option.rect
        state: QStyle.StateFlag = option.state
        palette: QPalette = option.palette
        painter.save()
        base = palette.color(QPalette.ColorRole.Base)
        if state & QStyle.StateFlag.State_Selected:
            painter.fillRect(rect, theme.accent_wash(palette))
        elif not self._model.is_more(index.row()):
            painter.fillRect(rect, base)
            painter.setPen(QPen(theme.mix(base, theme.rule_colour(palette), 0.5), 1))
            painter.drawLine(rect.topRight(), rect.bottomRight())
        rule = theme.muted_text(palette) if index.row() == SIZE_ROW else theme.rule_colour(palette)
        painter.setPen(QPen(rule, 1))
        painter.drawLine(rect.bottomLeft(), rect.bottomRight())
        pad = theme.spacing(1)
        self._paint_text(painter, option, index, rect.adjusted(pad // 2, 0, -pad, 0))
        if state & QStyle.StateFlag.State_HasFocus:
            painter.setPen(QPen(theme.accent(palette), 2))
            painter.drawRect(rect.adjusted(1, 1, -1, -1))
        painter.restore()

    def createEditor(self, parent: QWidget, _option: QStyleOptionViewItem, index: Index) -> QWidget:
        """The field in which a cell is typed."""
        editor = CellField(parent)
        editor.setFrame(False)
        editor.setAutoFillBackground(True)
        editor.setAlignment(Qt.AlignmentFlag.AlignRight)
        editor.setTextMargins(0, 0, theme.spacing(1) - 2, 0)
        editor.setAccessibleName(str(index.data(Qt.ItemDataRole.AccessibleDescriptionRole) or "Size"))
        self._open, self._editor = QPersistentModelIndex(index), editor
        editor.textEdited.connect(self._on_typed)
        return editor

    def destroyEditor(self, editor: QWidget, index: Index) -> None:
        """Forget the closed field."""
        self._open = self._editor = None
        super().destroyEditor(editor, index)

    def setEditorData(self, editor: QWidget, index: Index) -> None:
        """The text as typed, left alone where it is that already."""
        line = cast("QLineEdit", editor)
        text = str(index.data(Qt.ItemDataRole.EditRole) or "")
        if line.text() != text and not line.isModified():
            line.setText(text)

    def setModelData(self, editor: QWidget, model: QAbstractItemModel, index: Index) -> None:
        """Ask the model for the edit."""
        model.setData(index, cast("QLineEdit", editor).text(), int(Qt.ItemDataRole.EditRole))

    def eventFilter(self, editor: QObject, event: QEvent) -> bool:
        """Keys that end the typing go on to another cell."""
        if event.type() == QEvent.Type.KeyPress and isinstance(event, QKeyEvent) and isinstance(editor, QLineEdit):
            key = Qt.Key(event.key())
            move = MOVES.get(key) or (SIDEWAYS.get(key) if self.typed_over else None)
            plain = event.modifiers() & ~(Qt.KeyboardModifier.KeypadModifier | Qt.KeyboardModifier.ShiftModifier)
            if move and plain == Qt.KeyboardModifier.NoModifier:
                backwards = event.modifiers() & Qt.KeyboardModifier.ShiftModifier and move == "enter"
                self._finish(editor, "up" if backwards else move)
                return True
        return super().eventFilter(editor, event)


def _underline(painter: QPainter, left: int, right: int, y: float, colour: QColor) -> None:
    """The dotted line below a text that is no figure."""
    painter.setPen(QPen(colour, 1.5, Qt.PenStyle.DotLine))
    painter.drawLine(QPointF(left, y), QPointF(right, y))
