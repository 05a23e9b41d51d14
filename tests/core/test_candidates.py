from __future__ import annotations

import numpy as np
import pytest

from sizekeeper.core.candidates import between, gaps, label_of, positions

NAN = float("nan")


def test_the_gap_is_the_smallest_step_over_four_edges() -> None:
    assert gaps(np.array([[90.0, 94.0, 99.0], [70.0, 75.0, 77.0]])) == (1.0, 0.5)


def test_a_figure_that_is_missing_does_not_narrow_the_gap() -> None:
    assert gaps(np.array([[90.0, 94.0, NAN], [70.0, NAN, NAN]])) == (1.0, None)


@pytest.mark.parametrize(
    ("gap", "found"),
    [
        (1.0, [0, 0.25, 0.5, 0.75, 1]),
        (0.9999999, [0, 0.25, 0.5, 0.75, 1]),
        (0.99, [0, 0.5, 1]),
        (0.6, [0, 0.5, 1]),
        (0.59, [0, 1]),
        (None, [0, 1]),
    ],
)
def test_lines_between_two_sizes_need_room_to_be_drawn(gap: float | None, found: list[float]) -> None:
    assert positions(2, (gap,)).at.tolist() == found


def test_a_position_between_is_named_by_the_smaller_size_and_the_part() -> None:
    labels = ("38", "40", "42")
    assert [label_of(t, labels) for t in (0.0, 1.25, 1.5, 0.75)] == ["38", "40 + 1/4", "40 + 1/2", "38 + 3/4"]


def test_a_line_between_runs_part_of_the_gap_outside_the_smaller() -> None:
    found = between(1.25, ("38", "40", "42"), (1.0, 1.2))
    assert found is not None
    assert (found.lower, found.upper, found.fraction) == ("40", "42", 0.25)
    assert found.mm_from_lower == pytest.approx(3.0)
    assert between(1.0, ("38", "40", "42"), (1.0, 1.2)) is None
