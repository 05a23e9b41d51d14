from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sizekeeper.core.widths import MILLIMETRES, SIXTEENTHS, gather_after, gather_ratio, spread
from sizekeeper.errors import PlanError
from tests.core.paper import cm, inches, piece

if TYPE_CHECKING:
    from sizekeeper.core.notation import Notation
    from sizekeeper.core.piece import Piece

FRONT = piece("Front", "waist", "front", on_fold=True)
BACK = piece("Back", "waist", "back", cut=2)
PANEL = piece("Panel", "waist", "side", cut=2)
HALVES = [FRONT, BACK]

amounts = st.fractions(-40, 40, max_denominator=64)
counts = st.tuples(st.integers(1, 4), st.booleans(), st.integers(1, 3))
lists = st.lists(counts, min_size=1, max_size=6)


def cut(found: list[tuple[int, bool, int]]) -> tuple[list[Piece], dict[str, int]]:
    listed = [
        piece(str(at), "waist", "front", cut=times, on_fold=fold) for at, (times, fold, _) in enumerate(found, start=1)
    ]
    return listed, {str(at): edges for at, (_, _, edges) in enumerate(found, start=1)}


@given(amounts, lists, st.sampled_from([MILLIMETRES, SIXTEENTHS]))
def test_the_shares_add_up_to_the_change_exactly(
    amount: Fraction, found: list[tuple[int, bool, int]], step: Notation
) -> None:
    listed, edges = cut(found)
    shares = spread(amount, listed, "waist", notation=step, edges=edges)
    assert sum(share.per_edge * share.edges * share.times for share in shares) == amount
    assert [(s.times, s.edges) for s in shares] == [(t * (2 if fold else 1), e) for t, fold, e in found]


@given(amounts, lists, st.lists(st.fractions(1, 60, max_denominator=16), min_size=6, max_size=6))
def test_shares_by_width_add_up_to_the_change_exactly(
    amount: Fraction, found: list[tuple[int, bool, int]], nets: list[Fraction]
) -> None:
    listed, edges = cut(found)
    widths = {p.id: net for p, net in zip(listed, nets, strict=False)}
    shares = spread(amount, listed, "waist", edges=edges, sharing="by_width", net_widths=widths)
    assert sum(share.around for share in shares) == amount


@given(amounts, lists)
def test_widening_and_then_narrowing_returns(amount: Fraction, found: list[tuple[int, bool, int]]) -> None:
    listed, edges = cut(found)
    out, back = (spread(sign * amount, listed, "waist", edges=edges) for sign in (1, -1))
    assert [a.per_edge + b.per_edge for a, b in zip(out, back, strict=True)] == [0] * len(listed)


@given(amounts)
def test_mirrored_pieces_take_the_same_but_for_the_last_ones_rest(amount: Fraction) -> None:
    left, right = piece("Left", "waist", "front"), piece("Right", "waist", "front")
    shares = spread(amount, [left, right], "waist")
    assert abs(shares[0].per_edge - shares[1].per_edge) <= Fraction(1, 10)


def test_every_share_but_the_last_is_rounded_to_what_can_be_drawn() -> None:
    # 1 cm over three pieces cut once: 3 mm, 3 mm, and the rest of 4 mm.
    listed = [piece(name, "waist", "front") for name in "abc"]
    assert [s.per_edge for s in spread(Fraction(1), listed, "waist")] == [
        Fraction(3, 10),
        Fraction(3, 10),
        Fraction(2, 5),
    ]


def test_inches_are_rounded_to_the_sixteenth() -> None:
    # 1 in over three: 5/16, 5/16 and 6/16.
    listed = [piece(name, "waist", "front") for name in "abc"]
    shares = spread(inches("1"), listed, "waist", notation=SIXTEENTHS)
    assert [s.per_edge for s in shares] == [inches("5/16"), inches("5/16"), inches("6/16")]


def test_by_width_the_wider_piece_takes_more() -> None:
    # Front 30 and back 20 wide, each twice round: of 10 cm the front takes 3 on the half piece, the back 2.
    shares = spread(
        Fraction(10), HALVES, "waist", sharing="by_width", net_widths={"Front": Fraction(30), "Back": Fraction(20)}
    )
    assert [s.on_piece for s in shares] == [3, 2]


def test_a_panel_changed_at_both_its_edges_takes_twice_as_much() -> None:
    # 8 cm over front (2 edges round), back (2) and panel (4): 1 cm at each of the 8 edges.
    shares = spread(Fraction(8), [FRONT, BACK, PANEL], "waist", edges={"Panel": 2})
    assert [(s.per_edge, s.on_piece, s.around) for s in shares] == [cm(1, 1, 2), cm(1, 1, 2), cm(1, 2, 4)]


def test_nothing_ticked_is_said_in_words() -> None:
    with pytest.raises(PlanError, match="Tick at least one piece"):
        spread(Fraction(1), [], "waist")


def test_a_lining_can_only_follow() -> None:
    with pytest.raises(PlanError, match="“Lining” does not go round the body"):
        spread(Fraction(1), [piece("Lining", "waist", "front", "lining", cut=2)], "waist")


def test_sharing_by_width_asks_for_the_width_that_is_missing() -> None:
    with pytest.raises(PlanError, match="Measure the width of “Back”"):
        spread(Fraction(1), HALVES, "waist", sharing="by_width", net_widths={"Front": Fraction(30)})


def test_a_piece_without_an_edge_to_change_is_refused() -> None:
    with pytest.raises(PlanError, match="“Front” needs at least one edge"):
        spread(Fraction(1), HALVES, "waist", edges={"Front": 0})


def test_a_gathered_edge_takes_up_a_change_of_its_seam() -> None:
    # 120 gathered onto 80 is 1 1/2; onto 75 it is 1 3/5.
    assert gather_after(Fraction(120), Fraction(80), Fraction(-5)) == (Fraction(3, 2), Fraction(8, 5))


def test_a_gathered_edge_that_itself_becomes_longer_is_fuller() -> None:
    # 120 on 80 is 1 1/2; 140 on 80 is 1 3/4, on 100 it is 1 2/5.
    assert gather_after(Fraction(120), Fraction(80), Fraction(0), Fraction(20)) == (Fraction(3, 2), Fraction(7, 4))
    assert gather_after(Fraction(120), Fraction(80), Fraction(20), Fraction(20)) == (Fraction(3, 2), Fraction(7, 5))


def test_more_than_all_of_a_gathered_edge_cannot_be_taken_off() -> None:
    with pytest.raises(PlanError, match="gathered edge has no length left"):
        gather_after(Fraction(120), Fraction(80), Fraction(0), Fraction(-120))


def test_gathers_need_a_seam_to_join() -> None:
    with pytest.raises(PlanError, match="no length left"):
        gather_ratio(Fraction(120), Fraction(0))
