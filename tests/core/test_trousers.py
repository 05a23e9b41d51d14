from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sizekeeper.core.trousers import Seat, SeatChanges, seat_changes, thigh_choice
from tests.core.paper import cm

NO_EASE = {"depth_ease": Fraction(0), "length_ease": Fraction(0), "thigh_ease": Fraction(0)}
SEAT = Seat(Fraction(28), Fraction(26), Fraction(72), Fraction(64), Fraction(60), Fraction(54))
some = st.fractions(20, 80, max_denominator=8)


def test_each_change_leaves_less_for_the_next() -> None:
    # Depth lacks 2. The crotch seam lacks 8, of which deepening gives 2 in front and 2 at the back: 2 and 2 are left.
    # The thigh lacks 6, of which the crotch points give 4: 2 are left.
    found = seat_changes(SEAT, **NO_EASE)
    assert (found.depth, found.front, found.back, found.thigh) == cm(2, 2, 2, 2)


def test_where_her_front_rise_is_known_the_back_takes_the_rest() -> None:
    # Front 31 against 28 lacks 3, less 2 of depth: 1; of the 4 that are left the back takes 3.
    found = seat_changes(replace(SEAT, front_rise=Fraction(31), made_front_rise=Fraction(28)), **NO_EASE)
    assert (found.front, found.back, found.thigh) == cm(1, 3, 2)


def test_ease_is_asked_for_on_top() -> None:
    # From 1/2 in at the depth, 1 in along the crotch seam and 1 in round the thigh on a body that has its own figures.
    even = Seat(*[Fraction(30)] * 6)
    found = seat_changes(even)
    inch = Fraction(254, 100)
    # Depth 1/2 in; the seam lacks 1 in, deepening gives all of it; the thigh lacks 1 in.
    assert (found.depth, found.front, found.back, found.thigh) == (inch / 2, *cm(0, 0), inch)


def test_what_is_not_known_is_left_open() -> None:
    found = seat_changes(Seat(body_thigh=Fraction(60), made_thigh=Fraction(58)), **NO_EASE)
    assert (found.depth, found.front, found.back) == (None, None, None)
    assert found.thigh == 2
    assert seat_changes(replace(SEAT, made_thigh=None), **NO_EASE).thigh is None


@given(st.lists(some, min_size=8, max_size=8))
def test_after_all_changes_depth_crotch_seam_and_thigh_have_what_they_need(figures: list[Fraction]) -> None:
    seat = Seat(*figures)
    found = seat_changes(seat)
    assert found.depth is not None
    assert found.front is not None
    assert found.back is not None
    assert found.thigh is not None
    inch = Fraction(254, 100)
    assert seat.made_depth + found.depth == seat.body_depth + inch / 2  # type: ignore[operator]  # all are given
    assert seat.made_length + 2 * found.depth + found.front + found.back == seat.body_length + inch  # type: ignore[operator]
    assert seat.made_thigh + found.front + found.back + found.thigh == seat.body_thigh + inch  # type: ignore[operator]


def test_what_the_thigh_still_lacks_is_a_change_of_width_there() -> None:
    found = thigh_choice(SeatChanges(None, None, None, Fraction(127, 100)), "in")
    assert found is not None
    assert (found.level, found.amount.exact_cm, found.amount.value, found.reason) == (
        "thigh",
        Fraction(127, 100),
        Fraction(1, 2),
        "seat",
    )


@pytest.mark.parametrize("thigh", [None, Fraction(0), Fraction(-2)])
def test_a_thigh_that_is_wide_enough_or_not_known_is_not_changed(thigh: Fraction | None) -> None:
    assert thigh_choice(SeatChanges(None, None, None, thigh), "cm") is None
