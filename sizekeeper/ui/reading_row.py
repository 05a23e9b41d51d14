"""One measure on the Person page: its field as typed, the same in the other unit, when it was measured, and doubts."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QObject, Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QSizePolicy, QWidget

from sizekeeper.core.notation import show, spoken
from sizekeeper.core.plausible import Question, question
from sizekeeper.core.reading_edit import Figure, figure_of, place_of, read_text, shown_text, with_figure, with_reading
from sizekeeper.core.staleness import stale
from sizekeeper.ui import reading_words as words
from sizekeeper.ui import theme
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.person_fields import DraftField
from sizekeeper.ui.reading_mark import ReadingMark

if TYPE_CHECKING:
    from PySide6.QtWidgets import QGridLayout

    from sizekeeper.core.length import Length
    from sizekeeper.core.measure import Measure
    from sizekeeper.core.person import Person
    from sizekeeper.ui.person_desk import PersonDesk

MARK, NAME, FIELD, OTHER, STATE, COLUMNS = 0, 1, 2, 3, 4, 5
_FIELD_CHARACTERS = 11


@dataclass(frozen=True, slots=True)
class _Shown:
    """What a row shows just now, so that it is laid out again only when that is another."""

    entry: str
    unit: str
    figure: Figure | None
    day: object
    child: bool
    steps: object


class _Message(QWidget):
    """A sentence below a row, with its one-click answers."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.sentence = Lettering("", "warning", self)
        self.answer = QPushButton(self)
        self.keep = QPushButton(self)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, theme.spacing(), theme.spacing(0.75))
        row.setSpacing(theme.spacing())
        row.addWidget(self.sentence, 1)
        for button in (self.answer, self.keep):
            button.setAutoDefault(True)
            button.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
            row.addWidget(button, 0, Qt.AlignmentFlag.AlignTop)
        self.say("")

    def say(self, sentence: str, answer: str = "", keep: str = "") -> None:
        """Show a sentence with up to two answers; without a sentence nothing is shown."""
        self.sentence.setText(sentence)
        for button, text in ((self.answer, answer), (self.keep, keep)):
            button.setText(text)
            button.setVisible(bool(text))
        self.setVisible(bool(sentence))


