"""The plots beside and below each other, as many in a row as there is room for, and the legend above them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QFontMetrics, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QFrame, QGridLayout, QScrollArea, QWidget

from sizekeeper.ui import theme
from sizekeeper.ui.drafting_colours import SideName, draw_sample, line_look
from sizekeeper.ui.drafting_plot import DraftPlot

if TYPE_CHECKING:
    from sizekeeper.core.draft import Topic
    from sizekeeper.core.drafting import Drafting
    from sizekeeper.core.wording import Wording

_MIDDLE = Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft
_RIGHT = Qt.TextElideMode.ElideRight
_SPREAD = "; band: the least to the greatest of its patterns"
_SIDES: tuple[SideName, SideName] = ("left", "right")


class Legend(QWidget):
    """Which line is whose."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._names = ("", "")
        self._spread = False

    def show_names(self, left: str, right: str, *, spread: bool) -> None:
        """Name both sides; `spread` where a band around a line shows the least and the greatest of several patterns."""
        self._names, self._spread = (left, right), spread
        looks = [line_look(side, dark=False).words for side in _SIDES]
        said = ", ".join(f"{name}: {look}" for name, look in zip(self._names, looks, strict=True))
        self.setAccessibleName(f"{said}{_SPREAD if spread else ''}")
        self.update()

    # Qt's own names from here on.

    def sizeHint(self) -> QSize:
        """One line."""
        return QSize(theme.spacing(40), theme.spacing(2.5))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """A sample of each line with its name."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        metrics, left, sample = QFontMetrics(self.font()), 0.0, float(theme.spacing(5))
        dark, most = theme.is_dark(self.palette()), self.width() * 0.4
        for side, name in zip(_SIDES, self._names, strict=True):
            rect = QRectF(left, 0, sample, self.height())
            draw_sample(painter, rect, line_look(side, dark=dark), theme.paper(self.palette()))
            text = metrics.elidedText(name, _RIGHT, round(most - sample))
            left = self._write(painter, rect.right() + theme.spacing(0.75), text) + theme.spacing(2.5)
        if self._spread:
            self._write(painter, left, _SPREAD.removeprefix("; "))

    def _write(self, painter: QPainter, left: float, text: str) -> float:
        """Write a text; gives where it ends."""
        painter.setPen(self.palette().windowText().color())
        width = QFontMetrics(self.font()).horizontalAdvance(text)
        painter.drawText(QRectF(left, 0, width + 2, self.height()), int(_MIDDLE), text)
        return left + width


class DraftBoard(QScrollArea):
    """The plots of a topic."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName("Plots")
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.viewport().setAutoFillBackground(False)
        self._holder = QWidget(self)
        self._grid = QGridLayout(self._holder)
        self._grid.setContentsMargins(0, 0, theme.spacing(1), 0)
        self._grid.setHorizontalSpacing(theme.spacing(3))
        self._grid.setVerticalSpacing(theme.spacing(2))
        self.setWidget(self._holder)
        self._holder.setAutoFillBackground(False)
        self.plots: list[DraftPlot] = []

    def show_topic(self, compared: Drafting | None, topic: Topic, words: Wording) -> None:
        """Show the plots of a topic; those that are there already stay, so that the one being read keeps the keys."""
        panels = () if compared is None else compared.of(topic)
        for plot in self.plots[len(panels) :]:
            plot.hide()
            plot.deleteLater()
        del self.plots[len(panels) :]
        for place, panel in enumerate(panels):
            assert compared is not None  # noqa: S101 - there are panels only with a comparison
            if place < len(self.plots):
                self.plots[place].show_panel(compared, panel, words)
            else:
                self.plots.append(DraftPlot(compared, panel, words, self._holder))
        self._place()

    def _place(self) -> None:
        """Put the plots into rows."""
        least = theme.spacing(40)
        across = max(1, min(len(self.plots), (self.viewport().width() + theme.spacing(3)) // least))
        for place, plot in enumerate(self.plots):
            self._grid.addWidget(plot, place // across, place % across)
            plot.show()
        for column in range(_MOST_ACROSS):
            self._grid.setColumnStretch(column, 1 if column < across else 0)
        rows = -(-len(self.plots) // across)
        for row in range(_MOST_DOWN):
            self._grid.setRowStretch(row, 10 if row < rows else 1 if row == rows else 0)

    # Qt's own names from here on.

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Other rows where there is other room."""
        super().resizeEvent(event)
        self._place()


_MOST_ACROSS = 12
_MOST_DOWN = 16
