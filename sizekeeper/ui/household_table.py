"""A table of the household: names and words at the left, and where there are sizes the bands at the right.

Both halves show the same rows in the same order, are scrolled and picked together, and are one table for the keys.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QSignalBlocker, Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from sizekeeper.ui import theme
from sizekeeper.ui.household_half import HouseHalf
from sizekeeper.ui.household_model import KEY, HouseFilter, HouseModel
from sizekeeper.ui.household_paint import HouseDelegate
from sizekeeper.ui.household_type import HouseType

if TYPE_CHECKING:
    from collections.abc import Sequence

    from PySide6.QtCore import QModelIndex
    from PySide6.QtGui import QResizeEvent

    from sizekeeper.ui.household_cells import Heading, HouseRow

_LEAST_SIZES = 3
"""So many sizes stay in view although the words need their room (coined)."""
_LONGEST, _LONGEST_SHARE = 15, (0.11, 0.2)
"""The widest a column of words may become: steps of distance, or a share of the width, beside sizes and alone (coined).

Longer texts are set small.
"""
_SMALLEST_WIDE = 14
"""The least width of the column that takes what is left, in steps of distance (coined)."""
_CLOSE = 12
"""Both of these in steps of distance where all words and the least of the sizes have no room otherwise (coined)."""


class HouseTable(QWidget):
    """The two halves over one model.

    Signals:
        opened(str): a row is to be opened; its key.
    """

    opened = Signal(str)

    def __init__(self, name: str, matrix_name: str = "", parent: QWidget | None = None) -> None:
        """An empty table; without a name for it there is no half of sizes."""
        super().__init__(parent)
        self.rows = HouseModel(self)
        self.filter = HouseFilter(self.rows, self)
        self.words = HouseHalf(name, self)
        self.sizes = HouseHalf(matrix_name or "Sizes", self)
        self._halves = (self.words, self.sizes)
        self._delegate = HouseDelegate(self)
        self._type = HouseType.now()
        across = QHBoxLayout(self)
        across.setContentsMargins(0, 0, 0, 0)
        across.setSpacing(theme.spacing(1))
        self._foot = QWidget(self)
        left = QVBoxLayout()
        left.setSpacing(0)
        left.addWidget(self.words, 1)
        left.addWidget(self._foot)
        across.addLayout(left, 1)
        across.addWidget(self.sizes)
        for half in self._halves:
            half.setModel(self.filter)
            half.setItemDelegate(self._delegate)
            half.opened.connect(self.opened)
            half.sort_wanted.connect(self.sort_by)
            half.heading.sectionClicked.connect(self._on_heading)
        self.sizes.setSelectionModel(self.words.selectionModel())
        self.words.selectionModel().currentRowChanged.connect(self._on_row)
        self.words.verticalScrollBar().valueChanged.connect(self.sizes.verticalScrollBar().setValue)
        self.sizes.verticalScrollBar().valueChanged.connect(self.words.verticalScrollBar().setValue)
        self.sizes.setVisible(bool(matrix_name))
        self._has_matrix = bool(matrix_name)
        self._sorted: tuple[int, bool] = (0, True)
        self.dress()

    def dress(self) -> None:
        """Take fonts and colours anew."""
        self._type = HouseType.now()
        self._delegate.dress(self.palette(), self._type)
        for half in self._halves:
            half.heading.dress(self._type)
            half.verticalHeader().setDefaultSectionSize(self._type.row_height)
            half.viewport().update()
        self.fit_columns()

    def show_rows(self, headings: Sequence[Heading], rows: Sequence[HouseRow]) -> None:
        """Show other rows; the row that was picked stays picked while it is there."""
        key, anew = self.key, list(headings) != list(self.rows.headings)
        self.rows.show(headings, rows)
        for column, heading in enumerate(headings):
            self.words.setColumnHidden(column, heading.matrix)
            self.sizes.setColumnHidden(column, not heading.matrix)
        column, rising = self._sorted if self._sorted[0] < len(headings) else (0, True)
        self.sort_by(column, rising)
        self.fit_columns()
        if key and key != self.key:
            self.pick(key)
        if anew:
            self._centre_sizes()

    @property
    def needed_height(self) -> int:
        """How high the table is when no row has to be scrolled to."""
        shown = Qt.ScrollBarPolicy.ScrollBarAlwaysOn
        scrolls = any(half.isVisibleTo(self) and half.horizontalScrollBarPolicy() == shown for half in self._halves)
        bar = self.words.horizontalScrollBar().sizeHint().height() if scrolls else 0
        return self._rows_height + bar + theme.spacing(0.5)

    @property
    def _rows_height(self) -> int:
        return self._type.header_height + self._type.row_height * self.filter.rowCount()

    @property
    def key(self) -> str:
        """What the picked row is about, "" while none is picked."""
        index = self.words.currentIndex()
        return str(index.data(KEY)) if index.isValid() else ""

    def pick(self, key: str) -> None:
        """Put the cursor on a row."""
        row = self.filter.row_of(key)
        if row >= 0:
            self.words.setCurrentIndex(self.filter.index(row, max(0, self.words.currentIndex().column())))

    def sort_by(self, column: int, rising: bool) -> None:  # noqa: FBT001 - a slot
        """Sort by a column."""
        order = Qt.SortOrder.AscendingOrder if rising else Qt.SortOrder.DescendingOrder
        self._sorted = (column, rising)
        if (self.filter.sortColumn(), self.filter.sortOrder()) != (column, order):
            self.filter.sort(column, order)
        for half in self._halves:
            with QSignalBlocker(half.heading):
                half.heading.setSortIndicator(column, order)
            half.heading.viewport().update()

    def _marked(self, row: int) -> int:
        """The first column that marks what is to be cut, -1 where none does."""
        columns = [column for column, heading in enumerate(self.rows.headings) if heading.matrix]
        return next((column for column in columns if self.filter.cell(row, column).mark), -1)

    def _centre_sizes(self) -> None:
        """Bring the sizes that most are to be cut at to the middle."""
        marked = sorted(column for row in range(self.filter.rowCount()) if (column := self._marked(row)) >= 0)
        if marked:
            column = marked[len(marked) // 2]
            each = max(self.sizes.columnWidth(column), 1)
            before = self.sizes.viewport().width() // each // 2  # whole columns, so that none is cut at the left
            self.sizes.horizontalScrollBar().setValue(self.sizes.heading.sectionPosition(column) - before * each)

    def _on_row(self, index: QModelIndex) -> None:
        """Bring what is to be cut for the row of the cursor into view."""
        column = self._marked(index.row()) if index.isValid() and not self.sizes.hasFocus() else -1
        if column >= 0:
            self.sizes.scrollTo(self.filter.index(index.row(), column))

    def _on_heading(self, column: int) -> None:
        """A click sorts by a column; another one turns the order round."""
        self.sort_by(column, not self._sorted[1] if self._sorted[0] == column else True)

    def fit_columns(self) -> None:
        """Make columns as wide as their texts; one takes what is left, and the words come before the sizes."""
        if not self.rows.headings:
            return
        tall = self._rows_height > self.height()
        scrolls = self._fit_widths(tall=tall)
        below = self.sizes.horizontalScrollBar().sizeHint().height() if any(scrolls) else 0
        if not tall and self._rows_height + below > self.height():
            tall = True
            scrolls = self._fit_widths(tall=True)
        self._fit_bars_below(words=scrolls[0], sizes=scrolls[1])
        self._fit_bars_beside(tall=tall)

    def _fit_widths(self, *, tall: bool) -> tuple[bool, bool]:
        """The widths of all columns and of the sizes; gives whether words and sizes have to be scrolled sideways."""
        matrix = [column for column, heading in enumerate(self.rows.headings) if heading.matrix and self._has_matrix]
        each = max((self._needed(column) for column in matrix), default=0)
        bar = self.sizes.verticalScrollBar().sizeHint().width() if tall else 0
        room = self.width() - (theme.spacing(1) if matrix else 0)
        whole, least = each * len(matrix) + bar, each * min(len(matrix), _LEAST_SIZES) + bar
        widths, spread = self._word_widths(room - least if matrix else room - bar)
        taken = max(min(whole, room - spread), least) if matrix else 0
        if 0 < taken < whole:
            taken = max((taken - bar) // each, 1) * each + bar  # no size is cut in two
        self.sizes.setVisible(bool(matrix))
        self.sizes.setFixedWidth(max(taken, 1))
        for column in matrix:
            self.sizes.setColumnWidth(column, each)
        left = room - (taken if matrix else bar)
        for column, width in widths.items():
            rest = max(0, left - spread) if self.rows.headings[column].wide else 0
            self.words.setColumnWidth(column, width + rest)
        return spread > left, 0 < taken < whole

    def _word_widths(self, room: int) -> tuple[dict[int, int], int]:
        """The least widths of the columns of words, closer where they have no room otherwise, and their sum."""
        plain = [column for column, heading in enumerate(self.rows.headings) if not heading.matrix]
        roomy = max(theme.spacing(_LONGEST), round(self.width() * _LONGEST_SHARE[0 if self._has_matrix else 1]))
        widths: dict[int, int] = {}
        for longest, wide in ((roomy, _SMALLEST_WIDE), (theme.spacing(_CLOSE), _CLOSE)):
            widths = {
                column: theme.spacing(wide) if self.rows.headings[column].wide else self._needed(column, longest, roomy)
                for column in plain
            }
            if sum(widths.values()) <= room:
                break
        return widths, sum(widths.values())

    def _fit_bars_below(self, *, words: bool, sizes: bool) -> None:
        """A bar below each half that scrolls, and as much room below the other, so that their rows stay level."""
        policy, two = Qt.ScrollBarPolicy, self.sizes.isVisibleTo(self)
        for half, scrolls in ((self.words, words), (self.sizes, sizes or (two and words))):
            half.setHorizontalScrollBarPolicy(policy.ScrollBarAlwaysOn if scrolls else policy.ScrollBarAlwaysOff)
        self._foot.setFixedHeight(self.sizes.horizontalScrollBar().sizeHint().height())
        self._foot.setVisible(two and sizes and not words)

    def _fit_bars_beside(self, *, tall: bool) -> None:
        """One bar at the right, for both halves."""
        policy, two = Qt.ScrollBarPolicy, self.sizes.isVisibleTo(self)
        for half, scrolls in ((self.words, tall and not two), (self.sizes, tall)):
            half.setVerticalScrollBarPolicy(policy.ScrollBarAlwaysOn if scrolls else policy.ScrollBarAlwaysOff)

    def _needed(self, column: int, longest: int = 0, longest_note: int = 0) -> int:
        """How wide a column must be; one of words at most `longest` for its texts, which are set small beyond."""
        heading, kind = self.rows.headings[column], self._type
        if heading.strip:
            return kind.swatch_width(heading.strip) * len(heading.strip) + 2 * kind.pad
        cells = [row.cells[column] for row in self.rows.rows]
        texts, notes = [cell.text for cell in cells], [cell.note for cell in cells]
        if heading.matrix:
            return kind.width([*texts, heading.text], [*notes, heading.note, "close"]) - kind.pad
        box = theme.spacing(3) if any(row.ticked is not None for row in self.rows.rows) and column == 0 else 0
        widths = (min(kind.width(texts, []), longest - box), min(kind.width([], notes), longest_note - box))
        return max(*widths, kind.width([], [heading.text])) + box

    # Qt's own names from here on.

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size and light or dark."""
        super().changeEvent(event)
        if hasattr(self, "_sorted") and (theme.font_changed(event) or theme.palette_changed(event)):
            self.dress()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Share the room anew."""
        super().resizeEvent(event)
        self.fit_columns()
