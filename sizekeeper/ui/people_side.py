"""The right side of the window that imports people: what is to answer, and the people as they will be."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QAbstractItemView, QFrame, QHBoxLayout, QScrollArea, QTableView, QVBoxLayout, QWidget

from sizekeeper.ui import theme
from sizekeeper.ui.import_questions import Questions
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.pattern_link import Link
from sizekeeper.ui.people_model import AT, PeopleModel

if TYPE_CHECKING:
    from PySide6.QtCore import QEvent
    from PySide6.QtGui import QKeyEvent

    from sizekeeper.core.measure import Measures
    from sizekeeper.importing.people_draft import PeopleDraft

_WIDEST, _NARROWEST = 24, 7
"""Steps of spacing that a column is wide at most, and at least."""


class PeopleView(QTableView):
    """The table of people. Space ticks the person of the row, Enter types into the field.

    Signals:
        looked_at(str): the cell behind the current field.
    """

    looked_at = Signal(str)

    def __init__(self, model: PeopleModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setModel(model)
        self.setAccessibleName("The people as they will be")
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setEditTriggers(QAbstractItemView.EditTrigger.EditKeyPressed | QAbstractItemView.EditTrigger.DoubleClicked)
        self.setTabKeyNavigation(False)
        self.setWordWrap(False)
        self.setShowGrid(False)
        self.setAlternatingRowColors(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.verticalHeader().hide()
        self.horizontalHeader().setResizeContentsPrecision(50)
        self.horizontalHeader().setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        self.horizontalHeader().setHighlightSections(False)
        self._space()
        model.modelReset.connect(self.fit)
        model.dataChanged.connect(self._widen)
        self.selectionModel().currentChanged.connect(self._on_moved)

    def fit(self) -> None:
        """Columns as wide as their texts, up to a width."""
        self.resizeColumnsToContents()
        least, most = theme.spacing(_NARROWEST), theme.spacing(_WIDEST)
        for column in range(self.model().columnCount()):
            self.setColumnWidth(column, min(max(self.columnWidth(column) + theme.spacing(1), least), most))

    def _widen(self) -> None:
        """Make room for texts that grew; no column gets narrower while it is looked at."""
        before = [self.columnWidth(column) for column in range(self.model().columnCount())]
        self.fit()
        for column, width in enumerate(before):
            self.setColumnWidth(column, max(width, self.columnWidth(column)))

    def _on_moved(self) -> None:
        at = self.currentIndex().data(AT)
        if at and self.hasFocus():
            self.looked_at.emit(str(at))

    def _space(self) -> None:
        self.verticalHeader().setDefaultSectionSize(theme.spacing(3))

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if theme.font_changed(event):
            self._space()
            self.fit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Space ticks, Enter edits."""
        index = self.currentIndex()
        if event.key() == Qt.Key.Key_Space and index.isValid():
            name = index.siblingAtColumn(0)
            on = Qt.CheckState(name.data(Qt.ItemDataRole.CheckStateRole)) == Qt.CheckState.Checked
            state = Qt.CheckState.Unchecked if on else Qt.CheckState.Checked
            self.model().setData(name, state, Qt.ItemDataRole.CheckStateRole)
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self.state() != self.State.EditingState:
            self.edit(index)
        else:
            super().keyPressEvent(event)


class PeopleSide(QWidget):
    """What becomes of the table.

    Signals:
        again_wanted(str): who somebody is shall be asked again, by the cell of her name.
    """

    again_wanted = Signal(str)

    def __init__(self, measures: Measures, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.questions = Questions(self)
        self.model = PeopleModel(measures, self)
        self.view = PeopleView(self.model, self)
        self.heading = Lettering("", "small heading", self)
        self.again = Link("Ask again", "Ask again who this person is", self)
        self.again.setToolTip("Ask again whether the person of this row is known, and which rows belong together")
        self._scroll = QScrollArea(self)
        self._scroll.setWidgetResizable(True)
        self._scroll.setFrameShape(QFrame.Shape.NoFrame)
        self._scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._arrange()
        self.again.clicked.connect(self._on_again)
        self.view.selectionModel().currentChanged.connect(self._enable)
        self.model.modelReset.connect(self._enable)
        self._enable()

    def _arrange(self) -> None:
        content = QWidget(self)
        self._inner = QVBoxLayout(content)
        self._inner.addWidget(self.questions)
        self._inner.addStretch(1)
        self._scroll.setWidget(content)
        for ground in (content, self._scroll.viewport()):
            ground.setAutoFillBackground(False)
        top = QHBoxLayout()
        top.addWidget(self.heading, 1)
        top.addWidget(self.again)
        self._column = QVBoxLayout(self)
        self._column.addWidget(self._scroll, 5)
        self._column.addLayout(top)
        self._column.addWidget(self.view, 6)
        self._space()

    def show_reading(self, draft: PeopleDraft) -> None:
        """Show the reading as it is now."""
        self.questions.show_them(draft.asks, draft.remarks)
        self._scroll.setVisible(bool(draft.asks or draft.remarks))
        self.model.show(draft)
        count = len(draft.people)
        self.heading.setText("Nobody was found yet" if not count else "One person" if count == 1 else f"{count} people")

    def _on_again(self) -> None:
        index = self.view.currentIndex()
        if index.isValid():
            self.again_wanted.emit(self.model.people[index.row()].at)

    def _enable(self) -> None:
        index = self.view.currentIndex()
        known = index.isValid() and index.row() < len(self.model.people) and bool(self.model.people[index.row()].known)
        self.again.setVisible(bool(known))

    def _space(self) -> None:
        self._column.setContentsMargins(theme.spacing(1.5), 0, theme.spacing(3), theme.spacing(1))
        self._column.setSpacing(theme.spacing(0.75))
        self._inner.setContentsMargins(0, 0, theme.spacing(1), 0)

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if theme.font_changed(event):
            self._space()
