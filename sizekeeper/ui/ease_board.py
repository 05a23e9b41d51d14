"""The ease table as she sees it: regions and body figures on the left, sizes on the right, the bands' legend below."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QVBoxLayout, QWidget

from sizekeeper.ui import bands, theme
from sizekeeper.ui.ease_model import EaseModel
from sizekeeper.ui.ease_regions import RegionColumn
from sizekeeper.ui.ease_view import EaseView
from sizekeeper.ui.lettering import Lettering

if TYPE_CHECKING:
    from collections.abc import Sequence

    from PySide6.QtGui import QResizeEvent

    from sizekeeper.core.wording import Wording
    from sizekeeper.reports.ease_table import EaseTable
    from sizekeeper.ui.ease_row import RegionText


class BandLegend(QWidget):
    """The four bands with their cloth, and what the two figures of a cell are."""

    def __init__(self, parent: QWidget | None = None) -> None:
        """Explain the bands."""
        super().__init__(parent)
        self._figures = ""
        self._banded = True
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName("Bands, from least ease to most: tight, close, easy, loose")

    def explain(self, figures: str, *, banded: bool) -> None:
        """Say what the figures of a cell are, and whether the cells show bands."""
        if (figures, banded) != (self._figures, self._banded):
            self._figures, self._banded = figures, banded
            self.setToolTip(figures)
            self.update()

    def _paint_bands(self, painter: QPainter) -> float:
        """Paint the samples from the left; gives where they end."""
        dark, side = theme.is_dark(self.palette()), theme.spacing(1.75)
        metrics = QFontMetricsF(painter.font())
        base = (self.height() + metrics.ascent() - metrics.descent()) / 2
        x = 0.0
        for look in bands.looks(dark=dark):
            sample = QRectF(x, (self.height() - side) / 2, side * 1.5, side)
            bands.paint_swatch(painter, sample, look.band, dark=dark)
            x = sample.right() + theme.spacing(0.75)
            painter.drawText(QPointF(x, base), look.band)
            x += metrics.horizontalAdvance(look.band) + theme.spacing(2.5)
        return x

    # Qt's own names from here on.

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint samples and words, and at the right what the figures are where there is room."""
        painter = QPainter(self)
        painter.setFont(theme.small_font())
        painter.setPen(theme.muted_text(self.palette()))
        end = self._paint_bands(painter) if self._banded else 0.0
        area = QRectF(end, 0, self.width() - end, self.height())
        if QFontMetricsF(painter.font()).horizontalAdvance(self._figures) <= area.width():
            painter.drawText(area, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter, self._figures)

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if theme.font_changed(event):
            self.updateGeometry()

    def sizeHint(self) -> QSize:
        """One line."""
        return QSize(theme.spacing(50), theme.spacing(3))

    def minimumSizeHint(self) -> QSize:
        """The samples fit in a narrow page too."""
        return QSize(theme.spacing(20), theme.spacing(3))


class EaseBoard(QWidget):
    """Regions, sizes and legend together.

    Signals:
        typed(str, str), entered(str, str), restored(str): the field of a measure's body figure.
        picked(str): how a region should fit is wanted.
        explain(int): the reasons for the size in a column are wanted.
    """

    typed = Signal(str, str)
    entered = Signal(str, str)
    restored = Signal(str)
    picked = Signal(str)
    explain = Signal(int)

    def __init__(self, parent: QWidget | None = None) -> None:
        """Start empty."""
        super().__init__(parent)
        self.model = EaseModel(self)
        self.regions = RegionColumn(self)
        self.view = EaseView(self.model, self)
        self.problem = Lettering("", "warning", self)
        self.legend = BandLegend(self)
        self._centred = ""
        self._lay_out()
        self._connect()

    def _lay_out(self) -> None:
        across = QHBoxLayout()
        across.setSpacing(0)
        across.addWidget(self.regions, 0, Qt.AlignmentFlag.AlignTop)
        across.addWidget(self.view, 1, Qt.AlignmentFlag.AlignTop)
        across.addStretch(0)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(theme.spacing())
        column.addLayout(across)
        column.addWidget(self.problem)
        column.addWidget(self.legend)
        self.problem.hide()

    def _connect(self) -> None:
        self.regions.typed.connect(self.typed)
        self.regions.entered.connect(self.entered)
        self.regions.restored.connect(self.restored)
        self.regions.picked.connect(self.picked)
        self.view.explain.connect(self.explain)

    def show_table(self, table: EaseTable, texts: Sequence[RegionText], words: Wording, heading: str) -> None:
        """Show a table and what stands beside its rows."""
        self.regions.show_regions(texts, heading)
        self.model.set_table(table, tuple(text.measure for text in texts), words)
        self.view.measure()
        self._give_room()
        unit, printed = words.notation.unit, words.envelope.unit
        if table.mode == "body":
            says = f"Large: chart minus body, {unit}. Small: the body chart’s figure, {printed}."
        else:
            says = f"Large: ease, {unit}. Small: the finished measurement on the envelope, {printed}."
        self.legend.explain(says, banded=table.mode != "body")
        chosen = "" if table.chosen is None else table.columns[table.chosen].label
        if chosen != self._centred:
            self._centred = chosen
            self.view.centre_chosen()

    def say(self, problem: str) -> None:
        """Say what is wrong with a figure, under the table."""
        self.problem.setText(problem)
        self.problem.setVisible(bool(problem))

    def _give_room(self) -> None:
        crowded = self.view.needed_width > self.width() - self.regions.roomy_width
        self.regions.set_narrow(narrow=crowded)
        self.view.set_room(max(1, self.width() - self.regions.width()))
        self.legend.setMaximumWidth(self.regions.width() + self.view.maximumWidth())

    # Qt's own names from here on.

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Share the width out."""
        super().resizeEvent(event)
        self._give_room()
