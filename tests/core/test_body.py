from __future__ import annotations

import datetime as dt
import math
from typing import TYPE_CHECKING

import pytest

from sizekeeper import assets
from sizekeeper.core.body import body_figures
from sizekeeper.core.notation import parse_length
from sizekeeper.core.person import Person, Reading

if TYPE_CHECKING:
    from sizekeeper.core.measure import MeasuredBy

MEASURES = assets.measures()
OLD, NEW = dt.date(2026, 3, 1), dt.date(2026, 11, 1)


def read(measure: str, text: str, on: dt.date = NEW, by: MeasuredBy = "helped") -> Reading:
    return Reading(measure, text, parse_length(text, "cm"), on, by)


def figures(*readings: Reading) -> dict[str, tuple[float, float]]:
    found = body_figures(Person("p", "Ilse", readings=readings), MEASURES)
    return {measure: (figure.cm, figure.tolerance_cm) for measure, figure in found.items()}


def test_the_newest_day_counts() -> None:
    assert figures(read("bust", "98", NEW), read("bust", "95", OLD))["bust"][0] == 98.0


def test_several_readings_of_a_day_count_as_their_median() -> None:
    assert figures(read("bust", "96"), read("bust", "97.5"), read("bust", "96.2"))["bust"][0] == 96.2


def test_the_spread_of_a_day_is_the_tolerance_where_it_is_larger() -> None:
    # technical error of two readings 3 cm apart: sqrt(9 / 2) = 2.12 cm
    assert figures(read("bust", "95"), read("bust", "98"))["bust"] == pytest.approx((96.5, math.sqrt(4.5)))
    assert figures(read("bust", "95"), read("bust", "95.5"))["bust"] == pytest.approx((95.25, 1.0))


@pytest.mark.parametrize(
    ("measure", "by", "tolerance"),
    [
        ("bust", "trained", 0.9),
        ("upper_arm", "trained", 0.4),
        ("height", "trained", 0.4),
        ("across_back", "trained", 0.5),
        ("bust", "helped", 1.0),
        ("waist", "helped", 1.5),
        ("waist", "alone", 2.0),
    ],
)
def test_a_figure_may_be_off_by_who_held_the_tape(measure: str, by: MeasuredBy, tolerance: float) -> None:
    assert figures(read(measure, "60", by=by))[measure][1] == tolerance


def test_a_text_that_is_no_length_counts_as_missing() -> None:
    assert figures(Reading("bust", "about 96", None, NEW)) == {}


def test_a_newer_text_that_is_no_length_does_not_bring_the_old_figure_back() -> None:
    assert figures(read("bust", "95", OLD), Reading("bust", "?", None, NEW)) == {}


def test_a_garment_measure_or_an_unknown_one_is_no_body_figure() -> None:
    assert figures(read("garment_length", "95"), read("tail", "20")) == {}


def test_figures_come_from_the_top_of_the_body_down() -> None:
    assert list(figures(read("hip", "99"), read("bust", "95"), read("waist", "74"))) == ["bust", "waist", "hip"]
