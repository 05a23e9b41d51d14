"""The dialog that exports people, and the actions of the menu."""

from __future__ import annotations

import datetime as dt
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import QMimeData, Qt
from PySide6.QtGui import QGuiApplication

from sizekeeper.core.notation import parse_length
from sizekeeper.core.person import Person, Reading
from sizekeeper.ui.import_reading import Reading as Work
from sizekeeper.ui.people_actions import PeopleActions, PeopleFile
from sizekeeper.ui.people_export import ExportDialog, ExportFile
from sizekeeper.ui.people_window import PeopleWindow
from tests.importing.people import figures, of_file

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from pytestqt.qtbot import QtBot

    from sizekeeper.ui.session import Session
    from sizekeeper.ui.settings import Settings
    from sizekeeper.ui.window import MainWindow


def measured(entry: str, name: str, bust: str, *groups: str, hidden: bool = False) -> Person:
    reading = Reading("bust", bust, parse_length(bust, "cm"), dt.date(2026, 5, 1))
    return Person(entry, name, readings=(reading,), groups=groups, hidden=hidden)


PEOPLE = [
    measured("a", "Ada", "92", "Cast"),
    measured("b", "Bo", "100"),
    measured("c", "Cy", "110", "Cast", hidden=True),
]


@pytest.fixture
def dialog(session: Session, settings: Settings, qtbot: QtBot, tmp_path: Path) -> Iterator[ExportDialog]:
    session.apply_all("Set up", [(None, person) for person in PEOPLE])
    settings.stored.setValue("people/folder", str(tmp_path))
    dialog = ExportDialog(session, settings)
    dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose, False)
    qtbot.addWidget(dialog)
    with qtbot.waitExposed(dialog):
        dialog.show()
    yield dialog
    Work.finish_all()


def names(dialog: ExportDialog) -> list[str]:
    return [person.name for person in dialog.chosen()]


def choose(dialog: ExportDialog, words: str) -> None:
    dialog.who.setCurrentIndex(dialog.who.findText(words))


def test_everybody_is_ticked_at_first_but_not_those_hidden(dialog: ExportDialog) -> None:
    assert names(dialog) == ["Ada", "Bo"]


def test_a_group_ticks_all_of_its_people(dialog: ExportDialog) -> None:
    choose(dialog, "The group Cast")
    assert names(dialog) == ["Ada", "Cy"]


def test_a_tick_by_hand_makes_it_those_ticked(dialog: ExportDialog) -> None:
    dialog.list.item(0).setCheckState(Qt.CheckState.Unchecked)
    assert (dialog.who.currentText(), names(dialog)) == ("Those ticked", ["Bo"])


def test_nobody_ticked_cannot_be_exported(dialog: ExportDialog) -> None:
    dialog.none.click()
    assert (dialog.save.isEnabled(), dialog.says.text()) == (False, "Tick the people to be exported.")


@pytest.mark.parametrize("kind", ["xlsx", "csv"])
def test_what_is_exported_can_be_imported(
    kind: str, dialog: ExportDialog, tmp_path: Path, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(ExportFile, "ask", lambda _parent, suggested, _kind: suggested)
    choose(dialog, "The group Cast")
    dialog.kind.setCurrentIndex(dialog.kind.findData(kind))
    with qtbot.waitSignal(dialog.written) as written:
        dialog.save.click()
    path = tmp_path / f"People - Cast.{kind}"
    assert written.args == [f"2 people are in “{path}”."]
    assert figures(of_file(path.read_bytes(), path.name)) == {"Ada": {"bust": "92 cm"}, "Cy": {"bust": "110 cm"}}


def test_a_file_that_is_there_is_written_over_only_when_that_was_answered(
    dialog: ExportDialog, tmp_path: Path, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "class.csv"
    path.write_text("mine")
    monkeypatch.setattr(ExportFile, "ask", lambda *_: path)
    monkeypatch.setattr(ExportFile, "ask_to_replace", lambda *_: False)
    dialog.kind.setCurrentIndex(dialog.kind.findData("csv"))
    dialog.save.click()
    assert (path.read_text(), dialog.isVisible()) == ("mine", True)
    monkeypatch.setattr(ExportFile, "ask_to_replace", lambda *_: True)
    with qtbot.waitSignal(dialog.written):
        dialog.save.click()
    assert path.read_bytes() != b"mine"


def test_a_file_that_cannot_be_written_is_said_in_the_dialog(
    dialog: ExportDialog, tmp_path: Path, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(ExportFile, "ask", lambda *_: tmp_path / "gone" / "class.csv")
    dialog.save.click()
    qtbot.waitUntil(lambda: "cannot be written" in dialog.says.text())
    assert dialog.save.isEnabled()


@pytest.fixture
def actions(window: MainWindow) -> Iterator[PeopleActions]:
    yield window.people
    window.people.finish()


def test_the_menu_offers_what_brings_people_in_and_out(window: MainWindow) -> None:
    texts = [action.text().replace("&", "") for action in window.menus.person_menu.actions()]
    assert texts[2:5] == ["Import people…", "Paste people", "Export people…"]


def test_export_is_offered_when_there_is_somebody(actions: PeopleActions, session: Session) -> None:
    assert not actions.export.isEnabled()
    session.apply("Add person", None, PEOPLE[0])
    assert actions.export.isEnabled()


def test_a_picked_file_is_read_and_shown(
    actions: PeopleActions, tmp_path: Path, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "class.csv"
    path.write_text("Name,Bust (cm)\nAda,92\n")
    monkeypatch.setattr(PeopleFile, "ask", lambda *_: path)
    with qtbot.waitSignal(actions.opened) as opened:
        actions.file.trigger()
    shown = opened.args[0]
    assert isinstance(shown, PeopleWindow)
    assert [one.person.name for one in shown.draft.people] == ["Ada"]
    assert actions.leave()


def test_what_is_on_the_clipboard_is_read_and_shown(actions: PeopleActions, qtbot: QtBot) -> None:
    mime = QMimeData()
    mime.setText("Name\tHip\nAda\t100 cm\n")
    QGuiApplication.clipboard().setMimeData(mime)
    with qtbot.waitSignal(actions.opened) as opened:
        actions.paste.trigger()
    assert figures(opened.args[0].draft) == {"Ada": {"hip": "100 cm"}}
    assert actions.leave()


def test_a_file_that_cannot_be_read_is_said_in_words(actions: PeopleActions, tmp_path: Path, qtbot: QtBot) -> None:
    with qtbot.waitSignal(actions.trouble) as trouble:
        actions.read_file(tmp_path / "gone.csv")
    assert trouble.args == ["There is no file “gone.csv”."]
