from __future__ import annotations

import pytest

from sizekeeper import assets
from sizekeeper.core.preference import GARMENTS, Garment
from sizekeeper.core.starting_rows import starting_measures, with_starting_rows
from tests.core.written import chart, texts


@pytest.mark.parametrize("garment", GARMENTS)
def test_every_garment_starts_with_measures_of_its_charts(garment: Garment) -> None:
    measures = assets.measures()
    assert all(measures[m].use in ("body", "both") for m in starting_measures("body", garment, child=True))
    assert all(measures[m].use in ("finished", "both") for m in starting_measures("finished", garment))


def test_only_measures_that_a_chart_lacks_are_added() -> None:
    after = with_starting_rows(chart("38, 40", hip="94, 98"), "skirt", child=True)
    assert texts(after) == {"hip": "94, 98", "height": ", ", "waist": ", "}
