"""The sizes' side of the ease table: a view that keeps the chosen size in the middle."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtWidgets import QAbstractItemView, QFrame, QHeaderView, QTableView, QWidget

from sizekeeper.ui import theme
from sizekeeper.ui.ease_paint import EaseDelegate, SizeHeading
from sizekeeper.ui.ease_type import EaseType

if TYPE_CHECKING:
    from PySide6.QtCore import QModelIndex
    from PySide6.QtGui import QKeyEvent

    from sizekeeper.ui.ease_model import EaseModel

EITHER_SIDE = 5
"""How many columns stand on either side of the chosen one at most; the others are scrolled to."""
_WIDEST = 1.6
"""How many times its needed width a column may have at most."""


class EaseView(QTableView):
    """Cells of the ease table. It never scrolls up and down: the page does.

    Signals:
        explain(int): the reasons for the size in a column are wanted.
    """

    explain = Signal(int)

    def __init__(self, model: EaseModel, parent: QWidget | None = None) -> None:
        """Show a model."""
        super().__init__(parent)
        self._model = model
        self._type = EaseType.now()
        self._room = self._need = 0
        self._delegate = EaseDelegate(self)
        self._heading = SizeHeading(self)
        self.setHorizontalHeader(self._heading)
        self.setItemDelegate(self._delegate)
        self.setModel(model)
        self.verticalHeader().hide()
        self.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self._plain_looks()
        self._heading.sectionClicked.connect(self.explain)
        self.activated.connect(self._on_activated)
        self.dress()

    def _plain_looks(self) -> None:
        self.setShowGrid(False)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setSelectionMode(QAbstractItemView.SelectionMode.NoSelection)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setTabKeyNavigation(False)
        self.setAccessibleName("Ease in each size")
        self.viewport().setAutoFillBackground(False)

    def dress(self) -> None:
        """Take fonts and colours anew."""
        self._type = EaseType.now()
        self._delegate.dress(self.palette(), self._type)
        self._heading.dress(self._type)
        self.verticalHeader().setDefaultSectionSize(self._type.row_height)
        self.measure()
        self.viewport().update()

    @property
    def needed_width(self) -> int:
        """How wide the columns that belong in view are at least."""
        in_view = min(self._model.columnCount(), 2 * EITHER_SIDE + 1)
        return in_view * self._need

    def measure(self) -> None:
        """Find out how wide a column must be: the texts or the fonts changed."""
        self._need = self._type.column_width(*self._model.widest())
        self.fit_columns()

    def set_room(self, pixels: int) -> None:
        """How wide the view may become."""
        if pixels != self._room:
            self._room = pixels
            self.fit_columns()
            self.centre_chosen()

    def fit_columns(self) -> None:
        """Make columns as wide as their texts, wider where there is room, and the view as large as what it shows."""
        count, need = self._model.columnCount(), self._need
        in_view = max(1, min(count, 2 * EITHER_SIDE + 1))
        width = max(need, min(self._room // in_view, round(need * _WIDEST)))
        if self._heading.defaultSectionSize() != width:
            self._heading.setMinimumSectionSize(1)
            self._heading.setDefaultSectionSize(width)
        shown = min(self._room, in_view * width)
        height = self._type.header_height + self._type.row_height * self._model.rowCount()
        height += self.horizontalScrollBar().sizeHint().height() if count * width > shown else 0
        self.setMaximumWidth(shown)
        if self.minimumHeight() != height:
            self.setFixedHeight(height)

    def centre_chosen(self) -> None:
        """Bring the chosen size to the middle."""
        chosen = self._model.table.chosen
        if chosen is not None and chosen < self._model.columnCount():
            width = self._heading.defaultSectionSize()
            middle = chosen * width + width / 2
            self.updateGeometries()
            self.horizontalScrollBar().setValue(round(middle - self.viewport().width() / 2))

    def _on_activated(self, index: QModelIndex) -> None:
        self.explain.emit(index.column())

    # Qt's own names from here on.

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size and light or dark."""
        super().changeEvent(event)
        if hasattr(self, "_delegate") and (theme.font_changed(event) or theme.palette_changed(event)):
            self.dress()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter explains the size of the current cell, on every platform."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self.currentIndex().isValid():
            self.explain.emit(self.currentIndex().column())
            return
        super().keyPressEvent(event)
