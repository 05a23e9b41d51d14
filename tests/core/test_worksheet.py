from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import TYPE_CHECKING

from sizekeeper.core.lengths import own_change, place_change
from sizekeeper.core.make import WidthChoice
from sizekeeper.core.trousers import SeatChanges
from sizekeeper.core.width_plan import plan_width
from sizekeeper.core.worksheet import ticked, worksheet
from tests.build import body, chart
from tests.core.paper import across, cm, long, piece, pieces
from tests.planned import planner

if TYPE_CHECKING:
    from sizekeeper.core.piece import Pieces
    from sizekeeper.core.width_plan import WidthPlan

FRONT = piece("Front", "neck bust waist", "front", on_fold=True, line=True, dart=True)
BACK = piece("Back", "neck bust waist", "back", cut=2, line=True)
SKIRT = piece("Skirt", "waist hip hem", "skirt_back", cut=2, line=True)
SKIRT_FRONT = piece("Skirt front", "waist hip hem", "skirt_front", on_fold=True)
FACING = piece("Facing", "bust waist", "facing", cut=2)
SHEET = pieces(FACING, FRONT, BACK, SKIRT, SKIRT_FRONT)
PLANS = planner(
    body(high_bust=84, bust=95),
    chart("finished", "8 10", bust="89, 93.1"),
    chart("body", "8 10", high_bust="80, 84", bust="84, 88"),
    pieces=SHEET,
)
LENGTHS = [place_change(own_change(chain, Fraction(-2)), SHEET.pieces) for chain in ("skirt", "back_waist")]
WIDTHS = [plan_width(WidthChoice(level, long("4 cm")), SHEET, None) for level in ("hip", "waist")]


def test_lengths_come_first_then_widths_from_the_top_down_then_the_pieces_that_match() -> None:
    sheet = worksheet(PLANS.plans().of("bust"), SHEET, LENGTHS, WIDTHS)
    assert [(s.part, s.kind, s.piece) for s in sheet.steps] == [
        ("length", "length", "Back"),
        ("length", "length", "Front"),
        ("length", "length", "Skirt"),
        ("length", "length", "Skirt front"),
        ("width", "bust", "Front"),
        ("width", "width", "Front"),
        ("width", "width", "Back"),
        ("width", "width", "Skirt"),
        ("width", "width", "Skirt front"),
        ("match", "bust", "Facing"),
        ("match", "length", "Facing"),
        ("match", "follow", "Facing"),
        ("match", "follow", "Skirt"),
        ("match", "follow", "Skirt front"),
    ]


def test_a_step_says_what_each_edge_gets_and_how_deep_a_pleat_to_fold() -> None:
    first = worksheet(None, SHEET, LENGTHS, WIDTHS).steps[0]
    assert (first.amount, first.pleat) == cm(-2, 1)
    assert first.where == ("bust", "waist")
    width = next(s for s in worksheet(None, SHEET, LENGTHS, WIDTHS).steps if s.kind == "width")
    assert (width.amount, width.per_edge, width.pleat) == cm(1, 1, 0)


def test_the_bust_adjustment_goes_half_into_the_piece_on_the_fold() -> None:
    bust = next(s for s in worksheet(PLANS.plans().of("bust"), SHEET).steps if s.piece == "Front")
    assert (bust.kind, bust.amount) == ("bust", Fraction(7, 2))


def test_lines_to_draw_come_before_all_else() -> None:
    sheet = worksheet(PLANS.at(0.5), SHEET, LENGTHS)
    assert [s.piece for s in sheet.steps if s.part == "trace"] == [p.id for p in SHEET.pieces]
    assert sheet.steps[0].part == "trace"


def test_a_tick_is_kept_until_the_amount_is_another_one() -> None:
    sheet = worksheet(None, SHEET, LENGTHS[1:])
    first = sheet.steps[0]
    ticks = ticked((), first, done=True)
    again = worksheet(None, SHEET, LENGTHS[1:], ticks=ticks)
    assert (again.done(first), again.left) == (True, len(again.steps) - 1)
    other = worksheet(None, SHEET, [place_change(own_change("back_waist", Fraction(-3)), SHEET.pieces)], ticks=ticks)
    assert other.left == len(other.steps)
    assert ticked(ticks, first, done=False) == ()
    assert ticked(ticks, first, done=True) == ticks


