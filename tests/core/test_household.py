from __future__ import annotations

from dataclasses import replace

import pytest

from sizekeeper import assets
from sizekeeper.core.found import find
from sizekeeper.core.household import every_pattern, household_of
from sizekeeper.core.pattern import Pattern
from sizekeeper.core.preference import EasePreference
from sizekeeper.core.sentences import chosen_candidate
from tests.build import chart
from tests.fits import BODY_CHART, FINISHED
from tests.households import DRESS, TOP, called, envelope, household, stand

ADA = called("Ada", bust="95")  # asks for 95 + 5.1, which is 0.1 more than 38 gives
BEA = called("Bea", bust="99")


def kinds(person: object, against: object = None) -> list[str]:
    return [trouble.kind for trouble in stand(person, against).troubles]  # type: ignore[arg-type]


def test_each_person_has_the_size_that_the_fit_page_gives_her() -> None:
    for standing in household(ADA, BEA).standings:
        alone = find(standing.person, DRESS, None, TOP, measures=assets.measures(), defaults=assets.ease_defaults()).fit
        assert standing.fit == alone


def test_a_row_knows_the_best_straight_size_and_the_best_line_between() -> None:
    # Bea asks for 104.1 cm: 40 is short by 0.1, which counts twice; a quarter on, at 105, 0.9 is over.
    row = stand(BEA)
    assert row.straight is not None
    assert row.between is not None
    assert (row.straight.label, row.between.label) == ("40", "40 + 1/4")
    assert [row.straight.misfit_cm, row.between.misfit_cm] == pytest.approx([0.2, 0.9])


def test_a_blend_that_wants_the_same_size_everywhere_is_none() -> None:
    two = chart("finished", "38 40 42", bust="100, 104, 108", waist="80, 84, 88")
    assert stand(called("Ada", bust="95", waist="77.4"), envelope(two)).blend is None
    blend = stand(called("Ada", bust="95", waist="85"), envelope(two)).blend
    assert blend is not None
    assert blend.positions["waist"] > blend.positions["bust"]


def test_the_misfit_of_a_row_is_that_of_what_is_to_be_cut() -> None:
    two = chart("finished", "38 40 42", bust="100, 104, 108", waist="80, 84, 88")
    row = stand(called("Ada", bust="95", waist="85"), envelope(two))
    assert row.fit is not None
    assert row.fit.verdict.kind == "blend"
    assert row.misfit_cm == row.fit.blend.misfit_cm if row.fit.blend else None
    straight = stand(ADA)
    assert straight.fit is not None
    assert (chosen := chosen_candidate(straight.fit)) is not None
    assert straight.misfit_cm == chosen.misfit_cm


def test_the_safe_margin_is_the_smallest_one_with_its_region() -> None:
    # 38 is short by 2d, 40 over by 4 - d: they change places where Ada's bust is 1.333 - 0.1 cm larger.
    margin = stand(ADA).margin
    assert margin is not None
    assert margin[0] == "bust"
    assert margin[1] == pytest.approx(4 / 3 - 0.1)


def test_the_matrix_has_a_cell_for_every_listed_size_and_region() -> None:
    row = stand(ADA)
    at = [row.at(label, "bust") for label in ("38", "40", "42")]
    assert [cell.band for cell in at if cell] == ["close", "easy", "loose"]  # 5, 9 and 13 cm of ease
    assert row.at("38", "waist") is None
    assert row.at("44", "bust") is None


def test_the_household_leads_with_the_region_that_most_choose_by() -> None:
    hips = envelope(FINISHED, BODY_CHART)
    own = replace(
        called("Cleo", bust="96", waist="72", hip="105"), preferences=(EasePreference("dress", lead="waist"),)
    )
    found = household(called("Ada", bust="96", waist="72"), called("Bea", bust="99", waist="72"), own, against=hips)
    assert (found.lead, found.measures) == ("bust", ("bust", "waist", "hip"))


