from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sizekeeper.core.exact_text import exact_text
from sizekeeper.core.notation import parse_length

if TYPE_CHECKING:
    from sizekeeper.core.length import Unit


@pytest.mark.parametrize(
    ("value", "unit", "text"),
    [
        ("151/4", "in", "37 3/4"),
        ("3/8", "in", "3/8"),
        ("38", "in", "38"),
        ("377/10", "in", "37.7"),
        ("381/4", "cm", "95.25"),
        ("1/100", "cm", "0.01"),
        ("1/3", "cm", "1/3"),
        ("-5/2", "cm", "-2.5"),
    ],
)
def test_an_amount_is_written_as_people_type_it(value: str, unit: Unit, text: str) -> None:
    assert exact_text(Fraction(value), unit) == text


@given(st.fractions(min_value=0, max_value=300, max_denominator=5000), st.sampled_from(["cm", "in", "mm"]))
def test_what_is_written_states_the_exact_amount(value: Fraction, unit: Unit) -> None:
    assert parse_length(exact_text(value, unit), unit).value == value
