"""The versions of one entry: when each was made, what it says beside what stands now, and how to put it back."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtGui import QFont
from PySide6.QtWidgets import (
    QAbstractItemView,
    QComboBox,
    QDialogButtonBox,
    QHBoxLayout,
    QHeaderView,
    QListWidget,
    QListWidgetItem,
    QPushButton,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from sizekeeper import assets
from sizekeeper.core.make import Make
from sizekeeper.core.pattern import Pattern
from sizekeeper.core.piece import Pieces
from sizekeeper.ui import theme
from sizekeeper.ui.entry_words import entry_name
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.paper_dialog import PaperDialog
from sizekeeper.ui.pieces_desk import FIELD
from sizekeeper.ui.selection import Place
from sizekeeper.ui.version_words import lines_of, moment_words

if TYPE_CHECKING:
    from PySide6.QtGui import QResizeEvent, QShowEvent

    from sizekeeper.store.codec import Value
    from sizekeeper.store.versions import Version
    from sizekeeper.ui.session import Session


class HistoryDialog(PaperDialog):
    """The history of a person and her makes, of one make, or of a pattern and what is of it.

    Putting back is an edit that can be undone.
    """

    def __init__(self, session: Session, value: Value, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._owner = value
        self._versions: list[Version] = []
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle(f"History of {entry_name(value)}")
        self.entries = QComboBox(self)
        self.list = QListWidget(self)
        self.table = QTableWidget(0, 3, self)
        self._say = Lettering("", "muted", self)
        self.back = QPushButton("Put this version back", self)
        self._fill_entries()
        self._dress()
        self._arrange()
        self.entries.currentIndexChanged.connect(self._show_entry)
        self.list.currentRowChanged.connect(self._show_version)
        self.back.clicked.connect(self._put_back)
        self._show_entry()
        self.list.setFocus()

    def _fill_entries(self) -> None:
        self.entries.addItem(
            "Pattern details" if isinstance(self._owner, Pattern) else entry_name(self._owner), self._owner.id
        )
        for chart in self._session.charts(self._owner.id):
            self.entries.addItem(entry_name(chart), chart.id)
        for value in self._session.values():
            if isinstance(value, Pieces | Make) and self._owner.id in (value.pattern, getattr(value, "person", "")):
                self.entries.addItem(self._part_name(value), value.id)

    def _part_name(self, value: Pieces | Make) -> str:
        """What belongs to the owner, by name; a make of a pattern with the person it is for."""
        name = entry_name(value)
        if isinstance(value, Make):
            person = self._session.committed(value.person) if isinstance(self._owner, Pattern) else None
            name += f", for {entry_name(person)}" if person is not None else ""
            name += f", view {value.view}" if value.view else ""
        return name

    def _dress(self) -> None:
        self.entries.setAccessibleName("History of")
        self.entries.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.entries.setVisible(self.entries.count() > 1)
        self.list.setAccessibleName("Versions, the newest first")
        self.list.setWordWrap(True)
        self.table.setAccessibleName("What the version says, beside what stands now")
        self.table.setHorizontalHeaderLabels(["", "In this version", "Now"])
        self.table.verticalHeader().hide()
        self.table.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        self.table.setShowGrid(False)
        self.table.setAlternatingRowColors(True)  # a piece takes several lines, and its name stands beside the first
        self.table.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.table.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.table.setTabKeyNavigation(False)
        header = self.table.horizontalHeader()
        header.setSectionResizeMode(QHeaderView.ResizeMode.Stretch)
        header.setSectionResizeMode(0, QHeaderView.ResizeMode.Fixed)
        header.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        header.setHighlightSections(False)

    def _arrange(self) -> None:
        right = QVBoxLayout()
        right.addWidget(self._say)
        right.addWidget(self.table, 1)
        both = QHBoxLayout()
        both.setSpacing(theme.spacing(2))
        both.addWidget(self.list, 2)
        both.addLayout(right, 5)
        buttons = QDialogButtonBox(self)
        buttons.addButton("Close", QDialogButtonBox.ButtonRole.RejectRole)
        buttons.addButton(self.back, QDialogButtonBox.ButtonRole.ActionRole)
        buttons.rejected.connect(self.reject)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(*(theme.spacing(2),) * 4)
        layout.setSpacing(theme.spacing(1.5))
        heading = Lettering(self.windowTitle(), "part", self)
        heading.setWordWrap(True)
        layout.addWidget(heading)
        layout.addWidget(self.entries)
        layout.addLayout(both, 1)
        layout.addWidget(buttons)
        self.resize(theme.spacing(110), theme.spacing(64))

    def _show_entry(self) -> None:
        """List the versions of the entry that was picked."""
        self.entries.setToolTip(self.entries.currentText())  # a long name may not fit
        self._versions = self._session.writer.library.history(str(self.entries.currentData()))
        self.list.clear()
        for version in self._versions:
            item = QListWidgetItem(f"{moment_words(version.edited)}\n{version.text}")
            self.list.addItem(item)
        self.list.setCurrentRow(0)

    def _show_version(self, row: int) -> None:
        """Lay the version beside what stands now; the lines that differ are set in bold and come first."""
        if not 0 <= row < len(self._versions):
            return
        value, now = self._versions[row].value, self._session.committed(str(self.entries.currentData()))
        then_lines, now_lines = lines_of(value, assets.measures()), lines_of(now, assets.measures())
        labels = list(dict.fromkeys((*then_lines, *now_lines)))
        labels.sort(key=lambda label: then_lines.get(label) == now_lines.get(label))
        self.table.setRowCount(len(labels))
        differing = 0
        for line, label in enumerate(labels):
            then, present = then_lines.get(label, "–"), now_lines.get(label, "–")
            differing += then != present
            self._set_line(line, (label, then, present), bold=then != present)
        self._fit_labels()
        self.back.setEnabled(value is not None and value != now and not self._session.read_only)
        self._say.setText(self._difference(value, differing, same=value == now))

    def _fit_labels(self) -> None:
        """The labels get what they need, but never more than a third: long names of pieces go on below."""
        wanted = self.table.sizeHintForColumn(0)
        self.table.setColumnWidth(0, min(wanted, self.table.viewport().width() // 3))

    @staticmethod
    def _difference(value: Value | None, differing: int, *, same: bool) -> str:
        if value is None:
            return "Here the entry was taken away."
        if same:
            return "This is what stands now."
        if not differing:
            return "It differs from what stands now in something that is not listed here."
        lines = "One line differs" if differing == 1 else f"{differing} lines differ"
        return f"{lines} from what stands now, shown first in bold."

    def _set_line(self, line: int, texts: tuple[str, str, str], *, bold: bool) -> None:
        font = QFont(self.font())
        font.setBold(bold)
        for column, text in enumerate(texts):
            item = QTableWidgetItem(text)
            item.setFont(font)
            item.setTextAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop)
            item.setToolTip(text)
            if bold:
                item.setData(Qt.ItemDataRole.AccessibleTextRole, f"{text}, differs")
            self.table.setItem(line, column, item)

    def _put_back(self) -> None:
        """Make the version what stands now, as one edit."""
        version = self._versions[self.list.currentRow()]
        if version.value is None:
            return
        entry = version.value.id
        text = f"Put back {entry_name(version.value)} of {moment_words(version.edited)}"
        self._session.apply(text, self._session.committed(entry), version.value, place=self._place_of(version.value))
        self.accept()

    def _place_of(self, value: Value) -> Place:
        """Where what was put back is seen."""
        if isinstance(value, Pieces):
            return Place("pattern", value.pattern, f"{FIELD}||list")
        if isinstance(self._owner, Make):
            return Place("makes", self._owner.id)
        if isinstance(value, Make):
            return Place("fit", value.person, f"{value.pattern}/plan:plans/{value.view}")
        return Place("pattern" if isinstance(self._owner, Pattern) else "person", self._owner.id)

    # Qt's own names from here on.

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Find the width of the labels."""
        super().resizeEvent(event)
        self._fit_labels()

    def showEvent(self, event: QShowEvent) -> None:
        """The table has found its width."""
        super().showEvent(event)
        self._fit_labels()
