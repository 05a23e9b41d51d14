"""The bust adjustment against a printed pattern that gives high bust, full bust and finished bust. Inches.

Sources: Texas A&M AgriLife Extension E-372 (2006) [P]: choose by the high bust when the full bust is 2 in or more
larger; a publisher's sheet of a pajama shirt, sizes 0-20 [P], with high bust 2 less than full bust and 6.0 of ease [C].
"""

from __future__ import annotations

import pytest

from sizekeeper.core.bust import SUGGESTED_FROM_CM
from tests.build import body, chart
from tests.planned import planner

IN = 2.54
SIZES = "0 2 4 6"
HIGH = "29, 30, 31, 32"
FULL = "31, 32, 33, 34"
FINISHED = chart("finished", SIZES, "in", bust="37, 38, 39, 40")
WITH_HIGH = chart("body", SIZES, "in", high_bust=HIGH, bust=FULL)
WITHOUT = chart("body", SIZES, "in", bust=FULL)


@pytest.mark.parametrize(("full", "amount", "suggested"), [(33, 0, False), (36, 3, False), (38, 5, True)])
def test_the_shirt_is_chosen_by_the_high_bust_and_altered_where_its_own_ease_is_used_up(
    full: float, amount: float, suggested: bool
) -> None:
    # High bust 31 is size 4. Full bust 36 leaves 3 in of its ease of 6, more than the 2 in that close fit asks for; 38
    # leaves 1 in.
    found = planner(body("in", high_bust=31, bust=full), FINISHED, WITH_HIGH).bust()
    assert found is not None
    assert (found.label, found.suggested) == ("4", suggested)
    assert [found.amount_cm, found.half_cm] == pytest.approx([amount * IN, amount / 2 * IN])


@pytest.mark.parametrize("high", [29, 30.4, 30.5, 30.6, 32])
def test_a_pattern_drafted_two_inches_apart_says_the_same_without_its_high_bust_row(high: float) -> None:
    her = body("in", high_bust=high, bust=38)
    row, drafted = (planner(her, FINISHED, table, drafted_cm=2 * IN).bust() for table in (WITH_HIGH, WITHOUT))
    assert row is not None
    assert drafted is not None
    assert row.label == drafted.label
    assert row.amount_cm == pytest.approx(drafted.amount_cm)


def test_what_the_bulletin_calls_for_is_always_suggested_where_there_is_no_ease_to_spare() -> None:
    # A bust 2 in over what the size by the high bust is drafted for, in a bodice with no ease at all.
    bare = chart("finished", SIZES, "in", bust=FULL)
    found = planner(body("in", high_bust=31, bust=35), bare, WITH_HIGH).bust()
    assert found is not None
    assert found.suggested
    assert SUGGESTED_FROM_CM <= 2 * IN
