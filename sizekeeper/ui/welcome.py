"""What an empty library shows: the first three steps, and the demo household."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QPalette
from PySide6.QtWidgets import (
    QApplication,
    QFrame,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QScrollArea,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from sizekeeper.ui import theme
from sizekeeper.ui.lettering import Lettering, Rule

if TYPE_CHECKING:
    from PySide6.QtGui import QAction

_STEPS = (
    ("Measure", "Add yourself, or whoever you sew for, and type the figures from the tape: bust, waist and hip do."),
    ("Copy the envelope", "Add the pattern and type its two charts: the body sizes and the finished measurements."),
    ("See which size to cut", "The Fit page shows the ease in each region, size by size, and says how sure it is."),
)


class _Numeral(QLabel):
    """The number of a step, large and in plum."""

    def __init__(self, number: int, parent: QWidget) -> None:
        super().__init__(str(number), parent)
        self._dress()
        theme.text_size().changed.connect(self._dress)

    def _dress(self) -> None:
        self.setFont(theme.scaled_font(2.6))
        colour = theme.accent(QApplication.palette())
        if self.palette().color(QPalette.ColorRole.WindowText) != colour:
            self.setPalette(theme.with_text(colour))

    def changeEvent(self, event: QEvent) -> None:
        """Follow light and dark."""
        super().changeEvent(event)
        if theme.palette_changed(event):
            self._dress()


class Welcome(QScrollArea):
    """The page in front while the library is empty."""

    def __init__(self, new_person: QAction, new_pattern: QAction, demo: QAction, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setWidgetResizable(True)
        self.setAccessibleName("Welcome")
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._sheet = QWidget(self)
        self._column = QWidget(self._sheet)
        self._rows = QVBoxLayout(self._column)
        self._steps = QGridLayout()
        self._fill(new_person, new_pattern, demo)
        middle = QHBoxLayout()  # no alignment: a centred item would not be given the height that its lines need
        middle.addStretch(1)
        middle.addWidget(self._column)
        middle.addStretch(1)
        outer = QVBoxLayout(self._sheet)
        outer.addStretch(2)
        outer.addLayout(middle)
        outer.addStretch(3)
        self.setWidget(self._sheet)
        self._space()
        self._lay_paper()

    def _fill(self, new_person: QAction, new_pattern: QAction, demo: QAction) -> None:
        self._rows.addWidget(Lettering("Which size do I cut?", "title", self._column))
        self._rows.addWidget(
            Lettering("Three steps, and two minutes, from the tape measure to the answer.", "muted", self._column)
        )
        self._rows.addLayout(self._steps)
        for row, (title, words) in enumerate(_STEPS):
            self._steps.addWidget(_Numeral(row + 1, self._column), row, 0, Qt.AlignmentFlag.AlignTop)
            said = QVBoxLayout()
            said.setSpacing(theme.spacing(0.5))
            said.addWidget(Lettering(title, "part", self._column))
            said.addWidget(Lettering(words, "plain", self._column))
            self._steps.addLayout(said, row, 1)
        for row, (action, words) in enumerate(((new_person, "New person"), (new_pattern, "New pattern"))):
            self._steps.addWidget(self._button(action, words), row, 2, Qt.AlignmentFlag.AlignVCenter)
        self._steps.setColumnStretch(1, 1)
        self._rows.addWidget(Rule(self._column))
        self._rows.addWidget(
            Lettering("Or look around first: an invented household with six patterns, in a file of its own.", "muted")
        )
        self._rows.addWidget(self._button(demo, "Open the demo household"), 0, Qt.AlignmentFlag.AlignLeft)

    def _button(self, action: QAction, words: str) -> QPushButton:
        button = QPushButton(words, self._column)
        button.setEnabled(action.isEnabled())
        button.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        button.clicked.connect(action.trigger)
        return button

    def take_focus(self) -> None:
        """Put the focus on the first step."""
        first = next(iter(self._column.findChildren(QPushButton)))
        first.setFocus(Qt.FocusReason.TabFocusReason)

    def letterings(self) -> list[Lettering]:
        """Every label of the page."""
        return self._column.findChildren(Lettering)

    def _space(self) -> None:
        self._column.setFixedWidth(theme.spacing(84))
        self._rows.setSpacing(theme.spacing(2))
        self._steps.setHorizontalSpacing(theme.spacing(3))
        self._steps.setVerticalSpacing(theme.spacing(3))
        self._steps.setContentsMargins(0, theme.spacing(3), 0, theme.spacing(2))

    def _lay_paper(self) -> None:
        palette = theme.with_ground(theme.paper(QApplication.palette()))
        if palette != self.palette():
            self.setPalette(palette)

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size, light and dark."""
        super().changeEvent(event)
        if theme.font_changed(event):
            self._space()
        if theme.palette_changed(event):
            self._lay_paper()
