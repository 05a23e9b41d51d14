"""How a person or a pattern looks in the list: the name, and below it one quiet line."""

from __future__ import annotations

from PySide6.QtCore import QAbstractItemModel, QModelIndex, QPersistentModelIndex, QRect, QSize, Qt
from PySide6.QtGui import QCursor, QFont, QFontMetrics, QPainter, QPalette
from PySide6.QtWidgets import QAbstractItemView, QLineEdit, QStyledItemDelegate, QStyleOptionViewItem, QWidget

from sizekeeper.ui import theme
from sizekeeper.ui.entry_model import HIDDEN_ROLE, NOTE_ROLE

AnyIndex = QModelIndex | QPersistentModelIndex


class EntryDelegate(QStyledItemDelegate):
    """Paints two lines; the chosen entry stands on a pale plum ground with a bar at its side.

    What an entry's state is, the list is asked for: to read it off the option would load all the names that `QStyle`
    has for its parts, at the start, for three of them.
    """

    def __init__(self, view: QAbstractItemView) -> None:
        super().__init__(view)
        self._view = view

    def _pointed_at(self, rect: QRect) -> bool:
        """Whether the mouse is on the entry; a list without a frame begins where its viewport does."""
        return self._view.underMouse() and rect.contains(self._view.mapFromGlobal(QCursor.pos()))

    def _name_rect(self, whole: QRect) -> QRect:
        inside = whole.adjusted(theme.spacing(1.5), theme.spacing(0.75), -theme.spacing(1), 0)
        inside.setHeight(QFontMetrics(theme.heading_font(3)).height())
        return inside

    def _ground(self, painter: QPainter, option: QStyleOptionViewItem, index: AnyIndex) -> None:
        palette, rect = option.palette, option.rect
        if self._view.selectionModel().isSelected(index):
            painter.fillRect(rect, theme.accent_wash(palette))
            painter.fillRect(QRect(rect.left(), rect.top(), theme.spacing(0.4), rect.height()), theme.accent(palette))
        elif self._pointed_at(rect):
            painter.fillRect(rect, theme.mix(theme.paper(palette), theme.accent(palette), 0.06))
        if self._view.hasFocus() and self._view.currentIndex() == index:
            painter.setPen(theme.accent(palette))
            painter.drawRect(rect.adjusted(0, 0, -1, -1))

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: AnyIndex) -> None:
        """Draw the name and the line below it, cut off with an ellipsis where they are too long."""
        painter.save()
        self._ground(painter, option, index)
        palette = option.palette
        hidden = bool(index.data(HIDDEN_ROLE))
        quiet = theme.muted_text(palette)
        name, note = str(index.data()), str(index.data(NOTE_ROLE))
        where = self._name_rect(option.rect)
        lines: tuple[tuple[str, QFont, bool], ...] = (
            (name, theme.scaled_font(1.0), hidden),
            (f"hidden · {note}" if hidden else note, theme.small_font(), True),
        )
        for text, font, stepping_back in lines:
            font.setItalic(hidden)
            metrics = QFontMetrics(font)
            where.setHeight(metrics.height())
            painter.setFont(font)
            painter.setPen(quiet if stepping_back else palette.color(QPalette.ColorRole.WindowText))
            shown = metrics.elidedText(text, Qt.TextElideMode.ElideRight, where.width())
            painter.drawText(where, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, shown)
            where.translate(0, metrics.height())
        painter.restore()

    def sizeHint(self, _option: QStyleOptionViewItem, _index: AnyIndex) -> QSize:
        """Two lines and air around them, the same for every entry."""
        lines = QFontMetrics(theme.scaled_font(1.0)).height() + QFontMetrics(theme.small_font()).height()
        return QSize(theme.spacing(12), lines + theme.spacing(1.5))

    def createEditor(self, parent: QWidget, _option: QStyleOptionViewItem, index: AnyIndex) -> QWidget:
        """A field for the name."""
        field = QLineEdit(parent)
        field.setAccessibleName(f"New name for {index.data()}")
        return field

    def setEditorData(self, editor: QWidget, index: AnyIndex) -> None:
        """Start from the name as it is."""
        if isinstance(editor, QLineEdit):
            editor.setText(str(index.data(Qt.ItemDataRole.EditRole)))

    def setModelData(self, editor: QWidget, model: QAbstractItemModel, index: AnyIndex) -> None:
        """Rename the entry."""
        if isinstance(editor, QLineEdit):
            model.setData(index, editor.text())

    def updateEditorGeometry(self, editor: QWidget, option: QStyleOptionViewItem, _index: AnyIndex) -> None:
        """The field lies over the name."""
        air = theme.spacing(0.5)
        editor.setGeometry(option.rect.adjusted(air, air, -air, -air))
