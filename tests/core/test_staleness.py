from __future__ import annotations

import datetime as dt

import pytest

from sizekeeper.core.staleness import ago, grows, later_by_months, months_since, stale, years_old

TODAY = dt.date(2026, 11, 25)


@pytest.mark.parametrize(
    ("on", "child", "old"),
    [
        (dt.date(2026, 5, 25), False, False),
        (dt.date(2026, 5, 24), False, True),
        (dt.date(2026, 8, 25), True, False),
        (dt.date(2026, 8, 24), True, True),
        (dt.date(2026, 8, 24), False, False),
        (TODAY, True, False),
    ],
)
def test_a_reading_is_old_after_six_months_and_a_childs_after_three(on: dt.date, child: bool, old: bool) -> None:
    assert stale(on, TODAY, child) is old


def test_a_month_that_is_too_short_ends_on_its_last_day() -> None:
    assert later_by_months(dt.date(2025, 8, 31), 6) == dt.date(2026, 2, 28)


def test_a_month_on_from_december_is_in_the_next_year() -> None:
    assert later_by_months(dt.date(2025, 12, 5), 1) == dt.date(2026, 1, 5)


def test_a_month_counts_only_when_it_is_whole() -> None:
    assert [months_since(dt.date(2026, 10, day), TODAY) for day in (25, 26)] == [1, 0]


def test_a_day_to_come_is_no_month_ago() -> None:
    assert months_since(dt.date(2027, 3, 1), TODAY) == 0


@pytest.mark.parametrize(
    ("on", "words"),
    [
        (dt.date(2026, 11, 25), "today"),
        (dt.date(2026, 11, 24), "yesterday"),
        (dt.date(2026, 11, 12), "13 days ago"),
        (dt.date(2026, 11, 11), "2 weeks ago"),
        (dt.date(2026, 10, 1), "7 weeks ago"),
        (dt.date(2026, 3, 25), "8 months ago"),
        (dt.date(2024, 12, 1), "23 months ago"),
        (dt.date(2024, 11, 25), "2 years ago"),
        (dt.date(2026, 11, 26), "on a day to come"),
    ],
)
def test_how_long_ago_is_said_in_words(on: dt.date, words: str) -> None:
    assert ago(on, TODAY) == words


def test_a_reading_of_march_was_measured_eight_months_ago() -> None:
    assert ago(dt.date(2026, 3, 3), TODAY) == "8 months ago"


def test_a_year_of_age_is_reached_on_the_birthday() -> None:
    assert [years_old(dt.date(2010, 11, day), TODAY) for day in (25, 26)] == [16, 15]


def test_a_person_grows_until_sixteen_or_while_marked_as_a_child() -> None:
    assert [
        grows(dt.date(2010, 11, 26), TODAY, child=False),
        grows(dt.date(2010, 11, 25), TODAY, child=False),
        grows(None, TODAY, child=False),
        grows(None, TODAY, child=True),
    ] == [True, False, False, True]
