from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sizekeeper.core.length import Length
from sizekeeper.core.make import LengthChoice, Pinned, ToileRound, WidthChoice
from sizekeeper.core.toile import toile_state, toile_states
from sizekeeper.core.toile_change import altered_by, level_of, next_change
from tests.core.paper import cm, inches, long

INCH = 2.54
amounts = st.fractions(-10, 10, max_denominator=16)


def pinned(at: str = "waist", taken: str = "", found: str = "", **more: object) -> Pinned:
    return Pinned(at, long(taken) if taken else None, long(found) if found else None, **more)  # type: ignore[arg-type]


def rounds(*each: Pinned) -> list[ToileRound]:
    return [ToileRound(pinned=(one,)) for one in each]


def test_what_was_pinned_replaces_the_printed_ease() -> None:
    # Common practice, no source: printed 1 7/8, found 2 1/2 too big, 2 taken: 1/2 left, not -1/8.
    state = toile_state("waist", rounds(pinned(taken="2 in", found="2 1/2 in")), 1.875 * INCH, 1.2)
    assert state is not None
    assert (state.left, state.came_up) == (inches("1/2"), inches("5/8"))
    assert (state.past_tight, state.change) == (inches("0"), inches("-2"))


def test_past_the_tight_edge_it_warns_from_what_was_found() -> None:
    # Found 3 too big, 2.5 taken: half a centimetre left, the tight edge at 1.2.
    state = toile_state("waist", rounds(pinned(taken="2.5 cm", found="3 cm")), 9.0, 1.2)
    assert state is not None
    assert (state.left, state.past_tight) == (Fraction(1, 2), Fraction(7, 10))


def test_after_a_toile_the_printed_figure_warns_of_nothing() -> None:
    # Printed ease 1 less 2 taken would be -1; nobody measured the surplus, so nothing is said.
    state = toile_state("waist", rounds(pinned(taken="2 cm")), 1.0, 1.2)
    assert state is not None
    assert state.past_tight == 0
    assert (state.left, state.came_up) == (None, None)


def test_changes_add_up_over_the_rounds_and_the_last_surplus_counts() -> None:
    # First 6 found, 4 taken: 2 left. The second toile had 2.5 after all, 1 more taken: 1.5 left.
    found = rounds(pinned(taken="4 cm", found="6 cm", felt="loose"), pinned(taken="1 cm", found="2.5 cm", felt="right"))
    state = toile_state("waist", found, 5.0, 1.2)
    assert state is not None
    assert (state.taken, state.found, state.came_up) == cm(5, 6, 1)
    assert (state.left, state.felt) == (Fraction(3, 2), "right")


def test_a_round_without_a_new_surplus_goes_on_from_what_was_left() -> None:
    state = toile_state("waist", rounds(pinned(taken="4 cm", found="6 cm"), pinned(taken="-1 cm")))
    assert state is not None
    assert (state.taken, state.left) == cm(3, 3)


def test_a_surplus_first_measured_in_a_later_round_tells_that_of_the_first_cut() -> None:
    # 2 taken unmeasured, then 3 found: as cut it was 5, and the pattern said 4.
    state = toile_state("waist", rounds(pinned(taken="2 cm"), pinned(found="3 cm")), 4.0)
    assert state is not None
    assert (state.found, state.came_up, state.left) == cm(5, 1, 3)


def begun(altered: str | None, *said: Pinned) -> ToileRound:
    """A round begun with a change of the waist: `None` not noted, empty for none."""
    noted = None if altered is None else {"waist": long(altered)} if altered else {}
    return ToileRound(pinned=said, altered=noted)


@pytest.mark.parametrize(
    ("altered", "printed", "came_up"), [("2 cm", 6, -1), ("-1 cm", 3, 2), ("", 4, 1), (None, 4, 1)]
)
def test_the_printed_ease_reckons_in_what_was_changed_before_the_toile(
    altered: str | None, printed: int, came_up: int
) -> None:
    # The charts give 4 of ease; 5 was found.
    state = toile_state("waist", [begun(altered, pinned(found="5 cm"))], 4.0, 1.2)
    assert state is not None
    assert (state.printed, state.came_up, state.left) == cm(printed, came_up, 5)


def test_what_is_changed_between_two_toiles_is_not_in_what_the_first_was_compared_with() -> None:
    # 4 printed and 1 added: 5 was to be expected of the first toile, 6 was found. The 3 of the second were added later.
    found = [begun("1 cm", pinned(found="6 cm", taken="2 cm")), begun("3 cm", pinned(found="6 cm"))]
    state = toile_state("waist", found, 4.0)
    assert state is not None
    assert (state.printed, state.came_up, state.left, state.altered) == cm(5, 1, 6, 1)


