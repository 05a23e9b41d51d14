"""Names, tolerances and units against the standards that give them."""

from __future__ import annotations

import math
from fractions import Fraction

import numpy as np
import pint
import pytest

from sizekeeper import assets
from sizekeeper.core.body import technical_error
from sizekeeper.core.length import CM_PER
from sizekeeper.core.notation import parse_length
from sizekeeper.core.stretch import parse_stretch

# Source: ISO 8559-1:2017, clause and name [S], as listed in the project's reference notes.
CLAUSES = {
    "inseam": "5.1.15",
    "bust_point_width": "5.2.3",
    "bust": "5.3.4",
    "high_bust": "5.3.7",
    "underbust": "5.3.8",
    "hip": "5.3.13",
    "upper_arm": "5.3.16",
    "back_waist_length": "5.4.5",
    "front_waist_length": "5.4.8",
    "bust_point_depth": "5.4.10",
}


@pytest.mark.parametrize(("measure", "clause"), CLAUSES.items())
def test_a_measure_names_its_clause_of_iso_8559_1(measure: str, clause: str) -> None:
    assert assets.measures()[measure].iso_clause == clause


@pytest.mark.parametrize(
    ("measure", "cm"),
    [
        ("bust", 0.9),
        ("waist", 0.9),
        ("hip", 0.9),
        ("wrist", 0.4),
        ("height", 0.4),
        ("across_back", 0.5),
        ("inseam", 0.5),
    ],
)
def test_a_trained_hand_is_as_good_as_iso_20685_allows_a_scanner_to_be(measure: str, cm: float) -> None:
    # Source: ISO 20685 [S], largest mean difference of scan and expert: large girths 9 mm, small girths and heights
    # 4 mm, segment lengths 5 mm.
    assert assets.measures()[measure].tolerance("trained") == cm


def test_the_technical_error_of_two_readings_is_the_anthropometric_formula() -> None:
    # Source: sqrt(sum (x1 - x2)^2 / 2n) [S], n = 1.
    assert technical_error([96.0, 97.4]) == pytest.approx(math.sqrt((96.0 - 97.4) ** 2 / 2))


@pytest.mark.parametrize("word", ["inch", "foot", "yard", "millimeter", "centimeter", "meter"])
def test_units_are_worth_what_a_general_unit_library_says(word: str) -> None:
    # Source: pint's unit table (international inch of 1959), counted here in floats.
    short = {"inch": "in", "foot": "ft", "yard": "yd", "millimeter": "mm", "centimeter": "cm", "meter": "m"}[word]
    assert float(CM_PER[short]) == pytest.approx(pint.UnitRegistry().Quantity(1, word).to("cm").magnitude)


def test_a_tape_of_one_yard_four_inches_reads_forty_inches() -> None:
    # Source: pint, exact fractions.
    registry: pint.UnitRegistry[Fraction] = pint.UnitRegistry(non_int_type=Fraction)
    expected = (registry.Quantity(Fraction(1), "yard") + registry.Quantity(Fraction(4), "inch")).to("cm").magnitude
    assert parse_length("1 yd 4 in").exact_cm == expected


@pytest.mark.parametrize(("text", "share"), [("4 to 5", 0.25), ("10 to 14", 0.40)])
def test_a_stretch_test_gives_the_share_the_tutorials_give(text: str, share: float) -> None:
    # Source: several tutorials of the trade [P]: 4 to 5 is 25 %, 10 to 14 is 40 %.
    assert parse_stretch(text) == pytest.approx(share)


def test_figures_between_sizes_lie_where_numpy_interp_puts_them() -> None:
    # Source: numpy.interp over the trade's misses bust, sizes 6 to 20 [S].
    from sizekeeper.core.run import along  # noqa: PLC0415 - beside its check

    bust = np.array([30.5, 31.5, 32.5, 34, 36, 38, 40, 42]) * 2.54
    positions = np.linspace(0, 7, 113)
    assert along(bust[None, :], positions)[0] == pytest.approx(np.interp(positions, np.arange(8), bust))
