"""Fonts and distances of the ease table, worked out once for each text size."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtGui import QFont, QFontMetricsF

from sizekeeper.ui import theme

if TYPE_CHECKING:
    from collections.abc import Iterable


_NEARLY = 2
"""A text with this many letters less than the longest is narrower too, in any usual font."""


@dataclass(frozen=True)
class EaseType:
    """How the table is set: the ease large, the printed figure and the band's word small beneath it."""

    large: QFont
    chosen: QFont
    small: QFont
    heading: QFont
    pad: int
    large_height: float
    small_height: float
    row_height: int
    header_height: int

    @classmethod
    def now(cls) -> EaseType:
        """The setting for the application's font as it is."""
        large, chosen = theme.scaled_font(1.25), theme.scaled_font(1.25)
        chosen.setWeight(QFont.Weight.Bold)
        small, heading = theme.scaled_font(0.84), theme.heading_font(3)
        pad = theme.spacing(0.75)
        large_height, small_height = QFontMetricsF(large).height(), QFontMetricsF(small).height()
        return cls(
            large=large,
            chosen=chosen,
            small=small,
            heading=heading,
            pad=pad,
            large_height=large_height,
            small_height=small_height,
            row_height=round(large_height + 2 * small_height + 2 * pad) + 2,
            header_height=round(large_height + small_height + 1.5 * pad),
        )

    def column_width(self, large: Iterable[str], small: Iterable[str], headings: Iterable[str]) -> int:
        """How wide a column must be for its longest text. Only the texts with most letters are measured."""
        widest = 0.0
        for font, texts in ((self.chosen, set(large)), (self.small, set(small)), (self.large, set(headings))):
            metrics = QFontMetricsF(font)
            most = max((len(text) for text in texts), default=0)
            long = (text for text in texts if len(text) > most - _NEARLY)
            widest = max(widest, max((metrics.horizontalAdvance(text) for text in long), default=0.0))
        return round(widest + 2 * self.pad)
