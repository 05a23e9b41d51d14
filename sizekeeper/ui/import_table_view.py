"""The chart as it will be, in a table whose sizes, measures and figures are typed over in place."""

from __future__ import annotations

from typing import TYPE_CHECKING, cast

from PySide6.QtCore import QEvent, QModelIndex, QObject, QPersistentModelIndex, QSize, Qt, Signal
from PySide6.QtGui import QFontMetrics, QKeyEvent, QPainter, QPalette, QResizeEvent
from PySide6.QtWidgets import (
    QAbstractItemDelegate,
    QAbstractItemView,
    QComboBox,
    QLineEdit,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTableView,
    QWidget,
)

from sizekeeper.importing.question import WRITTEN
from sizekeeper.ui import theme
from sizekeeper.ui.chart_measure_field import MeasureField
from sizekeeper.ui.import_table_model import FIRST, TableModel

if TYPE_CHECKING:
    from PySide6.QtCore import QAbstractItemModel

Index = QModelIndex | QPersistentModelIndex
_MOST_ROWS = 14
"""Rows after which the table scrolls by itself."""


class TableDelegate(QStyledItemDelegate):
    """Paints sizes and measures like the head of a printed table, and opens the right field for each."""

    def createEditor(self, parent: QWidget, option: QStyleOptionViewItem, index: Index) -> QWidget:
        """A field to pick a measure by typing, a choice of how it was written, or a plain line."""
        model = cast("TableModel", index.model())
        part = model.part(index)
        if part == "measure":
            field = MeasureField(model.measures, model.table.kind, parent)
            field.named.connect(self._on_named)
            field.left.connect(self._on_left)
            return field
        if part == "written":
            choice = QComboBox(parent)
            choice.setAccessibleName("How the measure was written")
            for written, words in WRITTEN.items():
                choice.addItem(words, written)
            choice.view().setMinimumWidth(theme.spacing(22))
            choice.activated.connect(self._on_chosen)
            return choice
        editor = super().createEditor(parent, option, index)
        if isinstance(editor, QLineEdit):
            editor.setAccessibleName("Label of the size" if part == "size" else "Text of the figure")
        return editor

    def eventFilter(self, editor: QObject, event: QEvent) -> bool:
        """The field of a measure knows by itself when it is finished: on Enter, on Tab and when it is left."""
        return False if isinstance(editor, MeasureField) else super().eventFilter(editor, event)

    def updateEditorGeometry(self, editor: QWidget, option: QStyleOptionViewItem, index: Index) -> None:
        """The field of a measure and the choice of how it was written may be wider than their column."""
        super().updateEditorGeometry(editor, option, index)
        part = cast("TableModel", index.model()).part(index)
        if part in ("measure", "written"):
            editor.setFixedWidth(max(option.rect.width(), theme.spacing(26 if part == "measure" else 22)))

    def setEditorData(self, editor: QWidget, index: Index) -> None:
        """What stands there now."""
        if isinstance(editor, QComboBox):
            model = cast("TableModel", index.model())
            editor.setCurrentIndex(editor.findData(model.row_of(index).written_as))
        else:
            super().setEditorData(editor, index)

    def setModelData(self, editor: QWidget, model: QAbstractItemModel, index: Index) -> None:
        """Hand over what was chosen or typed."""
        if isinstance(editor, MeasureField):
            editor.finish()
            measure = editor.property("measure")
            if measure:
                model.setData(index, measure)
        elif isinstance(editor, QComboBox):
            model.setData(index, editor.currentData())
        else:
            super().setModelData(editor, model, index)

    def _on_named(self, measure: str, _label: str) -> None:
        """A measure was picked or typed: take it, and close the field."""
        field = cast("QWidget", self.sender())
        if not field.property("measure"):
            field.setProperty("measure", measure)
            self.commitData.emit(field)
            self.closeEditor.emit(field, QAbstractItemDelegate.EndEditHint.NoHint)

    def _on_left(self) -> None:
        self.closeEditor.emit(cast("QWidget", self.sender()), QAbstractItemDelegate.EndEditHint.NoHint)

    def _on_chosen(self) -> None:
        choice = cast("QWidget", self.sender())
        self.commitData.emit(choice)
        self.closeEditor.emit(choice, QAbstractItemDelegate.EndEditHint.NoHint)

    def initStyleOption(self, option: QStyleOptionViewItem, index: Index) -> None:
        """Sizes and measures are set stronger than figures; how a measure was written steps back."""
        super().initStyleOption(option, index)
        part = cast("TableModel", index.model()).part(index)
        if part in ("size", "corner"):
            option.font = theme.heading_font(3)
        elif part == "written":
            option.font = theme.small_font()
            doubtful = option.text.endswith("?")
            colour = theme.warning_text(option.palette) if doubtful else theme.muted_text(option.palette)
            option.palette.setColor(QPalette.ColorRole.Text, colour)

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """The text, a rule below the sizes, and the focus."""
        super().paint(painter, option, index)
        if index.row() == 0:
            painter.fillRect(
                option.rect.x(), option.rect.bottom(), option.rect.width(), 1, theme.rule_colour(option.palette)
            )
        if option.state & QStyle.StateFlag.State_HasFocus:
            painter.setPen(theme.accent(option.palette))
            painter.drawRect(option.rect.adjusted(0, 0, -1, -1))

    def sizeHint(self, _option: QStyleOptionViewItem, index: Index) -> QSize:
        """The text with room around it."""
        text = str(index.data() or "")
        part = cast("TableModel", index.model()).part(index)
        font = theme.heading_font(3) if part in ("size", "corner") else theme.scaled_font(1.0)
        return QSize(QFontMetrics(font).horizontalAdvance(text) + theme.spacing(2), theme.spacing(3.25))


