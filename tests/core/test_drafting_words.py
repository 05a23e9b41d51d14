from __future__ import annotations

from dataclasses import replace

import pytest

from sizekeeper.core.draft import Draft, Topic, draft_of
from sizekeeper.core.drafting import Drafting, Side, drafting
from sizekeeper.core.drafting_words import across_words, main_differences, notes, reading, summary
from sizekeeper.core.pattern import Pattern
from tests.build import chart
from tests.fits import CM, IN

SIZES = "38 40 42 44"
BODY = {"bust": "88, 92, 96, 100", "waist": "70, 74, 78, 82"}


def draft(title: str, sizes: str = SIZES, body: dict[str, str] | None = None, **finished: str) -> Draft:
    """A draft of a top."""
    charts = (
        chart("body", sizes, "cm", **(body or BODY)),
        chart("finished", sizes, "cm", **finished) if finished else None,
    )
    return draft_of(Pattern(title, title, garment="top"), *charts)


def compared(one: Draft, other: Draft, axis: str | None = None) -> Drafting:
    """Two patterns against each other."""
    return drafting(Side(one.title, (one,)), Side(other.title, (other,)), axis)


def said(one: Draft, other: Draft, topic: Topic = "ease") -> str:
    """The main differences in centimetres."""
    return main_differences(compared(one, other), topic, CM)


PLAIN = draft("Plain", bust="94, 98, 102, 106")


@pytest.mark.parametrize(
    ("bust", "sentence"),
    [
        ("96, 100, 104, 108", "Ada allows 2 cm more ease at the bust than Plain, in every size."),
        ("94, 100, 104, 108", "Ada allows 2 cm more ease at the bust than Plain, from 40 up."),
        ("92, 96, 102, 106", "Ada allows 2 cm less ease at the bust than Plain, up to 40."),
        ("94, 99, 105, 106", "Ada allows 1 to 3 cm more ease at the bust than Plain, from 40 to 42."),
        ("94, 101, 102, 106", "Ada allows 3 cm more ease at the bust than Plain, at 40."),
        ("97, 98, 105, 106", "Ada allows up to 3 cm more ease at the bust than Plain, up to 42."),
        ("93, 98, 102, 108", "Ada allows less ease at the bust than Plain at 38 (by 1 cm) and more at 44 (by 2 cm)."),
        ("94, 98, 102, 106.4", "Much the same at the bust."),
    ],
)
def test_the_difference_is_said_with_the_sizes_it_holds_for(bust: str, sentence: str) -> None:
    assert said(draft("Ada", bust=bust), PLAIN) == sentence


def test_the_largest_difference_comes_first_and_what_is_the_same_last() -> None:
    one = draft("Ada", bust="95, 99, 103, 107", waist="79, 83, 87, 91")
    other = draft("Bea", bust="94, 98, 102, 106", waist="74, 78, 82, 86")
    assert said(one, other) == (
        "Ada allows 5 cm more ease at the waist than Bea, in every size. "
        "It allows 1 cm more ease at the bust, in every size."
    )


def test_places_with_the_same_difference_share_a_sentence() -> None:
    one = draft("Ada", bust="96, 100, 104, 108", waist="76, 80, 84, 88")
    other = draft("Bea", bust="94, 98, 102, 106", waist="74, 78, 82, 86")
    assert said(one, other) == "Ada allows 2 cm more ease at the bust and at the waist than Bea, in every size."


def test_sizes_of_other_names_are_said_by_the_body_they_are_for() -> None:
    other = draft("Bea", "8 10 12 14", bust="94, 96, 100, 104")
    assert said(PLAIN, other) == "Plain allows 2 cm more ease at the bust than Bea, from bust 92 cm up."


def test_a_difference_in_only_some_sizes_of_the_left_says_so() -> None:
    other = draft("Bea", "38 40", {"bust": "88, 92"}, bust="92, 96")
    assert said(PLAIN, other) == "Plain allows 2 cm more ease at the bust than Bea, in every size that both have."


