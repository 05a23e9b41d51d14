"""Every number of the ranking can be read off."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from sizekeeper import assets
from sizekeeper.core.fit import fit
from sizekeeper.core.question import Question
from sizekeeper.core.reasons import misfit_of, passed_over, reasons, standing, sum_words
from tests.build import body, chart
from tests.fits import CM, IN, blended, dress


def test_a_region_says_what_it_gives_what_is_asked_and_how_far_off_that_is() -> None:
    bust = reasons(dress(), dress().candidates[0].regions, IN)[0]
    assert (bust.name, bust.given, bust.asked, bust.off, bust.counts) == ("Bust", "2 1/8", "2", "1/8 over", "twice")


def test_a_shortage_is_called_short() -> None:
    small = dress().candidate("38")
    assert small is not None
    assert reasons(dress(), small.regions, IN)[0].off == "1 1/2 short"


def test_a_region_that_hangs_free_adds_nothing() -> None:
    hip = reasons(dress(), dress().candidates[0].regions, IN)[2]
    assert (hip.counts, hip.adds, hip.mark) == ("not", "0.00", " ×0")


def test_by_the_body_chart_the_chart_stands_against_the_body() -> None:
    found = dress(mode="body")
    bust = reasons(found, found.listed["40"], IN)[0]
    assert (bust.given, bust.asked, bust.off) == ("38", "38", "none")


def test_the_losses_add_up_to_the_misfit_of_every_candidate() -> None:
    found = dress()
    for candidate in found.candidates:
        assert misfit_of(found, candidate.regions) == pytest.approx(candidate.misfit_cm)


def test_the_misfit_is_the_root_of_the_weighted_mean_loss() -> None:
    found = dress()
    at = found.listed["40"]
    bust, waist = 40.125 * 2.54 - 96.52 - 5.1, 29.875 * 2.54 - 71.12 - 2.6
    assert misfit_of(found, at) == pytest.approx(math.sqrt((2 * bust**2 + waist**2) / 3))


def test_a_position_without_figures_has_no_misfit() -> None:
    found = dress()
    assert misfit_of(found, {}) is None


def test_the_sum_is_said_with_its_weights() -> None:
    found = dress()
    total = 2 * (40.125 * 2.54 - 96.52 - 5.1) ** 2 + (29.875 * 2.54 - 71.12 - 2.6) ** 2
    assert f"square root of {total:.2f}" in sum_words(found, found.candidates[0], CM)
    assert "divided by 3" in sum_words(found, found.candidates[0], CM)


def test_a_candidate_says_what_else_puts_it_back() -> None:
    found = dress()
    odd = replace(found.candidates[1], missing=("waist",), wearable=False, tied=True, regions=found.listed["42"])
    assert standing(found, odd, IN) == "no figure at the waist, cannot be put on, tied within the tape’s error"


def test_what_is_chosen_is_not_called_tied() -> None:
    found = dress()
    tied = replace(found, candidates=tuple(replace(c, tied=True) for c in found.candidates))
    assert standing(tied, tied.candidates[0], IN) == ""


def test_a_better_line_between_sizes_says_why_it_is_not_worth_it() -> None:
    close = chart("finished", "38 40", bust="98, 104")
    found = fit(body(bust=97.7), None, close, Question(), assets.ease_defaults())
    assert (found.candidates[0].label, found.verdict.label) == ("38 + 3/4", "40")
    assert passed_over(found, found.candidates[0], CM) == (
        "Less than 1 cm better than 40: not worth tracing a line between."
    )
    assert passed_over(found, found.candidates[-1], CM) == ""


def test_the_best_single_size_gives_way_to_a_blend() -> None:
    found = blended(dress(), {"bust": 0, "waist": 1})
    said = [passed_over(found, candidate, CM) for candidate in found.candidates]
    assert said == ["Grading between sizes fits better still.", *[""] * (len(said) - 1)]
