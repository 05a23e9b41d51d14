"""The whole comparison on small invented cases, worked by hand. Inches where the case is told in inches."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from sizekeeper import assets
from sizekeeper.core.chart import Chart, ChartRow, Size
from sizekeeper.core.fit import fit
from sizekeeper.core.preference import EasePreference, RegionPreference
from sizekeeper.core.question import Question
from sizekeeper.errors import FitError
from tests.build import body, cell, chart, length

if TYPE_CHECKING:
    from sizekeeper.core.result import BodyFigure, Candidate, Fit

SIZES = "38 40 42"


def found(her: dict[str, BodyFigure], body_chart: Chart | None, finished: Chart | None, **question: object) -> Fit:
    return fit(her, body_chart, finished, Question(**question), assets.ease_defaults())  # type: ignore[arg-type]


def listed(result: Fit) -> list[Candidate]:
    return [c for c in result.candidates if c.between is None]


def test_ease_is_finished_minus_body_and_misfit_weighs_the_lead_twice() -> None:
    # bust 92, waist 74; size 40 is 100 and 80: ease 8, 6; asked 5.1, 2.6; off by 2.9 and 3.4
    result = found(body(bust=92, waist=74), None, chart("finished", SIZES, bust="96,100,104", waist="76,80,84"))
    forty = result.candidate("40")
    assert forty is not None
    assert forty.regions["bust"].ease_cm == 8.0
    assert forty.regions["bust"].band == "easy"
    assert forty.regions["bust"].diff_cm == pytest.approx(2.9)
    assert forty.regions["bust"].loss == pytest.approx(2 * 2.9**2)
    assert forty.misfit_cm == pytest.approx(((2 * 2.9**2 + 3.4**2) / 3) ** 0.5)


def test_a_centimetre_short_counts_like_two_over() -> None:
    result = found(body(bust=92), None, chart("finished", SIZES, bust="95.1,97.1,99.1"))
    misfits = {c.label: c.misfit_cm for c in listed(result)}
    assert misfits == {"38": pytest.approx(4.0), "40": pytest.approx(0.0), "42": pytest.approx(2.0)}


def test_lines_between_sizes_are_offered_where_the_printed_lines_are_far_enough_apart() -> None:
    # steps of 4 cm, 2.4 cm and 2.3 cm over four edges: 1.0, 0.6 and 0.575 cm
    result = found(body(bust=92), None, chart("finished", "38 40 42 44", bust="96,100,102.4,104.7"))
    between = [c.label for c in sorted(result.candidates, key=lambda c: c.position) if c.between]
    assert between == ["38 + 1/4", "38 + 1/2", "38 + 3/4", "40 + 1/2"]
    quarter = result.candidate("38 + 1/4")
    assert quarter is not None
    assert quarter.between is not None
    assert quarter.between.mm_from_lower == pytest.approx(2.5)


def test_a_girth_that_hangs_clear_at_every_size_is_left_free_and_says_so() -> None:
    result = found(body(bust=92, hip=100), None, chart("finished", SIZES, bust="96,100,104", hip="126,130,134"))
    hip = result.regions[1]
    assert (hip.role, hip.weight, hip.hangs_clear_cm) == ("free", 0, 26.0)


def test_a_girth_does_not_hang_clear_when_the_chart_has_larger_bodies_than_hers() -> None:
    finished = chart("finished", SIZES, bust="96,100,104", hip="126,130,134")
    result = found(body(bust=92, hip=100), chart("body", SIZES, bust="88,92,96", hip="97,101,110"), finished)
    assert result.regions[1].role == "counted"  # 134 is not above 1.25 x 110


def test_a_role_that_was_given_is_kept_even_where_the_girth_hangs_clear() -> None:
    finished = chart("finished", SIZES, bust="96,100,104", hip="126,130,134")
    result = found(body(bust=92, hip=100), None, finished, roles={"hip": "counted"})
    assert (result.regions[1].role, result.regions[1].hangs_clear_cm) == ("counted", None)


def test_a_gathered_region_may_be_too_large_but_not_too_small() -> None:
    finished = chart("finished", SIZES, bust="96,100,104", waist="70,90,110")
    result = found(body(bust=92, waist=80), None, finished, roles={"waist": "adjustable"})
    losses = {c.label: c.regions["waist"].loss for c in listed(result)}
    assert losses["40"] == 0.0
    assert losses["42"] == 0.0
    assert losses["38"] == pytest.approx((2 * 12.6) ** 2)  # 70 - 80 - 2.6


def test_without_the_lead_every_region_weighs_the_same_and_it_is_flagged() -> None:
    result = found(body(waist=74, hip=99), None, chart("finished", SIZES, waist="76,80,84", hip="101,105,109"))
    assert "lead_absent" in result.flags
    assert [region.weight for region in result.regions] == [1, 1]


def test_a_size_smaller_than_the_lead_cannot_be_worn_and_ranks_after_those_that_can() -> None:
    result = found(body(bust=98), None, chart("finished", SIZES, bust="97.9,98,120"))
    assert {c.label: c.wearable for c in listed(result)} == {
        "38": False,
        "40": True,
        "42": True,
    }
    assert result.candidates[-1].label == "38"


def test_a_knit_may_be_smaller_than_the_body_by_its_stretch() -> None:
    result = found(body(bust=100), None, chart("finished", SIZES, bust="76,80,84"), stretch=0.25)
    assert {c.label: c.wearable for c in listed(result)} == {
        "38": False,
        "40": True,
        "42": True,
    }


def test_a_region_that_will_not_close_keeps_its_place_and_says_by_how_much() -> None:
    result = found(body(bust=92, waist=80.8), None, chart("finished", SIZES, bust="93,97,101", waist="76,80,84"))
    forty = result.candidate("40")
    assert forty is not None
    assert forty.wearable
    assert forty.regions["waist"].short_cm == pytest.approx(0.8)


def test_the_body_chart_alone_says_the_nearest_size_and_the_larger_on_a_tie() -> None:
    result = found(body(bust=90, waist=70.9), chart("body", SIZES, bust="88,92,96", waist="69,73,77"), None)
    assert result.chart_says == {"bust": "40", "waist": "38"}


def test_what_the_chart_says_does_not_need_a_finished_figure() -> None:
    finished = chart("finished", SIZES, bust="96,100,104")
    result = found(body(bust=92, hip=99), chart("body", SIZES, bust="88,92,96", hip="94,98,102"), finished)
    assert result.chart_says == {"bust": "40", "hip": "40"}
    assert [(left.measure, left.reason) for left in result.left_out] == [("hip", "no_finished")]


def test_body_mode_counts_nothing_inside_a_range_and_the_distance_to_the_nearer_end_outside() -> None:
    result = found(body(bust=91), chart("body", SIZES, bust="82..86,87..90,92..96"), None)
    diffs = {c.label: c.regions["bust"].diff_cm for c in listed(result)}
    assert diffs == {"38": -5.0, "40": -1.0, "42": 1.0}
    assert result.mode == "body"
    assert "ease_unknown" in result.flags


def test_designers_ease_compares_bodies_and_shows_ease_from_the_finished_figures() -> None:
    body_chart, finished = chart("body", SIZES, bust="88,92,96"), chart("finished", SIZES, bust="98,102,106")
    result = found(body(bust=93), body_chart, finished, mode="designer")
    forty = result.candidate("40")
    assert forty is not None
    at = forty.regions["bust"]
    assert (at.diff_cm, at.ease_cm, at.asked_cm, at.band) == (-1.0, 9.0, 10.0, "easy")
    assert result.regions[0].asked_cm is None


def test_sizes_of_the_two_charts_match_by_label_or_by_another_name() -> None:
    finished = chart("finished", "S M", bust="98,102")
    other = Chart("b", "p", "body", (Size("40", ("M",)), Size("s")), (ChartRow("bust", (cell("92"), cell("88"))),))
    result = found(body(bust=92), other, finished, mode="designer")
    assert {c.label: c.regions["bust"].chart_cm for c in listed(result)} == {
        "S": 88.0,
        "M": 92.0,
    }
    assert result.chart_says == {"bust": "M"}


def test_a_candidate_that_lacks_a_figure_comes_after_the_complete_ones() -> None:
    finished = chart("finished", SIZES, bust="97.1,101,104", waist="–,79,84")
    result = found(body(bust=92, waist=74), None, finished)
    lacking = [c.missing for c in result.candidates]
    assert lacking == sorted(lacking)
    assert [c.label for c in listed(result)][-1] == "38"
    assert lacking[-1] == ("waist",)


def test_a_figure_filled_in_between_two_is_marked() -> None:
    result = found(body(bust=92), None, chart("finished", SIZES, bust="96,–,104"))
    forty = result.candidate("40")
    assert forty is not None
    assert forty.regions["bust"].finished_cm == 100.0
    assert forty.flags == ("interpolated:bust",)


def test_no_single_size_fits_when_every_one_is_two_bands_off_somewhere() -> None:
    # close asked; bust 38 wants small, hip wants large: 38 is tight at the hip (one band off), 42 loose at the bust
    finished = chart("finished", "38 42", bust="97,113", waist="66,110")
    result = found(body(bust=92, waist=74), None, finished)
    assert "no_single_size" not in found(body(bust=92), None, finished).flags
    assert "no_single_size" not in result.flags  # 38 is close at the bust and tight, the next band, at the waist
    wide = found(body(bust=92, waist=74), None, chart("finished", "38 42", bust="97,106", waist="90,110"))
    assert "no_single_size" in wide.flags  # the waist is loose, two bands off, in both


def test_the_best_position_past_the_listed_sizes_is_flagged() -> None:
    finished = chart("finished", SIZES, bust="96,100,104")
    assert "beyond_largest" in found(body(bust=101), None, finished).flags
    assert "beyond_smallest" in found(body(bust=88), None, finished).flags


def test_her_preferences_decide_lead_role_and_own_figure() -> None:
    regions = {
        "waist": RegionPreference(own=length("0 cm")),
        "hip": RegionPreference(role="free"),
        "bust": RegionPreference(band="easy"),
    }
    finished = chart("finished", SIZES, bust="96,100,104", waist="70,74,78", hip="101,105,109")
    preference = EasePreference("dress", lead="waist", regions=regions)
    result = found(body(bust=92, waist=74, hip=99), None, finished, preference=preference)
    assert [(r.measure, r.role, r.weight) for r in result.regions] == [
        ("bust", "counted", 1),
        ("waist", "lead", 2),
        ("hip", "free", 0),
    ]
    assert [r.asked_cm for r in result.regions] == [pytest.approx(10.35), 0.0, pytest.approx(4.5)]


@pytest.mark.parametrize(
    ("her", "body_chart", "finished", "question", "says"),
    [
        ({}, None, "96,100,104", {}, "no measure that both the person and the chart have"),
        ({"bust": 92.0}, None, None, {}, "no chart yet"),
        ({"bust": 92.0}, "88,92,96", None, {"mode": "my"}, "no finished measurements"),
        ({"bust": 92.0}, None, "96,100,104", {"mode": "designer"}, "no body chart"),
        ({"bust": 92.0}, None, "96,100,104", {"roles": {"bust": "free"}}, "nothing decides the size"),
        ({"bust": 92.0}, None, "96,100,104", {"lead": "bust", "roles": {"bust": "free"}}, "cannot also be free"),
    ],
)
def test_what_cannot_be_compared_is_said_in_one_sentence(
    her: dict[str, float], body_chart: str | None, finished: str | None, question: dict[str, object], says: str
) -> None:
    sizes = chart("body", SIZES, bust=body_chart) if body_chart else None
    garment = chart("finished", SIZES, bust=finished) if finished else None
    with pytest.raises(FitError, match=says):
        found(body(**her), sizes, garment, **question)


def test_a_row_that_may_be_a_half_width_is_left_out_until_told() -> None:
    finished = chart("finished", SIZES, bust="96,100,104")
    flat = ChartRow("hip", tuple(cell(x) for x in ("50", "52", "54")), doubt="half_width_suspected")
    result = found(body(bust=92, hip=99), None, Chart("f", "p", "finished", finished.sizes, (*finished.rows, flat)))
    assert [(left.measure, left.reason) for left in result.left_out] == [("hip", "half_width_suspected")]


def test_half_widths_of_girths_are_doubled() -> None:
    row = ChartRow("bust", tuple(cell(x) for x in ("48", "50", "52")), written_as="half")
    result = found(body(bust=92), None, Chart("f", "p", "finished", tuple(map(Size, SIZES.split())), (row,)))
    assert [result.listed[size]["bust"].finished_cm for size in SIZES.split()] == [96.0, 100.0, 104.0]


def test_an_edited_chart_is_never_taken_for_the_one_before() -> None:
    sizes, her = SIZES, body(bust=92)
    before = found(her, None, chart("finished", sizes, bust="96,100,104")).candidate("38")
    after = found(her, None, chart("finished", sizes, bust="95,100,104")).candidate("38")
    assert before is not None
    assert after is not None
    assert (before.regions["bust"].ease_cm, after.regions["bust"].ease_cm) == (4.0, 3.0)


def test_many_people_compared_with_one_chart_do_not_change_its_figures() -> None:
    shared = chart("finished", SIZES, bust="96,100,104", waist="76,80,84")
    alone = found(body(bust=92, waist=74), None, shared)
    for bust in range(80, 120):
        found(body(bust=bust, waist=bust - 18), None, shared)
    assert found(body(bust=92, waist=74), None, shared) == alone