def test_steps_and_proportions_have_words_of_their_own() -> None:
    other = draft("Bea", body={"bust": "88, 92, 96, 100", "waist": "72, 77, 82, 87"}, bust="94, 97, 100, 103")
    assert said(PLAIN, other, "garment_step") == (
        "Plain adds 1 cm more to the garment from size to size at the bust than Bea, in every size."
    )
    assert said(PLAIN, other, "body_step") == (
        "Plain adds 1 cm less to the body from size to size at the waist than Bea, in every size. "
        "Much the same at the bust."
    )
    assert said(PLAIN, other, "proportion") == (
        "Plain counts on 2 to 5 cm more from waist to bust than Bea, in every size."
    )


def test_inches_are_said_in_fractions() -> None:
    one = draft("Ada", bust="96.54, 100.54, 104.54, 108.54")
    assert main_differences(compared(one, PLAIN), "ease", IN).startswith("Ada allows 1 in more ease at the bust")


def test_a_side_without_figures_is_named() -> None:
    assert said(PLAIN, draft("Bare")) == "Bare gives no figures for this, so there is nothing to compare."


def test_sizes_that_do_not_meet_are_told() -> None:
    child = draft("Child", "3 4", {"bust": "55, 57"}, bust="65, 67")
    assert said(PLAIN, child) == "The sizes of the two do not meet anywhere, so no difference can be given."


def test_figures_for_different_places_are_told() -> None:
    assert said(PLAIN, draft("Bea", waist="76, 80, 84, 88")) == "The two give no figures for the same place."


@pytest.mark.parametrize("topic", ["ease", "garment_step"])
def test_nothing_on_either_side_says_what_is_missing(topic: Topic) -> None:
    assert said(draft("A"), draft("B"), topic).startswith("Neither ")


def test_patterns_that_cannot_be_lined_up_are_named() -> None:
    house = Side("House", (PLAIN, draft("Odd one", body={"waist": "70, 74, 78, 82"})))
    assert notes(drafting(house, Side("Bea", (PLAIN,)), "bust"), CM) == (
        "Left out, as the body chart gives no bust: Odd one.",
    )


def test_a_suspected_half_width_is_named() -> None:
    doubtful = replace(PLAIN, doubtful=("hip",))
    assert notes(compared(doubtful, PLAIN), CM) == (
        "Plain: the hip may be printed as a half width and is left out until that is settled.",
    )


def test_a_place_is_read_with_both_figures() -> None:
    found = compared(PLAIN, draft("Bea", bust="95, 100, 104, 108"))
    assert reading(found, found.of("ease")[0], 92, CM) == "Bust at 40 (bust 92 cm): Plain 6 cm, Bea 8 cm"


def test_a_place_only_one_side_has_is_read_with_its_figure_alone() -> None:
    found = compared(PLAIN, draft("Bea", "8 10", {"bust": "90, 94"}, bust="95, 99"), "bust")
    assert reading(found, found.of("ease")[0], 90, CM) == "Bust at 8 (bust 90 cm): Bea 5 cm"


def test_a_house_is_read_as_a_mean_with_its_span() -> None:
    house = Side("House", (PLAIN, draft("Other", bust="98, 102, 106, 110")))
    found = drafting(house, Side("Bea", (PLAIN,)), "")
    assert (
        reading(found, found.of("ease")[0], 0, CM) == "Bust at 38: House 8 cm (mean of 2 patterns, 6 to 10), Bea 6 cm"
    )


def test_a_plot_is_summed_up_for_who_does_not_see_it() -> None:
    found = compared(draft("Ada", bust="96, 98, 104, 109"), draft("Bare"))
    panel = next(p for p in found.of("ease") if p.subject == "bust")
    assert summary(found, panel, CM) == "Bust. Ada: 8 cm at 38 to 9 cm at 44, least 6 cm at 40. Bare: no figures."


def test_a_level_plot_and_a_single_size_are_summed_up_shortly() -> None:
    found = compared(PLAIN, draft("One size", "38", {"bust": "88"}, bust="95"))
    assert summary(found, found.of("ease")[0], CM) == "Bust. Plain: 6 cm from 38 to 44. One size: 7 cm at 38."


def test_sizes_lined_up_by_name_are_read_by_name() -> None:
    found = compared(PLAIN, PLAIN, "")
    assert across_words(found, 2.0, CM) == "42"
    assert reading(found, found.of("ease")[0], 2.0, CM) == "Bust at 42: Plain 6 cm, Plain 6 cm"
