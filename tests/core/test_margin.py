"""Safe margins on problems small enough to be solved by hand. Figures are cm."""

from __future__ import annotations

import numpy as np
import pytest

from sizekeeper.core.margin import Margins, Overtaken, margins
from sizekeeper.core.problem import Problem


def one_region(body: float, *sizes: float, asked: float = 0.0, gate: bool = False, share: float = 0.0) -> Problem:
    row = np.array([sizes], dtype=float)
    return Problem(
        body=np.array([body]),
        asked=np.array([asked]),
        share=np.array([share]),
        low=row,
        high=row,
        gate=row if gate else None,
        stretch=0.0,
        weight=np.array([2.0]),
        adjustable=np.array([False]),
        gated=np.array([gate]),
    )


def only(problem: Problem, until: float = 0.0) -> Margins:
    return margins(problem, np.full(len(problem.body), until))[0]


def shifts(found: list[Overtaken]) -> list[float]:
    return [o.shift_cm for o in found]


def sizes(found: list[Overtaken]) -> list[int]:
    return [o.size for o in found]


def test_the_margin_ends_where_short_counts_twice_what_over_does() -> None:
    # Wanted 100 = the middle size of 96, 100, 104. The larger wins when 2 (w - 100) > 104 - w, so from w = 101 1/3; the
    # smaller when 2 (w - 96) < 100 - w, so below w = 97 1/3.
    found = only(one_region(100.0, 96.0, 100.0, 104.0))
    assert shifts(found.up) == pytest.approx([4 / 3])
    assert sizes(found.up) == [2]
    assert shifts(found.down) == pytest.approx([8 / 3])
    assert sizes(found.down) == [0]


def test_every_overtaking_up_to_the_limit_is_followed() -> None:
    # The same steps of 4 cm go on: 101 1/3, 105 1/3, 109 1/3.
    found = only(one_region(100.0, 100.0, 104.0, 108.0, 112.0), until=9.5)
    assert shifts(found.up) == pytest.approx([4 / 3, 16 / 3, 28 / 3])
    assert sizes(found.up) == [1, 2, 3]


def test_a_size_that_no_longer_closes_is_beaten_at_once() -> None:
    # Asked 3 less than the body: 97 is wanted of 100, but 97.5 does not go round 100, so 101 is best. It is worn until
    # the body is 101, then 105 wins; and 97.5 is worn when the body is 97.5.
    found = only(one_region(100.0, 97.5, 101.0, 105.0, asked=-3.0, gate=True))
    assert shifts(found.up) == pytest.approx([1.0], abs=1e-5)
    assert sizes(found.up) == [2]
    assert shifts(found.down) == pytest.approx([2.5], abs=1e-5)
    assert sizes(found.down) == [0]


def test_what_is_asked_as_a_share_of_the_body_moves_with_it() -> None:
    # A tenth smaller than the body is wanted: the wanted girth moves 0.9 cm a centimetre.
    found = only(one_region(100.0, 90.0, 94.0, share=-0.1))
    assert found.up[0].shift_cm == pytest.approx((4 / 3) / 0.9)


def test_fifteen_centimetres_without_a_change_are_no_margin() -> None:
    # 150 would win from 16 2/3 cm more on.
    assert only(one_region(100.0, 100.0, 150.0)) == Margins([], [])


def test_a_run_of_one_size_is_never_beaten() -> None:
    assert only(one_region(100.0, 96.0)) == Margins([], [])


def test_of_two_equal_sizes_the_larger_is_first_and_stays_so() -> None:
    assert only(one_region(100.0, 100.0, 100.0)) == Margins([], [])


def test_a_body_does_not_shift_below_nothing() -> None:
    found = only(one_region(6.0, 1.0, 6.0))
    assert found.down[0].shift_cm == pytest.approx(10 / 3)
    assert only(one_region(2.0, -20.0, 2.0)).down == []
