from __future__ import annotations

import itertools
import math
from dataclasses import replace
from typing import TYPE_CHECKING

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sizekeeper.core.preference import EasePreference, RegionPreference
from sizekeeper.core.sharing import share
from tests.build import chart
from tests.households import called, envelope, household

if TYPE_CHECKING:
    from sizekeeper.core.household import Household
    from sizekeeper.core.person import Person
    from sizekeeper.core.sharing import Choice, Sharing

# What they ask for lies 5.1 cm above the bust: 100.1, 104.1 and 110.1 cm.
ADA, BEA, CLEO = called("Ada", bust="95"), called("Bea", bust="99"), called("Cleo", bust="105")
TWO = chart("finished", "38 40 42", bust="100, 104, 108", waist="80, 84, 88")


def shared(*people: Person, between: bool = True) -> Sharing:
    found = household(*people)
    return share(found.standings, found.labels, between=between)


def who(choice: Choice) -> dict[str, list[str]]:
    return {s.line.label: [p.standing.person.name for p in s.people] for s in choice.lines}


def test_each_takes_what_her_verdict_says() -> None:
    own = shared(CLEO, BEA, ADA, called("Dora", bust="95.2")).own
    assert [(line.label, [w.standing.person.name for w in line.wearers]) for line in own] == [
        ("38", ["Ada", "Dora"]), ("40", ["Bea"]), ("42", ["Cleo"]),
    ]  # fmt: skip


def test_somebody_who_grades_between_sizes_takes_a_line_at_each_level() -> None:
    # Asked for are 100.1 and 87.6 cm. 38 and 42 lose 2 x 0.2² + 0.4², and 1.5 x 2² for two sizes apart; all else more.
    found = household(called("Ada", bust="95", waist="85"), against=envelope(TWO))
    lines = share(found.standings, found.labels).own
    assert [(line.label, line.wearers[0].measures) for line in lines] == [("38", ("bust",)), ("42", ("waist",))]


def test_two_people_share_the_line_where_both_together_are_least_off() -> None:
    # At 103 cm Ada is 2.9 over and Bea 1.1 short, which counts twice: root of (8.41 + 4.84) / 2. At 102 and 104 worse.
    first = shared(ADA, BEA).choices[0]
    assert who(first) == {"38 + 3/4": ["Ada", "Bea"]}
    assert first.misfit_cm == pytest.approx(math.sqrt(13.25 / 2))


def test_lines_between_can_be_left_out() -> None:
    # At 104 cm Ada is 3.9 over, Bea 0.1 short; at 100 Ada is 0.1 short, Bea 4.1.
    first = shared(ADA, BEA, between=False).choices[0]
    assert who(first) == {"40": ["Ada", "Bea"]}
    assert first.misfit_cm == pytest.approx(math.sqrt((3.9**2 + 0.2**2) / 2))


def test_choices_end_where_everybody_has_her_best_single_line() -> None:
    choices = shared(ADA, BEA, CLEO).choices
    assert [choice.count for choice in choices] == [1, 2, 3]
    assert who(choices[-1]) == {"38": ["Ada"], "40": ["Bea"], "42": ["Cleo"]}
    assert len(shared(ADA, called("Dora", bust="95")).choices) == 1


def test_a_person_on_a_shared_line_knows_what_her_own_would_be() -> None:
    ada, bea = shared(ADA, BEA).choices[0].lines[0].people
    assert [ada.misfit_cm, ada.own_cm] == pytest.approx([2.9, 0.2])
    assert [bea.misfit_cm, bea.own_cm] == pytest.approx([2.2, 0.2])


def test_what_is_over_is_taken_in_and_what_is_short_let_out() -> None:
    ada, bea = shared(ADA, BEA).choices[0].lines[0].people
    assert [alteration.cm for alteration in (*ada.alterations, *bea.alterations)] == pytest.approx([2.9, -1.1])


