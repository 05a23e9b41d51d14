"""The window of the decision sheet: what it shows, how it follows, and what it writes."""

from __future__ import annotations

import dataclasses
from typing import TYPE_CHECKING

import openpyxl
import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QFileDialog

from sizekeeper.core.make import Decision, Make, Place
from sizekeeper.core.pattern import Pattern
from sizekeeper.core.reading_edit import Taking, with_figure
from sizekeeper.errors import ReportError
from sizekeeper.reports import filing
from sizekeeper.ui.import_reading import Reading
from sizekeeper.ui.sheet_questions import SheetFileQuestion
from sizekeeper.ui.sheet_window import SheetWindow
from tests.build import chart
from tests.fits import BODY_CHART, FINISHED
from tests.ui.household import ADA, DRESS, settle
from tests.ui.naming import nameless
from tests.ui.sheets import Pages, instead

if TYPE_CHECKING:
    import datetime as dt
    from collections.abc import Callable, Iterator
    from pathlib import Path

    from PySide6.QtGui import QPalette
    from pytestqt.qtbot import QtBot

    from sizekeeper.core.chart import Chart
    from sizekeeper.core.person import Person
    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Session
    from sizekeeper.ui.settings import Settings

VIEWS = tuple(
    dataclasses.replace(chart("finished", "38 40", "in", bust=f"{38 + more}, {41 + more}"), id=f"f{view}", view=view)
    for view, more in (("A", 1), ("B", 4))
)
VIEWED = dataclasses.replace(DRESS, views=("A", "B"))


@pytest.fixture
def pages(monkeypatch: pytest.MonkeyPatch) -> Pages:
    return instead(monkeypatch, Pages())


@pytest.fixture
def sheet(
    session: Session,
    selection: Selection,
    settings: Settings,
    today: Callable[[], dt.date],
    pages: Pages,
    qtbot: QtBot,
) -> Iterator[SheetWindow]:
    """The window, not shown yet, on whatever the test puts into the library."""
    settings.stored.setValue("sheet/paper", "a4")
    window = SheetWindow(session, selection, settings, view_in_front=lambda: "B", today=today)
    qtbot.addWidget(window)
    yield window
    window.close()
    Reading.finish_all()


def show(sheet: SheetWindow, qtbot: QtBot) -> SheetWindow:
    with qtbot.waitSignal(sheet.shown_again):
        sheet.show()
    return sheet


def follow(sheet: SheetWindow, qtbot: QtBot, act: Callable[[], object]) -> None:
    """Do something and wait until the pages have followed."""
    with qtbot.waitSignal(sheet.shown_again):
        act()


def with_bust(text: str, today: Callable[[], dt.date]) -> Person:
    return with_figure(ADA, "bust", text, Taking(today(), "helped"))


def answer(monkeypatch: pytest.MonkeyPatch, path: Path | None) -> list[Path]:
    """Put the answer to where the sheet goes; what was suggested is kept."""
    suggested: list[Path] = []

    def ask(_parent: object, first: Path) -> Path | None:
        suggested.append(first)
        return path

    monkeypatch.setattr(SheetFileQuestion, "ask", ask)
    return suggested


def save(sheet: SheetWindow, qtbot: QtBot) -> None:
    """Save and wait until it is done or failed."""
    sheet.ask_to_save()
    qtbot.waitUntil(sheet.save.isEnabled)


def test_the_sheet_of_what_is_in_front_is_shown(
    sheet: SheetWindow, session: Session, selection: Selection, pages: Pages, qtbot: QtBot
) -> None:
    settle(session, selection)
    show(sheet, qtbot)
    assert (pages.last.person, pages.last.pattern) == ("Ilse", "Wrap dress")
    assert sheet.whose.text() == "Ilse · Wrap dress"
    assert sheet.windowTitle() == "Ilse – Wrap dress – Sizekeeper"
    assert sheet.front.currentWidget() is sheet.pages
    assert pages.last.verdict in sheet.pages.accessibleDescription()