class TableView(QTableView):
    """The chart as it will be. Delete leaves a measure, a size or a figure out.

    Signals:
        looked_at(str): the cell of the file that the current place comes from.
        leave_wanted(object): addresses of cells that shall not be read.
    """

    looked_at = Signal(str)
    leave_wanted = Signal(object)

    def __init__(self, model: TableModel, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._model = model
        self.setModel(model)
        self.setItemDelegate(TableDelegate(self))
        self.setAccessibleName(name)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setEditTriggers(
            QAbstractItemView.EditTrigger.EditKeyPressed
            | QAbstractItemView.EditTrigger.DoubleClicked
            | QAbstractItemView.EditTrigger.AnyKeyPressed
        )
        self.horizontalHeader().hide()
        self.verticalHeader().hide()
        self.setShowGrid(False)
        self.setTabKeyNavigation(False)
        self.setWordWrap(False)
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setFrameShape(QTableView.Shape.NoFrame)
        self.viewport().setAutoFillBackground(False)
        self.selectionModel().currentChanged.connect(self._on_current)
        model.modelReset.connect(self.fit)
        model.dataChanged.connect(self.fit)
        self.fit()

    def go_to(self, at: str) -> bool:
        """Make the place of a file's cell the current one, without telling of it; False where it is not here."""
        index = self._model.place_of(at)
        if index.isValid():
            blocked = self.blockSignals(True)
            self.setCurrentIndex(index)
            self.scrollTo(index)
            self.blockSignals(blocked)
        return index.isValid()

    def fit(self) -> None:
        """Columns as wide as their texts, and as high as the rows."""
        self.verticalHeader().setDefaultSectionSize(theme.spacing(3.25))
        self.horizontalHeader().setResizeContentsPrecision(30)
        self.resizeColumnsToContents()
        self.setColumnWidth(0, min(self.columnWidth(0), theme.spacing(26)))
        sizes = range(FIRST, self._model.columnCount())
        widest = max((self.columnWidth(c) for c in sizes), default=0)
        for column in sizes:
            self.setColumnWidth(column, widest)
        self.setFixedHeight(self._height())

    def _height(self) -> int:
        rows = min(self._model.rowCount(), _MOST_ROWS)
        bar = self.horizontalScrollBar()
        wide = sum(self.columnWidth(c) for c in range(self._model.columnCount()))
        room = bar.sizeHint().height() if wide > self.viewport().width() else 0
        return rows * theme.spacing(3.25) + room + 2 * self.frameWidth() + 2

    def _on_current(self, index: Index) -> None:
        if index.isValid() and (at := self._model.at(index)):
            self.looked_at.emit(at)

    def _leave_out(self) -> None:
        """Leave out what the current place stands for: a whole row, a whole size, or one figure."""
        index = self.currentIndex()
        if not index.isValid() or not (at := self._model.at(index)):
            return
        part, table = self._model.part(index), self._model.table
        cells = [at]
        if part in ("measure", "written"):
            row = self._model.row_of(index)
            own = [cell.at for cell in row.cells]
            shared = any(other.label_at == at for other in table.rows if other is not row)
            cells = own if shared else [at, *own]
        elif part == "size":
            cells += [row.cells[index.column() - FIRST].at for row in table.rows if not row.same_for_all_sizes]
        self.leave_wanted.emit([cell for cell in dict.fromkeys(cells) if cell])

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if theme.font_changed(event):
            self.fit()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Make room for the scroll bar where it is needed."""
        super().resizeEvent(event)
        if self.height() != self._height():
            self.setFixedHeight(self._height())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Delete leaves out, Enter types over."""
        if event.key() in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace):
            self._leave_out()
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self.state() != self.State.EditingState:
            self.edit(self.currentIndex())
        else:
            super().keyPressEvent(event)
