from __future__ import annotations

import datetime as dt

import pytest

from sizekeeper.ui.day_text import read_day

TODAY, DAY = dt.date(2026, 11, 25), dt.date(2014, 5, 17)


@pytest.mark.parametrize(
    "text", ["2014-05-17", "17 May 2014", "17  may 2014", "17.5.2014", "17.05.2014", "May 17, 2014", "17 May 2014 "]
)
def test_a_day_of_birth_is_read_as_people_write_it(text: str) -> None:
    assert read_day(text, TODAY) == (DAY, "")


def test_an_empty_text_is_no_day_and_no_mistake() -> None:
    assert read_day("  ", TODAY) == (None, "")


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("spring", "“spring” is not a day: write it as 2014-05-17 or 17 May 2014."),
        ("2014-02-30", "“2014-02-30” is not a day: write it as 2014-05-17 or 17 May 2014."),
        ("2027-01-01", "“2027-01-01” is still to come: a birth date is in the past."),
        ("0087-01-01", "“0087-01-01” is more than 120 years ago: write the year in full, such as 1987."),
    ],
)
def test_a_text_that_is_no_day_of_birth_is_explained(text: str, why: str) -> None:
    assert read_day(text, TODAY) == (None, why)