def test_less_than_a_centimetre_all_round_is_left_as_it_is() -> None:
    people = shared(called("Ada", bust="99.5"), BEA, between=False).choices[0].lines[0].people
    assert [person.alterations for person in people] == [(), ()]


def test_what_hangs_free_is_not_altered_and_what_gathers_is_not_taken_in() -> None:
    def at(role: str, waist: str) -> list[str]:
        prefers = EasePreference("dress", regions={"waist": RegionPreference(role=role)})  # type: ignore[arg-type]
        her = called("Ada", bust="95", waist=waist)
        found = household(replace(her, preferences=(prefers,)), against=envelope(TWO))
        line = share(found.standings, found.labels, between=False).choices[0].lines[0]
        return [alteration.measure for alteration in line.people[0].alterations]

    assert at("free", "70") == []
    assert at("adjustable", "70") == []
    assert at("counted", "70") == ["waist"]
    assert at("adjustable", "79") == ["waist"]


def test_nobody_is_given_a_line_that_does_not_close() -> None:
    # 104 cm round the garment do not go round a bust of 105.
    assert who(shared(BEA, CLEO, between=False).choices[0]) == {"42": ["Bea", "Cleo"]}


def test_who_fits_no_size_or_cannot_be_compared_is_left_out() -> None:
    found = shared(ADA, called("Big", bust="130"), called("Unmeasured"))
    assert [standing.person.name for standing in found.left_out] == ["Big", "Unmeasured"]
    assert [line.label for line in found.own] == ["38"]


def test_without_anybody_there_is_nothing_to_trace() -> None:
    found = shared()
    assert (found.own, found.choices, found.groups) == ((), (), ())


def test_the_pair_that_can_share_with_the_least_misfit_is_found() -> None:
    pair, all_three = shared(ADA, BEA, CLEO).groups
    assert who(pair) == {"38 + 3/4": ["Ada", "Bea"]}
    assert sum(len(line.people) for line in all_three.lines) == 3


BUSTS = st.lists(st.integers(88, 112), min_size=1, max_size=4)
WAISTS = st.lists(st.integers(66, 92), min_size=4, max_size=4)
UNEVEN = chart("finished", "36 38 40 42", bust="96, 100, 106, 108", waist="80, 83, 84, 91")


def people_of(busts: list[int], waists: list[int]) -> Household:
    pairs = zip(busts, waists, strict=False)
    people = [called(f"P{i}", bust=str(bust), waist=str(waist)) for i, (bust, waist) in enumerate(pairs)]
    return household(*people, against=envelope(UNEVEN))


def table(found: Household) -> list[dict[str, float]]:
    """What each line costs each person, read off the candidates."""
    fits = [standing.fit for standing in found.standings if standing.fit]
    return [
        worn
        for fit in fits
        if (worn := {c.label: c.misfit_cm**2 for c in fit.candidates if c.wearable and c.misfit_cm is not None})
    ]


def least(rows: list[dict[str, float]], lines: tuple[str, ...]) -> float:
    return sum(min(row.get(line, math.inf) for line in lines) for row in rows)


@given(BUSTS, WAISTS)
def test_no_other_lines_serve_everybody_better(busts: list[int], waists: list[int]) -> None:
    found = people_of(busts, waists)
    rows = table(found)
    labels = sorted({label for row in rows for label in row})
    for choice in share(found.standings, found.labels).choices:
        best = min(least(rows, lines) for lines in itertools.combinations(labels, choice.count))
        assert choice.misfit_cm == pytest.approx(math.sqrt(best / len(rows)))


@given(BUSTS, WAISTS)
def test_no_other_group_shares_a_line_better(busts: list[int], waists: list[int]) -> None:
    found = people_of(busts, waists)
    rows = table(found)
    labels = sorted({label for row in rows for label in row})
    for size, group in enumerate(share(found.standings, found.labels).groups, start=2):
        tried = itertools.product(itertools.combinations(rows, size), labels)
        best = min(least(list(some), (label,)) for some, label in tried)
        assert group.misfit_cm == pytest.approx(math.sqrt(best / size))
