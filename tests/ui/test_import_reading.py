from __future__ import annotations

import sys
import threading
from typing import TYPE_CHECKING

import pytest

from sizekeeper.errors import ReadError
from sizekeeper.ui.import_reading import Reading

if TYPE_CHECKING:
    from collections.abc import Iterator

    from pytestqt.qtbot import QtBot


@pytest.fixture(autouse=True)
def _finished() -> Iterator[None]:
    yield
    Reading.finish_all()


def test_the_work_is_done_outside_the_window_s_thread(qtbot: QtBot) -> None:
    reading = Reading(lambda _reading: threading.current_thread())
    with qtbot.waitSignal(reading.done) as done:
        reading.start()
    assert done.args is not None
    assert done.args[0] is not threading.current_thread()


def test_an_error_of_the_user_s_world_is_told_as_its_sentence(qtbot: QtBot) -> None:
    def broken(_reading: Reading) -> None:
        raise ReadError("“a.csv” is empty.")

    reading = Reading(broken)
    with qtbot.waitSignal(reading.failed) as failed:
        reading.start()
    assert failed.args == ["“a.csv” is empty."]


def test_a_mistake_of_the_program_is_raised_in_the_window_s_thread(qtbot: QtBot) -> None:
    def wrong(_reading: Reading) -> None:
        raise KeyError("bust")

    reading = Reading(wrong)
    with qtbot.captureExceptions() as caught, qtbot.waitSignal(reading.ended):
        reading.start()
        qtbot.waitUntil(lambda: bool(caught))
    assert [kind for kind, _, _ in caught] == [KeyError]


def test_progress_and_parts_arrive_in_order(qtbot: QtBot) -> None:
    def work(reading: Reading) -> None:
        reading.progress(1, 2)
        reading.tell("half")
        reading.progress(2, 2)

    reading, told = Reading(work), list[object]()
    reading.progressed.connect(lambda *done: told.append(done))
    reading.stepped.connect(told.append)
    with qtbot.waitSignal(reading.ended):
        reading.start()
    assert told == [(1, 2), "half", (2, 2)]


def test_a_cancelled_reading_stops_at_its_next_step_and_tells_nothing(qtbot: QtBot) -> None:
    begun, told = threading.Event(), list[object]()

    def endless(reading: Reading) -> None:
        while True:
            begun.set()
            reading.progress(0, 1)

    reading = Reading(endless)
    reading.done.connect(told.append)
    reading.failed.connect(told.append)
    with qtbot.waitSignal(reading.ended):
        reading.start()
        begun.wait()
        reading.cancel()
    assert told == []


def test_finishing_stops_everything_that_runs() -> None:
    def endless(reading: Reading) -> None:
        while True:
            reading.check(0, 1)

    Reading(endless).start()
    Reading.finish_all()
    assert [t.name for t in threading.enumerate() if t.name == "reading"] == []


def test_threads_take_turns_as_before_once_nothing_is_read(qtbot: QtBot) -> None:
    before, reading = sys.getswitchinterval(), Reading(lambda _reading: sys.getswitchinterval())
    with qtbot.waitSignal(reading.done) as done:
        reading.start()
    assert done.args is not None
    assert (done.args[0] < before, sys.getswitchinterval()) == (True, before)
