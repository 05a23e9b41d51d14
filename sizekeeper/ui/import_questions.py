"""What is to answer and what is to know about a reading; each sentence leads to its cell."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QApplication, QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from sizekeeper.ui import theme
from sizekeeper.ui.import_roles import at_words
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.pattern_link import Link

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sizekeeper.importing.question import Ask, Remark

_EDITS = {"measure": "Another measure…", "size": "Type the size…", "cell": "Correct the cell…"}
_SOME, _MORE, _FEW = 6, 20, 3
"""How many questions stand there, how many come with each wish for more, and how many remarks stand there."""


class _Line(QWidget):
    """A sentence with the cell it is about.

    Signals:
        place_wanted(str, str): the sheet and the address of the cell that should come into view.
    """

    place_wanted = Signal(str, str)

    def __init__(self, says: str, sheet: str, at: str, parent: QWidget) -> None:
        super().__init__(parent)
        self._place = (sheet, at)
        self.column = QVBoxLayout(self)
        self.column.setContentsMargins(0, 0, 0, 0)
        self.column.setSpacing(theme.spacing(0.25))
        top = QHBoxLayout()
        top.setSpacing(theme.spacing(1))
        cell = at_words(at)
        self.place = Link(f"{cell[:1].upper()}{cell[1:]}", f"Show {cell}: {says}", self)
        self.place.setVisible(bool(at))
        self.place.clicked.connect(self._on_place)
        self.words = Lettering(says, "plain", self)
        top.addWidget(self.place, 0, Qt.AlignmentFlag.AlignTop)
        top.addWidget(self.words, 1)
        self.column.addLayout(top)

    def _on_place(self) -> None:
        self.place_wanted.emit(*self._place)


class AskLine(_Line):
    """A question with a button for each answer.

    Signals:
        answered(object): the chosen `Answer`.
        edit_wanted(object): the `Ask` whose answer she wants to type.
    """

    answered = Signal(object)
    edit_wanted = Signal(object)

    def __init__(self, ask: Ask, parent: QWidget) -> None:
        super().__init__(ask.says, ask.sheet, ask.at, parent)
        self.ask = ask
        self.buttons: list[QPushButton] = []
        row = QHBoxLayout()
        row.setSpacing(theme.spacing(1))
        row.setContentsMargins(theme.spacing(0.75), 0, 0, theme.spacing(1))
        for answer in ask.answers:
            self._add(row, answer.text).clicked.connect(self._on_answer)
        if ask.edit:
            self._add(row, _EDITS[ask.edit]).clicked.connect(self._on_edit)
        row.addStretch(1)
        self.column.addLayout(row)

    def _add(self, row: QHBoxLayout, text: str) -> QPushButton:
        button = QPushButton(text, self)
        button.setAccessibleName(f"{text}: {self.ask.says}")
        button.setAutoDefault(False)
        row.addWidget(button)
        self.buttons.append(button)
        return button

    def _on_answer(self) -> None:
        self.answered.emit(self.ask.answers[self.buttons.index(self.sender())])  # type: ignore[arg-type]  # one of them

    def _on_edit(self) -> None:
        self.edit_wanted.emit(self.ask)


class Questions(QWidget):
    """The questions, then what was learned, then what is good to know.

    Signals:
        answered(object): as `AskLine.answered`.
        edit_wanted(object): as `AskLine.edit_wanted`.
        place_wanted(str, str): as `_Line.place_wanted`.
    """

    answered = Signal(object)
    edit_wanted = Signal(object)
    place_wanted = Signal(str, str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._asks: list[Ask] = []
        self._remarks: list[Remark] = []
        self._lines: list[QWidget] = []
        self._all = False
        self._most = _SOME
        self._layout = QVBoxLayout(self)
        self._layout.setContentsMargins(0, 0, 0, 0)
        self._layout.setSpacing(theme.spacing(0.5))

    def show_them(self, asks: Sequence[Ask], remarks: Sequence[Remark]) -> None:
        """Show other questions and remarks; nothing is made anew where nothing is different."""
        if self._lines and _same(self._asks, asks) and list(remarks) == self._remarks:
            self._asks = list(asks)
            return
        had_focus = self.has_focus
        self._asks, self._remarks = list(asks), list(remarks)
        self._fill()
        if had_focus:
            self.take_focus()

    @property
    def has_focus(self) -> bool:
        """Whether one of the answers or cells has the focus."""
        focus = QApplication.focusWidget()
        return focus is not None and self.isAncestorOf(focus)

    def asked(self) -> list[AskLine]:
        """The questions shown."""
        return [line for line in self._lines if isinstance(line, AskLine)]

    def sentences(self) -> list[str]:
        """Every sentence shown."""
        return [line.words.text() for line in self._lines if isinstance(line, _Line)]

    def take_focus(self) -> bool:
        """Put the focus on the first answer; False where nothing is asked."""
        button = next((line.buttons[0] for line in self.asked() if line.buttons), None)
        if button is not None:
            button.setFocus(Qt.FocusReason.OtherFocusReason)
        return button is not None

    def _fill(self) -> None:
        for line in self._lines:
            self._layout.removeWidget(line)
            line.hide()
            line.deleteLater()
        self._lines = []
        count = len(self._asks)
        if count:
            self._add(Lettering("One question" if count == 1 else f"{count} questions", "small heading", self))
        shown = self._asks[: self._most]
        for ask in shown:
            line = AskLine(ask, self)
            line.answered.connect(self.answered)
            line.edit_wanted.connect(self.edit_wanted)
            self._add(line)
        if len(shown) < count:
            more = Link(f"{count - len(shown)} more questions", "Show more questions", self)
            more.clicked.connect(self._on_more_asks)
            self._add(more)
        self._fill_remarks()
        self.setVisible(bool(self._lines))

    def _fill_remarks(self) -> None:
        shown = self._remarks if self._all else self._remarks[:_FEW]
        if shown:
            self._add(Lettering("Good to know", "small heading", self))
        for remark in shown:
            self._add(_Line(remark.says, remark.sheet, remark.at, self))
        if len(shown) < len(self._remarks):
            more = Link(f"{len(self._remarks) - len(shown)} more", "Show all that is good to know", self)
            more.clicked.connect(self._on_more)
            self._add(more)

    def _add(self, widget: QWidget) -> None:
        if isinstance(widget, _Line):
            widget.place_wanted.connect(self.place_wanted)
        side = Qt.AlignmentFlag.AlignLeft if isinstance(widget, Link) else Qt.AlignmentFlag(0)
        self._layout.addWidget(widget, 0, side)
        self._lines.append(widget)

    def _on_more_asks(self) -> None:
        self._most += _MORE
        self._fill()

    def _on_more(self) -> None:
        self._all = True
        self._fill()


def _same(one: Sequence[Ask], other: Sequence[Ask]) -> bool:
    """Whether the same questions are asked, with the same answers offered."""

    def shape(ask: Ask) -> tuple[object, ...]:
        return ask.code, ask.says, ask.sheet, ask.at, tuple(answer.text for answer in ask.answers)

    return [shape(ask) for ask in one] == [shape(ask) for ask in other]
