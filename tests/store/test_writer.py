from __future__ import annotations

import errno
import logging
import threading
from typing import TYPE_CHECKING

import pytest

from sizekeeper.errors import StoreError
from sizekeeper.store.backup import backups
from sizekeeper.store.library import Library
from sizekeeper.store.writer import Writer
from tests.store.made import BERTA, DRESS, ILSE, LONG, Clock, fill_disk, make_room, noted

if TYPE_CHECKING:
    import sqlite3
    from collections.abc import Iterator
    from pathlib import Path

    from sizekeeper.core.person import Person
    from sizekeeper.store.codec import Value


class Desk:
    """Somebody who hands in edits and notes what comes back."""

    def __init__(self, writer: Writer) -> None:
        self.writer = writer
        self.saved = 0
        self.refusals: list[str] = []

    def put(self, text: str, before: Value | None, after: Value | None) -> None:
        self.writer.submit(text, [(before, after)], self.on_saved, self.refusals.append)

    def on_saved(self, count: int) -> None:
        self.saved += count


@pytest.fixture
def desk(library: Library) -> Iterator[Desk]:
    """A writer on a new library, and somebody who uses it."""
    with Writer(library) as writer:
        yield Desk(writer)


def names(desk: Desk) -> list[str]:
    return [edit.text for edit in desk.writer.refused]


def counted(number: int) -> Person:
    return noted(str(number))


def test_an_edit_is_in_the_file_when_it_is_called_saved(desk: Desk, library: Library) -> None:
    desk.put("Add", None, ILSE)
    assert desk.writer.flush(60)
    assert (desk.saved, desk.refusals, library.values()) == (1, [], [ILSE])


def test_edits_are_committed_in_the_order_in_which_they_came(desk: Desk, library: Library) -> None:
    desk.put("Add", None, counted(0))
    for number in range(50):
        desk.put("Count", counted(number), counted(number + 1))
    assert desk.writer.flush(60)
    assert (desk.saved, library.values()) == (51, [counted(50)])


def test_edits_that_queue_up_share_a_commit(desk: Desk, library: Library) -> None:
    with library.lent():
        desk.put("Add", None, counted(0))
        for number in range(20):
            desk.put("Count", counted(number), counted(number + 1))
        assert not desk.writer.flush(0)
    assert desk.writer.flush(60)
    # the thread may have taken some of the edits before the others were handed in, but not one by one
    assert (desk.saved, library.generation <= 2) == (21, True)


def test_handing_in_does_not_wait_for_the_file(desk: Desk, library: Library) -> None:
    with library.lent():
        desk.put("Add", None, ILSE)
        assert desk.saved == 0
    assert desk.writer.flush(60)
    assert desk.saved == 1


def test_each_listener_hears_of_its_own_edits_only(library: Library) -> None:
    with Writer(library) as writer:
        first, second = Desk(writer), Desk(writer)
        with library.lent():
            first.put("Add", None, ILSE)
            second.put("Add", None, BERTA)
            second.put("Change", BERTA, noted("a", BERTA))
        writer.flush(60)
    assert (first.saved, second.saved) == (1, 2)


def test_a_stale_edit_is_put_aside_and_the_others_go_on(desk: Desk, library: Library) -> None:
    library.save("Add", [(None, noted("elsewhere"))])
    with library.lent():
        desk.put("Change", noted("before"), noted("a"))
        desk.put("Change again", noted("a"), noted("b"))
        desk.put("Add Berta", None, BERTA)
    assert not desk.writer.flush(60)
    assert (desk.saved, names(desk)) == (1, ["Change", "Change again"])
    assert [sentence.split(";")[0] for sentence in desk.refusals] == [
        "“Ilse” was changed by another window or program since it was read"
    ] * 2
    assert library.values() == [noted("elsewhere"), BERTA]


def test_a_stale_edit_is_never_carried_out_later_by_surprise(desk: Desk, library: Library) -> None:
    library.save("Add", [(None, noted("elsewhere"))])
    desk.put("Change", noted("before"), noted("a"))
    desk.writer.flush(60)
    desk.put("Change back", noted("elsewhere"), noted("before"))
    desk.writer.flush(60)
    desk.writer.retry()
    desk.writer.flush(60)
    assert (library.values(), names(desk)) == ([noted("before")], ["Change"])


