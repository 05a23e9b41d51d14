from __future__ import annotations

from fractions import Fraction

import pytest

from sizekeeper.core.make import Place, place_at, position_of

LABELS = ("38", "40", "42")


@pytest.mark.parametrize(
    ("position", "place"),
    [
        (1.0, Place("40")),
        (0.5, Place("38", Fraction(1, 2))),
        (1.333333, Place("40", Fraction(33, 100))),
        (2.5, Place("42", Fraction(1, 2))),
        (-0.75, Place("38", Fraction(-3, 4))),
    ],
)
def test_a_place_is_kept_as_a_size_and_the_part_of_the_way_to_the_next(position: float, place: Place) -> None:
    assert place_at(position, LABELS) == place
    assert position_of(place, LABELS) == pytest.approx(position, abs=0.005)


def test_a_place_stays_true_when_a_size_is_added_in_front() -> None:
    assert position_of(place_at(1.5, LABELS), ("36", *LABELS)) == 2.5


def test_a_place_whose_size_was_taken_out_is_nowhere() -> None:
    assert position_of(Place("40"), ("38", "42")) is None