def test_size_runs_that_differ_by_mode_are_shown_as_one() -> None:
    wider = chart("body", "36 38 39 40 44", bust="84, 88, 90, 92, 100")
    by_body = replace(ADA, preferences=(EasePreference("dress", mode="body"),))
    assert household(BEA, by_body, against=envelope(TOP, wider)).labels == ("36", "38", "39", "40", "44", "42")


def test_one_person_stands_to_every_pattern_in_the_order_given() -> None:
    other = envelope(pattern=Pattern("other", "Other dress"))
    rows = every_pattern(ADA, [other, envelope()], measures=assets.measures(), defaults=assets.ease_defaults())
    assert [row.pattern.title for row in rows] == ["Other dress", "Wrap dress"]


def test_standings_made_before_are_put_together_as_they_are() -> None:
    rows = [stand(ADA), stand(BEA)]
    assert household_of(envelope(), rows).standings == tuple(rows)


def test_nobody_to_compare_is_an_empty_household() -> None:
    found = household()
    assert (found.standings, found.labels, found.measures, found.lead) == ((), (), (), "")


def test_what_cannot_be_compared_says_why() -> None:
    assert kinds(ADA, envelope(None)) == ["no_chart"]
    assert kinds(called("Ada")) == ["not_measured"]
    assert kinds(called("Ada", hip="100")) == ["not_compared"]
    assert stand(called("Ada", hip="100")).misfit_cm is None


def test_what_is_too_small_everywhere_comes_first() -> None:
    first, *others = kinds(called("Ada", bust="130"))
    assert first == "too_small"
    assert {"will_not_close", "out_of_range"} <= set(others)


def test_a_region_that_will_not_close_says_by_how_much() -> None:
    two = chart("finished", "38 40", bust="100, 104", waist="70, 70")
    trouble = stand(called("Ada", bust="95", waist="72"), envelope(two)).trouble
    assert trouble is not None
    assert (trouble.kind, trouble.measures) == ("will_not_close", ("waist",))
    assert trouble.cm == pytest.approx(2)


def test_a_body_past_the_last_size_is_out_of_range() -> None:
    trouble = stand(called("Ada", bust="107")).trouble
    assert trouble is not None
    assert (trouble.kind, trouble.label) == ("out_of_range", "42")


def test_a_body_that_another_size_would_only_fit_a_little_better_is_just_past_the_chart() -> None:
    # Ada asks for 109.1 cm of the 108 that 42 has: about a quarter of a step more.
    row = stand(called("Ada", bust="104"))
    assert [(t.kind, t.label) for t in row.troubles if t.kind != "tied"] == [("just_past", "42")]
    assert not row.only_closest


def test_a_size_that_becomes_best_within_the_tape_is_a_tie() -> None:
    # Ada asks for 101.1 cm; 38 and 40 change places where she asks for 100 + 4/3, within the 1 cm of a helped reading.
    row = stand(called("Ada", bust="96"))
    assert [trouble.kind for trouble in row.troubles] == ["tied"]
    assert row.trouble is not None
    assert (row.trouble.label, row.trouble.measures) == ("40", ("bust",))
    assert row.trouble.cm == pytest.approx(4 / 3 - 1.1)


def test_the_body_chart_alone_leaves_the_ease_unknown() -> None:
    body = chart("body", "38 40", bust="95, 99")
    row = stand(ADA, envelope(None, body))
    assert row.has("ease_unknown")
    assert not stand(ADA).has("ease_unknown")


def test_a_region_of_the_chart_that_is_not_measured_is_said() -> None:
    two = chart("finished", "38 40 42", bust="100, 104, 108", waist="80, 84, 88")
    assert ("unmeasured", ("waist",)) in [(t.kind, t.measures) for t in stand(ADA, envelope(two)).troubles]


def test_each_region_is_given_at_what_is_to_be_cut() -> None:
    position, at = stand(ADA).at_cut()["bust"]
    assert position == 0
    assert at.ease_cm == pytest.approx(5)
