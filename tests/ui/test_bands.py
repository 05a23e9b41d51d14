"""The band colours: text can be read on them, and every eye tells them apart."""

from __future__ import annotations

import itertools
import warnings
from typing import TYPE_CHECKING

import numpy as np
import pytest
from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QImage, QPainter

from sizekeeper.core.preference import BANDS, Band
from sizekeeper.ui import bands, theme

if TYPE_CHECKING:
    from types import ModuleType

    from numpy.typing import NDArray

APART = 10.0
"""The least difference of two bands, CIEDE2000: several times what is just seen (about 1; from memory)."""

BOTH = pytest.mark.parametrize("dark", [False, True], ids=["light", "dark"])


@pytest.fixture(scope="module")
def colour() -> ModuleType:
    """The colour library; it warns about optional packages it does not find, which are not needed here."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        import colour  # noqa: PLC0415 - it warns while it is imported

    return colour


@BOTH
@pytest.mark.parametrize("band", BANDS)
def test_text_can_be_read_on_the_ground_and_on_the_thread_of_a_band(band: Band, dark: bool) -> None:
    look = bands.look(band, dark=dark)
    assert theme.contrast(QColor(look.text), QColor(look.ground)) >= theme.READABLE
    assert theme.contrast(QColor(look.text), QColor(look.thread)) >= theme.READABLE


def test_our_contrast_is_that_of_the_colour_library(colour: ModuleType) -> None:
    look = bands.look("close", dark=False)
    y = [_linear(colour, c) @ np.array([0.2126, 0.7152, 0.0722]) for c in (look.text, look.ground)]
    assert theme.contrast(QColor(look.text), QColor(look.ground)) == pytest.approx(
        (y[0] + 0.05) / (y[1] + 0.05), abs=0.01
    )


@BOTH
@pytest.mark.parametrize("eyes", [None, "Protanomaly", "Deuteranomaly", "Tritanomaly"])
def test_every_eye_tells_the_bands_apart(colour: ModuleType, eyes: str | None, dark: bool) -> None:
    seen = {look.band: _seen(colour, look.ground, eyes) for look in bands.looks(dark=dark)}
    for one, other in itertools.combinations(BANDS, 2):
        assert colour.delta_E(seen[one], seen[other], method="CIE 2000") >= APART, (one, other)


@BOTH
def test_the_bands_go_from_much_ink_to_little(colour: ModuleType, dark: bool) -> None:
    lightness = [_seen(colour, look.ground, None)[0] for look in bands.looks(dark=dark)]
    assert lightness == sorted(lightness, reverse=dark)


@BOTH
def test_each_band_has_a_fill_of_its_own(dark: bool) -> None:
    drawn = {band: _marks(band, dark=dark) for band in BANDS}
    assert len({marks.tobytes() for marks in drawn.values()}) == len(BANDS)
    assert [marks.mean() for marks in drawn.values()] == sorted((m.mean() for m in drawn.values()), reverse=True)


@BOTH
@pytest.mark.parametrize("band", BANDS)
def test_a_fill_is_drawn_in_its_thread_on_its_ground(band: Band, dark: bool) -> None:
    colours = _painted(band, dark=dark)
    look = bands.look(band, dark=dark)
    assert QColor(look.ground).name() in colours
    assert len(colours) > 1


def _linear(colour: ModuleType, name: str) -> NDArray[np.float64]:
    shade = QColor(name)
    return np.asarray(colour.cctf_decoding(np.array([shade.redF(), shade.greenF(), shade.blueF()]), "sRGB"))


def _seen(colour: ModuleType, name: str, eyes: str | None) -> NDArray[np.float64]:
    """A colour in CIE Lab as eyes see it: Machado, Oliveira and Fernandes 2009, full severity."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # the library tells of optional packages on first use
        linear = _linear(colour, name)
        if eyes is not None:
            linear = np.clip(colour.matrix_cvd_Machado2009(eyes, 1.0) @ linear, 0, 1)
        return np.asarray(colour.XYZ_to_Lab(colour.RGB_to_XYZ(linear, "sRGB", apply_cctf_decoding=False)))


def _image(band: Band, *, dark: bool) -> QImage:
    image = QImage(4 * bands.TILE, 4 * bands.TILE, QImage.Format.Format_RGB32)
    painter = QPainter(image)
    painter.fillRect(QRectF(image.rect()), bands.cloth(band, dark=dark))
    painter.end()
    return image


def _painted(band: Band, *, dark: bool) -> set[str]:
    image = _image(band, dark=dark)
    return {image.pixelColor(x, y).name() for x in range(image.width()) for y in range(image.height())}


def _marks(band: Band, *, dark: bool) -> NDArray[np.bool_]:
    """Where a band's fill is drawn: wherever the ground does not show."""
    image, ground = _image(band, dark=dark), QColor(bands.look(band, dark=dark).ground)
    side = range(image.width())
    return np.array([[image.pixelColor(x, y) != ground for x in side] for y in side])
