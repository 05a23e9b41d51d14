from __future__ import annotations

from dataclasses import replace

import pytest

from sizekeeper.core.household import Standing, Trouble
from sizekeeper.core.household_words import (
    alteration_in_two,
    alteration_short,
    alteration_words,
    blend_short,
    choice_words,
    margin_words,
    name_short,
    number,
    short,
    trouble_words,
    verdict_short,
    wearers_words,
)
from sizekeeper.core.sharing import Alteration, share
from tests.build import chart
from tests.fits import CM, IN
from tests.households import called, envelope, household, stand

TWO = chart("finished", "38 40 42", bust="100, 104, 108", waist="80, 84, 88")
ADA = called("Ada", bust="95", waist="85")  # 38 at the bust, 42 at the waist
BEA = called("Bea", bust="99")


def test_places_are_said_in_the_fewest_words() -> None:
    assert [short(place, ("38", "40", "42")) for place in (0.0, 0.25, 1.5)] == ["38", "38–40 ¼ way", "40–42 halfway"]


def test_a_blend_is_said_from_the_top_down() -> None:
    assert blend_short(stand(ADA, envelope(TWO)), CM) == "38 bust, 42 waist"
    assert blend_short(stand(BEA), CM) == "–"


def test_halfway_in_a_blend_is_said_by_its_two_sizes() -> None:
    row = stand(ADA, envelope(TWO))
    assert row.blend is not None
    halves = replace(row, blend=replace(row.blend, positions={"bust": 0.5, "waist": 0.5, "hip": 1.0}))
    assert blend_short(halves, CM) == "38–40 bust and waist, 40 hip"


def test_what_to_cut_is_said_in_the_fewest_words() -> None:
    assert [verdict_short(stand(ADA, envelope(TWO)), CM), verdict_short(stand(BEA), CM)] == ["38 bust, 42 waist", "40"]
    assert verdict_short(stand(called("Cleo")), CM) == "–"


def margin(shift: float | None) -> Standing:
    return replace(stand(BEA), margin=None if shift is None else ("bust", shift), troubles=())


def test_a_margin_says_its_way_and_its_region_and_is_rounded_down() -> None:
    assert margin_words(margin(1.29), CM) == "1.2 cm more at the bust"
    assert margin_words(margin(-1.29), IN) == "1/2 in less at the bust"
    assert margin_words(margin(-0.04), CM) == "the least bit less at the bust"
    assert margin_words(margin(None), CM) == "more than the tape errs"


def test_nothing_is_said_of_a_margin_where_nothing_fits_well() -> None:
    assert margin_words(stand(called("Big", bust="130")), CM) == "–"
    assert margin_words(stand(called("Unmeasured")), CM) == "–"


@pytest.mark.parametrize(
    ("trouble", "said"),
    [
        (Trouble("no_chart"), "no chart typed yet"),
        (Trouble("not_measured"), "not measured yet"),
        (Trouble("not_compared", said="There is nothing."), "There is nothing"),
        (Trouble("too_small", label="42"), "no size goes round the body; 42 comes closest"),
        (Trouble("will_not_close", ("waist",), 0.5), "will not close at the waist: let out 5 mm"),
        (Trouble("out_of_range", label="42"), "past the chart’s 42: make a toile first"),
        (Trouble("just_past", label="42"), "a little past the chart’s 42 would come closer: a toile first"),
        (Trouble("no_single_size"), "no single size fits"),
        (Trouble("no_figure", ("waist", "hip"), label="38"), "the chart gives 38 no figure at the waist and the hip"),
        (Trouble("unmeasured", ("upper_arm",)), "not measured at the upper arm"),
        (Trouble("lead_absent"), "the measure that usually leads is missing"),
        (Trouble("tied", ("bust",), -1.2, "38"), "38 if the bust is really 1.2 cm less"),
        (Trouble("ease_unknown"), "ease unknown: judged by the body chart alone"),
    ],
)
def test_each_trouble_has_its_words(trouble: Trouble, said: str) -> None:
    assert trouble_words(trouble, CM) == said


def test_an_alteration_says_which_way_how_much_and_where() -> None:
    assert alteration_words(Alteration("bust", 2.9), CM) == "take in 2.9 cm at the bust"
    assert alteration_words(Alteration("hip", -1.1), CM) == "let out 11 mm at the hip"
    assert alteration_short(Alteration("hip", -1.1), CM) == "hip: let out 11 mm"
    assert alteration_in_two(Alteration("waist", 2.0), CM) == ("waist", "take in 2 cm")


def test_a_line_names_who_takes_it_and_at_which_level() -> None:
    found = household(ADA, called("Cleo", bust="95"), against=envelope(TWO))
    first, last = share(found.standings, found.labels).own
    assert wearers_words(first, CM) == ["Ada (bust)", "Cleo"]
    assert wearers_words(last, CM) == ["Ada (waist)"]


def test_a_choice_names_its_lines() -> None:
    found = household(called("Ada", bust="95"), BEA)
    assert [choice_words(choice) for choice in share(found.standings, found.labels).choices] == [
        "38–40 ¾ way", "38 and 40",
    ]  # fmt: skip


def test_a_long_name_keeps_its_head_and_its_tail() -> None:
    assert name_short("Ada", 9) == "Ada"
    assert name_short("Wilhelmine 12", 9) == "Wilhel…12"


def test_small_numbers_are_words() -> None:
    assert [number(1), number(12), number(13)] == ["one", "twelve", "13"]
