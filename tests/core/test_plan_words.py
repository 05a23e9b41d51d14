from __future__ import annotations

import re
from dataclasses import replace

import pytest

from sizekeeper.core.allowance import Allowances
from sizekeeper.core.plan import Plan, PlanDoubt, Plans
from sizekeeper.core.plan_words import (
    doubt_words,
    ease_words,
    headline,
    lines_words,
    mending_words,
    order_words,
    past_words,
    title,
    work_words,
)
from tests.build import body, chart
from tests.core.paper import inches, piece, pieces
from tests.fits import BODY_CHART, CM, FINISHED, IN
from tests.planned import planner

HER = body("in", bust=38, waist=28, hip=43)
SHEET = pieces(piece("Front", "bust waist", "front", on_fold=True), piece("Back", "bust waist", "back", cut=2))
STEPS = chart("finished", "38 40 42", bust="92, 98, 104", waist="72, 78, 84", hip="98, 104, 110")
HALFWAY = planner(body(bust=89.9, waist=72.4, hip=96.5), STEPS, pieces=SHEET).plans()
BUST = planner(
    body(high_bust=84, bust=95, waist=70),
    chart("finished", "8 10 12 14", bust="89, 93.1, 97, 101", waist="68.6, 72.6, 76.6, 80.6"),
    chart("body", "8 10 12 14", high_bust="80, 84, 88, 92", bust="84, 88, 92, 96"),
).plans()
DRESS = planner(HER, FINISHED, BODY_CHART, pieces=SHEET, allowances=Allowances(inches("5/8"), inches("5/8")))

LACKS = "It lacks 8 mm at the waist, more than the seam allowances give: too small cannot be mended."


def one(plans: Plans, kind: str) -> Plan:
    found = plans.of(kind)  # type: ignore[arg-type]  # from the list
    assert found is not None
    return found


def test_the_verdict_names_the_best_plan() -> None:
    assert headline(DRESS.plans(), IN) == "Cut 40 straight."


def test_with_a_bust_adjustment_the_verdict_names_the_size_and_what_to_add() -> None:
    assert headline(BUST, CM) == "Cut 10, add 7 cm at the bust."


def test_a_line_between_two_sizes_is_said_with_where_it_runs_at_each_edge() -> None:
    plan = one(HALFWAY, "between")
    assert title(plan, HALFWAY.labels, CM) == "Trace halfway between 38 and 40"
    assert lines_words(plan, CM) == (
        "The line runs outside the smaller printed one, at each edge: 8 mm at the bust, 8 mm at the waist and 8 mm at "
        "the hip."
    )


def test_on_a_printed_line_there_is_no_distance_to_say() -> None:
    assert lines_words(DRESS.plans().best, CM) == ""


@pytest.mark.parametrize(("at", "said"), [(0.0, "Cut 38, the size below"), (2.0, "Cut 42, the size above")])
def test_a_neighbouring_size_says_which_side_it_lies(at: float, said: str) -> None:
    plan = DRESS.at(at, "size_below" if at == 0 else "size_above")
    assert title(plan, DRESS.fit.labels, IN) == said


def test_a_blend_is_said_from_the_top_down() -> None:
    plan = DRESS.blended_at({"bust": 1.0, "waist": 0.0})
    assert title(plan, DRESS.fit.labels, IN) == "Grade between sizes: 40 at the bust, 38 at the waist"


def test_ease_and_band_are_said_together() -> None:
    assert ease_words(DRESS.plans().best.regions["bust"], IN) == "2 1/8 in of ease, close"
    blank = replace(DRESS.plans().best.regions["bust"], ease_cm=None, band=None)
    assert ease_words(blank, IN) == "ease unknown"


def test_what_can_be_mended_afterwards_never_promises_too_much() -> None:
    # Waist: 1 7/8 in of ease less 1.2 cm is 1.40 in, down to 1 3/8; let out 4 x 3/8 = 1 1/2.
    best = DRESS.plans().best
    assert mending_words(best.regions["waist"], IN) == "can be taken in by 1 3/8 in, let out by 1 1/2 in"


@pytest.mark.parametrize(
    ("take_in", "let_out", "said"),
    [
        (None, 3.81, "can be let out by 1 1/2 in"),
        (0.0, 0.0, "cannot be let out"),
        (2.54, 0.0, "can be taken in by 1 in, cannot be let out"),
        (None, None, ""),
    ],
)
def test_what_is_not_known_or_not_possible_is_said_or_left_out(
    take_in: float | None, let_out: float | None, said: str
) -> None:
    at = replace(DRESS.plans().best.regions["waist"], take_in_cm=take_in, let_out_cm=let_out)
    assert mending_words(at, IN) == said


