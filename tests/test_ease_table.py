"""The table of band edges says what the plan of the program says, each figure with its source."""

from __future__ import annotations

import tomllib
from typing import TYPE_CHECKING, Any

import pytest

from sizekeeper import assets

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sizekeeper.core.preference import Garment


@pytest.mark.parametrize(
    ("garment", "region", "edges"),
    [
        ("dress", "bust", (2.5, 7.7, 13.0)), ("top", "waist", (1.2, 4.0, 9.0)), ("dress", "high_hip", (1.5, 5.0, 10.0)),
        ("dress", "hip", (2.5, 6.5, 11.0)), ("trousers", "thigh", (1.5, 4.0, 9.0)),
        ("top", "upper_arm", (4.0, 7.0, 11.0)), ("top", "across_back", (1.0, 2.5, 5.0)),
        ("trousers", "calf", (1.5, 4.0, 8.0)), ("top", "wrist", (1.5, 4.0, 8.0)),
        ("skirt", "waist", (0.6, 2.5, 5.0)), ("trousers", "waist", (0.6, 2.5, 5.0)), ("skirt", "hip", (2.5, 6.5, 11.0)),
        ("jacket", "bust", (7.5, 12.7, 18.0)), ("jacket", "upper_arm", (7.0, 10.0, 14.0)),
        ("jacket", "across_back", (2.5, 4.0, 6.5)), ("jacket", "wrist", (3.5, 6.0, 10.0)),
        ("coat", "waist", (11.2, 14.0, 19.0)), ("coat", "hip", (12.5, 16.5, 21.0)),
        ("coat", "upper_arm", (10.0, 13.0, 17.0)), ("coat", "across_back", (4.0, 5.5, 8.0)),
        ("coat", "calf", (5.5, 8.0, 12.0)), ("coat", "thigh", (1.5, 4.0, 9.0)),
    ],
)  # fmt: skip
def test_the_edges_nobody_changed_are_those_of_the_plan(
    garment: Garment, region: str, edges: tuple[float, float, float]
) -> None:
    assert assets.ease_defaults().edges(region, garment) == pytest.approx(edges)


def test_a_knit_may_be_smaller_than_the_body_by_half_its_stretch_and_a_tenth_at_most() -> None:
    defaults = assets.ease_defaults()

    assert defaults.negative_share(0.2) == pytest.approx(1 - 1 / 1.1)
    assert defaults.negative_share(0.6) == 0.10
    assert (defaults.knit_from, defaults.knit_loose, defaults.knit_close) == pytest.approx((0.15, 0.08, 1 / 3))


def test_every_figure_of_the_table_names_its_source_or_says_that_it_has_none() -> None:
    table = tomllib.loads(assets.resource("ease.toml").read_text(encoding="utf-8"))

    for row in _rows(table):
        assert any(known in row["source"] for known in ("no source", "Extension", "University", "guide")), row


def _rows(table: dict[str, Any]) -> Iterator[dict[str, Any]]:
    """Every table that holds figures rather than further tables."""
    for value in table.values():
        if all(isinstance(inner, dict) for inner in value.values()):
            yield from _rows(value)
        else:
            yield value
