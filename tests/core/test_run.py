from __future__ import annotations

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from sizekeeper.core.run import along, fill_gaps

NAN = float("nan")


def test_a_figure_missing_between_two_is_filled_on_the_straight_line_and_marked() -> None:
    filled, where = fill_gaps(np.array([[80.0, NAN, NAN, 92.0]]))
    assert filled.tolist() == [[80.0, 84.0, 88.0, 92.0]]
    assert where.tolist() == [[False, True, True, False]]


def test_a_figure_missing_at_an_end_stays_unknown() -> None:
    filled, where = fill_gaps(np.array([[NAN, 84.0, NAN, 92.0, NAN]]))
    assert np.isnan(filled[0, [0, 4]]).all()
    assert filled[0, 2] == 88.0
    assert where.tolist() == [[False, False, True, False, False]]


def test_a_single_figure_cannot_fill_anything() -> None:
    filled, where = fill_gaps(np.array([[NAN, 84.0, NAN]]))
    assert np.isnan(filled[0, [0, 2]]).all()
    assert not where.any()


def test_beyond_the_ends_the_last_step_goes_on() -> None:
    run = np.array([[80.0, 84.0, 90.0]])
    assert along(run, np.array([-1.0, -0.5, 2.5, 3.0])).tolist() == [[76.0, 78.0, 93.0, 96.0]]


def test_a_listed_size_is_known_even_where_its_neighbour_is_not() -> None:
    run = np.array([[80.0, 84.0, NAN]])
    at = along(run, np.array([1.0, 1.25, 2.0, 2.5]))
    assert at[0, 0] == 84.0
    assert np.isnan(at[0, 1:]).all()


def test_a_run_of_one_size_is_known_at_that_size_only() -> None:
    at = along(np.array([[80.0]]), np.array([-1.0, 0.0, 0.5]))
    assert np.isnan(at[0, [0, 2]]).all()
    assert at[0, 1] == 80.0


@given(st.lists(st.floats(40, 160), min_size=2, max_size=12), st.floats(0, 1))
def test_within_the_run_positions_lie_where_numpy_interp_puts_them(figures: list[float], part: float) -> None:
    at = part * (len(figures) - 1)
    found = along(np.array([figures]), np.array([at]))[0, 0]
    assert np.isclose(found, np.interp(at, np.arange(len(figures)), figures), atol=1e-9)
