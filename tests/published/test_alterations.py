"""Alterations worked by hand in extension bulletins and in the trade, worked again here. Inches.

Sources as kept in the project's reference notes: [P] read in the publisher's page, [S] second-hand, [C] computed from
the figures given.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from sizekeeper.core.align import lay_out
from sizekeeper.core.allowance import EDGES_AT
from sizekeeper.core.beyond import beyond_range
from sizekeeper.core.flat import girth
from sizekeeper.core.knit import knit_check, most_negative_ease, needed_stretch, stretch_of
from sizekeeper.core.length_plan import Cut, change_of
from sizekeeper.core.lengths import chain_length, length_change
from sizekeeper.core.make import LengthChoice, Pinned, StretchTest, ToileRound
from sizekeeper.core.piece import Pieces
from sizekeeper.core.sleeve import arm_change
from sizekeeper.core.toile import toile_state
from sizekeeper.core.trousers import CROTCH_DEPTH_EASE, CROTCH_LENGTH_EASE, THIGH_EASE
from sizekeeper.core.widths import SIXTEENTHS, spread
from tests.build import body, chart
from tests.core.paper import across, along, inches, long, piece
from tests.planned import planner

IN = 2.54


def test_a_change_at_the_side_seams_is_a_quarter_at_each_of_the_four_edges() -> None:
    # Source: New Mexico State University Extension C-227 [P]: front and back side seams are 4 edges, a quarter each.
    front, back = piece("Front", "hip", "skirt_front", on_fold=True), piece("Back", "hip", "skirt_back", cut=2)
    assert [s.per_edge for s in spread(inches("2"), [front, back], "hip", notation=SIXTEENTHS)] == [inches("1/2")] * 2
    assert EDGES_AT["hip"] == 4


def test_a_leg_is_changed_by_a_quarter_at_inseam_and_outseam_of_front_and_back() -> None:
    # Source: the same bulletin [P], on leg girth.
    legs = [piece("Front", "thigh", "leg_front", cut=2), piece("Back", "thigh", "leg_back", cut=2)]
    shares = spread(inches("1"), legs, "thigh", notation=SIXTEENTHS, edges={"Front": 2, "Back": 2})
    assert [s.per_edge for s in shares] == [inches("1/4")] * 2
    assert EDGES_AT["thigh"] == 4


def test_a_waist_of_34_in_a_pattern_for_30_gets_two_inches_a_side() -> None:
    # Source: a pattern company's handbook of 1927 [S]: waist 34, hip 44; the pattern for hip 44 has waist 30.
    front, back = (piece(n, "waist", "skirt_front", on_fold=True) for n in ("Front", "Back"))
    at_front, at_back = spread(inches("34") - inches("30"), [front, back], "waist", notation=SIXTEENTHS)
    assert at_front.per_edge + at_back.per_edge == inches("2")


def test_a_piece_on_the_fold_is_doubled_and_darts_are_closed_before_a_girth_is_known() -> None:
    # Source: Texas A&M AgriLife Extension E-372 (2006) [P], seam line to seam line; figures of our own [C]:
    # front 8 3/4 less one 5/8 allowance and a 1 in dart is 7 1/8, doubled 14 1/4; back 8 1/4 less two allowances and a
    # 3/4 in dart is 6 1/4, cut twice 12 1/2.
    front = piece("Front", "waist", "front", on_fold=True, across=across("waist", "8 3/4 in", 1, darts=long("1 in")))
    back = piece("Back", "waist", "back", cut=2, across=across("waist", "8 1/4 in", 2, darts=long("3/4 in")))
    assert girth([front, back], "waist", inches("5/8")).cm == inches("26 3/4")


def test_trousers_are_altered_depth_first_with_the_ease_of_the_bulletin() -> None:
    # Source: C-227 [P]: crotch depth 1/2-3/4, crotch length 1/2-3/4 in front and again at the back, thigh 1.
    assert inches("1/2") <= CROTCH_DEPTH_EASE <= inches("3/4")
    assert inches("1") <= CROTCH_LENGTH_EASE <= inches("1 1/2")
    assert inches("1") == THIGH_EASE


@pytest.mark.parametrize(("ease", "change"), [("1/2", "1/4"), ("2", "1 3/4")])
def test_an_upper_arm_gets_what_it_lacks_of_the_ease_of_the_bulletin(ease: str, change: str) -> None:
    # Source: NMSU C-228, Table 1 [P]: upper arm 1/2 to 2 in. Sleeve 12 1/4 on an arm of 12 [C].
    assert arm_change(inches("12 1/4"), inches("12"), inches(ease)).change == inches(change)


def test_the_body_and_its_ease_make_the_pattern() -> None:
    # Source: C-228, footnote [P]: body 36 + ease 2.5 = pattern 38.5. A pattern of 37 lacks 1 1/2 [C].
    change = length_change("skirt", inches("36"), inches("2.5"), finished_cm=inches("37"))
    assert change is not None
    assert (change.wanted, change.change) == (inches("38.5"), inches("1 1/2"))


def test_a_back_of_seventeen_inches_lengthens_a_bodice_and_band_by_two_and_an_eighth() -> None:
    # Common practice, no source: 13 1/8 and 1 3/4 net of 5/8 allowances, one above and one below each, make 14 7/8.
    back = piece("Back", "neck bust waist", "back", cut=2, along=along("back_waist", "14 3/8 in", 2))
    band = piece("Band", "waist", "band", on_fold=True, along=along("back_waist", "3 in", 2))
    assert chain_length("back_waist", [back, band], inches("5/8")) == inches("14 7/8")
    cut = Cut(
        body("in", back_waist_length=17),
        lay_out(None, chart("finished", "38", bust="96"), by_body=False),
        0.0,
        Pieces("s", "p", (back, band)),
        inches("5/8"),
    )
    change = change_of(LengthChoice("back_waist"), cut)
    assert change is not None
    assert change.change == inches("2 1/8")


@pytest.mark.parametrize("size", [0, 1, 2, 3])
def test_a_misses_pattern_is_shortened_by_an_inch_for_a_petite_back(size: int) -> None:
    # Source: the US trade's chart of 1967/68, misses and miss petite 6 to 12 [S]: the backs differ by an inch.
    misses, petite = ("15.5", "15.75", "16", "16.25"), ("14.5", "14.75", "15", "15.25")
    run = lay_out(chart("body", "6 8 10 12", "in", back_waist_length=", ".join(misses)), None, by_body=True)
    cut = Cut(body("in", back_waist_length=petite[size]), run, float(size), Pieces("s", "p"))
    change = change_of(LengthChoice("back_waist"), cut)
    assert change is not None
    assert (change.change, change.pleat) == (inches("-1"), inches("1/2"))


def test_two_inches_off_a_waistband_are_half_an_inch_off_each_half_piece() -> None:
    # Common practice, no source: the front is cut twice, the back once on the fold.
    front = piece("Waistband front", "waist", "waistband", cut=2)
    back = piece("Waistband back", "waist", "waistband", on_fold=True)
    shares = spread(inches("-2"), [front, back], "waist", notation=SIXTEENTHS)
    assert [s.on_piece for s in shares] == [inches("-1/2")] * 2


def test_what_a_toile_showed_replaces_what_was_printed() -> None:
    # Common practice, no source: printed ease 1 7/8, found 2 1/2 too big, 2 taken: 1/2 left, not -1/8.
    found = ToileRound(pinned=(Pinned("waist", long("2 in"), long("2 1/2 in")),))
    state = toile_state("waist", [found], 1.875 * IN, 0.0)
    assert state is not None
    assert (state.left, state.came_up, state.past_tight) == (inches("1/2"), inches("5/8"), inches("0"))


@pytest.mark.parametrize(("rest", "stretched", "share"), [("4 in", "5 in", "1/4"), ("10 in", "14 in", "2/5")])
def test_stretch_is_counted_as_the_trade_counts_it(rest: str, stretched: str, share: str) -> None:
    # Source: several sewing tutorials [P]: 4 to 5 is 25 %, 10 to 14 is 40 %.
    assert stretch_of(StretchTest(long(rest), long(stretched))) == Fraction(share)


def test_a_fabric_that_reaches_one_and_a_half_times_its_girth_can_be_a_third_smaller() -> None:
    # Source: the same [P]: ratio 1.5 is at most 33.3 % smaller, 36 to 24.
    assert 36 * (1 - most_negative_ease(0.5)) == pytest.approx(24)


KNIT_WAIST = list(zip((23.5, 25.25, 26.75, 28.5, 30), (19, 20.25, 21.5, 22.75, 24), strict=True))
KNIT_HIP = list(zip((33.75, 35.5, 37, 38.5, 40.25), (33, 34.5, 36, 37.5, 39.25), strict=True))


@pytest.mark.parametrize(("waist", "hip"), list(zip(KNIT_WAIST, KNIT_HIP, strict=True)))
def test_the_knit_skirt_goes_round_its_bodies_with_the_stretch_it_asks_for(
    waist: tuple[float, float], hip: tuple[float, float]
) -> None:
    # Source: an elastic-waist knit skirt, sizes 34-42 [P], which asks for 40 % stretch.
    check = knit_check(0.4, 0.4, {"waist": waist, "hip": hip})
    assert [region.enough for region in check.regions] == [True, True]
    assert not check.short_of_pattern
    assert needed_stretch(*waist) == pytest.approx(waist[0] / waist[1] - 1)
    assert not knit_check(0.2, 0.4, {"waist": waist}).regions[0].enough


def test_past_the_last_size_of_the_loose_jacket_each_edge_moves_half_an_inch() -> None:
    # Source: printed sheet of a loose jacket, 14 and 16 [P]: finished bust 42 1/4 and 44 1/4, hip 45 1/2 and 47 1/2;
    # another 2 in go over four edges, 1/2 in at each [C].
    finished = chart("finished", "14 16", "in", bust="42.25, 44.25", hip="45.5, 47.5")
    found = beyond_range(planner(body("in", bust=40, hip=42), finished, garment="jacket").comparison, 2.0)
    assert found is not None
    assert list(found.edge_cm.values()) == pytest.approx([0.5 * IN] * 2)
