from __future__ import annotations

import numpy as np

from sizekeeper.core.ranking import first_of_each, order, tie_groups

NAN = float("nan")


def ranked(misfits: list[float], complete: list[int], wearable: list[int], at: list[float]) -> list[float]:
    found = order(np.array(misfits), np.array(complete, bool), np.array(wearable, bool), np.array(at))
    return [at[int(i)] for i in found]


def test_complete_comes_before_wearable_before_the_smaller_misfit() -> None:
    assert ranked([0.1, 0.2, 9.0, 3.0], [0, 1, 1, 1], [1, 0, 1, 1], [0, 1, 2, 3]) == [3, 2, 1, 0]


def test_of_equal_misfits_listed_comes_before_between_and_then_the_larger() -> None:
    assert ranked([1.0, 1.0, 1.0, 1.0], [1] * 4, [1] * 4, [0, 0.25, 0.5, 1]) == [1, 0, 0.5, 0.25]


def test_misfits_nearer_than_a_millionth_are_equal() -> None:
    assert ranked([1.0000005, 1.0], [1, 1], [1, 1], [1, 0]) == [1, 0]
    assert ranked([1.000002, 1.0], [1, 1], [1, 1], [1, 0]) == [0, 1]


def test_what_has_no_misfit_comes_last() -> None:
    assert tie_groups(np.array([NAN, 2.0, 1.0, 1.0])).tolist() == [2, 1, 0, 0]
    assert ranked([NAN, 5.0], [1, 1], [1, 1], [0, 1]) == [1, 0]


def test_the_best_of_each_row_is_the_first_of_the_whole_order() -> None:
    random = np.random.default_rng(3)
    for _ in range(300):
        misfits = random.integers(0, 4, (3, 5)).astype(float)
        complete, wearable = random.random(5) < 0.7, random.random((3, 5)) < 0.7
        expected = [order(misfits[k], complete, wearable[k], np.arange(5.0))[0] for k in range(3)]
        assert first_of_each(misfits, complete, wearable).tolist() == expected