def test_the_surplus_first_found_in_the_second_toile_is_compared_with_what_was_changed_before_that() -> None:
    # 1 taken unmeasured; 3 added before the second toile, of which 6 was found: without the 1, 7 against 4 and 3.
    state = toile_state("waist", [begun("", pinned(taken="1 cm")), begun("3 cm", pinned(found="6 cm"))], 4.0)
    assert state is not None
    assert (state.printed, state.found, state.came_up) == cm(7, 7, 0)


def test_a_round_that_did_not_note_what_was_changed_says_so() -> None:
    state = toile_state("waist", [begun(None, pinned(found="5 cm"))], 4.0)
    assert state is not None
    assert state.altered is None


def test_the_changes_of_a_worksheet_are_added_up_by_measure_without_those_of_toiles() -> None:
    choices = [
        WidthChoice("waist", long("1 in")),
        WidthChoice("waist", long("1 cm"), reason="hers"),
        WidthChoice("waist", long("-5 cm"), reason="toile"),
        WidthChoice("sleeve", long("2 cm")),
        WidthChoice("hip", long("2 cm")),
        WidthChoice("hip", long("-2 cm"), reason="back again"),
    ]
    # 2.54 and 1 at the waist; the sleeve's level is the upper arm's measure; nothing is left at the hip.
    assert {at: by.exact_cm for at, by in altered_by(choices, "in").items()} == {
        "waist": Fraction(354, 100),
        "upper_arm": Fraction(2),
    }


def test_too_small_is_a_negative_surplus_that_letting_out_mends() -> None:
    state = toile_state("bust", rounds(pinned("bust", taken="-3 cm", found="-1 cm")))
    assert state is not None
    assert (state.left, state.change) == cm(2, 3)


def test_a_place_that_no_round_speaks_of_has_no_state() -> None:
    assert toile_state("hip", rounds(pinned())) is None


def test_every_place_spoken_of_has_its_state() -> None:
    found = toile_states(
        rounds(pinned("waist", "1 cm", "2 cm"), pinned("bust", felt="right")), {"waist": 2.0}, {"bust": 1}
    )
    assert [(s.at, s.left, s.came_up) for s in found] == [("waist", 1, 0), ("bust", None, None)]


@given(st.lists(amounts, min_size=1, max_size=5), amounts)
def test_ease_left_is_the_surplus_found_less_all_that_was_taken(taken: list[Fraction], surplus: Fraction) -> None:
    each = [
        Pinned("waist", Length(amount, "cm"), Length(surplus, "cm") if not at else None)
        for at, amount in enumerate(taken)
    ]
    state = toile_state("waist", rounds(*each))
    assert state is not None
    assert state.left == surplus - sum(taken)
    assert state.taken == sum(taken)


def test_the_next_change_takes_in_what_was_pinned() -> None:
    state = toile_state("waist", rounds(pinned(taken="2 in")))
    assert state is not None
    assert next_change(state, "in") == WidthChoice("waist", Length(Fraction(-2), "in"), reason="toile")


def test_a_pinned_upper_arm_changes_the_sleeve() -> None:
    state = toile_state("upper_arm", rounds(pinned("upper_arm", taken="-2 cm")))
    assert state is not None
    assert next_change(state, "cm") == WidthChoice("sleeve", Length(Fraction(2), "cm"), reason="toile")


def test_a_pinned_length_changes_its_chain() -> None:
    state = toile_state("back_waist", rounds(pinned("back_waist", taken="1 cm")))
    assert state is not None
    assert next_change(state, "cm") == LengthChoice("back_waist", amount=Length(Fraction(-1), "cm"))


@pytest.mark.parametrize(("at", "taken"), [("waist", ""), ("across_back", "1 cm")])
def test_nothing_taken_or_no_level_of_the_pieces_is_no_change(at: str, taken: str) -> None:
    state = toile_state(at, rounds(pinned(at, taken, felt="tight")))
    assert state is not None
    assert next_change(state, "cm") is None


@pytest.mark.parametrize(("measure", "level"), [("bust", "bust"), ("upper_arm", "sleeve"), ("across_back", None)])
def test_a_measure_is_taken_on_the_pieces_at_its_level(measure: str, level: str | None) -> None:
    assert level_of(measure) == level
