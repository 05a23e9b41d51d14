from __future__ import annotations

import pytest

from sizekeeper.core.measure_search import find_measure, own_measure
from tests.core.written import MEASURES


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
