from __future__ import annotations

import itertools
from dataclasses import replace
from typing import get_args

import pytest
from PySide6.QtCore import QPointF

from sizekeeper.assets import starter_pieces
from sizekeeper.core.piece import LEVEL_ORDER, Piece, PieceRole
from sizekeeper.core.preference import GARMENTS
from sizekeeper.ui.piece_outline import outline
from tests.ui.piecework import BACK, FRONT, SLEEVE, long, wide

STARTERS = [piece for garment in GARMENTS for piece in starter_pieces(garment)]
WAISTBAND = Piece("w", "Waistband", 1, on_fold=True, role="waistband", levels=("waist",))


@pytest.mark.parametrize("piece", STARTERS, ids=lambda piece: piece.name)
def test_every_usual_piece_has_an_outline_that_holds_its_levels(piece: Piece) -> None:
    drawn = outline(piece)
    assert drawn.frame.width() > 0
    assert drawn.frame.height() > 0
    assert set(piece.levels) == set(drawn.heights)
    assert all(drawn.top - 1e-6 <= y <= drawn.bottom + 1e-6 for y in drawn.heights.values())


@pytest.mark.parametrize("role", get_args(PieceRole))
def test_a_piece_without_levels_can_be_drawn_whatever_it_is(role: PieceRole) -> None:
    assert outline(Piece("x", "X", role=role)).frame.height() > 0


def test_a_measured_width_is_drawn_as_measured() -> None:
    drawn = outline(replace(BACK, across=(wide("bust", "31"), wide("waist", "22"))))
    assert drawn.spans["bust"] == pytest.approx((0, 31))
    assert drawn.spans["waist"] == pytest.approx((0, 22))
    assert drawn.path.contains(QPointF(21.5, drawn.heights["waist"] - 0.1))
    assert not drawn.path.contains(QPointF(23, drawn.heights["waist"] - 0.1))


def test_a_measured_length_is_drawn_from_neck_to_waist() -> None:
    drawn = outline(replace(BACK, along=(long("back_waist", "50"),)))
    assert drawn.reach("back_waist") == pytest.approx((0, 50))


def test_widths_nobody_measured_are_scaled_with_the_measured_ones() -> None:
    usual, large = outline(BACK).spans["waist"], outline(replace(BACK, across=(wide("bust", "50"),))).spans["waist"]
    assert large[1] == pytest.approx(usual[1] * 2)


def test_a_strip_is_as_wide_and_long_as_measured() -> None:
    drawn = outline(replace(WAISTBAND, across=(wide("waist", "40"),), along=(long("skirt", "6"),)))
    assert (drawn.frame.width(), drawn.frame.height()) == pytest.approx((40, 6))


def test_a_very_long_strip_stays_thick_enough_to_be_seen() -> None:
    drawn = outline(replace(WAISTBAND, across=(wide("waist", "90"),), along=(long("skirt", "2"),)))
    assert (drawn.frame.width(), drawn.frame.height()) == pytest.approx((90, 10))


def test_a_front_cut_once_and_not_on_the_fold_is_drawn_whole() -> None:
    drawn = outline(replace(FRONT, on_fold=False, across=(wide("bust", "48"),)))
    assert drawn.whole
    assert drawn.spans["bust"] == pytest.approx((-24, 24))


def test_a_sleeve_is_symmetric() -> None:
    frame = outline(SLEEVE).frame
    assert frame.center().x() == pytest.approx(0)


def test_a_line_between_two_levels_lies_halfway() -> None:
    drawn = outline(BACK)
    assert drawn.between(("bust", "waist")) == pytest.approx((drawn.heights["bust"] + drawn.heights["waist"]) / 2)


def test_a_gathered_skirt_is_drawn_straight() -> None:
    waist = replace(wide("waist", "60"), gathered=True)
    drawn = outline(Piece("k", "Skirt", 2, role="skirt_front", levels=("waist", "hip", "hem"), across=(waist,)))
    assert {right for _, right in drawn.spans.values()} == {60}


TICKABLE = [levels for count in (1, 2, 3) for levels in itertools.combinations(LEVEL_ORDER, count)]


@pytest.mark.parametrize("role", get_args(PieceRole))
def test_the_hem_lies_below_every_other_level_whichever_are_ticked(role: PieceRole) -> None:
    for levels in TICKABLE:
        heights = dict(outline(Piece("x", "X", 2, role=role, levels=levels)).heights)
        hem = heights.pop("hem", None)
        assert hem is None or all(y < hem for y in heights.values()), levels


@pytest.mark.parametrize("role", get_args(PieceRole))
def test_levels_lie_in_body_order_whichever_are_ticked(role: PieceRole) -> None:
    body = [level for level in LEVEL_ORDER if level not in ("sleeve", "wrist")]
    for levels in TICKABLE:
        drawn = outline(Piece("x", "X", 2, role=role, levels=levels))
        ordered = [drawn.heights[level] for level in body if level in drawn.heights]
        assert ordered == sorted(ordered), levels


def test_a_long_jacket_has_its_knee_above_its_hem() -> None:
    jacket = Piece("j", "Jacket front", 2, role="front", levels=("bust", "waist", "knee", "hem"))
    heights = outline(jacket).heights
    assert heights["bust"] < heights["waist"] < heights["knee"] < heights["hem"]


def test_a_sleeve_over_the_wrist_has_its_hem_below_it() -> None:
    heights = outline(replace(SLEEVE, levels=("sleeve", "wrist", "hem"))).heights
    assert heights["sleeve"] < heights["wrist"] < heights["hem"]


def test_levels_of_the_arm_are_left_out_of_a_bodice() -> None:
    assert list(outline(replace(BACK, levels=("bust", "waist", "sleeve", "wrist"))).heights) == ["bust", "waist"]
