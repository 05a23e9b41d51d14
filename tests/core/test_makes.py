from __future__ import annotations

import datetime as dt
from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from sizekeeper.core.makes import finished as finished_ones
from sizekeeper.core.makes import in_front, made_before
from tests.made import finished, make

if TYPE_CHECKING:
    from sizekeeper.core.make import Make

EARLY, LATE = dt.date(2025, 3, 1), dt.date(2026, 9, 1)


@pytest.mark.parametrize(
    ("makes", "taken", "front"),
    [
        ([make("old"), make("new")], "", "new"),
        ([make("old"), make("done", progress="finished")], "", "old"),
        ([make("done", progress="finished"), make("left", progress="given_up")], "", None),
        ([make("done", progress="finished"), make("sewn", progress="sewing")], "done", "done"),
        ([make("one")], "a make of somebody else", "one"),
    ],
)
def test_the_make_worked_on_is_the_one_taken_up_else_the_newest_open_one(
    makes: list[Make], taken: str, front: str | None
) -> None:
    found = in_front(makes, taken)

    assert (found.id if found is not None else None) == front


def test_finished_makes_come_newest_first_without_the_hidden_ones() -> None:
    makes = [finished("early", EARLY), finished("late", LATE), replace(finished("hidden"), hidden=True), make("open")]

    assert [one.id for one in finished_ones(makes)] == ["late", "early"]


def test_her_own_make_tells_more_than_a_newer_one_of_somebody_else() -> None:
    hers, other = finished("hers", EARLY), replace(finished("other", LATE), person="Bea")

    assert made_before([hers, other], "person", "pattern", "") == hers
    assert made_before([hers, other], "Cleo", "pattern", "") == other


def test_a_make_of_the_same_view_tells_more_than_a_newer_one_of_another() -> None:
    same, other = replace(finished("same", EARLY), view="A"), replace(finished("other", LATE), view="B")

    assert made_before([same, other], "person", "pattern", "A") == same


def test_nothing_was_made_before_of_another_pattern_or_but_for_the_make_itself() -> None:
    assert made_before([finished("one")], "person", "another", "") is None
    assert made_before([finished("one")], "person", "pattern", "", besides="one") is None