def test_a_sheet_can_be_read_as_text(
    sheet: SheetWindow, session: Session, selection: Selection, pages: Pages, qtbot: QtBot
) -> None:
    settle(session, selection)
    show(sheet, qtbot)
    sheet.bar.size_choice.setCurrentIndex(sheet.bar.size_choice.findData("text"))
    sheet.bar.size_choice.activated.emit(3)
    assert sheet.front.currentWidget() is sheet.text
    assert pages.last.verdict in sheet.text.toPlainText()
    assert sheet.text.isReadOnly()


def test_an_edit_in_the_main_window_is_followed_even_while_it_is_typed(
    sheet: SheetWindow,
    session: Session,
    selection: Selection,
    pages: Pages,
    qtbot: QtBot,
    today: Callable[[], dt.date],
) -> None:
    settle(session, selection)
    show(sheet, qtbot)
    assert pages.last.table.rows[0].body == "38"
    follow(sheet, qtbot, lambda: session.draft(with_bust("39 1/2", today)))
    assert pages.last.table.rows[0].body == "39 1/2"
    follow(sheet, qtbot, lambda: session.apply("Change bust", ADA, with_bust("40", today)))
    assert pages.last.table.rows[0].body == "40"
    follow(sheet, qtbot, session.undo_stack.undo)
    assert pages.last.table.rows[0].body == "38"


def test_looking_at_a_sheet_is_no_step_to_undo(
    sheet: SheetWindow, session: Session, selection: Selection, qtbot: QtBot
) -> None:
    settle(session, selection)
    show(sheet, qtbot)
    follow(sheet, qtbot, lambda: sheet.bar.private_choice.setChecked(True))
    assert not session.undo_stack.canUndo()


def test_a_decision_in_the_main_window_is_on_the_sheet(
    sheet: SheetWindow, session: Session, selection: Selection, pages: Pages, qtbot: QtBot
) -> None:
    settle(session, selection)
    show(sheet, qtbot)
    decided = Make("m", ADA.id, DRESS.id, decision=Decision("straight", Place("42"), reason="Roomy"))
    follow(sheet, qtbot, lambda: session.apply("Decide", None, decided))
    assert pages.last.plan is not None
    assert (pages.last.plan.decided, pages.last.plan.reason) == (True, "Roomy")


def test_the_sheet_of_a_finished_make_is_shown_while_it_is_taken_up_and_its_note_on_the_next(
    sheet: SheetWindow, session: Session, selection: Selection, pages: Pages, qtbot: QtBot
) -> None:
    settle(session, selection)
    done = Make(
        "m", ADA.id, DRESS.id, decision=Decision("straight", Place("42")), progress="finished", next_time="Longer"
    )
    session.apply("Add", None, done)
    show(sheet, qtbot)
    assert pages.last.plan is not None
    assert not pages.last.plan.decided
    assert "Noted after the last make: Longer" in pages.last.plan.lines

    follow(sheet, qtbot, lambda: selection.take_up("m"))

    assert pages.last.plan.title == "Cut 42 straight"
    assert pages.last.plan.decided


def test_another_person_in_front_is_followed(
    sheet: SheetWindow, session: Session, selection: Selection, pages: Pages, qtbot: QtBot
) -> None:
    settle(session, selection)
    session.apply("Add person", None, dataclasses.replace(ADA, id="bo", name="Bo"))
    show(sheet, qtbot)
    follow(sheet, qtbot, lambda: selection.choose_person("bo"))
    assert pages.last.person == "Bo"


@pytest.mark.parametrize(
    ("charts", "who", "heading"),
    [
        ((), ADA, "What does the envelope say?"),
        ((BODY_CHART, FINISHED), dataclasses.replace(ADA, readings=()), "Measure Ilse first"),
    ],
    ids=["no chart", "no measurements"],
)
def test_while_nothing_can_be_compared_it_says_what_comes_first(
    sheet: SheetWindow,
    session: Session,
    selection: Selection,
    pages: Pages,
    qtbot: QtBot,
    charts: tuple[Chart, ...],
    who: Person,
    heading: str,
) -> None:
    session.apply_all("Set up", [(None, who), (None, DRESS)])
    for one in charts:
        session.apply("Add", None, dataclasses.replace(one, pattern=DRESS.id))
    selection.choose_person(who.id)
    selection.choose_pattern(DRESS.id)
    show(sheet, qtbot)
    assert sheet.first.heading.text() == heading
    assert not any(widget.isEnabled() for widget in (sheet.save, sheet.print, sheet.bar))
    sheet.start_printing()
    sheet.ask_to_save()
    assert pages.asked == []


