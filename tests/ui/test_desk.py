from __future__ import annotations

import sqlite3
from contextlib import closing
from typing import TYPE_CHECKING

import pytest
from PySide6.QtWidgets import QApplication

from sizekeeper.core.chart import Chart
from sizekeeper.core.person import Person
from sizekeeper.store.library import Library
from sizekeeper.ui import desk as desk_module
from sizekeeper.ui import own_library
from sizekeeper.ui.desk import DEMO_WORDS, Desk

if TYPE_CHECKING:
    import datetime as dt
    from collections.abc import Callable, Iterator
    from pathlib import Path

    from pytestqt.qtbot import QtBot

    from sizekeeper.ui.pages import PageKind
    from sizekeeper.ui.settings import Settings
    from sizekeeper.ui.window import MainWindow

ADA = Person("a", "Ada")


@pytest.fixture
def desk(
    settings: Settings,
    plain_pages: tuple[PageKind, ...],
    now: Callable[[], dt.datetime],
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> Iterator[Desk]:
    """A desk whose own library and demo household lie in the test's folder."""
    for module in (desk_module, own_library):
        monkeypatch.setattr(module, "default_path", lambda: tmp_path / "own" / "home.sizekeeper")
    desk = Desk(settings, kinds=plain_pages, now=now, demo=lambda: [ADA])
    yield desk
    if desk.window is not None:
        desk.window.close()
    desk.close()


def window_of(desk: Desk) -> MainWindow:
    assert desk.window is not None
    return desk.window


def test_the_users_own_library_is_made_the_first_time(desk: Desk, tmp_path: Path) -> None:
    assert desk.open_own()
    assert (tmp_path / "own" / "home.sizekeeper").exists()
    assert window_of(desk).isVisible()


def test_the_demo_household_has_a_file_of_its_own(desk: Desk, tmp_path: Path) -> None:
    assert desk.open_demo()
    assert [p.name for p in window_of(desk).session.people()] == ["Ada"]
    assert window_of(desk).notice.text == DEMO_WORDS
    assert not (tmp_path / "own" / "home.sizekeeper").exists()


def test_the_demo_household_keeps_what_was_changed_in_it(desk: Desk) -> None:
    desk.open_demo()
    window_of(desk).session.apply("Change name", ADA, Person("a", "Ava"))
    desk.open_own()
    desk.open_demo()
    assert [p.name for p in window_of(desk).session.people()] == ["Ava"]


def test_from_the_demo_one_button_leads_home(desk: Desk) -> None:
    desk.open_demo()
    window_of(desk).library.own.trigger()
    assert window_of(desk).session.empty
    assert not window_of(desk).library.own.isEnabled()


def test_another_library_takes_the_place_of_the_one_before(
    desk: Desk, tmp_path: Path, now: Callable[[], dt.datetime]
) -> None:
    desk.open_own()
    first = window_of(desk)
    first.session.apply("Add person", None, ADA)
    assert desk.open(tmp_path / "other.sizekeeper")
    assert not first.isVisible()
    with Library.open(tmp_path / "own" / "home.sizekeeper", now=now) as library:
        assert not library.read_only
        assert library.values() == [ADA]


def test_opening_the_library_that_is_open_changes_nothing(desk: Desk) -> None:
    desk.open_own()
    first = window_of(desk)
    assert desk.open_own()
    assert window_of(desk) is first


def test_a_chosen_library_is_the_users_own_from_then_on(desk: Desk, tmp_path: Path) -> None:
    desk.open_chosen(tmp_path / "sewing.sizekeeper")
    assert desk.own_path() == tmp_path / "sewing.sizekeeper"
    (tmp_path / "sewing.sizekeeper").rename(tmp_path / "gone")
    assert desk.own_path() == tmp_path / "own" / "home.sizekeeper"


def test_the_demo_never_becomes_the_users_own(desk: Desk, tmp_path: Path) -> None:
    desk.open_chosen(desk_module.demo_path())
    assert desk.own_path() == tmp_path / "own" / "home.sizekeeper"


def test_a_file_that_is_no_library_is_refused_in_the_window_that_is_open(desk: Desk, tmp_path: Path) -> None:
    desk.open_own()
    (tmp_path / "notes.txt").write_text("not a library, whatever its length may be" * 100)
    assert not desk.open_chosen(tmp_path / "notes.txt")
    assert "notes.txt" in window_of(desk).notice.text
    assert desk.own_path() == tmp_path / "own" / "home.sizekeeper"


def test_at_the_start_a_refused_library_is_explained_and_another_one_opens(
    desk: Desk, tmp_path: Path, qtbot: QtBot
) -> None:
    (tmp_path / "notes.txt").write_text("not a library, whatever its length may be" * 100)
    assert not desk.open(tmp_path / "notes.txt")
    assert desk.trouble is not None
    qtbot.addWidget(desk.trouble)
    assert "notes.txt" in desk.trouble.words.text()
    assert desk.trouble.isVisible()
    desk.trouble.library_wanted.emit(tmp_path / "other.sizekeeper")
    assert window_of(desk).isVisible()
    assert not desk.trouble.isVisible()


def test_closing_the_window_lets_go_of_the_library(desk: Desk, tmp_path: Path, now: Callable[[], dt.datetime]) -> None:
    desk.open_own()
    window_of(desk).close()
    assert desk.window is None
    with Library.open(tmp_path / "own" / "home.sizekeeper", now=now) as library:
        assert not library.read_only


def test_a_close_that_was_refused_keeps_the_library_open(
    desk: Desk, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    desk.open_own()
    first = window_of(desk)
    first.session.apply("Add person", None, ADA)
    monkeypatch.setattr(type(first), "leave", lambda _self: False)
    monkeypatch.setattr(type(first), "ask_to_lose", lambda *_: False)
    assert not desk.open(tmp_path / "other.sizekeeper")
    assert window_of(desk) is first
    monkeypatch.undo()


def test_after_the_first_picture_the_file_is_looked_over_and_the_pages_are_made(desk: Desk, qtbot: QtBot) -> None:
    desk.open_demo()
    window = window_of(desk)
    with qtbot.waitExposed(window):
        window.show()
    qtbot.waitUntil(lambda: all(window.pages.is_made(kind.name) for kind in window.pages.kinds), timeout=10_000)
    assert QApplication.topLevelWidgets()


def test_damage_found_after_the_start_is_said(desk: Desk, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(Library, "quick_check", lambda _self: "“home” is damaged.")
    desk.open_own()
    window = window_of(desk)
    qtbot.waitUntil(lambda: window.notice.text == "“home” is damaged.", timeout=10_000)


def test_a_chart_that_cannot_be_read_closes_the_window_again_and_is_named(
    desk: Desk, tmp_path: Path, now: Callable[[], dt.datetime], qtbot: QtBot
) -> None:
    with Library.open(tmp_path / "bad.sizekeeper", now=now) as library:
        library.save("Add", [(None, ADA), (None, Chart("c1", "p1", "body"))])
    with closing(sqlite3.connect(tmp_path / "bad.sizekeeper")) as file, file:
        file.execute("UPDATE version SET value = '{}' WHERE entry = 'c1'")
    assert desk.open(tmp_path / "bad.sizekeeper")
    qtbot.waitUntil(lambda: desk.trouble is not None and desk.window is None)
    assert desk.trouble is not None
    qtbot.addWidget(desk.trouble)
    assert desk.trouble.isVisible()
    assert "bad.sizekeeper" in desk.trouble.words.text()
    assert "c1" in desk.trouble.words.text()