def test_work_is_said_as_a_count_of_changes_and_of_pieces() -> None:
    assert work_words(DRESS.plans().best) == "only tracing"
    assert work_words(one(HALFWAY, "between"), SHEET) == "1 change, on 2 pieces: Front, Back"
    assert work_words(one(HALFWAY, "between")) == "1 change, on 2 pieces"
    assert work_words(one(BUST, "bust")) == "1 change; list the pieces to see on how many"
    two = replace(one(HALFWAY, "between"), changes=one(HALFWAY, "between").changes * 2, touched=("Front",))
    assert work_words(two, SHEET) == "2 changes, on 1 piece: Front"


@pytest.mark.parametrize(
    ("doubt", "said"),
    [
        (PlanDoubt("not_wearable"), "It cannot be worn as it is."),
        (PlanDoubt("short", "waist", 0.8), "It will not close at the waist: let out 8 mm."),
        (PlanDoubt("past_allowance", "waist", 0.8), LACKS),
        (
            PlanDoubt("past_range", label="42"),
            "A place past 42, where the chart ends, would come closer; make a toile first.",
        ),
        (PlanDoubt("extrapolated", label="42"), "Past size 42 everything is extrapolated; make a toile first."),
        (PlanDoubt("missing", "hip"), "The chart gives it no figure at the hip, so that is not judged."),
        (PlanDoubt("tight", "bust", 0.5), "It is tight at the bust, by 5 mm."),
        (PlanDoubt("interpolated", "hip"), "The figure at the hip was filled in between two printed ones."),
        (PlanDoubt("tied", "bust", 2.54, "42"), "42 instead if the bust is really 2.5 cm more."),
        (PlanDoubt("tied", "bust", -1.0, "40"), "Only right if the bust is really 1 cm less."),
    ],
)  # fmt: skip
def test_every_doubt_is_one_sentence(doubt: PlanDoubt, said: str) -> None:
    assert doubt_words(replace(DRESS.plans().best, doubts=(doubt,)), CM) == (said,)


@pytest.mark.parametrize("code", ["by_drafted_difference", "no_dart", "steep", "ease_unknown"])
def test_a_doubt_without_figures_is_a_whole_sentence(code: str) -> None:
    (said,) = doubt_words(replace(DRESS.plans().best, doubts=(PlanDoubt(code),)), CM)  # type: ignore[arg-type]  # a code
    assert re.fullmatch(r"[A-Z][^.]+\.", said)


def test_the_order_is_explained_by_how_far_off_each_is_and_what_its_changes_add() -> None:
    # Of 95 and 75: halfway is exact; 38 is short by 3 at bust, waist (2.6 asked) and hip (4.5 asked).
    said = order_words(HALFWAY, CM)
    assert said.startswith("Ordered by how far off they are, and 1 mm more for each change: ")
    assert "trace halfway between 38 and 40 (is off by 0 mm, 1 change)" in said


def test_a_plan_that_cannot_be_worn_or_judged_says_so_in_the_order() -> None:
    plan = replace(DRESS.plans().best, misfit_cm=None, wearable=False, changes=BUST.best.changes * 2)
    said = order_words(Plans((plan,), DRESS.fit.labels), CM)
    assert said.endswith("(cannot be judged, 2 changes, and cannot be worn as it is).")


def test_a_high_bust_past_the_chart_says_why_no_adjustment_is_worked_out() -> None:
    # High bust 84 and 88 in the chart: 92 is a whole size past the larger one.
    her = body(high_bust=92, bust=105)
    made, drafted = (
        chart("finished", "10 12", bust="93, 97"),
        chart("body", "10 12", high_bust="84, 88", bust="88, 92"),
    )
    bust = planner(her, made, drafted).bust()
    assert bust is not None
    assert past_words(bust).startswith("By the high bust the size lies more than half a size past 12, the largest")


def test_the_line_is_told_at_the_thigh_too() -> None:
    # A leg has four edges, as the trunk has: halfway between 60 and 64 the line is 2 / 4 cm outside.
    legs = planner(body(hip=94.5, thigh=56), chart("finished", "38 40", hip="98, 104", thigh="60, 64"))
    plan = legs.blended_at({"hip": 0.0, "thigh": 0.5})
    assert lines_words(plan, CM) == "The line runs outside the smaller printed one, at each edge: 5 mm at the thigh."
