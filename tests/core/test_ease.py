from __future__ import annotations

import pytest

from sizekeeper import assets
from sizekeeper.core.ease import EaseRule, band_of, ease_rule
from sizekeeper.core.preference import Band, EasePreference, Garment, RegionPreference
from sizekeeper.errors import FitError
from tests.build import length

DEFAULTS = assets.ease_defaults()


def rule(
    measure: str, body: float = 100.0, garment: Garment = "dress", stretch: float = 0.0, **chosen: object
) -> EaseRule:
    preference = EasePreference(garment, regions={measure: RegionPreference(**chosen)})  # type: ignore[arg-type]
    return ease_rule(measure, body, garment=garment, stretch=stretch, preference=preference, defaults=DEFAULTS)


@pytest.mark.parametrize(
    ("ease", "band"),
    [
        (2.4, "tight"),
        (2.5, "close"),
        (2.4999995, "close"),
        (7.69, "close"),
        (7.7, "easy"),
        (13.0, "loose"),
        (-3, "tight"),
    ],
)
def test_a_band_begins_at_its_edge(ease: float, band: Band) -> None:
    assert band_of(ease, (2.5, 7.7, 13.0)) == band


@pytest.mark.parametrize(
    ("band", "asked"), [("tight", 2.5), ("close", 5.1), ("easy", 10.35), ("loose", 13.0), (None, 5.1)]
)
def test_a_band_asks_for_its_middle_or_its_outer_edge(band: Band | None, asked: float) -> None:
    assert rule("bust", band=band).asked_at(100.0) == pytest.approx(asked)


def test_a_waistband_is_worn_closer_than_a_dress_waist() -> None:
    assert rule("waist").edges == (1.2, 4.0, 9.0)
    assert rule("waist", garment="trousers").edges == (0.6, 2.5, 5.0)
    assert rule("waist", garment="skirt").edges == (0.6, 2.5, 5.0)


@pytest.mark.parametrize(
    ("garment", "measure", "edges"),
    [
        ("jacket", "bust", (7.5, 12.7, 18.0)),
        ("coat", "hip", (12.5, 16.5, 21.0)),
        ("coat", "upper_arm", (10.0, 13.0, 17.0)),
        ("jacket", "across_back", (2.5, 4.0, 6.5)),
        ("coat", "wrist", (5.5, 8.0, 12.0)),
        ("jacket", "thigh", (1.5, 4.0, 9.0)),
    ],
)
def test_what_is_worn_over_other_clothes_is_larger(garment: Garment, measure: str, edges: tuple[float, ...]) -> None:
    assert rule(measure, garment=garment).edges == pytest.approx(edges)


def test_a_knit_has_shares_of_the_body_as_edges() -> None:
    # s = 0.2: 1 - 1/1.1 = 0.0909...; of 110 cm that is 10 cm exactly; 8 % of 110 is 8.8
    knit = rule("bust", 110.0, stretch=0.2)
    assert knit.edges_at(110.0) == pytest.approx((-10.0, 0.0, 8.8))
    assert knit.asked_at(110.0) == pytest.approx(-10.0 / 3)


def test_a_very_stretchy_knit_is_never_asked_to_be_more_than_a_tenth_smaller() -> None:
    assert rule("bust", 100.0, stretch=0.5).edges_at(100.0) == pytest.approx((-10.0, 0.0, 8.0))


def test_below_fifteen_per_cent_a_knit_is_judged_as_a_woven() -> None:
    assert rule("bust", stretch=0.14).edges == (2.5, 7.7, 13.0)


def test_easy_in_a_knit_asks_for_the_middle_of_its_band() -> None:
    assert rule("bust", 100.0, stretch=0.5, band="easy").asked_at(100.0) == pytest.approx(4.0)


def test_an_own_figure_is_never_rescaled_and_may_be_negative() -> None:
    own = rule("bust", 100.0, stretch=0.5, own=length("-12 cm"))
    assert own.asked_at(140.0) == -12.0
    assert own.own
    assert own.band == "tight"


def test_own_edges_replace_the_default_ones_also_for_a_knit() -> None:
    edges = (length("1 cm"), length("3 cm"), length("1 3/4 in"))
    own = rule("bust", 100.0, stretch=0.5, edges=edges)
    assert own.edges_at(120.0) == pytest.approx((1.0, 3.0, 4.445))
    assert own.asked_at(120.0) == pytest.approx(2.0)


def test_edges_that_do_not_rise_are_refused_in_words() -> None:
    with pytest.raises(FitError, match="band edges of upper arm must rise: 3, 3, 4 cm do not"):
        rule("upper_arm", edges=(length("3 cm"), length("3 cm"), length("4 cm")))