def test_every_step_has_a_tick_of_its_own() -> None:
    sheet = worksheet(PLANS.plans().of("bust"), SHEET, LENGTHS, WIDTHS)
    assert len({s.key for s in sheet.steps}) == len(sheet.steps)


def test_two_like_changes_at_one_level_have_ticks_of_their_own() -> None:
    band = pieces(piece("Band", "waist", "band", on_fold=True), piece("Band lining", "waist", "band", "lining", cut=1))
    own = WidthChoice("waist", long("4 cm"))
    widths = [plan_width(choice, band, None) for choice in (own, replace(own, reason="toile"))]
    lengths = [place_change(own_change(chain, Fraction(2)), band.pieces) for chain in ("back_waist", "skirt")]
    keys = [step.key for step in worksheet(None, band, lengths, widths).steps]
    assert len(keys) == len(set(keys)) == 8  # two pieces, twice longer, and twice wider or following
    first = worksheet(None, band, lengths, widths).steps[0]
    assert worksheet(None, band, lengths, widths, ticks=ticked((), first, done=True)).left == 7


def test_what_goes_into_gathers_is_followed_by_nothing_that_joins_their_seam() -> None:
    # 12 over front, back and a gathered skirt, each twice round: 4 each. The seam gains 8, the band follows by 8.
    full = piece("Full", "waist", "skirt_front", cut=2, across=across("waist", "60 cm", gathered=True))
    band = piece("Band", "waist", "waistband", on_fold=True)
    lining = piece("Full lining", "waist", "skirt_front", "lining", cut=2)
    sheet = pieces(FRONT, BACK, full, band, lining)
    both = plan_width(WidthChoice("waist", long("12 cm"), pieces=("Front", "Back", "Full")), sheet, None)
    alone = plan_width(WidthChoice("waist", long("12 cm"), pieces=("Full",)), sheet, None)
    assert followed(both, sheet)["Band"] == Fraction(8)
    assert followed(alone, sheet) == {"Full lining": Fraction(12)}


def followed(plan: WidthPlan, sheet: Pieces) -> dict[str, Fraction]:
    return {step.piece: step.amount for step in worksheet(None, sheet, (), [plan]).steps if step.kind == "follow"}


def test_the_steps_of_a_piece_can_be_looked_at_alone() -> None:
    sheet = worksheet(None, SHEET, LENGTHS, WIDTHS)
    assert [s.kind for s in sheet.of("Back")] == ["length", "width"]


def test_the_crotch_points_of_trousers_come_after_the_depth_and_before_the_thigh() -> None:
    leg = [piece(n, "waist hip thigh hem", r, cut=2) for n, r in (("Leg front", "leg_front"), ("Leg back", "leg_back"))]  # type: ignore[arg-type]  # roles
    legs = pieces(*leg)
    seat = SeatChanges(Fraction(1), Fraction(2), Fraction(3), Fraction(4))
    depth = place_change(own_change("rise", Fraction(1)), legs.pieces)
    thigh = plan_width(WidthChoice("thigh", long("4 cm")), legs, None)
    sheet = worksheet(None, legs, [depth], [thigh], seat=seat)
    assert [f"{s.kind}: {s.piece} {s.amount}" for s in sheet.steps] == [
        "length: Leg back 1",
        "length: Leg front 1",
        "crotch: Leg front 2",
        "crotch: Leg back 3",
        "width: Leg front 2",
        "width: Leg back 2",
    ]
    assert [s.kind for s in worksheet(None, legs, seat=replace(seat, front=None, back=Fraction(0))).steps] == []


def test_an_empty_plan_has_nothing_to_do() -> None:
    assert worksheet(None, SHEET).left == 0