def test_nobody_chosen_is_said_calmly(sheet: SheetWindow, qtbot: QtBot) -> None:
    show(sheet, qtbot)
    assert sheet.first.heading.text() == "Whose size is it?"


def test_what_comes_first_leads_there_and_the_sheet_follows(
    sheet: SheetWindow, session: Session, selection: Selection, pages: Pages, qtbot: QtBot
) -> None:
    session.apply_all("Set up", [(None, ADA), (None, DRESS)])
    selection.choose_person(ADA.id)
    selection.choose_pattern(DRESS.id)
    show(sheet, qtbot)
    with qtbot.waitSignal(selection.page_wanted) as wanted:
        sheet.first.button.click()
    assert wanted.args is not None
    assert wanted.args[0].page == "pattern"
    follow(sheet, qtbot, lambda: session.apply("Add", None, dataclasses.replace(FINISHED, pattern=DRESS.id)))
    assert sheet.save.isEnabled()
    assert len(pages.asked) == 1


def test_a_private_sheet_is_drawn_when_asked_for(
    sheet: SheetWindow, session: Session, selection: Selection, pages: Pages, qtbot: QtBot
) -> None:
    settle(session, selection)
    show(sheet, qtbot)
    follow(sheet, qtbot, lambda: sheet.bar.private_choice.setChecked(True))
    assert pages.last.private
    assert sheet._suggested(sheet.source).name == "Ilse - Wrap dress - private.pdf"  # type: ignore[arg-type]  # there is one


def test_the_paper_is_remembered(
    sheet: SheetWindow, session: Session, selection: Selection, settings: Settings, pages: Pages, qtbot: QtBot
) -> None:
    settle(session, selection)
    show(sheet, qtbot)
    sheet.bar.paper_choice.setCurrentIndex(sheet.bar.paper_choice.findData("us-letter"))
    follow(sheet, qtbot, lambda: sheet.bar.paper_choice.activated.emit(1))
    assert pages.asked[-1][1] == "us-letter"
    assert settings.stored.value("sheet/paper") == "us-letter"


def test_lengths_are_written_as_the_preferences_say(
    sheet: SheetWindow, session: Session, selection: Selection, settings: Settings, pages: Pages, qtbot: QtBot
) -> None:
    settle(session, selection)
    show(sheet, qtbot)
    follow(sheet, qtbot, lambda: settings.choose(unit="cm"))
    assert pages.last.table.rows[0].body == "96.5"  # 38 in are 96.52 cm


def test_of_several_views_the_one_in_front_is_shown_and_another_can_be_chosen(
    sheet: SheetWindow, session: Session, selection: Selection, pages: Pages, qtbot: QtBot
) -> None:
    settle(session, selection, *VIEWS, what=VIEWED)
    show(sheet, qtbot)
    assert (sheet.bar.view_choice.currentText(), pages.last.view) == ("View B", "View B")
    sheet.bar.view_choice.setCurrentIndex(0)
    follow(sheet, qtbot, lambda: sheet.bar.view_choice.activated.emit(0))
    assert pages.last.view == "View A"
    assert sheet.whose.text() == "Ilse · Wrap dress · View A"


def test_without_views_there_is_nothing_to_choose(
    sheet: SheetWindow, session: Session, selection: Selection, qtbot: QtBot
) -> None:
    settle(session, selection)
    show(sheet, qtbot)
    assert not sheet.bar.view_choice.isVisible()


