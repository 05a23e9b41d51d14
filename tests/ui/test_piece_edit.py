from __future__ import annotations

from dataclasses import replace

import pytest

from sizekeeper.assets import starter_pieces
from sizekeeper.core.piece import Piece
from sizekeeper.ui import piece_edit as edit
from tests.ui.piecework import BACK, DRESS, FRONT, SLEEVE, long, pieces_of, wide


@pytest.mark.parametrize(
    ("name", "garment", "role", "layer"),
    [
        ("Front", "dress", "front", "self"),
        ("Front lining", "dress", "front", "lining"),
        ("Skirt back", "dress", "skirt_back", "self"),
        ("Front", "skirt", "skirt_front", "self"),
        ("Left leg back", "trousers", "leg_back", "self"),
        ("Front facing", "dress", "facing", "self"),
        ("Collar interfacing", "top", "collar", "interfacing"),
        ("Back yoke", "top", "yoke", "self"),
        ("Waistband guide", "skirt", "guide", "self"),
        ("Patch pocket", "skirt", "pocket", "self"),
        ("Hood", "coat", "other", "self"),
    ],
)
def test_the_name_of_a_piece_tells_what_it_is(name: str, garment: str, role: str, layer: str) -> None:
    piece = edit.suggested(name, garment, (), "x")
    assert (piece.name, piece.role, piece.layer) == (name, role, layer)


def test_a_name_of_the_starter_list_is_taken_as_it_stands_there() -> None:
    usual = starter_pieces("dress")
    piece = edit.suggested(" bodice  FRONT", "dress", usual, "x")
    same = next(one for one in usual if one.name == "Bodice front")
    assert (piece.id, piece.levels, piece.on_fold, piece.line) == ("x", same.levels, same.on_fold, same.line)


def test_a_lining_has_the_levels_of_its_part_but_no_printed_line() -> None:
    piece = edit.suggested("Skirt back lining", "skirt", starter_pieces("skirt"), "x")
    assert (piece.levels, piece.line) == (("waist", "high_hip", "hip", "hem"), False)


def test_a_piece_is_moved_down_and_not_past_the_end() -> None:
    start = pieces_of(FRONT, BACK, SLEEVE)
    assert [one.id for one in edit.moved(start, "f", 1).pieces] == ["b", "f", "s"]
    assert edit.moved(start, "s", 1) == start


def test_a_piece_is_added_behind_the_one_named() -> None:
    assert [one.id for one in edit.with_added(pieces_of(FRONT, BACK), [SLEEVE], "f").pieces] == ["f", "s", "b"]


def test_a_level_no_longer_crossed_takes_its_width_along() -> None:
    piece = edit.with_across(BACK, "bust", wide("bust", "25"))
    piece = edit.with_across(piece, "waist", wide("waist", "20"))
    after = edit.with_level(piece, "bust", on=False)
    assert (after.levels, after.across) == (("neck", "waist"), (wide("waist", "20"),))


def test_levels_and_widths_stand_in_body_order_however_they_were_typed() -> None:
    piece = edit.with_level(edit.with_level(Piece("x", "X"), "hip", on=True), "bust", on=True)
    piece = edit.with_across(edit.with_across(piece, "hip", wide("hip", "25")), "bust", wide("bust", "24"))
    assert piece.levels == ("bust", "hip")
    assert [one.level for one in piece.across] == ["bust", "hip"]


def test_a_length_is_replaced_in_its_place_and_taken_out() -> None:
    piece = edit.with_along(edit.with_along(BACK, "back_waist", long("back_waist", "40")), "skirt", long("skirt", "60"))
    changed = edit.with_along(piece, "back_waist", long("back_waist", "41"))
    assert changed.along == (long("back_waist", "41"), long("skirt", "60"))
    assert edit.with_along(changed, "back_waist", None).along == (long("skirt", "60"),)


def test_a_piece_on_the_fold_includes_one_allowance_and_another_two() -> None:
    assert edit.usual_allowances(FRONT, DRESS, along=False) == 1
    assert edit.usual_allowances(BACK, DRESS, along=False) == 2
    assert edit.usual_allowances(BACK, DRESS, along=True) == 2


def test_a_pattern_without_known_allowance_includes_none() -> None:
    assert edit.usual_allowances(BACK, replace(DRESS, seam_allowance=None), along=False) == 0


def test_pieces_keep_the_views_that_another_pattern_has_and_are_cut_for_all_where_it_lacks_them() -> None:
    pieces = [replace(BACK, view=view) for view in ("", "b", "Long")]
    assert [one.view for one in edit.for_views(pieces, ("A", "B"))] == ["", "B", ""]
    assert [one.view for one in edit.for_views(pieces, ())] == ["", "", ""]
