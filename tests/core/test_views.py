from __future__ import annotations

from dataclasses import replace

import pytest

from sizekeeper.core.pattern import Pattern
from sizekeeper.core.views import chart_of, views_of
from tests.build import chart

PLAIN = chart("finished", "38 40", bust="98, 102")
BLANK = chart("finished", "38 40", bust="-, -")
BODY = chart("body", "38 40", bust="88, 92")


@pytest.mark.parametrize(
    ("views", "with_figures", "offered"),
    [
        ((), ("",), {}),
        (("A", "B"), ("",), {}),
        (("A", "B"), ("A", "B"), {"A": "View A", "B": "View B"}),
        (("A", "B", "C"), ("", "B"), {"": "View A and C", "B": "View B"}),
        (("B",), ("", "B"), {"": "Other views", "B": "View B"}),
    ],
)
def test_views_are_offered_where_they_have_figures_of_their_own(
    views: tuple[str, ...], with_figures: tuple[str, ...], offered: dict[str, str]
) -> None:
    charts = [replace(PLAIN, view=view) for view in with_figures]
    assert views_of(Pattern("p", "Dress", views=views), [BODY, *charts]) == offered


def test_a_view_without_figures_is_none_to_choose() -> None:
    assert views_of(Pattern("p", "Dress", views=("A",)), [PLAIN, replace(BLANK, view="A")]) == {}


def test_a_view_has_its_own_chart_or_the_one_for_all() -> None:
    own = replace(PLAIN, view="B", id="own")
    charts = [BODY, PLAIN, own]
    assert chart_of(charts, "finished", "B") is own
    assert chart_of(charts, "finished", "A") is PLAIN
    assert chart_of(charts, "body", "B") is BODY
    assert chart_of([BLANK], "finished", "") is None
