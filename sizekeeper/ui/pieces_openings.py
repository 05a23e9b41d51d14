"""Where one gets in: each opening, what must pass it, and how far it opens."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Any, cast, get_args

from PySide6.QtCore import QEvent, QObject, Qt, Signal
from PySide6.QtWidgets import QCheckBox, QGridLayout, QHBoxLayout, QMenu, QVBoxLayout, QWidget

from sizekeeper.core.piece import Opening, Passing
from sizekeeper.core.piece_words import PASSING_NAMES
from sizekeeper.ui import theme
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.pattern_link import Link
from sizekeeper.ui.person_fields import CalmCombo, DraftField
from sizekeeper.ui.piece_length_field import LengthField
from sizekeeper.ui.tab_order import one_after_the_other

if TYPE_CHECKING:
    from collections.abc import Callable

    from PySide6.QtGui import QAction

    from sizekeeper.core.chart import Chart
    from sizekeeper.core.length import Length
    from sizekeeper.core.piece import Pieces
    from sizekeeper.ui.pieces_desk import PiecesDesk

PASSINGS: tuple[Passing, ...] = get_args(Passing)
USUAL: tuple[Opening, ...] = (
    Opening("Neck", ("head",), measure="neck"),
    Opening("Waist", ("hips",), measure="waist"),
    Opening("Waist, put on over the head", ("shoulders",), measure="waist"),
    Opening("Sleeve end", ("hand",), measure="wrist"),
    Opening("Trouser hem", ("heel",), measure="trouser_hem"),
)
"""The openings that are usually in question (common practice, no source)."""
EXPLAINED = (
    "The edge all round, as sewn; a zip, slit or placket by its length; elastic stretched out. "
    "The Fit page compares them with what must pass."
)
HEADINGS = (
    "Opening",
    "Must let pass",
    "Edge all round",
    "or from the chart",
    "Zip or slit",
    "Elastic",
    "",
)


class OpeningRow(QObject):
    """The fields of one opening; its widgets lie in the grid of the part.

    Signals:
        typed(int, str, object): a length of the opening at this place is being typed.
        edited(int, str, object): a field of the opening at this place was changed: which, and to what.
        remove_wanted(int): it is to be taken out.
    """

    typed = Signal(int, str, object)
    edited = Signal(int, str, object)
    remove_wanted = Signal(int)

    def __init__(self, place: int, sheet: QWidget, restored: Callable[[], None]) -> None:
        super().__init__(sheet)
        self.place = place
        number = place + 1
        self.name = DraftField(f"Name of opening {number}", sheet)
        self.passing = {one: QCheckBox(PASSING_NAMES[one], sheet) for one in PASSINGS}
        for one, box in self.passing.items():
            box.setAccessibleName(f"Opening {number} must let pass: {PASSING_NAMES[one]}")
            box.clicked.connect(self._on_passing)
        self.boxes = QWidget(sheet)
        line = QHBoxLayout(self.boxes)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(theme.spacing(0.75))
        for box in self.passing.values():
            line.addWidget(box)
        self.lengths = {
            "around": LengthField(f"Edge all round of opening {number}", sheet),
            "fastening": LengthField(f"Zip or slit of opening {number}", sheet),
            "elastic": LengthField(f"Elastic of opening {number}", sheet),
        }
        self.measure = CalmCombo(f"Edge of opening {number} from the chart", sheet)
        self.measure.setSizeAdjustPolicy(CalmCombo.SizeAdjustPolicy.AdjustToContents)
        self.remove = Link("Remove", f"Remove opening {number}", sheet)
        self.name.entered.connect(self._on_name)
        self.measure.activated.connect(self._on_measure)
        self.remove.clicked.connect(self._on_remove)
        for field in self.lengths.values():
            field.length_typed.connect(self._on_typed)
            field.length_entered.connect(self._on_length)
            field.restored.connect(restored)

    @property
    def widgets(self) -> list[QWidget]:
        """All widgets of the row, from left to right."""
        around, fastening, elastic = self.lengths.values()
        return [self.name, self.boxes, around, self.measure, fastening, elastic, self.remove]

    @property
    def stops(self) -> list[QWidget]:
        """What Tab goes through, in order."""
        around, fastening, elastic = self.lengths.values()
        return [self.name, *self.passing.values(), around, self.measure, fastening, elastic, self.remove]

    def show_opening(self, opening: Opening | None, rows: list[tuple[str, str]], unit: Any, *, writable: bool) -> None:  # noqa: ANN401 - a literal
        """Show an opening, None for none; `rows` are the finished chart's measures and their names."""
        for widget in self.widgets:
            widget.setVisible(opening is not None)
        if opening is None:
            return
        self.name.show_text(opening.name)
        for one, box in self.passing.items():
            box.setChecked(one in opening.must_pass)
            box.setEnabled(writable)
        for key, field in self.lengths.items():
            field.show_length(getattr(opening, key), unit)
            field.setReadOnly(not writable)
        self._offer(opening, rows)
        self.name.setReadOnly(not writable)
        self.measure.setEnabled(writable)
        self.remove.setVisible(writable)

    def _offer(self, opening: Opening, rows: list[tuple[str, str]]) -> None:
        """Offer the chart's measures, and the opening's own though the chart has none such yet."""
        offered = [("", "–"), *rows]
        if opening.measure and opening.measure not in [measure for measure, _ in offered]:
            offered.append((opening.measure, f"{opening.measure.replace('_', ' ').capitalize()} (missing)"))
        if [self.measure.itemData(i) for i in range(self.measure.count())] != [measure for measure, _ in offered]:
            self.measure.clear()
            for measure, name in offered:
                self.measure.addItem(name, measure)
        self.measure.setCurrentIndex(max(0, self.measure.findData(opening.measure)))

    def finish(self) -> None:
        """Make the edit of what is being typed."""
        for field in (self.name, *self.lengths.values()):
            field.finish()

    def _on_name(self, text: str) -> None:
        self.edited.emit(self.place, "name", " ".join(text.split()))

    def _on_passing(self) -> None:
        chosen = tuple(one for one, box in self.passing.items() if box.isChecked())
        self.edited.emit(self.place, "must_pass", chosen)

    def _on_length(self, length: Length | None) -> None:
        key = next(key for key, field in self.lengths.items() if field is self.sender())
        self.edited.emit(self.place, key, length)

    def _on_typed(self, length: Length | None) -> None:
        key = next(key for key, field in self.lengths.items() if field is self.sender())
        self.typed.emit(self.place, key, length)

    def _on_measure(self, index: int) -> None:
        self.edited.emit(self.place, "measure", self.measure.itemData(index))

    def _on_remove(self) -> None:
        self.remove_wanted.emit(self.place)


