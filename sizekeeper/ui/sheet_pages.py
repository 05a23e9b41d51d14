"""The pages of a sheet as they will be on paper, one below the other."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal

from PySide6.QtCore import QEvent, QPoint, QRect, QSize, Qt, Signal
from PySide6.QtGui import QColor, QKeyEvent, QPainter, QPaintEvent, QPalette, QResizeEvent
from PySide6.QtWidgets import QAbstractScrollArea, QAbstractSlider, QWidget

from sizekeeper.reports.papers import PAPER_CM
from sizekeeper.ui import theme

if TYPE_CHECKING:
    from sizekeeper.reports.sheet import Paper
    from sizekeeper.ui.sheet_drawing import Drawn

Zoom = Literal["width", "whole", "actual"]
"""As wide as the window, a whole page at once, or as large as on paper."""

_CM_PER_INCH = 2.54
_WIDEST_PPI = 144.0
"""Pages are never shown larger than one and a half times their size: lines as long as that tire the eye (coined)."""

_STEP = 3
"""How far one turn of the wheel goes, in steps of the text's spacing; coined."""


class SheetPages(QAbstractScrollArea):
    """Shows the pages that were drawn, and says how finely they should be drawn for the size they are shown in.

    Signals:
        size_changed(): the pages are shown larger or smaller now.
    """

    size_changed = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._drawn: Drawn | None = None
        self._paper: Paper = "a4"
        self._zoom: Zoom = "width"
        self._ppi = 0.0
        self.setAccessibleName("The pages of the sheet")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setFrameShape(QAbstractScrollArea.Shape.NoFrame)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOn)  # else its coming changes the width
        self.viewport().setBackgroundRole(QPalette.ColorRole.Mid)
        self._lay_out()

    @property
    def shown(self) -> Drawn | None:
        """The pages that are shown."""
        return self._drawn

    @property
    def ppi(self) -> float:
        """The pixels of the screen to an inch of paper, at the size the pages are shown in."""
        return self._ppi * self.devicePixelRatioF()

    def set_paper(self, paper: Paper) -> None:
        """Lay the pages out as this paper; what is drawn on another stays until the new pages come."""
        self._paper = paper
        self._lay_out()

    def set_zoom(self, zoom: Zoom) -> None:
        """Show the pages in another size."""
        self._zoom = zoom
        self._lay_out()

    def show_drawn(self, drawn: Drawn | None) -> None:
        """Show other pages, at the place where the reader is."""
        self._drawn = drawn
        if drawn is not None:
            self._paper = drawn.paper
            self.setAccessibleDescription(drawn.text)
        self._lay_out()
        self.viewport().update()

    # Where the pages lie.

    @property
    def _count(self) -> int:
        return max(1, len(self._drawn.pages) if self._drawn is not None else 1)

    @property
    def _gap(self) -> int:
        return theme.spacing(2)

    def page_size(self) -> QSize:
        """The size of a page on the screen, in the window's own pixels."""
        wide, high = (side / _CM_PER_INCH * self._ppi for side in PAPER_CM[self._paper])
        return QSize(round(wide), round(high))

    def _fitting_ppi(self) -> float:
        wide, high = (side / _CM_PER_INCH for side in PAPER_CM[self._paper])
        room = self.viewport().size() - QSize(2 * self._gap, 2 * self._gap)
        if self._zoom == "actual":
            return float(self.logicalDpiX())
        by_width = max(1.0, room.width() / wide)
        if self._zoom == "whole":
            return max(10.0, min(by_width, room.height() / high))
        return max(10.0, min(by_width, _WIDEST_PPI))

    def _lay_out(self) -> None:
        """Keep the same spot of the pages in view while their size changes."""
        before = self.verticalScrollBar()
        share = before.value() / before.maximum() if before.maximum() else 0.0
        ppi = self._fitting_ppi()
        changed, self._ppi = abs(ppi - self._ppi) > 1e-6, ppi  # noqa: PLR2004 - as good as the same
        size, room = self.page_size(), self.viewport().size()
        whole = QSize(size.width() + 2 * self._gap, self._count * (size.height() + self._gap) + self._gap)
        for bar, full, seen in (
            (self.horizontalScrollBar(), whole.width(), room.width()),
            (self.verticalScrollBar(), whole.height(), room.height()),
        ):
            bar.setPageStep(seen)
            bar.setSingleStep(theme.spacing(_STEP))
            bar.setRange(0, max(0, full - seen))
        if changed:
            self.verticalScrollBar().setValue(round(share * self.verticalScrollBar().maximum()))
            self.size_changed.emit()
        self.viewport().update()

    def page_rects(self) -> list[QRect]:
        """Where each page lies in the viewport now."""
        size = self.page_size()
        left = max(self._gap, (self.viewport().width() - size.width()) // 2) - self.horizontalScrollBar().value()
        top = self._gap - self.verticalScrollBar().value()
        return [QRect(QPoint(left, top + i * (size.height() + self._gap)), size) for i in range(self._count)]

    # Qt's own names from here on.

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the pages that are in view; an empty page until the first is drawn."""
        painter = QPainter(self.viewport())
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        palette = self.palette()
        painter.fillRect(self.viewport().rect(), _ground(palette))
        for number, rect in enumerate(self.page_rects()):
            if not rect.intersects(self.viewport().rect()):
                continue
            painter.fillRect(rect, QColor("white"))  # paper is white, by day and by night
            if self._drawn is not None and number < len(self._drawn.pages):
                painter.drawImage(rect, self._drawn.pages[number])
            painter.setPen(theme.rule_colour(palette))
            painter.drawRect(rect.adjusted(0, 0, -1, -1))
        if self.hasFocus():
            painter.setPen(theme.accent(palette))
            painter.drawRect(self.viewport().rect().adjusted(0, 0, -1, -1))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """A page that is as wide as the window grows with it."""
        super().resizeEvent(event)
        self._lay_out()

    def scrollContentsBy(self, _dx: int, _dy: int) -> None:
        """Draw what came into view."""
        self.viewport().update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Home, End and the space bar go through the pages too."""
        bar, action = self.verticalScrollBar(), QAbstractSlider.SliderAction
        back = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
        moves = {
            Qt.Key.Key_Home: action.SliderToMinimum,
            Qt.Key.Key_End: action.SliderToMaximum,
            Qt.Key.Key_Space: action.SliderPageStepSub if back else action.SliderPageStepAdd,
        }
        move = moves.get(Qt.Key(event.key()))
        if move is None:
            super().keyPressEvent(event)
        else:
            bar.triggerAction(move)

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size, and light and dark."""
        super().changeEvent(event)
        if theme.font_changed(event):
            self._lay_out()
        elif theme.palette_changed(event):
            self.viewport().update()

    def sizeHint(self) -> QSize:
        """Room for a page at a size that can be read."""
        return QSize(theme.spacing(100), theme.spacing(80))


def _ground(palette: QPalette) -> QColor:
    """What the pages lie on: a little darker than the window, so that they stand out in the light."""
    window = palette.color(QPalette.ColorRole.Window)
    return theme.mix(window, QColor("black"), 0.25 if theme.is_dark(palette) else 0.12)