class MeasureRow(QObject):
    """The widgets of one measure in the list's grid.

    Signals:
        stepped(object, int): this row asks for the next (1) or the previous (-1) one.
    """

    stepped = Signal(object, int)

    def __init__(self, measure: Measure, desk: PersonDesk, grid: QGridLayout, line: int, holder: QWidget) -> None:
        super().__init__(holder)
        self.measure = measure
        self.line = line
        self._desk = desk
        self._shown: _Shown | None = None
        self._kept_anyway: set[tuple[str, str]] = set()
        self._open_question: Question | None = None
        self.mark = ReadingMark(holder)
        self.name = QLabel(measure.name, holder)
        self.field = DraftField(measure.name, holder)
        self.other = Lettering("", "muted", holder)
        self.state = Lettering("", "muted", holder)
        self.message = _Message(holder)
        self._lay(grid)
        self._connect()

    def _lay(self, grid: QGridLayout) -> None:
        for column, widget in ((MARK, self.mark), (NAME, self.name), (FIELD, self.field), (OTHER, self.other)):
            grid.addWidget(widget, self.line, column)
        grid.addWidget(self.state, self.line, STATE)
        grid.addWidget(self.message, self.line + 1, NAME, 1, COLUMNS - NAME)
        self.name.setBuddy(self.field)
        self.name.setTextFormat(Qt.TextFormat.PlainText)
        self.other.setWordWrap(False)
        self.space()

    def _connect(self) -> None:
        self.field.typed.connect(self._on_typed)
        self.field.entered.connect(self._on_entered)
        self.field.restored.connect(self._on_restored)
        self.field.stepped.connect(self._on_stepped)
        self.message.answer.clicked.connect(self._on_answer)
        self.message.keep.clicked.connect(self._on_keep)
        self.field.installEventFilter(self)
        self.name.installEventFilter(self)

    def space(self) -> None:
        """Height and width of the row at the text size of now."""
        self.name.setMinimumHeight(theme.spacing(3.75))
        self.field.setFixedWidth(self.field.fontMetrics().averageCharWidth() * _FIELD_CHARACTERS + theme.spacing(2))

    @property
    def widgets(self) -> tuple[QWidget, ...]:
        """The widgets of the row's first line."""
        return self.mark, self.name, self.field, self.other, self.state

    @property
    def filled(self) -> bool:
        """Whether the person has a figure here."""
        return self._shown is not None and self._shown.figure is not None

    def set_shown(self, *, shown: bool) -> None:
        """Show or hide the whole row."""
        for widget in self.widgets:
            widget.setVisible(shown)
        self.message.setVisible(shown and bool(self.message.sentence.text()))

    def refresh(self) -> None:
        """Show the person's figure as it is now."""
        desk, person = self._desk, self._desk.person
        if person is None:
            return
        figure = figure_of(person, self.measure.id)
        steps = (desk.settings.cm_step, desk.settings.inch_step)
        shown = _Shown(desk.entry, person.unit, figure, desk.today(), desk.child, steps)
        if self._shown is None or shown.entry != self._shown.entry:
            self.field.put_text("")
        if shown == self._shown and not self.field.dirty:
            return
        self._shown = shown
        self.field.show_text(shown_text(figure.last, person.unit) if figure else "")
        self.field.setReadOnly(desk.read_only)
        if self.field.dirty:
            self._on_typed(self.field.text())
        else:
            self._show_figure(person, figure)

    def _show_figure(self, person: Person, figure: Figure | None) -> None:
        length = figure.last.length if figure else None
        self._show_other(length)
        self._open_question = self._ask(length)
        old = figure is not None and stale(figure.last.on, self._desk.today(), self._desk.child)
        state = words.state_words(figure, self._desk) if figure else ""
        self.state.speak(state, "warning" if old else "muted")
        self._say(person, figure)
        unreadable = figure is not None and length is None
        doubtful = self._open_question is not None
        self.mark.show_sign(
            "unreadable" if unreadable else "question" if doubtful else "stale" if old else "",
        )
        spoken_length = spoken(length.exact_cm, self._desk.settings.notation_in(person.unit)) if length else ""
        said = (spoken_length, state, self.message.sentence.text())
        self.field.setAccessibleDescription(", ".join(part for part in said if part))

    def _show_other(self, length: Length | None) -> None:
        self.other.setText(show(length.exact_cm, self._desk.other_notation(length.unit)) if length else "")

    def _ask(self, length: Length | None) -> Question | None:
        """The open question about a length, unless she said to keep it."""
        if length is None or (self._desk.entry, length.text) in self._kept_anyway:
            return None
        return question(self.measure, length, child=self._desk.child)

    def _say(self, person: Person, figure: Figure | None) -> None:
        """The sentence below the row: what is wrong with the text, or the question about the figure."""
        asked = self._open_question
        if figure is None or (figure.last.length is not None and asked is None):
            self.message.say("")
        elif figure.last.length is None:
            _, why = read_text(figure.last.text, person.unit)
            self.message.say(f"{why}. {words.MENDED}")
        elif asked is not None:
            typed = f"Keep {asked.sentence.partition('?')[0]}"
            self.message.say(asked.sentence, f"Read it as {asked.answer}" if asked.answer else "", typed)
        for button in (self.message.answer, self.message.keep):
            button.setEnabled(not self._desk.read_only)

    def _on_typed(self, text: str) -> None:
        person = self._desk.person
        if person is None:
            return
        self._desk.draft(with_figure(person, self.measure.id, text, self._desk.taking))
        self._show_other(read_text(text, person.unit)[0])
        self.state.speak(words.typing_words(person, self.measure.id, self._desk, emptied=not text.strip()), "accent")
        self.mark.show_sign("")
        self.message.say("")

    def _on_entered(self, text: str) -> None:
        person = self._desk.person
        if person is None:
            return
        name = self.measure.name[0].lower() + self.measure.name[1:]
        verb = "Change" if self.filled and text.strip() else "Add" if text.strip() else "Remove"
        self._shown = None
        self._desk.edit(
            f"{verb} {name}", with_figure(person, self.measure.id, text, self._desk.taking), self.measure.id
        )
        self.refresh()

    def _on_restored(self) -> None:
        self._desk.restore()
        self._shown = None
        self.refresh()

    def _on_stepped(self, step: int) -> None:
        self.stepped.emit(self, step)

    def _on_answer(self) -> None:
        """Read the figure in the unit that was meant."""
        person, asked = self._desk.person, self._open_question
        figure = figure_of(person, self.measure.id) if person else None
        if person is None or asked is None or figure is None:
            return
        after = with_reading(person, place_of(person, figure.last), replace(figure.last, text=asked.answer))
        self.field.setFocus(Qt.FocusReason.OtherFocusReason)
        self._desk.edit(f"Read {self.measure.name.lower()} as {asked.answer}", after, self.measure.id)

    def _on_keep(self) -> None:
        """Keep the figure as it is; the question is not asked again for it."""
        if self._shown is not None and self._shown.figure is not None and self._shown.figure.last.length is not None:
            self._kept_anyway.add((self._desk.entry, self._shown.figure.last.length.text))
            self._shown = None
            self.field.setFocus(Qt.FocusReason.OtherFocusReason)
            self.refresh()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """The field's focus chooses the measure; a click on the name goes into the field."""
        if watched is self.field and event.type() == QEvent.Type.FocusIn:
            self._desk.choose(self.measure.id)
        elif watched is self.name and event.type() == QEvent.Type.MouseButtonPress:
            self.field.setFocus(Qt.FocusReason.ShortcutFocusReason)
        return super().eventFilter(watched, event)
