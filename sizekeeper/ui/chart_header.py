"""The measures down a chart's side, named in place."""

from __future__ import annotations

from PySide6.QtCore import QModelIndex, QRect, QSize, Qt, Signal
from PySide6.QtGui import QMouseEvent, QPainter, QPalette, QPen
from PySide6.QtWidgets import QHeaderView, QWidget

from sizekeeper.ui import theme
from sizekeeper.ui.chart_measure_field import MeasureField
from sizekeeper.ui.chart_model import SIZE_ROW, ChartModel


class MeasureHeader(QHeaderView):
    """The names of the measures, set like the first column of a printed table.

    Signals:
        named(int, str, str): a row was given a measure: the chart's row (its length for a new one), id and label.
        opened(QWidget): the field was opened; it should be in view.
        left(): the field was closed, and the focus should go back to the figures.
    """

    named = Signal(int, str, str)
    opened = Signal(QWidget)
    left = Signal()

    def __init__(self, model: ChartModel, parent: QWidget | None = None) -> None:
        super().__init__(Qt.Orientation.Vertical, parent)
        self._model = model
        self._field: MeasureField | None = None
        self._row = 0
        self.setSectionsClickable(True)
        self.setHighlightSections(True)
        self.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self.setAccessibleName("Measures")
        self.sectionDoubleClicked.connect(self._on_double_click)

    def section_rect(self, section: int) -> QRect:
        """Where a section lies in the viewport."""
        return QRect(0, self.sectionViewportPosition(section), self.viewport().width(), self.sectionSize(section))

    def name_measure(self, section: int, text: str = "") -> None:
        """Open the field in which the measure of a row is picked or named; a text is its beginning."""
        if section == SIZE_ROW or not self._model.editable:
            return
        self._drop_field()
        field = MeasureField(self._model.measures, self._model.chart.kind, self.viewport())
        self._field, self._row = field, section - 1
        field.setText(text if self._model.is_more(section) else self._model.row_name(section - 1))
        field.setGeometry(self.section_rect(section))
        field.named.connect(self._on_named)
        field.left.connect(self.close_field)
        field.show()
        field.setFocus()
        self.opened.emit(field)
        if text:
            field.offer(text)
            field.completer().complete()
        else:
            field.selectAll()

    def refuse(self) -> None:
        """Keep the field open after a name that cannot be taken."""
        if self._field is not None:
            self._field.again()
            self._field.setFocus()

    def close_field(self) -> None:
        """Close the field; the focus goes back to the figures unless it went somewhere else already."""
        if self._field is not None and self._field.hasFocus():
            self.left.emit()  # first: a hidden field would hand the focus on like Tab
        self._drop_field()

    def _drop_field(self) -> None:
        if self._field is not None:
            field, self._field = self._field, None
            field.hide()
            field.deleteLater()

    def _on_named(self, measure: str, label: str) -> None:
        self.named.emit(self._row, measure, label)

    def _on_double_click(self, section: int) -> None:
        self.name_measure(section)

    def sizeHint(self) -> QSize:
        """Wide enough for the usual names, so that both charts of a pattern stand in line."""
        names = [str(self._model.headerData(i, Qt.Orientation.Vertical) or "") for i in range(self.count())]
        widest = max((self.fontMetrics().horizontalAdvance(name) for name in names), default=0)
        usual = self.fontMetrics().horizontalAdvance("Back waist length, quarter")
        return QSize(min(max(widest, usual), 2 * usual) + theme.spacing(2), super().sizeHint().height())

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """A click on the last section asks for a measure."""
        super().mouseReleaseEvent(event)
        section = self.logicalIndexAt(event.position().toPoint())
        left = event.button() == Qt.MouseButton.LeftButton
        if left and section >= 0 and self._model.is_more(section) and self._model.editable:
            self.name_measure(section)

    def paintSection(self, painter: QPainter, rect: QRect, section: int) -> None:
        """Draw a name on the page's own ground, with the rule that runs on through the figures."""
        palette = self.palette()
        painter.save()
        if self.selectionModel().rowIntersectsSelection(section, QModelIndex()):
            painter.fillRect(rect, theme.accent_wash(palette))
        rule = theme.muted_text(palette) if section == SIZE_ROW else theme.rule_colour(palette)
        painter.setPen(QPen(rule, 1))
        painter.drawLine(rect.bottomLeft(), rect.bottomRight())
        quiet = section == SIZE_ROW or self._model.is_more(section)
        painter.setPen(theme.muted_text(palette) if quiet else palette.color(QPalette.ColorRole.Text))
        painter.setFont(self.font())
        text = str(self._model.headerData(section, Qt.Orientation.Vertical) or "")
        text = f"+ {text}" if self._model.is_more(section) else text
        area = rect.adjusted(theme.spacing(0.5), 0, -theme.spacing(0.5), 0)
        shown = painter.fontMetrics().elidedText(text, Qt.TextElideMode.ElideRight, area.width())
        painter.drawText(area, int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter), shown)
        painter.restore()
