from __future__ import annotations

import itertools

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from sizekeeper.core.blending import Path, best_path

AT = np.array([0.0, 0.5, 1.0, 2.0, 3.0, 4.0])


def test_levels_far_apart_are_pulled_together_by_the_cost_of_a_steep_line() -> None:
    # Best alone: 0 and 2 (loss 0 + 0, cost 1.5 x 4 = 6). One size apart costs 1.5 and a loss of 1: 2.5 in all.
    losses = np.array([[0.0, 9.0, 1.0, 9.0, 9.0, 9.0], [9.0, 9.0, 9.0, 0.0, 9.0, 9.0]])
    assert best_path(losses, AT) == Path((2, 3), 1.0)


def test_neighbouring_levels_are_never_more_than_three_sizes_apart() -> None:
    losses = np.array([[0.0, 99.0, 99.0, 99.0, 99.0, 99.0], [999.0, 999.0, 999.0, 999.0, 50.0, 0.0]])
    assert best_path(losses, AT) == Path((0, 4), 50.0)


def test_of_equal_paths_the_larger_sizes_are_taken() -> None:
    assert best_path(np.zeros((2, 6)), AT) == Path((5, 5), 0.0)


def test_there_is_no_path_where_a_level_allows_no_position() -> None:
    assert best_path(np.array([[np.inf] * 6, [0.0] * 6]), AT) is None


@given(st.lists(st.lists(st.integers(0, 40), min_size=6, max_size=6), min_size=2, max_size=4))
def test_the_path_costs_no_more_than_any_other(levels: list[list[int]]) -> None:
    losses = np.array(levels, dtype=float)
    found = best_path(losses, AT)
    assert found is not None

    def cost(steps: tuple[int, ...]) -> float:
        places = AT[list(steps)]
        if (np.abs(np.diff(places)) > 3).any():
            return float("inf")
        return float(sum(losses[k, s] for k, s in enumerate(steps)) + 1.5 * (np.diff(places) ** 2).sum())

    assert cost(found.steps) == pytest.approx(min(cost(p) for p in itertools.product(range(6), repeat=len(levels))))
