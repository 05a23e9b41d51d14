"""The left side of the import window: the sheets, what can be set on the grid, the grid and its legend."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPalette
from PySide6.QtWidgets import QComboBox, QHBoxLayout, QVBoxLayout, QWidget

from sizekeeper.ui import theme
from sizekeeper.ui.import_grid import ImportGrid
from sizekeeper.ui.import_grid_model import GridModel
from sizekeeper.ui.import_roles import LEGEND, RoleLook, paint_role
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.pattern_link import Link

if TYPE_CHECKING:
    from collections.abc import Sequence

    from PySide6.QtCore import QEvent
    from PySide6.QtGui import QPaintEvent

    from sizekeeper.importing.opened import Opened
    from sizekeeper.importing.question import Ask


class Swatch(QWidget):
    """A small cell outlined as its role is, with the role's letter."""

    def __init__(self, look: RoleLook, parent: QWidget) -> None:
        super().__init__(parent)
        self._look = look

    def sizeHint(self) -> QSize:
        """As high as a line of text, and a little wider."""
        return QSize(theme.spacing(3), theme.spacing(2.25))

    def minimumSizeHint(self) -> QSize:
        """The same."""
        return self.sizeHint()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The outline and the letter."""
        painter = QPainter(self)
        rect = QRectF(0, 0, theme.spacing(3), self.height())
        painter.fillRect(rect, self.palette().color(QPalette.ColorRole.Base))
        paint_role(painter, rect, self._look, self.palette(), marked=False)
        painter.setFont(theme.scaled_font(0.72))
        painter.setPen(theme.muted_text(self.palette()))
        painter.drawText(rect, int(Qt.AlignmentFlag.AlignCenter), self._look.letter)


class SheetPanel(QWidget):
    """The file as it is.

    Signals:
        area_wanted(bool): the marked rectangle holds a table; whether beside those set before.
        look_wanted(): the tables of this sheet shall be looked for everywhere again.
        typed(str, str, str): the sheet, a cell's address and its new text.
        leave_wanted(str, object): the sheet and the addresses of cells that shall not be read.
        back_wanted(str, object): the sheet and the addresses of cells that shall be read as they came.
        sheet_shown(str): the sheet of this name is shown.
    """

    area_wanted = Signal(bool)
    look_wanted = Signal()
    typed = Signal(str, str, str)
    leave_wanted = Signal(str, object)
    back_wanted = Signal(str, object)
    sheet_shown = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._opened: Opened | None = None
        self._asked: Sequence[Ask] = ()
        self.model = GridModel(self)
        self.grid = ImportGrid(self.model, self)
        self.sheets = QComboBox(self)
        self.sheets.setAccessibleName("Sheet of the file")
        self.one = Link("This is the table", "The marked cells are the table", self)
        self.also = Link("Also a table", "The marked cells are a table too", self)
        self.everywhere = Link("Look everywhere", "Look for tables everywhere on this sheet again", self)
        self.leave = Link("Leave out", "Leave the marked cells out, or take them back", self)
        self.restore = Link("As it came", "Read the marked cells as they came", self)
        self.line = Lettering("", "muted", self)
        self.legend = QWidget(self)
        self._arrange()
        self._connect()
        self._enable()

    def _arrange(self) -> None:
        self._tools = QHBoxLayout()
        self._tools.addWidget(self.sheets)
        for link in (self.one, self.also, self.everywhere, self.leave, self.restore):
            self._tools.addWidget(link)
        self._tools.addStretch(1)
        self._legend = QHBoxLayout(self.legend)
        self._legend.setContentsMargins(0, 0, 0, 0)
        for look in LEGEND:
            self._legend.addWidget(Swatch(look, self.legend))
            words = Lettering(look.words.partition(",")[0], "note", self.legend)
            words.setWordWrap(False)
            self._legend.addWidget(words)
            self._legend.addSpacing(theme.spacing(1))
        self._legend.addStretch(1)
        self._column = QVBoxLayout(self)
        self._column.addLayout(self._tools)
        self._column.addWidget(self.grid, 1)
        self._column.addWidget(self.line)
        self._column.addWidget(self.legend)
        self._space()

    def _connect(self) -> None:
        self.sheets.activated.connect(self._on_sheet)
        self.one.clicked.connect(self._on_one)
        self.also.clicked.connect(self._on_also)
        self.everywhere.clicked.connect(self.look_wanted)
        self.leave.clicked.connect(self.grid.leave_out)
        self.restore.clicked.connect(self.grid.restore)
        self.grid.moved.connect(self._on_moved)
        self.grid.leave_wanted.connect(self._on_leave)
        self.grid.back_wanted.connect(self._on_back)
        self.model.typed.connect(self._on_typed)
        self.grid.selectionModel().selectionChanged.connect(self._enable)

    @property
    def sheet(self) -> str:
        """The name of the sheet that is shown."""
        return self.model.sheet.name

    def show_reading(self, opened: Opened, asked: Sequence[Ask]) -> None:
        """Show the sheet that is looked at as it is read now; at first the one with the first table."""
        first = self._opened is None
        self._opened, self._asked = opened, asked
        self._fill_sheets(opened)
        if first:
            start = opened.draft.tables[0].sheet if opened.draft.tables else opened.sheets[0].name
            self.sheets.setCurrentIndex(max(self.sheets.findData(start), 0))
        self._show_sheet()
        self._enable()
        self._on_moved()

    def _fill_sheets(self, opened: Opened) -> None:
        row = self.sheets.currentIndex()
        self.sheets.clear()
        for sheet in opened.sheets:
            tables = sum(table.sheet == sheet.name for table in opened.draft.tables)
            words = {0: "no table", 1: "1 table"}.get(tables, f"{tables} tables")
            self.sheets.addItem(f"{sheet.name} – {words}", sheet.name)
        self.sheets.setCurrentIndex(max(row, 0))
        self.sheets.setVisible(len(opened.sheets) > 1)

    def _show_sheet(self) -> None:
        if self._opened is not None:
            self.model.show(self._opened, self._opened.sheets[self.sheets.currentIndex()], self._asked)
            self.sheet_shown.emit(self.sheet)

    def go_to(self, sheet: str, at: str) -> None:
        """Bring a cell into view, on whichever sheet it is."""
        row = self.sheets.findData(sheet)
        if row >= 0 and row != self.sheets.currentIndex():
            self.sheets.setCurrentIndex(row)
            self._show_sheet()
        if at:
            self.grid.go_to(at)

    def edit(self, sheet: str, at: str) -> None:
        """Open a cell for typing."""
        self.go_to(sheet, at)
        self.grid.setFocus(Qt.FocusReason.OtherFocusReason)
        self.grid.edit(self.grid.currentIndex())

    def _on_sheet(self) -> None:
        self._show_sheet()
        self._enable()

    def _on_one(self) -> None:
        self.area_wanted.emit(False)

    def _on_also(self) -> None:
        self.area_wanted.emit(True)

    def _on_typed(self, at: str, text: str) -> None:
        self.typed.emit(self.sheet, at, text)

    def _on_leave(self, cells: list[str]) -> None:
        self.leave_wanted.emit(self.sheet, cells)

    def _on_back(self, cells: list[str]) -> None:
        self.back_wanted.emit(self.sheet, cells)

    def _on_moved(self) -> None:
        index = self.grid.currentIndex()
        self.line.setText(self.model.says(index.row(), index.column()) if index.isValid() else "")

    def _enable(self) -> None:
        box = self.grid.marked_box()
        areas = self._opened.answers.corrections.areas.get(self.sheet, ()) if self._opened else ()
        self.one.setEnabled(box is not None)
        self.also.setEnabled(box is not None and bool(areas))
        self.also.setVisible(bool(areas))
        self.everywhere.setVisible(bool(areas))
        self.one.setToolTip("" if box else "Mark the cells of the table first, with its sizes and measures")
        marked = bool(self.grid.marked())
        self.leave.setEnabled(marked)
        self.restore.setEnabled(marked)

    def _space(self) -> None:
        self._tools.setSpacing(theme.spacing(0.5))
        self._legend.setSpacing(theme.spacing(0.75))
        self._column.setContentsMargins(theme.spacing(3), 0, theme.spacing(1.5), theme.spacing(1))
        self._column.setSpacing(theme.spacing(0.75))

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if theme.font_changed(event):
            self._space()
