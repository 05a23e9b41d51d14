from __future__ import annotations

import dataclasses
from typing import TYPE_CHECKING

import pytest

from sizekeeper.core.person import Person
from sizekeeper.store.backup import back_up
from sizekeeper.store.library import Library
from sizekeeper.ui.erase_dialog import EraseDialog
from sizekeeper.ui.file_questions import FileQuestion, with_suffix
from sizekeeper.ui.restore_dialog import RestoreDialog
from sizekeeper.ui.trouble_dialog import TroubleDialog
from tests.ui.conftest import NOW

if TYPE_CHECKING:
    import datetime as dt
    from collections.abc import Callable
    from pathlib import Path

    from pytestqt.qtbot import QtBot

    from sizekeeper.ui.session import Session
    from sizekeeper.ui.window import MainWindow

ADA = Person("a", "Ada")


def answer(monkeypatch: pytest.MonkeyPatch, question: str, path: Path | None) -> None:
    """Answer a file dialog."""
    monkeypatch.setattr(FileQuestion, question, lambda *_: path)


def people_in(path: Path, now: Callable[[], dt.datetime]) -> list[str]:
    with Library.open(path, now=now, read_only=True) as library:
        return [value.name for value in library.values() if isinstance(value, Person)]


def backed_up(session: Session) -> None:
    """A library with one person and a backup that has her."""
    session.apply("Add person", None, ADA)
    session.writer.flush()
    library = session.writer.library
    with library.lent() as connection:
        back_up(connection, library.path, NOW)


def test_a_copy_has_everything_that_was_just_edited(
    window: MainWindow, tmp_path: Path, now: Callable[[], dt.datetime], monkeypatch: pytest.MonkeyPatch
) -> None:
    window.session.apply("Add person", None, ADA)
    answer(monkeypatch, "ask_new", tmp_path / "copy.sizekeeper")
    window.library.copy.trigger()
    assert people_in(tmp_path / "copy.sizekeeper", now) == ["Ada"]
    assert "copy.sizekeeper" in window.status.words.text()


def test_a_copy_is_never_written_over_a_file(
    window: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "copy.sizekeeper").write_text("precious")
    answer(monkeypatch, "ask_new", tmp_path / "copy.sizekeeper")
    window.library.copy.trigger()
    assert (tmp_path / "copy.sizekeeper").read_text() == "precious"
    assert "copy.sizekeeper” exists already" in window.notice.text


