"""The side panel of the Fit page: three parts, each one click away, none between her and the answer.

The words that open them stand in a row with the one that opens the plans, which take the whole page.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal

from PySide6.QtCore import QEvent, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent, QPalette
from PySide6.QtWidgets import QAbstractButton, QFrame, QHBoxLayout, QScrollArea, QStackedWidget, QVBoxLayout, QWidget

from sizekeeper.ui import theme
from sizekeeper.ui.fit_likes import LikesPart
from sizekeeper.ui.fit_sizes import SizesPart
from sizekeeper.ui.fit_slide import SlidePart

if TYPE_CHECKING:
    from sizekeeper.core.found import Found
    from sizekeeper.core.wording import Wording
    from sizekeeper.ui.session import Session

PartName = Literal["plans", "slide", "sizes", "likes"]
PARTS: dict[PartName, str] = {"plans": "Plans", "slide": "Between sizes", "sizes": "All sizes", "likes": "Ease I like"}


class PartButton(QAbstractButton):
    """A word that opens a part of the panel, and folds it away again; underlined while its part is open."""

    def __init__(self, words: str, parent: QWidget | None = None) -> None:
        """A word."""
        super().__init__(parent)
        self.setText(words)
        self.setAccessibleName(words)
        self.setCheckable(True)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)

    # Qt's own names from here on.

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the word, its line, and the focus."""
        painter, palette = QPainter(self), self.palette()
        plain = palette.color(QPalette.ColorRole.WindowText)
        on = self.isChecked() or self.underMouse()
        painter.setPen(theme.accent(palette) if self.isChecked() else plain if on else theme.muted_text(palette))
        painter.setFont(theme.scaled_font(1))
        painter.drawText(self.rect(), Qt.AlignmentFlag.AlignCenter, self.text())
        side, thick = theme.spacing(), max(1, theme.spacing(0.25))
        line = QRectF(side, self.height() - thick, self.width() - 2 * side, thick)
        painter.fillRect(line, theme.accent(palette) if self.isChecked() else theme.rule_colour(palette))
        if self.hasFocus() and self.window().testAttribute(Qt.WidgetAttribute.WA_KeyboardFocusChange):
            painter.setPen(theme.accent(palette))
            painter.drawRect(self.rect().adjusted(1, 1, -2, -thick - 2))

    def sizeHint(self) -> QSize:
        """The word with air around it."""
        metrics = QFontMetricsF(theme.scaled_font(1))
        width = metrics.horizontalAdvance(self.text()) + theme.spacing(2.5)
        return QSize(round(width), round(metrics.height() + theme.spacing(1.5)))


class PartButtons(QWidget):
    """The words in a row.

    Signals:
        wanted(str): a part should be open; "" for none.
    """

    wanted = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        """None is open."""
        super().__init__(parent)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(0)
        self.buttons: dict[PartName, PartButton] = {}
        for name, words in PARTS.items():
            button = PartButton(words, self)
            button.clicked.connect(self._on_clicked)
            self.buttons[name] = button
            row.addWidget(button)

    def show_open(self, part: str) -> None:
        """Mark the part that is open."""
        for name, button in self.buttons.items():
            button.setChecked(name == part)

    def _on_clicked(self) -> None:
        name = next(name for name, button in self.buttons.items() if button is self.sender())
        self.wanted.emit(name if self.buttons[name].isChecked() else "")


class FitPanel(QFrame):
    """Holds the three parts; only the open one is kept up to date."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        """Folded away."""
        super().__init__(parent)
        self.slide, self.sizes, self.likes = SlidePart(), SizesPart(), LikesPart(session)
        self._parts: dict[PartName, QWidget] = {"slide": self.slide, "sizes": self.sizes, "likes": self.likes}
        self._stack = QStackedWidget(self)
        self._scrolls = []
        for part in self._parts.values():
            scroll = QScrollArea(self)
            scroll.setWidgetResizable(True)
            scroll.setFrameShape(QFrame.Shape.NoFrame)
            scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
            scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
            scroll.setWidget(part)
            scroll.viewport().setAutoFillBackground(False)
            part.setAutoFillBackground(False)
            self._scrolls.append(scroll)
            self._stack.addWidget(scroll)
        self._column = QVBoxLayout(self)
        self._column.addWidget(self._stack)
        self._found: Found | None = None
        self._words: Wording | None = None
        self._open = ""
        self._space()
        self.hide()

    @property
    def open_part(self) -> str:
        """The part that is open, "" for none."""
        return self._open

    def open(self, part: str) -> None:
        """Open a part, or fold the panel away with ""."""
        names = list(self._parts)
        self._open = part if part in names else ""
        if part in names:
            self._stack.setCurrentIndex(names.index(part))
            self._refresh()
        self.setVisible(part in names)

    def show_found(self, found: Found, words: Wording) -> None:
        """Show what was found, in the part that is open."""
        self._found, self._words = found, words
        self._refresh()

    def _refresh(self) -> None:
        found, words = self._found, self._words
        if not self._open or found is None or words is None:
            return
        if self._open == "likes":
            self.likes.show_found(found, words)
        elif found.fit is not None and found.comparison is not None:
            if self._open == "slide":
                self.slide.show_fit(found.fit, found.comparison, words)
            else:
                self.sizes.show_fit(found.fit, words)

    def _space(self) -> None:
        gap = theme.spacing(2)
        self._column.setContentsMargins(gap, gap, gap, gap)
        self.setFixedWidth(theme.spacing(48))

    # Qt's own names from here on.

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if hasattr(self, "_found") and theme.font_changed(event):
            self._space()

    def paintEvent(self, event: QPaintEvent) -> None:
        """A thin rule at the left."""
        super().paintEvent(event)
        painter = QPainter(self)
        painter.fillRect(0, 0, 1, self.height(), theme.rule_colour(self.palette()))
