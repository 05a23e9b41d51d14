from __future__ import annotations

import pytest

from sizekeeper.core.measure import Measures
from sizekeeper.core.measure_search import find_measure, own_measure, suggest
from tests.core.written import MEASURES, measure


@pytest.mark.parametrize("name", ["Bust", "bust", " FULL  BUST ", "tour-de-poitrine", "BRUSTUMFANG"])
def test_a_measure_is_found_by_any_of_its_names(name: str) -> None:
    found = find_measure(MEASURES, name, "body")
    assert found is MEASURES["bust"]


@pytest.mark.parametrize(("kind", "measure"), [("body", "back_waist_length"), ("finished", "garment_back_length")])
def test_a_name_of_two_measures_means_the_one_of_the_charts_kind(kind: str, measure: str) -> None:
    assert find_measure(MEASURES, "Back length", kind) is MEASURES[measure]  # type: ignore[arg-type]


def test_an_unknown_name_is_no_measure_but_has_an_id() -> None:
    assert find_measure(MEASURES, "Cuff, buttoned", "finished") is None
    assert own_measure("Cuff, buttoned") == "cuff_buttoned"


def test_suggestions_name_each_measure_once_the_likeliest_first() -> None:
    assert list(suggest(MEASURES, "back", "body").items()) == [
        ("Back waist length", "back_waist_length"),
        ("Across back", "across_back"),
    ]


def test_a_synonym_is_suggested_behind_the_name() -> None:
    assert suggest(MEASURES, "seat", "body") == {"Hip (Seat)": "hip"}


def test_a_measure_called_just_so_is_suggested_before_one_that_begins_so() -> None:
    two = Measures([measure("waist_to_hip", "length", en="Waist to seat"), measure("hip", en="Seat")])
    assert list(suggest(two, "seat", "body")) == ["Hip (Seat)", "Waist to hip (Waist to seat)"]
