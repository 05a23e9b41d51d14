"""The two lines of a plot: every eye tells them apart, and so does a black and white copy."""

from __future__ import annotations

import warnings
from typing import TYPE_CHECKING

import numpy as np
import pytest
from PySide6.QtGui import QColor, QPalette

from sizekeeper.ui import theme
from sizekeeper.ui.drafting_colours import SideName, line_look

if TYPE_CHECKING:
    from types import ModuleType

    from numpy.typing import NDArray
    from PySide6.QtWidgets import QApplication

BOTH = pytest.mark.parametrize("dark", [False, True], ids=["light", "dark"])
SIDES: tuple[SideName, SideName] = ("left", "right")
_APART = 20.0
"""The least difference of the two, CIEDE2000: thin lines need more than areas do (about 1 is just seen; coined)."""
_GRAPHIC = 3.0
"""The least contrast of a graphic with its ground (WCAG 2.1, success criterion 1.4.11)."""


@pytest.fixture(scope="module")
def colour() -> ModuleType:
    """The colour library; it warns about optional packages it does not find, which are not needed here."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        import colour  # noqa: PLC0415 - it warns while it is imported

    return colour


def seen(colour: ModuleType, name: str, eyes: str | None) -> NDArray[np.float64]:
    """A colour in CIE Lab as eyes see it: Machado, Oliveira and Fernandes 2009, full severity."""
    shade = QColor(name)
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # the library tells of optional packages on first use
        linear = colour.cctf_decoding(np.array([shade.redF(), shade.greenF(), shade.blueF()]), "sRGB")
        if eyes is not None:
            linear = np.clip(colour.matrix_cvd_Machado2009(eyes, 1.0) @ linear, 0, 1)
        return np.asarray(colour.XYZ_to_Lab(colour.RGB_to_XYZ(linear, "sRGB", apply_cctf_decoding=False)))


@BOTH
@pytest.mark.parametrize("eyes", [None, "Protanomaly", "Deuteranomaly", "Tritanomaly"])
def test_every_eye_tells_the_lines_apart(colour: ModuleType, eyes: str | None, dark: bool) -> None:
    one, other = (seen(colour, line_look(side, dark=dark).colour, eyes) for side in SIDES)
    assert colour.delta_E(one, other, method="CIE 2000") >= _APART


@BOTH
def test_a_black_and_white_copy_tells_the_lines_apart(colour: ModuleType, dark: bool) -> None:
    one, other = (seen(colour, line_look(side, dark=dark).colour, None)[0] for side in SIDES)
    assert abs(one - other) >= _APART


@BOTH
@pytest.mark.parametrize("side", SIDES)
def test_the_lines_stand_out_from_the_paper(
    qapp: QApplication, dark_palette: QPalette, side: SideName, dark: bool
) -> None:
    paper = theme.paper(dark_palette if dark else qapp.palette())
    assert theme.contrast(QColor(line_look(side, dark=dark).colour), paper) >= _GRAPHIC


@BOTH
def test_line_and_marker_differ_too(dark: bool) -> None:
    one, other = (line_look(side, dark=dark) for side in SIDES)
    assert one.style != other.style
    assert one.marker != other.marker
