"""The measures down a chart's side, and the field in which one is named."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QModelIndex, QRect, QSize, Qt, Signal, Slot
from PySide6.QtGui import (
    QFocusEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPalette,
    QPen,
)
from PySide6.QtWidgets import QCompleter, QHeaderView, QLineEdit, QWidget

from sizekeeper.core.measure_search import find_measure, own_measure
from sizekeeper.ui import theme
from sizekeeper.ui.chart_model import SIZE_ROW, ChartModel

if TYPE_CHECKING:
    from sizekeeper.core.chart import ChartKind
    from sizekeeper.core.measure import Measures


class MeasureHeader(QHeaderView):
    """The names of the measures, set like the first column of a printed table.

    Signals:
        naming_wanted(int): a section was double-clicked, or the one that asks for a measure was clicked.
    """

    naming_wanted = Signal(int)

    def __init__(self, model: ChartModel, parent: QWidget | None = None) -> None:
        super().__init__(Qt.Orientation.Vertical, parent)
        self._model = model
        self.setSectionsClickable(True)
        self.setHighlightSections(True)
        self.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self.setAccessibleName("Measures")
        self.sectionDoubleClicked.connect(self._on_double_click)

    def section_rect(self, section: int) -> QRect:
        """Where a section lies in the viewport."""
        return QRect(0, self.sectionViewportPosition(section), self.viewport().width(), self.sectionSize(section))

    def _on_double_click(self, section: int) -> None:
        if section != SIZE_ROW and self._model.editable:
            self.naming_wanted.emit(section)

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
            self.naming_wanted.emit(section)

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


class MeasureField(QLineEdit):
    """The field in which a measure is picked by typing, or named when it is one of her own.

    Signals:
        named(str, str): the measure's id, and its label where the name is her own or a synonym.
        left(): the field was left without a name.
    """

    named = Signal(str, str)
    left = Signal()

    def __init__(self, measures: Measures, kind: ChartKind, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._measures = measures
        self._kind: ChartKind = kind
        self._done = False
        self.setAccessibleName("Name of the measure")
        self.setPlaceholderText("Type a measure")
        self._known = _names(measures, kind)
        completer = QCompleter(list(self._known), self)
        completer.setCaseSensitivity(Qt.CaseSensitivity.CaseInsensitive)
        completer.setFilterMode(Qt.MatchFlag.MatchContains)
        completer.setMaxVisibleItems(9)
        self.setCompleter(completer)
        completer.activated.connect(self._on_picked)
        self.returnPressed.connect(self.finish)

    def finish(self) -> None:
        """Take what is typed as the measure's name; nothing typed leaves the field."""
        if self._done:
            return
        text = " ".join(self.text().split())
        self._done = True
        if not text:
            self.left.emit()
            return
        known = find_measure(self._measures, text, self._kind)
        if known is not None:
            self.named.emit(known.id, "" if known.name.casefold() == text.casefold() else text)
        else:
            self.named.emit(own_measure(text), text)

    def again(self) -> None:
        """Stay open after a name that cannot be taken."""
        self._done = False
        self.selectAll()

    @Slot(str)
    def _on_picked(self, text: str) -> None:
        if not self._done:
            self._done = True
            self.named.emit(self._known[text], "")

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Leaving the field takes the name, unless only the list of names came up."""
        super().focusOutEvent(event)
        if event.reason() not in (Qt.FocusReason.PopupFocusReason, Qt.FocusReason.ActiveWindowFocusReason):
            self.finish()

    def event(self, event: QEvent) -> bool:
        """Tab takes the name, Escape gives it up."""
        if event.type() == QEvent.Type.KeyPress and isinstance(event, QKeyEvent):
            if event.key() == Qt.Key.Key_Tab:
                self.finish()
                return True
            if event.key() == Qt.Key.Key_Escape and not self._done:
                self._done = True
                self.left.emit()
                return True
        return super().event(event)


def _names(measures: Measures, kind: ChartKind) -> dict[str, str]:
    """Every name that can be picked, with its measure: trade names of this kind of chart first, then synonyms."""
    fitting = [m for m in measures if m.use in ("both", kind)]
    names = {measure.name: measure.id for measure in fitting}
    for measure in fitting:
        for name in measure.synonyms.get("en", ()):
            if name.casefold() != measure.name.casefold():
                names[f"{measure.name} ({name})"] = measure.id
    return names
