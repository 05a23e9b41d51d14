from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from sizekeeper import assets
from sizekeeper.core.notation import CENTIMETRES
from sizekeeper.core.piece import LAYERS, LEVEL_ORDER, PIECE_ROLES
from sizekeeper.core.piece_words import piece_spoken
from sizekeeper.core.preference import GARMENTS, Garment
from tests.core.paper import across, along, piece

if TYPE_CHECKING:
    from sizekeeper.core.piece import Level


@pytest.mark.parametrize(
    ("cut", "on_fold", "times"), [(1, False, 1), (2, False, 2), (1, True, 2), (2, True, 4)], ids=str
)
def test_a_piece_counts_once_for_each_cut_and_twice_on_the_fold(cut: int, on_fold: bool, times: int) -> None:
    assert piece("Back", "waist", "back", cut=cut, on_fold=on_fold).times("waist") == times


@pytest.mark.parametrize("layer", ["lining", "underlining", "interfacing"])
def test_only_the_self_layer_goes_round_the_body(layer: str) -> None:
    assert piece("Back", "waist", "back", layer, cut=2).times("waist") == 0  # type: ignore[arg-type]  # from the list


@pytest.mark.parametrize("role", ["facing", "guide", "pocket", "placket"])
def test_what_lies_on_top_of_another_piece_does_not_go_round(role: str) -> None:
    assert piece("Piece", "waist", role, cut=2).times("waist") == 0  # type: ignore[arg-type]  # from the list


@pytest.mark.parametrize("level", ["thigh", "knee", "hem"])
def test_of_a_pair_of_legs_one_goes_round_a_leg_and_both_round_the_hip(level: str) -> None:
    leg = piece("Front", "hip thigh knee hem", "leg_front", cut=2)
    assert (leg.times(level), leg.times("hip")) == (1, 2)  # type: ignore[arg-type]  # from the list


def test_a_sleeve_cut_twice_goes_once_round_each_arm() -> None:
    assert piece("Sleeve", "sleeve hem", "sleeve", cut=2).times("sleeve") == 1


def test_a_skirts_hem_goes_round_the_body() -> None:
    assert piece("Skirt", "hip hem", "skirt_front", on_fold=True).times("hem") == 2


def test_how_often_a_doubled_piece_goes_round_can_be_said() -> None:
    assert piece("Yoke", "neck", "yoke", cut=2, on_fold=True, around=2).times("neck") == 2


def test_what_was_measured_is_found_by_chain_and_by_level() -> None:
    back = piece("Back", "waist", along=along("back_waist", "40 cm"), across=across("waist", "20 cm"))
    assert (back.length("back_waist"), back.width("waist")) == (back.along[0], back.across[0])
    assert (back.length("skirt"), back.width("hip")) == (None, None)


@pytest.mark.parametrize("garment", GARMENTS)
def test_every_garment_has_a_starter_list_of_known_words(garment: Garment) -> None:
    found = assets.starter_pieces(garment)
    assert {p.role for p in found} <= set(PIECE_ROLES)
    assert {p.layer for p in found} <= set(LAYERS)
    assert {level for p in found for level in p.levels} <= set(LEVEL_ORDER)
    assert len({p.id for p in found}) == len(found) > 1


@pytest.mark.parametrize("garment", GARMENTS)
def test_every_starter_list_goes_round_its_main_levels_with_front_and_back(garment: Garment) -> None:
    level = "hip" if garment in ("skirt", "trousers") else "bust"
    found = [(p.role.rpartition("_")[2], p.times(level)) for p in assets.starter_pieces(garment) if p.crosses(level)]  # type: ignore[arg-type]  # both are levels
    assert sorted((role, times) for role, times in found if times) == [("back", 2), ("front", 2)]


def test_a_starter_piece_lists_its_levels_from_the_top_down() -> None:
    for garment in GARMENTS:
        for listed in assets.starter_pieces(garment):
            assert "sleeve" in listed.levels or list(listed.levels) == sorted(listed.levels, key=LEVEL_ORDER.index)


@pytest.mark.parametrize(
    ("gathered", "level", "answer"), [(True, "waist", True), (False, "waist", False), (True, "hip", False)]
)
def test_an_edge_is_gathered_at_the_level_where_it_was_marked(gathered: bool, level: Level, answer: bool) -> None:
    skirt = piece("Skirt", "waist hip", "skirt_front", across=across("waist", "60 cm", gathered=gathered))
    assert skirt.gathered_at(level) is answer


def test_a_piece_is_read_out_with_the_view_it_is_cut_for() -> None:
    assert piece_spoken(piece("Skirt", "hip", cut=2, view="B"), CENTIMETRES) == "Skirt, cut 2; view B; crosses hip"
