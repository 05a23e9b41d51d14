from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from sizekeeper import assets
from sizekeeper.core.make import Decision, KeptRegion, Place
from sizekeeper.core.make_words import (
    cut_words,
    decided_words,
    kept_words,
    made_before_words,
    shortened,
    worn_badly_words,
    worn_words,
)
from sizekeeper.core.notation import CENTIMETRES
from sizekeeper.core.wording import Wording
from tests.build import length
from tests.made import finished, make

WORDS = Wording(CENTIMETRES, assets.measures().name)
DRESS = finished(next_time="Longer.", bust=(4.0, "right"), waist=(1.0, "tight"))


@pytest.mark.parametrize(
    ("decision", "said"),
    [
        (Decision("straight", Place("40")), "40, straight"),
        (
            Decision("between", Place("40", Fraction(1, 4))),
            "a quarter of the way from 40 to the next size",
        ),
        (
            Decision("blended", Place("40"), {"bust": Place("40"), "hip": Place("44")}),
            "bust 40, hip 44, graded between sizes",
        ),
        (
            Decision("bust", Place("38"), add=length("5 cm")),
            "38, with a bust adjustment, 5 cm added at the bust",
        ),
    ],
)
def test_a_decision_is_said_without_the_chart(decision: Decision, said: str) -> None:
    assert decided_words(decision) == said


def test_what_was_cut_is_said_as_it_was_when_it_was_finished() -> None:
    assert cut_words(DRESS) == "Cut 40 straight"
    assert cut_words(make(size="42")) == "42, straight"
    assert cut_words(make(size="")) == ""


def test_how_it_was_worn_names_each_region_and_apart_those_that_were_wrong() -> None:
    assert worn_words(DRESS, WORDS) == "bust as wanted, waist too tight"
    assert worn_badly_words(DRESS, WORDS) == "waist too tight"
    assert worn_badly_words(finished(bust=(4.0, "right")), WORDS) == "as wanted"
    assert worn_badly_words(make(), WORDS) == ""


def test_an_earlier_make_is_said_in_one_line_with_the_note_for_next_time() -> None:
    assert made_before_words(DRESS, WORDS) == (
        "Made before: Cut 40 straight, 2 May 2026. Worn: waist too tight. Next time: Longer."
    )
    assert made_before_words(replace(DRESS, worn={}, next_time=" "), WORDS, "Bea") == (
        "Made before for Bea: Cut 40 straight, 2 May 2026."
    )


def test_a_long_note_is_cut_between_words_and_a_short_one_stays_on_one_line() -> None:
    assert shortened("one two three four", 12) == "one two…"
    assert shortened("one\n two ") == "one two"


@pytest.mark.parametrize(
    ("region", "said"),
    [
        (KeptRegion(96.0, 5.0, 5.0, 5.1), "body 96 cm; 5 cm of ease; asked for 5.1 cm"),
        (KeptRegion(96.0, 5.0, 3.5), "body 96 cm; 5 cm of ease as printed, 3.5 cm as sewn"),
        (KeptRegion(96.0), "body 96 cm"),
    ],
)
def test_what_a_region_rested_on_is_said_as_far_as_it_was_known(region: KeptRegion, said: str) -> None:
    assert kept_words(region, WORDS) == said
