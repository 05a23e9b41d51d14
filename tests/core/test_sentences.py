"""The verdict and its doubts in words."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Any

import pytest

from sizekeeper import assets
from sizekeeper.core import sentences
from sizekeeper.core.fit import fit
from sizekeeper.core.question import Question
from sizekeeper.core.result import LeftOut, Verdict
from tests.build import body, chart
from tests.fits import CM, IN, blended, dress, with_region, without_margins

if TYPE_CHECKING:
    from sizekeeper.core.preference import Garment
    from sizekeeper.core.result import Mode

SURE = without_margins(dress())


def test_a_straight_size_is_said_in_three_words() -> None:
    assert sentences.headline(dress(), IN) == "Cut 40 straight."


def test_a_line_between_two_sizes_is_said_without_a_number_for_it() -> None:
    fit_ = replace(SURE, verdict=Verdict("between", "38 + 1/2", 0.5))
    assert sentences.headline(fit_, IN) == "Trace halfway between 38 and 40."


def test_a_blend_names_each_size_once_from_the_top_down() -> None:
    fit_ = blended(SURE, {"bust": 0, "waist": 1, "hip": 1})
    assert sentences.headline(fit_, IN) == "Grade between sizes: 38 at the bust, 40 at the waist and the hip."


def test_where_no_size_fits_the_closest_one_is_named_as_such() -> None:
    fit_ = replace(SURE, flags=("no_single_size",))
    assert sentences.headline(fit_, IN) == "No single size fits; 40 comes closest."


def test_a_line_between_sizes_can_be_the_way_out_where_no_size_fits() -> None:
    fit_ = replace(SURE, flags=("no_single_size",), verdict=Verdict("between", "40 + 1/2", 1.5))
    assert sentences.headline(fit_, IN) == "No single size fits. Trace halfway between 40 and 42."


def test_a_tie_is_said_as_the_change_of_the_body_that_would_decide_it() -> None:
    assert sentences.doubts(replace(SURE, ties=(("bust", 2.54, "42"),)), IN) == (
        "42 only if the bust is really 1 in more.",
    )


def test_two_ways_to_the_same_size_are_one_sentence_the_smaller_change_first() -> None:
    tied = replace(SURE, ties=(("waist", -2.54, "38"), ("bust", -1.27, "38")))
    assert sentences.doubts(tied, IN) == ("38 only if the bust is really 1/2 in less or the waist 1 in less.",)


def test_a_straight_size_without_ties_has_no_doubts() -> None:
    assert sentences.doubts(SURE, IN) == ()


def test_beside_a_blend_stands_the_best_single_size() -> None:
    assert sentences.doubts(blended(SURE, {"bust": 0, "waist": 1}), IN) == ("The best single size is 40.",)


def test_the_smallest_margin_is_the_one_that_is_said() -> None:
    fit_ = with_region(with_region(SURE, "waist", safe_up_cm=1.29), "bust", safe_down_cm=3.0)
    assert sentences.room_for_error(fit_, CM) == "Safe unless the waist is 1.2 cm more than measured."


def test_a_margin_downwards_is_said_as_less() -> None:
    assert sentences.room_for_error(with_region(SURE, "bust", safe_down_cm=2.54), IN) == (
        "Safe unless the bust is 1 in less than measured."
    )


def test_without_margins_no_likely_error_changes_the_size() -> None:
    assert sentences.room_for_error(SURE, CM).startswith("Safe: no single measurement")


def test_a_tie_leaves_no_room_to_speak_of() -> None:
    assert sentences.room_for_error(replace(SURE, ties=(("bust", 1.0, "42"),)), CM) == ""


def test_nothing_is_called_safe_where_no_size_fits() -> None:
    assert sentences.room_for_error(replace(SURE, flags=("no_single_size",)), CM) == ""


def test_what_lies_within_the_error_of_the_tape_is_to_be_measured_again() -> None:
    fit_ = with_region(SURE, "waist", safe_up_cm=1.0, tolerance_cm=1.5)
    assert sentences.measure_again(fit_, CM) == (
        "Measure again before cutting: the waist (1 cm more changes the size). The tape may be off by 1.5 cm."
    )


def test_several_to_be_measured_again_share_the_sentence_about_the_tape() -> None:
    fit_ = with_region(SURE, "waist", safe_up_cm=0.2, tolerance_cm=1.5)
    fit_ = with_region(fit_, "bust", safe_down_cm=0.4, tolerance_cm=1.0)
    assert sentences.measure_again(fit_, CM) == (
        "Measure again before cutting: the waist (0.2 cm more changes the size) and the bust (0.4 cm less). "
        "The tape may be off by 1 cm to 1.5 cm."
    )


def test_what_lies_beyond_the_error_of_the_tape_need_not_be_measured_again() -> None:
    assert sentences.measure_again(with_region(SURE, "waist", safe_up_cm=1.6, tolerance_cm=1.5), CM) == ""


def test_the_body_chart_has_its_say_by_size() -> None:
    says = {"bust": "42", "waist": "40", "hip": "42"}
    assert sentences.chart_says(replace(SURE, chart_says=says), CM) == (
        "The body chart alone says 42 at the bust and the hip, 40 at the waist."
    )


def test_a_body_chart_of_one_mind_is_short() -> None:
    assert sentences.chart_says(replace(SURE, chart_says={"bust": "42", "hip": "42"}), CM) == (
        "The body chart alone says 42 all over."
    )


def test_without_a_body_chart_nothing_is_said_for_it() -> None:
    assert sentences.chart_says(replace(SURE, chart_says={}), CM) == ""


def test_a_size_that_will_not_close_says_how_much_to_let_out() -> None:
    tight = chart("finished", "38 40", bust="96.5, 98.5", waist="70, 74.2")
    found = fit(body(bust=96, waist=75), None, tight, Question(), assets.ease_defaults())
    assert sentences.warnings(found, CM)[0] == "40 will not close at the waist: let out 8 mm."


@pytest.mark.parametrize("best", [3.0, -1.0])
def test_a_figure_a_whole_size_past_the_chart_is_in_the_verdict_itself(best: float) -> None:
    found = replace(SURE, best_position=best, verdict=Verdict("straight", "42", 2))
    assert sentences.headline(found, CM) == "42 comes closest; the figure lies past the chart."
    assert sentences.room_for_error(found, CM) == ""


@pytest.mark.parametrize("best", [2.9, -0.9])
def test_a_size_that_another_would_only_better_is_cut(best: float) -> None:
    found = replace(SURE, best_position=best, verdict=Verdict("straight", "42", 2))
    assert sentences.headline(found, CM) == "Cut 42 straight."
    assert sentences.room_for_error(found, CM) == sentences.room_for_error(SURE, CM) != ""


def test_a_size_that_cannot_be_worn_is_not_to_be_cut() -> None:
    found = fit(body(bust=96), None, chart("finished", "38 40", bust="90, 92"), Question(), assets.ease_defaults())
    assert sentences.headline(found, CM) == "No size goes round the body; 40 comes closest."
    assert sentences.room_for_error(found, CM) == ""


@pytest.mark.parametrize(("best", "end"), [(3.0, "last size, 42"), (-1.0, "first size, 38")])
def test_a_figure_past_the_chart_asks_for_a_toile(best: float, end: str) -> None:
    assert sentences.warnings(replace(SURE, best_position=best), CM) == (
        f"The best place lies past the chart’s {end}: what is said there is extrapolated; make a toile first.",
    )


@pytest.mark.parametrize(
    ("best", "label", "way", "end"), [(2.3, "42", "above", "ends"), (-0.3, "38", "below", "begins")]
)
def test_a_place_a_little_past_the_chart_asks_for_the_next_size_or_a_toile(
    best: float, label: str, way: str, end: str
) -> None:
    (said,) = sentences.warnings(replace(SURE, best_position=best), CM)
    closer, remedy = said.split(": ")
    assert closer == f"A little {way} {label} would come closer, but the chart {end} there"
    assert remedy == f"add the size {way} if the pattern has one, else make a toile first."


@pytest.mark.parametrize("best", [None, 0.0, 1.2, 2.1, -0.1])
def test_a_figure_within_the_chart_or_a_hair_past_it_needs_no_warning(best: float | None) -> None:
    assert sentences.warnings(replace(SURE, best_position=best), CM) == ()


def test_a_missing_figure_of_the_chosen_size_is_named() -> None:
    found = dress(chart("finished", "40", "in", bust="40 1/8", waist="-"), None)
    candidate = replace(found.candidates[0], missing=("waist",))
    assert "The chart gives 40 no figure at the waist, so that is not judged." in sentences.warnings(
        replace(found, candidates=(candidate,)), CM
    )


def test_by_the_body_chart_alone_the_ease_is_unknown() -> None:
    assert sentences.warnings(dress(mode="body"), CM)[0].endswith("so nothing is known of the ease.")


def test_a_steep_blend_asks_for_an_alteration_instead() -> None:
    assert (
        "alter the pattern there"
        in sentences.warnings(blended(SURE, {"bust": 0, "waist": 2}, flags=("alter_instead",)), CM)[0]
    )


def test_a_blend_is_judged_at_each_region_by_the_size_cut_there() -> None:
    cut = sentences.cut_at(blended(SURE, {"bust": 0, "waist": 2}))
    # The hip is no level of this blend: its line goes on from the waist above it.
    assert (cut["bust"][0], cut["waist"][0], cut["hip"][0]) == (0, 2, 2)


def test_measures_left_out_stand_with_their_reason() -> None:
    left = (LeftOut("thigh", "no_finished"), LeftOut("calf", "no_measurement"), LeftOut("wrist", "no_finished"))
    assert sentences.left_out(replace(SURE, left_out=left), CM) == (
        "Not judged: the thigh and the wrist (no finished figure on the pattern); the calf (not measured yet)."
    )


def test_nothing_left_out_is_nothing_said() -> None:
    assert sentences.left_out(replace(SURE, left_out=()), CM) == ""


def test_a_skirt_that_hangs_clear_says_so_with_its_ease() -> None:
    hip = next(r for r in dress().regions if r.measure == "hip")
    assert sentences.region_note(hip, IN) == "hangs clear: 25 3/8 in of ease"


@pytest.mark.parametrize(("measure", "note"), [("bust", "choose size by · asks 2 in"), ("waist", "asks 1 in")])
def test_a_region_says_how_it_counts_and_what_it_asks(measure: str, note: str) -> None:
    assert sentences.region_note(next(r for r in dress().regions if r.measure == measure), IN) == note


def test_where_the_line_runs_is_said_from_the_smaller_size() -> None:
    assert sentences.line_words(dress(), 0.5, IN) == "The line runs 3/16 in outside 38, along each edge."


def test_at_a_listed_size_there_is_no_line_to_speak_of() -> None:
    assert sentences.line_words(dress(), 1, IN) == ""


def test_past_the_listed_sizes_the_ruler_warns() -> None:
    assert sentences.line_words(dress(), 2.4, IN).endswith("make a toile first.")


def test_lines_too_near_each_other_are_not_to_be_drawn_between() -> None:
    near = chart("finished", "38 40", bust="98, 100")
    found = fit(body(bust=92), None, near, Question(), assets.ease_defaults())
    assert sentences.line_words(found, 0.5, CM).startswith("The printed lines lie only 5 mm apart")


def test_children_and_knits_smaller_than_the_body_have_their_cautions() -> None:
    knit = fit(
        body(bust=92),
        None,
        chart("finished", "S M", bust="86, 90"),
        Question("top", stretch=0.4),
        assets.ease_defaults(),
    )
    assert ["EN 14682" in said for said in sentences.cautions(dress(), child=True)] == [True]
    assert ["compression" in said for said in sentences.cautions(knit, child=False)] == [True]
    assert sentences.cautions(dress(), child=False) == ()


@pytest.mark.parametrize(
    ("garment", "body_rows", "mode", "said"),
    [
        ("trousers", {"bust": "88, 92"}, "my", ""),
        ("trousers", {}, "my", ""),
        ("top", {"bust": "88, 92"}, "my", "the bust (no finished figure on the pattern)"),
        ("trousers", {"bust": "88, 92"}, "body", "the bust (not measured yet)"),
        ("trousers", {"thigh": "55, 57"}, "body", "the thigh (not measured yet)"),
    ],
)
def test_of_what_is_not_judged_only_what_such_a_garment_is_fitted_at_is_said(
    garment: Garment, body_rows: dict[str, Any], mode: Mode, said: str
) -> None:
    her = body(waist=70, hip=95, **({"bust": 90} if mode == "my" else {}))
    charts = (
        chart("body", "38 40", waist="70, 74", hip="94, 98", **body_rows),
        chart("finished", "38 40", waist="72, 76", hip="98, 102"),
    )
    result = fit(her, *charts, Question(garment, mode), assets.ease_defaults())
    assert sentences.left_out(result, CM) == (f"Not judged: {said}." if said else "")
