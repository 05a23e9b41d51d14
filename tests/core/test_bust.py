from __future__ import annotations

import math
from typing import TYPE_CHECKING

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from sizekeeper.core.bust import nearest_listed, position_where
from tests.build import body, chart
from tests.planned import planner

if TYPE_CHECKING:
    from sizekeeper.core.plan import BustAdjustment

CHART = chart("body", "8 10 12", high_bust="80, 84, 88", bust="84, 88, 92", front_waist_length="42, 43, 44")
NO_HIGH = chart("body", "8 10 12", bust="84, 88, 92")
FINISHED = chart("finished", "8 10 12", bust="89, 93, 97")


def found(high: float, bust: float, chart: object = CHART, **more: object) -> BustAdjustment | None:
    return planner(body(high_bust=high, bust=bust), FINISHED, chart, **more).bust()  # type: ignore[arg-type]  # as given


def test_the_size_is_that_of_the_high_bust_and_the_amount_what_its_bust_lacks() -> None:
    # High bust 84 is size 10, drafted for bust 88: 95 lacks 7, 3 1/2 in each half.
    adjustment = found(84, 95)
    assert adjustment is not None
    assert (adjustment.label, adjustment.position, adjustment.size) == ("10", 1.0, 1)
    assert (adjustment.amount_cm, adjustment.half_cm, adjustment.suggested) == (7, 3.5, True)
    assert adjustment.from_high_bust_row


def test_halfway_between_two_sizes_the_smaller_is_taken() -> None:
    adjustment = found(86, 95)
    assert adjustment is not None
    assert (adjustment.position, adjustment.label, adjustment.amount_cm) == (1.5, "10", 7)


def test_just_past_halfway_the_larger_is_taken() -> None:
    adjustment = found(86.1, 95)
    assert adjustment is not None
    assert (adjustment.label, adjustment.amount_cm) == ("12", 3)


@pytest.mark.parametrize(("drafted", "label", "amount"), [(None, "12", 5), (4.0, "10", 9), (6.0, "12", 5)])
def test_without_a_high_bust_in_the_chart_the_drafted_difference_stands_in(
    drafted: float | None, label: str, amount: float
) -> None:
    # High busts reckoned: 79, 83, 87 with the usual 5; 80, 84, 88 with 4; 78, 82, 86 with 6. Hers is 85.5.
    adjustment = found(85.5, 97, NO_HIGH, drafted_cm=drafted)
    assert adjustment is not None
    assert (adjustment.label, adjustment.amount_cm, adjustment.from_high_bust_row) == (label, amount, False)


@pytest.mark.parametrize(("bust", "suggested"), [(89.9, False), (90, True)])
def test_it_is_suggested_from_two_centimetres_on(bust: float, suggested: bool) -> None:
    # Asked for at the bust of a woven: the middle of close, 5.1; finished 93 leaves 3.1 and 3.
    adjustment = found(84, bust)
    assert adjustment is not None
    assert adjustment.suggested is suggested


def test_it_is_not_suggested_where_the_garments_own_ease_does_already() -> None:
    wide = chart("finished", "8 10 12", bust="99, 103, 107")
    adjustment = planner(body(high_bust=84, bust=95), wide, CHART).bust()
    assert adjustment is not None
    assert (adjustment.reached, adjustment.suggested) == (True, False)  # 103 - 95 = 8 of 5.1 asked for


def test_by_the_body_chart_alone_ease_is_unknown_and_does_not_speak_against_it() -> None:
    adjustment = planner(body(high_bust=84, bust=95), None, CHART).bust()
    assert adjustment is not None
    assert (adjustment.reached, adjustment.suggested) == (False, True)


def test_the_front_lacks_the_length_her_own_front_is_longer() -> None:
    adjustment = planner(body(high_bust=84, bust=95, front_waist_length=45.5), FINISHED, CHART).bust()
    assert adjustment is not None
    assert adjustment.length_cm == 2.5


def test_a_smaller_bust_is_a_negative_amount_that_is_not_suggested() -> None:
    adjustment = found(88, 88)
    assert adjustment is not None
    assert (adjustment.amount_cm, adjustment.suggested) == (-4, False)


@pytest.mark.parametrize(("high", "label"), [(70, "8"), (99, "12")])
def test_past_the_listed_sizes_the_last_one_is_taken(high: float, label: str) -> None:
    adjustment = found(high, 95)
    assert adjustment is not None
    assert adjustment.label == label


def test_nothing_is_said_without_her_high_bust_or_the_charts_bust() -> None:
    assert planner(body(bust=95), FINISHED, CHART).bust() is None
    assert found(84, 95, None) is None
    assert found(84, 95, chart("body", "8 10 12", high_bust="80, 84, 88")) is None


def test_a_size_without_a_bust_figure_tells_no_amount() -> None:
    assert found(88, 95, chart("body", "8 10 12", high_bust="80, 84, 88", bust="84, 88, -")) is None


def test_figures_that_stand_still_tell_no_position() -> None:
    assert found(84, 95, chart("body", "8 10 12", high_bust="80, 80, 80", bust="84, 88, 92")) is None
    assert position_where(np.array([80.0, 80.0]), 84) is None


def test_a_place_among_the_listed_sizes_goes_before_one_past_them() -> None:
    # 80, 84, 82: 81 lies a quarter up from the first; past the end the falling step reaches it too.
    assert position_where(np.array([80.0, 84.0, 82.0]), 81) == 0.25


@given(st.lists(st.integers(1, 9), min_size=1, max_size=6), st.floats(-3, 9))
def test_the_place_of_a_figure_is_the_one_at_which_the_run_has_it(steps: list[int], at: float) -> None:
    figures = np.cumsum([80.0, *steps])
    lower = min(max(math.floor(at), 0), len(steps) - 1)
    wanted = figures[lower] + (at - lower) * steps[lower]
    assert position_where(figures, float(wanted)) == pytest.approx(at, abs=1e-9)


@pytest.mark.parametrize(
    ("position", "size"), [(-2, 0), (0.5, 0), (0.5 + 1e-9, 0), (0.51, 1), (1.5, 1), (2.5, 2), (9, 2)]
)
def test_the_nearest_listed_size_is_the_lower_one_halfway(position: float, size: int) -> None:
    assert nearest_listed(position, 3) == size
