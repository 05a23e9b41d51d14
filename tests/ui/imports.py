"""Import windows for tests: charts written in one line, opened over the test's library."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from sizekeeper.ui.import_reading import Reading
from sizekeeper.ui.import_window import ImportWindow
from tests.importing.charts import opened

if TYPE_CHECKING:
    from pytestqt.qtbot import QtBot

    from sizekeeper.core.learned import Learned
    from sizekeeper.importing.draft import DraftTable
    from sizekeeper.importing.opened import Opened
    from sizekeeper.ui.import_questions import AskLine
    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Session


class Desk:
    """An import window and the hands of someone who uses it; every act waits until it was read."""

    def __init__(
        self, chart: str, session: Session, selection: Selection, qtbot: QtBot, learned: Learned | None = None
    ) -> None:
        self.session, self.qtbot = session, qtbot
        self.window = ImportWindow(opened(chart, learned), session, selection)
        self.window.keeps_answers = True
        self.window.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose, False)
        self.saved: list[str] = []
        self.window.saved.connect(self.saved.append)
        qtbot.addWidget(self.window)
        with qtbot.waitActive(self.window):
            self.window.show()

    @property
    def reading(self) -> Opened:
        return self.window.opened

    @property
    def tables(self) -> tuple[DraftTable, ...]:
        return self.window.opened.tables

    def settle(self) -> None:
        """Wait until what was set by hand is read."""
        self.qtbot.waitUntil(lambda: not self.window.correcting.busy)

    def figures(self, row: int = 0, table: int = 0) -> list[str]:
        return [cell.text for cell in self.tables[table].rows[row].cells]

    def asked(self) -> list[AskLine]:
        return self.window.side.questions.asked()

    def press(self, text: str) -> None:
        """Press the first answer of this text."""
        next(b for line in self.asked() for b in line.buttons if b.text() == text).click()
        self.settle()

    def type(self, text: str, *, end: bool = True) -> None:
        """Type into what has the focus, key by key, and Enter."""
        for key in [*text, *([Qt.Key.Key_Return] if end else [])]:
            widget = QApplication.focusWidget()
            assert widget is not None
            QTest.keyClick(widget, key)
        QApplication.processEvents()
        self.settle()

    def chart_cell(self, row: int, column: int, table: int = 0) -> None:
        """Stand on a place of the chart as it will be."""
        card = self.window.side.cards[table]
        card.view.setFocus()
        card.view.setCurrentIndex(card.model.index(row, column))

    def save(self) -> None:
        self.window.bar.save.click()


def finish() -> None:
    """Wait for every reading in the background."""
    Reading.finish_all()
