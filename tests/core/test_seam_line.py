from __future__ import annotations

import pytest

from sizekeeper.core.beyond import beyond_range
from sizekeeper.core.seam_line import side_seam
from tests.build import body, chart
from tests.planned import planner

STEPS = chart("finished", "38 40 42 44", bust="92, 96, 100, 104", waist="72, 76, 82, 88", hip="98, 102, 106, 110")
MAKER = planner(body(bust=90, waist=72, hip=96), STEPS, chart("body", "38 40 42 44", bust="84, 88, 92, 96"))


def test_the_traced_line_lies_between_the_printed_ones_by_a_quarter_of_the_girth() -> None:
    bust, waist, hip = side_seam(MAKER.at(1.5), MAKER.fit, beside=0)
    assert (bust.level, bust.printed, bust.traced, bust.from_lower) == ("bust", {"40": 0, "42": 1}, 0.5, 0.5)
    assert (waist.lower, waist.upper, waist.from_lower) == ("40", "42", 0.75)
    assert hip.traced == 0.5


def test_lines_beside_those_that_are_touched_are_shown_too() -> None:
    bust = side_seam(MAKER.at(1.5), MAKER.fit)[0]
    assert (bust.printed, bust.traced) == ({"38": 0, "40": 1, "42": 2, "44": 3}, 1.5)


def test_a_blend_runs_from_one_printed_line_to_another() -> None:
    plan = MAKER.blended_at({"bust": 0.0, "waist": 0.5, "hip": 1.0})
    points = side_seam(plan, MAKER.fit, beside=0)
    assert [(p.lower, p.upper, p.traced) for p in points] == [("38", "38", 0), ("38", "40", 0.5), ("40", "40", 1)]


def test_a_level_without_a_figure_there_is_left_out() -> None:
    gaps = planner(body(bust=90, waist=72), chart("finished", "38 40", bust="92, 96", waist="-, 76"))
    assert [p.level for p in side_seam(gaps.at(0.0), gaps.fit)] == ["bust"]


def test_without_a_level_there_is_no_side_seam() -> None:
    arm = planner(body(upper_arm=28), chart("finished", "38", upper_arm="34"), lead="upper_arm")
    assert side_seam(arm.at(0.0), arm.fit) == ()


@pytest.mark.parametrize(("position", "label", "steps", "edge"), [(3.5, "44", 0.5, 0.5), (-1.0, "38", 1.0, -1.0)])
def test_past_the_range_the_line_runs_outside_the_last_one_by_the_last_step(
    position: float, label: str, steps: float, edge: float
) -> None:
    found = beyond_range(MAKER.comparison, position)
    assert found is not None
    assert (found.label, found.steps, found.edge_cm["bust"]) == (label, steps, edge)


def test_within_the_range_nothing_is_extrapolated() -> None:
    assert beyond_range(MAKER.comparison, 3.0) is None


def test_past_the_range_of_a_body_chart_the_body_figures_go_on() -> None:
    by_body = planner(body(bust=90), None, chart("body", "38 40", bust="84, 88"))
    found = beyond_range(by_body.comparison, 2.0)
    assert found is not None
    assert found.edge_cm == {"bust": 1.0}


def test_a_width_has_no_edge_to_move() -> None:
    back = planner(body(across_back=36), chart("finished", "38 40", across_back="38, 39"), lead="across_back")
    found = beyond_range(back.comparison, 2.0)
    assert found is not None
    assert found.edge_cm == {}


def test_an_end_that_is_not_given_tells_no_line_past_it() -> None:
    gaps = planner(body(bust=90, waist=72), chart("finished", "38 40", bust="92, 96", waist="76, -"))
    found = beyond_range(gaps.comparison, 2.0)
    assert found is not None
    assert found.edge_cm == {"bust": 1.0}
