"""Sheets for everybody: whose and for what, which files, and what happens on the way."""

from __future__ import annotations

import dataclasses
import threading
from typing import TYPE_CHECKING

import openpyxl
import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from sizekeeper.core.pattern import Pattern
from sizekeeper.reports import export, filing
from sizekeeper.ui import sheet_batch
from sizekeeper.ui.import_reading import Reading
from sizekeeper.ui.sheet_everybody import SheetsForEverybody
from sizekeeper.ui.sheet_questions import ExistingQuestion, FolderQuestion, existing_words
from tests.ui.household import ADA, DRESS, settle
from tests.ui.naming import nameless

if TYPE_CHECKING:
    import datetime as dt
    from collections.abc import Callable, Iterator
    from pathlib import Path

    from pytestqt.qtbot import QtBot

    from sizekeeper.reports.sheet import Sheet
    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Session
    from sizekeeper.ui.settings import Settings
    from sizekeeper.ui.sheet_questions import Existing

BO = dataclasses.replace(ADA, id="bo", name="Bo", groups=("Cast",))
BLANK = Pattern("blank", "Blank", publisher="Quill")
BOTH = ["Bo - Wrap dress.csv", "Ilse - Wrap dress.csv"]


@pytest.fixture
def many(
    session: Session,
    selection: Selection,
    settings: Settings,
    today: Callable[[], dt.date],
    qtbot: QtBot,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> Iterator[SheetsForEverybody]:
    """Ilse and Bo, a dress and a pattern without figures; written as CSV, the quickest, into an empty folder."""
    monkeypatch.setattr(ExistingQuestion, "ask", lambda *_: pytest.fail("nothing to ask about"))
    settle(session, selection)
    session.apply_all("Add", [(None, BO), (None, BLANK)])
    session.undo_stack.clear()
    (tmp_path / "out").mkdir()
    settings.stored.setValue("sheet/folder", str(tmp_path / "out"))
    settings.stored.setValue("sheet/format", "csv")
    window = SheetsForEverybody(session, selection, settings, today=today)
    qtbot.addWidget(window)
    window.show()
    yield window
    window.close()
    Reading.finish_all()


def save(many: SheetsForEverybody, qtbot: QtBot) -> None:
    with qtbot.waitSignal(many.ended):
        many.save.click()


def files(tmp_path: Path) -> dict[str, str]:
    """What stands in each file of the folder: "old", or "new" for a sheet."""
    found = {path.name: path.read_text(encoding="utf-8") for path in (tmp_path / "out").iterdir()}
    return {name: "old" if text == "old" else "new" for name, text in sorted(found.items())}


def answer(monkeypatch: pytest.MonkeyPatch, what: Existing | None) -> list[tuple[list[str], int]]:
    """Put the answer to what becomes of the files that are there."""
    asked: list[tuple[list[str], int]] = []

    def ask(_parent: object, names: list[str], total: int) -> Existing | None:
        asked.append((names, total))
        return what

    monkeypatch.setattr(ExistingQuestion, "ask", ask)
    return asked


def test_everybody_and_the_pattern_in_front_are_ticked_first(many: SheetsForEverybody) -> None:
    assert many.people.ticked == ["bo", "person"]
    assert many.patterns.ticked == ["pattern"]
    assert many.save.text() == "&Save 2 sheets"
    assert many.people.heading.text() == "People: 2 of 2"


def test_a_file_is_written_for_each(many: SheetsForEverybody, tmp_path: Path, qtbot: QtBot) -> None:
    told: list[str] = []
    many.told.connect(told.append)
    save(many, qtbot)
    assert files(tmp_path) == dict.fromkeys(BOTH, "new")
    assert "Bo" in (tmp_path / "out" / BOTH[0]).read_text(encoding="utf-8")
    assert told == [f"2 sheets were written into “{tmp_path / 'out'}”."] == [many.summary.text()]
    assert many.progress.isHidden()


def test_only_those_ticked_are_written(many: SheetsForEverybody, tmp_path: Path, qtbot: QtBot) -> None:
    QTest.keyClick(many.people.list, Qt.Key.Key_Space)
    assert many.people.ticked == ["person"]
    save(many, qtbot)
    assert list(files(tmp_path)) == ["Ilse - Wrap dress.csv"]


def test_with_nobody_ticked_nothing_can_be_saved(many: SheetsForEverybody) -> None:
    many.people.none.click()
    assert not many.save.isEnabled()
    assert many.summary.text() == "Tick at least one person and one pattern."
    many.people.all.click()
    assert many.save.isEnabled()


def test_what_cannot_be_compared_is_told_and_the_others_are_written(
    many: SheetsForEverybody, tmp_path: Path, qtbot: QtBot
) -> None:
    many.patterns.all.click()
    save(many, qtbot)
    assert list(files(tmp_path)) == BOTH
    assert many.summary.text() == f"2 sheets were written into “{tmp_path / 'out'}”. 2 could not be made."
    assert many.details.toPlainText().splitlines() == [
        "Bo, Blank: the pattern has no figures yet.", "Ilse, Blank: the pattern has no figures yet.",
    ]  # fmt: skip
    assert many.details.isVisible()


@pytest.mark.parametrize(
    ("existing", "left", "words"),
    [
        ("replace", {BOTH[0]: "new", BOTH[1]: "new"}, "2 sheets were written into"),
        ("number", {"Bo - Wrap dress (2).csv": "new", BOTH[0]: "old", BOTH[1]: "new"}, "2 sheets were written into"),
        ("skip", {BOTH[0]: "old", BOTH[1]: "new"}, "1 was there already and left alone."),
    ],
)
def test_files_that_are_there_are_asked_about_once(
    many: SheetsForEverybody,
    tmp_path: Path,
    qtbot: QtBot,
    monkeypatch: pytest.MonkeyPatch,
    existing: Existing,
    left: dict[str, str],
    words: str,
) -> None:
    (tmp_path / "out" / BOTH[0]).write_text("old")
    asked = answer(monkeypatch, existing)
    save(many, qtbot)
    assert asked == [([BOTH[0]], 2)]
    assert files(tmp_path) == left
    assert words in many.summary.text()


def test_putting_the_question_away_writes_nothing(
    many: SheetsForEverybody, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "out" / BOTH[0]).write_text("old")
    answer(monkeypatch, None)
    many.save.click()
    assert many.writing is None
    assert files(tmp_path) == {BOTH[0]: "old"}


def test_two_people_of_one_name_get_a_file_each(
    many: SheetsForEverybody, session: Session, tmp_path: Path, qtbot: QtBot
) -> None:
    session.apply("Rename", BO, dataclasses.replace(BO, name="ilse"))
    save(many, qtbot)
    assert list(files(tmp_path)) == ["Ilse - Wrap dress (2).csv", "ilse - Wrap dress.csv"]


def test_a_private_sheet_has_a_name_of_its_own(many: SheetsForEverybody, tmp_path: Path, qtbot: QtBot) -> None:
    many.private_choice.setChecked(True)
    save(many, qtbot)
    assert list(files(tmp_path)) == ["Bo - Wrap dress - private.csv", "Ilse - Wrap dress - private.csv"]


def test_a_folder_that_is_not_there_is_named(many: SheetsForEverybody, tmp_path: Path) -> None:
    many.folder.setText(str(tmp_path / "nowhere"))
    many.save.click()
    assert many.trouble.text() == f"The sheets cannot go into “{tmp_path / 'nowhere'}”: there is no such folder."
    assert many.trouble.isVisible()


def test_a_folder_can_be_picked(many: SheetsForEverybody, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(FolderQuestion, "ask", lambda _parent, folder: folder.parent)
    many.browse.click()
    assert many.folder.text() == str(tmp_path)
    monkeypatch.setattr(FolderQuestion, "ask", lambda *_: None)
    many.browse.click()
    assert many.folder.text() == str(tmp_path)


def test_a_full_disk_stops_after_a_few_and_says_so(
    many: SheetsForEverybody,
    session: Session,
    settings: Settings,
    tmp_path: Path,
    qtbot: QtBot,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(filing, "_write", full)
    settings.stored.setValue("sheet/folder", "elsewhere")
    session.apply_all("Add", [(None, dataclasses.replace(BO, id=f"x{i}", name=f"X{i}")) for i in range(4)])
    many.people.all.click()
    save(many, qtbot)
    assert files(tmp_path) == {}
    assert len(many.details.toPlainText().splitlines()) == 3
    assert "the disk is full" in many.details.toPlainText()
    assert many.summary.text() == (
        f"No sheet was written into “{tmp_path / 'out'}”. 3 could not be made. The rest was not tried."
    )
    assert settings.stored.value("sheet/folder") == "elsewhere"  # a folder that takes nothing is not offered again


def test_stopping_keeps_what_is_written(
    many: SheetsForEverybody, tmp_path: Path, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    at_second, go_on, made = threading.Event(), threading.Event(), list[str]()
    real = export.written

    def slow(sheet: Sheet, form: object, paper: object) -> bytes:
        made.append(sheet.person)
        if len(made) == 2:
            at_second.set()
            go_on.wait()
        return real(sheet, form, paper)  # type: ignore[arg-type]  # passed on as given

    monkeypatch.setattr(sheet_batch, "written", slow)
    many.save.click()
    qtbot.waitUntil(at_second.is_set)
    assert many.stop.isVisible()
    assert not many.people.isEnabled()
    with qtbot.waitSignal(many.ended):
        many.stop.click()
        go_on.set()
    assert files(tmp_path) == {BOTH[0]: "new"}
    assert many.summary.text() == f"Stopped: 1 sheet was written into “{tmp_path / 'out'}”."
    assert many.save.isEnabled()


def test_closing_stops(many: SheetsForEverybody, tmp_path: Path, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch) -> None:
    begun, go_on = threading.Event(), threading.Event()

    def slow(*_: object) -> bytes:
        begun.set()
        go_on.wait()
        return b""

    monkeypatch.setattr(sheet_batch, "written", slow)
    many.save.click()
    qtbot.waitUntil(begun.is_set)
    with qtbot.waitSignal(many.ended):
        many.close()
        go_on.set()
    assert files(tmp_path) == {}


def test_the_library_may_be_edited_meanwhile(
    many: SheetsForEverybody, session: Session, tmp_path: Path, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    begun, go_on = threading.Event(), threading.Event()
    real = export.written

    def slow(sheet: Sheet, form: object, paper: object) -> bytes:
        begun.set()
        go_on.wait()
        return real(sheet, form, paper)  # type: ignore[arg-type]  # passed on as given

    monkeypatch.setattr(sheet_batch, "written", slow)
    many.save.click()
    qtbot.waitUntil(begun.is_set)
    session.apply("Take away", DRESS, None)
    with qtbot.waitSignal(many.ended):
        go_on.set()
    assert list(files(tmp_path)) == BOTH  # as it was when it began


def test_writing_is_no_step_to_undo(many: SheetsForEverybody, session: Session, qtbot: QtBot) -> None:
    save(many, qtbot)
    assert not session.undo_stack.canUndo()


def test_somebody_new_is_listed_and_not_ticked(many: SheetsForEverybody, session: Session) -> None:
    session.apply("Add", None, dataclasses.replace(ADA, id="new", name="Ann"))
    assert many.people.list.count() == 3
    assert many.people.ticked == ["bo", "person"]


@pytest.mark.parametrize(("form", "asks"), [("pdf", True), ("html", False), ("xlsx", False), ("csv", False)])
def test_paper_is_asked_for_a_pdf_only(many: SheetsForEverybody, form: str, *, asks: bool) -> None:
    many.format_choice.setCurrentIndex(many.format_choice.findData(form))
    assert many.paper_choice.isEnabled() == asks


def test_a_search_finds_people_by_name_and_group_and_keeps_the_ticks(
    many: SheetsForEverybody, session: Session
) -> None:
    session.apply_all("Add", [(None, dataclasses.replace(ADA, id=f"x{i}", name=f"X{i}")) for i in range(10)])
    ticks = many.people
    assert ticks.search.isVisible()
    ticks.search.setText("cast")
    shown = [ticks.list.item(row).text() for row in range(ticks.list.count()) if not ticks.list.item(row).isHidden()]
    assert shown == ["Bo"]
    ticks.none.click()
    assert ticks.ticked == ["person"]  # whom the search hides stays as she was


def test_everything_has_a_name(many: SheetsForEverybody, qtbot: QtBot) -> None:
    many.patterns.all.click()
    save(many, qtbot)
    assert nameless(many) == []


def test_escape_closes(many: SheetsForEverybody) -> None:
    QTest.keyClick(many, Qt.Key.Key_Escape)
    assert not many.isVisible()


def test_a_household_sheet_is_one_file_for_each_pattern(many: SheetsForEverybody, tmp_path: Path, qtbot: QtBot) -> None:
    many.patterns.all.click()
    many.kind_choice.setCurrentIndex(1)
    assert many.save.text() == "&Save 2 sheets"
    assert not many.private_choice.isEnabled()
    many.format_choice.setCurrentIndex(many.format_choice.findData("xlsx"))
    save(many, qtbot)
    assert [path.name for path in (tmp_path / "out").iterdir()] == ["Wrap dress - household.xlsx"]
    book = openpyxl.load_workbook(tmp_path / "out" / "Wrap dress - household.xlsx")
    texts = {str(cell.value) for row in book.worksheets[0].iter_rows() for cell in row}
    assert {"Bo", "Ilse"} <= texts
    assert many.details.toPlainText() == "Blank: the pattern has no figures yet."


def test_a_decision_sheet_keeps_its_format_when_the_household_has_not_got_it(many: SheetsForEverybody) -> None:
    many.kind_choice.setCurrentIndex(1)
    assert many.format_choice.findData("csv") == -1
    many.kind_choice.setCurrentIndex(0)
    assert [many.format_choice.itemData(i) for i in range(4)] == ["pdf", "html", "xlsx", "csv"]


@pytest.mark.parametrize(
    ("names", "total", "words"),
    [
        (["a.pdf"], 1, "“a.pdf” exists."),
        (["a.pdf"], 5, "One of the 5 files is there already: “a.pdf”."),
        (["a.pdf", "b.pdf"], 5, "2 of the 5 files are there already, “a.pdf” among them."),
    ],
)
def test_the_question_says_which_files_are_there(names: list[str], total: int, words: str) -> None:
    assert existing_words(names, total) == words
