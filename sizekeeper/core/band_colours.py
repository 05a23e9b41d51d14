"""The colours of the four bands, as plain values for window, page and workbook.

They go from much ink to little, as cloth goes from tight to loose: night blue, slate, straw, linen. On a dark ground
ink is light, so the order of strength stays. They were chosen by us, and a test computes that text can be read on them
and that eyes with each kind of colour blindness tell them apart. No colour ever stands alone: the band's word and its
fill stand beside it.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sizekeeper.core.preference import BANDS, Band

if TYPE_CHECKING:
    from collections.abc import Iterator


@dataclass(frozen=True, slots=True)
class BandLook:
    """How a band is painted: its ground, the text on it, and the thread its fill is drawn with, each `#rrggbb`."""

    band: Band
    ground: str
    text: str
    thread: str


_LIGHT = {
    "tight": BandLook("tight", "#33265c", "#ffffff", "#5d4f90"),
    "close": BandLook("close", "#3a6c82", "#ffffff", "#2a556a"),
    "easy": BandLook("easy", "#e6d09a", "#2a2113", "#cdb273"),
    "loose": BandLook("loose", "#f8f1ea", "#2a2113", "#dccdc0"),
}
_DARK = {
    "tight": BandLook("tight", "#cdbdf5", "#1c1433", "#aa98de"),
    "close": BandLook("close", "#559bae", "#0a1a20", "#78b8c8"),
    "easy": BandLook("easy", "#67551f", "#fbf3df", "#544414"),
    "loose": BandLook("loose", "#363032", "#efe6e2", "#514749"),
}


def look(band: Band, *, dark: bool) -> BandLook:
    """How a band is painted on a light or a dark ground."""
    return (_DARK if dark else _LIGHT)[band]


def looks(*, dark: bool) -> Iterator[BandLook]:
    """All four, from tight to loose."""
    return (look(band, dark=dark) for band in BANDS)
