from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sizekeeper.core.knit import knit_check, most_negative_ease, needed_stretch, reach, stretch_of
from sizekeeper.core.make import StretchTest
from sizekeeper.errors import PlanError
from tests.core.paper import long


@pytest.mark.parametrize(
    ("rest", "stretched", "share"), [("10 cm", "12 cm", "1/5"), ("4 in", "10.16 cm", "0"), ("8 cm", "12 cm", "1/2")]
)
def test_stretch_is_how_much_longer_over_the_length_at_rest(rest: str, stretched: str, share: str) -> None:
    assert stretch_of(StretchTest(long(rest), long(stretched))) == Fraction(share)


@pytest.mark.parametrize(("rest", "stretched"), [("14 cm", "10 cm"), ("0 cm", "10 cm")])
def test_a_test_that_ends_shorter_than_it_starts_is_refused(rest: str, stretched: str) -> None:
    with pytest.raises(PlanError, match="starts from the length at rest"):
        stretch_of(StretchTest(long(rest), long(stretched)))


@given(st.floats(20, 200), st.floats(0, 1.5))
def test_a_garment_at_its_most_negative_ease_reaches_exactly_round_the_body(body: float, share: float) -> None:
    smallest = body * (1 - most_negative_ease(share))
    assert reach(smallest, share) == pytest.approx(body)
    assert needed_stretch(body, smallest) == pytest.approx(share, abs=1e-9)


def test_a_garment_larger_than_the_body_needs_no_stretch() -> None:
    assert needed_stretch(80, 84) == 0


def test_every_region_says_what_it_needs_and_whether_the_fabric_has_it() -> None:
    # Bust 100 on 80 needs 25 %, waist 90 on 60 needs 50 %; 30 % reach 104 and 78.
    check = knit_check(0.3, 0.25, {"bust": (100, 80), "waist": (90, 60)})
    found = [(r.measure, r.needed, r.reach_cm, r.enough) for r in check.regions]
    assert found == [("bust", 0.25, 104, True), ("waist", 0.5, 78, False)]
    assert not check.short_of_pattern


@pytest.mark.parametrize(("share", "short"), [(0.24, True), (0.25, False), (0.4, False)])
def test_less_stretch_than_the_pattern_asks_for_is_warned_of(share: float, short: bool) -> None:
    assert knit_check(share, 0.25, {}).short_of_pattern is short
