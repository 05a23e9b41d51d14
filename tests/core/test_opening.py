from __future__ import annotations

import pytest

from sizekeeper.core.opening import passages
from sizekeeper.core.piece import Opening
from tests.core.paper import long

NECK = Opening("Neck", ("head",), around=long("50 cm"))
WAIST = Opening("Waist", ("hips", "shoulders"), measure="waist", fastening=long("18 cm"))
CUFF = Opening("Cuff", ("hand",), around=long("20 cm"), elastic=long("24 cm"))
FOOT = Opening("Hem", ("heel",), around=long("30 cm"), elastic=long("26 cm"))
HER = {"head": 56.0, "hip": 100.0, "hand": 22.0, "heel": 31.0}


def short(*openings: Opening, stretch: float = 0.0, child: bool = False) -> list[tuple[str, float | None]]:
    found = passages(openings, HER, {"waist": 72.0}, stretch, child=child)
    return [(p.passing, p.short_cm) for p in found]


def test_a_neck_without_fastening_must_be_as_large_as_the_head() -> None:
    assert short(NECK) == [("head", 6)]


def test_a_knit_stretches_over_it() -> None:
    # 50 x 1.2 = 60
    assert short(NECK, stretch=0.2) == [("head", 0)]


def test_a_zip_opens_twice_its_length() -> None:
    # 72 + 2 x 18 = 108 for hips of 100; what was not measured cannot be told.
    assert short(WAIST) == [("hips", 0), ("shoulders", None)]


@pytest.mark.parametrize(("opening", "lacks"), [(CUFF, 2), (FOOT, 5)])
def test_elastic_opens_no_further_than_it_stretches_or_than_the_edge(opening: Opening, lacks: float) -> None:
    # The cuff's edge of 20 for a hand of 22; the elastic's 26 for a heel of 31.
    assert [short_cm for _, short_cm in short(opening)] == [lacks]


def test_an_edge_that_nobody_measured_cannot_be_told() -> None:
    assert short(Opening("Neck", ("head",), measure="neck")) == [("head", None)]


def test_for_a_child_the_head_is_looked_at_first() -> None:
    assert [passing for passing, _ in short(CUFF, NECK, child=True)] == ["head", "hand"]
    assert [passing for passing, _ in short(CUFF, NECK)] == ["hand", "head"]
