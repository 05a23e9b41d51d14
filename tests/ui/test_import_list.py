from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from sizekeeper.ui.import_leave_question import LeaveQuestion
from sizekeeper.ui.import_list import ImportList
from sizekeeper.ui.import_reading import Reading
from tests.importing.charts import BODY, NO_TABLE, NO_UNIT, texts

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator
    from pathlib import Path

    from pytestqt.qtbot import QtBot

    from sizekeeper.ui.import_window import ImportWindow
    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Session

    Import = Callable[..., ImportList]


@pytest.fixture
def several(
    session: Session, selection: Selection, qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> Iterator[Import]:
    """Import files of these names and charts, and wait until all are read."""
    windows: list[ImportList] = []
    monkeypatch.setattr(LeaveQuestion, "ask", lambda _parent: True)

    def import_(**charts: str) -> ImportList:
        paths = [tmp_path / f"{name}.csv" for name in charts]
        for path, chart in zip(paths, charts.values(), strict=True):
            path.write_text(texts(chart))
        window = ImportList(paths, session, selection)
        window.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose, False)
        qtbot.addWidget(window)
        windows.append(window)
        window.show()
        qtbot.waitUntil(window.progress.isHidden)
        return window

    yield import_
    Reading.finish_all()


def column(window: ImportList, which: int) -> list[str]:
    items = [window.list.topLevelItem(i) for i in range(window.list.topLevelItemCount())]
    return [item.text(which) for item in items if item is not None]


def open_window(window: ImportList, row: int) -> ImportWindow:
    window.list.setCurrentIndex(window.list.model().index(row, 0))
    window.look.click()
    return window._windows[row]


def test_each_file_says_what_was_read_of_it_or_why_not(several: Import) -> None:
    assert column(several(dress=BODY, empty="", diary=NO_TABLE), 2) == [
        "Body: 3 sizes, 2 measures",
        "“empty.csv” is empty.",
        "No table was found; open it and show where it is.",
    ]


def test_open_questions_are_counted(several: Import) -> None:
    assert column(several(dress=BODY, skirt=NO_UNIT, diary=NO_TABLE), 1) == ["", "1", "1"]


def test_the_files_are_summed_up(several: Import) -> None:
    window = several(dress=BODY, skirt=NO_UNIT, empty="")
    assert window.summary.text() == "1 ready to save, 1 with questions, 1 that cannot be read."


def test_those_without_questions_are_saved_in_one_step(several: Import, session: Session) -> None:
    window = several(dress=BODY, skirt=NO_UNIT, shirt=BODY)
    window.save.click()
    assert ([p.title for p in session.patterns()], session.undo_stack.undoText()) == (
        ["dress", "shirt"],
        "Import 2 chart files",
    )


def test_what_was_saved_is_not_saved_again(several: Import, session: Session) -> None:
    window = several(dress=BODY)
    window.save.click()
    assert (window.save.isEnabled(), column(window, 2), len(session.patterns())) == (
        False,
        ["Saved as “dress”, dress."],
        1,
    )


def test_two_files_of_one_name_become_two_patterns(several: Import, session: Session) -> None:
    several(dress=BODY).save.click()
    several(dress=BODY).save.click()
    assert [p.title for p in session.patterns()] == ["dress", "dress 2"]


def test_a_question_answered_in_the_file_s_own_window_counts_when_it_is_closed(several: Import, qtbot: QtBot) -> None:
    window = several(skirt=NO_UNIT)
    one = open_window(window, 0)
    one.side.questions.asked()[0].buttons[0].click()
    qtbot.waitUntil(lambda: not one.correcting.busy)
    one.close()
    assert (column(window, 1), window.save.isEnabled()) == ([""], True)


def test_answers_that_are_not_saved_are_asked_about_before_the_list_closes(
    several: Import, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    window = several(skirt=NO_UNIT)
    one = open_window(window, 0)
    one.side.questions.asked()[0].buttons[0].click()
    qtbot.waitUntil(lambda: not one.correcting.busy)
    monkeypatch.setattr(LeaveQuestion, "ask", lambda _parent: False)
    kept = window.close()
    monkeypatch.setattr(LeaveQuestion, "ask", lambda _parent: True)
    assert (kept, window.close()) == (False, True)


def test_a_file_saved_from_its_own_window_says_so(several: Import) -> None:
    window = several(dress=BODY, shirt=BODY)
    open_window(window, 0).bar.save.click()
    assert column(window, 2)[0] == "The charts of “dress.csv” are in “dress”."


def test_enter_opens_a_file(several: Import) -> None:
    window = several(dress=BODY)
    QTest.keyClick(window.list, Qt.Key.Key_Return)
    assert window._windows[0].isVisible()


def test_a_file_that_cannot_be_read_cannot_be_opened(several: Import) -> None:
    window = several(empty="")
    window.list.setCurrentIndex(window.list.model().index(0, 0))
    assert not window.look.isEnabled()


def test_stopping_leaves_what_was_not_read_unread(
    session: Session, selection: Selection, qtbot: QtBot, tmp_path: Path
) -> None:
    paths = [tmp_path / f"{n}.csv" for n in range(3)]
    window = ImportList(paths, session, selection)
    window.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose, False)
    qtbot.addWidget(window)
    window.stop.click()
    Reading.finish_all()
    assert column(window, 2) == ["Not read: reading was stopped."] * 3