def test_on_a_full_disk_edits_wait_and_are_saved_with_the_next_one(desk: Desk, library: Library) -> None:
    library.save("Add", [(None, ILSE)])
    fill_disk(library)
    desk.put("Write", ILSE, noted(LONG))
    desk.writer.flush(60)
    desk.put("Write more", noted(LONG), noted(LONG * 2))
    assert not desk.writer.flush(60)
    assert (desk.saved, names(desk), library.values()) == (0, ["Write", "Write more"], [ILSE])
    assert len(desk.refusals) == 2
    assert all(sentence.endswith("cannot be written: the disk is full.") for sentence in desk.refusals)
    make_room(library)
    desk.put("Shorten", noted(LONG * 2), noted("short"))
    assert desk.writer.flush(60)
    assert (desk.saved, names(desk), library.values()) == (3, [], [noted("short")])


def test_on_a_full_disk_no_edit_overtakes_the_one_it_builds_on(desk: Desk, library: Library) -> None:
    library.save("Add", [(None, ILSE)])
    fill_disk(library)
    with library.lent():
        desk.put("Write", ILSE, noted(LONG))
        desk.put("Shorten", noted(LONG), noted("short"))
        desk.put("Add Berta", None, BERTA)
    assert not desk.writer.flush(60)
    assert (names(desk), library.values()) == (["Write", "Shorten", "Add Berta"], [ILSE])


def test_trying_again_tells_a_new_refusal_and_then_saves(desk: Desk, library: Library) -> None:
    library.save("Add", [(None, ILSE)])
    fill_disk(library)
    desk.put("Write", ILSE, noted(LONG))
    desk.writer.flush(60)
    desk.writer.retry()
    assert not desk.writer.flush(60)
    assert len(desk.refusals) == 2
    make_room(library)
    desk.writer.retry()
    assert desk.writer.flush(60)
    assert (desk.saved, library.values()) == (1, [noted(LONG)])


def test_trying_again_with_nothing_to_try_does_nothing(desk: Desk, library: Library) -> None:
    desk.writer.retry()
    assert desk.writer.flush(60)
    assert (desk.saved, library.generation) == (0, 0)


def test_closing_tries_everything_once_more(library: Library) -> None:
    library.save("Add", [(None, ILSE)])
    fill_disk(library)
    with Writer(library) as writer:
        desk = Desk(writer)
        desk.put("Write", ILSE, noted(LONG))
        writer.flush(60)
        make_room(library)
    writer.close()
    assert (desk.saved, writer.refused, library.values()) == (1, [], [noted(LONG)])


def test_closing_keeps_what_could_not_be_saved(library: Library) -> None:
    library.save("Add", [(None, ILSE)])
    fill_disk(library)
    with Writer(library) as writer:
        desk = Desk(writer)
        desk.put("Write", ILSE, noted(LONG))
    assert [edit.text for edit in writer.refused] == ["Write"]


def test_closing_ends_the_thread_and_leaves_the_library_open(library: Library) -> None:
    with Writer(library) as writer:
        assert "library writer" in [thread.name for thread in threading.enumerate()]
    assert "library writer" not in [thread.name for thread in threading.enumerate()]
    assert library.values() == []
    with pytest.raises(RuntimeError, match="closed"):
        writer.submit("Add", [(None, ILSE)], print, print)


def test_a_value_that_cannot_be_kept_does_not_hold_up_the_others(desk: Desk, library: Library) -> None:
    with library.lent():
        desk.put("Paste", None, noted("\ud800"))
        desk.put("Add Berta", None, BERTA)
    assert not desk.writer.flush(60)
    assert (names(desk), library.values()) == (["Paste"], [BERTA])
    assert desk.refusals[0].startswith("“Ilse” cannot be saved: ")


