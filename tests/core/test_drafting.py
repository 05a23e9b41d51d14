from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from sizekeeper.core.draft import draft_of
from sizekeeper.core.drafting import Drafting, Panel, Side, apart, axes, drafting, same_names
from sizekeeper.core.pattern import Pattern
from tests.build import chart

if TYPE_CHECKING:
    from sizekeeper.core.draft import Draft, Topic
    from sizekeeper.core.preference import Garment


def draft(title: str, sizes: str, bust: str, eased: str = "", garment: Garment = "top", **body: str) -> Draft:
    """A draft with a body chart, and finished figures at the bust."""
    finished = chart("finished", sizes, bust=eased) if eased else None
    return draft_of(Pattern(title, title, garment=garment), chart("body", sizes, "cm", bust=bust, **body), finished)


def side(*drafts: Draft, name: str = "") -> Side:
    """One pattern, or a house."""
    return Side(name or drafts[0].title, drafts)


def panel(compared: Drafting, topic: Topic, subject: str) -> Panel:
    """One plot of a comparison."""
    return next(p for p in compared.of(topic) if p.subject == subject)


ONE = side(draft("One", "38 40 42", "88, 92, 96", "94, 98, 102"))
OTHER = side(draft("Other", "8 10 12", "86, 90, 94", "96, 100, 106"))


def test_sizes_are_lined_up_by_the_body_they_are_for() -> None:
    found = panel(drafting(ONE, OTHER), "ease", "bust")
    assert [(p.label, p.x, p.cm) for p in found.left] == [("38", 88, 6), ("40", 92, 6), ("42", 96, 6)]
    assert [(p.label, p.x, p.cm) for p in found.right] == [("8", 86, 10), ("10", 90, 10), ("12", 94, 12)]


def test_the_difference_is_taken_between_the_other_sides_sizes_and_nowhere_beyond_them() -> None:
    # At 88 the other allows 10, at 92 halfway between 10 and 12; 96 lies past its last size.
    found = apart(panel(drafting(ONE, OTHER), "ease", "bust"))
    assert [a.label for a in found] == ["38", "40"]
    assert [a.cm for a in found] == pytest.approx([-4, -5])


def test_lined_up_by_name_only_sizes_of_the_same_name_lie_above_each_other() -> None:
    other = side(draft("Other", "38 40 42", "86, 90, 94", "96, 100, 106"))
    found = panel(drafting(ONE, other, ""), "ease", "bust")
    assert [(a.label, a.cm) for a in apart(found)] == [("38", -4), ("40", -4), ("42", -6)]


def test_names_are_the_same_whatever_their_capitals_and_spaces() -> None:
    small, large = side(draft("A", "s m", "84, 90")), side(draft("B", "S M", "84, 90"))
    assert drafting(small, large, "").labels == ("s", "m")


def test_a_name_only_one_run_has_goes_behind_its_neighbour() -> None:
    first, second = side(draft("A", "36 40", "84, 92")), side(draft("B", "36 38 40 42", "84, 88, 92, 96"))
    assert drafting(first, second, "").labels == ("36", "38", "40", "42")


def test_tops_are_lined_up_by_the_bust_and_trousers_by_the_hip() -> None:
    top = side(draft("T", "38 40", "88, 92", hip="94, 98"))
    bottoms = side(draft("U", "38 40", "88, 92", garment="trousers", hip="94, 98"))
    assert (axes(top, top)[0], axes(bottoms, bottoms)[0]) == ("bust", "hip")


def test_names_are_offered_only_where_both_sides_use_one() -> None:
    assert axes(ONE, OTHER) == ("bust",)
    assert axes(ONE, ONE) == ("bust", "")


def test_without_a_body_measure_in_common_names_are_all_there_is() -> None:
    blank = side(draft_of(Pattern("x", "X"), None, chart("finished", "S M", bust="90, 96")))
    assert axes(ONE, blank) == ("",)


def test_an_axis_that_cannot_be_had_gives_way_to_the_best() -> None:
    assert drafting(ONE, OTHER, "hip").axis == "bust"


def test_a_house_is_the_mean_of_its_patterns_with_the_least_and_the_greatest() -> None:
    house = side(ONE.drafts[0], draft("Two", "38 40 42", "88, 92, 96", "98, 104, 112"), name="House")
    found = panel(drafting(house, OTHER), "ease", "bust").left
    assert [(p.cm, p.low, p.high, p.patterns) for p in found] == [(8, 6, 10, 2), (9, 6, 12, 2), (11, 6, 16, 2)]


def test_each_pattern_of_a_house_counts_only_within_its_own_sizes() -> None:
    small = draft("Small", "38 40", "88, 92", "94, 98")
    large = draft("Large", "40 42", "92, 96", "102, 106")
    found = panel(drafting(side(small, large, name="House"), OTHER), "ease", "bust").left
    assert [(p.label, p.cm, p.patterns) for p in found] == [("38", 6, 1), ("40", 8, 2), ("42", 10, 1)]


def test_sizes_that_fewer_than_half_of_a_house_has_are_left_out() -> None:
    large = [draft(f"Large {i}", "40 42", "92, 96", "102, 106") for i in range(3)]
    house = side(draft("Small", "38 40", "88, 92", "94, 98"), *large, name="House")
    found = panel(drafting(house, OTHER), "ease", "bust").left
    assert [(p.label, p.cm, p.patterns) for p in found] == [("40", 9, 4), ("42", 10, 3)]


def test_sizes_of_a_house_for_the_same_body_share_a_point_with_both_names() -> None:
    found = drafting(side(draft("A", "M L", "92, 96"), draft("B", "40 42", "92, 96"), name="House"), ONE)
    assert [p.label for p in panel(found, "body_step", "bust").left] == ["L/42"]


def test_a_side_without_figures_has_no_points_and_no_difference() -> None:
    bare = side(draft("Bare", "38 40", "88, 92"))
    found = panel(drafting(ONE, bare), "ease", "bust")
    assert (found.right, apart(found)) == ((), ())


def test_a_size_says_which_is_meant_only_where_both_call_it_the_same() -> None:
    same = side(draft("Same", "38 40 42", "88, 92, 96", "95, 99, 103"))
    assert same_names(panel(drafting(ONE, same), "ease", "bust"))
    assert not same_names(panel(drafting(ONE, OTHER), "ease", "bust"))
