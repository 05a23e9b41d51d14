"""Edits of how a person likes a garment to fit."""

from __future__ import annotations

from fractions import Fraction

import pytest

from sizekeeper.core.pattern import Pattern
from sizekeeper.core.person import Person
from sizekeeper.core.preference import RegionPreference
from sizekeeper.errors import FitError, LengthError
from sizekeeper.ui import fit_edits
from tests.build import length

ADA = Person("ada", "Ada", "in")
DRESS, KNIT = (
    Pattern("p", "Dress", garment="dress"),
    Pattern("k", "Knit dress", garment="dress", fabric="knit", stretch=0.3),
)
NOW = (2.5, 7.7, 13.0)


def region(person: Person, measure: str = "bust", pattern: Pattern = DRESS) -> RegionPreference:
    return fit_edits.preference_of(person, pattern).region(measure)


def test_a_preference_is_kept_for_its_kind_of_garment_only() -> None:
    person = fit_edits.with_band(ADA, DRESS, "bust", "easy")
    assert (region(person).band, region(person, pattern=KNIT).band) == ("easy", None)


def test_taking_everything_back_leaves_nothing_behind() -> None:
    person = fit_edits.with_band(fit_edits.with_band(ADA, DRESS, "bust", "easy"), DRESS, "bust", None)
    assert person == ADA


def test_only_one_region_is_the_one_to_choose_size_by() -> None:
    person = fit_edits.with_counting(fit_edits.with_counting(ADA, DRESS, "bust", "lead"), DRESS, "hip", "lead")
    assert [fit_edits.counting(person, DRESS, m) for m in ("bust", "hip")] == ["", "lead"]


def test_choosing_size_by_a_region_takes_its_other_role_away() -> None:
    person = fit_edits.with_counting(fit_edits.with_counting(ADA, DRESS, "hip", "free"), DRESS, "hip", "lead")
    assert region(person, "hip").role is None


def test_another_role_takes_the_lead_away() -> None:
    person = fit_edits.with_counting(fit_edits.with_counting(ADA, DRESS, "hip", "lead"), DRESS, "hip", "adjustable")
    assert fit_edits.preference_of(person, DRESS).lead is None
    assert fit_edits.counting(person, DRESS, "hip") == "adjustable"


def test_a_band_that_is_picked_replaces_the_exact_figure() -> None:
    person = fit_edits.with_own(ADA, DRESS, "bust", length("2 in"), "the blue dress")
    assert region(fit_edits.with_band(person, DRESS, "bust", "loose")) == RegionPreference(band="loose")


def test_taking_the_band_back_keeps_the_exact_figure() -> None:
    person = fit_edits.with_own(ADA, DRESS, "bust", length("2 in"), "the blue dress")
    assert region(fit_edits.with_band(person, DRESS, "bust", None)).own == length("2 in")


def test_one_changed_edge_keeps_the_other_two_as_they_are() -> None:
    edges = region(fit_edits.with_edge(ADA, DRESS, "bust", 1, length("3 in"), NOW)).edges
    assert edges is not None
    assert [edge.exact_cm for edge in edges] == [Fraction(5, 2), Fraction(762, 100), 13]


def test_edges_that_do_not_rise_are_refused_in_words() -> None:
    with pytest.raises(FitError, match=r"must rise from tight to loose; .*9 in.* do not"):
        fit_edits.with_edge(ADA, DRESS, "bust", 0, length("9 in"), NOW)


def test_the_usual_edges_can_be_had_back() -> None:
    person = fit_edits.with_edge(ADA, DRESS, "bust", 1, length("3 in"), NOW)
    assert fit_edits.with_edges_as_they_come(person, DRESS, "bust") == ADA


def test_ease_may_be_negative_and_keeps_its_text() -> None:
    typed = fit_edits.ease_typed("-1 1/2", "in")
    assert typed is not None
    assert (typed.exact_cm, typed.text) == (Fraction(-381, 100), "-1 1/2")


def test_an_empty_ease_is_none() -> None:
    assert fit_edits.ease_typed("  ", "cm") is None


def test_a_text_that_is_no_ease_is_refused() -> None:
    with pytest.raises(LengthError):
        fit_edits.ease_typed("snug", "cm")


@pytest.mark.parametrize(("times", "ease"), [(2, "4 1/2 in"), (1, "-17 1/4 in")])
def test_the_ease_of_a_liked_garment_is_its_girth_minus_the_body(times: int, ease: str) -> None:
    found = fit_edits.ease_of_liked(length("21 3/4 in"), times, length("39 in").exact_cm, "in")
    assert (found.exact_cm, found.text) == (length(ease).exact_cm, ease)
