from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from sizekeeper.core.fabric import line_for
from sizekeeper.core.make import FabricHad
from sizekeeper.core.pattern import Pattern
from sizekeeper.core.piece import FabricLine
from sizekeeper.core.views import chart_of, pieces_in, shares_chart, views_of
from tests.build import chart
from tests.core.paper import long, piece, pieces

if TYPE_CHECKING:
    from sizekeeper.core.piece import Pieces

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


@pytest.mark.parametrize(
    ("views", "with_figures", "cut_for", "offered"),
    [
        (("A", "B"), ("",), ("A",), {"": "View B", "A": "View A"}),
        (("A", "B"), ("",), ("A", "B"), {"A": "View A", "B": "View B"}),
        (("A", "B"), (), ("A", "B"), {"A": "View A", "B": "View B"}),
        (("A", "B"), ("",), ("",), {}),
        (("A",), ("",), ("A",), {}),
        (("A", "B"), ("", "B"), ("A", "B"), {"": "View A", "B": "View B"}),
        (("A", "B", "C"), ("", "B"), ("A", "C"), {"A": "View A", "B": "View B", "C": "View C"}),
        (("A", "B", "C"), ("B", "C"), ("A", "C"), {"B": "View B", "C": "View C"}),
        (("A", "B"), ("",), ("Z",), {}),
    ],
)
def test_views_that_share_a_chart_are_choices_where_they_have_pieces_of_their_own(
    views: tuple[str, ...], with_figures: tuple[str, ...], cut_for: tuple[str, ...], offered: dict[str, str]
) -> None:
    charts = [BODY, *(replace(PLAIN, view=view) for view in with_figures)]
    assert views_of(Pattern("p", "Dress", views=views), charts, cut(*cut_for)) == offered


def cut(*views: str) -> Pieces:
    return pieces(*(piece(f"skirt {view or 'for all'}", view=view) for view in views))


def names(found: Pieces | None) -> list[str]:
    assert found is not None
    return [one.view for one in found.pieces]


@pytest.mark.parametrize(
    ("with_figures", "view", "kept"),
    [
        (("", "B"), "B", ["", "B"]),  # a view with figures of its own
        (("", "B"), "", ["", "A"]),  # what shares the chart for all is A alone
        (("",), "A", ["", "A"]),
        (("",), "B", ["", "B"]),
        (("",), "", [""]),  # both are choices of their own
        (("A", "B"), "A", ["", "A"]),
    ],
)
def test_a_view_has_its_own_pieces_and_those_of_all(with_figures: tuple[str, ...], view: str, kept: list[str]) -> None:
    charts = [BODY, *(replace(PLAIN, view=name) for name in with_figures)]
    dress = Pattern("p", "Dress", views=("A", "B"))
    assert names(pieces_in(cut("", "A", "B"), dress, charts, view)) == kept


def test_a_piece_of_a_view_that_the_pattern_lacks_counts_in_all() -> None:
    dress = Pattern("p", "Dress", views=("A", "B"))
    assert names(pieces_in(cut("A", "B", "Long"), dress, [PLAIN], "A")) == ["A", "Long"]


def test_where_no_piece_is_left_out_the_very_same_pieces_come_back() -> None:
    same = cut("", "A")
    assert pieces_in(same, Pattern("p", "Dress", views=("A", "B")), [PLAIN], "A") is same
    assert pieces_in(same, Pattern("p", "Dress"), [PLAIN], "") is same
    assert pieces_in(None, Pattern("p", "Dress"), [PLAIN], "") is None


def test_a_view_without_figures_of_its_own_shares_the_chart() -> None:
    charts = [BODY, PLAIN, replace(PLAIN, view="B"), replace(BLANK, view="C")]
    assert [shares_chart(charts, view) for view in ("", "A", "B", "C")] == [False, True, False, True]


def test_the_fabric_of_the_only_view_that_shares_the_chart_serves_it() -> None:
    lines = tuple(FabricLine(long("140 cm"), long(metres), view=view) for view, metres in (("A", "3 m"), ("B", "2 m")))
    paper = replace(cut(""), fabric=lines)
    found = pieces_in(paper, Pattern("p", "Dress", views=("A", "B")), [PLAIN, replace(PLAIN, view="B")], "")
    assert found is not None
    line = line_for(found.fabric, FabricHad(long("140 cm"), long("5 m")), "38", "")
    assert line is not None
    assert line.length == long("3 m")
