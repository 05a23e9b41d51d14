from __future__ import annotations

import datetime as dt
from typing import TYPE_CHECKING

from sizekeeper import assets
from sizekeeper.core.pattern import Pattern
from sizekeeper.core.person import Person
from sizekeeper.core.preference import EasePreference, RegionPreference
from sizekeeper.ui.version_words import day_words, lines_of, moment_words
from tests.build import chart, length, person

if TYPE_CHECKING:
    from sizekeeper.store.codec import Value


def lines(value: Value | None) -> dict[str, str]:
    return lines_of(value, assets.measures())


def test_a_day_is_written_out() -> None:
    assert day_words(dt.date(2026, 3, 5)) == "5 March 2026"


def test_a_moment_is_told_in_the_time_of_this_place() -> None:
    moment = dt.datetime(2026, 3, 5, 14, 7).astimezone()
    assert moment_words(moment.astimezone(dt.UTC)) == "5 March 2026, 14:07"


def test_a_persons_figures_stand_as_typed_with_their_day() -> None:
    assert lines(person("in", bust="37 3/4"))["Bust, 20 November 2026"] == "37 3/4 (with help)"


def test_what_is_empty_is_left_out() -> None:
    assert lines(Person("a", "Ada")) == {"Name": "Ada", "Unit": "cm"}
    assert lines(None) == {}


def test_ease_preferences_are_told_in_words() -> None:
    region = RegionPreference(band="easy", own=length("5 cm"), role="free")
    preference = EasePreference("dress", lead="bust", regions={"hip": region})
    said = lines(Person("a", "Ada", preferences=(preference,)))["Ease, dress"]
    assert said == "size chosen by bust; Hip: easy, own ease 5 cm, free"


def test_a_pattern_says_its_stretch_in_per_cent() -> None:
    assert lines(Pattern("p", "Top", fabric="knit", stretch=0.25))["Stretch"] == "25%"


def test_a_chart_says_its_rows_as_typed_and_where_figures_are_missing() -> None:
    assert lines(chart("body", "38 40", bust="88, "))["Bust"] == "88   –"
