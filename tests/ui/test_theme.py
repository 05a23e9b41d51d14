from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from PySide6.QtGui import QColor, QFont, QPalette

from sizekeeper.ui import theme

if TYPE_CHECKING:
    from PySide6.QtWidgets import QApplication


@pytest.fixture(params=["light", "dark", "black"])
def palette(request: pytest.FixtureRequest, qapp: QApplication, dark_palette: QPalette) -> QPalette:
    black = QPalette(QColor("black"))
    return {"light": qapp.palette(), "dark": dark_palette, "black": black}[request.param]


@pytest.mark.parametrize("name", ["muted_text", "accent", "warning_text"])
def test_coloured_text_can_be_read_on_every_ground(palette: QPalette, name: str) -> None:
    grounds = (palette.window().color(), palette.base().color(), theme.paper(palette), theme.surface(palette))
    assert min(theme.contrast(getattr(theme, name)(palette), ground) for ground in grounds) >= 4.5


def test_plain_text_can_be_read_on_the_ground_of_what_is_chosen(palette: QPalette) -> None:
    assert theme.contrast(palette.windowText().color(), theme.accent_wash(palette)) >= 4.5


@pytest.mark.parametrize("base", ["#000000", "#242424", "#2d2d2d", "#3a3a3a"])
def test_in_the_dark_a_page_is_lighter_than_fields_and_empty_boxes(dark_palette: QPalette, base: str) -> None:
    dark_palette.setColor(QPalette.ColorRole.Base, QColor(base))
    page = theme.paper(dark_palette)
    assert theme.luminance(page) > theme.luminance(QColor(base))
    assert theme.contrast(page, QColor(base)) >= 1.49


def test_a_rule_can_be_seen_on_a_page(palette: QPalette) -> None:
    assert theme.contrast(theme.rule_colour(palette), theme.paper(palette)) >= 1.3


def test_contrast_is_that_of_the_standard() -> None:
    assert theme.contrast(QColor("white"), QColor("black")) == pytest.approx(21)
    assert theme.contrast(QColor("#777777"), QColor("white")) == pytest.approx(4.48, abs=0.005)


def test_dark_is_told_from_light(qapp: QApplication, dark_palette: QPalette) -> None:
    assert (theme.is_dark(qapp.palette()), theme.is_dark(dark_palette)) == (False, True)


def test_a_selection_is_in_the_programs_plum_with_readable_text(qapp: QApplication) -> None:
    ground, text = qapp.palette().highlight().color(), qapp.palette().highlightedText().color()
    assert ground.red() > ground.green() < ground.blue()
    assert theme.contrast(text, ground) >= 4.5


def test_distances_grow_with_the_text(qapp: QApplication) -> None:
    font = QFont(qapp.font())
    before = theme.spacing(10)
    font.setPointSizeF(font.pointSizeF() * 2)
    qapp.setFont(font)
    assert theme.spacing(10) == pytest.approx(2 * before, rel=0.1)


def test_headings_grow_with_the_text_and_step_down(qapp: QApplication) -> None:
    font = QFont(qapp.font())
    font.setPointSizeF(20)
    qapp.setFont(font)
    sizes = [theme.heading_font(level).pointSizeF() for level in (1, 2, 3)]
    assert sizes == sorted(sizes, reverse=True)
    assert sizes[2] == 20


def test_a_font_given_in_pixels_is_scaled_too(qapp: QApplication) -> None:
    font = QFont(qapp.font())
    font.setPixelSize(20)
    qapp.setFont(font)
    assert theme.scaled_font(1.5).pixelSize() == 30


@pytest.mark.parametrize(("share", "red"), [(0, 0), (0.5, 128), (1, 255)])
def test_a_mix_goes_from_one_colour_to_the_other(share: float, red: int) -> None:
    assert theme.mix(QColor(0, 0, 0), QColor(255, 0, 0), share).red() == red
