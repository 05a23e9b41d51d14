from __future__ import annotations

from typing import TYPE_CHECKING, cast

import pytest
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QApplication, QWidget

from sizekeeper.ui.import_actions import ChartFiles, ImportActions
from sizekeeper.ui.import_leave_question import LeaveQuestion
from sizekeeper.ui.import_list import ImportList
from sizekeeper.ui.import_window import ImportWindow
from sizekeeper.ui.people_question import PeopleQuestion
from sizekeeper.ui.people_window import PeopleWindow
from tests.importing.charts import BODY, NO_UNIT, texts

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from pytestqt.qtbot import QtBot

    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Session
    from sizekeeper.ui.settings import Settings
    from sizekeeper.ui.window import MainWindow

HTML = "<table><tr><td>Body (cm)<td>S<td>M</tr><tr><td>Bust<td>82<td>88</tr></table>"


@pytest.fixture
def actions(session: Session, selection: Selection, settings: Settings, qtbot: QtBot) -> Iterator[ImportActions]:
    window = QWidget()
    qtbot.addWidget(window)
    actions = ImportActions(session, selection, settings, window)
    yield actions
    actions.finish()


@pytest.fixture
def chart_file(tmp_path: Path) -> Path:
    (tmp_path / "dress.csv").write_text(texts(BODY))
    return tmp_path / "dress.csv"


def mime(*paths: Path, html: str = "", text: str = "") -> QMimeData:
    data = QMimeData()
    if paths:
        data.setUrls([QUrl.fromLocalFile(str(path)) for path in paths])
    if html:
        data.setHtml(html)
    if text:
        data.setText(text)
    return data


def after(actions: ImportActions, qtbot: QtBot, act: object) -> ImportWindow | ImportList:
    """The window that opens once something was done."""
    with qtbot.waitSignal(actions.opened) as opened:
        act()  # type: ignore[operator]  # what was given to be done
    assert opened.args is not None
    window: ImportWindow | ImportList = opened.args[0]
    return window


