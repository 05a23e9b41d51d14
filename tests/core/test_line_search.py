from __future__ import annotations

import itertools
from typing import TYPE_CHECKING

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from sizekeeper.core.line_search import best_lines

if TYPE_CHECKING:
    from collections.abc import Sequence

INF = float("inf")


def found(costs: Sequence[Sequence[float]], listed: list[bool] | None = None) -> list[list[int]]:
    table = np.array(costs, dtype=float)
    return list(best_lines(table, listed=np.array(listed or [True] * table.shape[1])))


def total(costs: list[list[float]], lines: list[int]) -> float:
    return sum(min(row[line] for line in lines) for row in costs)


def test_one_line_is_where_all_together_lose_least() -> None:
    assert found([[0, 1, 4], [4, 1, 0]])[0] == [1]


def test_two_lines_give_each_her_own() -> None:
    assert found([[0, 1, 4], [4, 1, 0]])[1] == [0, 2]


def test_a_line_that_somebody_cannot_wear_serves_only_the_others() -> None:
    assert found([[0, 5], [INF, 5]])[0] == [1]


def test_a_number_of_lines_that_leaves_somebody_without_is_skipped() -> None:
    assert found([[0, INF], [INF, 0]]) == [[0, 1]]


def test_of_sets_as_good_as_each_other_the_printed_lines_are_taken() -> None:
    assert found([[1, 1, 1]], [True, False, False])[0] == [0]
    assert found([[1, 1, 1]], [True, True, False])[0] == [1]


def test_somebody_whose_costs_rise_and_fall_twice_is_served_by_the_best_of_all_lines() -> None:
    # The second person does best at the far end, worst in the middle, and nearly as well at the near end.
    costs = [[0, 9, 9, 9, 9], [1, 9, 0, 9, 9], [9, 9, 9, 9, 0]]
    assert found(costs)[1] == [0, 4]


TABLES = st.integers(1, 6).flatmap(
    lambda lines: st.lists(
        st.lists(st.one_of(st.integers(0, 30), st.just(INF)), min_size=lines, max_size=lines), min_size=1, max_size=5
    )
)


@given(TABLES)
def test_no_other_set_of_lines_is_better(costs: list[list[float]]) -> None:
    by_count = {len(lines): lines for lines in found(costs)}
    for count in range(1, len(costs[0]) + 1):
        least = min(total(costs, list(lines)) for lines in itertools.combinations(range(len(costs[0])), count))
        assert (total(costs, by_count[count]) if count in by_count else INF) == pytest.approx(least)
