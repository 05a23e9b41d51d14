"""Fonts and distances of the household's tables."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtGui import QFont, QFontMetricsF

from sizekeeper.ui import theme

if TYPE_CHECKING:
    from collections.abc import Iterable

_NEARLY = 3
"""A text with so many letters less than the longest is narrower too, in any usual font (coined)."""


@dataclass(frozen=True)
class HouseType:
    """Fonts and distances of the household's tables, worked out once for each text size."""

    plain: QFont
    strong: QFont
    small: QFont
    pad: int
    row_height: int
    header_height: int

    @classmethod
    def now(cls) -> HouseType:
        """The setting for the application's font as it is."""
        plain, strong, small = theme.scaled_font(1), theme.heading_font(3), theme.scaled_font(0.84)
        strong.setWeight(QFont.Weight.Bold)
        lines = QFontMetricsF(plain).height() + QFontMetricsF(small).height()
        small_height = QFontMetricsF(small).height()
        return cls(
            plain,
            strong,
            small,
            theme.spacing(0.6),
            max(round(lines + theme.spacing(1)), math.ceil(3 * small_height) + 2),
            round(2 * small_height + theme.spacing(1)),
        )

    def width(self, texts: Iterable[str], notes: Iterable[str]) -> int:
        """How wide a column must be for these texts. Only those with most letters are measured."""
        widest = 0.0
        for font, said in ((self.strong, set(texts)), (self.small, set(notes))):
            most = max((len(text) for text in said), default=0)
            metrics = QFontMetricsF(font)
            long = (text for text in said if len(text) > most - _NEARLY)
            widest = max(widest, max((metrics.horizontalAdvance(text) for text in long), default=0.0))
        return math.ceil(widest) + 2 * self.pad

    def swatch_width(self, names: tuple[str, ...]) -> int:
        """How wide one region of a strip is, so that the longest of these names stands over it."""
        small = QFontMetricsF(self.small)
        return round(max((small.horizontalAdvance(name) for name in names), default=0.0) + self.pad)
