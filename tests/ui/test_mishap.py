from __future__ import annotations

import sys
import threading
from typing import TYPE_CHECKING

import pytest

from sizekeeper.ui.mishap import Log, Mishap

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from pytestqt.qtbot import QtBot


class Saving:
    """Counts how often the work was saved."""

    def __init__(self) -> None:
        self.count = 0
        self.succeeds = True

    def __call__(self) -> bool:
        self.count += 1
        return self.succeeds


@pytest.fixture
def saving() -> Saving:
    return Saving()


@pytest.fixture
def log(tmp_path: Path) -> Path:
    return tmp_path / "logs" / "sizekeeper.log"


@pytest.fixture
def mishap(log: Path, saving: Saving) -> Iterator[Mishap]:
    written = Log(log)
    yield Mishap(written, saving)
    written.stop()


def break_down(mishap: Mishap) -> None:
    try:
        {"": 1}["a bug of ours"]
    except KeyError as error:
        mishap.take(type(error), error, error.__traceback__)


def test_an_exception_is_written_down_and_said_calmly(mishap: Mishap, log: Path, saving: Saving, qtbot: QtBot) -> None:
    break_down(mishap)
    qtbot.waitUntil(lambda: mishap.box is not None)
    assert mishap.box is not None
    qtbot.addWidget(mishap.box)
    assert "KeyError: 'a bug of ours'" in log.read_text()
    assert "break_down" in log.read_text()
    assert saving.count == 1
    assert "Your work is saved." in mishap.box.informativeText()
    assert "KeyError" not in mishap.box.text() + mishap.box.informativeText()


def test_work_that_could_not_be_saved_is_not_called_saved(mishap: Mishap, saving: Saving, qtbot: QtBot) -> None:
    saving.succeeds = False
    break_down(mishap)
    qtbot.waitUntil(lambda: mishap.box is not None)
    assert mishap.box is not None
    qtbot.addWidget(mishap.box)
    assert "save a copy now" in mishap.box.informativeText()


def test_one_dialog_is_enough_for_many_exceptions(mishap: Mishap, log: Path, qtbot: QtBot) -> None:
    break_down(mishap)
    qtbot.waitUntil(lambda: mishap.box is not None)
    first = mishap.box
    assert first is not None
    qtbot.addWidget(first)
    with qtbot.waitSignal(mishap.happened):
        break_down(mishap)
    assert mishap.box is first
    assert log.read_text().count("KeyError: 'a bug of ours'") == 2


def test_an_exception_in_a_thread_is_taken_too(mishap: Mishap, log: Path, qtbot: QtBot) -> None:
    before = sys.excepthook, threading.excepthook
    mishap.install()
    thread = threading.Thread(target=lambda: 1 // 0)
    thread.start()
    thread.join()
    mishap.uninstall()
    sys.excepthook, threading.excepthook = before
    qtbot.waitUntil(lambda: mishap.box is not None)
    assert mishap.box is not None
    qtbot.addWidget(mishap.box)
    assert "ZeroDivisionError" in log.read_text()


def test_a_log_that_cannot_be_written_is_no_reason_not_to_work(tmp_path: Path, saving: Saving, qtbot: QtBot) -> None:
    (tmp_path / "file").touch()
    mishap = Mishap(Log(tmp_path / "file" / "sizekeeper.log"), saving)
    break_down(mishap)
    qtbot.waitUntil(lambda: mishap.box is not None)
    assert mishap.box is not None
    qtbot.addWidget(mishap.box)


def test_nothing_is_written_while_nothing_goes_wrong(log: Path) -> None:
    written = Log(log)
    written.start()
    written.start()
    written.stop()
    assert not log.exists()
