from __future__ import annotations

import itertools
from functools import partial
from typing import TYPE_CHECKING

import pytest

from sizekeeper import assets
from sizekeeper.core.chart import Chart
from sizekeeper.core.pattern import Pattern
from sizekeeper.importing.saving import Plan, likely_child, likely_garment, new_pattern, plan_into, plan_new
from sizekeeper.importing.setting import with_table
from tests.core.written import chart, texts
from tests.importing.charts import BODY, after, opened

if TYPE_CHECKING:
    from collections.abc import Callable

BOTH = "Body (cm)|S|M / Bust|82|88 /  / Finished (cm)|S|M / Bust|90|96"
VIEWS = "Finished measurements (cm)|View|10|12|14 / Bust|A|96|100|104 / Bust|B|110|114|118"
DRESS = Pattern("dress", "Wrap dress")


def ids() -> Callable[[], str]:
    """Ids that count up."""
    numbers = itertools.count(1)
    return lambda: f"id-{next(numbers)}"


def new(text: str) -> Plan:
    """The plan for a chart as a new pattern."""
    return plan_new(opened(text), DRESS, assets.measures(), ids())


def into(text: str, *charts: Chart) -> Plan:
    """The plan for a chart that goes into a pattern with charts."""
    return plan_into(opened(text), DRESS, charts, assets.measures(), ids())


def charts_after(plan: Plan) -> list[Chart]:
    """The charts as they will be."""
    return [value for _, value in plan.pairs if isinstance(value, Chart)]


def test_a_new_pattern_comes_with_a_chart_of_each_kind() -> None:
    assert [(c.kind, c.pattern, texts(c)) for c in charts_after(new(BOTH))] == [
        ("body", "dress", {"bust": "82, 88"}),
        ("finished", "dress", {"bust": "90, 96"}),
    ]


def test_nothing_stood_there_before_a_new_pattern() -> None:
    assert [before for before, _ in new(BOTH).pairs] == [None, None, None]


def test_what_a_new_pattern_gets_is_said_chart_by_chart() -> None:
    assert new(BODY).changes == ("Body chart: 3 sizes, S to L; bust, waist.",)


def test_views_of_the_chart_become_views_of_the_pattern() -> None:
    plan = new(VIEWS)
    assert (plan.pattern.views, [c.view for c in charts_after(plan)]) == (("A", "B"), ["A", "B"])


def test_a_table_that_is_left_out_is_not_saved() -> None:
    before = opened(BOTH)
    left = after(before, partial(with_table, table=before.tables[0].key, taken=False))
    assert [c.kind for c in charts_after(plan_new(left, DRESS, assets.measures(), ids()))] == ["finished"]


def test_filling_in_says_every_figure_that_changes_from_what_to_what() -> None:
    assert into(BODY, chart("S, M, L", bust="82, 89, 94", waist="64, 70, 76")).changes == (
        "Body chart: Bust, size M: 89 becomes 88.",
    )


def test_filling_in_says_what_is_added() -> None:
    assert into(BODY, chart("S, M", bust="82, ")).changes == (
        "Body chart: size L is added.",
        "Body chart: row Waist is added.",
        "Body chart: 2 empty places are filled in.",
    )


def test_filling_in_what_is_there_already_says_that_nothing_changes() -> None:
    assert into(BODY, chart("S, M, L", bust="82, 88, 94", waist="64, 70, 76")).changes == (
        "Body chart: nothing changes.",
    )


def test_filling_in_keeps_the_chart_s_place_in_the_library() -> None:
    before = chart("S, M, L", bust="82, 89, 94")
    assert [(old, fresh and fresh.id) for old, fresh in into(BODY, before).pairs[1:]] == [(before, before.id)]


def test_a_kind_of_chart_that_the_pattern_lacks_is_made() -> None:
    assert [c.kind for c in charts_after(into(BODY, chart("S", "finished", bust="90")))] == ["body"]


@pytest.mark.parametrize(
    ("title", "garment"),
    [
        ("Summer skirts 2", "skirt"),
        ("Wickelkleid", "dress"),
        ("Linen trousers with pockets", "trousers"),
        ("Trench coat", "coat"),
        ("Short jacket", "jacket"),
        ("Basic shirt", "top"),
        ("desktop", "dress"),
        ("rocket", "dress"),
        ("L21", "dress"),
    ],
)
def test_the_garment_is_the_one_that_the_title_names(title: str, garment: str) -> None:
    assert likely_garment(title) == garment


def test_sizes_by_age_are_children_s() -> None:
    assert likely_child(opened("Body (cm)|2Y|4Y / Chest|53|57").tables)


def test_letters_are_not_children_s() -> None:
    assert not likely_child(opened(BODY).tables)


@pytest.mark.parametrize(("unit", "kept"), [("cm", "cm"), ("in", "in")])
def test_a_new_pattern_counts_as_its_chart_does(unit: str, kept: str) -> None:
    reading = opened(f"Body measurements ({unit})|S|M / Bust|82|88")
    assert new_pattern(reading, "id", "Dress", "dress", child=False).unit == kept
