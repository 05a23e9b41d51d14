"""How figures are said inside sentences."""

from __future__ import annotations

from fractions import Fraction

import pytest

from sizekeeper.core.notation import CENTIMETRES, INCHES, Notation
from sizekeeper.core.wording import Wording

CM, IN = Wording(CENTIMETRES, str.capitalize), Wording(INCHES, str.capitalize)


def test_a_measure_stands_inside_a_sentence_with_its_article() -> None:
    assert CM.the("waist") == "the waist"


@pytest.mark.parametrize(
    ("cm", "said"),
    [(0.8, "8 mm"), (0.81, "9 mm"), (0.0001, "1 mm"), (2.0, "2 cm"), (1.91, "2 cm"), (1.9, "19 mm"), (3.41, "3.5 cm")],
)
def test_what_is_let_out_is_said_in_millimetres_and_never_less_than_needed(cm: float, said: str) -> None:
    assert CM.sewn(cm) == said


@pytest.mark.parametrize(("inches", "said"), [(0.375, "3/8 in"), (0.376, "7/16 in"), (1.0, "1 in")])
def test_what_is_let_out_in_inches_goes_up_to_the_next_sixteenth(inches: float, said: str) -> None:
    assert IN.sewn(inches * 2.54) == said


@pytest.mark.parametrize(
    ("cm", "said"), [(0.44, "4 mm"), (0.45, "5 mm"), (0.5, "5 mm"), (1.9999, "2 cm"), (1.94, "19 mm"), (1.95, "2 cm")]
)
def test_where_a_line_runs_is_said_to_the_nearest_millimetre(cm: float, said: str) -> None:
    assert CM.drawn(cm) == said


@pytest.mark.parametrize(
    ("cm", "said"), [(0.365, "3 mm"), (0.3, "3 mm"), (0.73, "7 mm"), (2.19, "2.1 cm"), (0.05, "0 mm")]
)
def test_what_can_be_let_out_is_never_said_to_be_more_than_there_is(cm: float, said: str) -> None:
    assert CM.spare(cm) == said


@pytest.mark.parametrize(("inches", "said"), [(0.375, "3/8 in"), (0.374, "5/16 in"), (0.05, "0 in")])
def test_what_can_be_let_out_in_inches_goes_down_to_the_sixteenth(inches: float, said: str) -> None:
    assert IN.spare(inches * 2.54) == said


@pytest.mark.parametrize(("cm", "said"), [(1.29, "1.2 cm"), (1.2, "1.2 cm"), (0.4, "0.4 cm")])
def test_a_safe_margin_never_promises_more_than_is_true(cm: float, said: str) -> None:
    assert CM.room(cm) == said


def test_a_safe_margin_is_said_finely_even_where_figures_are_shown_to_half_a_centimetre() -> None:
    assert Wording(Notation("cm", Fraction(1, 2)), str).room(1.29) == "1.2 cm"


def test_a_safe_margin_in_inches_goes_down_to_the_eighth() -> None:
    assert IN.room(0.99 * 2.54) == "7/8 in"


@pytest.mark.parametrize(("cm", "said"), [(2.54, "1 in more"), (-1.27, "1/2 in less"), (0.01, "the least bit more")])
def test_a_change_of_the_body_is_said_with_its_direction(cm: float, said: str) -> None:
    assert IN.shift(cm) == said
