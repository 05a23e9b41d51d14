from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sizekeeper.core.lengths import (
    LengthChange,
    chain_length,
    chain_pieces,
    length_change,
    line_levels,
    net_length,
    own_change,
    place_change,
)
from sizekeeper.core.piece import Along
from sizekeeper.errors import PlanError
from tests.core.paper import along, inches, long, piece

BACK = piece("Back", "neck bust waist", "back", cut=2, line=True, along=along("back_waist", "38 cm", 1))
BAND = piece("Band", "waist", "band", cut=2, along=along("back_waist", "7 cm", 2))
FRONT = piece("Front", "neck bust waist", "front", on_fold=True, line=True, along=along("back_waist", "36 cm", 1))
LINING = piece("Back lining", "neck bust waist", "back", "lining", cut=2)
PLACKET = piece("Placket", "neck bust waist", "placket", cut=2)
NECK = piece("Neck facing", "neck", "facing", on_fold=True)
BAND_FRONT = piece("Band front", "waist", "band", on_fold=True)
SLEEVE = piece("Sleeve", "sleeve hem", "sleeve", cut=2, line=True)
SKIRT = piece("Skirt back", "waist hip hem", "skirt_back", cut=2)
ALL = [BACK, BAND, FRONT, LINING, PLACKET, NECK, BAND_FRONT, SLEEVE, SKIRT]


def change(amount: str) -> LengthChange:
    return own_change("back_waist", inches(amount))


def test_a_net_length_is_less_allowances_hem_and_tucks() -> None:
    # 70 - 1.5 - 4 - 2 = 62.5
    found = Along("skirt", long("70 cm"), 1, long("4 cm"), long("2 cm"))
    assert net_length(found, Fraction(3, 2)) == Fraction(125, 2)


def test_the_print_scale_multiplies_listed_lengths_and_never_measured_ones() -> None:
    listed, measured = (Along("skirt", long("60 cm"), printed=printed) for printed in (True, False))
    assert [net_length(a, None, Fraction(101, 100)) for a in (listed, measured)] == [Fraction(303, 5), 60]


def test_a_length_with_unknown_allowances_names_the_piece() -> None:
    with pytest.raises(PlanError, match="“Back” was measured with seam allowances"):
        chain_length("back_waist", [BACK], None)


def test_a_length_that_is_all_allowance_is_refused() -> None:
    with pytest.raises(PlanError, match="“Cuff” has no length left"):
        net_length(Along("sleeve", long("3 cm"), 2), Fraction(3, 2), name="Cuff")


def test_a_chain_is_measured_along_the_back_and_not_along_the_front() -> None:
    assert chain_pieces("back_waist", ALL) == (BACK, BAND)
    # (38 - 1.5) + (7 - 3) = 40.5
    assert chain_length("back_waist", [BACK, BAND], Fraction(3, 2)) == Fraction(81, 2)


def test_with_only_a_front_measured_the_front_is_the_chain() -> None:
    assert chain_pieces("back_waist", [FRONT, SLEEVE]) == (FRONT,)


def test_a_chain_of_pieces_that_nobody_measured_has_no_length() -> None:
    assert chain_length("back_waist", [SLEEVE], None) is None


@pytest.mark.parametrize(
    ("given", "basis", "amount"),
    [
        ({"pieces_cm": 40, "body_chart_cm": 41, "finished_cm": 42}, "pieces", 4),
        ({"body_chart_cm": 41, "finished_cm": 42}, "body_chart", 2),
        ({"finished_cm": 42}, "finished_chart", 2),
    ],
)
def test_pieces_tell_before_charts_and_body_is_compared_with_body(
    given: dict[str, int], basis: str, amount: int
) -> None:
    # Body 43 and 1 ease: 44 - 40; 43 - 41; 44 - 42.
    figures = {key: Fraction(value) for key, value in given.items()}
    found = length_change("back_waist", Fraction(43), Fraction(1), **figures)
    assert found is not None
    assert (found.basis, found.change) == (basis, Fraction(amount))


def test_without_a_body_length_or_anything_to_compare_nothing_is_said() -> None:
    assert length_change("skirt", None, pieces_cm=Fraction(60)) is None
    assert length_change("skirt", Fraction(60)) is None


@given(st.fractions(-20, 20))
def test_a_pleat_to_shorten_is_half_as_deep_as_what_it_takes_away(amount: Fraction) -> None:
    found = own_change("skirt", amount)
    assert found.pleat == (-amount / 2 if amount < 0 else 0)


def test_everything_that_crosses_the_line_gets_the_same() -> None:
    found = place_change(change("2"), ALL)
    assert (found.piece, found.levels) == ("Back", ("bust", "waist"))
    assert found.same == ("Front", "Back lining", "Placket")


def test_put_into_the_band_only_the_other_bands_and_what_passes_behind_them_change() -> None:
    lining = piece("Dress lining", "bust waist hip hem", "back", "lining", cut=2)
    found = place_change(change("2"), [*ALL, lining], "Band")
    assert (found.levels, found.same) == (("waist",), ("Band front", "Dress lining"))


def test_a_sleeve_is_lengthened_without_the_body() -> None:
    assert place_change(own_change("sleeve", Fraction(2)), ALL).same == ()


def test_a_hem_of_the_body_does_not_lengthen_the_sleeves() -> None:
    found = place_change(own_change("skirt", Fraction(2)), ALL, levels=("hem",))
    assert (found.piece, found.same) == ("Skirt back", ())


@pytest.mark.parametrize(
    ("levels", "chain", "line"),
    [
        ("neck bust waist hip hem", "back_waist", ("bust", "waist")),
        ("neck bust", "back_waist", ("neck", "bust")),
        ("waist high_hip hip hem", "skirt", ("hip", "hem")),
        ("waist hip thigh knee hem", "inseam", ("thigh", "knee")),
        ("waist hip thigh knee hem", "rise", ("hip", "thigh")),
        ("sleeve hem", "sleeve", ("sleeve", "hem")),
        ("neck", "skirt", ()),
    ],
)
def test_the_line_of_a_piece_lies_where_the_trade_draws_it(levels: str, chain: str, line: tuple[str, ...]) -> None:
    assert line_levels(piece("Piece", levels), chain) == line  # type: ignore[arg-type]  # from the list


def test_a_piece_that_is_gone_is_said_in_words() -> None:
    with pytest.raises(PlanError, match="no longer in the list"):
        place_change(change("1"), ALL, "Yoke")


def test_a_chain_without_pieces_is_said_in_words() -> None:
    with pytest.raises(PlanError, match="No piece of the inside leg is listed"):
        place_change(own_change("inseam", Fraction(2)), ALL)


def test_a_piece_that_crosses_no_level_of_the_chain_takes_nothing() -> None:
    with pytest.raises(PlanError, match="“Sleeve” crosses no level of the back neck to waist"):
        place_change(change("1"), [SLEEVE], "Sleeve")