def test_a_new_library_is_wanted_in_a_new_place_only(
    window: MainWindow, tmp_path: Path, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    answer(monkeypatch, "ask_new", tmp_path / "new.sizekeeper")
    with qtbot.waitSignal(window.library.library_wanted) as wanted:
        window.library.new.trigger()
    assert wanted.args == [tmp_path / "new.sizekeeper"]
    (tmp_path / "new.sizekeeper").touch()
    with qtbot.assertNotEmitted(window.library.library_wanted):
        window.library.new.trigger()
    assert "exists already" in window.notice.text


def test_another_library_can_be_opened(
    window: MainWindow, tmp_path: Path, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    answer(monkeypatch, "ask_existing", tmp_path / "other.sizekeeper")
    with qtbot.waitSignal(window.library.library_wanted) as wanted:
        window.library.open.trigger()
    assert wanted.args == [tmp_path / "other.sizekeeper"]


@pytest.mark.parametrize("question", ["new", "open", "copy"])
def test_a_question_put_away_does_nothing(
    window: MainWindow, question: str, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    answer(monkeypatch, "ask_new", None)
    answer(monkeypatch, "ask_existing", None)
    with qtbot.assertNotEmitted(window.library.library_wanted):
        getattr(window.library, question).trigger()
    assert window.notice.text == ""


@pytest.mark.parametrize(
    ("typed", "kept"), [("home", "home.sizekeeper"), ("a.b", "a.b.sizekeeper"), ("x.SIZEKEEPER", "x.SIZEKEEPER")]
)
def test_a_new_library_gets_its_suffix(tmp_path: Path, typed: str, kept: str) -> None:
    assert with_suffix(tmp_path / typed).name == kept


def test_a_backup_is_restored_into_a_new_file(
    session: Session, tmp_path: Path, now: Callable[[], dt.datetime], qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    backed_up(session)
    session.apply("Change name", ADA, dataclasses.replace(ADA, name="Adele"))
    session.writer.flush()
    dialog = RestoreDialog(session.writer.library.path)
    qtbot.addWidget(dialog)
    dialog.open()
    answer(monkeypatch, "ask_new", tmp_path / "restored.sizekeeper")
    with qtbot.waitSignal(dialog.restored) as restored:
        dialog.go.click()
    assert restored.args == [tmp_path / "restored.sizekeeper"]
    assert people_in(tmp_path / "restored.sizekeeper", now) == ["Ada"]


def test_without_backups_there_is_nothing_to_restore(session: Session, qtbot: QtBot) -> None:
    dialog = RestoreDialog(session.writer.library.path)
    qtbot.addWidget(dialog)
    assert not dialog.go.isEnabled()


def test_a_backup_is_not_restored_over_a_file(
    session: Session, tmp_path: Path, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    backed_up(session)
    (tmp_path / "there.sizekeeper").write_text("precious")
    dialog = RestoreDialog(session.writer.library.path)
    qtbot.addWidget(dialog)
    dialog.open()
    answer(monkeypatch, "ask_new", tmp_path / "there.sizekeeper")
    dialog.go.click()
    assert "exists already" in dialog.trouble.text()
    assert (tmp_path / "there.sizekeeper").read_text() == "precious"


def test_erasing_needs_the_box_to_be_ticked(window: MainWindow, qtbot: QtBot) -> None:
    window.session.apply("Add person", None, ADA)
    dialog = EraseDialog(window.session, ADA)
    qtbot.addWidget(dialog)
    assert not dialog.erase.isEnabled()
    dialog.sure.setChecked(True)
    assert dialog.erase.isEnabled()


@pytest.mark.parametrize("from_backups", [True, False])
def test_erasing_removes_a_person_and_from_the_backups_when_asked(
    session: Session, library_file: Path, now: Callable[[], dt.datetime], qtbot: QtBot, from_backups: bool
) -> None:
    backed_up(session)
    dialog = EraseDialog(session, ADA)
    qtbot.addWidget(dialog)
    dialog.sure.setChecked(True)
    dialog.backups.setChecked(from_backups)
    with qtbot.waitSignal(dialog.erased):
        dialog.erase.click()
    backup = next(iter(library_file.with_name(library_file.name + ".backups").glob("*.sizekeeper")))
    assert session.values() == []
    assert session.undo_stack.count() == 0
    assert people_in(library_file, now) == []
    assert people_in(backup, now) == ([] if from_backups else ["Ada"])


def test_when_no_library_opens_a_backup_or_another_library_is_offered(
    session: Session, tmp_path: Path, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    backed_up(session)
    dialog = TroubleDialog()
    qtbot.addWidget(dialog)
    dialog.explain("“x” is damaged.", session.writer.library.path)
    dialog.open()
    assert dialog.words.text() == "“x” is damaged."
    assert dialog.restore.isVisible()
    answer(monkeypatch, "ask_existing", tmp_path / "other.sizekeeper")
    with qtbot.waitSignal(dialog.library_wanted) as wanted:
        dialog.other.click()
    assert wanted.args == [tmp_path / "other.sizekeeper"]


def test_without_backups_none_is_offered(tmp_path: Path, qtbot: QtBot) -> None:
    dialog = TroubleDialog()
    qtbot.addWidget(dialog)
    dialog.explain("“x” is damaged.", tmp_path / "x")
    dialog.open()
    assert not dialog.restore.isVisible()
