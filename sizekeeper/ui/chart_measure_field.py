"""The field in which a chart's measure is picked by typing, or named when it is one of her own."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QStringListModel, Qt, Signal, Slot
from PySide6.QtGui import QFocusEvent, QKeyEvent
from PySide6.QtWidgets import QCompleter, QLineEdit, QWidget

from sizekeeper.core.measure_search import find_measure, own_measure, suggest
from sizekeeper.ui import theme

if TYPE_CHECKING:
    from sizekeeper.core.chart import ChartKind
    from sizekeeper.core.measure import Measures


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
        self._known: dict[str, str] = {}
        self._suggestions = QStringListModel(self)
        completer = QCompleter(self._suggestions, self)
        completer.setCompletionMode(QCompleter.CompletionMode.UnfilteredPopupCompletion)
        completer.setMaxVisibleItems(9)
        if (popup := completer.popup()) is not None:
            popup.setMinimumWidth(theme.spacing(40))
        self.setCompleter(completer)
        self.textEdited.connect(self.offer)
        completer.activated.connect(self._on_picked)

    def offer(self, text: str) -> None:
        """Offer the measures that what is typed may mean."""
        self._known = suggest(self._measures, text, self._kind)
        self._suggestions.setStringList(list(self._known))

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
        """Enter and Tab take the name, Escape gives it up."""
        if event.type() == QEvent.Type.KeyPress and isinstance(event, QKeyEvent):
            if event.key() in (Qt.Key.Key_Tab, Qt.Key.Key_Return, Qt.Key.Key_Enter):
                self.finish()
                return True
            if event.key() == Qt.Key.Key_Escape and not self._done:
                self._done = True
                self.left.emit()
                return True
        return super().event(event)
