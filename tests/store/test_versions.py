from __future__ import annotations

import datetime as dt
import sqlite3
from contextlib import closing
from typing import TYPE_CHECKING

import pytest

from sizekeeper.store import codec
from tests.store.made import BERTA, ILSE, Clock, noted, sql

if TYPE_CHECKING:
    from pathlib import Path

    from sizekeeper.store.library import Library

START = dt.datetime(2026, 11, 25, 9, 30, tzinfo=dt.UTC)


def test_edits_within_ten_minutes_form_one_version(library: Library, clock: Clock) -> None:
    library.save("Add", [(None, ILSE)])
    clock.move(minutes=9, seconds=59)
    library.save("Change notes", [(ILSE, noted("a"))])
    [version] = library.history("p1")
    assert (version.number, version.text, version.value) == (1, "Change notes", noted("a"))
    assert (version.opened, version.edited) == (START, START + dt.timedelta(minutes=9, seconds=59))


def test_the_ten_minutes_count_from_the_first_edit_and_not_from_the_last(library: Library, clock: Clock) -> None:
    library.save("Add", [(None, ILSE)])
    clock.move(minutes=6)
    library.save("Change", [(ILSE, noted("a"))])
    clock.move(minutes=4)
    library.save("Change", [(noted("a"), noted("b"))])
    assert [(v.number, v.value) for v in library.history("p1")] == [(2, noted("b")), (1, noted("a"))]


def test_a_clock_that_was_set_back_opens_a_new_version(library: Library, clock: Clock) -> None:
    library.save("Add", [(None, ILSE)])
    clock.move(hours=-1)
    library.save("Change", [(ILSE, noted("a"))])
    assert [v.number for v in library.history("p1")] == [2, 1]


def test_each_entry_has_versions_of_its_own(library: Library, clock: Clock) -> None:
    library.save("Add", [(None, ILSE), (None, BERTA)])
    clock.move(hours=1)
    library.save("Change", [(ILSE, noted("a"))])
    assert (len(library.history("p1")), len(library.history("p2")), library.history("p3")) == (2, 1, [])


def test_a_version_is_closed_when_its_time_is_over_or_another_follows(library: Library, clock: Clock) -> None:
    library.save("Add", [(None, ILSE)])
    assert [v.closed for v in library.history("p1")] == [False]
    clock.move(minutes=10)
    assert [v.closed for v in library.history("p1")] == [True]
    library.save("Change", [(ILSE, noted("a"))])
    assert [v.closed for v in library.history("p1")] == [False, True]


def test_the_file_itself_refuses_to_rewrite_a_closed_version(library: Library, clock: Clock, place: Path) -> None:
    library.save("Add", [(None, ILSE)])
    clock.move(hours=1)
    library.save("Change", [(ILSE, noted("a"))])
    with closing(sqlite3.connect(place)) as other, pytest.raises(sqlite3.IntegrityError, match="never rewritten"):
        other.execute("UPDATE version SET value = NULL WHERE number = 1")


def test_what_was_taken_away_keeps_its_versions_and_can_come_back(library: Library) -> None:
    library.save("Add", [(None, ILSE)])
    library.save("Delete", [(ILSE, None)])
    assert library.values() == []
    assert library.taken_away() == [ILSE]
    library.save("Undo delete", [(None, noted("back"))])
    assert library.values() == [noted("back")]
    assert library.taken_away() == []
    history = [(v.number, v.text, v.value, v.closed) for v in library.history("p1")]
    assert history == [
        (3, "Undo delete", noted("back"), False),
        (2, "Delete", None, True),
        (1, "Add", ILSE, True),
    ]


def test_the_last_to_go_is_the_first_among_those_taken_away(library: Library, clock: Clock) -> None:
    library.save("Add", [(None, ILSE), (None, BERTA)])
    library.save("Delete", [(BERTA, None)])
    clock.move(minutes=1)
    library.save("Delete", [(ILSE, None)])
    assert library.taken_away() == [ILSE, BERTA]


def test_putting_an_old_version_back_is_an_edit_like_any_other(library: Library, clock: Clock) -> None:
    library.save("Add", [(None, ILSE)])
    clock.move(days=1)
    library.save("Change", [(ILSE, noted("a"))])
    clock.move(days=1)
    library.save("Put back", [(noted("a"), library.history("p1")[1].value)])
    assert library.values() == [ILSE]
    assert [v.value for v in library.history("p1")] == [ILSE, noted("a"), ILSE]


def test_an_edit_of_an_old_shape_leaves_the_old_version_as_it_was(
    library: Library, place: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    library.save("Add", [(None, ILSE)])
    old = sql(place, "SELECT shape, value FROM version")
    monkeypatch.setitem(codec.SHAPES, "person", 2)
    monkeypatch.setitem(codec.UPGRADES, ("person", 1), lambda raw: {**raw, "notes": "upgraded"})
    assert library.values() == [noted("upgraded")]
    library.save("Change", [(noted("upgraded"), noted("a"))])
    assert sql(place, "SELECT shape, value FROM version WHERE number = 1") == old
    assert [v.value for v in library.history("p1")] == [noted("a"), noted("upgraded")]


@pytest.mark.parametrize("text", ["'; DROP TABLE entry; --", "a\0b", "Änder“e”", "", "x" * 100_000])
def test_the_name_of_an_edit_may_be_any_text(library: Library, text: str) -> None:
    library.save(text, [(None, ILSE)])
    assert library.history("p1")[0].text == text


def test_half_a_character_in_the_name_of_an_edit_does_not_lose_the_edit(library: Library) -> None:
    library.save("Rename \ud83d", [(None, ILSE)])
    assert library.history("p1")[0].text == "Rename ?"
