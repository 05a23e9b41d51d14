"""What stands over the columns of the household's tables."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRect, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPalette, QPolygonF
from PySide6.QtWidgets import QHeaderView, QWidget

from sizekeeper.ui import theme
from sizekeeper.ui.household_cells import Heading
from sizekeeper.ui.household_model import CELL
from sizekeeper.ui.household_type import HouseType


class HouseHeading(QHeaderView):
    """Headings in small, muted letters over a rule; the one that is sorted by has a small mark."""

    def __init__(self, parent: QWidget | None = None) -> None:
        """Sections are clicked to sort; their widths are the table's business."""
        super().__init__(Qt.Orientation.Horizontal, parent)
        self._type = HouseType.now()
        self.setSectionsClickable(True)
        self.setHighlightSections(False)
        self.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self.setMinimumSectionSize(1)
        self.setAccessibleName("Columns")
        self.viewport().setAutoFillBackground(False)

    def dress(self, kind: HouseType) -> None:
        """Take fonts anew."""
        self._type = kind
        self.setFixedHeight(kind.header_height)
        self.viewport().update()

    # Qt's own names from here on.

    def paintSection(self, painter: QPainter, rect: QRect, section: int) -> None:
        """Paint one heading."""
        heading = self.model().headerData(section, Qt.Orientation.Horizontal, CELL)
        if not isinstance(heading, Heading):
            return
        painter.save()
        kind, palette = self._type, self.palette()
        sorts = self.sortIndicatorSection() == section  # the view hides Qt's own sign, this one is painted here
        painter.setPen(palette.color(QPalette.ColorRole.WindowText) if sorts else theme.muted_text(palette))
        painter.setFont(kind.plain if heading.matrix else kind.small)
        foot = rect.adjusted(kind.pad, 0, -kind.pad, -theme.spacing(0.5))
        if heading.strip:
            painter.setFont(kind.small)
            width = kind.swatch_width(heading.strip)
            for place, name in enumerate(heading.strip):
                box = QRect(foot.left() + place * width, foot.top(), width - 2, foot.height())
                painter.drawText(box, Qt.AlignmentFlag.AlignHCenter | Qt.AlignmentFlag.AlignBottom, name)
        elif heading.matrix:
            text = f"{heading.text}\n{heading.note}" if heading.note else heading.text
            painter.drawText(
                rect.adjusted(0, 0, 0, -theme.spacing(0.5)),
                Qt.AlignmentFlag.AlignHCenter | Qt.AlignmentFlag.AlignBottom,
                text,
            )
        else:
            painter.drawText(foot, Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignBottom, heading.text)
        painter.setPen(theme.rule_colour(palette))
        painter.drawLine(rect.bottomLeft(), rect.bottomRight())
        if sorts:
            self._paint_sorted(painter, rect, heading)
        painter.restore()

    def _paint_sorted(self, painter: QPainter, rect: QRect, heading: Heading) -> None:
        """A small triangle over the words: up from small to large, down the other way."""
        side, line = self._type.pad * 0.9, QFontMetricsF(self._type.small).height()
        middle = rect.center().x() + 0.5 if heading.matrix else rect.left() + self._type.pad + side
        lines = 2 if heading.matrix and heading.note else 1
        top = max(rect.top() + 1.0, rect.bottom() - theme.spacing(0.5) - lines * line - side - 1)
        up = self.sortIndicatorOrder() == Qt.SortOrder.AscendingOrder
        tip, base = (top, top + side) if up else (top + side, top)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(theme.accent(self.palette()))
        corners = [QPointF(middle - side, base), QPointF(middle + side, base), QPointF(middle, tip)]
        painter.drawPolygon(QPolygonF(corners))

    def sizeHint(self) -> QSize:
        """Two small lines high."""
        return QSize(super().sizeHint().width(), self._type.header_height)
