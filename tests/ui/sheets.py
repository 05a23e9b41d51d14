"""Pages for tests of the sheet's windows: drawn at once, in one colour, and counted."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from PySide6.QtCore import QBuffer, QIODevice
from PySide6.QtGui import QColor, QImage

from sizekeeper.reports.papers import PAPER_CM
from sizekeeper.reports.sheet import Paper, Sheet

if TYPE_CHECKING:
    import pytest


@dataclass
class Pages:
    """Stands in for the typesetter: one page in each of its colours, smaller than asked for by `per_inch`."""

    colours: tuple[str, ...] = ("#ff0000", "#0000ff")
    asked: list[tuple[Sheet, Paper, float]] = field(default_factory=list)

    def __call__(self, sheet: Sheet, paper: Paper, ppi: float) -> list[bytes]:
        self.asked.append((sheet, paper, ppi))
        wide, high = (round(side / 2.54 * ppi) for side in PAPER_CM[paper])
        return [_png(wide, high, colour) for colour in self.colours]

    @property
    def last(self) -> Sheet:
        """The sheet that was asked for last."""
        return self.asked[-1][0]


def instead(monkeypatch: pytest.MonkeyPatch, pages: Pages) -> Pages:
    """Let these pages be drawn instead of the real ones."""
    monkeypatch.setattr("sizekeeper.reports.pdf.page_images", pages)
    return pages


def _png(wide: int, high: int, colour: str) -> bytes:
    image = QImage(wide, high, QImage.Format.Format_RGB32)
    image.fill(QColor(colour))
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    image.save(buffer, "PNG")  # type: ignore[call-overload]  # the format's name as text
    return bytes(buffer.data().data())