def test_a_picked_file_opens_in_the_import_window(
    actions: ImportActions, qtbot: QtBot, chart_file: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(ChartFiles, "ask", lambda _parent, _folder: [chart_file])
    window = after(actions, qtbot, actions.files.trigger)
    assert isinstance(window, ImportWindow)
    assert window.opened.name == "dress.csv"


def test_the_folder_is_remembered_for_the_next_time(
    actions: ImportActions, qtbot: QtBot, chart_file: Path, monkeypatch: pytest.MonkeyPatch, settings: Settings
) -> None:
    monkeypatch.setattr(ChartFiles, "ask", lambda _parent, _folder: [chart_file])
    after(actions, qtbot, actions.files.trigger)
    assert settings.stored.value("import/folder") == str(chart_file.parent)


def test_several_picked_files_open_in_a_list(
    actions: ImportActions, qtbot: QtBot, chart_file: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(ChartFiles, "ask", lambda _parent, _folder: [chart_file, chart_file])
    assert isinstance(after(actions, qtbot, actions.files.trigger), ImportList)


def test_no_picked_file_does_nothing(actions: ImportActions, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(ChartFiles, "ask", lambda _parent, _folder: [])
    actions.files.trigger()
    assert actions.reading is None


def test_a_file_that_cannot_be_read_is_told_in_one_sentence(
    actions: ImportActions, qtbot: QtBot, tmp_path: Path
) -> None:
    with qtbot.waitSignal(actions.trouble) as trouble:
        actions.read_files([tmp_path / "gone.csv"])
    assert trouble.args == ["There is no file “gone.csv”."]


@pytest.mark.parametrize("pasted", [mime(text=texts(BODY)), mime(html=HTML)], ids=["text", "html"])
def test_what_is_on_the_clipboard_opens(actions: ImportActions, qtbot: QtBot, pasted: QMimeData) -> None:
    QApplication.clipboard().setMimeData(mime(html=pasted.html(), text=pasted.text()))
    window = after(actions, qtbot, actions.paste.trigger)
    assert isinstance(window, ImportWindow)
    assert window.opened.tables[0].labels[:2] == ("S", "M")


def test_an_empty_clipboard_is_told(actions: ImportActions, qtbot: QtBot) -> None:
    QApplication.clipboard().clear()
    with qtbot.waitSignal(actions.trouble) as trouble:
        actions.paste.trigger()
    assert trouble.args == ["There is no text on the clipboard: copy the chart first, then paste it."]


def test_files_and_tables_may_be_dropped_and_nothing_else(actions: ImportActions, chart_file: Path) -> None:
    drops = mime(chart_file), mime(html=HTML), mime(text="Bust 82"), mime(html="<b>Bust</b>")
    assert [actions.accepts(drop) for drop in drops] == [True, True, False, False]


def test_a_file_dropped_on_the_window_is_read(
    actions: ImportActions, qtbot: QtBot, chart_file: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    data, copy, left = mime(chart_file), Qt.DropAction.CopyAction, Qt.MouseButton.LeftButton
    window = cast("QWidget", actions.parent())
    none = Qt.KeyboardModifier.NoModifier
    entered = QDragEnterEvent(QPoint(1, 1), copy, data, left, none)
    QApplication.sendEvent(window, entered)
    dropped = QDropEvent(QPointF(1, 1), copy, data, left, none)
    opened = after(actions, qtbot, lambda: QApplication.sendEvent(window, dropped))
    assert (entered.isAccepted(), isinstance(opened, ImportWindow)) == (True, True)


@pytest.fixture
def people_file(tmp_path: Path) -> Path:
    (tmp_path / "cast.csv").write_text("Name,Bust,Waist,Hip\nMarit,92,74,100\nSolveig,101,84,108\n")
    return tmp_path / "cast.csv"


def answer(monkeypatch: pytest.MonkeyPatch, said: str) -> list[str]:
    """Answer what a table is to be read as; the names of what was asked about."""
    asked: list[str] = []

    def ask(_parent: QWidget, name: str, *, chart: bool) -> str:
        del chart
        asked.append(name)
        return said

    monkeypatch.setattr(PeopleQuestion, "ask", ask)
    return asked


def test_a_table_of_people_dropped_on_the_window_opens_among_the_people_when_that_is_said(
    window: MainWindow, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch, people_file: Path
) -> None:
    asked = answer(monkeypatch, "people")
    with qtbot.waitSignal(window.people.opened) as opened:
        window.charts.accept_drop(mime(people_file))
    assert asked == ["cast.csv"]
    assert opened.args is not None
    assert isinstance(opened.args[0], PeopleWindow)


def test_people_who_are_sizes_after_all_are_read_as_a_chart(
    actions: ImportActions, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch, people_file: Path
) -> None:
    asked = answer(monkeypatch, "chart")
    shown = after(actions, qtbot, lambda: actions.read_files([people_file]))
    assert isinstance(shown, ImportWindow)
    assert asked == ["cast.csv"]


def test_a_pasted_table_of_people_is_asked_about_and_put_away_when_nothing_is_said(
    actions: ImportActions, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked = answer(monkeypatch, "")
    opened: list[object] = []
    actions.opened.connect(opened.append)
    actions.accept_drop(
        mime(html="<table><tr><th>Name<th>Bust<th>Waist<tr><td>Marit<td>92<td>74<tr><td>Siv<td>99<td>81</table>")
    )
    qtbot.waitUntil(lambda: bool(asked))
    assert opened == []


def test_a_chart_is_never_asked_about(
    actions: ImportActions, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch, chart_file: Path
) -> None:
    asked = answer(monkeypatch, "")
    after(actions, qtbot, lambda: actions.read_files([chart_file]))
    assert asked == []


def test_a_reading_that_is_stopped_opens_nothing(actions: ImportActions, chart_file: Path) -> None:
    opened: list[object] = []
    actions.opened.connect(opened.append)
    actions.read_files([chart_file])
    actions.stop()
    actions.finish()
    QApplication.processEvents()
    assert (opened, actions.reading) == ([], None)


def test_the_file_menu_offers_to_import_and_to_paste(window: MainWindow) -> None:
    file_menu = window.menuBar().actions()[0].menu()
    texts_ = [action.text().replace("&", "") for action in file_menu.actions()]  # type: ignore[attr-defined]  # a menu
    assert {"Import charts…", "Paste a chart"} <= set(texts_)


def test_a_file_that_cannot_be_read_is_said_above_the_page(window: MainWindow, qtbot: QtBot, tmp_path: Path) -> None:
    with qtbot.waitSignal(window.charts.trouble):
        window.charts.read_files([tmp_path / "gone.csv"])
    assert window.notice.text == "There is no file “gone.csv”."


def test_the_main_window_stays_open_while_corrections_would_be_lost(
    window: MainWindow, qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "skirt.csv").write_text(texts(NO_UNIT))
    opened = after(window.charts, qtbot, lambda: window.charts.read_files([tmp_path / "skirt.csv"]))
    assert isinstance(opened, ImportWindow)
    opened.side.questions.asked()[0].buttons[0].click()
    qtbot.waitUntil(lambda: not opened.correcting.busy)
    monkeypatch.setattr(LeaveQuestion, "ask", lambda _parent: False)
    kept = window.close()
    monkeypatch.setattr(LeaveQuestion, "ask", lambda _parent: True)
    assert (kept, window.close()) == (False, True)
