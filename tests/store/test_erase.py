from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from sizekeeper.core.make import Make
from sizekeeper.core.pattern import Pattern
from sizekeeper.core.person import Person
from sizekeeper.errors import StoreError
from sizekeeper.store import erase
from sizekeeper.store.backup import backups
from sizekeeper.store.library import Library
from tests.store.made import BERTA, DRESS, LONG, Clock, noted, spoil, sql

if TYPE_CHECKING:
    from pathlib import Path

FIRST = Person("p1", "Wilhelmine", notes=LONG)
LATER = Person("p1", "Minna-Ottilie", notes="secret girth")
TRACES = (b"Wilhelmine", b"Minna-Ottilie", b"secret girth", b"so many words")


@pytest.fixture
def peopled(library: Library, clock: Clock) -> Library:
    """A library with two backups, two names for one person, and her name in the name of an edit of another entry."""
    library.save("Add", [(None, FIRST), (None, BERTA)])
    clock.move(days=1)
    library.save("Rename Wilhelmine to Minna-Ottilie", [(FIRST, LATER), (BERTA, noted("a", BERTA))])
    clock.move(days=1)
    library.save("Add a dress", [(None, DRESS)])
    return library


def traces(path: Path) -> list[bytes]:
    """What can be read of her in a file or in any file of a folder."""
    files = [path] if path.is_file() else [found for found in path.rglob("*") if found.is_file()]
    return [trace for trace in TRACES if any(trace in found.read_bytes() for found in files)]


def test_a_person_and_all_her_versions_go_and_the_others_stay(peopled: Library) -> None:
    peopled.erase("p1", backups=False)
    assert peopled.values() == [noted("a", BERTA), DRESS]
    assert (peopled.history("p1"), peopled.taken_away()) == ([], [])
    assert [v.value for v in peopled.history("p2")] == [noted("a", BERTA), BERTA]


def test_what_was_made_for_her_goes_with_her(peopled: Library) -> None:
    hers, other = Make("m1", "p1", "d1", notes="secret girth"), Make("m2", "p2", "d1")
    peopled.save("Make a dress", [(None, hers), (None, other)])
    peopled.erase("p1", backups=False)
    assert peopled.values() == [noted("a", BERTA), DRESS, other]


def test_not_a_byte_of_her_stays_in_the_file(peopled: Library) -> None:
    assert traces(peopled.path) == list(TRACES)
    peopled.erase("p1", backups=False)
    assert traces(peopled.path) == []


def test_the_file_keeps_no_empty_pages_where_she_was(peopled: Library) -> None:
    before = peopled.path.stat().st_size
    peopled.erase("p1", backups=False)
    assert sql(peopled.path, "PRAGMA freelist_count") == [(0,)]
    assert peopled.path.stat().st_size < before


def test_not_a_byte_of_her_stays_in_any_file_when_the_backups_are_erased_from(peopled: Library, tmp_path: Path) -> None:
    (tmp_path / "home.sizekeeper.backups" / ".unfinished-1").write_text("Wilhelmine")
    peopled.erase("p1", backups=True)
    assert traces(tmp_path) == []
    assert len(backups(peopled.path)) == 2


def test_the_backups_keep_her_unless_asked(peopled: Library) -> None:
    peopled.erase("p1", backups=False)
    assert [bool(traces(backup.path)) for backup in backups(peopled.path)] == [True, True]


def test_the_backups_keep_the_others_and_stay_good(peopled: Library, clock: Clock) -> None:
    peopled.erase("p1", backups=True)
    for backup in backups(peopled.path):
        with Library.open(backup.path, now=clock, read_only=True) as library:
            assert [value.id for value in library.values()] == ["p2"]
            assert library.quick_check() is None


def test_she_can_still_be_erased_from_the_backups_later(peopled: Library, tmp_path: Path) -> None:
    peopled.erase("p1", backups=False)
    peopled.erase("p1", backups=True)
    assert traces(tmp_path) == []


def test_somebody_who_was_taken_away_before_can_be_erased(peopled: Library) -> None:
    peopled.save("Delete", [(LATER, None)])
    peopled.erase("p1", backups=False)
    assert traces(peopled.path) == []


def test_a_name_is_only_forgotten_where_it_is_a_word(library: Library) -> None:
    library.save("Add", [(None, Person("p1", "An(n)a*"))])
    for number, text in enumerate(["Ask an(N)A*!", "Canna(n)a*", "Add Berta"]):
        library.save(text, [(None, Person(f"b{number}", "Berta"))])
    library.erase("p1", backups=False)
    assert [library.history(f"b{number}")[0].text for number in range(3)] == ["", "Canna(n)a*", "Add Berta"]


def test_a_person_without_a_name_can_be_erased(library: Library) -> None:
    library.save("Add", [(None, Person("p1", " ")), (None, BERTA)])
    library.erase("p1", backups=False)
    assert (library.values(), library.history("p2")[0].text) == ([BERTA], "Add")


def test_entries_of_another_kind_that_are_hers_go_with_her(library: Library, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(erase.OWNERS, "pattern", lambda value: getattr(value, "publisher", ""))
    library.save(
        "Add", [(None, BERTA), (None, Pattern("d1", "Hers", publisher="p2")), (None, Pattern("d2", "Another"))]
    )
    library.erase("p2", backups=False)
    assert library.values() == [Pattern("d2", "Another")]


def test_erasing_is_no_change_from_outside_but_a_new_state(peopled: Library) -> None:
    before = peopled.generation
    peopled.erase("p1", backups=False)
    assert (peopled.generation, peopled.changed_outside()) == (before + 1, False)


def test_a_backup_that_cannot_be_erased_from_is_named_and_the_others_are_done(peopled: Library) -> None:
    newest, oldest = backups(peopled.path)
    newest.path.write_text("rubbish, but Wilhelmine's")
    with pytest.raises(StoreError, match=f"could not be erased from: “{newest.path.name.replace('+', '.')}”"):
        peopled.erase("p1", backups=True)
    assert (traces(peopled.path), traces(oldest.path)) == ([], [])


def test_nobody_is_erased_half_when_an_entry_cannot_be_read(peopled: Library) -> None:
    sql(peopled.path, "UPDATE version SET value = '{' WHERE entry = 'p2' AND number = 2")
    with pytest.raises(StoreError, match="the person p2 is damaged"):
        peopled.erase("p1", backups=False)
    assert [v.value for v in peopled.history("p1")] == [LATER, FIRST]


def test_a_damaged_library_says_so_when_somebody_is_to_be_erased(place: Path, clock: Clock) -> None:
    with Library.open(place, now=clock) as library:
        library.save("Add", [(None, FIRST)])
    spoil(place)
    with Library.open(place, now=clock) as library, pytest.raises(StoreError, match="is damaged"):
        library.erase("p1", backups=False)
