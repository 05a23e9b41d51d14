"""Draws the pages of a sheet in the background; of what is asked for meanwhile only the last counts."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import partial
from typing import cast

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QImage

from sizekeeper.reports.sheet import Paper
from sizekeeper.ui.import_reading import Reading
from sizekeeper.ui.sheet_source import SheetSource


@dataclass(frozen=True, slots=True)
class Drawn:
    """The pages of a sheet as pictures of so many pixels to the inch, and what stands on them in words."""

    source: SheetSource
    paper: Paper
    ppi: float
    pages: tuple[QImage, ...]
    text: str = field(default="", repr=False)


def draw(source: SheetSource, paper: Paper, ppi: float, reading: Reading) -> Drawn:
    """The pages of a sheet.

    Raises:
        SizekeeperError: the sheet cannot be made.
    """
    from sizekeeper.reports.pdf import page_images  # noqa: PLC0415 - the typesetter is loaded when first wanted
    from sizekeeper.reports.sheet_text import sheet_text  # noqa: PLC0415 - as above

    sheet = source.sheet()
    reading.check(0, 1)
    pages = tuple(QImage.fromData(png) for png in page_images(sheet, paper, ppi))
    return Drawn(source, paper, ppi, pages, sheet_text(sheet))


class Drawing(QObject):
    """One drawing at a time in a thread of its own.

    Signals:
        drawn(object): the `Drawn` that was asked for last.
        failed(str): it could not be drawn; the sentence says why.
        busy_changed(bool): whether something is being drawn.
    """

    drawn = Signal(object)
    failed = Signal(str)
    busy_changed = Signal(bool)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._reading: Reading | None = None
        self._next: tuple[SheetSource, Paper, float] | None = None

    @property
    def busy(self) -> bool:
        """Whether something is being drawn."""
        return self._reading is not None

    def want(self, source: SheetSource, paper: Paper, ppi: float) -> None:
        """Draw this, instead of whatever was wanted before."""
        self._next = (source, paper, ppi)
        if self._reading is not None:
            self._reading.cancel()  # its end starts the next
        else:
            self._begin()

    def drop(self) -> None:
        """Nothing is wanted any more."""
        self._next = None
        if self._reading is not None:
            self._reading.cancel()

    def _begin(self) -> None:
        wanted, self._next = self._next, None
        if wanted is None:
            self.busy_changed.emit(False)
            return
        self._reading = Reading(partial(draw, *wanted))
        self._reading.done.connect(self._on_done)
        self._reading.failed.connect(self.failed)
        self._reading.ended.connect(self._on_ended)
        self._reading.start()
        self.busy_changed.emit(True)

    def _on_done(self, drawn: object) -> None:
        self.drawn.emit(cast("Drawn", drawn))

    def _on_ended(self) -> None:
        self._reading = None
        self._begin()
