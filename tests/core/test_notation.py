from __future__ import annotations

import contextlib
from fractions import Fraction
from typing import get_args

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sizekeeper.core.length import Unit
from sizekeeper.core.notation import (
    CENTIMETRES,
    INCHES,
    Notation,
    parse_length,
    rounded,
    show,
    spoken,
    unit_registry,
)
from sizekeeper.errors import LengthError

SIXTEENTHS = Notation("in", Fraction(1, 16))
HALF_CM = Notation("cm", Fraction(1, 2))


@pytest.mark.parametrize(
    ("text", "unit", "inches"),
    [
        ("37 3/4", "in", "151/4"),
        ("37¾", "in", "151/4"),
        ("37 ¾", "in", "151/4"),
        ("37-3/4", "in", "151/4"),
        ("37–3/4", "in", "151/4"),
        ('37.75"', "cm", "151/4"),
        ("37¾″", "cm", "151/4"),
        ("37 3⁄4”", "cm", "151/4"),
        ("37 3/4 in", "cm", "151/4"),
        ("37 3/4 Inches", "cm", "151/4"),
        ("37,75 in.", "cm", "151/4"),
        ("37\u00a03/4\u2009in", "cm", "151/4"),
        ("3/8", "in", "3/8"),
        ("⅜ in", "cm", "3/8"),
        (".5 in", "cm", "1/2"),
        ("5′6″", "cm", "66"),
        ("5'6\"", "cm", "66"),
        ("5' 6 1/2''", "cm", "133/2"),
        ("5’6", "cm", "66"),
        ("5 ft 6 in", "cm", "66"),
        ("1 yd 4 in", "cm", "40"),
        ("1 yard", "cm", "36"),
        ("12 Zoll", "cm", "12"),
        ("-1 1/2 in", "cm", "-3/2"),
        ("−1½ in", "cm", "-3/2"),
    ],
)
def test_inches_are_read_however_they_are_written(text: str, unit: Unit, inches: str) -> None:
    assert parse_length(text, unit).in_unit("in") == Fraction(inches)


@pytest.mark.parametrize(
    ("text", "cm"),
    [
        ("95,5 cm", "191/2"),
        ("955 mm", "191/2"),
        ("0.955 m", "191/2"),
        ("95.5", "191/2"),
        ("96 CM", "96"),
        ("1 dm", "10"),
    ],
)
def test_metric_lengths_are_read_however_they_are_written(text: str, cm: str) -> None:
    assert parse_length(text, "cm").exact_cm == Fraction(cm)


def test_a_length_keeps_the_text_that_was_typed() -> None:
    assert parse_length(" 37¾ ", "in").text == "37¾"


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "no length is given"),
        ("  ", "no length is given"),
        ("wide", "“wide” is not a length"),
        ("37 kg", "“kg” is not a unit of length"),
        ("37 blorps", "“blorps” is not a unit of length"),
        ("37 3/0", "a fraction cannot be divided by zero"),
        ("4 in 1 yd", "the larger unit comes first"),
        ("37 38", "“37 38” is not a length"),
        ("37 in 3/4", "“37 in 3/4” is not a length"),
        ("1.2.3", "“1.2.3” is not a length"),
        ("9" * 100, "too long"),
    ],
)
def test_a_text_that_is_no_length_is_explained(text: str, says: str) -> None:
    with pytest.raises(LengthError, match=says.replace("(", r"\(")):
        parse_length(text, "cm")


def test_a_bare_number_needs_a_unit_where_none_is_given() -> None:
    with pytest.raises(LengthError, match="has no unit: write cm or in behind it"):
        parse_length("37")


@given(st.text(max_size=90), st.sampled_from([None, "cm", "in"]))
def test_no_text_breaks_the_reading(text: str, unit: Unit | None) -> None:
    with contextlib.suppress(LengthError):
        parse_length(text, unit)


@given(st.integers(-4000, 4000), st.sampled_from([INCHES, SIXTEENTHS, CENTIMETRES, HALF_CM]))
def test_what_is_shown_reads_back_as_the_same_length(steps: int, notation: Notation) -> None:
    per_cm = Fraction(254, 100) if notation.unit == "in" else Fraction(1)
    exact_cm = steps * notation.step * per_cm
    assert parse_length(show(exact_cm, notation)).exact_cm == exact_cm


@given(st.fractions(-300, 300), st.sampled_from([INCHES, SIXTEENTHS, CENTIMETRES, HALF_CM]))
def test_rounding_is_never_off_by_more_than_half_a_step(exact_cm: Fraction, notation: Notation) -> None:
    per_cm = Fraction(254, 100) if notation.unit == "in" else Fraction(1)
    assert abs(rounded(exact_cm, notation) - exact_cm / per_cm) <= notation.step / 2


@given(st.integers(0, 200), st.integers(0, 15), st.sampled_from(["in", "ft", "yd", "cm", "mm", "m"]))
def test_fractions_and_the_unit_engine_agree(whole: int, part: int, unit: Unit) -> None:
    value = whole + Fraction(part, 16)
    name = {"in": "inch", "ft": "foot", "yd": "yard"}.get(unit, unit)
    engine = unit_registry().Quantity(value, name).to("cm").magnitude
    assert parse_length(f"{whole} {part}/16 {unit}").exact_cm == engine


@pytest.mark.parametrize(
    ("cm", "notation", "text"),
    [
        (95.885, INCHES, "37 3/4 in"),
        (95.885, CENTIMETRES, "95.9 cm"),
        (95.885, HALF_CM, "96 cm"),
        (2.54 * 2.125, INCHES, "2 1/8 in"),
        (2.54 * 0.0625, SIXTEENTHS, "1/16 in"),
        (2.54 * 0.0625, INCHES, "1/8 in"),
        (0.0, INCHES, "0 in"),
        (-1.27, INCHES, "−1/2 in"),
        (0.05, CENTIMETRES, "0.1 cm"),
        (-0.04, CENTIMETRES, "0 cm"),
    ],
)
def test_lengths_are_shown_as_a_tape_reads(cm: float, notation: Notation, text: str) -> None:
    assert show(cm, notation) == text


def test_a_change_is_shown_with_its_sign_and_a_table_without_units() -> None:
    assert show(2.54, INCHES, sign=True) == "+1 in"
    assert show(2.54, INCHES, unit=False) == "1"


@pytest.mark.parametrize(
    ("cm", "notation", "words"),
    [
        (2.54 * 2.375, INCHES, "2 and three eighths inches"),
        (2.54 * 0.375, INCHES, "three eighths of an inch"),
        (2.54, INCHES, "1 inch"),
        (2.54 * -1.5, INCHES, "minus 1 and one half inches"),
        (1.0, CENTIMETRES, "1 centimetre"),
        (-1.5, CENTIMETRES, "minus 1.5 centimetres"),
        (2.54 * 3.0625, SIXTEENTHS, "3 and one sixteenth inches"),
    ],
)
def test_lengths_are_spoken_in_words(cm: float, notation: Notation, words: str) -> None:
    assert spoken(cm, notation) == words


def test_every_unit_of_a_length_can_be_written() -> None:
    assert [parse_length(f"2 {unit}").unit for unit in get_args(Unit)] == list(get_args(Unit))