def test_a_larger_window_has_its_pages_drawn_finer(
    sheet: SheetWindow, session: Session, selection: Selection, pages: Pages, qtbot: QtBot
) -> None:
    settle(session, selection)
    sheet.resize(600, 500)
    show(sheet, qtbot)
    before = pages.asked[-1]
    follow(sheet, qtbot, lambda: sheet.resize(900, 500))
    assert pages.asked[-1][2] > before[2]
    assert pages.asked[-1][0] is before[0]  # the same sheet, not made again


def test_a_sheet_that_cannot_be_drawn_says_so(
    sheet: SheetWindow, session: Session, selection: Selection, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    def broken(*_: object) -> list[bytes]:
        raise ReportError("The sheet has too many sizes for a page.")

    monkeypatch.setattr("sizekeeper.reports.pdf.page_images", broken)
    settle(session, selection)
    show(sheet, qtbot)
    assert sheet.trouble.text() == "The sheet has too many sizes for a page."
    instead(monkeypatch, Pages())
    follow(sheet, qtbot, sheet.refresh)
    assert sheet.trouble.isHidden()


# Saving.


def test_a_sheet_is_saved_in_the_format_of_its_suffix(
    sheet: SheetWindow,
    session: Session,
    selection: Selection,
    settings: Settings,
    qtbot: QtBot,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    settle(session, selection)
    show(sheet, qtbot)
    suggested = answer(monkeypatch, tmp_path / "mine.xlsx")
    told: list[str] = []
    sheet.told.connect(told.append)
    save(sheet, qtbot)
    assert openpyxl.load_workbook(tmp_path / "mine.xlsx").sheetnames
    assert told == [f"Saved as “{tmp_path / 'mine.xlsx'}”."] == [sheet.said.text()]
    save(sheet, qtbot)
    assert [path.name for path in suggested] == ["Ilse - Wrap dress.pdf", "Ilse - Wrap dress.xlsx"]
    assert suggested[1].parent == tmp_path
    assert settings.stored.value("sheet/format") == "xlsx"


def test_what_is_saved_is_what_was_edited_last(
    sheet: SheetWindow,
    session: Session,
    selection: Selection,
    qtbot: QtBot,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    today: Callable[[], dt.date],
) -> None:
    settle(session, selection)
    show(sheet, qtbot)
    session.draft(with_bust("41 7/8", today))
    answer(monkeypatch, tmp_path / "mine.csv")
    save(sheet, qtbot)
    assert "41 7/8" in (tmp_path / "mine.csv").read_text(encoding="utf-8")


def test_nothing_is_saved_when_the_question_is_put_away(
    sheet: SheetWindow, session: Session, selection: Selection, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    settle(session, selection)
    show(sheet, qtbot)
    answer(monkeypatch, None)
    sheet.ask_to_save()
    assert sheet.save.isEnabled()
    assert sheet.said.isHidden()


def test_a_full_disk_is_said_in_the_window_and_the_old_file_stays(
    sheet: SheetWindow,
    session: Session,
    selection: Selection,
    qtbot: QtBot,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    settle(session, selection)
    show(sheet, qtbot)
    (tmp_path / "mine.csv").write_text("old")
    answer(monkeypatch, tmp_path / "mine.csv")
    monkeypatch.setattr(filing, "_write", full)
    save(sheet, qtbot)
    assert "the disk is full" in sheet.trouble.text()
    assert sheet.trouble.isVisible()
    assert (tmp_path / "mine.csv").read_text() == "old"
    follow(sheet, qtbot, sheet.refresh)  # the sentence makes the pages smaller: they are drawn again
    assert sheet.trouble.isVisible()
    assert sheet._settings.stored.value("sheet/folder") is None


@pytest.mark.parametrize(
    ("typed", "chosen", "written"),
    [
        ("a.pdf", "PDF (*.pdf)", "a.pdf"),
        ("a", "Workbook (*.xlsx)", "a.xlsx"),
        ("a.html", "PDF (*.pdf)", "a.html"),
        ("v1.2", "CSV (*.csv)", "v1.2.csv"),
        ("", "", None),
    ],
)
def test_the_suffix_that_is_typed_counts_else_the_chosen_format(
    tmp_path: Path, sheet: SheetWindow, monkeypatch: pytest.MonkeyPatch, typed: str, chosen: str, written: str | None
) -> None:
    name = str(tmp_path / typed) if typed else ""
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (name, chosen))
    assert SheetFileQuestion.ask(sheet, tmp_path / "x.pdf") == (tmp_path / written if written else None)


@pytest.mark.parametrize("agreed", [True, False])
def test_a_file_that_only_the_added_suffix_meets_is_asked_about(
    tmp_path: Path, sheet: SheetWindow, monkeypatch: pytest.MonkeyPatch, *, agreed: bool
) -> None:
    (tmp_path / "a.pdf").write_text("old")
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(tmp_path / "a"), "PDF (*.pdf)"))
    monkeypatch.setattr(SheetFileQuestion, "ask_to_replace", lambda *_: agreed)
    assert SheetFileQuestion.ask(sheet, tmp_path / "x.pdf") == (tmp_path / "a.pdf" if agreed else None)


# The window itself.


def test_everything_has_a_name(sheet: SheetWindow, session: Session, selection: Selection, qtbot: QtBot) -> None:
    settle(session, selection, *VIEWS, what=VIEWED)
    show(sheet, qtbot)
    assert nameless(sheet) == []


def test_everything_is_reached_with_tab(
    sheet: SheetWindow, session: Session, selection: Selection, qtbot: QtBot
) -> None:
    settle(session, selection, *VIEWS, what=VIEWED)
    with qtbot.waitActive(sheet):
        show(sheet, qtbot)
    seen = []
    for _ in range(12):
        QTest.keyClick(sheet.focusWidget(), Qt.Key.Key_Tab)
        seen.append(sheet.focusWidget())
    bar = sheet.bar
    wanted = {
        bar.paper_choice, bar.view_choice, bar.size_choice, bar.private_choice, sheet.pages, sheet.print, sheet.save,
    }  # fmt: skip
    assert set(seen) == wanted


def test_escape_closes_and_the_place_is_kept(
    sheet: SheetWindow, session: Session, selection: Selection, settings: Settings, qtbot: QtBot
) -> None:
    settle(session, selection)
    show(sheet, qtbot)
    QTest.keyClick(sheet, Qt.Key.Key_Escape)
    assert not sheet.isVisible()
    assert settings.stored.contains("sheet/geometry")


def test_a_closed_window_draws_nothing_and_catches_up_when_it_is_shown(
    sheet: SheetWindow, session: Session, selection: Selection, pages: Pages, qtbot: QtBot
) -> None:
    settle(session, selection)
    show(sheet, qtbot)
    sheet.close()
    session.apply("Rename", DRESS, Pattern(DRESS.id, "Ball gown", garment="dress"))
    assert not sheet._settle.isActive()
    show(sheet, qtbot)
    assert pages.last.pattern == "Ball gown"


def test_names_are_shown_as_typed_in_the_dark_too(
    sheet: SheetWindow, session: Session, selection: Selection, qtbot: QtBot, dark: QPalette
) -> None:
    settle(session, selection, who=dataclasses.replace(ADA, name="<b>Il & se</b>"))
    show(sheet, qtbot)
    assert sheet.whose.text() == "<b>Il & se</b> · Wrap dress"
    assert sheet.whose.textFormat() == Qt.TextFormat.PlainText


def test_a_private_sheet_says_beforehand_what_can_still_be_inferred(sheet: SheetWindow) -> None:
    choice = sheet.bar.private_choice
    assert "Amounts to alter stay on it" in choice.toolTip()
    assert choice.accessibleDescription() == choice.toolTip()


def test_figures_that_serve_several_views_are_named_on_the_sheet(
    sheet: SheetWindow, session: Session, selection: Selection, pages: Pages, qtbot: QtBot
) -> None:
    shared = dataclasses.replace(VIEWS[0], view="")
    settle(session, selection, shared, VIEWS[1], what=dataclasses.replace(VIEWED, views=("A", "B", "C")))
    show(sheet, qtbot)
    sheet.bar.view_choice.setCurrentIndex(0)
    follow(sheet, qtbot, lambda: sheet.bar.view_choice.activated.emit(0))
    assert pages.last.view == "View A and C"
