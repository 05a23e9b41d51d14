from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from itertools import pairwise
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QPalette, QTransform

from sizekeeper.assets import starter_pieces
from sizekeeper.core.notation import Notation
from sizekeeper.core.piece import Piece
from sizekeeper.core.preference import GARMENTS
from sizekeeper.ui import theme
from sizekeeper.ui.piece_drawing import PieceChange, PieceDrawing
from sizekeeper.ui.piece_marks import Label, place_labels
from sizekeeper.ui.piece_outline import outline
from tests.ui.piecework import BACK, FRONT, long, wide

if TYPE_CHECKING:
    from pytestqt.qtbot import QtBot


INCHES = Notation("in", Fraction(1, 8))
LONGER = PieceChange("length", Fraction(254 * 17, 800), ("bust", "waist"))
SHORTER = PieceChange("length", Fraction(-3), ("bust", "waist"))
WIDER = PieceChange("width", Fraction(1, 2), ("waist",))
STARTERS = [piece for garment in GARMENTS for piece in starter_pieces(garment)]


@pytest.fixture
def drawing(qtbot: QtBot) -> PieceDrawing:
    drawing = PieceDrawing()
    qtbot.addWidget(drawing)
    drawing.resize(300, 320)
    return drawing


def words(drawing: PieceDrawing, piece: Piece) -> list[str]:
    return [text for label in drawing.labels(outline(piece)) for text in label.lines]


def has_ink(drawing: PieceDrawing, colour: QColor) -> bool:
    picture = drawing.grab().toImage()
    return any(
        picture.pixelColor(x, y).rgb() == colour.rgb()
        for x in range(picture.width())
        for y in range(0, picture.height(), 2)
    )


def ink_width(drawing: PieceDrawing) -> int:
    """How wide the piece's ground is on the picture."""
    picture, ground = drawing.grab().toImage(), theme.surface(drawing.palette())
    rows = [[x for x in range(210) if picture.pixelColor(x, y) == ground] for y in range(0, 320, 4)]
    return max(row[-1] - row[0] for row in rows if row)


@pytest.mark.parametrize("piece", STARTERS, ids=lambda piece: piece.name)
def test_every_usual_piece_is_drawn_with_and_without_changes(drawing: PieceDrawing, piece: Piece) -> None:
    drawing.show_piece(piece)
    plain = drawing.grab().toImage()
    drawing.show_piece(piece, [SHORTER, PieceChange("width", Fraction(1), piece.levels[:1])])
    assert drawing.grab().toImage() != plain


def test_widths_stand_beside_their_levels_from_the_top_down(drawing: PieceDrawing) -> None:
    piece = replace(BACK, across=(wide("bust", "25.5"), wide("waist", "8 in")))
    drawing.show_piece(piece)
    assert words(drawing, piece) == ["neck", "bust 25.5 cm", "waist 8 in"]


def test_a_change_is_written_with_its_sign(drawing: PieceDrawing) -> None:
    drawing.show_piece(BACK, LONGER, INCHES)
    assert words(drawing, BACK) == ["neck", "bust", "+2 1/8 in", "waist"]


def test_shortening_says_how_deep_a_pleat_to_fold(drawing: PieceDrawing) -> None:
    drawing.show_piece(BACK, SHORTER)
    assert "−3 cm" in words(drawing, BACK)
    assert "pleat 1.5 cm deep" in words(drawing, BACK)


def test_words_of_a_change_replace_the_amount(drawing: PieceDrawing) -> None:
    drawing.show_piece(BACK, replace(WIDER, words="1/2 more here"))
    assert words(drawing, BACK) == ["neck", "bust", "1/2 more here", "waist"]


def test_a_screen_reader_hears_the_piece_and_its_changes(drawing: PieceDrawing) -> None:
    drawing.show_piece(replace(FRONT, along=(long("back_waist", "42"),)), [SHORTER, WIDER])
    assert drawing.accessibleName() == "Drawing of Front"
    assert drawing.accessibleDescription() == (
        "Front, cut 1 on the fold; crosses neck, bust, waist; neck to waist 42 centimetres long; "
        "has a lengthen or shorten line; 3 centimetres shorter at bust and waist; 0.5 centimetres wider at waist"
    )


def test_a_change_is_drawn_in_the_accent_and_an_unchanged_piece_has_none(drawing: PieceDrawing) -> None:
    accent = theme.accent(drawing.palette())
    drawing.show_piece(BACK)
    assert not has_ink(drawing, accent)
    drawing.show_piece(BACK, LONGER)
    assert has_ink(drawing, accent)


def test_the_drawing_follows_the_dark(drawing: PieceDrawing, dark: QPalette) -> None:
    drawing.setPalette(dark)
    drawing.show_piece(BACK, WIDER)
    assert has_ink(drawing, theme.accent(dark))


def test_without_a_piece_nothing_is_drawn(drawing: PieceDrawing) -> None:
    drawing.show_piece(None)
    picture = drawing.grab().toImage()
    assert {picture.pixel(x, y) for x in range(0, 300, 10) for y in range(0, 320, 10)} == {picture.pixel(0, 0)}


def test_labels_never_lie_over_each_other_and_stay_in_the_room() -> None:
    labels = [Label(y, 0, ("word",), "level") for y in (10, 11, 12, 98, 99, 100)]
    placed = place_labels(labels, QTransform(), 10, QRectF(0, 0, 50, 100))
    tops = [one.top for one in placed]
    assert all(after - before >= 10 for before, after in pairwise(tops))
    assert tops[0] >= 0
    assert tops[-1] + 10 <= 100


def test_a_wide_piece_in_a_narrow_place_is_drawn_larger_with_its_labels_on_it(drawing: PieceDrawing) -> None:
    skirt = Piece("k", "Skirt", 2, role="skirt_front", levels=("waist", "hem"), across=(wide("waist", "60"),))
    drawing.resize(210, 320)
    drawing.show_piece(skirt)
    large = ink_width(drawing)
    drawing.show_piece(skirt, PieceChange("length", Fraction(2), ("waist", "hem")))
    assert large > 1.3 * ink_width(drawing)
