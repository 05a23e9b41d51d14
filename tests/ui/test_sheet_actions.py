"""The File menu's lines for sheets."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from PySide6.QtGui import QKeySequence
from PySide6.QtPrintSupport import QPrinter

from sizekeeper.ui.import_reading import Reading
from sizekeeper.ui.sheet_printing import PrintQuestion
from tests.ui.household import settle
from tests.ui.sheets import Pages, instead

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from pytestqt.qtbot import QtBot

    from sizekeeper.ui.window import MainWindow


@pytest.fixture
def main(window: MainWindow, monkeypatch: pytest.MonkeyPatch) -> Iterator[MainWindow]:
    """The main window with the dress and somebody to wear it."""
    instead(monkeypatch, Pages())
    settle(window.session, window.selection)
    yield window
    window.close()
    Reading.finish_all()


def test_a_sheet_is_offered_when_there_is_a_person_and_a_pattern(window: MainWindow) -> None:
    sheets = window.sheets
    actions = (sheets.sheet, sheets.print, sheets.everybody)
    assert not any(action.isEnabled() for action in actions)
    settle(window.session, window.selection)
    assert all(action.isEnabled() for action in actions)
    window.session.undo_stack.undo()
    window.selection.choose_pattern("")
    assert not any(action.isEnabled() for action in actions)


def test_the_lines_stand_in_the_file_menu_with_their_keys(main: MainWindow) -> None:
    menu = main.menuBar().actions()[0].menu()
    assert menu is not None
    texts = [action.text() for action in menu.actions()]  # type: ignore[attr-defined]  # a menu, whatever the stub says
    at = texts.index("&Decision sheet…")
    assert texts[at : at + 3] == ["&Decision sheet…", "&Print…", "Save sheets for &everybody…"]
    assert main.sheets.print.shortcuts() == QKeySequence.keyBindings(QKeySequence.StandardKey.Print)


def test_one_window_is_brought_to_the_front_again(main: MainWindow, qtbot: QtBot) -> None:
    main.sheets.sheet.trigger()
    first = main.sheets.window
    assert first is not None
    qtbot.waitUntil(lambda: first.pages.shown is not None)
    first.close()
    main.sheets.sheet.trigger()
    assert main.sheets.window is first
    assert first.isVisible()
    assert first.isWindow()


def test_print_asks_for_a_printer_at_once_and_the_status_line_says_where(
    main: MainWindow, qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def ask(printer: QPrinter, _parent: object, then: object) -> None:
        printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
        printer.setOutputFileName(str(tmp_path / "out.pdf"))
        then()  # type: ignore[operator]  # what is to be called

    monkeypatch.setattr(PrintQuestion, "ask", ask)
    with qtbot.waitSignal(main.sheets.told):
        main.sheets.print.trigger()
    assert "out.pdf" in main.status.words.text()
    assert (tmp_path / "out.pdf").stat().st_size > 0


def test_closing_the_main_window_closes_the_sheets_and_ends_their_threads(main: MainWindow) -> None:
    main.sheets.sheet.trigger()
    main.sheets.everybody.trigger()
    main.close()
    assert main.sheets.window is not None
    assert main.sheets.many is not None
    assert not main.sheets.window.isVisible()
    assert not main.sheets.many.isVisible()
    assert not Reading._running
