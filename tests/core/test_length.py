from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sizekeeper.core.length import CM_PER, Length


def test_a_length_knows_its_centimetres_exactly() -> None:
    assert Length(Fraction(151, 4), "in").exact_cm == Fraction(19177, 200)  # 37.75 x 2.54 = 95.885


def test_a_length_counts_itself_in_another_unit() -> None:
    assert Length(Fraction(91440, 1000), "cm").in_unit("yd") == 1


@given(st.fractions(-500, 500), st.sampled_from(["cm", "mm", "m", "in", "ft", "yd"]), st.sampled_from([1, 2, 4]))
def test_centimetres_as_a_float_are_the_nearest_to_the_exact_ones(value: Fraction, unit: str, times: int) -> None:
    length = Length(value, unit)  # type: ignore[arg-type]
    assert length.times_cm(times) == float(value * CM_PER[unit] * times)


@pytest.mark.parametrize("unit", ["cm", "mm", "m", "in", "ft", "yd"])
def test_every_unit_is_worth_what_the_unit_engine_says(unit: str) -> None:
    from sizekeeper.core.notation import unit_registry  # noqa: PLC0415 - loads pint

    inch = {"in": "inch", "ft": "foot", "yd": "yard"}.get(unit, unit)
    assert unit_registry().Quantity(Fraction(1), inch).to("cm").magnitude == CM_PER[unit]
