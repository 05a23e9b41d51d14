"""A part of the alterations that folds away: its heading, what it comes to in a few words, and its body."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent, QPalette, QPolygonF
from PySide6.QtWidgets import QAbstractButton, QGridLayout, QSizePolicy, QSpinBox, QVBoxLayout, QWidget

from sizekeeper.ui import theme
from sizekeeper.ui.lettering import Lettering, Rule

if TYPE_CHECKING:
    from PySide6.QtGui import QWheelEvent

    from sizekeeper.core.planned import Planned
    from sizekeeper.core.wording import Wording
    from sizekeeper.core.work import Work
    from sizekeeper.ui.plan_edits import MakeEdits


class CalmSpin(QSpinBox):
    """A number that the wheel does not change while the page scrolls under the pointer."""

    # Qt's own names from here on.

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Let the page scroll."""
        event.ignore()


class FoldButton(QAbstractButton):
    """The heading of a fold: a small triangle, its name, and what it comes to."""

    def __init__(self, title: str, parent: QWidget | None = None) -> None:
        """Folded away."""
        super().__init__(parent)
        self._title, self._summary = title, ""
        self.setText(title)
        self.setCheckable(True)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName(title)

    @property
    def summary(self) -> str:
        """What it comes to, in a few words."""
        return self._summary

    def show_summary(self, summary: str) -> None:
        """Say what it comes to."""
        if summary != self._summary:
            self._summary = summary
            self.setAccessibleName(f"{self._title}: {summary}" if summary else self._title)
            self.update()

    # Qt's own names from here on.

    def sizeHint(self) -> QSize:
        """One line with air."""
        return QSize(theme.spacing(40), round(QFontMetricsF(theme.heading_font(3)).height() + theme.spacing(1.75)))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the triangle, the name and the words."""
        painter, palette = QPainter(self), self.palette()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if self.underMouse():
            painter.fillRect(self.rect(), theme.accent_wash(palette))
        side = theme.spacing()
        self._paint_triangle(painter, side)
        font = theme.heading_font(3)
        left = 2.5 * side
        painter.setPen(palette.color(QPalette.ColorRole.WindowText))
        painter.setFont(font)
        line = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
        painter.drawText(QRectF(left, 0, self.width() - left, self.height()), line, self._title)
        start = left + QFontMetricsF(font).horizontalAdvance(self._title) + 2 * side
        room = QRectF(start, 0, self.width() - start - side, self.height())
        painter.setFont(theme.scaled_font(1))
        painter.setPen(theme.muted_text(palette))
        words = QFontMetricsF(painter.font()).elidedText(self._summary, Qt.TextElideMode.ElideRight, room.width())
        painter.drawText(room, line, words)
        if self.hasFocus() and self.window().testAttribute(Qt.WidgetAttribute.WA_KeyboardFocusChange):
            painter.setPen(theme.accent(palette))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(self.rect().adjusted(1, 1, -2, -2))

    def _paint_triangle(self, painter: QPainter, side: int) -> None:
        x, y, half = 1.25 * side, self.height() / 2, 0.45 * side
        points = [QPointF(x - half, y - half), QPointF(x + half, y - half), QPointF(x, y + half)]
        if not self.isChecked():
            points = [QPointF(x - half, y - half), QPointF(x + half, y), QPointF(x - half, y + half)]
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(theme.accent(self.palette()))
        painter.drawPolygon(QPolygonF(points))


class Fold(QWidget):
    """A part of the alterations. Subclasses say when they apply, what they come to, and show their figures."""

    title = ""

    def __init__(self, edits: MakeEdits, parent: QWidget | None = None) -> None:
        """Folded away."""
        super().__init__(parent)
        self.edits = edits
        self.button = FoldButton(self.title, self)
        self.body = QWidget(self)
        self.inside = QVBoxLayout(self.body)
        self.problem = Lettering("", "warning", self.body)
        self.problem.hide()
        self.body.hide()
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(0)
        self._column.addWidget(Rule(self))
        self._column.addWidget(self.button)
        self._column.addWidget(self.body)
        self.button.toggled.connect(self.body.setVisible)
        self._space()

    def applies(self, planned: Planned, work: Work) -> bool:
        """Whether the part is of use here."""
        raise NotImplementedError

    def show_planned(self, planned: Planned, work: Work, words: Wording) -> str:
        """Show the figures; gives what it comes to in a few words."""
        raise NotImplementedError

    def refresh(self, planned: Planned, work: Work, words: Wording) -> None:
        """Show the part, or hide it where it does not apply."""
        applies = self.applies(planned, work)
        self.setVisible(applies)
        if applies:
            self.button.show_summary(self.show_planned(planned, work, words))

    def _space(self) -> None:
        side = theme.spacing(2.5)
        self.inside.setContentsMargins(side, theme.spacing(0.5), theme.spacing(), theme.spacing(2))
        self.inside.setSpacing(theme.spacing())

    # Qt's own names from here on.

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if hasattr(self, "inside") and theme.font_changed(event):
            self._space()
            self.button.updateGeometry()


def figures(parent: QWidget, rows: list[tuple[str, QWidget]], columns: int = 1) -> QGridLayout:
    """Fields in a grid, each with its name in front; as many pairs beside each other as there are columns."""
    grid = QGridLayout()
    grid.setHorizontalSpacing(theme.spacing())
    grid.setVerticalSpacing(theme.spacing(0.75))
    for number, (name, widget) in enumerate(rows):
        row, column = divmod(number, columns)
        label = Lettering(name, "plain", parent)
        label.setWordWrap(False)
        grid.addWidget(label, row, column * 3)
        grid.addWidget(widget, row, column * 3 + 1)
        grid.setColumnMinimumWidth(column * 3 + 2, theme.spacing(2))
    grid.setColumnStretch(columns * 3, 1)
    return grid
