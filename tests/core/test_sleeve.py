from __future__ import annotations

from fractions import Fraction

import pytest

from sizekeeper.core.sleeve import CapCheck, arm_change, end_to_be_level_with_waist, ends_below_waist
from tests.core.paper import cm


def test_a_sleeve_is_widened_by_the_ease_it_lacks_and_the_armhole_by_half_of_it_each() -> None:
    # 33 for an arm of 31 has 2 of the 5 asked for: 3 more, 1 1/2 at the front and at the back.
    found = arm_change(Fraction(33), Fraction(31), Fraction(5))
    assert (found.ease, found.change, found.cap_grows, found.armhole_edge) == (*cm(2, 3, 3), Fraction(3, 2))


def test_a_sleeve_with_ease_enough_stays() -> None:
    assert arm_change(Fraction(37), Fraction(31), Fraction(5)).change == 0


@pytest.mark.parametrize(("cap", "ease", "meets"), [(48, 2, True), (46, 0, True), (45, -1, False)])
def test_the_cap_must_not_be_shorter_than_the_armhole(cap: int, ease: int, meets: bool) -> None:
    found = CapCheck(Fraction(cap), Fraction(46))
    assert found.ease == ease
    assert found.meets is meets


def test_a_sleeve_widened_alone_has_so_much_more_cap_to_ease_in() -> None:
    # 45 for an armhole of 46 lacks 1; 3 wider at the arm makes 48: 2 to ease in.
    assert CapCheck(Fraction(45), Fraction(46)).widened(arm_change(Fraction(33), Fraction(31), Fraction(5))).ease == 2


def test_a_sleeve_ends_level_with_the_waist_when_it_is_as_long_as_from_shoulder_to_waist() -> None:
    assert end_to_be_level_with_waist(Fraction(38)) == 38
    assert end_to_be_level_with_waist(Fraction(38), Fraction(4)) == 34
    assert (ends_below_waist(Fraction(41), Fraction(38)), ends_below_waist(Fraction(34), Fraction(38))) == cm(3, -4)
