from __future__ import annotations

from sizekeeper.core.follows import follows
from sizekeeper.core.piece import Across
from tests.core.paper import long, piece

FRONT = piece("Front", "neck bust waist", "front", on_fold=True)
BACK = piece("Back", "neck bust waist", "back", cut=2)
LINING = piece("Front lining", "bust waist", "front", "lining", on_fold=True)
FACING = piece("Waist facing", "waist", "facing", on_fold=True)
BAND = piece("Waistband", "waist", "waistband", on_fold=True)
STIFF = piece("Waistband interfacing", "waist", "waistband", "interfacing", on_fold=True)
SKIRT = piece("Skirt front", "waist hip", "skirt_front", on_fold=True)
FULL = piece("Full skirt", "waist hip", "skirt_back", cut=2, across=(Across("waist", long("60 cm"), gathered=True),))
SLEEVE = piece("Sleeve", "sleeve hem", "sleeve", cut=2)
BAG = piece("Pocket bag", "waist hip", "pocket", "lining", cut=2)
ALL = [FRONT, BACK, LINING, FACING, BAND, STIFF, SKIRT, FULL, SLEEVE, BAG]


def found(changed: list[str], level: str) -> dict[str, str]:
    taken = [p for p in ALL if p.id in changed]
    return {follow.piece: follow.reason for follow in follows(taken, ALL, level)}  # type: ignore[arg-type]  # a level


def test_at_the_waist_the_band_the_skirt_the_facing_and_the_lining_follow_the_bodice() -> None:
    assert found(["Front", "Back"], "waist") == {
        "Front lining": "layer",
        "Waist facing": "joins",
        "Waistband": "joins",
        "Waistband interfacing": "joins",
        "Skirt front": "joins",
        "Full skirt": "absorbs",
    }


def test_a_piece_beside_the_changed_one_can_stay_as_it_is() -> None:
    assert "Back" not in found(["Front"], "waist")


def test_the_interfacing_of_a_changed_band_is_another_layer_of_it() -> None:
    assert found(["Waistband"], "waist")["Waistband interfacing"] == "layer"


def test_the_sleeve_cap_must_still_meet_an_armhole_that_grew() -> None:
    assert found(["Front", "Back"], "bust") == {"Front lining": "layer", "Sleeve": "cap"}


def test_the_armhole_must_still_meet_a_sleeve_that_grew() -> None:
    assert found(["Sleeve"], "sleeve") == {"Front": "armhole", "Back": "armhole"}


def test_the_gathers_alone_take_up_a_change_of_the_gathered_skirt() -> None:
    assert found(["Full skirt"], "waist") == {}


def test_the_lining_of_a_gathered_skirt_follows_it_as_another_layer() -> None:
    inner = piece("Skirt lining", "waist hip", "skirt_back", "lining", cut=2)
    assert [(f.piece, f.reason) for f in follows([FULL], [*ALL, inner], "waist")] == [("Skirt lining", "layer")]


def test_pieces_that_do_not_cross_the_level_stay() -> None:
    assert found(["Skirt front"], "hip") == {}