def test_a_fault_of_the_program_is_logged_and_the_edit_kept(
    desk: Desk, library: Library, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    def faulty(connection: sqlite3.Connection, edits: object, moment: object) -> None:
        raise ZeroDivisionError("oops")

    with monkeypatch.context() as patch, caplog.at_level(logging.ERROR):
        patch.setattr("sizekeeper.store.versions.replace_all", faulty)
        desk.put("Add", None, ILSE)
        desk.writer.flush(60)
    assert (names(desk), caplog.records[0].message) == (["Add"], "an edit could not be saved")
    assert desk.refusals[0].startswith("The edit is not saved, but kept, because of a fault in the program (oops)")
    desk.put("Add Berta", None, BERTA)
    desk.writer.flush(60)
    assert library.values() == [BERTA]


def test_a_listener_that_fails_does_not_stop_the_writer(
    desk: Desk, library: Library, caplog: pytest.LogCaptureFixture
) -> None:
    def gone(count: int) -> None:
        raise RuntimeError("the window is gone")

    with caplog.at_level(logging.CRITICAL):
        desk.writer.submit("Add", [(None, ILSE)], gone, print)
        desk.put("Add Berta", None, BERTA)
        assert desk.writer.flush(60)
    assert library.values() == [ILSE, BERTA]


def test_a_copy_holds_the_library_with_the_refused_edits_laid_over_it(
    desk: Desk, library: Library, clock: Clock, tmp_path: Path
) -> None:
    library.save("Add", [(None, noted("elsewhere")), (None, BERTA)])
    with library.lent():
        desk.put("Change", noted("before"), noted("mine"))
        desk.put("Delete", noted("before", BERTA), None)
        desk.put("Delete a dress", DRESS, None)
    desk.writer.flush(60)
    assert desk.writer.save_copy(tmp_path / "copy") == []
    with Library.open(tmp_path / "copy", now=clock) as copy:
        assert copy.values() == [noted("mine")]
        assert [v.text for v in copy.history("p2")] == ["Delete", "Add"]
    assert library.values() == [noted("elsewhere"), BERTA]


def test_a_copy_without_refused_edits_is_the_library(
    desk: Desk, library: Library, clock: Clock, tmp_path: Path
) -> None:
    desk.put("Add", None, ILSE)
    desk.writer.flush(60)
    desk.writer.save_copy(tmp_path / "copy")
    with Library.open(tmp_path / "copy", now=clock) as copy:
        assert copy.values() == [ILSE]


def test_a_copy_says_which_refused_edit_no_file_can_hold(
    desk: Desk, library: Library, clock: Clock, tmp_path: Path
) -> None:
    library.save("Add", [(None, BERTA)])
    desk.put("Paste", None, noted("\ud800"))
    desk.put("Change", noted("before", BERTA), noted("mine", BERTA))
    desk.writer.flush(60)
    [sentence] = desk.writer.save_copy(tmp_path / "copy")
    assert sentence.startswith("“Ilse” cannot be saved: ")
    with Library.open(tmp_path / "copy", now=clock) as copy:
        assert copy.values() == [noted("mine", BERTA)]


def test_a_copy_that_could_not_be_finished_is_not_left_behind(
    desk: Desk, library: Library, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def faulty(*_: object) -> None:
        raise OSError(errno.EIO, "Input/output error")

    desk.put("Delete", ILSE, None)
    desk.writer.flush(60)
    monkeypatch.setattr("sizekeeper.store.writer.lay_over", faulty)
    with pytest.raises(StoreError, match="copy” cannot be used: Input/output error"):
        desk.writer.save_copy(tmp_path / "copy")
    assert not (tmp_path / "copy").exists()


def test_a_copy_is_never_written_over_a_file(desk: Desk, library: Library) -> None:
    with pytest.raises(StoreError, match="exists already"):
        desk.writer.save_copy(library.path)
    assert library.values() == []


def test_an_erased_person_is_in_no_refused_edit_either(desk: Desk, library: Library, clock: Clock) -> None:
    library.save("Add", [(None, ILSE), (None, BERTA)])
    clock.move(days=1)
    library.save("Change", [(BERTA, noted("a", BERTA))])
    desk.put("Change", noted("before"), noted("b"))
    desk.put("Change Berta", BERTA, noted("b", BERTA))
    desk.writer.flush(60)
    assert names(desk) == ["Change", "Change Berta"]
    desk.writer.erase("p1", backups=True)
    assert (names(desk), library.values()) == (["Change Berta"], [noted("a", BERTA)])
    assert not any(b"Ilse" in path.read_bytes() for path in [library.path, *(b.path for b in backups(library.path))])


def test_erasing_leaves_the_backups_alone_unless_asked(desk: Desk, library: Library, clock: Clock) -> None:
    library.save("Add", [(None, ILSE)])
    clock.move(days=1)
    desk.put("Add Berta", None, BERTA)
    desk.writer.erase("p1", backups=False)
    assert (library.values(), b"Ilse" in backups(library.path)[0].path.read_bytes()) == ([BERTA], True)