class OpeningsPart(QWidget):
    """The openings of the pattern, one to a line."""

    def __init__(self, desk: PiecesDesk, name: Callable[[str], str], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._name = name
        self._finished: Chart | None = None
        self._pattern = ""
        self.rows: list[OpeningRow] = []
        self.add = Link("Add an opening", "", self)
        menu = QMenu(self.add)
        for opening in USUAL:
            action = menu.addAction(f"{opening.name}: {', '.join(PASSING_NAMES[one] for one in opening.must_pass)}")
            action.setData(opening.name)
            action.triggered.connect(self._on_add)
        self.add.setMenu(menu)
        self.problem = Lettering("", "warning", self)
        self._grid = QGridLayout()
        self.headings = [Lettering(text, "note", self) for text in HEADINGS]
        for column, heading in enumerate(self.headings):
            heading.setWordWrap(False)
            self._grid.addWidget(heading, 0, column)
        self._lay()

    def _lay(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(theme.spacing(1))
        head = QHBoxLayout()
        head.addWidget(Lettering("Getting in", "small heading", self))
        head.addStretch(1)
        head.addWidget(self.add)
        column.addLayout(head)
        column.addWidget(Lettering(EXPLAINED, "muted", self))
        column.addLayout(self._grid)
        column.addWidget(self.problem)
        self._space()

    def _space(self) -> None:
        self._grid.setHorizontalSpacing(theme.spacing(1))
        self._grid.setVerticalSpacing(theme.spacing(0.5))
        self._grid.setColumnStretch(0, 1)
        for row in self.rows:
            for field in row.lengths.values():
                field.setFixedWidth(theme.spacing(8.5))

    def show_chart(self, finished: Chart) -> None:
        """Take the finished chart, whose measures can be an opening's edge; shown with the next `refresh`."""
        self._finished = finished

    def refresh(self) -> None:
        """Show the openings as they are now."""
        committed = self._desk.committed
        if committed.pattern != self._pattern:
            self._pattern = committed.pattern
            for row in self.rows:
                for field in row.lengths.values():
                    field.turn_to(committed.pattern)
        while len(self.rows) < len(committed.openings):
            self._add_row()
        rows = [(r.measure, r.label or self._name(r.measure)) for r in self._finished.rows] if self._finished else []
        for row in self.rows:
            opening = committed.openings[row.place] if row.place < len(committed.openings) else None
            row.show_opening(opening, rows, self._desk.notation.unit, writable=self._desk.writable)
        for heading in self.headings:
            heading.setVisible(bool(committed.openings))
        self.add.setVisible(self._desk.writable)
        self._say()

    def _add_row(self) -> None:
        row = OpeningRow(len(self.rows), self, self._desk.drop_draft)
        for column, widget in enumerate(row.widgets):
            self._grid.addWidget(widget, row.place + 1, column)
        row.typed.connect(self._on_typed)
        row.edited.connect(self._on_edited)
        row.remove_wanted.connect(self._on_remove)
        for field in row.lengths.values():
            field.problem_changed.connect(self._say)
        before = self.rows[-1].remove if self.rows else self.add
        one_after_the_other(before, *row.stops)
        self.rows.append(row)
        self._space()

    def _say(self) -> None:
        problems = [field.problem for row in self.rows for field in row.lengths.values() if field.problem]
        self.problem.setText(problems[0] if problems else "")
        self.problem.setVisible(bool(problems))

    def finish(self) -> None:
        """Make the edit of what is being typed."""
        for row in self.rows:
            row.finish()

    def _on_add(self) -> None:
        action = cast("QAction", self.sender())
        opening = next(one for one in USUAL if one.name == action.data())
        committed = self._desk.committed
        after = replace(committed, openings=(*committed.openings, opening))
        self._desk.apply(f"Add the opening {opening.name}", after, f"opening:{len(committed.openings)}")
        self.rows[len(committed.openings)].lengths["around"].setFocus()

    def _changed(self, place: int, key: str, value: Any) -> Pieces:  # noqa: ANN401 - a field of an Opening
        committed = self._desk.committed
        openings = list(committed.openings)
        openings[place] = replace(openings[place], **{key: value})
        return replace(committed, openings=tuple(openings))

    def _on_typed(self, place: int, key: str, value: object) -> None:
        self._desk.session.draft(self._changed(place, key, value))

    def _on_edited(self, place: int, key: str, value: object) -> None:
        name = self._desk.committed.openings[place].name
        self._desk.apply(f"Change the opening {name}", self._changed(place, key, value), f"opening:{place}")

    def _on_remove(self, place: int) -> None:
        committed = self._desk.committed
        rest = tuple(one for number, one in enumerate(committed.openings) if number != place)
        name = committed.openings[place].name
        self._desk.apply(f"Remove the opening {name}", replace(committed, openings=rest), "opening:0")
        (self.rows[0].name if rest else self.add).setFocus(Qt.FocusReason.OtherFocusReason)

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if theme.font_changed(event) and hasattr(self, "headings"):
            self._space()
