from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import QPointF, QSize
from PySide6.QtGui import QColor, QImage, QPalette

from sizekeeper.assets import measures
from sizekeeper.ui import theme
from sizekeeper.ui.figure_outline import HALF_WIDTH, HEIGHT, body
from sizekeeper.ui.figure_places import PLACES, Across, Along, Around
from sizekeeper.ui.figure_view import FigureView

if TYPE_CHECKING:
    from pytestqt.qtbot import QtBot

    from sizekeeper.core.measure import Measure

BODY = [m for m in measures() if m.use != "finished"]
EXPECTED: dict[str, type] = {"girth": Around, "width": Across, "length": Along}


@pytest.mark.parametrize("measure", BODY, ids=lambda m: m.id)
def test_every_body_measure_has_its_place_drawn_as_its_kind(measure: Measure) -> None:
    assert isinstance(PLACES[measure.id], EXPECTED[measure.dimension])


def test_no_place_belongs_to_an_unknown_measure() -> None:
    assert set(PLACES) == {m.id for m in BODY}


def test_a_girth_goes_around_some_part_of_the_body() -> None:
    for name, place in PLACES.items():
        if isinstance(place, Around):
            assert body().contains(QPointF(*place.middle)), name


def test_every_line_stays_within_the_drawing() -> None:
    for name, place in PLACES.items():
        if isinstance(place, Along):
            assert all(abs(x) <= HALF_WIDTH and 0 <= y <= HEIGHT for x, y in place.line), name


def test_places_follow_the_order_of_the_body() -> None:
    girths = (
        "head",
        "neck",
        "high_bust",
        "bust",
        "underbust",
        "waist",
        "high_hip",
        "hip",
        "thigh",
        "knee",
        "calf",
        "ankle",
    )
    heights = [place.middle[1] for name in girths if isinstance(place := PLACES[name], Around)]
    assert heights == sorted(heights)
    assert len(heights) == len(girths)


def test_the_body_is_the_same_on_both_sides_of_its_middle() -> None:
    spots = [(x, y) for x in range(2, 170, 12) for y in range(7, 800, 24)]
    assert all(body().contains(QPointF(x, y)) == body().contains(QPointF(-x, y)) for x, y in spots)


def drawn(view: FigureView, measure: str) -> QImage:
    view.show_measure(measure)
    return view.grab().toImage()


def taped(image: QImage, palette: QPalette) -> bool:
    """Whether some spot has exactly the tape's colour."""
    tape = theme.accent(palette).rgb()
    return any(image.pixel(x, y) == tape for x in range(image.width()) for y in range(image.height()))


@pytest.fixture
def view(qtbot: QtBot) -> FigureView:
    view = FigureView()
    qtbot.addWidget(view)
    view.resize(QSize(260, 300))
    return view


def test_the_tape_is_drawn_for_a_known_measure_only(view: FigureView) -> None:
    assert [taped(drawn(view, m), view.palette()) for m in ("waist", "sleeve_length", "across_back", "hem", "")] == [
        True,
        True,
        True,
        False,
        False,
    ]


def test_the_tape_follows_the_dark(view: FigureView, dark: QPalette) -> None:
    view.setPalette(dark)
    assert taped(drawn(view, "waist"), dark)
    assert theme.accent(dark) != theme.accent(QPalette(QColor("#efefef")))


def test_the_place_is_told_to_a_screen_reader(view: FigureView) -> None:
    view.show_measure("crotch_length")
    assert view.accessibleDescription() == "a line down the front, between the legs and up the back"
